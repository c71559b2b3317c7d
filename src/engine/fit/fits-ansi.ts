import type { Deviations, IsoRefusal } from './fits-iso.ts';
import { isMore, lengthOf, zero, type Length } from '../length/length.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';
import { ansiFitRows } from './tables/ansi-b41.ts';

export type AnsiClass = keyof typeof ansiFitRows;
export type AnsiFit = {
  readonly hole: Deviations;
  readonly pin: Deviations;
  /** This row of the table is recalled, not seen. */
  readonly fromMemory: boolean;
};

const GREATEST = lengthOf('4.73 in');

export function isAnsiClass(text: string): text is AnsiClass {
  return Object.hasOwn(ansiFitRows, text);
}

/** Every class, in the order of the standard: RC, LC, LT, LN, FN. */
export const ansiClasses: readonly AnsiClass[] = Object.keys(ansiFitRows).filter(isAnsiClass);

/**
 * Limits of hole and pin of an ANSI class from the nominal size.
 *
 * Units:   deviations; a row holds over its first size up to and including its second.
 * Range:   over 0 to 4.73 in; LT3 and LT4 above .24 in, FN3 above .95 in.
 * Refuses: no-such-class, class-not-at-size, size-outside-fit-table.
 * Source:  ANSI B4.1-1967, as tables/ansi-b41.ts says; some rows from memory.
 */
export function ansiFit(nominal: Length, fitClass: string): Result<AnsiFit, IsoRefusal> {
  if (!isAnsiClass(fitClass)) return refuse({ code: 'no-such-class', fitClass });
  if (!isMore(nominal, zero) || isMore(nominal, GREATEST))
    return refuse({ code: 'size-outside-fit-table', nominal, upTo: GREATEST, standard: 'ANSI B4.1' });
  const row = rowsOf(fitClass).find(({ over, upTo }) => isMore(nominal, over) && !isMore(nominal, upTo));
  return row ? worked(row.fit) : refuse({ code: 'class-not-at-size', fitClass, nominal });
}

type Row = { readonly over: Length; readonly upTo: Length; readonly fit: AnsiFit };

function rowsOf(fitClass: AnsiClass): readonly Row[] {
  return ansiFitRows[fitClass].trim().split('\n').map(rowOf);
}

function rowOf(line: string): Row {
  const [over = '', upTo = '', holeUpper = '', pinUpper = '', pinLower = '', mark] = line.trim().split(' ');
  return {
    over: lengthOf(`${over} in`),
    upTo: lengthOf(`${upTo} in`),
    fit: {
      hole: { lower: zero, upper: lengthOf(`${holeUpper} thou`) },
      pin: { lower: lengthOf(`${pinLower} thou`), upper: lengthOf(`${pinUpper} thou`) },
      fromMemory: mark === 'm',
    },
  };
}
