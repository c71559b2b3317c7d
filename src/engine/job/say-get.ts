import type { GetItem } from './get-list.ts';

/** `2 × insert M8, 1.5D`; one piece is said without its number. */
export function counted(count: number, what: string): string {
  return count === 1 ? what : `${count} × ${what}`;
}

/** The list as text to be sent: the job, then a line for each thing that isn't there yet. */
export function sayGetList(job: string, items: readonly GetItem[]): string {
  return [job, ...items.map(({ count, what }) => `- ${counted(count, what)}`)].join('\n');
}

/** `4 to get`, `all there`; what the route says of the place. */
export function sayStillToGet(open: number): string {
  return open === 0 ? 'all there' : `${open} to get`;
}
