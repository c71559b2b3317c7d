import { lengthOf, roundToStep } from '../../length/length.ts';
import type { Length } from '../../length/length.ts';

export type ClearanceRow = {
  /** The row holds up to and including this size of pin. */
  readonly upTo: Length;
  readonly lower: Length;
  readonly upper: Length;
};

/** Common practice, no source: what a one-person shop calls right. The classes of ISO 286 and ANSI B4.1 are another table. */
export const RUNNING_CLEARANCE_SOURCE = 'common practice, no source';

const inch = (upTo: string, lower: string, upper: string): ClearanceRow => ({
  upTo: lengthOf(`${upTo} in`),
  lower: lengthOf(`${lower} in`),
  upper: lengthOf(`${upper} in`),
});

const inInches = {
  'turns-under-load': [
    inch('1/4', '.0005', '.0015'),
    inch('1/2', '.0010', '.0020'),
    inch('1', '.0010', '.0025'),
    inch('2', '.0015', '.0035'),
    inch('4', '.0025', '.0050'),
  ],
  turns: [
    inch('1/4', '.0008', '.0020'),
    inch('1/2', '.0010', '.0030'),
    inch('1', '.0015', '.0040'),
    inch('2', '.0020', '.0055'),
    inch('4', '.0030', '.0080'),
  ],
  slides: [
    inch('1/4', '.0002', '.0010'),
    inch('1/2', '.0003', '.0012'),
    inch('1', '.0004', '.0016'),
    inch('2', '.0005', '.0022'),
    inch('4', '.0008', '.0030'),
  ],
  located: [
    inch('1/4', '0', '.0015'),
    inch('1/2', '0', '.0020'),
    inch('1', '0', '.0025'),
    inch('2', '0', '.0030'),
    inch('4', '0', '.0040'),
  ],
  pressed: [
    inch('1/4', '-.0010', '-.0003'),
    inch('1/2', '-.0015', '-.0005'),
    inch('1', '-.0020', '-.0007'),
    inch('2', '-.0030', '-.0010'),
    inch('4', '-.0045', '-.0015'),
  ],
} as const satisfies Record<string, readonly [ClearanceRow, ...ClearanceRow[]]>;

type Rows = readonly [ClearanceRow, ...ClearanceRow[]];

// What a metric shop reads and cuts to: a converted .0010 in (0.0254 mm) was never anybody's practice.
const METRIC_STEP = lengthOf('0.005 mm');

/** The same rows, each rounded inwards to what a metric shop reads. */
function inMillimetres([first, ...others]: Rows): Rows {
  const rounded = ({ upTo, lower, upper }: ClearanceRow): ClearanceRow => ({
    upTo,
    lower: roundToStep(lower, METRIC_STEP, 'up'),
    upper: roundToStep(upper, METRIC_STEP, 'down'),
  });
  return [rounded(first), ...others.map(rounded)];
}

/**
 * Bore less pin, least and most, by the shop's unit, the way the joint runs and the pin's size. Below zero the pin is the
 * larger.
 */
export const runningClearances = {
  in: inInches,
  mm: {
    'turns-under-load': inMillimetres(inInches['turns-under-load']),
    turns: inMillimetres(inInches.turns),
    slides: inMillimetres(inInches.slides),
    located: inMillimetres(inInches.located),
    pressed: inMillimetres(inInches.pressed),
  },
} as const;
