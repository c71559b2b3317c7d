import { figure } from '../../../engine/length/show.ts';
import { sizeFigure } from '../../../engine/reading/say-readings.ts';
import type { AnyGiven } from '../../../engine/worksheets/given.ts';
import { heldOf } from '../../../engine/worksheets/thread-engagement/question.ts';
import type { DrawnSize } from '../frame/drawn.ts';

type Label = { readonly field: string; readonly name: string; readonly figure: string | undefined };

type Room = {
  readonly rows: 1 | 2;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  /** What the running figure takes of the lowest row. */
  readonly running: number;
  /** A further leg that may be given. */
  readonly nextLeg: string | undefined;
};

const GAP = 14;
const ROW = 30;
// As wide as form-drawing.tsx draws them.
const LETTER = 8.4;
const DIGIT = 10.6;
const FINGER = 44;
const RUNNING_LETTER = 10.2;

export function runningWidth(text: string): number {
  return text.length * RUNNING_LETTER;
}

/**
 * The sizes of bolt, washers and hole under the drawing, those that are given first; what finds no room on a small phone stays
 * behind the key of all sizes.
 */
export function boltLabels(given: AnyGiven, room: Room): readonly DrawnSize[] {
  const lines = Array.from({ length: room.rows }, (_, index) => {
    const isLowest = index === room.rows - 1;
    return {
      y: room.bottom - 10 - (room.rows - 1 - index) * ROW,
      end: room.right - (isLowest && room.running > 0 ? room.running + GAP : 0),
      x: room.left,
    };
  });
  const placed: DrawnSize[] = [];
  for (const label of labelsOf(given, room.nextLeg)) {
    const width = widthOf(label);
    const line = lines.find(({ x, end }) => x + width <= end);
    if (!line) continue;
    placed.push({ ...label, x: line.x, y: line.y, anchor: 'start', beside: true });
    line.x += width + GAP;
  }
  return placed;
}

function widthOf({ name, figure: size = '?' }: Label): number {
  return Math.max(FINGER, name.length * LETTER + (size.length + 1) * DIGIT);
}

/** The bolt and its shank always; washers, the hole's depth and where a nut stops once they are given. */
function labelsOf(given: AnyGiven, nextLeg: string | undefined): readonly Label[] {
  const held = heldOf(given);
  const measured = (field: string, name: string): Label => {
    const size = given.size(field)?.least;
    return { field, name, figure: size && sizeFigure(size, given.unit) };
  };
  const exact = (field: string, name: string): Label => {
    const size = given.exact(field);
    return { field, name, figure: size && figure(size, given.unit) };
  };
  const always = [
    measured('boltLength', held === 'stud' ? 'stud' : 'bolt'),
    measured('shank', 'shank'),
    ...(given.choice('hole') === 'blind' && held !== 'nut' ? [measured('holeDepth', 'thread deep')] : []),
    ...(held === 'nut' ? [measured('engaged', 'engaged')] : []),
    ...(held === 'stud' ? [exact('nutHeight', 'nut')] : []),
  ];
  const later = [
    measured('nutRunsTo', 'nut stops at'),
    ...(held === 'stud' ? [] : [exact('headWasher', 'washer')]),
    ...(held === 'tapped' ? [] : [exact('nutWasher', 'nut’s washer')]),
  ].filter(({ figure: size }) => size !== undefined);
  const more = nextLeg === undefined ? [] : [{ field: nextLeg, name: '+ leg', figure: undefined }];
  const isGiven = ({ figure: size }: Label) => size !== undefined;
  return [...always.filter(isGiven), ...later, ...always.filter((label) => !isGiven(label)), ...more];
}
