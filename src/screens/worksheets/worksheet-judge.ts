import {
  bearingInSeat,
  innerSleeve,
  taperSetting,
} from '../../engine/worksheets/bearing-seat/bearing-seat.ts';
import { boltGrip, gripVerdict } from '../../engine/thread/bolt-grip.ts';
import { bushing } from '../../engine/press/bushing.ts';
import { holeAndPin } from '../../engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { lineUp } from '../../engine/worksheets/axle-line-up/line-up.ts';
import { worksheets } from '../../engine/worksheets/all-worksheets.ts';
import { MOCK_UP_SENTENCE, saySleeveRefusal } from '../../engine/worksheets/bearing-seat/say-bearing-seat.ts';
import { sayBushingRefusal, sayBushingWarning } from '../../engine/press/say-bushing.ts';
import {
  sayEngagement,
  sayEngagementRefusal,
} from '../../engine/worksheets/thread-engagement/say-engagement.ts';
import { sayFitRefusal } from '../../engine/fit/say-fit.ts';
import {
  FLOOR_UNKNOWN,
  sayBlindDepth,
  sayInsertHole,
  sayInsertWall,
} from '../../engine/worksheets/thread-insert/say-insert.ts';
import { sayWorstOfGrip } from '../../engine/thread/say-grip.ts';
import {
  lineUpVerdict,
  sayLineUp,
  sayLineUpRefusal,
} from '../../engine/worksheets/axle-line-up/say-line-up.ts';
import { sayStack } from '../../engine/worksheets/spacer-stack/say-stack.ts';
import { saySteeringRefusal, sayTrailSign } from '../../engine/worksheets/steering-geometry/say-steering.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import { sayContradiction } from '../../engine/reading/say-readings.ts';
import { sayInsertRefusal } from '../../engine/worksheets/thread-insert/say-insert-refusal.ts';
import type { WorksheetFound } from '../../engine/job/sign-off.ts';
import { spacerStack } from '../../engine/worksheets/spacer-stack/spacer-stack.ts';
import {
  steeringGeometry,
  trailVerdict,
} from '../../engine/worksheets/steering-geometry/steering-geometry.ts';
import { threadEngagement } from '../../engine/worksheets/thread-engagement/thread-engagement.ts';
import { threadInsert } from '../../engine/worksheets/thread-insert/thread-insert.ts';
import type { Verdict } from '../../engine/reading/verdict.ts';
import { axleLineUpQuestion } from './axle-line-up-question.ts';
import { bearingQuestion } from './bearing-seat-question.ts';
import { bushingQuestion } from './bushing-question.ts';
import { clearanceSaid } from './clearance-said.ts';
import { fitAnswer, fitQuestion } from './fit-question.ts';
import { holeAndPinQuestion } from './hole-and-pin-question.ts';
import { verdictOfHole } from './insert-verdict.ts';
import { givenOf } from './given-of.ts';
import { spacerStackQuestion } from './spacer-stack-question.ts';
import { steeringQuestion } from './steering-geometry-question.ts';
import { engagementQuestion, gripQuestion } from './thread-engagement-question.ts';
import { threadInsertQuestion } from './thread-insert-question.ts';
import { doubtsOf, ownLimits, type WorksheetData } from './worksheet-data.ts';

/** What a worksheet comes to as it stands, and its sentence in the fitter's unit. */
export type WorksheetVerdict = { readonly found: WorksheetFound; readonly said: string };

type Judge = (data: WorksheetData) => WorksheetVerdict;

const JUDGES: Readonly<Record<string, Judge>> = {
  'spacer-stack': stackVerdict,
  'hole-and-pin': holeAndPinVerdict,
  fit: fitVerdict,
  bushing: bushingVerdict,
  'thread-insert': insertVerdict,
  ring: (data) => worksheets.ring.verdict(givenOf(data)),
  'bearing-seat': bearingVerdict,
  'axle-line-up': axleVerdict,
  'thread-engagement': engagementVerdict,
  'steering-geometry': steeringVerdict,
};

