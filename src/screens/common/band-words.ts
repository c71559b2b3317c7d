import { isZero, type Length } from '../../engine/length/length.ts';
import { showBand, type ShownUnit } from '../../engine/length/show.ts';

/** A size's band, or that the size is taken as exact. */
export function bandWords(halfWidth: Length, unit: ShownUnit): string {
  return isZero(halfWidth) ? 'as exact' : showBand(halfWidth, unit);
}
