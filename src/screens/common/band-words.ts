import { isZero, type Length } from '../../engine/length.ts';
import { showBand, type ShownUnit } from '../../engine/show.ts';

/** A size's band, or that the size is taken as exact. */
export function bandWords(halfWidth: Length, unit: ShownUnit): string {
  return isZero(halfWidth) ? 'as exact' : showBand(halfWidth, unit);
}
