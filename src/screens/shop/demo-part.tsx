import { useState } from 'preact/hooks';
import { addDemo, hasDemo, removeDemo } from '../../store/demo.ts';
import { sayStore } from '../../store/say-store.ts';
import type { StoreResult } from '../../store/store-refusal.ts';
import { Button } from '../common/button.tsx';
import { useLive, useStore } from '../common/store-context.ts';

/** The demo in one press, and out in one press. */
export function DemoPart() {
  const store = useStore();
  const present = useLive('has-demo', ['jobs'], hasDemo);
  const [fault, setFault] = useState<string>();
  const told = async (doing: Promise<StoreResult<unknown>>) => {
    const done = await doing;
    setFault(done.ok ? undefined : sayStore(done.refusal));
  };
  return (
    <section class="shop-part">
      <h2>Demo</h2>
      <p>Two invented jobs to look around in: a sidecar outfit’s rear end and a trailer hub.</p>
      <div class="shop-part-keys">
        {present === true ? (
          <Button onPress={() => told(removeDemo(store))}>Remove the demo</Button>
        ) : (
          <Button onPress={() => told(addDemo(store))}>Show me with the demo job</Button>
        )}
      </div>
      {fault !== undefined && (
        <p role="alert" class="text-field-trouble">
          {fault}
        </p>
      )}
    </section>
  );
}
