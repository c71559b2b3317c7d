import type { Entry } from '../../engine/length/entry.ts';
import { lengthOf } from '../../engine/length/length.ts';
import { sizeSlip, type SizeSlip, type SlipAround } from '../../engine/reading/size-slip.ts';
import type { Check } from '../../store/base/records.ts';

const inches = (least: string, most: string): SlipAround['usual'] => ({
  least: lengthOf(`${least} in`),
  most: lengthOf(`${most} in`),
});

// Common practice, no source: a lever clears its grip by an inch, nothing runs out by a quarter of one.
const READ_IN_PLACE = inches('0', '2');
const USUAL: Readonly<Record<Check['by'], SlipAround['usual']>> = {
  gap: READ_IN_PLACE,
  runout: inches('0', '.25'),
  depth: READ_IN_PLACE,
  bore: inches('.03', '8'),
  pin: inches('.03', '8'),
  length: inches('0', '14'),
  'by-eye': undefined,
};

/** Whether a limit of one's own looks like a slip: beside the limits it has, or beside what such a check usually wants. */
export function limitSlip(
  check: Pick<Check, 'by' | 'lower' | 'upper'>,
  side: 'lower' | 'upper',
  typed: Entry,
): SizeSlip | undefined {
  const other = side === 'lower' ? check.upper : check.lower;
  const near = [other, check[side]].flatMap((limit) => limit?.exact ?? []);
  return sizeSlip(typed, { near, usual: USUAL[check.by] });
}
