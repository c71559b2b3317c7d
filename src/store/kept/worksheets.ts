import { act, type Act } from '../opening/act.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { partsAsRead } from './parts-as-read.ts';
import { isReadOfTheWhole, withPartsChange } from './parts-changed.ts';
import { readAsMade, readOne } from '../opening/read.ts';
import type { Id, SizeInput, StackPartInput, Worksheet } from '../base/records.ts';
import { worksheetKind } from './worksheet-schema.ts';
import { plainPart, plainParts, plainSize, plainSizes } from './size-input.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A job's worksheets in the order in which they were made. */
export async function worksheetsOf(store: Store, jobId: Id): Promise<Worksheet[]> {
  return readAsMade(store, worksheetKind, { index: 'jobId', key: jobId });
}

export async function getWorksheet(store: Store, id: Id): Promise<Worksheet | undefined> {
  return readOne(store, worksheetKind, id);
}

/** The worksheets that a feature's readings go into. */
export async function worksheetsUsing(store: Store, jobId: Id, featureId: Id): Promise<Worksheet[]> {
  const worksheets = await worksheetsOf(store, jobId);
  return worksheets.filter((worksheet) => featuresIn(worksheet).has(featureId));
}

/** The features a worksheet takes its sizes from. */
export function featuresIn(worksheet: Pick<Worksheet, 'sizes' | 'parts'>): ReadonlySet<Id> {
  const parts = Object.values(worksheet.parts).flatMap(({ size, leastLength }) => [size, leastLength]);
  const inputs = [...Object.values(worksheet.sizes), ...parts];
  return new Set(inputs.flatMap((input) => (input?.from === 'feature' ? [input.featureId] : [])));
}

export type NewWorksheet = Pick<Worksheet, 'jobId' | 'kind' | 'title'> &
  Partial<Pick<Worksheet, 'sizes' | 'choices' | 'parts'>>;

export async function createWorksheet(
  store: Store,
  worksheet: NewWorksheet,
): Promise<StoreResult<Worksheet>> {
  const id = newId();
  return act(store, { stores: ['jobs', 'features', 'worksheets'] }, async (a) => {
    await touchJob(a, worksheet.jobId);
    const made = a.make(worksheetKind, {
      ...worksheet,
      id,
      sizes: plainSizes(worksheet.sizes ?? {}),
      choices: worksheet.choices ?? {},
      parts: plainParts(worksheet.parts ?? {}),
      createdAt: a.at,
      touchedAt: a.at,
    });
    await featuresMustBeThere(a, made);
    a.undoable(`Made ${worksheet.title}`, worksheet.jobId);
    return made;
  });
}

/** Sets one size of a worksheet, or takes it out. The draft it was typed in goes in the same transaction. */
export async function setSize(
  store: Store,
  id: Id,
  name: string,
  size: SizeInput | undefined,
  draftKey?: string,
): Promise<StoreResult<Worksheet>> {
  return changeWorksheet(store, id, draftKey, (worksheet, at) => {
    const isDated = size?.from === 'typed' && isReadOfTheWhole(worksheet, name);
    const plain = size && plainSize(size);
    return {
      ...worksheet,
      sizes: withEntry(
        worksheet.sizes,
        name,
        isDated ? { ...size, ...plain, at, readOf: partsAsRead(worksheet) } : plain,
      ),
    };
  });
}

/** A choice, and in the same act the fields that it answers besides. */
export async function setChoice(
  store: Store,
  id: Id,
  name: string,
  value: string | undefined,
  besides: Readonly<Record<string, SizeInput | string>> = {},
): Promise<StoreResult<Worksheet>> {
  const given = Object.entries(besides);
  const choices = given.filter((one): one is [string, string] => typeof one[1] === 'string');
  const sizes = given.flatMap(([field, one]) => (typeof one === 'string' ? [] : [[field, plainSize(one)]]));
  return changeWorksheet(store, id, undefined, (worksheet) => ({
    ...worksheet,
    sizes: { ...worksheet.sizes, ...Object.fromEntries(sizes) },
    choices: { ...withEntry(worksheet.choices, name, value), ...Object.fromEntries(choices) },
  }));
}

export async function setPart(
  store: Store,
  id: Id,
  partId: Id,
  part: StackPartInput | undefined,
  draftKey?: string,
): Promise<StoreResult<Worksheet>> {
  return changeWorksheet(store, id, draftKey, (worksheet) => ({
    ...worksheet,
    parts: withEntry(worksheet.parts, partId, part && plainPart(part)),
  }));
}

export async function renameWorksheet(store: Store, id: Id, title: string): Promise<StoreResult<Worksheet>> {
  return changeWorksheet(store, id, undefined, (worksheet) => ({ ...worksheet, title }));
}

export async function removeWorksheet(store: Store, id: Id): Promise<StoreResult<void>> {
  return act(store, { stores: ['jobs', 'worksheets'] }, async (a) => {
    const worksheet = await a.get(worksheetKind, id);
    await touchJob(a, worksheet.jobId);
    await a.remove('worksheets', id);
    a.undoable(`Removed ${worksheet.title}`, worksheet.jobId);
  });
}

async function changeWorksheet(
  store: Store,
  id: Id,
  draftKey: string | undefined,
  changed: <W extends Worksheet>(worksheet: W, at: number) => W,
): Promise<StoreResult<Worksheet>> {
  return act(store, { stores: ['jobs', 'features', 'worksheets', 'drafts'] }, async (a) => {
    const before = await a.get(worksheetKind, id);
    await touchJob(a, before.jobId);
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    const after = await a.change(worksheetKind, id, (worksheet) => ({
      ...withPartsChange(worksheet, changed(worksheet, a.at), a.at),
      touchedAt: a.at,
    }));
    await featuresMustBeThere(a, after);
    a.undoable(`Changed ${before.title}`, before.jobId);
    return after;
  });
}

// A removed feature is still there for the worksheets that used it; one that never was would make a backup that can't be read back.
async function featuresMustBeThere(a: Act, worksheet: Worksheet): Promise<void> {
  const features = await Promise.all([...featuresIn(worksheet)].map((id) => a.kept('features', id)));
  if (features.includes(undefined)) a.refuse({ code: 'gone', store: 'features' });
}

function withEntry<T>(
  entries: Readonly<Record<string, T>>,
  name: string,
  value: T | undefined,
): Readonly<Record<string, T>> {
  const { [name]: _old, ...others } = entries;
  return value === undefined ? others : { ...others, [name]: value };
}
