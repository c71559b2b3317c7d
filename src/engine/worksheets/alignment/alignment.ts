import { dividedBy, isMore, minus, zero, type Length } from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { bandOf, mean, type Estimate } from '../../reading/estimate.ts';
import { legOf } from '../../reading/settle.ts';
import { middleOf, verdictOf } from '../../reading/verdict.ts';
import type { Judged } from '../proof.ts';
import { leanOut, type Lean, type LeanAsked } from './lean.ts';
import {
  squareAxle,
  twoAxles,
  type AxleAsked,
  type AxleRefusal,
  type SquareAxle,
  type TwoAxles,
} from './square-axle.ts';
import { inTurns, moveForToe, toeIn, type Band, type Move, type Toe, type ToeAsked } from './toe.ts';

type Adjuster = 'shim' | 'screw' | 'turnbuckle';

export type OutfitQuestion = {
  readonly of: 'outfit';
  readonly toe: ToeAsked;
  readonly fittings: Estimate;
  readonly moves: 'front' | 'rear';
  readonly adjuster: Adjuster;
  readonly pitch?: Length | undefined;
  readonly lead?: { readonly now: Estimate; readonly want: Band } | undefined;
  readonly lean?: LeanAsked | undefined;
  readonly track?: { readonly now: Estimate; readonly wanted?: Length | undefined } | undefined;
};

export type TrailerQuestion = {
  readonly of: 'trailer';
  readonly axle: AxleAsked;
  readonly toe?: (ToeAsked & { readonly flange?: Estimate | undefined }) | undefined;
  readonly second?: { readonly left: Estimate; readonly right: Estimate } | undefined;
};

export type AlignmentQuestion = OutfitQuestion | TrailerQuestion;

export type OutfitAnswer = {
  readonly of: 'outfit';
  readonly toe: Toe;
  readonly move: Move;
  readonly lead?: (Judged & { readonly lacks: Length }) | undefined;
  readonly lean?: Lean | undefined;
  readonly track?: { readonly now: Length; readonly lacks?: Length | undefined } | undefined;
};

export type TrailerAnswer = {
  readonly of: 'trailer';
  readonly axle: SquareAxle;
  readonly toe?: (Toe & { readonly shim?: Move | undefined }) | undefined;
  readonly second?: TwoAxles | undefined;
};

export type AlignmentAnswer = OutfitAnswer | TrailerAnswer;

export type AlignmentRefusal =
  | AxleRefusal
  | { readonly code: 'places-together' }
  | { readonly code: 'fittings-together' }
  | { readonly code: 'limits-crossed' };

/**
 * How an outfit or a trailer stands against what is wanted, and what is moved by how much.
 *
 * Units:   each part as its own function says. A trailer's toe is shared by both wheels: the shim behind one flange is half of
 *          what is lacking · flange / distance of the places. Lead and track: wanted less now.
 * Range:   places and fittings lie apart; limits the right way round.
 * Refuses: places-together, fittings-together, limits-crossed, no-triangle.
 * Source:  geometry; what is wanted: tables/alignment-practice.ts, or the fitter's own.
 */
export function alignment(q: AlignmentQuestion): Result<AlignmentAnswer, AlignmentRefusal> {
  const wants = q.of === 'outfit' ? [q.toe.want, ...(q.lead ? [q.lead.want] : [])] : [];
  if (wants.some(({ lower, upper }) => isMore(lower, upper))) return refuse({ code: 'limits-crossed' });
  if (q.of === 'outfit' && q.lean && q.lean.want.lower > q.lean.want.upper)
    return refuse({ code: 'limits-crossed' });
  if (q.toe && !isMore(mean(q.toe.apart), zero)) return refuse({ code: 'places-together' });
  return q.of === 'outfit' ? outfit(q) : trailer(q);
}

function outfit(q: OutfitQuestion): Result<OutfitAnswer, AlignmentRefusal> {
  if (!isMore(mean(q.fittings), zero)) return refuse({ code: 'fittings-together' });
  const toe = toeIn(q.toe);
  const move = moveForToe(toe, { turnsOver: q.fittings, apart: q.toe.apart });
  return worked({
    of: 'outfit',
    toe,
    move: inTurns(move, q.pitch, q.adjuster),
    ...(q.lead && { lead: leadOf(q.lead) }),
    ...(q.lean && { lean: leanOut(q.lean) }),
    ...(q.track && {
      track: {
        now: mean(q.track.now),
        ...(q.track.wanted && { lacks: minus(q.track.wanted, mean(q.track.now)) }),
      },
    }),
  });
}

function leadOf({ now, want }: NonNullable<OutfitQuestion['lead']>) {
  const { halfWidth, doubt } = bandOf(now);
  const value = mean(now);
  return {
    verdict: verdictOf({ value, halfWidth, limits: want, doubt }),
    value,
    halfWidth,
    limits: want,
    legs: [legOf('length', now, 1)],
    lacks: minus(middleOf(want), value),
  };
}

function trailer(q: TrailerQuestion): Result<TrailerAnswer, AlignmentRefusal> {
  const axle = squareAxle(q.axle);
  if (!axle.ok) return axle;
  return worked({
    of: 'trailer',
    axle: axle.value,
    ...(q.toe && { toe: trailerToe(q.toe) }),
    ...(q.second && { second: twoAxles(q.second, q.axle) }),
  });
}

/** Each wheel takes half of what is lacking, by a shim behind half of its flange's bolts. */
function trailerToe(asked: NonNullable<TrailerQuestion['toe']>): NonNullable<TrailerAnswer['toe']> {
  const toe = toeIn(asked);
  if (!asked.flange) return toe;
  const both = moveForToe(toe, { turnsOver: asked.flange, apart: asked.apart });
  return {
    ...toe,
    shim: { by: dividedBy(both.by, 2), halfWidth: dividedBy(both.halfWidth, 2) },
  };
}
