import { dividedBy, floatMm, isZero, minus, plus, times, zero, type Length } from '../../length/length.ts';
import { bandOf, combine, mean, type Estimate } from '../../reading/estimate.ts';
import { legOf } from '../../reading/settle.ts';
import { rulingPlace, verdictOf, type Limits } from '../../reading/verdict.ts';
import type { Judged } from '../proof.ts';
import { laidPlate, roughlyToEdge, toEdge, type LaidHole, type LaidPlate } from './laid-plate.ts';
import type { HolesKnown, SizeAt } from './pattern.ts';
import type { PlateQuestion } from './plate-question.ts';
import { apart, floatSpot, type Spot } from './spots.ts';
import { leastEdge, leastFloor, leastSliver, leastWeb, leastWebSource } from './tables/least-webs.ts';

/** What is left of the plate at its tightest place of a sort, judged. */
export type JudgedPlace = {
  readonly of: 'web' | 'edge' | 'bore' | 'head' | 'floor' | 'spacing';
  /** `A1 to B2`, `A1`. */
  readonly where: string;
  readonly judged: Judged;
};

/** A place of the plate: from a hole's middle to another one's, to the middle of the plate or to its edge. */
type Place = {
  readonly of: JudgedPlace['of'];
  readonly where: string;
  readonly hole: number;
  readonly to: number | 'middle' | 'edge';
  /** What of that is hole. */
  readonly less: Length;
  readonly limits: Limits & { readonly lower: Length };
};

// Of the places of a sort, the tightest by their size are judged with their bands: one of these rules.
const LOOKED_AT = 3;
const SORTS = ['web', 'edge', 'bore', 'head'] as const;

/**
 * What is left at the tightest places of a plate, with what the readings know of it.
 *
 * Units:   its band is that of every size it hangs on, each with what a change of it changes there (thousandths, found in
 *          floating point), and beside it how far each hole may stand off its place, whole: a hole that is set off may be
 *          off straight towards the other.
 * Range:   one place of each sort: between holes, to the edge, to the middle hole, beside and under counterbores, and how
 *          far measured holes stand off even spacing.
 * Source:  JCGM 100:2008 5.1.3 for the coefficients; tables/least-webs.ts.
 */
export function judgedPlate(q: PlateQuestion, laid: LaidPlate): readonly JudgedPlace[] {
  const places = [...webs(q, laid), ...edges(q, laid), ...besideBore(q, laid), ...headPlaces(q, laid)];
  const moved = movedPlates(q);
  return [
    ...SORTS.flatMap((of) =>
      rulingOf(
        tightest(
          q,
          laid,
          places.filter((place) => place.of === of),
        ).map((place) => judgedAt({ q, laid, moved }, place)),
      ),
    ),
    ...rulingOf(floors(q)),
    ...rulingOf(spacings(q, laid)),
  ];
}

function rulingOf([first, ...others]: readonly JudgedPlace[]): readonly JudgedPlace[] {
  const flat = (place: JudgedPlace) => ({ verdict: place.judged.verdict, place });
  return first ? [rulingPlace(flat(first), others.map(flat)).place] : [];
}

/** The tightest against what is wanted there; of those that are alike all round the first. */
function tightest(q: PlateQuestion, laid: LaidPlate, places: readonly Place[]): readonly Place[] {
  const seen = new Map<string, { readonly place: Place; readonly over: number }>();
  for (const place of places) {
    const over = roughlyLeft(q, place, { laid, at: mean }) - floatMm(place.limits.lower);
    const alike = over.toFixed(5);
    if (!seen.has(alike)) seen.set(alike, { place, over });
  }
  return [...seen.values()]
    .toSorted((a, b) => a.over - b.over)
    .slice(0, LOOKED_AT)
    .map(({ place }) => place);
}

function webs(q: PlateQuestion, { holes }: LaidPlate): readonly Place[] {
  return pairs(holes, (one, other) => ({
    of: 'web',
    less: dividedBy(plus(one.hole, other.hole), 2),
    limits: q.ownWeb
      ? { lower: q.ownWeb, source: leastWebSource.own }
      : { lower: leastWeb(one.hole, other.hole), source: leastWebSource.web },
  }));
}

