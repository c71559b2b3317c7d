import { marked } from '../../length/decimal-text.ts';
import { floatMm } from '../../length/length.ts';
import { figure, figureTo, show, showBand, type ShownUnit } from '../../length/show.ts';
import type { WhyLine } from '../account.ts';
import { radians, sayAngle } from '../../length/angle.ts';
import { sayOff, sayOneIn } from './say-taper.ts';
import { MOST_SET_OVER_DEGREES, type TaperAnswer, type TaperQuestion } from './taper.ts';

const FLOATING = 'geometry; floating point';

/** How the figures came about: formula, numbers put in, source. */
export function whyOfTaper(q: TaperQuestion, answer: TaperAnswer, unit: ShownUnit): readonly WhyLine[] {
  const { cone, nearest } = answer;
  const size = (length: Parameters<typeof figure>[0]) => figureTo(length, unit, unit === 'in' ? 5 : 4);
  return [
    slopeLine(q, answer, unit),
    {
      what: 'Compound',
      how: `atan(growth / (2 · length)) = atan(${size(cone.slope.rise)} / (2 · ${size(cone.slope.over)})) = ${sayAngle(cone.halfDegrees)}, half of the included angle`,
      source: FLOATING,
    },
    ...(cone.known
      ? [
          {
            what: 'Known to',
            how: `${showBand(cone.known.overLength, unit)} ${unit} of growth over its length: band of the difference read, and of the length it is read over`,
            source: 'JCGM 100:2008 5.1',
          },
        ]
      : [{ what: 'Known to', how: 'as given: nothing was read for it' }]),
    setOverLine(answer, unit),
    ...sineLines(q, answer, unit),
    {
      what: 'Passes',
      how: 'plain to the one end first, then tapered, measured at the other: there the whole depth of cut is taken. To size there, the taper has run its length.',
      source: 'lathe practice, no source',
    },
    {
      what: 'Nearest by name',
      how: `${nearest.taper.name}, ${sayOneIn(floatMm(nearest.taper.slope.over) / floatMm(nearest.taper.slope.rise))}`,
      source: nearest.taper.source,
    },
  ];
}

function slopeLine(
  { known }: TaperQuestion,
  { cone: { slope, large, small, length } }: TaperAnswer,
  unit: ShownUnit,
): WhyLine {
  const size = (one: Parameters<typeof figure>[0]) => figureTo(one, unit, unit === 'in' ? 5 : 4);
  const ends = `${size(large)} at the big end, ${size(small)} after ${size(length)}`;
  switch (known.by) {
    case 'diameters':
      return {
        what: 'Growth',
        how: `${size(large)} − ${size(small)} = ${size(slope.rise)} over ${size(slope.over)}`,
      };
    case 'slope':
      return { what: 'Growth', how: `${size(slope.rise)} over ${size(slope.over)}: ${ends}` };
    case 'angle':
      return {
        what: 'Growth',
        how: `2 · tan(${marked(known.includedDegrees / 2)}°) · ${size(length)} = ${size(slope.rise)}: ${ends}`,
        source: FLOATING,
      };
    case 'rollers':
      return {
        what: 'Growth',
        how: `over raised − over low = ${size(slope.rise)} over the blocks ${size(slope.over)}. Small end = over low − roller · (1 + tan + 1/cos) of half the angle = ${size(small)}`,
        source: 'geometry of tangents',
      };
    case 'balls':
      return {
        what: 'Growth',
        how: `sin(half) = (R − r) / distance of the balls’ middles: ${size(slope.rise)} over ${size(slope.over)}. Mouth = 2 · (R / cos + depth of its middle · tan) = ${size(large)}`,
        source: 'geometry of tangents; floating point',
      };
    default:
      return known satisfies never;
  }
}

function setOverLine({ setOver, cone }: TaperAnswer, unit: ShownUnit): WhyLine {
  const { whole, each, per } = setOver;
  const [over, by] = whole ? [whole.between, whole.by] : [per, each];
  const byTangent = floatMm(over) * Math.tan(radians(cone.halfDegrees));
  const off = ((byTangent - floatMm(by)) / (unit === 'in' ? 25.4 : 1)).toFixed(unit === 'in' ? 5 : 4);
  return {
    what: 'Tailstock',
    how: `whole length · sin(half) = ${figure(over, unit)} · sin ${sayAngle(cone.halfDegrees)} = ${figureTo(by, unit, 5)}. By the handbooks’ tan it is ${marked(off)} more. Up to ${MOST_SET_OVER_DEGREES}° a side; ball-ended centres bear better`,
    source: 'geometry; most set-over: common practice, no source',
  };
}

function sineLines(q: TaperQuestion, { sine, cone }: TaperAnswer, unit: ShownUnit): readonly WhyLine[] {
  const { included } = sine;
  if (!included) return [];
  return [
    {
      what: 'Sine bar',
      how: `${show(q.sineBar, unit)} · sin ${sayAngle(2 * cone.halfDegrees)} = ${figureTo(included.height, unit, 5)}; this stack is ${sayOff(included)}. Of all stacks as near as the set allows, the one with fewest blocks`,
      source:
        'exact search. Blocks and their grades: ISO 3650, ASME B89.1.9; what a set holds: common practice, no source',
    },
  ];
}
