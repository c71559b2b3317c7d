import { bandOf, estimateOf, mean, type Estimate } from './estimate.ts';
import {
  absolute,
  byLength,
  dividedBy,
  isLess,
  isMore,
  lengthOf,
  minus,
  plus,
  sum,
  zero,
} from '../length/length.ts';
import type { Length } from '../length/length.ts';
import type { FeatureKind, MeasuringToolKind } from './measuring-tool.ts';
import type { Direction, Place, Reading } from './reading.ts';

/** Readings of one place, direction and tool: the only ones whose scatter is scatter. */
export type Group = {
  readonly place?: Place;
  readonly direction?: Direction;
  readonly toolId: string;
  /** Of its readings, where they have one. */
  readonly readingIds: readonly string[];
  readonly estimate: Estimate;
};

/** Two groups that can't both be right: which one stands is the fitter's to say. */
export type Contradiction = { readonly one: Group; readonly other: Group };

export type FormCaution = 'three-lobed-unseen' | 'jaw-flats';

export type FeatureForm = {
  readonly kind: FeatureKind;
  readonly groups: readonly Group[];
  /** The groups that count: none of them gave way to a closer reading of the same place. */
  readonly places: readonly Group[];
  /** The place whose value less its own band is least: what a lower limit is held against, the shortest of a length. */
  readonly least: Group;
  /** The place whose value plus its own band is most: what an upper limit is held against, the longest of a length. */
  readonly most: Group;
  readonly tightest: Group;
  readonly loosest: Group;
  /** Until one of each is struck out every group is in doubt, and nothing worked out from them is good. */
  readonly contradictions: readonly Contradiction[];
  /** Readings without a place that differ by more than the tool scatters: each counts as a place of its own. */
  readonly apart?: { readonly least: Estimate; readonly most: Estimate };
  /** Only where two places were read in a direction they share; zero says that none was found. */
  readonly taper?: { readonly by: Length; readonly tightestPlace: Place };
  /** Only where one place was read at 0° and at 90°. */
  readonly outOfRound?: { readonly by: Length; readonly place?: Place };
  readonly cautions: readonly FormCaution[];
};

const PLACES: readonly Place[] = ['top', 'middle', 'bottom'];
const TWO_POINT_TOOLS: ReadonlySet<MeasuringToolKind> = new Set([
  'caliper',
  'micrometer',
  'bore-gauge',
  'telescoping-gauge',
]);
const FLATS_MATTER_BELOW = lengthOf('1/2 in'); // chosen: a .02 in flat hides .0004 in there

/**
 * The form of a feature: what its places and directions say, and which of them rules a fit.
 *
 * Units:   the tightest group rules a fit, the loosest rules slop, each with its own band: a coarse reading of a place that
 *          the finer tool has not been to may be far smaller than its mean. Tight is small for a bore, a gap and a depth;
 *          large for a pin, a length (the thickest place binds) and a runout.
 * Range:   a place and direction read with several tools counts with the one that knows it closest; a group without
 *          place and direction gives way to any closer reading with another tool. Where the two differ by more than both
 *          bands together neither gives way: they contradict each other.
 *          Readings of one tool without place and direction are one group while their scatter is no more than the tool's
 *          usual repeatability, or they are one last digit apart; beyond it nobody knows where they were taken, and they are kept apart.
 *          Taper compares two places in the directions both were read in and averages those, so that a bore read at 0°
 *          on top and at 90° below doesn't show its out-of-round as taper. Out-of-round is 0° beside 90° at one place.
 * Source:  JCGM 100:2008 4.2 (one group, one scatter); form beside scatter is common practice.
 */