function edges(q: PlateQuestion, { holes }: LaidPlate): readonly Place[] {
  if (q.outline.is === 'none') return [];
  return holes.map(({ name, hole }, index) => ({
    of: 'edge',
    where: name,
    hole: index,
    to: 'edge',
    less: dividedBy(hole, 2),
    limits: edgeLimits(q, hole),
  }));
}

function edgeLimits({ ownEdge }: PlateQuestion, hole: Length): Place['limits'] {
  return ownEdge
    ? { lower: ownEdge, source: leastWebSource.own }
    : { lower: leastEdge(hole), source: leastWebSource.edge };
}

function besideBore(q: PlateQuestion, { holes }: LaidPlate): readonly Place[] {
  const { bore } = q;
  if (!bore) return [];
  return holes.map(({ name, hole }, index) => ({
    of: 'bore',
    where: name,
    hole: index,
    to: 'middle',
    less: dividedBy(plus(bore, hole), 2),
    limits: edgeLimits(q, hole),
  }));
}

/** Beside a counterbore: to the next hole or counterbore, and to the edge. */
function headPlaces({ outline, shop = 'in' }: PlateQuestion, { holes }: LaidPlate): readonly Place[] {
  const limits = { lower: leastSliver[shop], source: leastWebSource.sliver };
  const wide = ({ head, hole }: LaidHole) => head?.across ?? hole;
  const between = pairs(holes, (one, other) =>
    (one.head ?? other.head)
      ? { of: 'head', less: dividedBy(plus(wide(one), wide(other)), 2), limits }
      : undefined,
  );
  const atEdge = holes.flatMap(({ name, head }, index): readonly Place[] =>
    head && outline.is !== 'none'
      ? [
          {
            of: 'head',
            where: `${name} to the edge`,
            hole: index,
            to: 'edge',
            less: dividedBy(head.across, 2),
            limits,
          },
        ]
      : [],
  );
  return [...between, ...atEdge];
}

function pairs(
  holes: readonly LaidHole[],
  of: (one: LaidHole, other: LaidHole) => Pick<Place, 'of' | 'less' | 'limits'> | undefined,
): readonly Place[] {
  return holes.flatMap((one, hole) =>
    holes.slice(hole + 1).flatMap((other, index) => {
      const place = of(one, other);
      return place ? [{ ...place, where: `${one.name} to ${other.name}`, hole, to: hole + 1 + index }] : [];
    }),
  );
}

const MIDDLE: Spot = { x: zero, y: zero };

type Seen = { readonly laid: LaidPlate; readonly at: SizeAt };

function left({ outline }: PlateQuestion, { hole, to, less }: Place, { laid, at }: Seen): Length {
  const spot = laid.holes[hole]?.spot ?? MIDDLE;
  if (to === 'edge') return outline.is === 'none' ? zero : minus(toEdge(outline, spot, at), less);
  return minus(apart(spot, to === 'middle' ? MIDDLE : (laid.holes[to]?.spot ?? MIDDLE)), less);
}

function roughlyLeft({ outline }: PlateQuestion, { hole, to, less }: Place, { laid, at }: Seen): number {
  const spot = laid.holes[hole]?.spot ?? MIDDLE;
  if (to === 'edge') return outline.is === 'none' ? 0 : roughlyToEdge(outline, spot, at) - floatMm(less);
  const [a, b] = [floatSpot(spot), floatSpot(to === 'middle' ? MIDDLE : (laid.holes[to]?.spot ?? MIDDLE))];
  return Math.hypot(a.x - b.x, a.y - b.y) - floatMm(less);
}

type Moved = { readonly estimate: Estimate; readonly halfWidth: Length; readonly seen: Seen };

/** The plate with each of the sizes that were read at the end of its band. */
function movedPlates(q: PlateQuestion): readonly Moved[] {
  return sizesOf(q).flatMap((estimate) => {
    const { halfWidth } = bandOf(estimate);
    if (isZero(halfWidth)) return [];
    const at: SizeAt = (size) => (size === estimate ? plus(mean(size), halfWidth) : mean(size));
    const laid = laidPlate(q, at);
    return laid.ok ? [{ estimate, halfWidth, seen: { laid: laid.value, at } }] : [];
  });
}

