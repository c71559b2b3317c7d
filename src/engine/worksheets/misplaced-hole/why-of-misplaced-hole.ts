import { isZero, lengthFromFloat, floatMm, plus, type Length } from '../../length/length.ts';
import { figure, show, showBand, type ShownUnit } from '../../length/show.ts';
import { leastCleanUp } from '../../fit/tables/least-walls.ts';
import { mean } from '../../reading/estimate.ts';
import { sayBushingWarning } from '../../press/say-bushing.ts';
import { sayWarningShort } from '../../press/say-warning-short.ts';
import { totalReading } from '../../cut/say-set-over.ts';
import type { WhyLine } from '../account.ts';
import { bushingWhy } from '../bushing/why-of-bushing.ts';
import type { MisplacedHoleAnswer, MisplacedHoleQuestion } from './misplaced-hole.ts';
import { sayAtLeast, sayAtMost, sayWithinDegrees } from './say-misplaced-hole.ts';

/** How the figures came about: formula, numbers put in, source. */
export function whyOfMisplacedHole(
  q: MisplacedHoleQuestion,
  answer: MisplacedHoleAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const { press } = answer;
  return [
    placeLine(q, answer, unit),
    openedLine(q, answer, unit),
    ...offLines(q, answer, unit),
    ...press.warnings.flatMap((warning, index) => {
      const how = sayBushingWarning(warning, unit);
      return how === sayWarningShort(warning, unit)
        ? []
        : [{ what: `What speaks against it, ${index + 1}`, how }];
    }),
    ...bushingWhy(q.bushed, press, unit),
  ];
}

function placeLine(
  { where }: MisplacedHoleQuestion,
  { place, close, judgedPlace }: MisplacedHoleAnswer,
  unit: ShownUnit,
): WhyLine {
  const size = (length: Length) => figure(length, unit);
  const band = isZero(place.halfWidth) ? '' : `, known to ${showBand(place.halfWidth, unit)}`;
  const from = {
    offset: 'as given',
    apart: 'wanted distance less the distance now',
    edges: '√(across² + up²) of wanted less now',
  }[where.by];
  return {
    what: 'Off by',
    how: `${from} = ${size(place.offBy)}${band}. It has to come within ${size(close.within)}`,
    source: `geometry; JCGM 100:2008; ${judgedPlace.limits.source}`,
  };
}

function openedLine(q: MisplacedHoleQuestion, answer: MisplacedHoleAnswer, unit: ShownUnit): WhyLine {
  const { press, off, thinWants, place, least } = answer;
  const size = (length: Length) => figure(length, unit);
  const thin = off
    ? `(${size(thinWants.least)} + ${size(off.by)} + ${sayAtMost(off.within, unit)})`
    : size(thinWants.least);
  const over = off ? '' : ` + 2 · ${size(plus(place.offBy, place.halfWidth))}`;
  return {
    what: 'Opened to',
    how: `at least ${sayAtLeast(least, unit)}: the larger of bore ${size(press.inside.upper)} + 2 · ${thin}, and hole ${size(mean(q.bushed.bore.loosest))} with its band and ${show(leastCleanUp[unit], unit)} to clean up${over}; then the next reamer`,
    source: `geometry; least wall ${thinWants.source}`,
  };
}

function offLines(
  q: MisplacedHoleQuestion,
  { off, close }: MisplacedHoleAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  if (!off) return [];
  const turnedBy1 = lengthFromFloat(2 * floatMm(off.by) * Math.sin(Math.PI / 360), q.finest);
  return [
    {
      what: 'Set over',
      how: `2 · ${figure(off.by, unit)} = ${show(totalReading(off.by), unit)} over a turn. Off by ${sayAtMost(off.within, unit)} and turned ${sayWithinDegrees(off.degrees)} at once, the hole stays within ${show(close.within, unit)}`,
      source: 'geometry; seven tenths for each of the two',
    },
    {
      what: 'Why it is locked',
      how: `a press grips, but a load that works can turn it: by 1° the hole goes ${show(turnedBy1, unit)}, by half a turn ${show(totalReading(off.by), unit)}`,
      source: 'geometry; common practice',
    },
    {
      what: 'Stress, force and hold',
      how: 'as of a ring that is as thin all round as its thin side',
      source: 'common practice, no source',
    },
  ];
}
