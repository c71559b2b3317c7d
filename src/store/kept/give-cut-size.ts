import { act } from '../opening/act.ts';
import { touchJob } from './jobs.ts';
import type { Store } from '../opening/open-store.ts';
import { withPartsChange } from './parts-changed.ts';
import type { Basis, Id, SizeInput, Worksheet } from '../base/records.ts';
import { cutRecordKind } from './cut-schema.ts';
import { worksheetKind } from './worksheet-schema.ts';
import { plainSize } from './size-input.ts';
import type { StoreResult } from '../base/store-refusal.ts';

export type GivenCutSize = {
  readonly worksheetId: Id;
  /** The stack's part, or the size of another worksheet that holds a part on hand. */
  readonly place: { readonly partId: Id } | { readonly sizeName: string };
  /** As it was measured at the machine. */
  readonly size: SizeInput;
  /** Cuts that were made to figures which stood until now; their own outcome must not make them look out of date. */
  readonly cutIds: readonly Id[];
  /** What those stand on from now on: the worksheet with the new size. */
  readonly basis: Basis;
};

/** Gives a worksheet the size that one of its parts was cut to, in one act, so that one undo takes it back. */
export async function giveCutSize(
  store: Store,
  { worksheetId, place, size, cutIds, basis }: GivenCutSize,
): Promise<StoreResult<Worksheet>> {
  return act(store, { stores: ['jobs', 'worksheets', 'cuts'] }, async (a) => {
    const before = await a.get(worksheetKind, worksheetId);
    await touchJob(a, before.jobId);
    if ('partId' in place && !before.parts[place.partId])
      return a.refuse({ code: 'gone', store: 'worksheets' });
    const after = await a.change(worksheetKind, worksheetId, (worksheet) => ({
      ...withPartsChange(worksheet, withCutSize(worksheet, place, size), a.at, { byItsAnswer: true }),
      touchedAt: a.at,
    }));
    await Promise.all(cutIds.map((id) => a.change(cutRecordKind, id, (cut) => ({ ...cut, basis }))));
    a.undoable(`Changed ${before.title}`, before.jobId);
    return after;
  });
}

/** The worksheet with a part as it was cut. */
export function withCutSize<W extends Pick<Worksheet, 'parts' | 'sizes'>>(
  worksheet: W,
  place: GivenCutSize['place'],
  size: SizeInput,
): W {
  if ('sizeName' in place)
    return { ...worksheet, sizes: { ...worksheet.sizes, [place.sizeName]: plainSize(size) } };
  const part = worksheet.parts[place.partId];
  if (!part) return worksheet;
  return { ...worksheet, parts: { ...worksheet.parts, [place.partId]: { ...part, size: plainSize(size) } } };
}
