import { mean, type Estimate } from '../../engine/reading/estimate.ts';
import { absolute, isNegative, isZero, ratioOf, type Length } from '../../engine/length/length.ts';
import { showSize } from '../../engine/reading/say-readings.ts';
import { show, type ShownUnit } from '../../engine/length/show.ts';
import { DrawingLabel } from './drawing-label.tsx';
import '../common/drawing.css';

type BoreDrawingProps = {
  readonly bore: Estimate;
  readonly pin: Estimate;
  readonly clearance: Length;
  readonly unit: ShownUnit;
  /** Nothing to cure: then the gap is drawn like the rest. */
  readonly good: boolean;
};

const BORE_RADIUS = 74;
const LEAST_GAP = 12;
const MOST_OVER = 1.08;

/** A bore with its pin lying in it, seen along the axis. A gap too small to see is drawn larger and says so. */
export function BoreDrawing({ bore, pin, clearance, unit, good }: BoreDrawingProps) {
  // A bore of nothing is a slip of the pad; the drawing stays, so that it can be found and put right.
  const trueRadius =
    BORE_RADIUS * (isZero(mean(bore)) ? MOST_OVER : Math.min(MOST_OVER, ratioOf(mean(pin), mean(bore))));
  const interferes = isNegative(clearance);
  const trueGap = 2 * (BORE_RADIUS - trueRadius);
  const touches = interferes || isZero(clearance);
  const gap = touches ? 0 : Math.max(LEAST_GAP, trueGap);
  const radius = interferes ? BORE_RADIUS - 1 : BORE_RADIUS - gap / 2;
  const centre = 100;
  const pinCentre = centre + BORE_RADIUS - radius;
  const gapClass = good ? undefined : 'drawing-changes';
  return (
    <svg
      class="drawing"
      viewBox="0 0 390 208"
      role="img"
      aria-label={`Bore ${showSize(bore, unit)}, pin ${showSize(pin, unit)}, clearance ${show(clearance, unit)}.`}
    >
      <path class="drawing-centre" d={`M12 ${centre}h196 M110 6v188`} />
      <circle cx="110" cy={centre} r={BORE_RADIUS} />
      <circle class="drawing-solid" cx="110" cy={pinCentre} r={radius} />
      {!touches && (
        <path
          class={gapClass}
          d={`M110 ${centre - BORE_RADIUS}v${gap} M98 ${centre - BORE_RADIUS}h24 M98 ${centre - BORE_RADIUS + gap}h24`}
        />
      )}
      <DrawingLabel y={52} name="bore" size={showSize(bore, unit)} />
      <DrawingLabel y={106} name="pin" size={showSize(pin, unit)} />
      <DrawingLabel
        y={160}
        name={interferes ? 'interference' : 'clearance'}
        size={show(absolute(clearance), unit)}
        changes={!good}
      />
      {!touches && gap > trueGap && (
        <text class="drawing-note" x="378" y="202" text-anchor="end">
          gap drawn larger
        </text>
      )}
    </svg>
  );
}
