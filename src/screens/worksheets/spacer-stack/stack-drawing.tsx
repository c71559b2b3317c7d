import { absolute, isNegative, negate, sum, times, type Length } from '../../../engine/length/length.ts';
import { showSize } from '../../../engine/reading/say-readings.ts';
import { figure, show } from '../../../engine/length/show.ts';
import { mean } from '../../../engine/reading/estimate.ts';
import type { AnyGiven, GivenPart } from '../../../engine/worksheets/given.ts';
import { spacerStackWorksheet } from '../../../engine/worksheets/spacer-stack/worksheet.ts';
import type { Drawn, DrawingBox } from '../frame/drawn.ts';
import { NEXT_PART } from '../frame/typed-part.ts';
import { atRulingPlaces } from './ruling-sizes.ts';
import { placedLabels, type Labelled, type PlacedLabel } from './stack-labels.ts';
import { layOut, type Laid, type Slot } from './stack-slots.ts';

/** The stack cut along its axis, growing with every part; what changes, or is being typed, is brass. */
export function drawSpacerStack(read: AnyGiven, box: DrawingBox): Drawn {
  const given = atRulingPlaces(read);
  const { unit } = given;
  const at = placesIn(box);
  const worked = spacerStackWorksheet.work(read);
  const answer = worked.is === 'answered' ? worked.answer : undefined;
  const fixed = given.size('fixed')?.least;
  const laid = layOut(
    given.parts,
    { fixed: fixed && mean(fixed), read: answer?.direct === true ? answer.gap : undefined },
    at,
  );
  const cutPlace = answer?.trims[0]?.place;
  const labels = placedLabels(
    laid.slots.map((slot, place) => labelOf(slot, given, place === cutPlace)),
    at.rows,
    box,
  );
  const fixedName = given.choice('fixedName') ?? 'sleeve';
  const fixedFigure = fixed && figure(mean(fixed), unit);
  const running =
    laid.left && `${isNegative(laid.left) ? 'proud' : 'left'} ${figure(absolute(laid.left), unit)}`;
  const note = noteBetween(`${fixedName} ${fixedFigure ?? ''}`, running ?? '', box);
  return {
    shapes: (
      <>
        <Section at={at} laid={laid} brass={(slot, place) => isNext(slot.part) || place === cutPlace} />
        <Leaders at={at} labels={labels} />
        {laid.drawn === 'larger' && answer && note && (
          <text class="form-drawing-note" x={note.x} y={box.height - 8} text-anchor="middle">
            {note.words}
          </text>
        )}
      </>
    ),
    sizes: [
      ...labels.map(({ size }) => size),
      {
        field: 'fixed',
        name: fixedName,
        figure: fixedFigure,
        x: 10,
        y: box.height - 8,
        anchor: 'start',
        beside: true,
      },
    ],
    running: running === undefined ? undefined : { text: running, x: box.width - 10, y: box.height - 8 },
    words: spoken(given, fixedName, laid),
  };
}

// Widths of letters, measured: the two lines at the foot are bold, the note between them is not.
const FOOT_LETTER = 10.2;
const NOTE_LETTER = 8.6;
const FOOT_EDGE = 18;

/** What is said of a gap that is drawn larger, in the longest words that the sizes at the foot leave room for. */
function noteBetween(before: string, after: string, { width }: DrawingBox) {
  const left = FOOT_EDGE + before.length * FOOT_LETTER;
  const right = width - FOOT_EDGE - after.length * FOOT_LETTER;
  const words = ['gap drawn larger', 'gap larger'].find((one) => one.length * NOTE_LETTER <= right - left);
  return words === undefined ? undefined : { words, x: (left + right) / 2 };
}

type Places = {
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
  readonly axis: number;
  readonly rows: { readonly top: number; readonly below: number };
};

function placesIn({ width, height }: DrawingBox): Places {
  const face = width < 360 ? 20 : 30;
  const top = 50;
  const bottom = height - (height < 150 ? 46 : 58);
  return {
    left: face + 4,
    right: width - face - 4,
    width,
    top,
    bottom,
    axis: (top + bottom) / 2,
    rows: { top: 19, below: height - (height < 150 ? 30 : 36) },
  };
}

function isNext({ id }: GivenPart): boolean {
  return id === NEXT_PART;
}

function labelOf({ part, x, width }: Slot, { unit }: AnyGiven, isCut: boolean): Labelled {
  const { id, name, count, size } = part;
  return {
    field: isNext(part) ? 'parts' : `part/${id}/size`,
    name: count > 1 ? `${count} × ${name}` : name,
    figure: size && figure(mean(size.most), unit),
    changes: isCut || isNext(part),
    centre: x + width / 2,
    width,
  };
}

