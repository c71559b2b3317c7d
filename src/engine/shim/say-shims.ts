import { absolute, isNegative, type Length } from '../length/length.ts';
import { mean } from '../reading/estimate.ts';
import { withUnit, figure, showBand, type ShownUnit } from '../length/show.ts';
import type { ShimPick, ShimRefusal } from './shims.ts';

/** The pieces as one says them at the drawer: `2 × .010 + .005`. */
export function sayPieces({ picked }: Pick<ShimPick, 'picked'>, unit: ShownUnit): string {
  return picked
    .map(({ piece, count }) => `${count > 1 ? `${count} × ` : ''}${figure(mean(piece.thickness), unit)}`)
    .join(' + ');
}

/** `Together .025, leaves .0098.`; how far off where nothing in the drawer comes close enough. */
export function sayPick(pick: ShimPick, leaves: Length, unit: ShownUnit): string {
  const said = (length: Length) => withUnit(figure(length, unit), unit);
  const untried = pick.untried ? ' There are too many ways to try them all.' : '';
  if (pick.fits) return `Together ${said(pick.total)}, leaves ${said(leaves)}.${untried}`;
  const way = isNegative(pick.offAim) ? 'too thin' : 'too thick';
  return `Nothing in the drawer fits. Nearest possible: together ${said(pick.total)}, leaves ${said(leaves)}, ${said(absolute(pick.offAim))} ${way} for the aim.`;
}

/** How closely the pieces' sum is known: said only where they were measured. */
export function sayPickBand({ band, pieces }: ShimPick, unit: ShownUnit): string {
  const known = `known to ${withUnit(showBand(band.halfWidth, unit), unit)}`;
  return pieces > 1
    ? `The ${pieces} pieces together are ${known}: each one adds to it.`
    : `The piece is ${known}.`;
}

/** Where a pick lies inside its limits but its own band reaches past one. */
export function sayPickUnproved({ fits, proves }: Pick<ShimPick, 'fits' | 'proves'>): string {
  return fits && !proves ? 'As closely as these sizes are known, it isn’t proved.' : '';
}

export function sayShimRefusal(refusal: ShimRefusal): string {
  switch (refusal.code) {
    case 'no-shims':
      return 'The drawer holds no shim or washer with a thickness. Put them in with their sizes, and it picks from them.';
    case 'shims-too-fine':
      return 'Some pieces in the drawer have thicknesses with more places than any gauge shows. Put them in again as measured.';
    default:
      return refusal satisfies never;
  }
}
