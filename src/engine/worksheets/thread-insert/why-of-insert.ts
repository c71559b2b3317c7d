import { marked } from '../../length/decimal-text.ts';
import { mean } from '../../reading/estimate.ts';
import { LEAST_FLOOR } from '../../thread/insert-lengths.ts';
import { show, showBand } from '../../length/show.ts';
import type { WhyLine } from '../account.ts';
import type { InsertAnswered } from './account.ts';
import { sayInsertDrill, sayInsertHole, sayInsertLength, sayInsertWall, sayPercent } from './say-insert.ts';

const STANDARD = 'ASME B18.29.1, B18.29.2M, note 3';

/** How an insert's figures came about: formula, numbers put in, source. */
export function insertWhy(worked: InsertAnswered): readonly WhyLine[] {
  return [...holeLines(worked), ...drillLines(worked), ...wallLines(worked), ...legLines(worked)];
}

function holeLines({ question: { hole, thread }, answer, unit }: InsertAnswered): readonly WhyLine[] {
  const size = (length: Parameters<typeof show>[0]) => show(length, unit);
  const { limits } = answer;
  return [
    { what: 'Hole', how: sayInsertHole(answer, unit) },
    ...(hole
      ? [
          {
            what: 'Hole now',
            how: `tightest ${size(mean(hole.tightest))}, loosest ${size(mean(hole.loosest))}${answer.hole.band ? `, ${showBand(answer.hole.band.halfWidth, unit)}` : ''}. In several legs the tightest rules the drill, the loosest the thread.`,
            source: 'your readings; JCGM 100:2008; ISO 14253-1',
          },
        ]
      : []),
    {
      what: 'Least hole',
      how: `D + ${marked('0.216506')} P = ${size(thread.major)} + ${marked('0.216506')} · ${size(thread.pitch)} = ${size(limits.minorLeast)}`,
      source: STANDARD,
    },
    { what: 'Greatest hole', how: size(limits.minorMost), source: limits.minorMostSource },
    {
      what: 'Tapped',
      how: `pitch diameter at least ${size(limits.pitchLeast)}, major at least ${size(limits.majorLeast)}`,
      source: STANDARD,
    },
  ];
}

function drillLines({ answer, unit }: InsertAnswered): readonly WhyLine[] {
  return [
    { what: 'Drill', how: sayInsertDrill(answer, unit) },
    {
      what: 'Percent of thread',
      how: `(major − hole) / (${marked('1.299038')} P) = ${sayPercent(answer.drill.percent)} with the drill`,
      source: 'handbook formula',
    },
  ];
}

function wallLines({ question, answer, given, unit }: InsertAnswered): readonly WhyLine[] {
  if (answer.wallLeft) return [{ what: 'Wall', how: sayInsertWall(answer.wallLeft, unit) }];
  const isFar = given.choice('wallIs') === 'far';
  return [
    {
      what: 'Wall',
      how: isFar
        ? 'Not worked out: you said that no edge is near.'
        : `Not given. ${question.leastWall ? 'Your own least' : 'Half the bolt’s diameter'} is to be left after the tap.`,
      ...(!isFar && !question.leastWall && { source: 'least wall: common practice, no source' }),
    },
  ];
}

function legLines({ question, answer: { legs, setDown }, unit }: InsertAnswered): readonly WhyLine[] {
  const isBlind = legs.some(({ blindDepth }) => blindDepth);
  return [
    ...legs.map(({ lengths, blindDepth }, index) => ({
      what: legs.length > 1 ? `Insert in leg ${index + 1}` : 'Insert length',
      how: sayInsertLength({ lengths, setDown, ...(blindDepth && { blindDepth }) }, unit),
      source: `lengths, set-down and ${marked('0.5 to 0.75')} P shorter when in: ASME B18.29.1 and B18.29.2M; the longest that fits, 1.5D where the metal isn’t known: common practice, no source`,
    })),
    ...(isBlind
      ? [
          {
            what: 'Depth of the blind hole',
            how: `at least ${show(question.leastFloor ?? LEAST_FLOOR[unit], unit)} of metal stays under the drill’s point`,
            source: `${legs.find(({ blindDepth }) => blindDepth)?.blindDepth?.source ?? ''}; least floor: ${question.leastFloor ? 'your own' : 'common practice, no source'}`,
          },
        ]
      : []),
  ];
}
