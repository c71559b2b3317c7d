/** A whole number of dial steps to take, and how many of them one pass may have. */
export type StepsToSplit = {
  readonly all: number;
  readonly largest: number;
  readonly least: number;
  /** Of each of the last two passes. */
  readonly light: number;
};

export type SplitSteps = {
  readonly rough: readonly number[];
  /** Two equal and light; one where there is too little for two; none where nothing is left. */
  readonly last: readonly number[];
  /** The last two could not be made equal with every pass between the least and the largest. */
  readonly uneven: boolean;
};

const MOST_TRIES = 500; // chosen: no dial has more marks between the least and the largest cut

/**
 * Dial steps split into passes: roughing spread evenly over as few passes as will do, the last two equal and light.
 *
 * Units:   whole steps of the dial; largest ≥ 1, least ≥ 1, least ≤ largest.
 * Range:   no pass is ever larger than the largest. The light ones come as near to what is wanted of them as leaves a
 *          roughing pass that is no lighter than they are; then one that cuts at all; where neither can be had, the
 *          whole is spread evenly and some pass may be smaller than the least.
 * Source:  common practice, no source.
 */
export function splitSteps(q: StepsToSplit): SplitSteps {
  if (q.all <= 0) return { rough: [], last: [], uneven: false };
  const candidates = lightCandidates(q);
  const light =
    candidates.find((one) => leastRough(q, one) >= Math.max(one, q.least)) ??
    candidates.find((one) => leastRough(q, one) >= q.least);
  if (light !== undefined) return { rough: roughOf(q, light), last: [light, light], uneven: false };
  return spreadWhole(q);
}

/** Each of the last two: what is wanted first, then lighter, then heavier, all between the least and the largest. */
function lightCandidates({ all, largest, least, light }: StepsToSplit): readonly number[] {
  const most = Math.min(largest, Math.floor(all / 2));
  const wanted = Math.min(Math.max(light, least), largest);
  const start = Math.min(wanted, most);
  const lighter = countUpTo(start - least + 1).map((fewer) => start - fewer);
  const heavier = countUpTo(most - start).map((more) => start + 1 + more);
  return [...lighter, ...heavier];
}

function countUpTo(count: number): readonly number[] {
  return Array.from({ length: Math.min(Math.max(0, count), MOST_TRIES) }, (_, place) => place);
}

function roughOf(q: StepsToSplit, light: number): readonly number[] {
  const rough = q.all - 2 * light;
  return evenly(rough, Math.ceil(rough / q.largest));
}

/** The smallest roughing pass there would be; with nothing to rough there is none too small. */
function leastRough(q: StepsToSplit, light: number): number {
  return roughOf(q, light).at(-1) ?? Infinity;
}

function spreadWhole({ all, largest, least }: StepsToSplit): SplitSteps {
  // Two, where both of them still cut: there is something to measure between them.
  const count = Math.max(Math.ceil(all / largest), all >= 2 * least ? 2 : 1);
  const passes = evenly(all, count);
  const last = passes.slice(-2);
  return { rough: passes.slice(0, -2), last, uneven: last.length === 2 && last[0] !== last[1] };
}

/** The larger ones first. */
function evenly(all: number, count: number): readonly number[] {
  const each = Math.floor(all / count);
  const larger = all - each * count;
  return Array.from({ length: count }, (_, place) => (place < larger ? each + 1 : each));
}
