import { isLess, type Length } from '../length/length.ts';
import { threadNamed } from './threads.ts';

/** What a tapped hole takes: the bolt's own thread, or a wire thread insert. */
export type TapFor = 'bolt' | 'insert';

/** Said wherever an insert's tap is met for the first time. */
export const STI_CAUTION = 'A plain tap of that name ruins the hole.';

/**
 * A tap by its name, the one place that gives it one: "STI tap 1/2-20 UNF", "tap M8 × 1.25".
 *
 * Range:  with an insert the tap is larger than its name says. One without STI before it cuts the bolt's own thread into
 *         a hole that is too wide for it, and nothing is left for the insert.
 * Source: ASME B18.29.1 (STI: screw thread insert).
 */
export function tapName(thread: string | undefined, takes: TapFor): string {
  const tap = takes === 'insert' ? 'STI tap' : 'tap';
  return thread === undefined ? tap : `${tap} ${thread.replace('x', ' × ')}`;
}

/**
 * What a hole of a size takes under a thread's name: one that the bolt goes through has room for an insert only. A thread
 * nobody knows here is taken for an insert's, as only inserts' cuts name one.
 *
 * Source: geometry: a plain hole is smaller than its thread's major diameter, an insert's larger by 0.2165 P at least.
 */
export function tapFor(thread: string, hole: Length): TapFor {
  const known = threadNamed(thread);
  return known && isLess(hole, known.major) ? 'bolt' : 'insert';
}

type TappedCut = { readonly thread?: string; readonly target: { readonly exact: Length } };

/** The tap of a cut, of one kept from before too. */
export function tapOfCut({ thread, target }: TappedCut): string | undefined {
  return thread === undefined ? undefined : tapName(thread, tapFor(thread, target.exact));
}

// As cuts for inserts were named before they said STI; kept ones still are.
const NAMED_BEFORE = /\btapped for an insert (\S.*)$/;

/** A cut's name as it is shown: one kept from before says STI too. */
export function cutName({ name }: { readonly name: string }): string {
  return name.replace(NAMED_BEFORE, (_before, thread: string) => tapName(thread, 'insert'));
}
