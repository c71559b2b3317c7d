import { sayAngle } from '../../../engine/length/angle.ts';
import { show, type ShownUnit } from '../../../engine/length/show.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import type { TaperAnswer, TaperQuestion } from '../../../engine/worksheets/taper/taper.ts';
import { degreesFigure } from '../../../engine/worksheets/taper/say-taper.ts';
import { taperWorksheet } from '../../../engine/worksheets/taper/worksheet.ts';
import type { Drawn, DrawingBox, DrawnSize } from '../frame/drawn.ts';
import { Balls, Cone, Rollers } from './taper-pictures.tsx';

const LEFT = 148;
const EDGE = 12;

/** The taper from its side; over rollers it stands on its small end, with balls it is a bore cut through. */
export function drawTaper(given: AnyGiven, box: DrawingBox): Drawn {
  const { unit } = given;
  const worked = taperWorksheet.work(given);
  const answered = worked.is === 'answered' ? worked : undefined;
  const half = answered?.answer.cone.halfDegrees;
  const drawn = Math.min(MOST_DRAWN, Math.max(LEAST_DRAWN, half ?? USUAL_DRAWN));
  const at = {
    left: LEFT,
    right: box.width - EDGE,
    top: 10,
    bottom: box.height - 30,
    halfDegrees: drawn,
  };
  const by = given.choice('by');
  const isBore = given.choice('side') === 'bore';
  return {
    shapes: (
      <>
        {by === 'rollers' && <Rollers at={at} />}
        {by === 'balls' && <Balls at={at} />}
        {!isLaid(by) && <Cone at={at} isBore={isBore} />}
        {half !== undefined && half !== drawn && box.height >= 150 && (
          <text class="form-drawing-note" x={EDGE} y={box.height - 34}>
            {half < drawn ? 'angle drawn larger' : 'angle drawn smaller'}
          </text>
        )}
      </>
    ),
    sizes: labels(given, box),
    // Over rollers and balls four sizes take the room.
    running:
      half === undefined || isLaid(by)
        ? undefined
        : { text: `${degreesFigure(half)}° a side`, x: box.width - EDGE, y: box.height - 8 },
    words: answered
      ? spoken(answered.question, answered.answer, unit)
      : 'A taper from its side: big end, small end, length.',
  };
}

// What can be told apart on a phone, and what still has both ends.
const LEAST_DRAWN = 6;
const MOST_DRAWN = 32;
const USUAL_DRAWN = 8;

const ASKED: Readonly<Record<string, readonly (readonly [field: string, name: string])[]>> = {
  diameters: [
    ['large', 'big'],
    ['small', 'small'],
  ],
  named: [['large', 'big']],
  'per-foot': [
    ['perFoot', 'per foot'],
    ['large', 'big'],
  ],
  'one-in': [
    ['oneIn', '1 in'],
    ['large', 'big'],
  ],
  angle: [
    ['angle', 'angle'],
    ['large', 'big'],
  ],
  rollers: [
    ['roller', 'rollers'],
    ['block', 'blocks'],
    ['overLow', 'low'],
    ['overHigh', 'raised'],
  ],
  balls: [
    ['ballLarge', 'ball'],
    ['ballSmall', 'small'],
    ['toLarge', 'down to it'],
    ['toSmall', 'to small'],
  ],
};

function isLaid(by: string | undefined): boolean {
  return by === 'rollers' || by === 'balls';
}

function labels(given: AnyGiven, { height }: DrawingBox): readonly DrawnSize[] {
  const by = given.choice('by');
  const asked = ASKED[by ?? 'diameters'] ?? [];
  const between = Math.min(34, (height - 34) / 3);
  const label = (field: string, name: string, x: number, y: number): DrawnSize => ({
    field,
    name,
    figure: figureOf(given, field),
    x,
    y,
    anchor: 'start',
    beside: true,
  });
  return [
    ...asked.map(([field, name], row) => label(field, name, EDGE, 22 + row * between)),
    isLaid(by)
      ? label('length', 'long', LEFT + 26, height - 9)
      : label('length', 'long', EDGE, 22 + asked.length * between),
  ];
}

function figureOf(given: AnyGiven, field: string): string | undefined {
  if (field === 'angle' || field === 'oneIn') {
    const text = given.choice(field);
    return text === undefined ? undefined : `${text}${field === 'angle' ? '°' : ''}`;
  }
  const size = given.size(field)?.[field === 'length' ? 'loosest' : 'tightest'];
  return size && sizeFigure(size, given.unit);
}

function spoken({ side }: TaperQuestion, { cone, perFoot }: TaperAnswer, unit: ShownUnit): string {
  const { large, small, length, halfDegrees } = cone;
  return `${side === 'bore' ? 'A tapered bore' : 'A taper'}: big end ${show(large, unit)}, small end ${show(small, unit)}, ${show(length, unit)} long, ${sayAngle(halfDegrees)} a side, ${show(perFoot, 'in')} in a foot.`;
}