type AllSeen = { readonly q: PlateQuestion; readonly laid: LaidPlate; readonly moved: readonly Moved[] };

function judgedAt({ q, laid, moved }: AllSeen, place: Place): JudgedPlace {
  const { of, where, limits, to } = place;
  const asItIs = { laid, at: mean };
  const value = left(q, place, asItIs);
  const roughly = roughlyLeft(q, place, asItIs);
  const terms = moved.flatMap(({ estimate, halfWidth, seen }) => {
    const changes = (roughlyLeft(q, place, seen) - roughly) / floatMm(halfWidth);
    const coefficient = Math.round(1000 * changes);
    return coefficient === 0 ? [] : [{ estimate, coefficient }];
  });
  const { band } = combine(terms);
  const offPlace = times(q.within, typeof to === 'number' ? 2 : 1);
  const halfWidth = plus(dividedBy(band.halfWidth, 1000), offPlace);
  return {
    of,
    where,
    judged: {
      verdict: verdictOf({ value, halfWidth, limits, doubt: band.doubt }),
      value,
      halfWidth,
      limits,
      // Whole, and never less than it hangs on them: no tool is promised to settle what it doesn't.
      legs: terms.map(({ estimate, coefficient }) =>
        legOf('length', estimate, Math.sign(coefficient) * Math.ceil(Math.abs(coefficient) / 1000)),
      ),
    },
  };
}

/** Every size that was read: each once, though a plug stands in several. */
function sizesOf({ a, b, outline }: PlateQuestion): readonly Estimate[] {
  const ofOutline =
    outline.is === 'rectangle'
      ? [outline.wide, outline.high, outline.fromLeft, outline.fromBelow]
      : [outline.is === 'round' ? outline.across : undefined];
  const all = [...sizesKnown(a.known), ...(b ? sizesKnown(b.known) : []), ...ofOutline];
  return [...new Set(all.filter((size) => size !== undefined))];
}

function sizesKnown(known: HolesKnown): readonly (Estimate | undefined)[] {
  switch (known.by) {
    case 'circle':
      return [known.across];
    case 'pair':
      return [known.over, known.plug];
    case 'three': {
      const { first, second, across, fourth } = known.over;
      return [first, second, across, fourth?.fromFirst, fourth?.fromThird, known.plug];
    }
    case 'points':
      return known.points.flatMap(({ x, y }) => [x, y]);
    default:
      return known satisfies never;
  }
}

/** Under the counterbores: it hangs on the plate's thickness alone. */
function floors({ a, b, thick }: PlateQuestion): readonly JudgedPlace[] {
  if (!thick) return [];
  return [['A', a] as const, ...(b ? [['B', b] as const] : [])].flatMap(([where, { head, hole }]) => {
    if (!head?.deep) return [];
    const value = minus(mean(thick), head.deep);
    const { halfWidth, doubt } = bandOf(thick);
    const limits = { lower: leastFloor(hole), source: leastWebSource.floor };
    const verdict = verdictOf({ value, halfWidth, limits, doubt });
    return [
      {
        of: 'floor',
        where,
        judged: { verdict, value, halfWidth, limits, legs: [legOf('length', thick, 1)] },
      },
    ];
  });
}

/** Holes drilled evenly though those that were measured don't stand so: how far they are off, and may be. */
function spacings({ within }: PlateQuestion, { a, b }: LaidPlate): readonly JudgedPlace[] {
  return [['A', a.offEven] as const, ['B', b?.offEven] as const].flatMap(([where, value]) => {
    if (!value) return [];
    const limits = { upper: within, source: 'what a hole may stand off its place' };
    const verdict = verdictOf({ value, halfWidth: zero, limits });
    return [{ of: 'spacing', where, judged: { verdict, value, halfWidth: zero, limits, legs: [] } }];
  });
}
