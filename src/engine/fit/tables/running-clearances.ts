import { lengthOf } from '../../length/length.ts';
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

/** Bore less pin, least and most, by the way the joint runs and the pin's size. Below zero the pin is the larger. */
export const runningClearances = {
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
