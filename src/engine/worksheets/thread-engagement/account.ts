import { DEEPER_HOLE_WEAKER } from '../../cut/say-strength.ts';
import { isNegative, minus, sameLength } from '../../length/length.ts';
import { figure, show, type ShownUnit } from '../../length/show.ts';
import { sayLengthToBuy } from '../../thread/say-grip.ts';
import type { LengthToBuy } from '../../thread/bolt-length.ts';
import { otherTorques, sayTorque } from '../../thread/torque.ts';
import type { AskBlock, Block, LeadBlock } from '../account.ts';
import { proofOf, type Judged } from '../proof.ts';
import { strengthBlocks } from '../strength.ts';
import type { Answered } from '../worksheet.ts';
import type { EngagementFields } from './fields.ts';
import type { JointAnswer } from './joint.ts';
import type { JointQuestion } from './question.ts';
import { gripRows, torqueRows } from './rows-of-joint.ts';
import { ENGAGEMENT_SOURCE, engagementLegs } from './thread-engagement.ts';
import { jointVerdicts } from './verdict-of-joint.ts';
import { jointWhy } from './why-of-joint.ts';

export type JointAnswered = Answered<EngagementFields, JointQuestion, JointAnswer>;

/** What is said of a bolt and its thread: whether it holds, the length to buy, leg by leg, and what has to be given first. */
export function jointAccount(worked: JointAnswered): readonly (Block | undefined)[] {
  const { question, answer, unit } = worked;
  const judged = judgedEngagement(worked);
  return [
    ...jointVerdicts(answer, question.held, unit),
    leadOf(answer, question, unit),
    gripRows(answer, unit),
    torqueRows(question, answer, unit),
    askFirst(worked),
    judged && proofOf(judged, worked.given),
    question.torque && {
      is: 'said',
      on: 'paper',
      sentence: `Torque from the service manual: ${sayTorque(question.torque.manual)} (${otherTorques(question.torque.manual).join(', ')}).`,
    },
    judged && {
      is: 'line',
      label: 'engaged',
      value: judged.value,
      halfWidth: judged.halfWidth,
      limits: judged.limits,
      verdict: judged.verdict.kind,
    },
    { is: 'caution', of: 'engagement' },
    ...strengthBlocks([answer.bolt?.length?.holeMissing ? DEEPER_HOLE_WEAKER : '']),
    { is: 'why', lines: jointWhy(question, answer, unit) },
  ];
}

function judgedEngagement({ question, answer }: JointAnswered): Judged | undefined {
  const { engaged, least } = answer.thread;
  if (!engaged || !question.thread.engaged) return undefined;
  return {
    verdict: engaged.verdict,
    value: engaged.length,
    halfWidth: engaged.band.halfWidth,
    limits: { lower: least.both, source: ENGAGEMENT_SOURCE },
    legs: engagementLegs(question.thread.engaged),
  };
}

function leadOf({ thread, bolt }: JointAnswer, { held }: JointQuestion, unit: ShownUnit): LeadBlock {
  if (bolt?.length) {
    const what = held === 'stud' ? 'Stud' : 'Bolt';
    const isOnHand = bolt.asked.boltLength !== undefined && bolt.verdict?.kind !== 'no-good';
    return lengthLead(bolt.length, isOnHand ? `${what} length` : `${what} to buy`, unit);
  }
  return {
    is: 'lead',
    label: 'Engage at least',
    figure: figure(thread.least.both, unit),
    unit,
    limits: 'and the bolt breaks first',
  };
}

/** The lengths that are made, as they stand on the box, with their decimals; else the range itself. */
function lengthLead(length: LengthToBuy, what: string, unit: ShownUnit): LeadBlock {
  const { least, most, made, soldBy, holeMissing } = length;
  const limits = `at least ${figure(least, unit)}, at most ${show(most, unit)}`;
  if (holeMissing || isNegative(minus(most, least)))
    return {
      is: 'lead',
      label: what,
      figure: 'none fits',
      unit: '',
      limits: holeMissing ? `thread the hole ${show(holeMissing, unit)} deeper` : limits,
    };
  if (!made)
    return {
      is: 'lead',
      label: `${what}: cut to`,
      figure: `${figure(least, unit)} to ${figure(most, unit)}`,
      unit,
      limits: 'no usual length lies between: cut a longer one down',
    };
  return {
    is: 'lead',
    label: what,
    figure: sayLengthToBuy(length, unit).replace(/ (in|mm)$/, ''),
    unit: soldBy,
    ...((soldBy === 'in' || unit === 'in') && { change: decimalsOf(made, unit) }),
    limits,
  };
}

/** The same in the shop's own unit: `1.375 to 1.875 in`. */
function decimalsOf({ least, most }: NonNullable<LengthToBuy['made']>, unit: ShownUnit): string {
  if (sameLength(least, most)) return show(least, unit);
  return `${figure(least, unit)} to ${show(most, unit)}`;
}

/** The one thing without which the figure can't be acted on. */
function askFirst({ question, answer, given }: JointAnswered): AskBlock | undefined {
  const { bolt } = answer;
  const { held } = question;
  if (bolt && held !== 'nut' && !bolt.asked.hole)
    return given.choice('hole') === 'blind'
      ? askFor('how deep is full thread in the hole?', 'holeDepth', 'Give the depth')
      : askFor('does the tapped hole go through? A blind one limits the length.', 'hole', 'Give the hole');
  const end = bolt?.grip.nutBottoms;
  if (end?.verdict.kind === 'too-close')
    return end.usualThread
      ? askFor('how long is the plain shank of the one on hand?', 'shank', 'Give the shank')
      : given.has('nutRunsTo')
        ? undefined
        : askFor('where does a nut, run up by hand, stop?', 'nutRunsTo', 'Give where it stops');
  const isLengthOnly = bolt && bolt.asked.boltLength === undefined;
  return answer.thread.engaged || isLengthOnly
    ? undefined
    : askFor('how much full thread is engaged?', 'engaged', 'Give what is engaged');
}

function askFor(sentence: string, field: keyof EngagementFields, key: string): AskBlock {
  return { is: 'ask', sentence, field, key };
}
