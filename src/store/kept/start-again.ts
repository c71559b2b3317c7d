import { act, type Act } from '../opening/act.ts';
import { checksOf } from './checks.ts';
import { copyFor } from './make-cut-again.ts';
import { cutsOf, makeCut } from './cuts.ts';
import { featuresOf } from './features.ts';
import { getJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { partsOf } from './parts.ts';
import type {
  AssemblyStep,
  Check,
  Cut,
  Feature,
  Id,
  Job,
  Part,
  SizeInput,
  StackPartInput,
  Worksheet,
} from '../base/records.ts';
import { stepKind } from './assembly-schema.ts';
import { checkKind } from './check-schema.ts';
import { cutRecordKind } from './cut-schema.ts';
import { featureRecordKind } from './feature-schema.ts';
import { jobKind, partKind } from './job-schema.ts';
import { worksheetKind } from './worksheet-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import { stepsOf } from './steps.ts';
import { worksheetsOf } from './worksheets.ts';

/** What of a job another is begun with. */
export type TakenAlong = {
  readonly worksheets: boolean;
  readonly cuts: boolean;
  readonly checks: boolean;
  readonly steps: boolean;
  readonly toGet: boolean;
};

type From = {
  readonly job: Job;
  readonly parts: readonly Part[];
  readonly features: readonly Feature[];
  readonly worksheets: readonly Worksheet[];
  readonly checks: readonly Check[];
  readonly steps: readonly AssemblyStep[];
};

/**
 * Begins a job with what another was done by: its questions, wants and limits, and the order it was put together in. Never
 * its readings, nor what was typed as read: those were taken on other parts, and each size is asked for anew. Nothing of it
 * is cut, proved, done or signed.
 */
export async function startAgain(
  store: Store,
  fromId: Id,
  { name, take }: { readonly name: string; readonly take: TakenAlong },
): Promise<StoreResult<Job>> {
  const [job, parts, features, worksheets, checks, steps, cuts] = await Promise.all([
    getJob(store, fromId),
    partsOf(store, fromId),
    featuresOf(store, fromId),
    worksheetsOf(store, fromId),
    checksOf(store, fromId),
    stepsOf(store, fromId),
    cutsOf(store, fromId),
  ]);
  const jobId = newId();
  return act(
    store,
    { stores: ['jobs', 'parts', 'features', 'worksheets', 'checks', 'steps', 'cuts'] },
    async (a) => {
      const old = job ?? (await a.get(jobKind, fromId));
      const made = makeJob(a, { id: jobId, name, old, take });
      const ids = newIds([...parts, ...features, ...worksheets]);
      const from = { job: old, parts, features: features.filter(isNoCheck), worksheets, checks, steps };
      if (take.worksheets || take.steps) makeParts(a, from, { jobId, ids });
      if (take.worksheets) makeWorksheets(a, from, { jobId, ids });
      const known = take.worksheets ? ids : new Map<Id, Id>();
      if (take.checks) makeChecks(a, from, { jobId, ids: known });
      if (take.steps) makeSteps(a, from, { jobId, ids, known });
      if (take.cuts) await makeCuts(a, cuts, jobId);
      a.undoable(`Made the job ${name} from ${old.name}`, jobId);
      return made;
    },
  );
}

type Into = { readonly jobId: Id; readonly ids: ReadonlyMap<Id, Id> };

function newIds(records: readonly { readonly id: Id }[]): ReadonlyMap<Id, Id> {
  return new Map(records.map(({ id }) => [id, newId()]));
}

function isNoCheck({ checkId }: Feature): boolean {
  return checkId === undefined;
}

type NewOne = { readonly id: Id; readonly name: string; readonly old: Job; readonly take: TakenAlong };

function makeJob(a: Act, { id, name, old, take }: NewOne): Job {
  const { what, systems, touchesNone, toGet } = old;
  return a.make(jobKind, {
    id,
    name,
    what,
    systems,
    ...(touchesNone && { touchesNone }),
    ...(take.toGet && toGet && { toGet }),
    state: 'open',
    customerNote: '',
    demo: false,
    createdAt: a.at,
    touchedAt: a.at,
  });
}

/** As made again in another job: where the figures were worked out is still known, and marked when it changes. */
async function makeCuts(a: Act, cuts: readonly Cut[], jobId: Id): Promise<void> {
  const good = cuts.filter(({ state }) => state !== 'scrapped' && state !== 'made-again');
  const old = await Promise.all(good.map(({ id }) => a.get(cutRecordKind, id)));
  old.forEach((cut, order) => makeCut(a, { id: newId(), order }, copyFor(cut, jobId)));
}

/** A part that a mock-up was swapped for is the real one; a mock-up stays one until it is out again. */
function makeParts(a: Act, { parts }: From, { jobId, ids }: Into): void {
  for (const { id, name, origin, swapped } of parts)
    a.make(partKind, {
      id: ids.get(id) ?? newId(),
      jobId,
      name,
      origin: swapped && origin === 'mock-up' ? 'bought' : origin,
    });
}

function makeWorksheets(a: Act, { features, worksheets }: From, { jobId, ids }: Into): void {
  const asked = new Set<Id>();
  const anew = (size: SizeInput | undefined): SizeInput | undefined => {
    if (size?.from !== 'feature') return size && !size.tool ? size : undefined;
    const featureId = features.some(({ id }) => id === size.featureId) ? ids.get(size.featureId) : undefined;
    if (featureId === undefined) return undefined;
    asked.add(size.featureId);
    return { from: 'feature', featureId };
  };
  for (const { id, kind, title, sizes, choices, parts } of worksheets)
    a.make(worksheetKind, {
      id: ids.get(id) ?? newId(),
      jobId,
      kind,
      title,
      sizes: Object.fromEntries(
        Object.entries(sizes).flatMap(([name, size]) => {
          const kept = anew(size);
          return kept ? [[name, kept] as const] : [];
        }),
      ),
      choices,
      parts: Object.fromEntries(
        Object.entries(parts).map(([key, part]): [Id, StackPartInput] => {
          const { size: before, ...rest } = part;
          const size = anew(before);
          return [key, { ...rest, ...(size && { size }) }];
        }),
      ),
      createdAt: a.at,
      touchedAt: a.at,
    });
  for (const { id, kind, name, partId, material } of features.filter((feature) => asked.has(feature.id))) {
    const part = partId === undefined ? undefined : ids.get(partId);
    a.make(featureRecordKind, {
      id: ids.get(id) ?? newId(),
      jobId,
      kind,
      name,
      ...(material !== undefined && { material }),
      ...(part !== undefined && { partId: part }),
      createdAt: a.at,
    });
  }
}

function makeChecks(a: Act, { checks }: From, { jobId, ids }: Into): void {
  for (const { worksheetId, sizeName, name, by, lower, upper, limitsFrom, how } of checks) {
    const worksheet = worksheetId === undefined ? undefined : ids.get(worksheetId);
    a.make(checkKind, {
      id: newId(),
      jobId,
      ...(worksheet !== undefined && { worksheetId: worksheet }),
      ...(sizeName !== undefined && { sizeName }),
      name,
      by,
      ...(lower && { lower }),
      ...(upper && { upper }),
      limitsFrom,
      how,
      takes: {},
      createdAt: a.at,
    });
  }
}

type IntoSteps = Into & {
  /** Worksheets that came along. */
  readonly known: ReadonlyMap<Id, Id>;
};

function makeSteps(a: Act, { steps }: From, { jobId, ids, known }: IntoSteps): void {
  for (const step of steps) {
    const { worksheetId, workedOut, partIds, text, order, orientation, grease, locker } = step;
    const { cureHours, torque, cotterPin } = step;
    const worksheet = worksheetId === undefined ? undefined : known.get(worksheetId);
    const ground = workedOut && known.get(workedOut.worksheetId);
    a.make(stepKind, {
      id: newId(),
      jobId,
      text,
      order,
      ...(orientation !== undefined && { orientation }),
      ...(grease !== undefined && { grease }),
      ...(locker !== undefined && { locker }),
      ...(cureHours !== undefined && { cureHours }),
      ...(torque && { torque }),
      ...(cotterPin !== undefined && { cotterPin }),
      partIds: partIds.flatMap((id) => ids.get(id) ?? []),
      ...(worksheet !== undefined && { worksheetId: worksheet }),
      ...(workedOut && ground !== undefined && { workedOut: { ...workedOut, worksheetId: ground } }),
      createdAt: a.at,
    });
  }
}
