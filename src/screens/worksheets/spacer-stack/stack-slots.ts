import {
  absolute,
  isMore,
  isNegative,
  isZero,
  largest,
  minus,
  ratioOf,
  sum,
  times,
  type Length,
} from '../../../engine/length/length.ts';
import { mean } from '../../../engine/reading/estimate.ts';
import type { GivenPart } from '../../../engine/worksheets/given.ts';

/** Where a part stands in the drawing. */
export type Slot = { readonly part: GivenPart; readonly x: number; readonly width: number };

export type Room = { readonly left: number; readonly right: number };

export type Laid = {
  readonly slots: readonly Slot[];
  /** Where the last part ends. */
  readonly end: number;
  /** Where the sleeve ends: before the last part's end where the parts stand proud. */
  readonly sleeveEnd: number;
  /** What is left of the sleeve; below zero the parts stand proud; nothing while it isn't known. */
  readonly left: Length | undefined;
  readonly drawn: 'to scale' | 'larger' | 'smaller';
};

const LEAST_PART = 7;
const LEAST_GAP = 7;
const LEAST_PROUD = 6;
// Till the sleeve is given the parts take so much of the room, and a part without a size is drawn so long.
const USUAL_SHARE = 0.7;
const USUAL_PART = 34;

/**
 * The parts from left to right, to scale where they can be seen: the smallest are widened and the others give way. `read` is
 * the gap as it was read, where it was.
 */
export function layOut(
  parts: readonly GivenPart[],
  { fixed, read }: { readonly fixed: Length | undefined; readonly read: Length | undefined },
  { left, right }: Room,
): Laid {
  const lengths = parts.map(({ size, count }) => size && times(mean(size.most), count));
  const known = lengths.flatMap((length) => length ?? []);
  const total = sum(known);
  const gap = read ?? (fixed && minus(fixed, total));
  const room = right - left;
  const whole = fixed ? largest(fixed, total) : total;
  const scale = fixed ? room : room * USUAL_SHARE;
  const raw = lengths.map((length) =>
    length ? Math.max(LEAST_PART, scale * shareOf(length, whole)) : USUAL_PART,
  );
  const proud = gap && isNegative(gap) ? gap : undefined;
  const isClose = gap !== undefined && !isZero(gap) && !proud;
  const trueGap = gap && !isZero(whole) ? room * Math.abs(ratioOf(absolute(gap), whole)) : 0;
  const most = isClose ? room - LEAST_GAP : room;
  const widths = fitted(raw, proud || (gap && isZero(gap)) ? { to: room } : { most });
  const end = left + widths.reduce((so, width) => so + width, 0);
  const proudWidth = proud ? Math.min(room / 3, Math.max(LEAST_PROUD, trueGap)) : 0;
  const drawnGap = proud ? proudWidth : right - end;
  return {
    slots: parts.map((part, index) => ({
      part,
      x: left + widths.slice(0, index).reduce((so, width) => so + width, 0),
      width: widths[index] ?? 0,
    })),
    end,
    sleeveEnd: proud ? end - proudWidth : right,
    left: known.length > 0 || read ? gap : fixed,
    drawn:
      Math.abs(drawnGap - trueGap) < 1.5 || !gap || isZero(gap)
        ? 'to scale'
        : drawnGap > trueGap
          ? 'larger'
          : 'smaller',
  };
}

/** Brought to a width, or to no more than one, by those that are wide enough to give. */
function fitted(
  raw: readonly number[],
  { to, most = to ?? 0 }: { readonly to?: number; readonly most?: number },
): readonly number[] {
  const total = raw.reduce((so, width) => so + width, 0);
  if (total === 0 || (to === undefined && total <= most)) return raw;
  const small = raw.filter((width) => width <= LEAST_PART).length * LEAST_PART;
  const others = total - small;
  const give = others > 0 ? Math.max(0, (most - small) / others) : 1;
  const widths = raw.map((width) => (width <= LEAST_PART ? width : Math.max(LEAST_PART, width * give)));
  const over = widths.reduce((so, width) => so + width, 0) / most;
  return over > 1 ? widths.map((width) => width / over) : widths;
}

// A size of nothing is a slip of the pad; the drawing stays, so that it can be found and put right.
function shareOf(length: Length, whole: Length): number {
  return isZero(whole) || !isMore(whole, length) ? Number(!isZero(length)) : ratioOf(length, whole);
}
