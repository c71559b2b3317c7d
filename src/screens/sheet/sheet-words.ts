import { OLDER } from '../older/older-than-sizes.ts';
import type { PartOrigin } from '../../store/records.ts';

export const ORIGINS: Readonly<Record<PartOrigin, string>> = {
  kit: 'kit',
  donor: 'donor',
  made: 'made',
  bought: 'bought',
  'mock-up': 'mock-up',
};

export const OLDER_ON_PAPER = `${OLDER}: a size behind it has changed since.`;

export const UNFINISHED = 'Not worked out: something it needs was not given.';

export function dayOf(ms: number): string {
  return new Date(ms).toLocaleDateString(undefined, { dateStyle: 'long' });
}

export function momentOf(ms: number): string {
  return new Date(ms).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

export function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}
