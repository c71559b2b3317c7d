import { byLength } from '../../length/length.ts';
import { mean } from '../../reading/estimate.ts';
import type { GivenPart } from '../given.ts';
import type { StackGiven } from './question.ts';

/** Which parts of a stack may be cut, and which of them gives first. */
export type MayCut = {
  readonly ids: ReadonlySet<string>;
  readonly leads?: string | undefined;
  /** Nobody said so: it is a spacer by its name, which is made to be cut. */
  readonly assumed?: GivenPart | undefined;
};

// A bracket carries load, a bearing is hardened and its faces are its own. Common practice, no source.
const NEVER = /\b(?:brackets?|bearings?)\b/i;
const BETWEEN = /\b(?:spacers?|one part for)\b/i;

/**
 * The parts that may give: those that were said to, else the one that was chosen, else every spacer by its name.
 *
 * Range:   of spacers that nobody said anything of the longest gives first: it loses the least of its length. A bracket or a
 *          bearing is never taken for granted; what its name calls a spacer is one, a bearing spacer too.
 * Source:  common practice, no source.
 */
export function mayCut(given: Pick<StackGiven, 'parts' | 'choice'>): MayCut {
  const said = given.parts.filter(({ adjustable }) => adjustable);
  if (said.length > 0) return { ids: idsOf(said) };
  const chosen = given.choice('mayCut');
  if (chosen === 'none') return { ids: new Set() };
  if (chosen !== undefined && given.parts.some(({ id }) => id === chosen)) return { ids: new Set([chosen]) };
  const spacers = given.parts.filter(({ name, size }) => size && BETWEEN.test(name) && canBeCut(name));
  const [longest] = spacers.toSorted((a, b) =>
    a.size && b.size ? byLength(mean(b.size.most), mean(a.size.most)) : 0,
  );
  return { ids: idsOf(spacers), leads: longest?.id, assumed: longest };
}

/** Whether a part by this name is ever offered to be cut where nobody said that it may. */
export function canBeCut(name: string): boolean {
  return !NEVER.test(name) || /\bspacers?\b/i.test(name);
}

function idsOf(parts: readonly GivenPart[]): ReadonlySet<string> {
  return new Set(parts.map(({ id }) => id));
}
