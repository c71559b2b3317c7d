import { inPoints } from '../../engine/length/decimal-text.ts';
import Drawing from 'dxf-writer';
import {
  decimalText,
  dividedBy,
  exactDecimalText,
  isZero,
  lengthOf,
  minus,
  negate,
  plus,
  smallest,
  times,
  zero,
  type Length,
} from '../../engine/length/length.ts';
import { show, type ShownUnit } from '../../engine/length/show.ts';
import { keptWords } from '../../store/base/plain-words.ts';
import type { RoundPart } from './round-part.ts';

type Point = readonly [x: Length, y: Length];

const LAYERS = { outline: 'OUTLINE', hidden: 'BORE', centre: 'CENTRE', notes: 'NOTES' } as const;
// $MEASUREMENT, which drafting programs take their line patterns from: inch or metric.
const MEASUREMENT: Record<ShownUnit, number> = { in: 0, mm: 1 };

/** A round part in real size for a drafting program: its face, its side beside it, centre lines, sizes in words. */
export function roundPartDxf(part: RoundPart, unit: ShownUnit): string {
  const drawing = new Drawing();
  drawing.setUnits(unit === 'in' ? 'Inches' : 'Millimeters');
  drawing.header('MEASUREMENT', [[70, MEASUREMENT[unit]]]);
  addLineTypes(drawing, part, unit);
  drawing.addLayer(LAYERS.outline, Drawing.ACI.WHITE, 'CONTINUOUS');
  drawing.addLayer(LAYERS.hidden, Drawing.ACI.WHITE, LINES.hidden);
  drawing.addLayer(LAYERS.centre, Drawing.ACI.RED, LINES.centre);
  drawing.addLayer(LAYERS.notes, Drawing.ACI.WHITE, 'CONTINUOUS');
  const draw = penOn(drawing, unit);
  drawFace(draw, part);
  if (part.length) drawSide(draw, part, part.length);
  inPoints(() => drawNotes(draw, part, unit));
  return drawing.toDxfString();
}

const LINES = { hidden: 'HIDDEN', centre: 'CENTER' } as const;
// On paper a dash is some 3 mm long: common practice, no source. On a shorter line it is a sixth of it, or none would show.
const DASH = lengthOf('3 mm');

/** Dashes in the drawing's own unit: one of 5 in a drawing of inches would be five inches long. */
function addLineTypes(drawing: Drawing, { outside, length }: RoundPart, unit: ShownUnit): void {
  const dashed = (whole: Length) => Number(decimalText(smallest(DASH, dividedBy(whole, 6)), unit, 6));
  const hidden = dashed(length ?? outside);
  const centre = dashed(outside);
  drawing.addLineType(LINES.hidden, '_ _ _ ', [hidden, -hidden / 2]);
  drawing.addLineType(LINES.centre, '____ _ ____ ', [2 * centre, -centre / 2, centre / 2, -centre / 2]);
  drawing.header('LTSCALE', [[40, 1]]);
}

type Pen = {
  readonly circle: (layer: string, diameter: Length, middle: Length) => void;
  readonly line: (layer: string, from: Point, to: Point) => void;
  readonly rectangle: (layer: string, corner: Point, opposite: Point) => void;
  readonly words: (at: Point, height: Length, text: string) => void;
};

function penOn(drawing: Drawing, unit: ShownUnit): Pen {
  // A file of this kind holds floating point numbers: of up to 15 digits they are written as the decimals they came from.
  const number = (length: Length) => Number(exactDecimalText(length, unit));
  return {
    circle: (layer, diameter, middle) =>
      drawing.setActiveLayer(layer).drawCircle(0, number(middle), number(dividedBy(diameter, 2))),
    line: (layer, [x, y], [toX, toY]) =>
      drawing.setActiveLayer(layer).drawLine(number(x), number(y), number(toX), number(toY)),
    rectangle: (layer, [x, y], [toX, toY]) =>
      drawing.setActiveLayer(layer).drawRect(number(x), number(y), number(toX), number(toY)),
    words: ([x, y], height, text) =>
      drawing.setActiveLayer(LAYERS.notes).drawText(number(x), number(y), number(height), 0, oneLine(text)),
  };
}

/** A line break in a name would end the text and begin another record. */
function oneLine(text: string): string {
  return keptWords(text).replace(/\p{Cc}+/gu, ' ');
}

function drawFace(
  { circle, line }: Pen,
  { outside, inside, offCentre = zero, outsideFar, insideFar }: RoundPart,
): void {
  circle(LAYERS.outline, outside, zero);
  if (outsideFar && !isZero(outsideFar)) circle(LAYERS.outline, outsideFar, zero);
  if (inside) circle(LAYERS.outline, inside, offCentre);
  if (insideFar && !isZero(insideFar)) circle(LAYERS.outline, insideFar, offCentre);
  const reach = times(outside, '0.6');
  line(LAYERS.centre, [negate(reach), zero], [reach, zero]);
  line(LAYERS.centre, [zero, negate(reach)], [zero, reach]);
  if (!isZero(offCentre)) line(LAYERS.centre, [negate(reach), offCentre], [reach, offCentre]);
}

/** The side stands one outside diameter to the right of the centre; the bore in it is dashed. */
function drawSide(pen: Pen, part: RoundPart, length: Length): void {
  const { outside, inside, offCentre = zero, insideFar = inside } = part;
  const { line } = pen;
  const [left, right] = sideEnds(outside, length);
  drawOutline(pen, part, [left, right]);
  if (inside && insideFar)
    for (const side of [minus, plus])
      line(
        LAYERS.hidden,
        [left, side(offCentre, dividedBy(inside, 2))],
        [right, side(offCentre, dividedBy(insideFar, 2))],
      );
  const past = times(outside, '0.1');
  line(LAYERS.centre, [minus(left, past), zero], [plus(right, past), zero]);
}

function drawOutline(
  { rectangle, line }: Pen,
  { outside, outsideFar }: RoundPart,
  [left, right]: readonly [Length, Length],
): void {
  const radius = dividedBy(outside, 2);
  if (!outsideFar) return rectangle(LAYERS.outline, [left, negate(radius)], [right, radius]);
  const far = dividedBy(outsideFar, 2);
  const corners: readonly Point[] = [
    [left, negate(radius)],
    [right, negate(far)],
    [right, far],
    [left, radius],
  ];
  for (const [index, corner] of corners.entries())
    line(LAYERS.outline, corner, corners[(index + 1) % corners.length] ?? corner);
}

function sideEnds(outside: Length, length: Length): readonly [Length, Length] {
  return [outside, plus(outside, length)];
}

function drawNotes({ words }: Pen, part: RoundPart, unit: ShownUnit): void {
  const { name, outside, inside, length, offCentre, outsideFar, insideFar } = part;
  const to = (far: Length | undefined) => (far ? ` to ${show(far, unit)}` : '');
  const height = times(outside, '0.06');
  const lines = [
    name,
    `outside ${show(outside, unit)}${to(outsideFar)}`,
    ...(inside ? [`inside ${show(inside, unit)}${to(insideFar)}`] : []),
    ...(length ? [`long ${show(length, unit)}`] : []),
    ...(offCentre ? [`bore ${show(offCentre, unit)} off its middle`] : []),
  ];
  const top = negate(times(outside, '0.75'));
  for (const [index, text] of lines.entries())
    words([negate(dividedBy(outside, 2)), minus(top, times(height, 2 * index))], height, text);
}
