import type { Length } from '../../../engine/length/length.ts';
import { typedEstimate } from '../../../engine/reading/estimate.ts';
import type { AnyGiven, GivenSize } from '../../../engine/worksheets/given.ts';

/** The part that is being put in: it has no id of its own yet. */
export const NEXT_PART = 'next';

/** A part as it stands on the pad: `id` of one that is in already, or `NEXT_PART`. */
export type TypedPart = {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  /** Left out while what is typed is no size yet. */
  readonly length?: Length | undefined;
};

/** What is given, with the part that is being typed in it: what the drawing shows at every key. */
export function withTyped(given: AnyGiven, typing: TypedPart | undefined): AnyGiven {
  if (!typing) return given;
  const { id, name, count, length } = typing;
  const size = length && sizeTyped(length);
  if (id === NEXT_PART)
    return {
      ...given,
      parts: [...given.parts, { id, name, count, size, adjustable: false, leastLength: undefined }],
    };
  return {
    ...given,
    parts: given.parts.map((part) => (part.id === id && size ? { ...part, size } : part)),
  };
}

function sizeTyped(length: Length): GivenSize {
  const size = typedEstimate(length);
  return { least: size, most: size, tightest: size, loosest: size, places: [size], words: '' };
}
