import Drawing from 'dxf-writer';
import {
  decimalText,
  dividedBy,
  exactDecimalText,
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
import { keptWords } from '../../store/plain-words.ts';
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
  drawNotes(draw, part, unit);
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
  readonly circle: (layer: string, diameter: Length) => void;
  readonly line: (layer: string, from: Point, to: Point) => void;
  readonly rectangle: (layer: string, corner: Point, opposite: Point) => void;
  readonly words: (at: Point, height: Length, text: string) => void;
};

function penOn(drawing: Drawing, unit: ShownUnit): Pen {
  // A file of this kind holds floating point numbers: of up to 15 digits they are written as the decimals they came from.
  const number = (length: Length) => Number(exactDecimalText(length, unit));
  return {
    circle: (layer, diameter) =>
      drawing.setActiveLayer(layer).drawCircle(0, 0, number(dividedBy(diameter, 2))),
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

function drawFace({ circle, line }: Pen, { outside, inside }: RoundPart): void {
  circle(LAYERS.outline, outside);
  circle(LAYERS.outline, inside);
  const reach = times(outside, '0.6');
  line(LAYERS.centre, [negate(reach), zero], [reach, zero]);
  line(LAYERS.centre, [zero, negate(reach)], [zero, reach]);
}

/** The side stands one outside diameter to the right of the centre; the bore in it is dashed. */
function drawSide({ rectangle, line }: Pen, { outside, inside }: RoundPart, length: Length): void {
  const [left, right] = sideEnds(outside, length);
  const radius = dividedBy(outside, 2);
  const bore = dividedBy(inside, 2);
  rectangle(LAYERS.outline, [left, negate(radius)], [right, radius]);
  for (const y of [negate(bore), bore]) line(LAYERS.hidden, [left, y], [right, y]);
  const past = times(outside, '0.1');
  line(LAYERS.centre, [minus(left, past), zero], [plus(right, past), zero]);
}

function sideEnds(outside: Length, length: Length): readonly [Length, Length] {
  return [outside, plus(outside, length)];
}

function drawNotes({ words }: Pen, { name, outside, inside, length }: RoundPart, unit: ShownUnit): void {
  const height = times(outside, '0.06');
  const lines = [
    name,
    `outside ${show(outside, unit)}`,
    `inside ${show(inside, unit)}`,
    ...(length ? [`long ${show(length, unit)}`] : []),
  ];
  const top = negate(times(outside, '0.75'));
  for (const [index, text] of lines.entries())
    words([negate(dividedBy(outside, 2)), minus(top, times(height, 2 * index))], height, text);
}
