import { hasDemo, removeDemo } from '../../store/demo/demo.ts';
import { Button } from '../common/button.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { showDemo } from '../jobs/show-demo.ts';

/** The demo in one press, and out in one press. */
export function DemoPart() {
  const store = useStore();
  const present = useLive('has-demo', ['jobs'], hasDemo);
  const { trouble, told, say } = useTold();
  return (
    <section class="shop-part">
      <h2>Demo</h2>
      <p>Two invented jobs to look around in: a sidecar outfit’s rear end and a trailer hub.</p>
      <div class="shop-part-keys">
        {present === true ? (
          <Button onPress={() => told(removeDemo(store))}>Remove the demo</Button>
        ) : (
          <Button onPress={async () => say(await showDemo(store))}>Show me with the demo job</Button>
        )}
      </div>
      <Trouble>{trouble}</Trouble>
    </section>
  );
}
