import { absolute, isMore, minus, zero, type Length } from '../../length/length.ts';
import { showBeside } from '../../length/show-limits.ts';
import type { ShownUnit } from '../../length/show.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import { legOf, type Leg } from '../../reading/settle.ts';
import type { Limits, Verdict } from '../../reading/verdict.ts';
import type { VerdictBlock } from '../account.ts';
import { sentencesOf } from '../open-page.ts';
import type { InsertLeg, LeggedAnswer, LeggedQuestion } from './insert-in-legs.ts';
import { FLOOR_UNKNOWN, sayFloor } from './say-insert.ts';
import type { InsertWall } from './thread-insert.ts';

/** The hole as it is against the insert's limits; nothing of it while there is only solid metal. */
export type JudgedHole = {
  readonly verdict: Verdict;
  readonly value: Length;
  readonly halfWidth: Length;
  readonly limits: Limits;
  readonly legs: readonly Leg[];
};

export function judgedHole(q: LeggedQuestion, answer: LeggedAnswer): JudgedHole | undefined {
  const { hole, limits } = answer;
  const { tightest, loosest, band } = hole;
  const verdict = holeVerdict(answer);
  const value = hole.state === 'over' ? loosest : tightest;
  if (!verdict || !value || !band) return undefined;
  return {
    verdict,
    value,
    halfWidth: band.halfWidth,
    limits: { lower: limits.minorLeast, upper: limits.minorMost, source: limits.minorMostSource },
    legs: q.hole ? [legOf('bore', q.hole.tightest, 1)] : [],
  };
}

function holeVerdict({ hole, limits }: Pick<LeggedAnswer, 'hole' | 'limits'>): Verdict | undefined {
  const short = hole.tightest ? absolute(minus(limits.minorLeast, hole.tightest)) : zero;
  switch (hole.state) {
    case 'solid':
      return undefined;
    case 'straight-to-tap':
      return hole.closeToMost === true ? { kind: 'too-close', near: 'upper', short } : { kind: 'good' };
    case 'run-drill-through-anyway':
      return { kind: 'too-close', near: 'lower', short };
    case 'over':
      return { kind: 'no-good', way: 'over', by: hole.overBy ?? zero };
    case 'drill':
      return { kind: 'no-good', way: 'under', by: short };
    default:
      return hole.state satisfies never;
  }
}

/** All that is judged, the worst of it first: floors under blind holes, the wall, the hole itself. */
export function insertVerdicts(
  judged: JudgedHole | undefined,
  { legs, wallLeft }: LeggedAnswer,
  unit: ShownUnit,
): readonly VerdictBlock[] {
  const found = [
    ...legs.flatMap((leg, index) => floorVerdict(leg, legs.length > 1 ? `Leg ${index + 1}: ` : '', unit)),
    ...(wallLeft && !wallLeft.enough ? [noGood(sayThinWall(wallLeft, unit))] : []),
    ...(judged ? [verdict(judged.verdict.kind, sayJudged(judged, unit))] : []),
  ];
  return (['no-good', 'too-close', 'good'] as const).flatMap((kind) =>
    found.filter((block) => block.kind === kind),
  );
}

/** By how little it can't be called stands with the hole under Why. */
function sayJudged(judged: JudgedHole, unit: ShownUnit): string {
  const said = sayVerdict(judged.verdict, { ...judged, quantity: 'hole', unit });
  return sentencesOf(said)[0] ?? said;
}

function floorVerdict({ blindDepth }: InsertLeg, where: string, unit: ShownUnit): readonly VerdictBlock[] {
  if (!blindDepth) return [];
  if (blindDepth.floorMissing) return [noGood(`${where}${sayFloor(blindDepth, unit)}`)];
  return blindDepth.floor ? [] : [verdict('too-close', `${where}${FLOOR_UNKNOWN}`)];
}

function sayThinWall({ wall, least }: InsertWall, unit: ShownUnit): string {
  if (!isMore(wall, zero)) return 'The tap would cut through the wall. Don’t fit an insert here.';
  const shown = showBeside(wall, { limit: least, is: 'least' }, unit);
  return `Wall too thin: ${shown.value} left after tapping, want ${shown.limit} or more.`;
}

function noGood(headline: string): VerdictBlock {
  return verdict('no-good', headline);
}

function verdict(kind: VerdictBlock['kind'], headline: string): VerdictBlock {
  return { is: 'verdict', kind, headline };
}
