import { marked } from '../../length/decimal-text.ts';
import type { SeatAnswer, SeatQuestion } from './bearing-seat.ts';
import type { SleeveAnswer, SleeveQuestion } from './inner-sleeve.ts';
import type { TaperAnswer, TaperQuestion } from './taper-setting.ts';
import { bandOf, mean } from '../../reading/estimate.ts';
import { minus, sameLength } from '../../length/length.ts';
import { figure, showBand, type ShownUnit } from '../../length/show.ts';

import type { WhyLine } from '../account.ts';

const IN_PLACE: WhyLine = { what: 'Read in place', how: 'it counts before the sum of the sizes' };
const BAND_SOURCE = 'JCGM 100:2008; ISO 14253-1';

export function sleeveWhy(
  { between, sleeve, want }: SleeveQuestion,
  { make, present }: SleeveAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const size = (length: typeof make.aim) => figure(length, unit);
  return [
    {
      what: 'Length',
      how: `distance + wanted = ${size(mean(between))} + ${size(want.aim)} = ${size(make.aim)} ${unit}, left long to the dial’s step: ${size(make.target)}`,
      source: want.limits.source,
    },
    ...(present?.direct ? [IN_PLACE] : []),
    ...(present && sleeve && !present.direct
      ? [
          {
            what: 'Longer by',
            how: `sleeve − distance = ${size(mean(sleeve))} − ${size(mean(between))} = ${size(present.value)} ${unit}`,
          },
        ]
      : []),
    {
      what: 'Band',
      how: `${showBand((present?.band ?? bandOf(between)).halfWidth, unit)} at 95 %, taken off the limits`,
      source: BAND_SOURCE,
    },
    {
      what: 'Why never shorter',
      how: 'the nut pulls the inner races together until they meet the sleeve; short of that they load the balls sideways, and the bearings run hot',
      source: 'common practice, no source',
    },
  ];
}

export function taperWhy(
  { endPlay, want, pitch }: TaperQuestion,
  { change, band, turnDegrees }: TaperAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const size = (length: typeof change.aim) => figure(length, unit);
  const toAim = minus(mean(endPlay), want.aim);
  const provable = sameLength(toAim, change.aim) ? '' : `, ${size(change.aim)} so that it can be proved`;
  return [
    {
      what: 'Play to lose',
      how: `end play − aim = ${size(mean(endPlay))} − ${size(want.aim)} = ${size(toAim)} ${unit}${provable}; preload counts below zero`,
    },
    {
      what: 'Wanted',
      how: `${size(want.limits.lower)} to ${size(want.limits.upper)} ${unit}, aim ${size(want.aim)}`,
      source: want.limits.source,
    },
    ...(pitch && turnDegrees !== undefined
      ? [
          {
            what: 'Turn of the nut',
            how: `play / pitch · 360° = ${size(change.aim)} / ${size(pitch)} · 360° = ${marked(turnDegrees.toFixed(1))}° (floating point)`,
            source: 'geometry of a thread',
          },
        ]
      : []),
    { what: 'Band', how: `${showBand(band.halfWidth, unit)} at 95 %`, source: BAND_SOURCE },
  ];
}

export function seatWhy(
  { depth, goesIn, want }: SeatQuestion,
  { proud, band, direct, goesIn: inIt }: SeatAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const size = (length: typeof proud) => figure(length, unit);
  return [
    ...(direct ? [IN_PLACE] : []),
    {
      what: direct ? 'By the sizes' : 'Stands proud',
      how: `what goes in − depth = ${goesIn.map((one) => size(mean(one.size))).join(' + ')} − ${size(mean(depth))} = ${size(direct ? minus(inIt, mean(depth)) : proud)} ${unit}; below zero it lies under the face`,
    },
    ...(want
      ? [
          {
            what: 'Wanted',
            how: `${size(want.limits.lower)} to ${size(want.limits.upper)} ${unit}, aim ${size(want.aim)}`,
            source: want.limits.source,
          },
        ]
      : []),
    { what: 'Band', how: `${showBand(band.halfWidth, unit)} at 95 %`, source: BAND_SOURCE },
  ];
}
