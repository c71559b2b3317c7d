import { lengthOf } from '../../length/length.ts';

/** Why a cut turns slower than its surface speed would let it. */
export type SpeedCap = 'ring-on-mandrel' | 'large-work' | 'tapping' | 'threading' | 'chuck-not-given';

export type OwnSpeed = {
  /** Of the material's turning speed with high-speed steel: drills, reamers and taps of such a shop are of it. */
  readonly share: number;
  readonly source: string;
  readonly fromMemory: boolean;
};

/** What drilling, reaming, tapping and cutting a thread have of the turning speed. */
export const ownSpeeds: Readonly<Record<'drill' | 'ream' | 'tap' | 'thread', OwnSpeed>> = {
  drill: { share: 0.8, source: 'four fifths of turning: common practice, no source', fromMemory: false },
  ream: {
    share: 0.4,
    source: 'half of drilling: War Department TM 1-420 (machine shop), paragraph 37',
    fromMemory: false,
  },
  tap: { share: 0.25, source: 'a quarter of turning: common practice, no source', fromMemory: false },
  thread: { share: 0.25, source: 'a quarter of turning: common practice, no source', fromMemory: false },
};

/** Chosen, not published: slower than this whatever the surface speed says. */
export const mostRpm: Readonly<Record<Exclude<SpeedCap, 'large-work'>, number>> = {
  'ring-on-mandrel': 600, // it is held by a light drive fit, and lets go when it gets warm
  tapping: 120, // a hand stops it before the bottom
  threading: 120, // a hand opens the half-nuts in the run-out
  // An old iron chuck may be marked no higher, and what is marked on it nobody has told: common practice, no source.
  'chuck-not-given': 1000,
};

/**
 * 400 rpm at 6 in, and as many fewer as the work is larger: its rim goes no faster. Chosen, not published. One law for
 * every size, so that no two neighbouring ones differ by a jump.
 */
export const largeWork = { rpm: 400, at: lengthOf('6 in') };
