import type { System } from '../../engine/safety.ts';

export const SYSTEMS: readonly System[] = ['brake', 'steering', 'axle', 'wheel', 'engine'];

/** "brake, axle and wheel"; no words give an empty text. */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
