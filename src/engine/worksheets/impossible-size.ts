import { isNegative, isZero, type Length } from '../length/length.ts';
import { mean } from '../reading/estimate.ts';
import { show, type ShownUnit } from '../length/show.ts';
import type { Fields, SizeField } from './fields.ts';
import type { AnyGiven } from './given.ts';

/** A size that no part has, with what it is called. */
export type ImpossibleSize = { readonly label: string; readonly size: Length };

/** What of a worksheet has to be looked at: its fields, and the names of those that it can't do without. */
export type LookedAt = { readonly fields: Fields; readonly needs: readonly string[] };

/**
 * The first size that can't be: less than nothing where none can be, or a bore or pin of nothing. No pad takes one in; a file
 * or a damaged record may hold one, and two of them would cancel out to a good fit.
 *
 * Range:   a field that may lie below zero (`signed`) is left alone. A bore or pin that a worksheet can do without may be
 *          nothing: there is none, then.
 */
export function impossibleSize({ fields, needs }: LookedAt, given: AnyGiven): ImpossibleSize | undefined {
  for (const [name, field] of Object.entries(fields)) {
    if (field.enter !== 'size' || field.signed === true) continue;
    const size = given.exact(name);
    if (size && (isNegative(size) || (isZero(size) && needs.includes(name) && isRound(field))))
      return { label: field.label, size };
  }
  return impossiblePart(given);
}

function isRound({ measures }: SizeField): boolean {
  return measures === 'bore' || measures === 'pin';
}

function impossiblePart({ parts }: AnyGiven): ImpossibleSize | undefined {
  for (const { name, size, leastLength } of parts) {
    const length = size && mean(size.least);
    const below = [length, leastLength].find((one) => one && isNegative(one));
    if (below) return { label: name, size: below };
  }
  return undefined;
}

export function sayImpossible({ label, size }: ImpossibleSize, unit: ShownUnit): string {
  return `${label}: ${show(size, unit)} is no size that a part can have. Type it again, or read it.`;
}

/** The same without the sizes that can't be: nothing can be drawn of them. */
export function withoutImpossible(fields: Fields, given: AnyGiven): AnyGiven {
  const isOut = (name: string) => {
    const field = fields[name];
    const size = field?.enter === 'size' && field.signed !== true ? given.exact(name) : undefined;
    return size !== undefined && isNegative(size);
  };
  return {
    ...given,
    size: (name) => (isOut(name) ? undefined : given.size(name)),
    exact: (name) => (isOut(name) ? undefined : given.exact(name)),
    parts: given.parts.filter(({ size }) => !size || !isNegative(mean(size.least))),
  };
}
