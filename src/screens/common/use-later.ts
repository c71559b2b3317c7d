import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** What is fetched once the screen stands and it is wanted: neither the first load nor the screen waits for it. */
export function useLater<P>(
  wanted: boolean,
  load: () => Promise<ComponentType<P>>,
): ComponentType<P> | undefined {
  const [later, setLater] = useState<{ readonly Part: ComponentType<P> }>();
  useEffect(() => {
    if (!wanted) return;
    load().then(
      (Part) => setLater({ Part }),
      // Without it the screen is as good.
      () => undefined,
    );
  }, [wanted]);
  return later?.Part;
}
