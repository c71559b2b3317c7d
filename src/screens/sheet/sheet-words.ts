import { longDayWords, wholeTimeWords } from '../common/day-words.ts';
import { OLDER } from '../older/older-than-sizes.ts';
import type { PartOrigin } from '../../store/base/records.ts';

export const ORIGINS: Readonly<Record<PartOrigin, string>> = {
  kit: 'kit',
  donor: 'donor',
  made: 'made',
  bought: 'bought',
  'mock-up': 'mock-up',
};

export const OLDER_ON_PAPER = `${OLDER}: a size behind it has changed since.`;

export const UNFINISHED = 'Not worked out: something it needs was not given.';

export const dayOf = longDayWords;
export const momentOf = wholeTimeWords;

export function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}
