import type { Length } from '../../engine/length/length.ts';

/** A ring, spacer or bushing as it is to be made; without a length only its face is drawn. */
export type RoundPart = {
  readonly name: string;
  readonly outside: Length;
  readonly inside: Length;
  readonly length?: Length;
};
