import type { CutSpeed } from './cut-speed.ts';
import type { SpeedCap } from './tables/cut-speeds.ts';

const CAPS: Readonly<Record<SpeedCap | 'lathe', string>> = {
  lathe: 'the most this lathe turns',
  'ring-on-mandrel': 'a ring on a mandrel is turned no faster (chosen, not published)',
  'large-work': 'work this large is turned no faster (chosen, not published)',
  tapping: 'a tap is turned no faster (chosen, not published)',
};

/** Why it is this speed: `next below 229`; nothing where it is the one the metal asks for. */
export function saySpeed({ idealRpm, cap, chosenRpm, slowestTooFastRpm }: CutSpeed): string {
  const ideal = Math.floor(idealRpm);
  if (slowestTooFastRpm !== undefined)
    return `the slowest it has, and too fast: ${Math.floor(cap?.rpm ?? idealRpm)} is right`;
  if (cap && chosenRpm === cap.rpm) return `${CAPS[cap.by]}; ${ideal} would be right for the metal`;
  if (cap) return `next below ${cap.rpm}: ${CAPS[cap.by]}`;
  return chosenRpm === idealRpm ? '' : `next below ${ideal}`;
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
