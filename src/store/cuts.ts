import { cutName } from '../engine/thread/tap-name.ts';
import type { Entry } from '../engine/length/entry.ts';
import type { ToolInForce } from '../engine/reading/measuring-tool.ts';
import { act, type Act } from './act.ts';
import { withChanges, type Changes } from './changes.ts';
import type { Kept } from './kept.ts';
import { touchJob } from './jobs.ts';
import { lastPassOf, stateByPasses } from './cut-state.ts';
import { dialledKey, dialledSince, dialledText, MOVED } from './dialled.ts';
import { mustHaveBeen } from './must-have-been.ts';
import { newId } from './new-id.ts';
import type { Store } from './open-store.ts';
import { read, readable, readAsMade, readOne } from './read.ts';
import { inForce } from './readings.ts';
import type { Cut, CutPass, CutState, Id, Job, ReadWarmth, Stamped } from './records.ts';
import { cutRecordKind } from './schemas/cut.ts';
import { readDraft } from './schemas/setting.ts';
import { jobKind } from './schemas/job.ts';
import type { StoreResult } from './store-refusal.ts';

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

export type NewCut = Omit<Cut, 'id' | 'state' | 'passes' | 'createdAt' | 'touchedAt' | 'broughtBack'>;

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

export type NewPass = {
  readonly measured: Entry;
  readonly tool?: ToolInForce;
  /** What the dial was asked to take off since the pass before. */
  readonly asked?: Entry;
  readonly warmth?: ReadWarmth;
};

/**
 * Logs what was measured at the machine, with the state the cut is in by it and by its limits. It is on the disk when this comes back ok,
 * and only then may the screen say "logged". As with a reading there is no undo: a wrong one is struck out.
 */
export async function logPass(
  store: Store,
  cutId: Id,
  pass: NewPass,
  draftKey?: string,
): Promise<StoreResult<Cut>> {
  const passId = newId();
  return actOnCut(store, cutId, draftKey, (a, before) => {
    const last = Math.max(0, ...Object.values(before.passes).map(({ at }) => at));
    const kept: CutPass = {
      // Behind the pass before it, also when the phone's clock was set back in between.
      at: Math.max(a.at, last + 1),
      measured: plainEntry(pass.measured),
      ...(pass.tool && { tool: inForce(pass.tool) }),
      ...(pass.asked && { asked: plainEntry(pass.asked) }),
      ...(pass.warmth && { warmth: pass.warmth }),
    };
    return a.change(cutRecordKind, cutId, (cut) =>
      inItsState({ ...cut, passes: { ...cut.passes, [passId]: kept }, touchedAt: a.at }),
    );
  });
}

/**
 * Strikes a measurement out, with the reason beside it. What was dialled in before it was cut all the same, so the dial
 * is asked for that much less: in the same act, as a phone that dies between the two would send the tool in too far.
 */
export async function strikeOutPass(
  store: Store,
  cutId: Id,
  passId: Id,
  why: string,
): Promise<StoreResult<Cut>> {
  return actOnCut(store, cutId, undefined, async (a, before) => {
    const pass = before.passes[passId] ?? a.refuse({ code: 'gone', store: 'cuts' });
    if (pass.struckOut) return before;
    const struck: CutPass = { ...pass, struckOut: { why, at: a.at } };
    const after = await a.change(cutRecordKind, cutId, (cut) =>
      inItsState({
        ...cut,
        passes: { ...cut.passes, [passId]: struck },
        state: cut.state === 'scrapped' || cut.state === 'made-again' ? cut.state : 'to-cut',
        touchedAt: a.at,
      }),
    );
    await dialAgain(a, { before, after, passId });
    a.undoable(`Struck out a pass of ${before.name}`, before.jobId);
    return after;
  });
}

type Struck = { readonly before: Cut; readonly after: Cut; readonly passId: Id };

