import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import type { PlateAnswer } from '../../../engine/worksheets/adapter-plate/plate.ts';
import { sayDegrees } from '../../../engine/worksheets/adapter-plate/say-plate.ts';
import {
  adapterPlateNeeds,
  knownBy,
  outlineChosen,
  type Prefix,
} from '../../../engine/worksheets/adapter-plate/question.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import type { DrawingBox, DrawnSize } from '../frame/drawn.ts';

const EDGE = 12;
const SHOWN = 4;

const NAMES: Readonly<Record<string, string>> = {
  Count: 'holes',
  Circle: 'circle',
  Plug: 'plug',
  Over: 'over',
  Hole: 'hole',
  '12': '1 to 2',
  '23': '2 to 3',
  '13': '1 to 3',
};
const OF_THE_PLATE: Readonly<Record<string, string>> = {
  round: 'plate',
  wide: 'wide',
  high: 'high',
  turn: 'B turned',
};

/** Four sizes beside the picture: those round the one that is asked for, and when all are there what a plate is known by. */
export function plateLabels(
  given: AnyGiven,
  answer: PlateAnswer | undefined,
  { height }: DrawingBox,
): readonly DrawnSize[] {
  const between = Math.min(36, (height - 34) / 3);
  return (answer ? ofTheAnswer(given) : roundTheNext(given)).map((field, row) => ({
    field,
    name: nameOf(field),
    figure: figureOf(given, answer, field),
    x: EDGE,
    y: 22 + row * between,
    anchor: 'start',
    beside: true,
  }));
}

function roundTheNext(given: AnyGiven): readonly string[] {
  const asked = adapterPlateNeeds(given).filter((name) => name !== 'aBy' && name !== 'bBy');
  const missing = asked.findIndex((name) => !given.has(name));
  if (missing < 0) return asked.slice(-SHOWN);
  // A pattern's own sizes stay together: none of A stands beside the first of B.
  const prefix = asked[missing]?.charAt(0);
  const own = asked.filter((name) => name.charAt(0) === prefix);
  const at = own.findIndex((name) => !given.has(name));
  const from = Math.max(0, Math.min(at - 2, own.length - SHOWN));
  return own.slice(from, from + SHOWN);
}

function ofTheAnswer(given: AnyGiven): readonly string[] {
  const plate = { round: ['round'], rectangle: ['wide'], none: [] }[outlineChosen(given)];
  const hasB = knownBy(given, 'b') !== 'none';
  return [mainOf(given, 'a'), ...(hasB ? [mainOf(given, 'b'), 'turn'] : ['aHole']), ...plate];
}

function mainOf(given: AnyGiven, prefix: Prefix): string {
  const by = knownBy(given, prefix);
  const main = { circle: 'Circle', pair: 'Over', three: '12', points: 'Count', none: 'Count' } as const;
  return `${prefix}${main[by]}`;
}

function nameOf(field: string): string {
  const plate = OF_THE_PLATE[field];
  if (plate !== undefined) return plate;
  const [pattern, name] = [field.charAt(0).toUpperCase(), field.slice(1)];
  return `${pattern} ${NAMES[name] ?? name.replace(/([xy])$/, ' $1')}`;
}

function figureOf(given: AnyGiven, answer: PlateAnswer | undefined, field: string): string | undefined {
  if (field === 'turn') {
    const turn = answer?.b?.turnDegrees;
    return turn === undefined ? undefined : sayDegrees(turn);
  }
  if (field.endsWith('Count')) return given.choice(field);
  // Webs and edges go by the plate where it is least.
  const size = given.size(field)?.[OF_THE_PLATE[field] === undefined ? 'tightest' : 'least'];
  return size && sizeFigure(size, given.unit);
}
