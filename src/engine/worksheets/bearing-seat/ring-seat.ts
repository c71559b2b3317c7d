import { checkBore, checkPin, type Checked, type MeasuredPart } from '../../fit/fit-check.ts';
import type { IsoRefusal } from '../../fit/fits-iso.ts';
import { ringFit, type RingFit } from '../../fit/ring-fit.ts';
import type { Ring, RingLoad } from '../../fit/tables/iso492-rings.ts';
import { isLess, isMore, type Length } from '../../length/length.ts';
import { worked, type Result } from '../../length/refusal.ts';
import { targetBetween } from '../../length/target-between.ts';
import { combine, mean, type Estimate } from '../../reading/estimate.ts';

export type RingSeatQuestion = {
  readonly ring: Ring;
  readonly load: RingLoad;
  readonly nominal: Length;
  /** The shaft or the housing there is. */
  readonly seat?: MeasuredPart | undefined;
  /** The bearing's own ring, where it was measured. */
  readonly own?: MeasuredPart | undefined;
  /** Of the dial, for what is turned or bored. */
  readonly step: Length;
};

export type RingSeatAnswer = {
  readonly fit: RingFit;
  readonly seat?: Checked;
  /** Between this ring and this seat as both were measured: at its tightest, with its band. Below zero it grips. */
  readonly clearance?: { readonly value: Length; readonly halfWidth: Length };
  /** What it is turned or bored to; none where it is good, or has too little metal. */
  readonly cut?: { readonly target: Length; readonly present?: Length };
  /** No cut puts it right: a shaft too thin, a housing too wide. */
  readonly isPast: boolean;
};

/**
 * The seat of a bearing's ring: its limits, whether the one there keeps them, and what it is cut to.
 *
 * Units:   as `ringFit`; a shaft with metal left is turned, a housing bored, both rounded metal-on inside the limits.
 * Refuses: size-outside-fit-table.
 * Source:  as `ringFit`; ISO 14253-1 for the verdict.
 */
export function ringSeat(q: RingSeatQuestion): Result<RingSeatAnswer, IsoRefusal> {
  const fit = ringFit(q);
  if (!fit.ok) return fit;
  const { seat: limits, source } = fit.value;
  const isShaft = q.ring === 'inner';
  const target = targetBetween(limits, isShaft ? 'outside' : 'bore', q.step);
  const seat =
    q.seat &&
    (isShaft ? checkPin({ pin: limits, source }, q.seat) : checkBore({ hole: limits, source }, q.seat));
  const isPast = seat !== undefined && seat.verdict.kind !== 'good' && !hasMetal(q.seat, target, isShaft);
  const present = q.seat && mean(q.seat.tightest);
  const cut = seat?.verdict.kind === 'good' || isPast ? undefined : { target, ...(present && { present }) };
  return worked({
    fit: fit.value,
    isPast,
    ...(seat && { seat }),
    ...(q.seat && q.own && { clearance: between(q.seat, q.own, isShaft) }),
    ...(cut && { cut }),
  });
}

function hasMetal(seat: MeasuredPart | undefined, target: Length, isShaft: boolean): boolean {
  if (!seat) return true;
  const [tight, loose] = [mean(seat.tightest), mean(seat.loosest)];
  // A shaft is thinnest where it is loosest, a bore widest: no place may be past the target already.
  return isShaft
    ? isMore(tight, target) && !isLess(loose, target)
    : isLess(tight, target) && !isMore(loose, target);
}

function between(seat: MeasuredPart, own: MeasuredPart, isShaft: boolean) {
  const [hole, pin]: readonly [Estimate, Estimate] = isShaft
    ? [own.tightest, seat.tightest]
    : [seat.tightest, own.tightest];
  const { value, band } = combine([
    { estimate: hole, coefficient: 1 },
    { estimate: pin, coefficient: -1 },
  ]);
  return { value, halfWidth: band.halfWidth };
}
