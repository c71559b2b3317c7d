import type { CutOffer } from '../../cut/cut.ts';
import { wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { isZero, type Length } from '../../length/length.ts';
import { sizeStep, type Dial } from '../../length/metal-on.ts';
import { targetBetween } from '../../length/target-between.ts';
import { mean } from '../../reading/estimate.ts';
import { around, type TaperAnswer, type TaperQuestion } from './taper.ts';

/** The plain cylinder that the taper is cut out of, and the end at which the taper takes most. */
export const CYLINDER = { outside: 'Taper, its big end first', bore: 'Taper, its small end first' } as const;
export const TAPERED = { outside: 'Taper, at its small end', bore: 'Taper, at its mouth' } as const;

/**
 * What is cut for a taper: plain to the one end, then with the compound set over to the other. That is where the whole depth
 * of cut is taken, so that no pass is deeper than it says; when it is to size, the taper has run its whole length.
 *
 * Units:   diameters. Outside: big end, then from it down to the small end; a bore: small end, then from it out to the mouth.
 * Range:   a taper that comes to a point has no small end to be measured: only its plain part is offered.
 * Source:  lathe practice; how far a size may be off: the fitter's own, or common practice, no source.
 */
export function cutsOfTaper(q: TaperQuestion, answer: TaperAnswer, dial: Dial): readonly CutWay[] {
  const { cone } = answer;
  const of = q.side === 'bore' ? 'bore' : 'outside';
  const step = sizeStep(of, dial);
  const operation = of === 'bore' ? 'bore' : 'turn';
  const [first, then] = of === 'bore' ? [cone.small, cone.large] : [cone.large, cone.small];
  const to = (size: Length) => {
    const limits = around(size, q.within);
    return { ...limits, target: targetBetween({ ...limits, aim: size }, of, step) };
  };
  const part = 'taper';
  const limitsFrom = q.withinFrom;
  const plain = to(first);
  const offers: readonly CutOffer[] = [
    ...(isZero(first)
      ? []
      : [
          {
            name: CYLINDER[of],
            part,
            operation,
            of,
            ...(q.blank && of === 'outside' && { present: mean(q.blank) }),
            ...plain,
            limitsFrom,
          } as const,
        ]),
    ...(isZero(then)
      ? []
      : [
          {
            name: TAPERED[of],
            part,
            operation,
            of,
            ...(isZero(first) ? {} : { present: plain.target }),
            ...to(then),
            limitsFrom,
            compoundDegrees: cone.halfDegrees,
          } as const,
        ]),
  ];
  const isUnsure = answer.mate !== undefined && answer.mate.verdict.kind !== 'good';
  return wayOf({
    id: 'taper',
    name: of === 'bore' ? 'Bored by the compound' : 'Turned by the compound',
    offers,
    ...(isUnsure && { unsure: true }),
  });
}
