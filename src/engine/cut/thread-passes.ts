/** Whole steps of the dial that a thread has to go on, how deep it is already, and how many one pass may have. */
export type ThreadSteps = {
  /** From where the tool just touched; not whole where that was measured. */
  readonly before: number;
  readonly all: number;
  /** The first pass: its area is what every later one takes. */
  readonly largest: number;
  readonly least: number;
  /** Of each of the last two passes. */
  readonly light: number;
};

/**
 * The passes of a thread, each of about the same area of metal, down to the least that cuts; the last two equal and light.
 *
 * Units:   whole steps of the dial. A V of 60° that is h deep has an area in step with h², so that the n-th pass ends at
 *          √n times the first.
 * Range:   largest ≥ light ≥ least ≥ 1. None is larger than the largest; one is smaller than the least only where that is
 *          all there is to take.
 * Source:  area of a triangle; constant area of the passes: common practice of single-point threading, no source.
 */
export function threadSteps(q: ThreadSteps): readonly number[] {
  if (q.all <= 0) return [];
  const light = Math.min(Math.max(q.light, q.least), q.largest);
  if (q.all < 2 * light + q.least) return fewSteps(q);
  return [...roughSteps(q, q.all - 2 * light), light, light];
}

function roughSteps({ before, largest, least }: ThreadSteps, all: number): readonly number[] {
  const passes: number[] = [];
  let at = before;
  let left = all;
  while (left > 0) {
    const sameArea = Math.floor(Math.hypot(at, largest) - at);
    const take = withoutCrumb(left, Math.min(Math.max(sameArea, least), largest), { largest, least });
    passes.push(take);
    at += take;
    left -= take;
  }
  return passes;
}

/** A pass that leaves nothing too small to cut behind it. */
function withoutCrumb(
  left: number,
  wanted: number,
  { largest, least }: Pick<ThreadSteps, 'largest' | 'least'>,
): number {
  if (left <= wanted) return left;
  if (left - wanted >= least) return wanted;
  if (left - least >= least) return left - least;
  return left <= largest ? left : wanted;
}

/** Too little for two light ones after another: two where both still cut, else all at once. */
function fewSteps({ all, largest, least }: ThreadSteps): readonly number[] {
  const count = Math.max(Math.ceil(all / largest), all >= 2 * least ? 2 : 1);
  const each = Math.floor(all / count);
  const larger = all - each * count;
  return Array.from({ length: count }, (_, place) => (place < larger ? each + 1 : each));
}
