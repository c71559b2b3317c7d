import {
  dividedBy,
  isLess,
  isMore,
  minus,
  plus,
  roundToStep,
  sameLength,
  smallest,
  sum,
  times,
  zero,
  type Length,
} from '../../length/length.ts';

/** How far a part may be below and above the length it is cut to. */
export type Leeway = { readonly down: Length; readonly up: Length };

/** One limit of one condition: what is left to it, and how many times each way of each part takes from it. */
export type Side = {
  readonly slack: Length;
  readonly takes: readonly { readonly part: string; readonly way: keyof Leeway; readonly share: number }[];
};

type Way = { readonly part: string; readonly way: keyof Leeway; readonly most: Length };

/**
 * How far each of several parts may be off so that every limit holds when all of them are off the worst way at once.
 *
 * Units:   every way of every part grows alike until a limit has nothing left or the part has all it may have; what is left
 *          elsewhere goes on growing. At the end each is rounded down to `grid`, so that nothing is given twice.
 * Range:   slacks of zero or more; shares are whole numbers above zero (a condition with halves is doubled first).
 * Source:  worst-case tolerance stack; sharing alike is common practice, no source.
 */
export function shareOut({
  sides,
  most,
  grid,
}: {
  readonly sides: readonly Side[];
  readonly most: Readonly<Record<string, Leeway>>;
  readonly grid: Length;
}): Readonly<Record<string, Leeway>> {
  const ways = Object.entries(most).flatMap(([part, { down, up }]): Way[] => [
    { part, way: 'down', most: down },
    { part, way: 'up', most: up },
  ]);
  const given = new Map<string, Length>(ways.map((way) => [keyOf(way), zero]));
  let growing: readonly Way[] = ways.filter((way) => isMore(way.most, zero));
  for (;;) {
    const [first] = growing;
    if (!first) break;
    const grows = new Set(growing.map(keyOf));
    const ends = sides.map((side) => ({ side, at: roomOf(side, given, grows) }));
    const tops = growing.map((way) => ({ way, at: minus(way.most, given.get(keyOf(way)) ?? zero) }));
    const by = smallest(
      minus(first.most, given.get(keyOf(first)) ?? zero),
      ...ends.flatMap(({ at }) => at ?? []),
      ...tops.map(({ at }) => at),
    );
    for (const key of grows) given.set(key, plus(given.get(key) ?? zero, by));
    const full = new Set([
      ...ends.flatMap(({ side, at }) => (at && sameLength(at, by) ? side.takes.map(keyOf) : [])),
      ...tops.flatMap(({ way, at }) => (sameLength(at, by) ? [keyOf(way)] : [])),
    ]);
    growing = growing.filter((way) => !full.has(keyOf(way)));
  }
  const share = (part: string, way: keyof Leeway) =>
    roundToStep(given.get(keyOf({ part, way })) ?? zero, grid, 'down');
  return Object.fromEntries(
    Object.keys(most).map((part) => [part, { down: share(part, 'down'), up: share(part, 'up') }]),
  );
}

function keyOf({ part, way }: { readonly part: string; readonly way: keyof Leeway }): string {
  return `${part} ${way}`;
}

/** By how much all that still grows may grow before this limit has nothing left; undefined where nothing of it does. */
function roomOf(
  { slack, takes }: Side,
  given: ReadonlyMap<string, Length>,
  grows: ReadonlySet<string>,
): Length | undefined {
  const load = takes.reduce((so, take) => (grows.has(keyOf(take)) ? so + take.share : so), 0);
  if (load === 0) return undefined;
  const taken = sum(takes.map((take) => times(given.get(keyOf(take)) ?? zero, take.share)));
  const left = minus(slack, taken);
  return isLess(left, zero) ? zero : dividedBy(left, load);
}
