import { ratioOf, type Length } from '../../engine/length/length.ts';
import { figure, type ShownUnit } from '../../engine/length/show.ts';
import type { InsertAnswer } from '../../engine/worksheets/thread-insert/thread-insert.ts';
import { DrawingLabel } from './drawing-label.tsx';
import '../common/drawing.css';

const TAPPED_RADIUS = 82;

/** The hole end-on, to scale: as it is now, as the drill leaves it, and where the insert's thread ends. */
export function InsertDrawing({
  answer,
  thread,
  unit,
}: {
  answer: InsertAnswer;
  thread: string;
  unit: ShownUnit;
}) {
  const { limits, hole, drill } = answer;
  const radius = (size: Length) => TAPPED_RADIUS * ratioOf(size, limits.majorLeast);
  const drilled = hole.state === 'straight-to-tap' || hole.state === 'over' ? hole.loosest : drill.drill.size;
  const now = hole.loosest;
  return (
    <svg
      class="drawing"
      viewBox="0 0 390 200"
      role="img"
      aria-label={`${thread}: ${now ? `hole now ${figure(now, unit)}, ` : ''}drill ${drill.drill.name}, tapped to ${figure(limits.majorLeast, unit)} at least.`}
    >
      <path class="drawing-centre" d="M8 100h204 M110 6v188" />
      <circle class="drawing-solid" cx="110" cy="100" r={TAPPED_RADIUS} stroke-dasharray="9 5" />
      {drilled && <circle class="drawing-changes" cx="110" cy="100" r={radius(drilled)} />}
      {now && <circle cx="110" cy="100" r={radius(now)} />}
      <DrawingLabel y={52} name="tapped, at least" size={figure(limits.majorLeast, unit)} />
      {drilled && (
        <DrawingLabel
          y={106}
          name={drilled === drill.drill.size ? `drill ${drill.drill.name}` : 'ready for the tap'}
          size={figure(drilled, unit)}
          changes
        />
      )}
      <DrawingLabel y={160} name="hole now" size={now ? figure(now, unit) : 'none'} />
    </svg>
  );
}
