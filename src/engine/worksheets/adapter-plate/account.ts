import { saySpot } from '../../cut/say-spot.ts';
import { isNegative, isZero, negate } from '../../length/length.ts';
import { figure, show, type ShownUnit } from '../../length/show.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import type { Block, LeadBlock, ProofBlock, RowsBlock, VerdictBlock } from '../account.ts';
import { proofOf } from '../proof.ts';
import type { Answered } from '../worksheet.ts';
import { cutNameOf, cutsOfPlate, holeTool } from './cuts-of-plate.ts';
import { drillingOrder } from './drilling-order.ts';
import type { AdapterPlateFields } from './fields.ts';
import type { LaidPattern, PatternName } from './pattern.ts';
import type { PlateAnswer } from './plate.ts';
import type { PlateQuestion } from './plate-question.ts';
import { sayDegrees, sayPlace } from './say-plate.ts';
import type { JudgedPlace } from './webs.ts';
import { whyOfPlate, ZEROS } from './why-of-plate.ts';

type PlateAnswered = Answered<AdapterPlateFields, PlateQuestion, PlateAnswer>;

/** What is said of a plate: what is left between and beside its holes, the first to drill, where every hole stands, and why. */
export function plateAccount(worked: PlateAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  const judged = worstFirst(answer.judged);
  const [ruling] = judged;
  return [
    ...judged.map((place) => verdictOn(place, unit)),
    leadOf(worked),
    coordinates('A', worked),
    answer.b && coordinates('B', worked),
    ...(ruling ? [proofOn(ruling, given)] : []),
    ...saidOf(worked).map((sentence): Block => ({ is: 'said', sentence })),
    ...betterTurn(answer),
    ...judged.map(({ of, where, judged: { verdict, value, halfWidth, limits } }): Block => ({
      is: 'line',
      label: sayPlace({ of, where }),
      value,
      halfWidth,
      limits,
      verdict: verdict.kind,
    })),
    { is: 'caution', of: 'plate' },
    { is: 'why', lines: whyOfPlate(question, answer, unit) },
  ];
}

const WORST: readonly VerdictBlock['kind'][] = ['no-good', 'too-close', 'good'];

function worstFirst(judged: readonly JudgedPlace[]): readonly JudgedPlace[] {
  return judged.toSorted(
    (a, b) => WORST.indexOf(a.judged.verdict.kind) - WORST.indexOf(b.judged.verdict.kind),
  );
}

function verdictOn(place: JudgedPlace, unit: ShownUnit): VerdictBlock {
  const { verdict, value, halfWidth, limits } = place.judged;
  return {
    is: 'verdict',
    kind: verdict.kind,
    headline: sayVerdict(verdict, { quantity: sayPlace(place), unit, limits, value, halfWidth }),
  };
}

const SET_CLOSER = 'Move a hole, or set each closer to its place.';

function proofOn({ judged }: JudgedPlace, given: PlateAnswered['given']): ProofBlock | undefined {
  if (judged.verdict.kind === 'good') return undefined;
  if (judged.verdict.kind === 'too-close' && judged.legs.length > 0) return proofOf(judged, given);
  return { is: 'proof', sentence: SET_CLOSER };
}

/** The first hole in the order of work: its tool, and where it stands. */
function leadOf({ answer, unit }: PlateAnswered): LeadBlock | undefined {
  const [first] = drillingOrder(answer.holes);
  if (!first) return undefined;
  const { drill } = holeTool(first.hole, unit);
  const isCut = cutsOfPlate(answer, unit).length > 0;
  return {
    is: 'lead',
    label: `${drill ? 'Drill' : 'Bore'} ${first.name} at ${saySpot(first.set, unit)}`,
    figure: drill?.name ?? figure(first.hole, unit),
    unit: drill ? 'drill' : unit,
    ...(isCut && { cut: cutNameOf(first) }),
  };
}

/** Where every hole of a pattern stands, in its own order. */
function coordinates(name: PatternName, { question, answer, unit }: PlateAnswered): RowsBlock | undefined {
  const holes = answer.holes.filter(({ pattern }) => pattern === name);
  const [first] = holes;
  if (!first) return undefined;
  return {
    is: 'rows',
    title: `${name}, ${show(first.hole, unit)}: x, y from ${ZEROS[question.zero]}`,
    leads: true,
    rows: holes.map(({ name: what, set }) => ({ what, figure: saySpot(set, unit) })),
  };
}

/** What three measured holes found, and how far a fourth is off it. */
function saidOf({ question, answer: { a, b }, unit }: PlateAnswered): readonly string[] {
  return [
    ...(isFound(question.a.known.by) ? saidOfPattern('A', a, unit) : []),
    ...(b && question.b && isFound(question.b.known.by) ? saidOfPattern('B', b, unit) : []),
  ];
}

function isFound(by: PlateQuestion['a']['known']['by']): boolean {
  return by !== 'circle';
}

function saidOfPattern(
  name: PatternName,
  { circle, offCircle }: LaidPattern,
  unit: ShownUnit,
): readonly string[] {
  if (!circle) return [];
  const off = offCircle.map(({ hole, by }) =>
    isZero(by)
      ? `hole ${hole} on it`
      : `hole ${hole} ${figure(isNegative(by) ? negate(by) : by, unit)} ${isNegative(by) ? 'inside' : 'outside'}`,
  );
  return [[`Circle of ${name}: ${show(circle.radius, unit)} from its middle`, ...off].join(', ').concat('.')];
}

function betterTurn({ betterTurn: turn }: PlateAnswer): readonly Block[] {
  if (turn === undefined) return [];
  return [
    {
      is: 'way',
      title: `Turn B to ${sayDegrees(turn)}`,
      detail: 'leaves most between the holes',
      stands: 'asks',
      asks: 'turn',
    },
  ];
}
