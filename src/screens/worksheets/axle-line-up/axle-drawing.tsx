import { isNegative, isZero, minus } from '../../../engine/length/length.ts';
import { figure } from '../../../engine/length/show.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import type { Drawn, DrawingBox } from '../frame/drawn.ts';
import { axleScale, type AxleScale } from './axle-drawing-scale.ts';
import { axleLabels, LABEL_ROW, spacerLetters, type AxleLabel } from './axle-labels.ts';
import { AxleSection, LEG, type AxlePlace } from './axle-section.tsx';
import { axleSketch, roomLeft, type AxleSketch } from './axle-sketch.ts';
import { axleWords } from './axle-words.ts';

const LEAST_MISS = 9;
// A digit of the running figure at 18 px bold; its name is "room" over it, not "left", which is a side as well.
const RUNNING_DIGIT = 12;
const RUNNING_NAME = 52;

/** The axle from leg to leg with its sizes above and below; what isn't given yet is drawn as it usually is. */
export function drawAxle(given: AnyGiven, box: DrawingBox): Drawn {
  const sketch = axleSketch(given);
  if (!sketch) return { shapes: null, sizes: [], words: 'An axle whose sizes can’t be laid out.' };
  const place = placeIn(box);
  const scale = axleScale(sketch.answer.parts, place.left, place.right - place.left);
  const left = roomLeft(given, sketch);
  const text = left && figure(left, given.unit);
  const running = text === undefined ? 0 : runningWidth(text);
  const labels = axleLabels({ given, sketch, scale, box, running });
  const miss = sketch.isSketch ? undefined : missOf(sketch, scale);
  const hasLetters = place.half >= 30;
  return {
    shapes: (
      <>
        {labels.map((label) => (
          <path key={label.field} class="drawing-hatch" d={leader(label, place, box)} />
        ))}
        <AxleSection sketch={sketch} scale={scale} place={place} />
        {miss && (
          <path
            class="drawing-changes"
            stroke-dasharray="7 5"
            d={`M${miss.wanted} ${place.axis - place.half}V${place.isWhole ? place.axis + place.half : place.axis}`}
          />
        )}
        {place.note !== undefined && (scale.widened || miss?.widened === true) && (
          <text class="form-drawing-note" x={box.width / 2} y={place.note} text-anchor="middle">
            what is narrow is drawn wider
          </text>
        )}
      </>
    ),
    sizes: [
      ...labels.map(({ of: _of, isTop: _isTop, ...size }) => size),
      ...(hasLetters && given.choice('layout') !== undefined
        ? spacerLetters({ sketch, scale }, place.axis - (16.5 * place.half) / 40 + 5.5)
        : []),
    ],
    ...(text !== undefined && { running: { name: 'room', text, x: box.width - 8, y: box.height - 7 } }),
    words: axleWords(sketch, given.unit),
  };
}

function runningWidth(text: string): number {
  return Math.max(RUNNING_NAME, text.length * RUNNING_DIGIT) + 8;
}

/** Between the two rows of labels: whole where there is room for both halves, else the half above the axle's middle. */
function placeIn({ width, height }: DrawingBox): AxlePlace & { readonly note: number | undefined } {
  const top = LABEL_ROW + 3;
  const bottom = height - LABEL_ROW - 2;
  const note = height >= 180 ? bottom - 1 : undefined;
  const end = note === undefined ? bottom : note - 17;
  const isWhole = end - top >= 62;
  const half = isWhole ? (end - top) / 2 : end - top;
  return { left: LEG + 6, right: width - LEG - 6, axis: top + half, half, isWhole, note };
}

/** From a label to what it is of. */
function leader({ x, of, isTop }: AxleLabel, { axis, half, isWhole }: AxlePlace, box: DrawingBox): string {
  if (isTop) return `M${x} ${LABEL_ROW - 2}L${of} ${axis - half * 0.7}`;
  return `M${x} ${box.height - LABEL_ROW}L${of} ${isWhole ? axis + half * 0.6 : axis}`;
}

/** Where the plane that gave way was wanted; a miss too small to see is drawn larger. */
function missOf({ answer: { checks, planes } }: AxleSketch, scale: AxleScale) {
  const line = checks.find(({ kind, verdict }) => kind === 'line' && verdict.kind !== 'good');
  const plane = planes.find(
    ({ name }) => line && name === (line.name === 'sprocket line' ? 'sprocket' : line.name),
  );
  if (!line || !plane || isZero(line.value)) return undefined;
  const is = scale.at(plane.at);
  const away = scale.at(minus(plane.at, line.value)) - is;
  const widened = Math.abs(away) < LEAST_MISS;
  const drawn = widened ? LEAST_MISS * (isNegative(line.value) ? 1 : -1) : away;
  return { wanted: is + drawn, widened };
}
