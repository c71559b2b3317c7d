import { marked } from '../length/decimal-text.ts';

export type TorqueUnit = 'Nm' | 'lbf-ft' | 'lbf-in';

export const torqueUnits = ['Nm', 'lbf-ft', 'lbf-in'] as const satisfies readonly TorqueUnit[];

// Exact by definition: 1 lbf = 4.448 221 615 260 5 N, 1 ft = 0.3048 m, 1 in = 0.0254 m. NIST SP 811 (2008), appendix B.8.
const NEWTONS_PER_POUND = 4.4482216152605;
const NEWTON_METRES: Readonly<Record<TorqueUnit, number>> = {
  Nm: 1,
  'lbf-ft': NEWTONS_PER_POUND * 0.3048,
  'lbf-in': NEWTONS_PER_POUND * 0.0254,
};

// Chosen, not published: a crane's slewing ring needs more, no bolt of a motorcycle or a trailer does.
const MOST_NEWTON_METRES = 2000;

/**
 * A stated torque in another unit. Ours is only this conversion: the figure is the service manual's.
 *
 * Units:  as named; floating point.
 * Source: NIST SP 811 (2008), appendix B.8.
 */
export function torqueIn(torque: number, from: TorqueUnit, to: TorqueUnit): number {
  return from === to ? torque : (torque * NEWTON_METRES[from]) / NEWTON_METRES[to];
}

/** How large a torque is taken before it is thought a slip, in its own unit, rounded down. */
export function mostTorque(unit: TorqueUnit): number {
  return Math.floor(torqueIn(MOST_NEWTON_METRES, 'Nm', unit));
}

/** As the manuals print it. */
export function torqueUnitName(unit: TorqueUnit): string {
  return { Nm: 'N·m', 'lbf-ft': 'lbf·ft', 'lbf-in': 'lbf·in' }[unit];
}

/** A torque as the service manual states it. */
export type StatedTorque = { readonly typed: string; readonly unit: TorqueUnit };

/** The manual's own figure as it stands there. */
export function sayTorque({ typed, unit }: StatedTorque): string {
  return `${marked(typed)} ${torqueUnitName(unit)}`;
}

/**
 * The same torque on wrenches that read another unit, to three figures.
 *
 * Refuses: nothing; a text that is no number gives an empty list.
 */
export function otherTorques({ typed, unit }: StatedTorque): readonly string[] {
  // A manual of a country that writes a comma has `45,5`.
  const stated = typed.trim() === '' ? NaN : Number(typed.trim().replace(/^(\d*),(\d+)$/, '$1.$2'));
  if (!Number.isFinite(stated)) return [];
  return torqueUnits
    .filter((other) => other !== unit)
    .map((other) => sayWorkedTorque(torqueIn(stated, unit, other), other));
}

/** A torque that was worked out, to three figures and every whole one: never nothing where there is something. */
export function sayWorkedTorque(torque: number, unit: TorqueUnit): string {
  const rounded = Number(torque.toPrecision(3));
  const figure = rounded >= 1000 ? String(Math.round(torque)) : torque.toPrecision(3);
  return `${marked(figure)} ${torqueUnitName(unit)}`;
}
