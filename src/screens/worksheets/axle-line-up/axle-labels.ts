import { figure as figureOf } from '../../../engine/length/show.ts';
import { mean } from '../../../engine/reading/estimate.ts';
import {
  axleFieldsOf,
  isAxleSize,
  onHandField,
  type AxleGiven,
} from '../../../engine/worksheets/axle-line-up/fields.ts';
import {
  parted,
  spacerLetter,
  spacerName,
} from '../../../engine/worksheets/axle-line-up/say-line-up-names.ts';
import type { DrawingBox, DrawnSize } from '../frame/drawn.ts';
import { apart, type AxleScale } from './axle-drawing-scale.ts';
import { isToChange, spacersInLine } from './axle-section.tsx';
import type { AxleSketch } from './axle-sketch.ts';

/** Room for a name with its figure under it, at the top and at the bottom; between them lies the axle. */
export const LABEL_ROW = 46;

// Half a figure's width at 19 px bold, and a letter's at 16 px.
const DIGIT = 10.6;
const LETTER = 8.4;
const LEAST = 40;
const GAP = 10;

const NAMES: Readonly<Record<string, string>> = {
  width: 'legs',
  hub: 'hub',
  centre: 'centre',
  chainLine: 'chain',
  plate: 'plate',
  seat: 'seat',
  mount: 'face',
  wheelPlace: 'wanted',
  disc: 'disc',
  slot: 'slot',
  bracket: 'bracket',
  float: 'float',
  sprocket: 'sprocket',
};
const TOP: ReadonlySet<string> = new Set(['disc', 'slot', 'bracket', 'float', 'sprocket', 'plate', 'mount']);

type Placed = {
  readonly given: AxleGiven;
  readonly sketch: AxleSketch;
  readonly scale: AxleScale;
  readonly box: DrawingBox;
  /** What the running figure takes of the bottom row. */
  readonly running: number;
};

/** A size's label with the place on the axle that it is of. */
export type AxleLabel = DrawnSize & { readonly of: number; readonly isTop: boolean };

/** Every size that is asked for, above or below what it is of; what stands in for the right side of two discs isn't. */
export function axleLabels({ given, sketch, scale, box, running }: Placed): readonly AxleLabel[] {
  const row = (of: readonly string[], y: number, to: number) => {
    const wanted = of
      .map((name) => ({ ...labelOf(name, given, sketch), at: placeOf(name, sketch, scale) }))
      .toSorted((a, b) => a.at - b.at);
    const middles = apart(wanted, GAP, 5, to);
    return wanted.map(({ field, name, figure, at }, index): AxleLabel => ({
      field,
      name,
      figure,
      x: middles[index] ?? at,
      y,
      of: at,
      isTop: y < LABEL_ROW,
    }));
  };
  return [
    ...row(namesIn('top', given, sketch), 18, box.width - 5),
    ...row(namesIn('bottom', given, sketch), box.height - 28, box.width - 8 - running),
  ];
}

function namesIn(row: 'top' | 'bottom', given: AxleGiven, { question: { layout, side } }: AxleSketch) {
  if (given.choice('layout') === undefined) return [];
  return Object.keys(axleFieldsOf(layout.name, side)).filter((name) => {
    const { plain } = parted(name);
    return layout.needs.includes(name) && NAMES[plain] !== undefined && TOP.has(plain) === (row === 'top');
  });
}

function labelOf(field: string, given: AxleGiven, { question: { layout } }: AxleSketch) {
  const { side, plain } = parted(field);
  // Of two brackets only the left one is asked for: the right one is alike.
  const isPair = layout.needs.includes('leftDisc') && plain === 'disc';
  const name = `${NAMES[plain] ?? plain}${isPair && side !== undefined ? ` ${side.charAt(0).toUpperCase()}` : ''}`;
  const known = isAxleSize(field) ? given.size(field)?.tightest : undefined;
  const figure = known && figureOf(mean(known), given.unit);
  return { field, name, figure, width: Math.max(LEAST, name.length * LETTER, (figure ?? '').length * DIGIT) };
}

/** Where on the drawing a size is. */
function placeOf(name: string, { answer }: AxleSketch, { at, parts }: AxleScale): number {
  const { side, plain } = parted(name);
  const called = (word: string) => (side === undefined ? word : `${side} ${word}`);
  const plane = (word: string) => {
    const found = answer.planes.find((one) => one.name === word);
    return found && at(found.at);
  };
  const middle = (word: string) => {
    const part = parts.find((one) => one.name === word);
    return part && part.x + part.width / 2;
  };
  const bracket = side === undefined ? 'bracket' : `${side}Bracket`;
  const first = parts[0]?.x ?? 0;
  switch (plain) {
    case 'hub':
      return middle('hub') ?? first;
    case 'centre':
      return (plane('wheel centre') ?? first) + 1;
    case 'chainLine':
    case 'sprocket':
      return plane('sprocket') ?? first;
    case 'mount':
    case 'wheelPlace':
      return plane('wheel face') ?? first;
    case 'disc':
      return plane(called('disc')) ?? first;
    case 'slot':
      return (plane(called('slot')) ?? first) + 1;
    case 'bracket':
      return (middle(bracket) ?? first) + 2;
    case 'float':
      return (middle(bracket) ?? first) + 3;
    case 'plate':
      return middle('plate') ?? first;
    default:
      return first;
  }
}

/** The spacers' letters on their own metal, each pressed to give the one on hand. */
export function spacerLetters(
  { sketch, scale }: Pick<Placed, 'sketch' | 'scale'>,
  y: number,
): readonly DrawnSize[] {
  const { question } = sketch;
  return spacersInLine(sketch, scale)
    .filter(({ drawn }) => drawn.width >= 12)
    .map(({ spacer, drawn }) => {
      const name = spacerLetter(spacer.name, question.layout);
      return {
        field: onHandField(spacer.name),
        name,
        said: `${name}, ${spacerName(spacer.name, question).toLowerCase()}: type or measure the one on hand`,
        x: drawn.x + drawn.width / 2,
        y,
        beside: true,
        changes: !sketch.isSketch && isToChange(spacer),
      };
    });
}
