import { readEntry } from '../../src/engine/length/entry.ts';
import { usualTools } from '../../src/engine/reading/measuring-tool.ts';
import { createCheck, retake, sayCheckSeen } from '../../src/store/kept/checks.ts';
import { addDemo } from '../store/add-demo.ts';
import { addPiece, countPiece } from '../../src/store/kept/drawer.ts';
import { createFeature } from '../../src/store/kept/features.ts';
import { createJob } from '../../src/store/kept/jobs.ts';
import { addMoney } from '../../src/store/kept/money.ts';
import type { Store } from '../../src/store/opening/open-store.ts';
import { addPhoto } from '../../src/store/kept/photos.ts';
import { logReading, strikeOut } from '../../src/store/kept/readings.ts';
import type { Entry } from '../../src/engine/length/entry.ts';
import { putSetting } from '../../src/store/kept/settings.ts';
import { signSheet } from '../../src/store/kept/sheets.ts';
import { addTool, measuringTools } from '../../src/store/kept/tools.ts';
import { removePart } from '../../src/store/kept/parts.ts';

const outfit = 'demo-outfit-7';

/** A shop with a record of every kind that a backup holds, removed and struck-out ones too; `picture` is a JPEG. */
export async function fillWithEveryKind(store: Store, picture: ArrayBuffer): Promise<void> {
  must(await addDemo(store));
  await checks(store);
  for (const owner of [
    { store: 'jobs', id: outfit },
    { store: 'cuts', id: 'demo-cut-ring' },
  ] as const) {
    const pictures = { mime: 'image/jpeg', width: 24, height: 16, preview: picture, bytes: picture };
    must(await addPhoto(store, { jobId: outfit, owner, note: 'Indicator on the rim', ...pictures }));
  }
  must(await addMoney(store, { jobId: outfit, what: 'Bar, stainless', amount: '41.50' }));
  must(await addMoney(store, { jobId: outfit, what: 'Turning', hours: '1:20', rate: '65' }));
  const thickness = { from: 'typed', ...inches('.010') } as const;
  const shim = must(await addPiece(store, { kind: 'shim', name: 'Shim', material: 'brass', thickness }, 6));
  must(await countPiece(store, shim.id, -2, 'used on Outfit 7'));
  await measuringTools(store);
  const { id: _usual, ...caliper } = firstTool();
  must(await addTool(store, { ...caliper, name: 'Caliper, the old one' }));
  must(await putSetting(store, 'fitter', 'Jo B.'));
  must(await putSetting(store, 'lathe', { speedsRpm: [70, 210, 440] }));
  must(await removePart(store, 'demo-link-bolts'));
  must(
    await signSheet(store, {
      jobId: 'demo-trailer-hub',
      signedBy: 'Jo B.',
      engineVersion: '0.1.0',
      content: [{ tag: 'article', attributes: { class: 'sheet' }, children: ['Boat-trailer hub'] }],
      readingsCsv: 'feature,value,unit\r\n"Spindle, outer seat",24.985,mm\r\n',
      cutsCsv: 'cut,target,unit\r\n',
    }),
  );
}

/** Work of another kind that is on the phone already, before any file comes. */
export async function fillWithOwnWork(store: Store): Promise<void> {
  const job = must(await createJob(store, { name: 'Saw table', systems: [] }));
  const bore = must(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'Arbor bore' }));
  for (const typed of ['.6252', '.6250', '.6251']) {
    const reading = { featureId: bore.id, jobId: job.id, entry: inches(typed), zeroChecked: true };
    must(await logReading(store, { ...reading, tool: firstTool() }));
  }
  must(await addPiece(store, { kind: 'washer', name: 'Washer 5/8', material: 'steel' }, 12));
  must(await putSetting(store, 'fitter', 'Sam K.'));
}

async function checks(store: Store): Promise<void> {
  const check = { jobId: outfit, limitsFrom: 'worksheet', how: 'Push it over and read the indicator.' };
  const float = must(
    await createCheck(store, {
      ...check,
      worksheetId: 'demo-bracket-float',
      name: 'Float',
      by: 'gap',
      lower: inches('.008'),
      upper: inches('.012'),
    }),
  );
  const featureId = Object.values(float.takes)[0]?.featureId ?? '';
  const reading = { featureId, jobId: outfit, tool: firstTool(), zeroChecked: true };
  must(await logReading(store, { ...reading, entry: inches('.0140') }));
  const wrong = must(await logReading(store, { ...reading, entry: inches('.1040') }));
  must(await strikeOut(store, wrong.id, 'figures swapped'));
  must(await retake(store, float.id));
  const eye = must(await createCheck(store, { ...check, name: 'Brake lets go', by: 'by-eye' }));
  must(await sayCheckSeen(store, eye.id, Object.keys(eye.takes)[0] ?? '', 'fails', 'drags on the left'));
}

function firstTool() {
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  return tool;
}

function inches(typed: string): Entry {
  return must(readEntry(typed, { unit: 'in' }));
}

function must<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.refusal)}`);
  return result.value;
}
