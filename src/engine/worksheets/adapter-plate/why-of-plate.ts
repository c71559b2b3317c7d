import { marked } from '../../length/decimal-text.ts';
import { isNegative, negate } from '../../length/length.ts';
import { figure, show, showBand, type ShownUnit } from '../../length/show.ts';
import { capital } from '../../length/say-words.ts';
import type { Limits } from '../../reading/verdict.ts';
import type { WhyLine } from '../account.ts';
import type { HolesKnown, LaidPattern } from './pattern.ts';
import type { PlateAnswer } from './plate.ts';
import type { PlateQuestion, Zero } from './plate-question.ts';
import { sayDegrees, sayPlace } from './say-plate.ts';

const HOW: Readonly<Record<HolesKnown['by'], string>> = {
  circle: 'evenly on the circle, 360° ÷ count apart',
  pair: 'circle = middle to middle ÷ sin(180° ÷ count), holes evenly on it',
  three: 'the circle through three measured holes',
  points: 'as given by x and y, exact',
};

export const ZEROS: Readonly<Record<Zero, string>> = {
  middle: 'the middle of A',
  edges: 'the left and lower edge',
  'first-hole': 'hole A1',
};

/** How the figures came about: formula, numbers put in, source. */
export function whyOfPlate(q: PlateQuestion, answer: PlateAnswer, unit: ShownUnit): readonly WhyLine[] {
  const { a, b, judged } = answer;
  return [
    patternLine('A', q.a.known, a, unit),
    ...(q.b && b ? [patternLine('B', q.b.known, b, unit), turnLine(answer)] : []),
    {
      what: 'Coordinates',
      how: `from ${ZEROS[q.zero]}, x to the right, y up. Trigonometry is rounded to ${marked('0.0000001')} mm, then to ${show(q.finest, unit)}`,
      source: 'geometry',
    },
    ...judged.map(({ of, where, judged: { value, halfWidth, limits } }) => ({
      what: capital(sayPlace({ of, where })),
      how: `${figure(value, unit)} ${showBand(halfWidth, unit)}, want ${sayWanted(limits, unit)}`,
      source: `geometry; JCGM 100:2008; ${limits.source}`,
    })),
    {
      what: 'How close each hole comes',
      how: `${show(q.within, unit)} off its place, any way: it counts whole against every web and edge`,
      source: 'common practice, no source, where you gave none',
    },
    {
      what: 'Order of drilling',
      how: 'one size after the other, each from left to right: a tool is changed once, and backlash stays on one side',
      source: 'common practice, no source',
    },
  ];
}

function sayWanted({ lower, upper }: Limits, unit: ShownUnit): string {
  if (lower) return `${figure(lower, unit)} or more`;
  return upper ? `${figure(upper, unit)} or less` : 'nothing';
}

function patternLine(name: 'A' | 'B', known: HolesKnown, laid: LaidPattern, unit: ShownUnit): WhyLine {
  const circle = laid.circle ? `. Circle ${show(laid.circle.radius, unit)} from its middle` : '';
  const off = laid.offCircle.map(
    ({ hole, by }) =>
      `; hole ${hole} ${show(isNegative(by) ? negate(by) : by, unit)} ${isNegative(by) ? 'inside' : 'outside'} it`,
  );
  const isEven = laid.offEven
    ? `; drilled evenly, measured ones ${show(laid.offEven, unit)} off that at most`
    : '';
  return {
    what: `Pattern ${name}`,
    how: `${HOW[known.by]}${circle}${off.join('')}${isEven}`,
    source: 'geometry: chord of a circle, circle through three points',
  };
}

function turnLine({ b, turnIsWorkedOut }: PlateAnswer): WhyLine {
  const turn = sayDegrees(b?.turnDegrees ?? 0);
  return {
    what: 'Turn of B',
    how: turnIsWorkedOut
      ? `${turn}: no turn where that leaves enough between the holes, else the one that leaves most`
      : `${turn}, as given`,
  };
}