export function featureForm(kind: FeatureKind, readings: readonly [Reading, ...Reading[]]): FeatureForm {
  const read = groupsOf(readings);
  const found = contradictionsOf(read);
  const groups = found.length > 0 ? read.map(inDoubt) : read;
  const ruling = rulingGroups(groups);
  const taper = taperOf(ruling, kind);
  const outOfRound = outOfRoundOf(ruling);
  const apart = apartOf(readings);
  const least = furthest(ruling, (a, b) => isLess(lowerEnd(a), lowerEnd(b)));
  const most = furthest(ruling, (a, b) => isMore(upperEnd(a), upperEnd(b)));
  const [tightest, loosest] = isSmallTight(kind) ? [least, most] : [most, least];
  return {
    kind,
    groups,
    places: ruling,
    least,
    most,
    tightest,
    loosest,
    contradictions: found,
    ...(apart && { apart }),
    ...(taper && { taper }),
    ...(outOfRound && { outOfRound }),
    cautions: cautionsFor(kind, readings),
  };
}

function groupsOf(readings: readonly Reading[]): readonly Group[] {
  return sameGroup(readings).flatMap((some) =>
    isScatter(some) ? [groupOf(some)] : some.map((one) => groupOf([one])),
  );
}

/** Readings of one tool, place and direction together, in the order in which they were begun. */
function sameGroup(readings: readonly Reading[]): readonly (readonly [Reading, ...Reading[]])[] {
  const keys = [...new Set(readings.map(groupKey))];
  return keys.flatMap((key) => {
    const [first, ...rest] = readings.filter((reading) => groupKey(reading) === key);
    return first ? [[first, ...rest] as const] : [];
  });
}

/** Whether what such readings differ by is scatter. Without a place it may as well be form, once it is more than usual. */
function isScatter(readings: readonly [Reading, ...Reading[]]): boolean {
  const [{ place, direction }] = readings;
  return place !== undefined || direction !== undefined || estimateOf(readings).degreesOfFreedom === Infinity;
}

function apartOf(readings: readonly Reading[]): FeatureForm['apart'] {
  const [some] = sameGroup(readings).filter((one) => !isScatter(one));
  if (!some) return undefined;
  const [first, ...rest] = some
    .map((one) => estimateOf([one]))
    .toSorted((a, b) => byLength(mean(a), mean(b)));
  const last = rest.at(-1);
  return first && last && { least: first, most: last };
}

function inDoubt(group: Group): Group {
  return { ...group, estimate: { ...group.estimate, doubt: true } };
}

function groupKey({ place, direction, tool }: Reading): string {
  return JSON.stringify([place, direction, tool.id]);
}

function groupOf(readings: readonly [Reading, ...Reading[]]): Group {
  const [{ place, direction, tool }] = readings;
  return {
    ...(place && { place }),
    ...(direction && { direction }),
    toolId: tool.id,
    readingIds: readings.flatMap(({ id }) => id ?? []),
    estimate: estimateOf(readings),
  };
}

function rulingGroups(groups: readonly Group[]): readonly Group[] {
  return groups.filter((group) => !groups.some((other) => replaces(other, group)));
}

function replaces(closer: Group, group: Group): boolean {
  const samePlace = closer.place === group.place && closer.direction === group.direction;
  const isCloser = isLess(bandOf(closer.estimate).halfWidth, bandOf(group.estimate).halfWidth);
  return (
    !sameTool(closer, group) && isCloser && (saysNoPlace(group) || samePlace) && !contradict(closer, group)
  );
}

/**
 * Groups of two tools that differ by more than both bands: at the same place always; where one of them may have been taken
 * anywhere, only if it agrees with nothing that was read.
 */
function contradictionsOf(groups: readonly Group[]): readonly Contradiction[] {
  return groups.flatMap((one, index) =>
    groups
      .slice(index + 1)
      .filter((other) => !sameTool(one, other) && contradict(one, other) && areOfOnePlace(one, other, groups))
      .map((other) => ({ one, other })),
  );
}

function areOfOnePlace(one: Group, other: Group, groups: readonly Group[]): boolean {
  if (one.place === other.place && one.direction === other.direction) return true;
  if (!mayBeSamePlace(one, other)) return false;
  return [one, other].some(
    (anywhere) =>
      (anywhere.place === undefined || anywhere.direction === undefined) &&
      groups.every(
        (any) => sameTool(any, anywhere) || !mayBeSamePlace(any, anywhere) || contradict(any, anywhere),
      ),
  );
}

