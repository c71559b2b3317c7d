import type { CalendarDate } from '../../engine/job/recheck-due.ts';

/** Days and times in the phone's words, the same on every screen. */

/**
 * In the year and the digits of everything else here, whatever the phone counts in: a record that says 2569, or in digits
 * of another script than its figures, is read wrong by whoever it is handed to.
 */
const OF_THE_FIGURES = { calendar: 'gregory', numberingSystem: 'latn' } as const;

/** The day on the calendar that hangs in the shop. */
export function calendarDate(at: number): CalendarDate {
  const date = new Date(at);
  return { year: date.getFullYear(), month: date.getMonth() + 1, day: date.getDate() };
}

/** The day on the calendar in the shop, so that files sort by it. */
export function dayInFileName(at: number): string {
  const { year, month, day } = calendarDate(at);
  return [year, month, day].map((part) => String(part).padStart(2, '0')).join('-');
}

/** A day, with its year. */
export function dayWords(at: number): string {
  return new Date(at).toLocaleDateString(undefined, { ...OF_THE_FIGURES, dateStyle: 'medium' });
}

/** The day and the minute; the year only where it isn't this one. */
export function timeWords(at: number): string {
  const date = new Date(at);
  const isThisYear = date.getFullYear() === new Date().getFullYear();
  return date.toLocaleString(undefined, {
    ...OF_THE_FIGURES,
    ...(!isThisYear && { year: 'numeric' }),
    month: 'short',
    day: 'numeric',
    hour: 'numeric',
    minute: '2-digit',
  });
}

/** The same with its year, for what is kept for years. */
export function wholeTimeWords(at: number): string {
  return new Date(at).toLocaleString(undefined, {
    ...OF_THE_FIGURES,
    dateStyle: 'medium',
    timeStyle: 'short',
  });
}

/** A day on paper, its month written out. */
export function longDayWords(at: number): string {
  return new Date(at).toLocaleDateString(undefined, { ...OF_THE_FIGURES, dateStyle: 'long' });
}

/** Day and month, for a name that is changed soon. */
export function dayAndMonthWords(at: number): string {
  return new Date(at).toLocaleDateString(undefined, { ...OF_THE_FIGURES, day: 'numeric', month: 'long' });
}
