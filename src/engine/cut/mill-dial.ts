import { isLess, minus, roundToStep, times, type Length } from '../length/length.ts';
import { show, type ShownUnit } from '../length/show.ts';
import { stepsIn } from './dial.ts';

/** The dial of one slide of a mill; without the number of marks nobody knows when it has gone round. */
export type MillDial = { readonly graduation: Length; readonly marksPerTurn?: number | undefined };

/** Where a slide's dial stands for a coordinate: whole turns from its zero, and what it then reads. */
export type MillSetting = {
  /** Below zero on the other side of the zero; left out where the marks of a turn aren't known. */
  readonly turns?: number;
  /** Always from zero up to a turn, so that it is come up to from one side. */
  readonly figure: Length;
  /** Whole marks at or below the figure, and how far past that mark it lies. */
  readonly marks: number;
  readonly past: Length;
};

/**
 * Where to set the dial of a slide for a coordinate from its zero.
 *
 * Units:   coordinate = turns · (marks a turn · mark) + figure, exact; turns are counted towards minus, so that the figure is
 *          never below zero: the screw is turned past it by a whole turn and comes up to it, on one side of its backlash.
 * Range:   any coordinate, on either side of the zero. Without marks a turn the figure is the coordinate itself.
 * Source:  milling practice.
 */
export function millSetting({ graduation, marksPerTurn }: MillDial, to: Length): MillSetting {
  if (marksPerTurn === undefined) return { figure: to, ...inMarks(to, graduation) };
  const turn = times(graduation, marksPerTurn);
  const figure = minus(to, roundToStep(to, turn, 'down'));
  return { turns: stepsIn(to, turn), figure, ...inMarks(figure, graduation) };
}

function inMarks(figure: Length, graduation: Length) {
  const marks = stepsIn(figure, graduation);
  return { marks, past: minus(figure, times(graduation, marks)) };
}

/** `11 turns on`, `6 turns back`: from the zero to the turn in which the figure lies. */
export function sayTurns({ turns }: MillSetting): string {
  if (turns === undefined) return 'from the zero';
  if (turns === 0) return 'in the first turn';
  const count = Math.abs(turns);
  return `${count} ${count === 1 ? 'turn' : 'turns'} ${turns < 0 ? 'back' : 'on'}`;
}

/** Coming from further out, the slide goes past its place and comes up again; `undefined` before the first hole. */
export function comesBack(before: Length | undefined, to: Length): boolean {
  return before !== undefined && isLess(to, before);
}

/** Said at every hole: what keeps backlash out of it. */
export const COME_UP = 'Come up to it: from further out go a turn past, then up.';

/** What the slide is moved on by once the edge finder kicks: its middle then stands over the edge. */
export function sayEdgeFinder(half: Length, unit: ShownUnit): string {
  return `Edge finder kicks: raise it, go ${show(half, unit)} further in, set zero.`;
}

/** Shown at the mill, whatever is drilled there. */
export const MILL_CAUTION =
  'Plate clamped, never held. No gloves, no loose sleeves, glasses on. Spindle stopped before you measure or brush chips off.';
