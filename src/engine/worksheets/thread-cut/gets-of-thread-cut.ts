import type { GetOffer } from '../../job/get-list.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import type { ThreadCutAnswer, ThreadCutQuestion } from './thread-cut.ts';

/** The nuts it takes, and the wires it is measured over where none were measured. */
export function getsOfThreadCut(
  { thread, wire }: Pick<ThreadCutQuestion, 'thread' | 'wire'>,
  answer: Pick<ThreadCutAnswer, 'stud' | 'wire'>,
  unit: ShownUnit,
): readonly GetOffer[] {
  const { stud } = answer;
  return [
    {
      kind: 'part',
      what: `nut ${thread.designation.replace('x', ' × ')}`,
      count: stud && !stud.inPart ? 2 : 1,
    },
    ...(wire
      ? []
      : [
          {
            kind: 'part',
            what: `three thread wires of ${show(answer.wire.size, unit)}`,
            count: 1,
          } satisfies GetOffer,
        ]),
  ];
}
