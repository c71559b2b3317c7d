import { boltGrip, gripVerdict } from '../../thread/bolt-grip.ts';
import type { GripAnswer, GripQuestion } from '../../thread/grip-question.ts';
import { lengthToBuy, type LengthToBuy } from '../../thread/bolt-length.ts';
import { worked, type Result } from '../../length/refusal.ts';
import type { Verdict } from '../../reading/verdict.ts';
import type { JointQuestion } from './question.ts';
import { threadEngagement, type EngagementAnswer, type EngagementRefusal } from './thread-engagement.ts';

export type JointAnswer = {
  readonly thread: EngagementAnswer;
  /** Left out while no leg is given. */
  readonly bolt?: {
    /** The legs, with what the part has to hold of the thread. */
    readonly asked: GripQuestion;
    readonly grip: GripAnswer;
    readonly length?: LengthToBuy;
    /** The worst of what was judged of a bolt on hand. */
    readonly verdict?: Verdict;
  };
};

/**
 * Whether the bolt breaks before its thread strips, and which bolt the legs want.
 *
 * Units:   as `threadEngagement`, `boltGrip`, `lengthToBuy`.
 * Range:   the part holds what its thread needs at least; where no leg is given nothing is said of a bolt.
 * Refuses: what `threadEngagement` refuses.
 * Source:  as those three.
 */
export function joint(q: JointQuestion): Result<JointAnswer, EngagementRefusal> {
  const thread = threadEngagement(q.thread);
  if (!thread.ok) return thread;
  if (!q.grip) return worked({ thread: thread.value });
  const asked = { ...q.grip, engagement: thread.value.least.both };
  const grip = boltGrip(asked);
  const length = lengthToBuy(asked);
  const verdict = gripVerdict(grip);
  return worked({
    thread: thread.value,
    bolt: { asked, grip, ...(length && { length }), ...(verdict && { verdict }) },
  });
}