const NO_ANSWER: WorksheetVerdict = { found: 'no-answer', said: 'A size it needs is missing.' };
const NOT_JUDGED: WorksheetVerdict = { found: 'not-judged', said: '' };

/**
 * The verdict of a worksheet of any kind, the worst of all it judges. An answer that is refused, as no such part can be, is
 * no good. A kind of a newer Slipfit has no answer here. What it hangs on is not said yet: `worksheetVerdict` does.
 */
export function judgeWorksheet(data: WorksheetData): WorksheetVerdict {
  const verdict = JUDGES[data.worksheet.kind]?.(data) ?? NO_ANSWER;
  const doubt = verdict.found === 'no-answer' ? undefined : sayDoubt(data);
  if (doubt !== undefined && verdict.found !== 'no-good') return { found: 'too-close', said: doubt };
  const isMockUp = data.worksheet.kind === 'bearing-seat' && data.worksheet.choices['mockUp'] === 'yes';
  // What a mock-up measures proves nothing of the real one.
  return isMockUp && verdict.found === 'good' ? { found: 'too-close', said: MOCK_UP_SENTENCE } : verdict;
}

/** The first of its sizes whose readings contradict each other: nothing that stands on it is good. */
function sayDoubt(data: WorksheetData): string | undefined {
  const [first] = doubtsOf(data);
  const [contradiction] = first?.contradictions ?? [];
  return first && contradiction && `${first.feature.name}: ${sayContradiction(contradiction, data.unit)}`;
}

function noGood(said: string): WorksheetVerdict {
  return { found: 'no-good', said };
}

function stackVerdict(data: WorksheetData): WorksheetVerdict {
  const question = spacerStackQuestion(data);
  if (!question) return NO_ANSWER;
  const answer = spacerStack(question);
  return { found: answer.verdict.kind, said: sayStack(answer, question.want, data.unit) };
}

function holeAndPinVerdict(data: WorksheetData): WorksheetVerdict {
  const question = holeAndPinQuestion(data);
  if (!question) return NO_ANSWER;
  const answer = holeAndPin(question);
  return { found: answer.verdict.kind, said: sayVerdict(answer.verdict, clearanceSaid(answer, data.unit)) };
}

/** As long as the other part is still to be made nothing is judged: the class says what to make. */
function fitVerdict(data: WorksheetData): WorksheetVerdict {
  const { unit } = data;
  const question = fitQuestion(data);
  if (!question) return NO_ANSWER;
  const answer = fitAnswer(question);
  if (!answer.ok) return noGood(sayFitRefusal(answer.refusal, unit));
  const { clearance } = answer.value;
  if (!clearance) return NOT_JUDGED;
  const { verdict } = clearance;
  return { found: verdict.kind, said: sayVerdict(verdict, { ...clearance, quantity: 'clearance', unit }) };
}

function bushingVerdict(data: WorksheetData): WorksheetVerdict {
  const { unit } = data;
  const question = bushingQuestion(data);
  if (!question) return NO_ANSWER;
  const answer = bushing(question);
  if (!answer.ok) return noGood(sayBushingRefusal(answer.refusal, unit));
  const { warnings, measured } = answer.value;
  const stop = warnings.find(({ weighs }) => weighs === 'stop');
  if (stop) return noGood(sayBushingWarning(stop, unit));
  if (!measured) return NOT_JUDGED;
  const said = sayVerdict(measured.verdict, { ...measured, quantity: 'interference', unit });
  return { found: measured.verdict.kind, said };
}

function insertVerdict(data: WorksheetData): WorksheetVerdict {
  const { unit } = data;
  const question = threadInsertQuestion(data);
  if (!question) return NO_ANSWER;
  const result = threadInsert(question);
  if (!result.ok) return noGood(sayInsertRefusal(result.refusal, unit));
  const { wallLeft, blindDepth } = result.value;
  if (blindDepth?.floorMissing) return noGood(sayBlindDepth(blindDepth, unit));
  if (wallLeft && !wallLeft.enough) return noGood(sayInsertWall(wallLeft, unit));
  const found = verdictOfHole(result.value);
  if (blindDepth && !blindDepth.floor && found !== 'no-good')
    return { found: 'too-close', said: FLOOR_UNKNOWN };
  return found === undefined ? NOT_JUDGED : { found, said: sayInsertHole(result.value, unit) };
}

