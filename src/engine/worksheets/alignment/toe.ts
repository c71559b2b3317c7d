import {
  absolute,
  floatMm,
  hypotenuse,
  isMore,
  isNegative,
  minus,
  ratioOf,
  scaledBy,
  zero,
  type Length,
} from '../../length/length.ts';
import { degreesOf } from '../../length/angle.ts';
import { bandOf, combine, mean, type Estimate } from '../../reading/estimate.ts';
import { legOf } from '../../reading/settle.ts';
import { middleOf, verdictOf, type Limits } from '../../reading/verdict.ts';
import type { Judged } from '../proof.ts';

/** Limits on both sides: what is aimed at lies half-way. */
export type Band = Limits & { readonly lower: Length; readonly upper: Length };

export type ToeAsked = {
  readonly front: Estimate;
  readonly rear: Estimate;
  readonly apart: Estimate;
  readonly want: Band;
};

/** How far something is moved, and how closely that is known. Above zero: it takes away from the distance in front. */
export type Move = {
  readonly by: Length;
  readonly halfWidth: Length;
  /** Of an adjuster whose thread is known; floating point. */
  readonly turns?: number | undefined;
};

export type Toe = {
  /** Above zero: closer in front. */
  readonly judged: Judged;
  /** The same as an angle between both wheels; floating point. */
  readonly degrees: number;
  /** What it lacks to the middle of what is wanted. */
  readonly lacks: Length;
};

/**
 * Toe-in between two straight edges, judged against what is wanted.
 *
 * Units:   behind less in front; its band is that of the difference, with one tool's error common to both. Degrees:
 *          asin(toe / distance of both places), floating point.
 * Range:   any sign; the places lie apart.
 * Source:  geometry; JCGM 100:2008 for the band.
 */
export function toeIn({ front, rear, apart, want }: ToeAsked): Toe {
  const { value, band } = combine([
    { estimate: rear, coefficient: 1 },
    { estimate: front, coefficient: -1 },
  ]);
  const { halfWidth, doubt } = band;
  return {
    judged: {
      verdict: verdictOf({ value, halfWidth, limits: want, doubt }),
      value,
      halfWidth,
      limits: want,
      legs: [legOf('length', rear, 1), legOf('length', front, -1)],
    },
    degrees: degreesOf(Math.asin(Math.max(-1, Math.min(1, ratioOf(value, mean(apart)))))),
    lacks: minus(middleOf(want), value),
  };
}

/**
 * How far one fitting goes, so that all that turns about the other one takes away what toe-in lacks.
 *
 * Units:   lacking · distance of the fittings / distance of the places; exact. Its band: that of the toe on the same scale, with
 *          those of both distances.
 * Source:  similar triangles.
 */
export function moveForToe(
  { lacks, judged }: Pick<Toe, 'lacks' | 'judged'>,
  { turnsOver, apart }: { readonly turnsOver: Estimate; readonly apart: Estimate },
): Move {
  const ratio = { numerator: mean(turnsOver), denominator: mean(apart) };
  const by = scaledBy(lacks, ratio);
  const share = (size: Estimate) =>
    scaledBy(absolute(by), { numerator: bandOf(size).halfWidth, denominator: mean(size) });
  return {
    by,
    halfWidth: hypotenuse(scaledBy(judged.halfWidth, ratio), hypotenuse(share(turnsOver), share(apart))),
  };
}

/** A move as turns of its adjuster: a turnbuckle takes in two pitches a turn. Floating point. */
export function inTurns(
  move: Move,
  pitch: Length | undefined,
  adjuster: 'shim' | 'screw' | 'turnbuckle',
): Move {
  if (!pitch || adjuster === 'shim' || !isMore(pitch, zero)) return move;
  const each = adjuster === 'turnbuckle' ? 2 * floatMm(pitch) : floatMm(pitch);
  return { ...move, turns: Math.abs(floatMm(move.by)) / each };
}

/** Which way a move goes, where in front is taken away from by going in. */
export function goesIn({ by }: Move, at: 'front' | 'rear'): boolean {
  return isNegative(by) ? at === 'rear' : at === 'front';
}
