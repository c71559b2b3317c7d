import type { Length } from '../length/length.ts';

/** A round part that is to be made; a stack knows only lengths, the diameters are the fitter's to give. */
export type RoundPart = {
  readonly name: string;
  readonly outside?: Length | undefined;
  readonly inside?: Length | undefined;
  readonly length?: Length | undefined;
  /** How far the middle of its bore stands off the middle of its outside. */
  readonly offCentre?: Length | undefined;
  /** Tapered: the diameters at its far end; the others are those of its big end. */
  readonly outsideFar?: Length | undefined;
  readonly insideFar?: Length | undefined;
  /** Nothing goes through it: no inside is asked for. */
  readonly solid?: true | undefined;
};
