import { inPoints } from '../length/decimal-text.ts';
import { readEntry, type Entry } from '../length/entry.ts';
import {
  absolute,
  dividedBy,
  exactDecimalText,
  isLess,
  isMore,
  ratioOf,
  sameLength,
  times,
  zero,
  type Length,
} from '../length/length.ts';
import { slipQuestion } from './reading.ts';
import { asTyped, figure, show } from '../length/show.ts';

/** What a typed size can be held against; each is left out where nothing is known. */
export type SlipAround = {
  /** Sizes that it should be about as large as: a bore's pin. */
  readonly near?: readonly Length[];
  /** A size that can't be far below this one: the part of a stack that this sleeve has to hold. */
  readonly holds?: Length | undefined;
  /** A size that this one goes into, and so can't be far above. */
  readonly goesInto?: Length | undefined;
  /** What such a size usually is. */
  readonly usual?: { readonly least: Length; readonly most: Length } | undefined;
};

export type SizeSlip = {
  /** What may have been meant, the likeliest first; never empty. */
  readonly meant: readonly Entry[];
  readonly beside:
    | { readonly of: 'near' | 'holds' | 'goes-into'; readonly size: Length }
    | { readonly of: 'usual'; readonly least: Length; readonly most: Length };
};

// Chosen, not published: a stack that is far too tight is still nowhere near three times its sleeve.
const FAR = 3;
const MOST_OFFERED = 3;
const POINTS = ['10', '100', '1000', '10000'] as const;

/**
 * Whether a size typed on a worksheet looks like a slip: a unit taken for the other one, a lost or slipped point.
 *
 * Range:   beside sizes like it as on the reading pad (15 % of 25.4, 10, 100, 1000); three times above or below what it
 *          goes into or holds; outside what such a size usually is. Asked only where one of the slips gives a size that
 *          fits; never at zero. What is meant is offered, what was typed is kept where it is confirmed.
 * Source:  thresholds chosen, not published.
 */
export function sizeSlip(typed: Entry, around: SlipAround): SizeSlip | undefined {
  const size = absolute(typed.exact);
  if (!isMore(size, zero)) return undefined;
  const { near = [], holds, goesInto, usual } = around;
  const fits = (one: Length) => fitsIn(one, around);
  const question = slipQuestion(size, near);
  if (question) {
    const meant = entriesMeant(typed, (one) => isAbout(one, question.usual));
    return asked(meant, { of: 'near', size: question.usual });
  }
  if (near.some((one) => isAbout(size, absolute(one)))) return undefined;
  if (goesInto && isFarAbove(size, goesInto))
    return asked(entriesMeant(typed, fits), { of: 'goes-into', size: goesInto });
  if (holds && isFarAbove(holds, size)) return asked(entriesMeant(typed, fits), { of: 'holds', size: holds });
  if (usual && !isUsual(size, usual)) return asked(entriesMeant(typed, fits), { of: 'usual', ...usual });
  return undefined;
}

/** The question in the unit that was typed in. */
export function saySizeSlip({ beside }: SizeSlip, typed: Entry): string {
  const unit = typed.unit === 'mm' ? 'mm' : 'in';
  const is = asTyped(typed);
  switch (beside.of) {
    case 'near':
      return `${is} stands beside ${show(beside.size, unit)} here. Which is meant?`;
    case 'goes-into':
      return `${is} has to go into ${show(beside.size, unit)} here. Which is meant?`;
    case 'holds':
      return `${is} has to hold a part of ${show(beside.size, unit)} here. Which is meant?`;
    case 'usual':
      return `${is} is not usual here: ${figure(beside.least, unit)} to ${show(beside.most, unit)} is. Which is meant?`;
    default:
      return beside satisfies never;
  }
}

function asked(meant: readonly Entry[], beside: SizeSlip['beside']): SizeSlip | undefined {
  return meant.length === 0 ? undefined : { meant: meant.slice(0, MOST_OFFERED), beside };
}

function entriesMeant(typed: Entry, fits: (size: Length) => boolean): readonly Entry[] {
  const all = [...otherUnit(typed), ...POINTS.flatMap((factor) => pointAt(typed, factor))];
  return all.filter(({ exact }) => fits(absolute(exact)));
}

/** The same digits in the other unit. */
function otherUnit({ exact, typed, unit }: Entry): readonly Entry[] {
  const digits = typed.replace(/\s*[a-z"″]+\.?$/i, '');
  if (unit === 'mm') return [{ exact: times(exact, '25.4'), typed: `${digits} in`, unit: 'in' }];
  return unit === 'in' ? [{ exact: dividedBy(exact, '25.4'), typed: `${digits} mm`, unit: 'mm' }] : [];
}

function pointAt({ exact, unit }: Entry, factor: string): readonly Entry[] {
  const shown = unit === 'mm' ? 'mm' : 'in';
  return [dividedBy(exact, factor), times(exact, factor)].map((size) => ({
    exact: size,
    typed: writtenOut(size, shown),
    unit: shown,
  }));
}

/** As it is shown, or to its last digit: what stands there is read as this very size again. */
function writtenOut(size: Length, unit: 'in' | 'mm'): string {
  const shown = inPoints(() => show(size, unit));
  const read = readEntry(shown, { unit, signed: true });
  if (read.ok && sameLength(read.value.exact, size)) return shown;
  const text = exactDecimalText(size, unit);
  return `${unit === 'in' ? text.replace(/^0\./, '.') : text} ${unit}`;
}

function fitsIn(size: Length, { holds, goesInto, usual }: SlipAround): boolean {
  return (
    !(goesInto && isMore(size, goesInto)) &&
    !(holds && isLess(size, holds)) &&
    (usual === undefined || isUsual(size, usual))
  );
}

function isUsual(size: Length, { least, most }: { readonly least: Length; readonly most: Length }): boolean {
  return !isLess(size, least) && !isMore(size, most);
}

function isFarAbove(size: Length, other: Length): boolean {
  return isMore(other, zero) && ratioOf(size, other) > FAR;
}

function isAbout(size: Length, other: Length): boolean {
  return sameLength(size, other) || (isMore(other, zero) && Math.abs(ratioOf(size, other) - 1) <= 0.15);
}
