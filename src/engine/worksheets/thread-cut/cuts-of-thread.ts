import type { CutOffer } from '../../cut/cut.ts';
import { wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { isMore, minus, zero } from '../../length/length.ts';
import { show } from '../../length/show.ts';
import { targetBetween } from '../../length/target-between.ts';
import { mean } from '../../reading/estimate.ts';
import { isInchThread } from '../../thread/threads.ts';
import type { ThreadCutAnswer, ThreadCutQuestion } from './thread-cut.ts';
import type { Stud } from './stud.ts';

/** What cuts are called in every list. */
export const THREAD_CUTS = {
  outside: 'Outside for the thread',
  thread: 'Thread, over wires',
  studLength: 'Stud made new, to length',
  studOutside: 'Stud made new, outside',
  nutEnd: 'Stud made new, thread for the nut',
  otherNut: 'Stud made new, thread at the other end',
  inPart: 'Stud made new, thread for the part',
} as const;

/**
 * What is cut for a thread, in the order of work: a stud to length, the outside, then the thread over its wires, at both ends
 * of a stud.
 *
 * Units:   outside and over the wires on diameter. A thread's present size is the one its wires would read where the tool just
 *          touches the outside as it is turned.
 * Range:   an outside inside its limits isn't turned again.
 */
export function cutsOfThread(q: ThreadCutQuestion, answer: ThreadCutAnswer): readonly CutWay[] {
  const { stud } = answer;
  return wayOf({
    id: 'single-point',
    name: 'Single point',
    offers: [
      ...(stud ? [lengthCut(q, stud)] : []),
      ...(answer.isTurned ? [] : [outsideCut(q, answer)]),
      ...threadNames(stud).map((name) => threadOffer(q, answer, name)),
    ],
  });
}

function threadNames(stud: Stud | undefined): readonly string[] {
  if (!stud) return [THREAD_CUTS.thread];
  return [THREAD_CUTS.nutEnd, stud.inPart ? THREAD_CUTS.inPart : THREAD_CUTS.otherNut];
}

/** The thread's cut that a figure of the page stands for. */
export function threadCutName(stud: Stud | undefined): string {
  return stud ? THREAD_CUTS.nutEnd : THREAD_CUTS.thread;
}

function partOf(stud: Stud | undefined): string {
  return stud ? 'stud' : 'part';
}

function lengthCut({ steps, material }: ThreadCutQuestion, { lower, upper }: Stud): CutOffer {
  return {
    name: THREAD_CUTS.studLength,
    part: 'stud',
    operation: 'face',
    of: 'length',
    target: targetBetween({ lower, upper }, 'length', steps.length),
    lower,
    upper,
    limitsFrom: 'grip, nuts and what stands past them: common practice, no source',
    ...(material && { material: material.id }),
  };
}

function outsideCut({ thread, outside, material }: ThreadCutQuestion, answer: ThreadCutAnswer): CutOffer {
  return {
    name: answer.stud ? THREAD_CUTS.studOutside : THREAD_CUTS.outside,
    part: partOf(answer.stud),
    operation: 'turn',
    of: 'outside',
    present: mean(outside.most),
    ...answer.outside,
    limitsFrom: `${thread.designation} class ${answer.limits.fitClass}, ${sourceOf(thread)}`,
    ...(material && { material: material.id }),
  };
}

function threadOffer(
  q: ThreadCutQuestion,
  { wire, overWires, limits, stud }: ThreadCutAnswer,
  name: string,
): CutOffer {
  const { from, ...sizes } = overWires;
  return {
    name,
    part: partOf(stud),
    operation: 'thread',
    of: 'outside',
    present: from,
    ...sizes,
    limitsFrom: `${q.thread.designation} class ${limits.fitClass}, ${sourceOf(q.thread)}, over wires of ${show(wire.size, q.unit)}`,
    threading: { wire: wire.size, pitch: q.thread.pitch, infeed: q.infeed, hand: q.hand },
    ...(q.material && { material: q.material.id }),
  };
}

export function sourceOf(thread: ThreadCutQuestion['thread']): string {
  return isInchThread(thread) ? 'ASME B1.1' : 'ISO 965-1, tolerances from memory';
}

/** What still has to come off the outside; nothing where it is turned. */
export function offOutside({ outside }: ThreadCutQuestion, answer: ThreadCutAnswer) {
  const off = minus(mean(outside.most), answer.outside.target);
  return isMore(off, zero) ? off : zero;
}
