import type { System } from '../../engine/safety.ts';

export const SYSTEMS: readonly System[] = ['brake', 'steering', 'axle', 'wheel', 'engine'];
