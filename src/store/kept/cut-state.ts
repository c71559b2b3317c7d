import type { StoreName } from '../base/stores.ts';
import { firstLimit, lastLimit, metalBetween } from '../../engine/cut/cut.ts';
import { isNegative, type Length } from '../../engine/length/length.ts';
import type { Kept } from '../base/kept.ts';
import type { Cut, CutPass, CutState, Id } from '../base/records.ts';
import { parseKept } from '../base/schema-common.ts';
import { countedAt20 } from './read-at-20.ts';
import { cutRecordKind } from './cut-schema.ts';

type Measured = Pick<Cut, 'of' | 'target' | 'lower' | 'upper' | 'operation' | 'passes' | 'state'>;

/** A cut's measurements in order of time, struck-out ones among them; on every phone in the same order. */
export function passesOf(cut: Pick<Cut, 'passes'>): [Id, CutPass][] {
  return Object.entries(cut.passes).toSorted(([a, one], [b, other]) => one.at - other.at || (a < b ? -1 : 1));
}

/** The last measurement that counts. */
export function lastPassOf(cut: Pick<Cut, 'passes'>): [Id, CutPass] | undefined {
  return passesOf(cut).findLast(([, { struckOut }]) => !struckOut);
}

/** Which side of its limits a measured size puts a cut on. */
export function stateAt(
  { of, target, lower, upper }: Pick<Cut, 'of' | 'target' | 'lower' | 'upper'>,
  size: Length,
): 'cutting' | 'to-size' | 'over' {
  const sizes = { of, target: target.exact, lower: lower.exact, upper: upper.exact };
  if (isNegative(metalBetween(of, size, lastLimit(sizes)))) return 'over';
  return isNegative(metalBetween(of, firstLimit(sizes), size)) ? 'cutting' : 'to-size';
}

/**
 * The state a cut is in. Whether it is to size follows from what was measured and from the limits as they are now; that
 * it was begun without measuring, scrapped or made again is what the fitter said.
 */
export function stateByPasses(cut: Measured): CutState {
  if (cut.state === 'scrapped' || cut.state === 'made-again') return cut.state;
  const last = lastPassOf(cut);
  const side = last && stateAt(cut, countedAt20(last[1].measured.exact, last[1]).exact);
  if (side && side !== 'cutting') return side;
  return cut.state === 'cutting' || isBegun(cut) ? 'cutting' : 'to-cut';
}

/**
 * For a record that was put together field by field, from two phones or by an undo: a cut's state is by its limits and its
 * passes again. A record of another store is left as it is.
 */
export function withStateByPasses<T extends Kept>(store: StoreName, record: T): T {
  if (store !== 'cuts') return record;
  const parsed = parseKept(cutRecordKind, record);
  if (!parsed.ok) return record;
  const state = stateByPasses(parsed.value);
  return state === record['state'] ? record : { ...record, state };
}

/** Metal was taken off: a pass that is struck out was cut all the same. A hole made with its own tool has no takes. */
function isBegun({ operation, passes }: Measured): boolean {
  const made = Object.values(passes);
  if (made.some(({ asked }) => asked !== undefined)) return true;
  const hasItsOwnTool = operation === 'drill' || operation === 'ream' || operation === 'tap';
  return hasItsOwnTool && made.some(({ struckOut }) => !struckOut);
}
