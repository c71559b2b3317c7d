import { addDemo as addDemoFile, readDemo } from '../../src/store/demo/demo.ts';
import { demoText } from '../../src/store/demo/demo-lines.ts';
import type { Store } from '../../src/store/opening/open-store.ts';

/** A day on which nobody presses: what is put in has to come to the phone's own time. */
const WRITTEN_AT = Date.UTC(2026, 0, 1);

/** The demo put in by its file, as the build writes it. */
export async function addDemo(store: Store): ReturnType<typeof addDemoFile> {
  const file = await readDemo(await demoText(WRITTEN_AT));
  if (!file.ok) throw new Error(`the demo's file is refused: ${JSON.stringify(file.refusal)}`);
  return addDemoFile(store, file.value);
}
