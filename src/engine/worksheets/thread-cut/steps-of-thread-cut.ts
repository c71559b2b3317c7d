import { show } from '../../length/show.ts';
import { isInchThread } from '../../thread/threads.ts';
import type { StepOffer } from '../worksheet.ts';
import type { ThreadCutAnswer, ThreadCutQuestion } from './thread-cut.ts';

/** How what was threaded goes in: its nut by hand first, then a stud into its part, then what it clamps. */
export function stepsOfThreadCut(
  { thread, stud: asked, hand, unit }: ThreadCutQuestion,
  { stud }: Pick<ThreadCutAnswer, 'stud'>,
): readonly StepOffer[] {
  const torqueIn = isInchThread(thread) ? 'lbf-ft' : 'Nm';
  const left = hand === 'left' ? 'left hand: it tightens counterclockwise' : undefined;
  const byHand: StepOffer = {
    text: `Deburr the thread, oil it, and run a ${thread.designation} nut on by hand`,
    orientation: left,
    drawn: true,
  };
  if (!stud) return [byHand, { text: 'Tighten its nut', orientation: left, torqueIn }];
  return [
    byHand,
    ...(asked?.inPart
      ? [
          {
            text: `Wind the stud in by its end for the part, ${show(asked.inPart, unit)} deep`,
            orientation: left,
          },
        ]
      : []),
    { text: 'Put on what it clamps, washer and nut, and tighten', orientation: left, torqueIn },
    { text: 'See that two whole threads stand past each nut' },
  ];
}