function bearingVerdict(data: WorksheetData): WorksheetVerdict {
  const { unit } = data;
  const question = bearingQuestion(data);
  switch (question?.kind) {
    case 'ball': {
      const result = innerSleeve(question.ask);
      if (!result.ok) return noGood(saySleeveRefusal(result.refusal, unit));
      const { present } = result.value;
      const { limits } = question.ask.want;
      return present ? judged(present, { quantity: 'excess length', limits, unit }) : NOT_JUDGED;
    }
    case 'taper': {
      const { limits } = question.ask.want;
      return judged(taperSetting(question.ask), { quantity: 'end play', limits, unit });
    }
    case 'seat': {
      const { verdict, proud: value, band } = bearingInSeat(question.ask);
      const limits = question.ask.want?.limits;
      if (!verdict || !limits) return NOT_JUDGED;
      return judged({ verdict, value, band }, { quantity: 'projection', limits, unit });
    }
    case undefined:
      return NO_ANSWER;
    default:
      return question satisfies never;
  }
}

type Judged = Parameters<typeof sayVerdict>[1];

function judged(
  {
    verdict,
    value,
    band,
  }: { verdict: Verdict; value: Judged['value']; band: { halfWidth: Judged['value'] } },
  about: Omit<Judged, 'value' | 'halfWidth'>,
): WorksheetVerdict {
  return {
    found: verdict.kind,
    said: sayVerdict(verdict, { ...about, value, halfWidth: band.halfWidth }),
  };
}

function axleVerdict(data: WorksheetData): WorksheetVerdict {
  const question = axleLineUpQuestion(data);
  const result = question && lineUp(question);
  if (!result) return NO_ANSWER;
  if (!result.ok) return noGood(sayLineUpRefusal(result.refusal));
  const { layout, side } = question;
  return {
    found: lineUpVerdict(result.value),
    said: sayLineUp(result.value, { layout, side, unit: data.unit }),
  };
}

/** Engagement and grip together: whatever either of them judges counts. */
function engagementVerdict(data: WorksheetData): WorksheetVerdict {
  const question = engagementQuestion(data);
  const result = question && threadEngagement(question);
  if (!result) return NO_ANSWER;
  if (!result.ok) return noGood(sayEngagementRefusal(result.refusal));
  const answer = result.value;
  const grip = gripQuestion(data, answer.least.both);
  const bolt = grip && boltGrip(grip);
  const held = bolt && gripVerdict(bolt);
  const found = worst([answer.engaged?.verdict, held].flatMap((one) => one?.kind ?? []));
  if (found === undefined) return NOT_JUDGED;
  const wrong = grip && bolt && sayWorstOfGrip(bolt, grip.held, data.unit);
  const said =
    answer.engaged?.verdict.kind === found || !wrong ? sayEngagement(answer, data.unit) : wrong.words;
  return { found, said };
}

/** Trail is judged against limits of the fitter's own, and always where it is or may be negative. */
function steeringVerdict(data: WorksheetData): WorksheetVerdict {
  const { unit } = data;
  const question = steeringQuestion(data);
  const result = question && steeringGeometry(question.before, question.change);
  if (!result) return NO_ANSWER;
  if (!result.ok) return noGood(saySteeringRefusal(result.refusal));
  const limits = ownLimits(data);
  const verdict = trailVerdict(result.value, limits);
  if (!verdict) return NOT_JUDGED;
  const sign = sayTrailSign(result.value, unit);
  if (sign !== '' || !limits) return { found: verdict.kind, said: sign };
  const { after, trailHalfWidth: halfWidth } = result.value;
  const value = after.trail;
  return {
    found: verdict.kind,
    said: sayVerdict(verdict, { quantity: 'trail', unit, limits, value, halfWidth }),
  };
}

function worst(kinds: readonly Verdict['kind'][]): Verdict['kind'] | undefined {
  if (kinds.includes('no-good')) return 'no-good';
  return kinds.includes('too-close') ? 'too-close' : kinds[0];
}
