import { marked } from '../length/decimal-text.ts';
import { largestWorkAt, type CutSpeed } from './cut-speed.ts';
import { exactDecimalText, isLess, lengthOf, roundToStep } from '../length/length.ts';
import type { ShownUnit } from '../length/show.ts';
import type { SpeedCap } from './tables/cut-speeds.ts';

const CAPS: Readonly<Record<SpeedCap | 'lathe', string>> = {
  lathe: 'the most this lathe turns',
  'ring-on-mandrel': 'a ring on a mandrel is turned no faster (chosen, not published)',
  'large-work': 'work this large is turned no faster (chosen, not published)',
  threading: 'a thread is cut no faster, for the half-nuts (chosen, not published)',
  tapping: 'a tap is turned no faster (chosen, not published)',
  'chuck-not-given': 'held low: give in Shop what chuck and lathe may turn',
};

/** Why it is this speed, and what the metal takes: `next below 229; 137 to 320 by the books`. */
export function saySpeed({ idealRpm, rangeRpm, cap, chosenRpm, slowestTooFastRpm }: CutSpeed): string {
  const ideal = Math.floor(idealRpm);
  if (slowestTooFastRpm !== undefined)
    return `the slowest it has, and too fast: ${Math.floor(cap?.rpm ?? idealRpm)} is right`;
  if (cap && chosenRpm === cap.rpm) return `${CAPS[cap.by]}; ${ideal} would be right for the metal`;
  if (cap) return `next below ${Math.floor(cap.rpm)}: ${CAPS[cap.by]}`;
  const range = sayRange(rangeRpm);
  return chosenRpm === idealRpm
    ? range
    : [`next below ${ideal}`, range].filter((words) => words !== '').join('; ');
}

/** What the books give for this metal and tool at this size; nothing where they give one figure. */
function sayRange({ low, high }: CutSpeed['rangeRpm']): string {
  return low === high ? '' : `${Math.ceil(low)} to ${Math.floor(high)} by the books`;
}

// Chosen, not published: no larger work is swung in a shop like this, so that nothing is said of it.
const LARGEST_SWUNG = lengthOf('14 in');

/** How large the work may be that turns so fast, where nobody said how large it is. */
export function sayLargestWork(speed: CutSpeed, unit: ShownUnit): string {
  const work = largestWorkAt(speed.chosenRpm ?? speed.slowestTooFastRpm ?? speed.idealRpm);
  if (!isLess(work, LARGEST_SWUNG)) return '';
  const step = lengthOf(unit === 'in' ? '1/4 in' : '5 mm');
  return `in work up to ${marked(exactDecimalText(roundToStep(work, step, 'down'), unit))} ${unit} around`;
}

/** The speed as a whole number of turns, never rounded up; the slowest where even that is too fast. */
export function speedFigure({ chosenRpm, slowestTooFastRpm, idealRpm }: CutSpeed): string {
  return String(Math.floor(chosenRpm ?? slowestTooFastRpm ?? idealRpm));
}

/** Even the slowest speed is too fast: what can be done. */
export function sayTooFast({ slowestTooFastRpm, idealRpm, cap }: CutSpeed): string {
  if (slowestTooFastRpm === undefined) return '';
  return `The slowest speed this lathe has, ${slowestTooFastRpm} rpm, is faster than the ${Math.floor(cap?.rpm ?? idealRpm)} rpm this cut should have. Take light cuts with plenty of oil, or turn it with the back gear in.`;
}

/** Where the material has no figure for the tool that is used; the figures and their sources stand in the charts. */
export function sayStandIn({ hssStandsIn }: Pick<CutSpeed, 'hssStandsIn'>): string {
  return hssStandsIn ? 'No speed for carbide in this material: that of high-speed steel stands in.' : '';
}
