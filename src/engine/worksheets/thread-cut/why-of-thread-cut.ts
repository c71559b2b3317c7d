import { marked } from '../../length/decimal-text.ts';
import { floatMm } from '../../length/length.ts';
import { figure, show, type ShownUnit } from '../../length/show.ts';
import { leadTerm } from '../../thread/three-wires.ts';
import type { WhyLine } from '../account.ts';
import { sourceOf } from './cuts-of-thread.ts';
import type { ThreadCutAnswer, ThreadCutQuestion } from './thread-cut.ts';

/** How the figures came about: formula, numbers put in, source. */
export function whyOfThreadCut(
  q: ThreadCutQuestion,
  answer: ThreadCutAnswer,
  unit: ShownUnit,
): readonly WhyLine[] {
  const { limits, wire, overWires, depth, play, nut } = answer;
  const { pitch } = q.thread;
  const lead = leadTerm({ pitchDiameter: limits.pitchMost, pitch, wire: wire.size });
  return [
    {
      what: 'Outside',
      how: `class ${limits.fitClass}: ${show(limits.majorLeast, unit)} to ${show(limits.majorMost, unit)}`,
      source: sourceOf(q.thread),
    },
    {
      what: 'Over the wires',
      how: `${marked(`E + 3W − 0.866025P + ${(floatMm(lead) / (unit === 'in' ? 25.4 : 1)).toFixed(5)}`)} for the lead = ${figure(limits.pitchMost, unit)} + 3 · ${figure(wire.size, unit)} − ${marked('0.866025')} · ${figure(pitch, unit)} = ${figure(overWires.upper, unit)} at most${wire.isBest ? '' : ', less three times what the wire is not known to'}`,
      source: 'three-wire formula for 60° threads: handbook; lead: metrology handbooks, from memory',
    },
    {
      what: 'Which wires',
      how: `best ${marked('0.57735P')}, touching on the pitch line; they stand proud from ${marked('0.505P')} and reach the crests at ${marked('1.010P')} on the basic profile`,
      source: 'geometry; handbook',
    },
    {
      what: 'Depth',
      how: `½ (outside − E + ${marked('0.57735P')}) = ${show(depth, unit)}; ${marked('0.61343P')} on the basic profile. A point sharper or blunter than P/6 shows at the first measurement, and the passes are planned anew`,
      source: 'ASME B1.1, ISO 68-1',
    },
    {
      what: 'Passes',
      how: 'the n-th ends at √n times the first, so that each takes the same area; the last two are equal and light',
      source: 'common practice, no source',
    },
    {
      what: 'Along the flank',
      how: `the compound moves depth / cos ${marked('29.5')}°; half a degree less than the flank, so that the trailing side is shaved too`,
      source: 'common practice, no source',
    },
    {
      what: 'The nut',
      how: `class ${nut.fitClass}: pitch diameter ${show(nut.pitchLeast, unit)} to ${show(nut.pitchMost, unit)}, over the thread’s by ${show(play.least, unit)} to ${show(play.most, unit)}`,
      source: sourceOf(q.thread),
    },
    {
      what: 'Start and run-out',
      how: `three pitches each; the groove is turned to the least root, pitch diameter − ${marked('0.57735P')}`,
      source: 'common practice, no source',
    },
    ...(answer.stud
      ? [
          {
            what: 'Stud',
            how: 'thickest grip + each end; a nut’s end is washer + nut + 3 pitches, and its thread goes on 2 pitches under the face; one pitch longer at most',
            source: 'sum of a dimension chain; pitches: common practice, no source',
          },
        ]
      : []),
  ];
}
