import { asTyped, show, type ShownUnit } from '../../engine/length/show.ts';
import type { DrawerPiece, SizeInput } from '../../store/base/records.ts';

const SIZES = [
  { name: 'thickness', words: 'thick' },
  { name: 'outside', words: 'outside' },
  { name: 'inside', words: 'inside' },
] as const;

/** A piece's sizes in a line, each as it was typed and in the shop's unit: `1/16 in thick, 25 mm (.9843 in) outside`. */
export function sizeWords(piece: DrawerPiece, unit: ShownUnit): string {
  return SIZES.flatMap(({ name, words }) => {
    const size = piece[name];
    if (size?.from !== 'typed') return [];
    // An insert and its tap are called by the bolt that they are for, not by a side of their own.
    const isBolts = name === 'inside' && (piece.kind === 'insert' || piece.kind === 'tap');
    return [isBolts ? `for a ${sizeIn(size, unit)} bolt` : `${sizeIn(size, unit)} ${words}`];
  }).join(', ');
}

function sizeIn(size: Extract<SizeInput, { from: 'typed' }>, unit: ShownUnit): string {
  return size.unit === unit || (size.unit === 'thou' && unit === 'in')
    ? asTyped(size)
    : `${asTyped(size)} (${show(size.exact, unit)})`;
}
