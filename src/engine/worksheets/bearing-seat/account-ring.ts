import { gripOf, type RingFit } from '../../fit/ring-fit.ts';
import { sayClearance, sayLimits } from '../../fit/say-fit.ts';
import { RING_SEAT_SOURCE } from '../../fit/tables/iso492-rings.ts';
import { isNegative, negate } from '../../length/length.ts';
import { figure, show, showBand, withUnit, type ShownUnit } from '../../length/show.ts';
import { mean } from '../../reading/estimate.ts';
import type { LeadBlock, RowsBlock, WhyLine } from '../account.ts';
import { judged, type AnswerOf, type Asked, type Blocks } from './account-judged.ts';
import { HOUSING_BORED, SHAFT_TURNED } from './cuts-of-ring-seat.ts';

/** What is said of a bearing's seat: whether the one there keeps its limits, what it is cut to, and how the ring sits. */
export function ofRing({ ask, found }: AnswerOf<'ring'>, asked: Asked): Blocks {
  const { unit } = asked.given;
  const { fit, seat, clearance, isPast } = found;
  const isShaft = ask.ring === 'inner';
  const done: Blocks = [
    seatLead(found, { isShaft, unit }),
    isPast ? { is: 'said', sentence: sayPast(isShaft) } : undefined,
    { is: 'said', sentence: `A new bearing there: ${sayClearance(fit, unit)}.` },
    clearance && { is: 'said', sentence: sayOwn(clearance, unit) },
  ];
  const rows = limitRows(fit, { isShaft, unit });
  if (!seat) return [...done, rows, ...LATHE];
  const known = {
    value: seat.value,
    band: { halfWidth: seat.halfWidth },
    verdict: seat.verdict,
    limits: seat.limits,
    quantity: isShaft ? 'shaft' : 'housing',
    label: isShaft ? 'shaft' : 'housing',
  };
  return [...judged(known, asked, done), rows, ...(found.cut ? LATHE : [])];
}

const LATHE: Blocks = [{ is: 'caution', of: 'lathe' }];

function seatLead(
  { fit, cut }: AnswerOf<'ring'>['found'],
  { isShaft, unit }: { readonly isShaft: boolean; readonly unit: ShownUnit },
): LeadBlock | undefined {
  if (!cut) return undefined;
  const { target, present } = cut;
  return {
    is: 'lead',
    label: isShaft ? 'Turn the shaft to' : 'Bore the housing to',
    figure: figure(target, unit),
    unit,
    change: present && `${figure(present, unit)} → ${figure(target, unit)}`,
    limits: `${fit.seatClass}: good from ${withUnit(sayLimits(fit.seat, unit), unit)}`,
    cut: isShaft ? SHAFT_TURNED : HOUSING_BORED,
  };
}

function sayPast(isShaft: boolean): string {
  return isShaft
    ? 'Too thin to cut: build it up or sleeve it, then turn it.'
    : 'Too wide to cut: bush it, then bore it.';
}

/** `This ring and this seat: .0006 grip ±.0002.` */
function sayOwn(
  { value, halfWidth }: NonNullable<AnswerOf<'ring'>['found']['clearance']>,
  unit: ShownUnit,
): string {
  const isGrip = isNegative(value);
  const size = withUnit(figure(isGrip ? negate(value) : value, unit), unit);
  return `As measured: ${size} ${isGrip ? 'grip' : 'room'}, ${showBand(halfWidth, unit)}.`;
}

function limitRows(
  { seat, ring, clearance, kind, seatClass }: RingFit,
  { isShaft, unit }: { readonly isShaft: boolean; readonly unit: ShownUnit },
): RowsBlock {
  return {
    is: 'rows',
    title: `Seat ${seatClass}`,
    rows: [
      { what: isShaft ? 'Shaft' : 'Housing', figure: sayLimits(seat, unit) },
      {
        what: isShaft ? 'Ring’s bore' : 'Ring’s outside',
        figure: sayLimits(ring, unit),
        more: 'normal class',
      },
      {
        what: kind === 'interference' ? 'Grip' : kind === 'clearance' ? 'Room' : 'Room or grip',
        figure:
          kind === 'interference'
            ? sayLimits(gripOf(clearance), unit)
            : sayClearance({ clearance, kind }, unit),
      },
    ],
  };
}

export function ringWhy({ ask, found: { fit } }: AnswerOf<'ring'>, unit: ShownUnit): readonly WhyLine[] {
  return [
    {
      what: 'Class of the seat',
      how: `${fit.seatClass}: ${
        ask.load === 'stands'
          ? 'the load stands still on this ring, so it may slide'
          : 'the load goes round on this ring, so it creeps unless it is held'
      }`,
      source: RING_SEAT_SOURCE,
    },
    {
      what: 'Limits of the seat',
      how: `${show(ask.nominal, unit)} ${fit.seatClass}: ${sayLimits(fit.seat, unit)}`,
      source: fit.source,
    },
    {
      what: 'The ring',
      how: `${sayLimits(fit.ring, unit)}, never over its nominal`,
      source: 'ISO 492, normal class, taper rollers apart',
    },
    ...(ask.seat
      ? [{ what: 'Seat there is', how: show(mean(ask.seat.tightest), unit), source: 'your readings' }]
      : []),
  ];
}
