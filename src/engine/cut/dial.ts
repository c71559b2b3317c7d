import { inCommonSteps } from '../length/common-step.ts';
import { sameLength, times, type Length } from '../length/length.ts';
import { isDiameter, sizeStep, type CutKind, type Dial } from '../length/metal-on.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';

/** What carries the tool: across the bed, along it by the compound set straight, or the carriage by its handwheel. */
export type Slide = 'cross' | 'compound' | 'lead-screw';

/**
 * A dial with its ring of marks; without the number of marks nobody knows when it has gone round. Each slide has its own:
 * `to-choose` where two can make the cut and nobody said which.
 */
export type LatheDial = Dial & {
  readonly marksPerTurn?: number;
  readonly backlash?: Length;
  readonly slide?: Slide | 'to-choose';
};

/**
 * Where the tool goes when the cut gets deeper. `in`: the cross slide towards the work's axis; `out`: away from it;
 * `to-chuck`: the carriage or top slide towards the chuck; `deeper`: into a recess or slot; `wider`: to the side of a slot.
 */
export type CutDirection = 'in' | 'out' | 'to-chuck' | 'deeper' | 'wider';

/** One setting of the dial, counted from its zero, which was set where the size was last measured. */
export type DialSetting = {
  /** All the way from zero, as the dial counts: half of what comes off a diameter where it reads radius. */
  readonly total: Length;
  /** Whole turns past zero, and what the dial shows then. Without marks a turn: no turns, and the figure is the total. */
  readonly turns: number;
  readonly figure: Length;
  /** The same in marks: `turns` round, then so many. */
  readonly marks: number;
  readonly direction: CutDirection;
  /** What its figure is of, where a diameter is cut; a length is what it is. */
  readonly reads?: Dial['reads'];
  readonly slide?: LatheDial['slide'];
};

export type DialRefusal = { readonly code: 'between-marks'; readonly take: Length; readonly step: Length };

/**
 * Where to set the dial so that a cut takes so much off the size, all in all since the dial's zero.
 *
 * Units:   take is off the size, so off the diameter of a round part. A dial that reads radius moves half of it.
 *          The dial is zeroed where the size was last measured, with the backlash taken up in the cutting direction.
 *          Come up to the figure in the direction of the cut; gone past, or backed off to measure, go back well past it
 *          and come up again.
 * Range:   nothing and more.
 * Refuses: between-marks where no mark of the dial takes just that.
 * Source:  lathe practice.
 */
export function dialSetting({
  of,
  dial,
  take,
}: {
  readonly of: CutKind;
  readonly dial: LatheDial;
  readonly take: Length;
}): Result<DialSetting, DialRefusal> {
  const step = sizeStep(of, dial);
  const all = stepsIn(take, step);
  if (!sameLength(times(step, all), take)) return refuse({ code: 'between-marks', take, step });
  const { turns, marks } = wrapped(all, dial.marksPerTurn);
  return worked({
    total: times(dial.graduation, all),
    turns,
    figure: times(dial.graduation, marks),
    marks,
    direction: directionOf(of),
    ...(isDiameter(of) && !dial.alongFlank && { reads: dial.reads }),
    ...(dial.slide !== undefined && { slide: dial.slide }),
  });
}

/**
 * The slides that can make a cut at the lathe: a diameter is the cross slide's, a length the compound's or the carriage's.
 * None for a slot's depth, which is the mill's.
 */
export function slidesFor(of: CutKind): readonly Slide[] {
  if (isDiameter(of)) return ['cross'];
  return of === 'slot-depth' ? [] : ['compound', 'lead-screw'];
}

/** Whole steps in a length, what is over left out; below zero towards minus. */
export function stepsIn(length: Length, step: Length): number {
  return Number(inCommonSteps([{ sum: step, count: 1 }], [length]).floor(length));
}

/** Whole steps that reach a length at least. */
export function stepsToReach(length: Length, step: Length): number {
  return Number(inCommonSteps([{ sum: step, count: 1 }], [length]).ceiling(length));
}

function wrapped(all: number, marksPerTurn: number | undefined): { turns: number; marks: number } {
  if (marksPerTurn === undefined || marksPerTurn < 1) return { turns: 0, marks: all };
  const turns = Math.floor(all / marksPerTurn);
  return { turns, marks: all - turns * marksPerTurn };
}

function directionOf(of: CutKind): CutDirection {
  switch (of) {
    case 'outside':
      return 'in';
    case 'bore':
    case 'tap-drill':
      return 'out';
    case 'length':
      return 'to-chuck';
    case 'recess-depth':
    case 'slot-depth':
      return 'deeper';
    case 'slot-width':
      return 'wider';
    default:
      return of satisfies never;
  }
}
