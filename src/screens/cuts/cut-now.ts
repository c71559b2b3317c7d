import { firstLimit, lastLimit, metalBetween } from '../../engine/cut.ts';
import type { Entry } from '../../engine/entry.ts';
import { isNegative, type Length } from '../../engine/length.ts';
import { passesOf } from '../../store/cuts.ts';
import type { Cut, CutState } from '../../store/records.ts';

type Sized = Pick<Cut, 'of' | 'target' | 'lower' | 'upper' | 'blank' | 'passes'>;

/** The size as it was last measured; of a cut nobody has begun the blank's. */
export function presentSize(cut: Pick<Cut, 'blank' | 'passes'>): Entry | undefined {
  return passesOf(cut).findLast(([, { struckOut }]) => !struckOut)?.[1].measured ?? cut.blank;
}

/** Metal that is still to come off; below zero it is past the target. Not known before anything was measured. */
export function leftToTake(cut: Sized): Length | undefined {
  const present = presentSize(cut);
  return present && metalBetween(cut.of, present.exact, cut.target.exact);
}

/** The state a measured size puts a cut in, by its limits. */
export function stateAt(cut: Pick<Sized, 'of' | 'target' | 'lower' | 'upper'>, size: Length): CutState {
  const sizes = {
    of: cut.of,
    target: cut.target.exact,
    lower: cut.lower.exact,
    upper: cut.upper.exact,
  };
  if (isNegative(metalBetween(cut.of, size, lastLimit(sizes)))) return 'over';
  return isNegative(metalBetween(cut.of, firstLimit(sizes), size)) ? 'cutting' : 'to-size';
}

/** Figures that are struck out stand no longer: the state by what is left of them. */
export function stateByPasses(cut: Sized): CutState {
  const last = passesOf(cut).findLast(([, { struckOut }]) => !struckOut);
  return last ? stateAt(cut, last[1].measured.exact) : 'to-cut';
}
