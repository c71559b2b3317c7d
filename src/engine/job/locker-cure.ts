import type { SignOffStep } from './sign-off-question.ts';

const HOUR_MS = 3_600_000;

/**
 * When a step's locker has cured, milliseconds since 1970; nothing while it isn't done or no cure time is given.
 *
 * Units:  hours as decimal text.
 */
export function curedAt({
  doneAt,
  cureHours,
}: Pick<SignOffStep, 'doneAt' | 'cureHours'>): number | undefined {
  const hours = hoursOf(cureHours);
  return doneAt === undefined || hours === undefined ? undefined : doneAt + hours * HOUR_MS;
}

/** Decimal text as hours; nothing where it is no number of them. */
export function hoursOf(text: string | undefined): number | undefined {
  const hours = text === undefined || text.trim() === '' ? NaN : Number(text);
  // Nothing holds at once: a cure time of nothing is none.
  return Number.isFinite(hours) && hours > 0 ? hours : undefined;
}

/** How many hours a locker still cures. By a clock that stands before the step was done all of it is still to go: how long it was is not known. */
export function hoursLeft(step: SignOffStep, now: number): number {
  const left = ((curedAt(step) ?? now) - now) / HOUR_MS;
  return Math.min(left, hoursOf(step.cureHours) ?? left);
}
