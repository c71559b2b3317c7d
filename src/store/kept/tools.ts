import { usualTools, type MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { worked } from '../../engine/length/refusal.ts';
import { act } from '../opening/act.ts';
import { seedStamp } from '../base/clock.ts';
import { isGone, type Kept } from '../base/kept.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { isPlainObject } from '../base/paths.ts';
import { read, readable } from '../opening/read.ts';
import type { Id, ToolRecord } from '../base/records.ts';
import { parseKept, toKept } from '../base/schema-common.ts';
import { toolKind } from './tool-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** The shop's measuring tools: the usual ones first, then the shop's own by name. */
export async function measuringTools(store: Store): Promise<MeasuringTool[]> {
  return (await toolRecords(store)).map(({ tool }) => tool);
}

/** The tools with the day of their last check. The usual ones are put into the database at the first look. */
export async function toolRecords(store: Store): Promise<ToolRecord[]> {
  const first = await keptTools(store);
  const missing = missingOf(first);
  if (missing.length === 0) return inOrder(readable(store, toolKind, first.kept));
  const seeded = await seedTools(store, missing);
  const { kept } = seeded.ok ? await keptTools(store) : first;
  const records = readable(store, toolKind, kept);
  // A full disk must not leave the fitter without tools.
  return inOrder(seeded.ok ? records : [...records, ...missing.map((tool) => ({ id: tool.id, tool }))]);
}

export async function addTool(
  store: Store,
  tool: Omit<MeasuringTool, 'id'>,
): Promise<StoreResult<ToolRecord>> {
  const id = newId();
  return act(store, { stores: ['tools'] }, (a) => {
    const made = a.make(toolKind, { id, tool: { ...tool, id } });
    a.undoable(`Added ${tool.name}`);
    return made;
  });
}

export type ToolChanges = {
  readonly tool?: Partial<Omit<MeasuringTool, 'id'>>;
  readonly lastChecked?: number;
};

/** Changes a tool from now on. Readings keep the error limits that were in force when they were taken. */
export async function changeTool(
  store: Store,
  id: Id,
  { tool, ...others }: ToolChanges,
): Promise<StoreResult<ToolRecord>> {
  const there = await usualPutIn(store, id);
  if (!there.ok) return there;
  return act(store, { stores: ['tools'] }, async (a) => {
    const after = await a.change(toolKind, id, (record) => ({
      ...record,
      ...others,
      tool: { ...record.tool, ...tool },
    }));
    a.undoable(`Changed ${after.tool.name}`);
    return after;
  });
}

export async function removeTool(store: Store, id: Id): Promise<StoreResult<void>> {
  const there = await usualPutIn(store, id);
  if (!there.ok) return there;
  return act(store, { stores: ['tools'] }, async (a) => {
    const { tool } = await a.get(toolKind, id);
    await a.remove('tools', id);
    a.undoable(`Removed ${tool.name}`);
  });
}

/** The usual tools that were taken out of this shop, as they were then. */
export async function removedTools(store: Store): Promise<MeasuringTool[]> {
  const here = new Set((await toolRecords(store)).map(({ id }) => id));
  const { kept } = await keptTools(store);
  return usualTools.flatMap((usual) => {
    const record = kept.find(({ id }) => id === usual.id);
    // One that can't be read by this version is there all the same.
    if (here.has(usual.id) || (record && !isGone(record))) return [];
    const removed = record && parseKept(toolKind, record);
    return [removed?.ok ? removed.value.tool : usual];
  });
}

export async function putBackTool(store: Store, tool: MeasuringTool): Promise<StoreResult<void>> {
  return act(store, { stores: ['tools'] }, async (a) => {
    const kept = await a.kept('tools', tool.id);
    if (kept) {
      const { deleted: _removed, ...rest } = kept;
      a.changeKept('tools', kept, { ...rest, id: kept.id });
    } else a.make(toolKind, { id: tool.id, tool });
    a.undoable(`Put back ${tool.name}`);
  });
}

/** Where a full phone took none of the usual tools so far, what is to be done with one fails for that, not for want of it. */
async function usualPutIn(store: Store, id: Id): Promise<StoreResult<void>> {
  const missing = missingOf(await keptTools(store));
  return missing.some((tool) => tool.id === id) ? seedTools(store, missing) : worked(undefined);
}

type KeptTools = { readonly kept: Kept[]; readonly seeded: ReadonlySet<unknown> };

function missingOf({ seeded }: KeptTools): readonly MeasuringTool[] {
  return usualTools.filter(({ id }) => !seeded.has(id));
}

async function keptTools(store: Store): Promise<KeptTools> {
  return read(store, ['tools', 'device'], async (tx) => {
    const [kept, mark]: [Kept[], unknown] = await Promise.all([
      tx.objectStore('tools').getAll(),
      tx.objectStore('device').get('seededTools'),
    ]);
    const ids = isPlainObject(mark) && Array.isArray(mark['ids']) ? mark['ids'] : [];
    return { kept, seeded: new Set(ids) };
  });
}

// The mark says which tools were ever put in, so that one that was removed doesn't come back at the next start. Seeds
// carry the oldest stamp there is: two phones start alike, and any change made by a person wins over them.
async function seedTools(store: Store, tools: readonly MeasuringTool[]): Promise<StoreResult<void>> {
  return act(store, { stores: ['tools'] }, async (a) => {
    for (const tool of tools) {
      const kept = toKept(toolKind, { id: tool.id, tool, stamps: { '*': seedStamp } });
      // oxlint-disable-next-line no-await-in-loop
      if (kept.ok && !(await a.kept('tools', tool.id))) a.putKept('tools', kept.value);
    }
    a.putKept('device', { id: 'seededTools', ids: usualTools.map(({ id }) => id) });
  });
}

function inOrder(records: readonly ToolRecord[]): ToolRecord[] {
  const usual = new Map(usualTools.map(({ id }, index) => [id, index]));
  const rank = ({ id }: ToolRecord): number => usual.get(id) ?? usual.size;
  return records.toSorted((a, b) => rank(a) - rank(b) || a.tool.name.localeCompare(b.tool.name));
}
