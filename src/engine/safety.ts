/** What a job touches on the machine. A job that touches none has an empty list. */
export type System = 'brake' | 'steering' | 'axle' | 'wheel' | 'engine';

// Common practice, no source: what a rider cannot stop, steer or stay upright without.
const CRITICAL: ReadonlySet<System> = new Set(['brake', 'steering', 'axle', 'wheel']);

/** Whether a mistake in this job can kill: it touches a brake, the steering, an axle or a wheel. */
export function isSafetyCritical({ systems }: { readonly systems: readonly System[] }): boolean {
  return systems.some((system) => CRITICAL.has(system));
}