async function dialAgain(a: Act, { before, after, passId }: Struck): Promise<void> {
  if (lastPassOf(before)?.[0] !== passId) return;
  const asked = before.passes[passId]?.asked;
  const since = await dialledSince(before, async (key) => readDraft(await a.kept('drafts', key)));
  const cut = [...(asked ? [asked.exact] : []), ...since];
  const keep = (key: string, typed: string) => a.putKept('drafts', { id: key, typed, unit: 'mm' });
  keep(dialledKey(before.id, lastPassOf(after)?.[0]), dialledText(cut));
  keep(dialledKey(before.id, passId), MOVED);
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

/**
 * Puts copies of cuts on the list of this or another job, without passes and without the blank's size: the new piece is
 * another one. In its own job a cut that was scrapped or went over is marked as made again.
 */
export async function makeAgain(
  store: Store,
  cutIds: readonly Id[],
  toJobId: Id,
): Promise<StoreResult<Cut[]>> {
  const ids = cutIds.map(newId);
  return act(store, { stores: ['jobs', 'cuts'] }, async (a) => {
    const old = await Promise.all(cutIds.map((id) => a.get(cutRecordKind, id)));
    const made = old.map((cut, index) =>
      makeCut(a, { id: ids[index] ?? newId(), order: index }, copyFor(cut, toJobId)),
    );
    const replaced = old.filter((cut) => cut.jobId === toJobId && isSpoilt(cut));
    await Promise.all(
      replaced.map(({ id }) =>
        a.change(cutRecordKind, id, (cut) => ({ ...cut, state: 'made-again' as const, touchedAt: a.at })),
      ),
    );
    await touchJob(a, toJobId);
    a.undoable(cutsLabel('Make again:', old), toJobId);
    return made;
  });
}

/** Takes a cut off the list. Its passes stay with it, so that undo brings all of it back. */
export async function removeCut(store: Store, id: Id): Promise<StoreResult<void>> {
  return actOnCut(store, id, undefined, async (a, cut) => {
    await a.remove('cuts', id);
    a.undoable(`Removed ${cutName(cut)}`, cut.jobId);
  });
}

function inItsState(cut: Cut & Stamped): Cut & Stamped {
  return { ...cut, state: stateByPasses(cut) };
}

async function actOnCut<T>(
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

// A millisecond apart, so that cuts put down together keep their order.
function makeCut(a: Act, { id, order }: { readonly id: Id; readonly order: number }, cut: NewCut): Cut {
  return a.make(cutRecordKind, {
    ...cut,
    id,
    state: 'to-cut',
    passes: {},
    createdAt: a.at + order,
    touchedAt: a.at,
  });
}

function copyFor(cut: Cut & Stamped, toJobId: Id): NewCut {
  const copied: NewCut = withChanges(newOf(cut), { blank: undefined, jobId: toJobId, copyOf: cut.id });
  if (cut.jobId === toJobId) return copied;
  // The other job has parts and worksheets of its own; where the figures come from is still known.
  const { worksheetId, jobId } = cut;
  const workedOutIn = cut.workedOutIn ?? (worksheetId === undefined ? undefined : { jobId, worksheetId });
  return withChanges(copied, {
    partId: undefined,
    worksheetId: undefined,
    workedOutIn,
    ...(workedOutIn === undefined && { basis: undefined }),
  });
}

function newOf(cut: Cut & Stamped): NewCut {
  const { id: _id, stamps: _stamps, deleted: _deleted, broughtBack: _back, state: _state, ...rest } = cut;
  const { passes: _passes, ...copied } = rest;
  return copied;
}

function isSpoilt({ state }: Cut): boolean {
  return state === 'scrapped' || state === 'over';
}

async function ownersMustHaveBeen(a: Act, { partId, worksheetId }: CutChanges): Promise<void> {
  await mustHaveBeen(a, 'parts', partId);
  await mustHaveBeen(a, 'worksheets', worksheetId);
}

function plainEntry({ exact, typed, unit }: Entry): Entry {
  return { exact, typed, unit };
}

function cutsLabel(words: string, cuts: readonly Pick<Cut, 'name'>[]): string {
  const [first] = cuts;
  return cuts.length === 1 && first ? `${words} ${cutName(first)}` : `${words} ${cuts.length} cuts`;
}
