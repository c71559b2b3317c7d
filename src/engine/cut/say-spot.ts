import { isNegative, negate, type Length } from '../length/length.ts';
import { figure, type ShownUnit } from '../length/show.ts';
import type { OnWork } from './cut.ts';

/** A coordinate with its sign before it: `−1.1250`. */
export function sayCoordinate(size: Length, unit: ShownUnit): string {
  return isNegative(size) ? `−${figure(negate(size), unit)}` : figure(size, unit);
}

/** Both, across first: `2.2500, −1.1250`. */
export function saySpot({ x, y }: OnWork, unit: ShownUnit): string {
  return `${sayCoordinate(x, unit)}, ${sayCoordinate(y, unit)}`;
}
