import { isMore, largest, minus, plus, ratioOf, zero, type Length } from '../../../engine/length/length.ts';
import type { LaidPart } from '../../../engine/worksheets/axle-line-up/line-up.ts';

export type DrawnPart = { readonly name: string; readonly x: number; readonly width: number };

export type AxleScale = {
  readonly parts: readonly DrawnPart[];
  /** Where a plane at this distance from the left leg is drawn. */
  readonly at: (place: Length) => number;
  /** Whether something had to be drawn wider than it is. */
  readonly widened: boolean;
};

/** The least width that can be seen: a float is a gap, a spacer has room for its letter. */
function leastWidth(name: string): number {
  if (name.includes('float')) return 5;
  if (name === 'hub') return 84;
  return /bracket|plate/i.test(name) ? 18 : 20;
}

/**
 * An axle's parts from leg to leg, to scale where they can be seen; the smallest are widened, and what has room gives
 * way. A part that comes out below nothing is drawn as none.
 */
export function axleScale(parts: readonly LaidPart[], left: number, room: number): AxleScale {
  const metal = parts.map(({ length }) => largest(zero, length));
  const whole = metal.reduce(plus, zero);
  const shareOf = (length: Length) => (isMore(whole, zero) ? ratioOf(length, whole) : 0);
  const trueWidths = metal.map((length) => room * shareOf(length));
  const least = parts.map(({ name }, index) => ((trueWidths[index] ?? 0) > 0 ? leastWidth(name) : 0));
  const widths = fitted(trueWidths, least, room);
  const drawn = parts.map(({ name }, index): DrawnPart => ({
    name,
    x: left + total(widths.slice(0, index)),
    width: widths[index] ?? 0,
  }));
  const starts = metal.map((_, index) => metal.slice(0, index).reduce(plus, zero));
  return {
    parts: drawn,
    widened: widths.some((width, index) => width > (trueWidths[index] ?? 0) + 1),
    at: (place) => {
      const found = starts.findLastIndex((start) => !isMore(start, place));
      const index = Math.max(0, found);
      const [part, start, length] = [drawn[index], starts[index], metal[index]];
      if (!part || !start || !length) return left;
      const along = isMore(length, zero) ? ratioOf(minus(place, start), length) : 0;
      return part.x + along * part.width;
    },
  };
}

/** Widths at least as wide as can be seen; what is over comes off the others by what they have to spare. */
function fitted(widths: readonly number[], least: readonly number[], room: number): readonly number[] {
  const raised = widths.map((width, index) => Math.max(width, least[index] ?? 0));
  const spare = raised.map((width, index) => width - (least[index] ?? 0));
  const over = total(raised) - room;
  const all = total(spare);
  if (over <= 0 || all <= 0) return raised;
  return raised.map((width, index) => width - (over * (spare[index] ?? 0)) / all);
}

/** A label as wide as its words, with the place on the drawing that it is wanted at. */
export type Wanted = { readonly at: number; readonly width: number };

/**
 * The middles of labels in a row, in their order, as near as can be to what they name: moved apart where they would
 * overlap, and inside. Where they don't all go in, the gaps between them give way first.
 */
export function apart(wanted: readonly Wanted[], gap: number, from: number, to: number): readonly number[] {
  const spare = to - from - total(wanted.map(({ width }) => width));
  const between = Math.min(gap, spare / Math.max(1, wanted.length - 1));
  const lefts = wanted.reduce<readonly number[]>((so, { at, width }, index) => {
    const before = wanted[index - 1];
    const least = before ? (so.at(-1) ?? from) + before.width + between : from;
    return [...so, Math.max(at - width / 2, least)];
  }, []);
  return wanted.reduceRight<readonly number[]>((so, { width }, index) => {
    const after = so[0];
    const next = wanted[index + 1];
    const end = after === undefined || !next ? to : after - next.width / 2 - between;
    return [Math.min((lefts[index] ?? from) + width / 2, end - width / 2), ...so];
  }, []);
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((so, next) => so + next, 0);
}
