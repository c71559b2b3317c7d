import { type ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Button } from './button.tsx';
import { Rescue } from './rescue.tsx';
import { TroublePage } from './trouble-page.tsx';

// Chosen, not published: from the phone it comes well within this.
const LATE_AFTER_MS = 5000;
const NOT_OPENED = 'This screen could not be opened. What you logged is safe.';
const ON_ITS_WAY = 'This screen is still on its way: the signal is weak. What you logged is safe.';

/**
 * A screen whose code is fetched when it is first opened. Every piece is precached, so that this is a read from the
 * phone; should it fail (an update half-way), it says so and offers another try; should it not come at all, it says that.
 */
export function lazyScreen<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let loaded: ComponentType<P> | undefined;
  return function LazyScreen(props: P) {
    const [, redraw] = useState(0);
    const [failed, setFailed] = useState(false);
    const [late, setLate] = useState(false);
    const fetchIt = () => {
      load().then(
        (component) => {
          loaded = component;
          setFailed(false);
          redraw((count) => count + 1);
        },
        () => setFailed(true),
      );
    };
    useEffect(() => {
      // What came between the first drawing and this line was told to the screen before this one.
      if (loaded) redraw((count) => count + 1);
      else fetchIt();
      const timer = setTimeout(() => !loaded && setLate(true), LATE_AFTER_MS);
      return () => clearTimeout(timer);
    }, []);
    if (loaded) {
      const Loaded = loaded;
      return <Loaded {...props} />;
    }
    if (!failed && !late) return <main aria-busy="true" />;
    return (
      <TroublePage sentence={failed ? NOT_OPENED : ON_ITS_WAY}>
        {failed && (
          <Button kind="main" onPress={fetchIt}>
            Try again
          </Button>
        )}
        <Rescue />
      </TroublePage>
    );
  };
}
