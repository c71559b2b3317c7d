import { lengthOf } from '../length.ts';

/** Why a cut turns slower than its surface speed would let it. */
export type SpeedCap = 'ring-on-mandrel' | 'large-work' | 'tapping';

export type OwnSpeed = {
  /** Of the material's turning speed with high-speed steel: drills, reamers and taps of such a shop are of it. */
  readonly share: number;
  readonly source: string;
  readonly fromMemory: boolean;
};

/** What drilling, reaming and tapping have of the turning speed. */
export const ownSpeeds: Readonly<Record<'drill' | 'ream' | 'tap', OwnSpeed>> = {
  drill: { share: 0.8, source: 'four fifths of turning: common practice, no source', fromMemory: false },
  ream: {
    share: 0.4,
    source: 'half of drilling: War Department TM 1-420 (machine shop), paragraph 37',
    fromMemory: false,
  },
  tap: { share: 0.25, source: 'a quarter of turning: common practice, no source', fromMemory: false },
};

/** Chosen, not published: slower than this whatever the surface speed says. */
export const mostRpm: Readonly<Record<SpeedCap, number>> = {
  'ring-on-mandrel': 600, // it is held by a light drive fit, and lets go when it gets warm
  'large-work': 400, // a chuck's unbalance grows with the square of the speed
  tapping: 120, // a hand stops it before the bottom
};

/** Work from this diameter up is large for a bench lathe: chosen, not published. */
export const largeWork = lengthOf('6 in');
