import { act, type Act } from '../opening/act.ts';
import { basisNowOf } from './basis-now.ts';
import { withChanges, type Changes } from '../base/changes.ts';
import { seenAs } from './done-again.ts';
import { removeWithReadings } from './features.ts';
import { isGone } from '../base/kept.ts';
import { touchJob } from './jobs.ts';
import { mustHaveBeen } from './must-have-been.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { readAsMade, readOne } from '../opening/read.ts';
import type { Check, CheckTake, Id } from '../base/records.ts';
import { checkKind } from './check-schema.ts';
import { featureRecordKind } from './feature-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A job's checks in the order in which they were made. */
export async function checksOf(store: Store, jobId: Id): Promise<Check[]> {
  return readAsMade(store, checkKind, { index: 'jobId', key: jobId });
}

export async function getCheck(store: Store, id: Id): Promise<Check | undefined> {
  return readOne(store, checkKind, id);
}

/** Every go at a check in order of time. */
export function takesOf(check: Pick<Check, 'takes'>): [Id, CheckTake][] {
  return Object.entries(check.takes).toSorted(([idA, a], [idB, b]) => a.at - b.at || (idA < idB ? -1 : 1));
}

/** The go that counts. */
export function lastTake(check: Pick<Check, 'takes'>): (CheckTake & { readonly id: Id }) | undefined {
  const last = takesOf(check).at(-1);
  return last && { ...last[1], id: last[0] };
}

export type NewCheck = Omit<Check, 'id' | 'takes' | 'createdAt' | 'broughtBack'>;

/** Makes a check with its first go, and the feature that will hold its readings where it is measured. */
export async function createCheck(
  store: Store,
  check: NewCheck,
  draftKey?: string,
): Promise<StoreResult<Check>> {
  const id = newId();
  return act(store, { stores: checkStores }, async (a) => {
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    const made = await makeCheck(a, { id, order: 0 }, check);
    await touchJob(a, check.jobId);
    a.undoable(`Made the check ${check.name}`, check.jobId);
    return made;
  });
}

/** Makes several checks of one job in one act: those a worksheet or a list offers. */
export async function createChecks(store: Store, checks: readonly NewCheck[]): Promise<StoreResult<Check[]>> {
  const ids = checks.map(newId);
  return act(store, { stores: checkStores }, async (a) => {
    const made: Check[] = [];
    for (const [index, check] of checks.entries()) {
      // oxlint-disable-next-line no-await-in-loop
      made.push(await makeCheck(a, { id: ids[index] ?? newId(), order: index }, check));
    }
    const [first] = checks;
    if (first) await touchJob(a, first.jobId);
    a.undoable(`Made ${checks.length} checks`, first?.jobId);
    return made;
  });
}

/** Another go at a check, with a feature of its own. The go before it stays readable. */
export async function retake(store: Store, checkId: Id): Promise<StoreResult<Check>> {
  return actOnCheck(store, checkId, async (a, before) => {
    const take = nextTake(a, before);
    const after = await a.change(checkKind, checkId, (check) => ({
      ...check,
      takes: { ...check.takes, ...take },
    }));
    a.undoable(`${before.name}: to be taken again`, before.jobId);
    return after;
  });
}

/** Says of a check by eye that it holds or fails. */
export async function sayCheckSeen(
  store: Store,
  checkId: Id,
  takeId: Id,
  seen: 'holds' | 'fails' | undefined,
  note: string,
): Promise<StoreResult<Check>> {
  return actOnCheck(store, checkId, async (a, before) => {
    const take = before.takes[takeId] ?? a.refuse({ code: 'gone', store: 'checks' });
    const seenNote = note === '' ? undefined : note;
    const as = seen && seenAs(before);
    const basis = seen && (await basisNowOf(a, before.worksheetId));
    const said = withChanges<CheckTake, 'seen' | 'seenNote' | 'seenAs' | 'basis'>(take, {
      seen,
      seenNote,
      seenAs: as,
      basis,
    });
    const after = await a.change(checkKind, checkId, (check) => ({
      ...check,
      takes: { ...check.takes, [takeId]: said },
    }));
    a.undoable(seen === undefined ? `Changed ${before.name}` : `${before.name}: ${seen}`, before.jobId);
    return after;
  });
}