type SectionProps = {
  readonly at: Places;
  readonly laid: Laid;
  readonly brass: (slot: Slot, place: number) => boolean;
};

function Section({ at, laid: { slots, end, sleeveEnd, left }, brass }: SectionProps) {
  const bore = Math.min(9, (at.bottom - at.top) / 5);
  const reach = 5;
  return (
    <>
      <Face x={4} width={at.left - 4} at={at} />
      <Face x={at.right} width={at.width - at.right - 4} at={at} />
      <path
        d={`M${at.left} ${at.axis - bore}H${sleeveEnd}V${at.axis + bore}H${at.left} M${at.left} ${at.axis - bore + 4}H${sleeveEnd} M${at.left} ${at.axis + bore - 4}H${sleeveEnd}`}
      />
      <path class="drawing-centre" d={`M0 ${at.axis}H${at.width}`} />
      {slots.map((slot, place) => (
        <Part key={slot.part.id} slot={slot} at={at} bore={bore} isBrass={brass(slot, place)} />
      ))}
      {left && slots.length > 0 && (
        <path
          class="drawing-changes"
          d={
            isNegative(left)
              ? `M${sleeveEnd} ${at.top - reach}V${at.bottom + reach}`
              : `M${end} ${at.top - reach}V${at.bottom + reach} M${at.right} ${at.top - reach}V${at.bottom + reach}`
          }
        />
      )}
    </>
  );
}

type PartProps = {
  readonly slot: Slot;
  readonly at: Places;
  readonly bore: number;
  readonly isBrass: boolean;
};

/** Each piece above and below the axis. */
function Part({ slot: { part, x, width }, at, bore, isBrass }: PartProps) {
  const each = width / part.count;
  const sort = `drawing-part ${isBrass ? 'drawing-changes' : 'drawing-solid'}`;
  return (
    <>
      {Array.from({ length: part.count }, (_, piece) => (
        <>
          <rect
            class={sort}
            x={x + piece * each}
            y={at.top}
            width={each}
            height={at.axis - bore - 1 - at.top}
          />
          <rect
            class={sort}
            x={x + piece * each}
            y={at.axis + bore + 1}
            width={each}
            height={at.bottom - at.axis - bore - 1}
          />
        </>
      ))}
    </>
  );
}

function Face({ x, width, at }: { x: number; width: number; at: Places }) {
  const [top, bottom] = [at.top - 4, at.bottom + 4];
  const lines = Array.from({ length: Math.ceil((bottom - top) / 13) }, (_, index) => {
    const y = bottom - index * 13;
    const rise = Math.min(width, y - top);
    return `M${x} ${y}l${rise} ${-rise}`;
  });
  return (
    <>
      <rect x={x} y={top} width={width} height={bottom - top} />
      <path class="drawing-hatch" d={lines.join(' ')} />
    </>
  );
}

/** From a label that stands under its part, or beside it, to the part. */
function Leaders({ at, labels }: { at: Places; labels: readonly PlacedLabel[] }) {
  const lines = labels.map(({ size, centre, row }) =>
    row === 'below'
      ? `M${centre} ${at.bottom + 1}L${size.x} ${at.rows.below - 15}`
      : Math.abs(size.x - centre) > 12
        ? `M${centre} ${at.top - 1}L${size.x} ${at.top - 7}`
        : '',
  );
  return <path class="drawing-hatch" d={lines.join(' ')} />;
}

function spoken({ parts, unit, size }: AnyGiven, fixedName: string, { left }: Laid): string {
  const list = parts
    .map(
      ({ name, count, size: known }) =>
        `${count > 1 ? `${count} times ` : ''}${name}${known ? ` ${showSize(known.most, unit)}` : ', no size yet'}`,
    )
    .join(', ');
  const fixed = size('fixed');
  const into = `${fixedName}${fixed ? ` ${showSize(fixed.least, unit)}` : ', no length yet'}`;
  if (parts.length === 0) return `Parts on a ${into}; none is in yet.`;
  const total = sum(
    parts.flatMap((part): Length[] => (part.size ? [times(mean(part.size.most), part.count)] : [])),
  );
  return `From left to right: ${list}; together ${show(total, unit)} in ${into}${left ? `; ${spokenLeft(left, unit)}` : ''}.`;
}

function spokenLeft(left: Length, unit: AnyGiven['unit']): string {
  return isNegative(left)
    ? `they stand ${show(negate(left), unit)} proud`
    : `a gap of ${show(left, unit)} is left`;
}
