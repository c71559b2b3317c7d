import { byEye, type CheckOffer } from '../../reading/check-offer.ts';
import { mean } from '../../reading/estimate.ts';
import { isMore, isZero, negate, sameLength, zero, type Length } from '../../length/length.ts';
import type { LineUpQuestion } from './line-up.ts';
import {
  CENTRE_READ,
  centreLimits,
  centreSide,
  discLimits,
  hasWheelCentre,
  readOfDisc,
  sideOfDisc,
  sidePlayLimits,
} from './line-up-read.ts';
import { capital } from '../../length/say-words.ts';

type Asked = Pick<LineUpQuestion, 'layout' | 'sizes' | 'slides' | 'limits'>;

/**
 * What can be proved of a wheel once it is in: its centre, the bracket's side play, and the disc clear of its slot over
 * the whole float.
 *
 * Units:   limits are the line-up's own. A wheel wanted off the middle has one side that is the wider one: read is by how
 *          much, and on which side. The same difference on the other side is twice the offset away.
 * Range:   between bracket and disc the two tight places count: the disc's inner face with the bracket pushed out, its
 *          outer face with it pushed in. At the other ends there is more by the float.
 * Source:  a direct reading beats any sum of parts.
 */
export function checksOfLineUp(q: Asked): readonly CheckOffer[] {
  const { layout, sizes } = q;
  return [
    ...(hasWheelCentre(layout) ? [centreCheck(sizes['offset'] ? mean(sizes['offset']) : zero, q)] : []),
    ...layout.discs.flatMap((disc) => discChecks(disc, q)),
    ...(sizes['sprocket'] ? [sprocketCheck(q)] : []),
    byEye(
      'Wheel turns free',
      'Axle nut torqued, cotter pin in. Spin it: no part rubs, nothing gets tighter as it turns.',
    ),
  ];
}

function centreCheck(offset: Length, { limits }: Asked): CheckOffer {
  const side = centreSide(offset, limits.line);
  return {
    name:
      side === 'either' ? 'Wheel centre, difference of the two sides' : `Wheel centre, ${side} side wider by`,
    by: 'gap',
    limits: centreLimits(offset, limits.line, side),
    how: side === 'either' ? `${howSides('left')} It is twice as much as the wheel is off.` : howWider(side),
    sizeName: CENTRE_READ[side],
  };
}

/**
 * Whether limits that are kept for a reading on the machine let pass what must not be: a bracket without any play, a disc
 * that rubs, a wheel as far off on the wrong side as it is wanted on the other.
 *
 * Range:   a difference without its side proves a wheel only where it has a greatest and nothing else, or the same both ways, and
 *          where the wheel is wanted off the middle no more than holds on either side.
 */
export function provesTooLittle(kept: Pick<CheckOffer, 'sizeName' | 'limits'>, q: Asked): boolean {
  const { sizeName, limits } = kept;
  if (sizeName === CENTRE_READ.either && hasWheelCentre(q.layout)) return isOfNoSide(limits, q);
  const least = checksOfLineUp(q).find((offer) => offer.sizeName === sizeName)?.limits.lower;
  return isAboveZero(least) && !isAboveZero(limits.lower);
}

function isOfNoSide(limits: CheckOffer['limits'], { sizes, limits: { line } }: Asked): boolean {
  const offset = sizes['offset'] ? mean(sizes['offset']) : zero;
  const most = centreLimits(offset, line, 'either').upper;
  if (isOneSided(limits) || !limits.upper || centreSide(offset, line) !== 'either') return true;
  return !isZero(offset) && most !== undefined && isMore(limits.upper, most);
}

/** Whether a difference without its side is held against limits that are not the same on either side. */
export function isOneSided({ lower, upper }: CheckOffer['limits']): boolean {
  return lower !== undefined && !(upper && sameLength(lower, negate(upper)));
}

function isAboveZero(length: Length | undefined): boolean {
  return length !== undefined && isMore(length, zero);
}

/** The check of the wheel's centre that stands in place of one without its side. */
export function centreCheckOf(q: Asked): CheckOffer | undefined {
  return hasWheelCentre(q.layout)
    ? centreCheck(q.sizes['offset'] ? mean(q.sizes['offset']) : zero, q)
    : undefined;
}

function howSides(narrower: 'left' | 'right'): string {
  const other = narrower === 'left' ? 'right' : 'left';
  return `Set a rod so that it just goes between the ${narrower} leg and the rim. Hold it at the same height on the ${other}: the gap that is left, or by how much it is too long, is the difference.`;
}

/** Only the named side counts: as much on the other one is a wheel that sits on the wrong side of the middle. */
function howWider(side: 'left' | 'right'): string {
  const other = side === 'left' ? 'right' : 'left';
  return `Set a rod so that it just goes between the ${other} leg and the rim. Hold it at the same height on the ${side}: the gap that is left is the difference. If the rod is too long there, the wheel sits on the wrong side: enter 0.`;
}

function discChecks(disc: LineUpQuestion['layout']['discs'][number], q: Asked): readonly CheckOffer[] {
  const { sizes, limits, slides } = q;
  const names = readOfDisc(disc);
  const side = sideOfDisc(disc);
  const float = sizes[disc.float] ?? sizes['leftFloat'];
  const padWear = slides === 'bracket' ? sizes['padWear'] : undefined;
  return [
    ...(float
      ? [
          {
            name: capital(`${side}bracket’s side play`),
            by: 'gap',
            limits: sidePlayLimits({
              float: mean(float),
              ...(padWear && { padWear: mean(padWear) }),
              limits,
            }),
            how: 'Axle nut torqued, pads out. Push the bracket to the wheel and put a feeler in the gap at its other side, or read its whole travel with an indicator.',
            sizeName: names.float,
          } as const,
        ]
      : []),
    {
      name: capital(`${side}disc’s inner face to its slot`),
      by: 'gap',
      limits: discLimits(limits, 'counted'),
      how: 'Push the bracket out, away from the wheel, as far as it floats. Feeler between the disc’s face towards the hub and the slot, where it is tightest over a whole turn.',
      sizeName: names.inside,
    },
    {
      name: capital(`${side}disc’s outer face to its slot`),
      by: 'gap',
      limits: discLimits(limits, 'counted'),
      how: 'Push the bracket in, towards the wheel, as far as it floats. Feeler between the disc’s outer face and the slot, where it is tightest over a whole turn.',
      sizeName: names.outside,
    },
    byEye(
      capital(`${side}bracket held from turning`),
      'Its torque arm or lug is on, bolted through metal on both sides, and the bolt is secured.',
    ),
  ];
}

function sprocketCheck({ limits: { line } }: Asked): CheckOffer {
  return {
    name: 'Sprocket line',
    by: 'gap',
    limits: { upper: line.by, source: line.source },
    how: 'Straight bar along the rear sprocket’s face to the front one, chain tight. Read the gap between the bar and the front sprocket’s face, thickness of the sprockets allowed for.',
  };
}
