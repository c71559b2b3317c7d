import { sayStore } from '../../store/base/say-store.ts';
import { addDemo, readDemo } from '../../store/demo/demo.ts';
import type { Store } from '../../store/opening/open-store.ts';

// The build writes it beside the page, and the worker keeps it with the app's other files.
const DEMO_FILE = './demo.txt';
const NOT_HERE = 'The demo is not on this phone. Come back with signal, and press again.';

/** Puts the demo in. The sentence why it couldn't be; nothing in the usual case. */
export async function showDemo(store: Store): Promise<string> {
  const file = await demoFile();
  const demo = file && (await readDemo(file));
  if (!demo?.ok) return NOT_HERE;
  const added = await addDemo(store, demo.value);
  return added.ok ? '' : sayStore(added.refusal);
}

async function demoFile(): Promise<Blob | undefined> {
  try {
    const response = await fetch(DEMO_FILE);
    return response.ok ? await response.blob() : undefined;
  } catch {
    return undefined;
  }
}
