import { act } from '../opening/act.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { withPartsChange } from './parts-changed.ts';
import type { Id, StackPartInput, Worksheet } from '../base/records.ts';
import { worksheetKind } from './worksheet-schema.ts';
import { plainPart } from './size-input.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** The choice that says whether all parts of a stack are in: `open` while they are being put in, `all` once that was said. */
const PARTS = 'parts';

/** Whether all parts are in. In a stack of an older Slipfit nobody was asked: as soon as it has a part. */
export function partsAreIn({ choices, parts }: Pick<Worksheet, 'choices' | 'parts'>): boolean {
  return choices[PARTS] !== 'open' && Object.keys(parts).length > 0;
}

export type AddedPart = {
  readonly worksheetId: Id;
  readonly part: Omit<StackPartInput, 'order'>;
  /** No other part follows. */
  readonly isLast?: boolean;
  /** What it was typed in. */
  readonly draftKeys?: readonly string[];
};

/** Puts the next part into a stack, behind its last one: one act, so that one undo takes it out again. */
export async function addPart(
  store: Store,
  { worksheetId, part, isLast = false, draftKeys = [] }: AddedPart,
): Promise<StoreResult<Worksheet>> {
  const id = newId();
  return act(store, { stores: ['jobs', 'features', 'worksheets', 'drafts'] }, async (a) => {
    const before = await a.get(worksheetKind, worksheetId);
    await touchJob(a, before.jobId);
    for (const key of draftKeys) a.drop('drafts', key);
    if (part.size?.from === 'feature' && (await a.kept('features', part.size.featureId)) === undefined)
      a.refuse({ code: 'gone', store: 'features' });
    const after = await a.change(worksheetKind, worksheetId, (worksheet) => {
      const order = Math.max(0, ...Object.values(worksheet.parts).map((one) => one.order)) + 1;
      const withPart = {
        ...worksheet,
        choices: { ...worksheet.choices, ...standing(worksheet, isLast) },
        parts: { ...worksheet.parts, [id]: plainPart({ ...part, order }) },
      };
      return { ...withPartsChange(worksheet, withPart, a.at), touchedAt: a.at };
    });
    a.undoable(`Changed ${before.title}: ${part.name} put in`, before.jobId);
    return after;
  });
}

/** Where all were in already they stay so: the answer stands with one part more. */
function standing(worksheet: Worksheet, isLast: boolean): Readonly<Record<string, string>> {
  if (isLast) return { [PARTS]: 'all' };
  return partsAreIn(worksheet) ? {} : { [PARTS]: 'open' };
}
