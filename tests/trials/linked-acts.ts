import { backupStores } from '../../src/store/base/stores.ts';
import { readEntry } from '../../src/engine/length/entry.ts';
import { checksOf } from '../../src/store/kept/checks.ts';
import { createCuts, cutsOf } from '../../src/store/kept/cuts.ts';
import { makeAgain } from '../../src/store/kept/make-cut-again.ts';
import { drawerPieces } from '../../src/store/kept/drawer.ts';
import { createFeature, featuresOf } from '../../src/store/kept/features.ts';
import { listJobs } from '../../src/store/kept/job-list.ts';
import type { Kept } from '../../src/store/base/kept.ts';
import { addMoney } from '../../src/store/kept/money.ts';
import type { Store } from '../../src/store/opening/open-store.ts';
import { createPart, partsOf, removePart } from '../../src/store/kept/parts.ts';
import { addPhoto, photosOfJob, removePhoto } from '../../src/store/kept/photos.ts';
import { addRecheck } from '../../src/store/kept/rechecks.ts';
import type { PhotoOwner } from '../../src/store/base/records.ts';
import { signSheet } from '../../src/store/kept/sheets.ts';
import { addSteps, stepsOf } from '../../src/store/kept/steps.ts';
import { createWorksheet, setSize, worksheetsOf } from '../../src/store/kept/worksheets.ts';
import type { Chance } from './merge-acts.ts';

/** One thing that makes a record name another: in its job, in another job, in the drawer. Which one is up to chance. */
export async function oneLinkingAct(store: Store, chance: Chance): Promise<void> {
  const { jobs } = await listJobs(store, { limit: 9 });
  const job = chance.one(jobs);
  const other = chance.one(jobs);
  if (!job || !other) return;
  const jobId = job.id;
  const [feature, part, worksheet, cut] = [
    chance.one(await featuresOf(store, jobId)),
    chance.one(await partsOf(store, jobId)),
    chance.one(await worksheetsOf(store, jobId)),
    chance.one(await cutsOf(store, jobId)),
  ];
  const named = { ...(part && { partId: part.id }), ...(worksheet && { worksheetId: worksheet.id }) };
  const act = chance.below(13);
  if (act <= 1) await createPart(store, { jobId, name: 'Axle', origin: 'mock-up' });
  else if (act === 2 && part) await removePart(store, part.id);
  else if (act === 3) await createFeature(store, { jobId, kind: 'pin', name: 'pin', ...named });
  else if (act === 4) await createWorksheet(store, { jobId, kind: 'fit', title: 'Seat' });
  else if (act === 5 && worksheet && feature)
    await setSize(store, worksheet.id, 'bore', { from: 'feature', featureId: feature.id });
  else if (act === 6) await createCuts(store, [{ ...facing(jobId), ...named }]);
  else if (act === 7 && cut) await makeAgain(store, [cut.id], other.id);
  else if (act === 8)
    await addSteps(store, [{ jobId, text: 'Fit', ...named, partIds: part ? [part.id] : [] }]);
  else if (act === 9) await keepPhoto(store, jobId, chance);
  else if (act === 10) {
    const photo = chance.one(await photosOfJob(store, jobId));
    if (photo) await removePhoto(store, photo.id);
  } else if (act === 11) await signIt(store, jobId);
  else {
    await addRecheck(store, { jobId, what: 'Nuts', afterDays: 7 });
    await addMoney(store, { jobId, what: 'Bar', amount: '12.40' });
  }
}

async function keepPhoto(store: Store, jobId: string, chance: Chance): Promise<void> {
  const piece = chance.one(await drawerPieces(store));
  const check = chance.one(await checksOf(store, jobId));
  const step = chance.one(await stepsOf(store, jobId));
  const cut = chance.one(await cutsOf(store, jobId));
  const owners: (PhotoOwner | undefined)[] = [
    { store: 'jobs', id: jobId },
    piece && { store: 'drawer', id: piece.piece.id },
    check && { store: 'checks', id: check.id },
    step && { store: 'steps', id: step.id },
    cut && { store: 'cuts', id: cut.id },
  ];
  const owner = chance.one(owners.filter((one) => one !== undefined));
  if (!owner) return;
  const of = owner.store === 'drawer' ? {} : { jobId };
  const [preview, bytes] = [new ArrayBuffer(4), new ArrayBuffer(8)];
  await addPhoto(store, { ...of, owner, note: '', mime: 'image/png', width: 1, height: 1, preview, bytes });
}

async function signIt(store: Store, jobId: string): Promise<void> {
  await signSheet(store, {
    jobId,
    signedBy: 'R. Tiller',
    engineVersion: '1',
    content: [{ tag: 'p', attributes: {}, children: ['signed'] }],
    readingsCsv: '',
    cutsCsv: '',
  });
}

function facing(jobId: string): Parameters<typeof createCuts>[1][number] {
  const size = readEntry('1.480', { unit: 'in' });
  if (!size.ok) throw new Error('a plain decimal could not be read');
  return {
    jobId,
    name: 'Spacer, face to length',
    part: 'Spacer',
    operation: 'face',
    of: 'length',
    target: size.value,
    lower: size.value,
    upper: size.value,
    limitsFrom: '',
    cuttingTool: 'hss',
    machine: 'lathe',
  };
}

/** Some record becomes one that this Slipfit can't read. */
export async function spoilOne(store: Store, chance: Chance): Promise<void> {
  const name = chance.one(backupStores.filter((one) => one !== 'settings' && one !== 'photoBytes'));
  if (name === undefined) return;
  const kept: Kept | undefined = chance.one<Kept>(await store.db.getAll(name));
  if (kept) await store.db.put(name, { ...kept, createdAt: 'later', exact: 7, at: 'later', pieceId: 7 });
}