function mayBeSamePlace(a: Group, b: Group): boolean {
  const samePlace = a.place === undefined || b.place === undefined || a.place === b.place;
  const sameDirection = a.direction === undefined || b.direction === undefined || a.direction === b.direction;
  return samePlace && sameDirection;
}

function contradict(a: Group, b: Group): boolean {
  return isMore(apartBy(a, b), plus(bandOf(a.estimate).halfWidth, bandOf(b.estimate).halfWidth));
}

function apartBy(a: Group, b: Group): Length {
  return absolute(minus(mean(a.estimate), mean(b.estimate)));
}

function saysNoPlace({ place, direction }: Group): boolean {
  return place === undefined && direction === undefined;
}

function isTighter(a: Length, b: Length, kind: FeatureKind): boolean {
  return isSmallTight(kind) ? isLess(a, b) : isMore(a, b);
}

function isSmallTight(kind: FeatureKind): boolean {
  return kind === 'bore' || kind === 'gap' || kind === 'depth';
}

function lowerEnd({ estimate }: Group): Length {
  return minus(mean(estimate), bandOf(estimate).halfWidth);
}

function upperEnd({ estimate }: Group): Length {
  return plus(mean(estimate), bandOf(estimate).halfWidth);
}

function furthest(groups: readonly Group[], isFurther: (a: Group, b: Group) => boolean): Group {
  const [first, ...rest] = groups;
  if (!first) throw new Error('a feature with readings has a group');
  return rest.reduce((so, group) => (isFurther(group, so) ? group : so), first);
}

function taperOf(groups: readonly Group[], kind: FeatureKind): FeatureForm['taper'] {
  const pairs = PLACES.flatMap((a, index) => PLACES.slice(index + 1).map((b) => ({ a, b })));
  return pairs
    .flatMap(({ a, b }) => {
      const difference = placeDifference(groups, a, b);
      if (!difference) return [];
      return [{ by: absolute(difference), tightestPlace: isTighter(difference, zero, kind) ? a : b }];
    })
    .reduce<FeatureForm['taper']>(
      (most, next) => (most && !isMore(next.by, most.by) ? most : next),
      undefined,
    );
}

/** Mean of a less b over the directions and tools that both places were read with. */
function placeDifference(groups: readonly Group[], a: Place, b: Place): Length | undefined {
  const differences = groups
    .filter((group) => group.place === a)
    .flatMap((group) => {
      const partner = groups.find(
        (other) => other.place === b && other.direction === group.direction && sameTool(other, group),
      );
      return partner ? [minus(mean(group.estimate), mean(partner.estimate))] : [];
    });
  return differences.length > 0 ? dividedBy(sum(differences), differences.length) : undefined;
}

function outOfRoundOf(groups: readonly Group[]): FeatureForm['outOfRound'] {
  return groups
    .filter((group) => group.direction === '0')
    .flatMap((group) => {
      const across = groups.find(
        (other) => other.direction === '90' && other.place === group.place && sameTool(other, group),
      );
      if (!across) return [];
      const by = absolute(minus(mean(group.estimate), mean(across.estimate)));
      return [{ by, ...(group.place && { place: group.place }) }];
    })
    .reduce<FeatureForm['outOfRound']>(
      (most, next) => (most && !isMore(next.by, most.by) ? most : next),
      undefined,
    );
}

function sameTool(a: Group, b: Group): boolean {
  return a.toolId === b.toolId;
}

function cautionsFor(kind: FeatureKind, readings: readonly Reading[]): readonly FormCaution[] {
  if (kind !== 'bore') return [];
  const unseen = readings.some(({ tool }) => TWO_POINT_TOOLS.has(tool.kind));
  const flats = readings.some(
    ({ tool, exact }) =>
      tool.kind === 'caliper' && tool.jawWidth === undefined && isLess(exact, FLATS_MATTER_BELOW),
  );
  return [...(unseen ? (['three-lobed-unseen'] as const) : []), ...(flats ? (['jaw-flats'] as const) : [])];
}
