import { exactDecimalText, isZero, sameLength } from '../../length/length.ts';
import { bandOf, mean } from '../../reading/estimate.ts';
import { isInchThread, threadNamed } from '../../thread/threads.ts';
import type { Given } from '../given.ts';
import type { Besides } from '../worksheet.ts';
import type { HoleAndPinFields } from './fields.ts';

/**
 * What else follows from a bolt's thread: the pin has its nominal size, where nothing was said about it yet. A measured pin is
 * never replaced. That such a bolt is held by its nut is assumed, and said, until somebody says how it runs.
 */
export function besidesThread(
  given: Given<HoleAndPinFields>,
  field: keyof HoleAndPinFields,
  value: string | undefined,
): Besides {
  const thread = field === 'thread' && value !== undefined ? threadNamed(value) : undefined;
  if (!thread || !isNominalOfOldThread(given)) return {};
  const unit = isInchThread(thread) ? 'in' : 'mm';
  return { sizes: { pin: `${exactDecimalText(thread.major, unit)} ${unit}` } };
}

/** No pin yet, or only the nominal size that an earlier thread gave it: exact, as nobody read it. */
function isNominalOfOldThread(given: Given<HoleAndPinFields>): boolean {
  if (!given.has('pin')) return true;
  const pin = given.size('pin')?.tightest;
  const before = given.choice('thread');
  const old = before === undefined ? undefined : threadNamed(before);
  return (
    pin !== undefined &&
    old !== undefined &&
    isZero(bandOf(pin).halfWidth) &&
    sameLength(mean(pin), old.major)
  );
}
