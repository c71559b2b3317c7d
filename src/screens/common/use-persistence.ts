import { useEffect, useState } from 'preact/hooks';
import { askToPersist, type Persistence } from '../../store/persistence.ts';

/** Whether the browser has promised to keep the records; nothing until it has answered. */
export function usePersistence(): Persistence | undefined {
  const [persistence, setPersistence] = useState<Persistence>();
  useEffect(() => {
    void askToPersist().then(setPersistence);
  }, []);
  return persistence;
}
