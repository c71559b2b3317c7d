import {
  absolute,
  byLength,
  isLess,
  isMore,
  isZero,
  minus,
  plus,
  sum,
  type Length,
} from '../../length/length.ts';
import type { CutKind } from '../../length/metal-on.ts';
import type { RingSize } from './ring.ts';
import { thinRing } from '../../cut/tables/thin-ring.ts';

/** A washer, or anything with a hole, that a ring could be cut from. */
export type RingBlank = {
  readonly id: string;
  readonly name: string;
  readonly outside?: Length;
  readonly inside?: Length;
  readonly thickness?: Length;
};

export type RingCut = {
  readonly kind: CutKind;
  readonly from: Length;
  readonly to: Length;
  readonly take: Length;
  readonly lower: Length;
  readonly upper: Length;
};

export type Holding = 'bore-first' | 'mandrel' | 'face-on-mandrel' | 'thin';

export type CutFromBlank = {
  readonly blank: RingBlank;
  /** In the order they are made: bore, outside, faces. */
  readonly cuts: readonly RingCut[];
  /** The ring's thickness in the end. */
  readonly thickness: Length;
  readonly holding: readonly Holding[];
};

export type WhyNot = 'too-small-outside' | 'too-wide-inside' | 'too-thin' | 'not-measured';

export type FromBlanks = {
  readonly best?: CutFromBlank;
  /** The others that would do, next best first. */
  readonly others: readonly CutFromBlank[];
  readonly ruledOut: readonly { readonly blank: RingBlank; readonly why: WhyNot }[];
};

export type RingSizes = {
  readonly outside: RingSize;
  readonly inside: RingSize;
  readonly thickness?: RingSize;
  readonly leastThickness: Length;
};

/**
 * Which blank a ring is cut from, and how much comes off.
 *
 * Units:   take on the diameter for outside and bore, on the length for the faces. A size that is good already is left.
 * Range:   fewest cuts first, then least to come off in all, then as listed. A blank with a size missing is not judged.
 * Source:  common practice, no source: fewest set-ups first.
 */
export function ringFromBlanks(blanks: readonly RingBlank[], sizes: RingSizes): FromBlanks {
  const judged = blanks.map((blank) => judge(blank, sizes));
  const [best, ...others] = judged.flatMap((one) => ('why' in one ? [] : [one])).sort(byWork);
  return {
    ...(best && { best }),
    others,
    ruledOut: judged.flatMap((one) => ('why' in one ? [one] : [])),
  };
}

function judge(
  blank: RingBlank,
  sizes: RingSizes,
): CutFromBlank | { readonly blank: RingBlank; readonly why: WhyNot } {
  const { outside, inside, thickness } = blank;
  if (!outside || !inside || !thickness) return { blank, why: 'not-measured' };
  if (isLess(outside, sizes.outside.lower)) return { blank, why: 'too-small-outside' };
  if (isMore(inside, sizes.inside.upper)) return { blank, why: 'too-wide-inside' };
  if (isLess(thickness, sizes.leastThickness)) return { blank, why: 'too-thin' };
  const bored = cut(sizes.inside, inside);
  const turned = cut(sizes.outside, outside);
  const faced = sizes.thickness && cut(sizes.thickness, thickness);
  const cuts = [bored, turned, ...(faced ? [faced] : [])].filter(({ take }) => !isZero(take));
  const made = faced?.to ?? thickness;
  return { blank, cuts, thickness: made, holding: holdingFor(cuts, made, minus(turned.to, bored.to)) };
}

/** Down to the size's target, or nothing where it is good as it is. */
function cut({ kind, target, lower, upper }: RingSize, present: Length): RingCut {
  const isGood = !isLess(present, lower) && !isMore(present, upper);
  const to = isGood ? present : target;
  return { kind, from: present, to, take: absolute(minus(present, to)), lower, upper };
}

function holdingFor(cuts: readonly RingCut[], thickness: Length, walls: Length): readonly Holding[] {
  const has = (kind: CutKind) => cuts.some((one) => one.kind === kind);
  const isThin = isLess(thickness, thinRing.thickness) || isLess(walls, plus(thinRing.wall, thinRing.wall));
  return [
    ...(has('bore') && has('outside') ? (['bore-first'] as const) : []),
    ...(has('outside') ? (['mandrel'] as const) : []),
    ...(has('length') ? (['face-on-mandrel'] as const) : []),
    ...(isThin && cuts.length > 0 ? (['thin'] as const) : []),
  ];
}

function byWork(a: CutFromBlank, b: CutFromBlank): number {
  const work = ({ cuts }: CutFromBlank) => sum(cuts.map(({ take }) => take));
  return a.cuts.length - b.cuts.length || byLength(work(a), work(b));
}
