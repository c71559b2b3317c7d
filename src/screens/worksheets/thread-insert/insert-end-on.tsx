import { ratioOf, type Length } from '../../../engine/length/length.ts';
import type { LeggedAnswer } from '../../../engine/worksheets/thread-insert/insert-in-legs.ts';

type EndOnProps = {
  readonly answer: LeggedAnswer | undefined;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
};

/** The hole end-on: as it is now, in brass as it is ready for the tap, dashed where the insert's thread ends. */
export function EndOn({ answer, x, y, radius }: EndOnProps) {
  const toScale = (size: Length) => (answer ? radius * ratioOf(size, answer.limits.majorLeast) : radius);
  const now = answer?.hole.loosest;
  const ready = answer && readyForTap(answer);
  return (
    <>
      <path
        class="drawing-centre"
        d={`M${x - radius - 6} ${y}H${x + radius + 6} M${x} ${y - radius - 6}V${y + radius + 6}`}
      />
      <circle class="drawing-solid" cx={x} cy={y} r={radius} stroke-dasharray="9 5" />
      {ready && <circle class="drawing-changes" cx={x} cy={y} r={toScale(ready)} />}
      {now && <circle cx={x} cy={y} r={toScale(now)} />}
    </>
  );
}

/** What the drill leaves; the hole itself where none goes through. */
function readyForTap({ hole, drill }: LeggedAnswer): Length | undefined {
  return hole.state === 'straight-to-tap' || hole.state === 'over' ? hole.loosest : drill.drill.size;
}
