/** What a job touches on the machine. */
export type System = 'brake' | 'steering' | 'axle' | 'wheel' | 'engine';

/** What was said of a job: the systems it touches, or that it touches none of them. */
export type Touched = { readonly systems: readonly System[]; readonly touchesNone?: boolean };

// Common practice, no source: what a rider cannot stop, steer or stay upright without.
const CRITICAL: ReadonlySet<System> = new Set(['brake', 'steering', 'axle', 'wheel']);

/**
 * Whether a mistake in this job can kill: it touches a brake, the steering, an axle or a wheel. One of which nobody has
 * said what it touches counts as if it did.
 */
export function isSafetyCritical(touched: Touched): boolean {
  return !isTouchSaid(touched) || touched.systems.some((system) => CRITICAL.has(system));
}

/** Whether anybody said what it touches. An empty list alone is no answer: none has to be chosen too. */
export function isTouchSaid({ systems, touchesNone }: Touched): boolean {
  return systems.length > 0 || touchesNone === true;
}

/** After a press on a system. The last one taken back leaves the question open again. */
export function withSystem({ systems }: Touched, system: System): Touched {
  const left = systems.includes(system) ? systems.filter((one) => one !== system) : [...systems, system];
  return { systems: left, touchesNone: false };
}

/** After a press on "none of these". */
export const touchingNone: Touched = { systems: [], touchesNone: true };
