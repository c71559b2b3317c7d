import { act, type Act } from '../opening/act.ts';
import { basisNowOf, basisStores } from './basis-now.ts';
import { withChanges, type Changes } from '../base/changes.ts';
import { doneAs, isToDoAgain } from './done-again.ts';
import type { Kept } from '../base/kept.ts';
import { touchJob } from './jobs.ts';
import { mustHaveBeen } from './must-have-been.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { readable, readByIndex, readOne } from '../opening/read.ts';
import type { AssemblyStep, Id, Stamped } from '../base/records.ts';
import { stepKind } from './assembly-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A job's assembly steps in their order. */
export async function stepsOf(store: Store, jobId: Id): Promise<AssemblyStep[]> {
  return inOrder(await readByIndex(store, stepKind, { index: 'jobId', key: jobId }));
}

export async function getStep(store: Store, id: Id): Promise<AssemblyStep | undefined> {
  return readOne(store, stepKind, id);
}

export type NewStep = Omit<AssemblyStep, 'id' | 'order' | 'done' | 'wasDone' | 'createdAt' | 'partIds'> & {
  readonly partIds?: readonly Id[];
};

/** Puts steps behind the last one of their job, in the order given: one act. */
export async function addSteps(
  store: Store,
  steps: readonly NewStep[],
): Promise<StoreResult<AssemblyStep[]>> {
  const ids = steps.map(newId);
  return act(store, { stores: stepStores }, async (a) => {
    const made: AssemblyStep[] = [];
    const last = new Map<Id, number>();
    for (const [index, step] of steps.entries()) {
      const { jobId, partIds = [] } = step;
      // oxlint-disable-next-line no-await-in-loop
      const order = last.get(jobId) ?? (await lastOrder(store, a, jobId));
      last.set(jobId, order + 1);
      // oxlint-disable-next-line no-await-in-loop
      await ownersMustHaveBeen(a, step);
      const id = ids[index] ?? newId();
      made.push(a.make(stepKind, { ...step, id, partIds, order: order + 1, createdAt: a.at }));
    }
    await Promise.all([...last.keys()].map((jobId) => touchJob(a, jobId)));
    const [first] = steps;
    const label =
      steps.length === 1 && first ? `Added ${shortened(first.text)}` : `Added ${steps.length} steps`;
    a.undoable(label, first?.jobId);
    return made;
  });
}

export type StepChanges = Changes<
  AssemblyStep,
  | 'text'
  | 'orientation'
  | 'grease'
  | 'locker'
  | 'cureHours'
  | 'torque'
  | 'cotterPin'
  | 'worksheetId'
  | 'workedOut'
  | 'partIds'
>;

/** Changes a step. One that is done is to be done again when what it says is changed. */
export async function changeStep(
  store: Store,
  id: Id,
  changes: StepChanges,
  draftKey?: string,
): Promise<StoreResult<AssemblyStep>> {
  return actOnStep(store, id, async (a, before) => {
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    await ownersMustHaveBeen(a, changes);
    const after = await a.change(stepKind, id, (step) => {
      const changed = withChanges(step, changes);
      return isToDoAgain('steps', step, changed) ? openAgain(changed) : changed;
    });
    a.undoable(`Changed ${shortened(before.text)}`, before.jobId);
    return after;
  });
}

/** Moves a step one place towards the first or the last. At the end already it stays where it is. */
export async function moveStep(
  store: Store,
  id: Id,
  to: 'up' | 'down',
): Promise<StoreResult<AssemblyStep[]>> {
  return actOnStep(store, id, async (a, before) => {
    const steps = await stepsIn(store, a, before.jobId);
    const from = steps.findIndex((step) => step.id === id);
    const other = to === 'up' ? from - 1 : from + 1;
    const [moved] = steps.splice(from, 1);
    if (!moved || other < 0 || other > steps.length) return stepsIn(store, a, before.jobId);
    steps.splice(other, 0, moved);
    const after: AssemblyStep[] = [];
    for (const [index, step] of steps.entries()) {
      // Two phones may have given two steps the same place: they are all numbered anew, where that changes anything.
      // oxlint-disable-next-line no-await-in-loop
      after.push(await a.change(stepKind, step.id, (one) => ({ ...one, order: index })));
    }
    a.undoable(`Moved ${shortened(before.text)} ${to}`, before.jobId);
    return after;
  });
}

export async function markDone(store: Store, id: Id, by: string): Promise<StoreResult<AssemblyStep>> {
  return actOnStep(store, id, async (a, before) => {
    const basis = await basisNowOf(a, before.workedOut?.worksheetId ?? before.worksheetId);
    const after = await a.change(stepKind, id, (step) =>
      withChanges<typeof step, 'done' | 'wasDone'>(step, {
        done: { at: a.at, by, as: doneAs('steps', step), ...(basis && { basis }) },
        wasDone: undefined,
      }),
    );
    a.undoable(`Done: ${shortened(before.text)}`, before.jobId);
    return after;
  });
}

export async function markUndone(store: Store, id: Id): Promise<StoreResult<AssemblyStep>> {
  return actOnStep(store, id, async (a, before) => {
    const after = await a.change(stepKind, id, (step) =>
      withChanges<typeof step, 'done'>(step, { done: undefined }),
    );
    a.undoable(`Not done: ${shortened(before.text)}`, before.jobId);
    return after;
  });
}

export async function removeStep(store: Store, id: Id): Promise<StoreResult<void>> {
  return actOnStep(store, id, async (a, step) => {
    await a.remove('steps', id);
    a.undoable(`Removed ${shortened(step.text)}`, step.jobId);
  });
}

function openAgain(step: AssemblyStep & Stamped): AssemblyStep & Stamped {
  return withChanges<typeof step, 'done' | 'wasDone'>(step, { done: undefined, wasDone: step.done });
}

const stepStores = ['jobs', 'parts', 'steps', 'drafts', ...basisStores] as const;

async function actOnStep<T>(
  store: Store,
  id: Id,
  work: (a: Act, before: AssemblyStep) => Promise<T>,
): Promise<StoreResult<T>> {
  return act(store, { stores: stepStores }, async (a) => {
    const before = await a.get(stepKind, id);
    await touchJob(a, before.jobId);
    return work(a, before);
  });
}

async function stepsIn(store: Store, a: Act, jobId: Id): Promise<AssemblyStep[]> {
  const kept: Kept[] = await a.tx.objectStore('steps').index('jobId').getAll(jobId);
  return inOrder(readable(store, stepKind, kept));
}

async function lastOrder(store: Store, a: Act, jobId: Id): Promise<number> {
  return Math.max(-1, ...(await stepsIn(store, a, jobId)).map(({ order }) => order));
}

function inOrder(steps: readonly AssemblyStep[]): AssemblyStep[] {
  return steps.toSorted((a, b) => a.order - b.order || a.createdAt - b.createdAt || (a.id < b.id ? -1 : 1));
}

async function ownersMustHaveBeen(
  a: Act,
  { worksheetId, workedOut, partIds = [] }: StepChanges,
): Promise<void> {
  await mustHaveBeen(a, 'worksheets', worksheetId);
  await mustHaveBeen(a, 'worksheets', workedOut?.worksheetId);
  await Promise.all(partIds.map((id) => mustHaveBeen(a, 'parts', id)));
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
