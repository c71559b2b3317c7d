import { show } from '../../length/show.ts';
import { byEye, type CheckOffer } from '../../reading/check-offer.ts';
import { sourceOf } from './cuts-of-thread.ts';
import type { ThreadCutAnswer, ThreadCutQuestion } from './thread-cut.ts';

/** What proves a thread: its size over the wires, its nut, a stud's length. */
export function checksOfThreadCut(
  { thread, unit }: ThreadCutQuestion,
  { limits, wire, overWires: { lower, upper }, stud }: ThreadCutAnswer,
): readonly CheckOffer[] {
  const wires = show(wire.size, unit);
  return [
    {
      name: 'Over three wires',
      by: 'pin',
      limits: {
        lower,
        upper,
        source: `class ${limits.fitClass}, ${sourceOf(thread)}, over wires of ${wires}`,
      },
      how: `Two wires of ${wires} on one side, one on the other, micrometer across them. At both ends of the thread.`,
    },
    byEye(
      'Its nut goes on',
      'A new nut, dry and clean, by hand all the way: it turns freely and does not rock.',
    ),
    ...(stud
      ? [
          {
            name: 'Stud over all',
            by: 'length' as const,
            limits: {
              lower: stud.lower,
              upper: stud.upper,
              source: 'grip, nuts and what stands past them: common practice, no source',
            },
            how: 'Caliper over both ends.',
          },
        ]
      : []),
  ];
}
