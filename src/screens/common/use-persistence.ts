import { useEffect, useState } from 'preact/hooks';
import {
  asksAPerson,
  askToPersist,
  promisedToPersist,
  type Persistence,
} from '../../store/opening/persistence.ts';

/** Whether the browser has promised to keep the records; nothing until it has answered. */
export function usePersistence(): Persistence | undefined {
  return usePersistenceAsked().persistence;
}

/** The same, with what asks for it by hand. */
export function usePersistenceAsked() {
  const [persistence, setPersistence] = useState<Persistence>();
  useEffect(() => {
    // A browser that answers by itself may answer otherwise by now; a person isn't asked by a screen that opens.
    void (asksAPerson() ? promisedToPersist() : askToPersist()).then(setPersistence);
  }, []);
  const ask = async () => setPersistence(await askToPersist());
  return { persistence, ask };
}