export type CheckChanges = Changes<
  Check,
  'name' | 'worksheetId' | 'sizeName' | 'lower' | 'upper' | 'limitsFrom' | 'how' | 'basis'
>;

/**
 * Changes a check. Its readings go on being listed under its name, and are held against its new limits. What was seen by
 * eye was seen of what the check asked for then: when it asks for something else it is to be looked at again.
 */
export async function changeCheck(
  store: Store,
  id: Id,
  changes: CheckChanges,
  draftKey?: string,
): Promise<StoreResult<Check>> {
  return actOnCheck(store, id, async (a, before) => {
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    await mustHaveBeen(a, 'worksheets', changes.worksheetId);
    const again = isSeenOtherwise(before, changes) ? nextTake(a, before) : {};
    const after = await a.change(checkKind, id, (check) => {
      const changed = withChanges(check, changes);
      return { ...changed, takes: { ...changed.takes, ...again } };
    });
    const { name } = after;
    if (name !== before.name)
      for (const featureId of await featuresLeft(a, before)) {
        // oxlint-disable-next-line no-await-in-loop
        await a.change(featureRecordKind, featureId, (feature) => ({ ...feature, name }));
      }
    a.undoable(`Changed ${before.name}`, before.jobId);
    return after;
  });
}

/**
 * Removes a check with its features and their readings. A reading logged under it elsewhere brings it back when the two
 * are merged, as it does with a feature.
 */
export async function removeCheck(store: Store, id: Id): Promise<StoreResult<void>> {
  return actOnCheck(store, id, async (a, check) => {
    await a.remove('checks', id);
    for (const featureId of await featuresLeft(a, check)) {
      // oxlint-disable-next-line no-await-in-loop
      await removeWithReadings(a, featureId);
    }
    a.undoable(`Removed the check ${check.name}`, check.jobId);
  });
}

const checkStores = ['jobs', 'worksheets', 'features', 'readings', 'checks', 'drafts'] as const;

async function actOnCheck<T>(
  store: Store,
  id: Id,
  work: (a: Act, before: Check) => Promise<T>,
): Promise<StoreResult<T>> {
  return act(store, { stores: checkStores }, async (a) => {
    const before = await a.get(checkKind, id);
    await touchJob(a, before.jobId);
    return work(a, before);
  });
}

async function makeCheck(
  a: Act,
  { id, order }: { readonly id: Id; readonly order: number },
  check: NewCheck,
): Promise<Check> {
  await mustHaveBeen(a, 'worksheets', check.worksheetId);
  // A millisecond apart, so that checks made together keep their order.
  const at = a.at + order;
  const takes = makeTake(a, { ...check, id }, at);
  return a.make(checkKind, { ...check, id, takes, createdAt: at });
}

function makeTake(
  a: Act,
  { id: checkId, jobId, name, by }: Pick<Check, 'id' | 'jobId' | 'name' | 'by'>,
  at: number,
): Record<Id, CheckTake> {
  if (by === 'by-eye') return { [newId()]: { at } };
  const featureId = newId();
  a.make(featureRecordKind, { id: featureId, jobId, kind: by, name, createdAt: at, checkId });
  return { [newId()]: { at, featureId } };
}

function nextTake(a: Act, check: Check): Record<Id, CheckTake> {
  // Behind the go before it, also when the phone's clock was set back in between.
  return makeTake(a, check, Math.max(a.at, (lastTake(check)?.at ?? 0) + 1));
}

/** Whether what was seen by eye was seen of something else. */
export function isSeenOtherwise(
  check: Pick<Check, 'takes' | 'name' | 'how'>,
  { name = check.name, how = check.how }: CheckChanges,
): boolean {
  return lastTake(check)?.seen !== undefined && (name !== check.name || how !== check.how);
}

async function featuresLeft(a: Act, check: Check): Promise<Id[]> {
  const ids = Object.values(check.takes).flatMap(({ featureId }) => featureId ?? []);
  const kept = await Promise.all(ids.map((id) => a.kept('features', id)));
  return kept.flatMap((feature) => (feature && !isGone(feature) ? feature.id : []));
}
