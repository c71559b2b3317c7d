import { isMore, type Length } from '../length/length.ts';
import type { ShownUnit } from '../length/show.ts';
import { nominalNear } from './nominal.ts';
import { RUNNING_CLEARANCE_SOURCE, runningClearances } from './tables/running-clearances.ts';
import type { ClearanceRow } from './tables/running-clearances.ts';
import type { Limits } from '../reading/verdict.ts';

/** How a joint runs: that decides its limits and which cures it allows. */
export type Joint = 'turns-under-load' | 'turns' | 'slides' | 'located' | 'pressed';

const JOINTS: ReadonlySet<string> = new Set([
  'turns-under-load',
  'turns',
  'slides',
  'located',
  'pressed',
] satisfies Joint[]);

export function isJoint(value: string | undefined): value is Joint {
  return value !== undefined && JOINTS.has(value);
}

/** Limits with both sides, as the routes need them to size a new bore. */
export type ClearanceLimits = Limits & { readonly lower: Length; readonly upper: Length };

/**
 * The clearance a joint of this kind usually has, bore less pin; below zero the pin is the larger.
 *
 * Units:  a measured size counts as the preferred one it is near. In a metric shop limits are round in millimetres, inside
 *         those of an inch shop.
 * Range:  rows to 4 in; past that the last row stands, and its source says so.
 * Source: common practice, no source (tables/running-clearances.ts).
 */
export function jointLimits(joint: Joint, nominal: Length, unit: ShownUnit = 'in'): ClearanceLimits {
  const rows: readonly ClearanceRow[] = runningClearances[unit][joint];
  const size = nominalNear(nominal);
  const fitting = rows.find((row) => !isMore(size, row.upTo));
  const row = fitting ?? rows.at(-1);
  if (!row) throw new Error(`no clearances for ${joint}`);
  const past = fitting ? '' : `, table ends at ${unit === 'in' ? '4 in' : '101.6 mm'}`;
  return { lower: row.lower, upper: row.upper, source: `${RUNNING_CLEARANCE_SOURCE}${past}` };
}
