import { marked } from '../../length/decimal-text.ts';
import { PSI_PER_MPA } from '../../material/material.ts';
import { show, showBand, type ShownUnit } from '../../length/show.ts';
import { preloadsAtOneTorqueKn } from '../../thread/bolt-torque.ts';
import { PAST_SOURCE } from '../../thread/grip-ends.ts';
import { sayLengthRange } from '../../thread/say-grip.ts';
import { THREAD_LENGTH_SOURCE } from '../../thread/tables/bolt-threads.ts';
import { stressAreaSquareInches } from '../../thread/thread-strength.ts';
import type { WhyLine } from '../account.ts';
import type { JointAnswer } from './joint.ts';
import type { JointQuestion, TorqueGiven } from './question.ts';
import { sayEngagementShare, sayForce } from './say-engagement.ts';
import { ENGAGEMENT_SOURCE } from './thread-engagement.ts';

/** How the figures of thread, bolt and torque came about, with their sources. */
export function jointWhy(q: JointQuestion, answer: JointAnswer, unit: ShownUnit): readonly WhyLine[] {
  return [
    ...engagedLines(q, answer, unit),
    ...strengthLines(q, answer, unit),
    ...boltLines(q, answer, unit),
    ...(q.torque ? [torqueLine(q.torque)] : []),
    {
      what: 'Not counted',
      how: 'A stripped, corroded or shaken thread holds less than a full, clean one.',
    },
  ];
}

function engagedLines(
  { thread: { withInsert } }: JointQuestion,
  { thread }: JointAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const { least, engaged } = thread;
  return [
    ...(engaged ? [{ what: 'Against the bolt', how: sayEngagementShare(thread) }] : []),
    {
      what: 'Least engagement',
      how: `${show(least.both, unit)} of full thread makes the bolt break before either thread strips: bolt’s thread ${show(least.bolt, unit)}, part’s thread ${show(least.parent, unit)}; the longer counts`,
    },
    ...(engaged
      ? [
          {
            what: 'Engaged',
            how: `${show(engaged.length, unit)} ${showBand(engaged.band.halfWidth, unit)}${withInsert ? ', ¾ of a pitch less than the insert’s length' : ''}: bolt’s thread holds ${sayForce(engaged.boltThreadsHoldN)}, part’s ${sayForce(engaged.parentThreadsHoldN)}`,
            source: 'your readings; JCGM 100:2008; ISO 14253-1',
          },
        ]
      : []),
  ];
}

function strengthLines(
  q: JointQuestion,
  { thread: answer }: JointAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const { strength } = answer;
  return [
    {
      what: 'Tensile stress area',
      how: `${marked(stressAreaSquareInches(q.thread.thread).toFixed(4))} in², ${marked(answer.stressAreaSquareMm.toFixed(1))} mm²`,
      source: 'ASME B1.1: 0.7854 (D − 0.9743/n)²; ISO 898-1: 0.7854 (d − 0.9382P)²',
    },
    {
      what: 'Bolt, at its strongest',
      how: `${sayStress(strength.tensileMostMpa, unit)} · area = ${sayForce(answer.breaksAtMostN)}`,
      source: strength.source,
    },
    {
      what: 'Part, at its weakest',
      how: `${sayStress(q.thread.parentTensileMpa, unit)}; half of it in shear`,
      source: q.parentSource,
    },
    {
      what: 'Shear areas',
      how: `bolt ${marked(answer.boltShearSquareMmPerMm.toFixed(2))} mm², ${q.thread.withInsert ? 'part at the insert’s thread' : 'part'} ${marked(answer.parentShearSquareMmPerMm.toFixed(2))} mm² for each mm engaged`,
      source: ENGAGEMENT_SOURCE,
    },
  ];
}

/** What the length to buy stands on. */
function boltLines({ held }: JointQuestion, { bolt }: JointAnswer, unit: ShownUnit): readonly WhyLine[] {
  if (!bolt?.length) return [];
  return [
    {
      what: 'Length to buy',
      how: `${sayLengthRange(bolt.length, held, unit).join(' ')} Grip ${show(bolt.grip.grip, unit)}; ${held === 'tapped' ? 'whole thread in the part past the bolt’s point' : PAST_SOURCE}`,
      source: `${THREAD_LENGTH_SOURCE}; steps of 1/8 in or 5 mm, common practice, no source`,
    },
  ];
}

function torqueLine({ nutFactor, isDryAssumed }: TorqueGiven): WhyLine {
  const [least, most] = [Math.min(...preloadsAtOneTorqueKn), Math.max(...preloadsAtOneTorqueKn)];
  return {
    what: 'Estimates of clamp load and torque',
    how: `T = K·d·F, K = ${marked(nutFactor.toFixed(2))}${isDryAssumed ? ', dry assumed' : ''}. Ten bolts at one torque came out from ${marked(least)} to ${marked(most)} kN.`,
    source: 'Shigley tables 8-14 and 8-15',
  };
}

/** The unit that goes with inches first in an inch shop. */
function sayStress(megapascals: number, unit: ShownUnit): string {
  const metric = `${megapascals.toFixed(0)} MPa`;
  const inch = `${((megapascals * PSI_PER_MPA) / 1000).toFixed(0)} ksi`;
  return unit === 'in' ? `${inch} (${metric})` : `${metric} (${inch})`;
}
