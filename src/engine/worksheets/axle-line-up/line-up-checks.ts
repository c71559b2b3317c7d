import type { DiscInSlot, Giver } from './axle-layout.ts';
import { evaluate, formOf } from './chain-form.ts';
import type { BoundCondition, Evaluated, Share } from './chain.ts';
import type { Estimate } from '../../reading/estimate.ts';
import { negate, type Length } from '../../length/length.ts';
import { givesForMiss, type Give } from './line-up-gives.ts';
import { readOfDisc } from './line-up-read.ts';
import type { LineUpLimit } from './tables/line-up-limits.ts';
import { verdictOf, type Limits, type Verdict } from '../../reading/verdict.ts';

export type LineUpCheckKind =
  | 'line'
  | 'pad-wear'
  | 'disc-in-slot'
  | 'side-play'
  | 'wheel-centre'
  | 'opening'
  | 'float'
  | 'wheel-place'
  | 'slot-middle';

/** Something that has to hold beside the lengths of the spacers. */
export type LineUpCheck = Evaluated & {
  readonly kind: LineUpCheckKind;
  /** The condition it is about. */
  readonly name: string;
  readonly limits: Limits;
  /** What it is set to between its limits, where it can be set. */
  readonly aim?: Length;
  readonly verdict: Verdict;
  /** What it stands against, where it is a condition that gave way. */
  readonly against: readonly string[];
  readonly gives: readonly Give[];
  /** Between what it comes out at the very worst of all that is allowed at once. */
  readonly least?: Length;
  readonly most?: Length;
  /** Read on the machine: it stands in place of the sum. */
  readonly direct?: true;
};

type Known = Readonly<Record<string, Estimate>>;

/** A condition that had to give way to an earlier one: where it comes out less where it is wanted, + to the right. */
export function lineCheck(
  miss: BoundCondition,
  {
    isMirrored,
    limit,
    givers,
    known,
  }: {
    readonly isMirrored: boolean;
    readonly limit: LineUpLimit;
    readonly givers: readonly Giver[];
    readonly known: Known;
  },
): LineUpCheck {
  const limits = { lower: negate(limit.by), upper: limit.by, source: limit.source };
  const gives = givesForMiss(miss, givers, known);
  const { name, against } = miss;
  return checkOf(isMirrored ? turned(miss) : miss, { kind: 'line', name, limits, against, gives });
}

/**
 * Whether a bracket that follows its pads has the float for their whole wear, by the side play that was read of it.
 *
 * Units:  value = side play − whole wear of the pads; at least the margin.
 */
export function padWearReadCheck(
  disc: DiscInSlot,
  known: Known,
  margin: LineUpLimit,
): LineUpCheck | undefined {
  const read = readOfDisc(disc).float;
  if (!known['padWear'] || !known[read]) return undefined;
  return sumCheck([share(read, 1, 1), share('padWear', -1, 1)], known, {
    kind: 'pad-wear',
    name: disc.name,
    limits: { lower: margin.by, source: margin.source },
  });
}

type Said = Pick<LineUpCheck, 'kind' | 'name' | 'limits'>;

function sumCheck(shares: readonly Share[], known: Known, said: Said): LineUpCheck {
  return checkOf(evaluate(formOf(shares), known), { ...said, against: [], gives: [] });
}

function checkOf(sum: Evaluated, said: Omit<LineUpCheck, keyof Evaluated | 'verdict'>): LineUpCheck {
  const { value, band, worstCase, terms } = sum;
  const verdict = verdictOf({ value, ...band, limits: said.limits });
  return { value, band, worstCase, terms, verdict, ...said };
}

/** Mirrored back: what lay to the right lies to the left. */
function turned(sum: BoundCondition): Evaluated {
  const value: Length = negate(sum.value);
  return { ...sum, value, terms: sum.terms.map((term) => ({ ...term, top: -term.top })) };
}

function share(of: string, top: number, bottom: number): Share {
  return { of, top, bottom };
}
