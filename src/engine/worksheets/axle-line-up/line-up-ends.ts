import type { AxleLayout, DiscInSlot, EndCondition } from './axle-layout.ts';
import { evaluate, formOf, sharesOf, type Evaluated, type Share } from './chain-form.ts';
import { mean, typedEstimate, type Estimate } from '../../reading/estimate.ts';
import {
  dividedBy,
  isMore,
  isNegative,
  minus,
  negate,
  plus,
  sum,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import type { Side, Leeway } from './line-up-budget.ts';
import type { LineUpCheck, LineUpCheckKind } from './line-up-checks.ts';
import { discLimits, sidePlayLimits } from './line-up-read.ts';
import type { LineUpLimits } from './tables/line-up-limits.ts';
import { hangsOnLower, verdictOf, worseVerdict, type Limits } from '../../reading/verdict.ts';

type Known = Readonly<Record<string, Estimate>>;

/** A size's smallest and largest place; between them lies where it may bind. */
export type Places = { readonly least: Estimate; readonly most: Estimate };

/** A spacer as it will lie on the axle: as it was measured, or cut to a length that it may be off by a leeway. */
export type Fitted =
  | { readonly kind: 'as-measured'; readonly places: Places }
  | { readonly kind: 'cut'; readonly places: Places };

/** A condition with the parts that will be in: what it comes to where it is least and where it is most. */
export type End = {
  readonly end: EndCondition;
  readonly limits: Limits;
  readonly low: Evaluated;
  readonly high: Evaluated;
  /** The parts still to be cut that it hangs on. */
  readonly cuts: readonly Share[];
};

type EndsQuestion = {
  readonly layout: AxleLayout;
  readonly known: Known;
  readonly places: Readonly<Record<string, Places>>;
  readonly fitted: Readonly<Record<string, Fitted>>;
  readonly limits: LineUpLimits;
  readonly slides: 'bracket' | 'caliper' | undefined;
};

/**
 * Every condition that has to hold once the parts are in, with its limits; those that lack a size are left out.
 *
 * Units:   as `EndCondition`. Where a size has a smallest and a largest place, the one that is worse for the limit counts.
 */
export function endsOf(q: EndsQuestion): readonly End[] {
  return q.layout.ends.flatMap((end) => {
    const asked = askedOf(end, q);
    return asked ? endOf(end, asked, q) : [];
  });
}

type Asked = { readonly limits: Limits; readonly is: readonly Share[] };

function askedOf(end: EndCondition, { layout, known, limits, slides }: EndsQuestion): Asked | undefined {
  const { is } = end;
  const disc = layout.discs.find(({ name }) => name === end.name);
  const float = disc && known[disc.float];
  const padWear = slides === 'bracket' ? known['padWear'] : undefined;
  const within = ({ by, source }: LineUpLimits['spacer']): Limits => ({
    lower: negate(by),
    upper: by,
    source,
  });
  switch (end.kind) {
    case 'opening':
      return { is, limits: within(limits.opening) };
    case 'wheel-place':
      return { is, limits: within(limits.line) };
    case 'slot-middle':
      return disc && isDiscKnown(disc, known) ? undefined : { is, limits: within(limits.spacer) };
    case 'float':
      return (
        float && {
          is,
          limits: sidePlayLimits({
            float: mean(float),
            ...(padWear && { padWear: mean(padWear) }),
            limits,
          }),
        }
      );
    case 'pad-wear':
      return padWear && { is, limits: { lower: limits.wearMargin.by, source: limits.wearMargin.source } };
    case 'disc-inside':
    case 'disc-outside':
      return disc && isDiscKnown(disc, known) ? besideDisc(is, disc, known, limits) : undefined;
    default:
      return end.kind satisfies never;
  }
}

function isDiscKnown({ slotWidth, discThickness }: DiscInSlot, known: Known): boolean {
  return known[slotWidth] !== undefined && known[discThickness] !== undefined;
}

function besideDisc(
  is: readonly Share[],
  { discRunout }: DiscInSlot,
  known: Known,
  limits: LineUpLimits,
): Asked {
  if (known[discRunout]) return { is, limits: discLimits(limits, 'counted') };
  return { is: is.filter(({ of }) => of !== discRunout), limits: discLimits(limits, 'not-read') };
}

function endOf(
  end: EndCondition,
  { limits, is }: Asked,
  { known, places, fitted }: EndsQuestion,
): readonly End[] {
  const form = formOf(is);
  const placesOf = (of: string): Places | undefined => {
    const estimate = known[of];
    return fitted[of]?.places ?? places[of] ?? (estimate && { least: estimate, most: estimate });
  };
  const terms = sharesOf(form);
  if (terms.some(({ of }) => !placesOf(of))) return [];
  const at = (small: keyof Places, large: keyof Places) =>
    evaluate(
      form,
      Object.fromEntries(
        terms.map(({ of, top }) => [of, placesOf(of)?.[top > 0 ? small : large] ?? typedEstimate(zero)]),
      ),
    );
  return [
    {
      end,
      limits,
      low: at('least', 'most'),
      high: at('most', 'least'),
      cuts: terms.filter(({ of }) => fitted[of]?.kind === 'cut'),
    },
  ];
}

/** A limit that the readings alone use up, though the lengths aimed at keep it: nothing of it is left for any cut. */
export type Unproved = { readonly parts: readonly string[]; readonly halfWidth: Length };

/**
 * What each limit has left for the parts that are still to be cut.
 *
 * Range:   a limit that the lengths aimed at don't keep shares nothing out: its own verdict says it, and the cuts keep
 *          to the others.
 */
export function sidesOf(ends: readonly End[]): {
  readonly sides: readonly Side[];
  readonly unproved: readonly Unproved[];
} {
  const found = ends.flatMap((end) => [lowerSide(end), upperSide(end)].filter((side) => side !== undefined));
  return {
    sides: found.flatMap((side) => ('slack' in side ? side : [])),
    unproved: found.flatMap((side) => ('halfWidth' in side ? side : [])),
  };
}

function lowerSide({ low, limits: { lower }, cuts }: End): Side | Unproved | undefined {
  return lower && sideOf(cuts, minus(low.value, lower), low.band.halfWidth, { more: 'down', less: 'up' });
}

function upperSide({ high, limits: { upper }, cuts }: End): Side | Unproved | undefined {
  return upper && sideOf(cuts, minus(upper, high.value), high.band.halfWidth, { more: 'up', less: 'down' });
}

function sideOf(
  cuts: readonly Share[],
  room: Length,
  halfWidth: Length,
  ways: { readonly more: keyof Leeway; readonly less: keyof Leeway },
): Side | Unproved | undefined {
  if (isNegative(room)) return undefined;
  if (isMore(halfWidth, room)) return { parts: cuts.map(({ of }) => of), halfWidth };
  // Halves are doubled, so that every share is whole.
  const whole = Math.max(1, ...cuts.map(({ bottom }) => bottom));
  return {
    slack: times(minus(room, halfWidth), whole),
    takes: cuts.map(({ of, top, bottom }) => ({
      part: of,
      way: top > 0 ? ways.more : ways.less,
      share: (Math.abs(top) * whole) / bottom,
    })),
  };
}

const CHECK_KINDS: Readonly<Record<EndCondition['kind'], LineUpCheckKind>> = {
  opening: 'opening',
  float: 'float',
  'wheel-place': 'wheel-place',
  'slot-middle': 'slot-middle',
  'disc-inside': 'disc-in-slot',
  'disc-outside': 'disc-in-slot',
  'pad-wear': 'pad-wear',
};

/** A condition as it is judged and shown, with what the cuts' leeways may take from it at the worst. */
export function checkOfEnd(
  { end, limits, low, high, cuts }: End,
  leeways: Readonly<Record<string, Leeway>>,
  isMirrored: boolean,
): LineUpCheck {
  const lowVerdict = verdictOf({
    value: low.value,
    ...low.band,
    limits: { source: limits.source, ...(limits.lower && { lower: limits.lower }) },
  });
  const highVerdict = verdictOf({
    value: high.value,
    ...high.band,
    limits: { source: limits.source, ...(limits.upper && { upper: limits.upper }) },
  });
  const verdict = worseVerdict(lowVerdict, highVerdict);
  const deciding = hangsOnLower(lowVerdict) || !limits.upper ? low : high;
  const turns = isMirrored && end.kind === 'wheel-place';
  const { value, band, worstCase, terms } = deciding;
  const taken = (side: 'lower' | 'upper') => cutsTake(cuts, leeways, side);
  return {
    kind: CHECK_KINDS[end.kind],
    name: end.name,
    limits,
    value: turns ? negate(value) : value,
    band,
    worstCase,
    terms: turns ? terms.map((term) => ({ ...term, top: -term.top })) : terms,
    verdict,
    least: turns ? negate(worstOf(high, taken('upper'), 'upper')) : worstOf(low, taken('lower'), 'lower'),
    most: turns ? negate(worstOf(low, taken('lower'), 'lower')) : worstOf(high, taken('upper'), 'upper'),
    against: [],
    gives: [],
  };
}

function worstOf({ value, band }: Evaluated, taken: Length, side: 'lower' | 'upper'): Length {
  const off = plus(band.halfWidth, taken);
  return side === 'lower' ? minus(value, off) : plus(value, off);
}

/** What the cuts take from a condition when each is off the way that is worse for this side of it. */
function cutsTake(
  cuts: readonly Share[],
  leeways: Readonly<Record<string, Leeway>>,
  side: 'lower' | 'upper',
): Length {
  return sum(
    cuts.map(({ of, top, bottom }) => {
      const leeway = leeways[of];
      if (!leeway) return zero;
      const way = top > 0 === (side === 'lower') ? leeway.down : leeway.up;
      return dividedBy(times(way, Math.abs(top)), bottom);
    }),
  );
}
