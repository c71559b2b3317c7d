import { readEntry } from '../../engine/length/entry.ts';
import { nearestFraction } from '../../engine/length/fraction.ts';
import { isNegative, isZero, negate, type Length } from '../../engine/length/length.ts';
import { figure, show } from '../../engine/length/show.ts';
import type { HalfTyped } from './pad-text.ts';

/** The typed size in the other unit and as the nearest fraction with how far off; empty while it can't be read yet. */
export function sizeEcho(half: HalfTyped): string {
  const entry = readEntry(half.typed, { unit: half.unit, signed: true });
  if (!entry.ok) return '';
  const { exact, unit } = entry.value;
  const other = unit === 'mm' ? show(exact, 'in') : show(exact, 'mm');
  return [other, isNegative(exact) ? '' : fractionEcho(exact)].filter((part) => part !== '').join(' · ');
}

/** `29/64 less .0044`, `29/64 and .0012`, `29/64 exactly`; empty where no fraction is near. */
export function fractionEcho(size: Length): string {
  const { text, off } = nearestFraction(size);
  if (text === '0') return '';
  if (isZero(off)) return `${text} in exactly`;
  return isNegative(off) ? `${text} less ${figure(negate(off), 'in')}` : `${text} and ${figure(off, 'in')}`;
}
