import { marked } from '../../length/decimal-text.ts';
import { bandOf, mean } from '../../reading/estimate.ts';
import type { Length } from '../../length/length.ts';
import { showBand, type ShownUnit } from '../../length/show.ts';
import type { WhyLine } from '../account.ts';
import type { SteeringQuestion } from './question.ts';
import { sayDegrees, steeringFigure, steeringRounded } from './say-steering.ts';
import { TRAIL_SOURCE, type SteeringAnswer } from './steering-geometry.ts';

/** How the trail comes about, how closely it is known, and that it is worked in floating point. */
export function whyOfSteering(
  { before, change }: SteeringQuestion,
  answer: SteeringAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const { after } = answer;
  const radius = change.frontRadius ?? mean(before.frontRadius);
  const size = (length: Length) => steeringFigure(length, unit);
  return [
    {
      what: 'Rounding',
      how: `Worked in floating point: sines and cosines can’t be exact, as the lengths of other worksheets are. ${steeringRounded(unit)}`,
    },
    {
      what: 'Trail',
      how: `(R sin ρ − o) / cos ρ = (${size(radius)} · sin ${sayDegrees(after.rakeDegrees)} − ${size(after.offset)}) / cos ${sayDegrees(after.rakeDegrees)} = ${size(after.trail)} ${unit}`,
      source: TRAIL_SOURCE,
    },
    {
      what: 'Known to',
      how: `${showBand(answer.trailHalfWidth, unit)} ${unit}: rake ±${marked(before.rakeWithinDegrees)}°, front axle’s height ${showBand(bandOf(before.frontRadius).halfWidth, unit)}, offset ${showBand(bandOf(before.clampOffset).halfWidth, unit)}`,
      source: 'JCGM 100:2008 5.1',
    },
    {
      what: 'Whole offset',
      how: 'clamps + axle lead · cos δ + fork length · sin δ, δ the clamps’ extra angle',
      source: 'geometry',
    },
    {
      what: 'Tilt of the frame',
      how: 'A longer fork drops the axle by ΔL·cos ρ in the frame; the frame then tilts over the wheelbase until both wheels stand on the ground. The frame is taken as rigid, the springs as sitting where they sat.',
      source: 'geometry',
    },
  ];
}
