import { cutName } from '../../engine/thread/tap-name.ts';
import type { Entry } from '../../engine/length/entry.ts';
import { act, type Act } from '../opening/act.ts';
import { withChanges, type Changes } from '../base/changes.ts';
import type { Kept } from '../base/kept.ts';
import { touchJob } from './jobs.ts';
import { stateByPasses } from './cut-state.ts';
import { mustHaveBeen } from './must-have-been.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { read, readable, readAsMade, readOne } from '../opening/read.ts';
import type { Cut, CutState, Id, Job, Stamped } from '../base/records.ts';
import { cutRecordKind } from './cut-schema.ts';
import { jobKind } from './job-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A job's cuts in the order in which they were made. */
export async function cutsOf(store: Store, jobId: Id): Promise<Cut[]> {
  return readAsMade(store, cutRecordKind, { index: 'jobId', key: jobId });
}

export async function getCut(store: Store, id: Id): Promise<Cut | undefined> {
  return readOne(store, cutRecordKind, id);
}

export type OpenCut = { readonly cut: Cut; readonly job: Pick<Job, 'id' | 'name'> };

/** Every cut still to be made, or gone over and not yet cured, in all open jobs, oldest first. */
export async function openCuts(store: Store): Promise<OpenCut[]> {
  const kept = await read(store, ['cuts', 'jobs'], async (tx) => {
    const cuts: Kept[] = await tx.objectStore('cuts').index('openAt').getAll();
    const ids = new Set(cuts.map(({ jobId }) => String(jobId)));
    const jobs: (Kept | undefined)[] = await Promise.all(
      [...ids].map((id) => tx.objectStore('jobs').get(id)),
    );
    return { cuts, jobs: jobs.filter((job) => job !== undefined) };
  });
  const jobs = new Map(readable(store, jobKind, kept.jobs).map((job) => [job.id, job]));
  return readable(store, cutRecordKind, kept.cuts).flatMap((cut) => {
    const job = jobs.get(cut.jobId);
    return job?.state === 'open' ? [{ cut, job: { id: job.id, name: job.name } }] : [];
  });
}

export type NewCut = Omit<
  Cut,
  'id' | 'state' | 'passes' | 'made' | 'zeroShift' | 'createdAt' | 'touchedAt' | 'broughtBack'
>;

/** Puts cuts on the list: one act, however many a worksheet hands over. */
export async function createCuts(store: Store, cuts: readonly NewCut[]): Promise<StoreResult<Cut[]>> {
  const ids = cuts.map(newId);
  return act(store, { stores: ['jobs', 'parts', 'worksheets', 'cuts'] }, async (a) => {
    const made: Cut[] = [];
    for (const [index, cut] of cuts.entries()) {
      // oxlint-disable-next-line no-await-in-loop
      await ownersMustHaveBeen(a, cut);
      made.push(makeCut(a, { id: ids[index] ?? newId(), order: index }, cut));
    }
    const jobIds = new Set(cuts.map(({ jobId }) => jobId));
    await Promise.all([...jobIds].map((jobId) => touchJob(a, jobId)));
    a.undoable(cutsLabel('Put down to cut:', cuts), cuts[0]?.jobId);
    return made;
  });
}

export type CutChanges = Changes<
  Cut,
  | 'name'
  | 'part'
  | 'partId'
  | 'worksheetId'
  | 'operation'
  | 'of'
  | 'blank'
  | 'target'
  | 'lower'
  | 'upper'
  | 'limitsFrom'
  | 'assumed'
  | 'material'
  | 'cuttingTool'
  | 'machine'
  | 'drill'
  | 'thread'
  | 'setOver'
  | 'setOverWithin'
  | 'stands'
  | 'compoundDegrees'
  | 'threading'
  | 'largestTake'
  | 'finishTake'
  | 'basis'
>;

export async function changeCut(
  store: Store,
  id: Id,
  changes: CutChanges,
  draftKey?: string,
): Promise<StoreResult<Cut>> {
  return actOnCut(store, id, draftKey, async (a, before) => {
    await ownersMustHaveBeen(a, changes);
    const after = await a.change(cutRecordKind, id, (cut) =>
      inItsState(withChanges({ ...cut, touchedAt: a.at }, changes)),
    );
    a.undoable(`Changed ${before.name}`, before.jobId);
    return after;
  });
}

const stateWords: Readonly<Record<CutState, string>> = {
  'to-cut': 'to cut',
  cutting: 'cutting',
  'to-size': 'to size',
  over: 'over',
  scrapped: 'scrapped',
  'made-again': 'made again',
};

/** What a fitter can say of a cut; whether it is to size is measured. */
export type SaidCutState = Exclude<CutState, 'to-size' | 'over'>;

export async function setCutState(store: Store, id: Id, state: SaidCutState): Promise<StoreResult<Cut>> {
  return actOnCut(store, id, undefined, async (a, before) => {
    const after = await a.change(cutRecordKind, id, (cut) => inItsState({ ...cut, state, touchedAt: a.at }));
    a.undoable(`${before.name}: ${stateWords[state]}`, before.jobId);
    return after;
  });
}

/** Takes a cut off the list. Its passes stay with it, so that undo brings all of it back. */
export async function removeCut(store: Store, id: Id): Promise<StoreResult<void>> {
  return actOnCut(store, id, undefined, async (a, cut) => {
    await a.remove('cuts', id);
    a.undoable(`Removed ${cutName(cut)}`, cut.jobId);
  });
}

/** The state that its passes and limits give it. */
export function inItsState(cut: Cut & Stamped): Cut & Stamped {
  return { ...cut, state: stateByPasses(cut) };
}

/** One act on one cut; its job is touched, and what was half typed of it is dropped. */
export async function actOnCut<T>(
  store: Store,
  id: Id,
  draftKey: string | undefined,
  work: (a: Act, before: Cut) => Promise<T>,
): Promise<StoreResult<T>> {
  return act(store, { stores: ['jobs', 'parts', 'worksheets', 'cuts', 'drafts'] }, async (a) => {
    const before = await a.get(cutRecordKind, id);
    await touchJob(a, before.jobId);
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    return work(a, before);
  });
}

/** A new cut; a millisecond apart, so that cuts put down together keep their order. */
export function makeCut(
  a: Act,
  { id, order }: { readonly id: Id; readonly order: number },
  cut: NewCut,
): Cut {
  return a.make(cutRecordKind, {
    ...cut,
    id,
    state: 'to-cut',
    passes: {},
    createdAt: a.at + order,
    touchedAt: a.at,
  });
}

async function ownersMustHaveBeen(a: Act, { partId, worksheetId }: CutChanges): Promise<void> {
  await mustHaveBeen(a, 'parts', partId);
  await mustHaveBeen(a, 'worksheets', worksheetId);
}

/** An entry with nothing else beside it, as it is kept. */
export function plainEntry({ exact, typed, unit }: Entry): Entry {
  return { exact, typed, unit };
}

/** The words of the undo key for one cut or several. */
export function cutsLabel(words: string, cuts: readonly Pick<Cut, 'name'>[]): string {
  const [first] = cuts;
  return cuts.length === 1 && first ? `${words} ${cutName(first)}` : `${words} ${cuts.length} cuts`;
}
