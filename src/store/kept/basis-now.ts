import type { Act } from '../opening/act.ts';
import { basisOf } from './basis.ts';
import { isGone, type Kept } from '../base/kept.ts';
import type { Basis, Id } from '../base/records.ts';
import { checkKind } from './check-schema.ts';
import { parseKept } from '../base/schema-common.ts';
import { worksheetKind } from './worksheet-schema.ts';
import { featuresIn } from './worksheets.ts';

/** The stores an act needs that keeps what a worksheet said while it was done. */
export const basisStores = ['checks', 'worksheets', 'readings'] as const;

/**
 * What a worksheet stands on right now, as part of the act that does something by it: what was done, read or seen keeps
 * it, and a later change of a size shows. Nothing where there is no worksheet, or none that can be read.
 */
export async function basisNowOf(a: Act, worksheetId: Id | undefined): Promise<Basis | undefined> {
  const kept = worksheetId === undefined ? undefined : await a.kept('worksheets', worksheetId);
  const worksheet = kept && !isGone(kept) ? parseKept(worksheetKind, kept) : undefined;
  if (!worksheet?.ok) return undefined;
  const read = await Promise.all([...featuresIn(worksheet.value)].map((id) => readingsOf(a, id)));
  const counting = read
    .flat()
    .filter((one) => !isGone(one) && one['struckOut'] === undefined)
    .map(({ id }) => ({ id }));
  return basisOf(worksheet.value, counting);
}

/** The same for the worksheet that a check came from. */
export async function basisNowOfCheck(a: Act, checkId: Id | undefined): Promise<Basis | undefined> {
  const kept = checkId === undefined ? undefined : await a.kept('checks', checkId);
  const check = kept && parseKept(checkKind, kept);
  return check?.ok ? basisNowOf(a, check.value.worksheetId) : undefined;
}

async function readingsOf(a: Act, featureId: Id): Promise<Kept[]> {
  const range = IDBKeyRange.bound([featureId], [featureId, []]);
  return a.tx.objectStore('readings').index('featureId+at').getAll(range);
}
