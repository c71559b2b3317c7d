import type { CalendarDate } from '../../engine/job/recheck-due.ts';

/** Days and times as the phone writes them, the same on every screen. */

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
  return new Date(at).toLocaleDateString(undefined, { dateStyle: 'medium' });
}

/** The day and the minute; the year only where it isn't this one. */
export function timeWords(at: number): string {
  const date = new Date(at);
  const isThisYear = date.getFullYear() === new Date().getFullYear();
  return date.toLocaleString(undefined, {
    ...(!isThisYear && { year: 'numeric' }),
    month: 'short',
    day: 'numeric',
    hour: 'numeric',
    minute: '2-digit',
  });
}

/** The same with its year, for what is kept for years. */
export function wholeTimeWords(at: number): string {
  return new Date(at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}
