import type { Length } from '../../engine/length/length.ts';

/** A ring, spacer, bushing or taper as it is to be made; without a length only its face is drawn. */
export type RoundPart = {
  readonly name: string;
  readonly outside: Length;
  /** Left out where nothing goes through it. */
  readonly inside?: Length;
  readonly length?: Length;
  /** How far its bore stands off the middle of its outside: straight up, as it is drawn. */
  readonly offCentre?: Length;
  /** Tapered: the diameters at its right end; the others are those of its left end. */
  readonly outsideFar?: Length;
  readonly insideFar?: Length;
};
