import type { SettingKey } from './records.ts';

/** What follows the fitter about by itself: no backup has it, and nobody takes it back. */
export const followingSettings: ReadonlySet<string> = new Set<SettingKey>(['lastPlace', 'lastChart']);
