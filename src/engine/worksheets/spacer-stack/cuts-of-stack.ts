import type { CutOffer } from '../../cut/cut.ts';
import { LESS_THE_BAND, NOT_PROVED, wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { capital, listed } from '../../length/say-words.ts';
import type { StackAnswer, StackPart, StackQuestion, StackWant } from './spacer-stack.ts';
import type { Proof } from './stack-change.ts';
import { onePart } from './stack-one-part.ts';
import type { LongerPart, NewPart, Trim } from './stack-trim.ts';

const WANTED = { float: 'float wanted', 'end-play': 'end play wanted', clamp: 'clamp wanted' } as const;

/**
 * What is cut for a stack: each part that may give is a way of its own, as one alone brings what is wanted.
 *
 * Units:   as `spacerStack`: a trim's target and limits, or those of a longer part or a new spacer.
 * Range:   none where the verdict is good, nor for a trim that was refused, nor for a longer part that nobody said may
 *          give. A way that isn't proved is unsure, and says so in its limits.
 */
export function cutsOfStack({ want }: StackQuestion, answer: StackAnswer): readonly CutWay[] {
  const trims = answer.trims.flatMap(({ result }, index) =>
    result.ok ? wayOf(trimWay(result.value, index, want)) : [],
  );
  const longer = answer.longerParts.filter(({ mayGive }) => mayGive);
  return [
    ...trims,
    ...longer.map((part, index) => longerWay(part, index, want)),
    ...(answer.newPart ? [newWay(answer.newPart, want)] : []),
  ];
}

/** What a cut is called in every list. */
export function stackCutName(part: string, how: 'faced' | 'new'): string {
  return `${capital(part)}, ${how === 'faced' ? 'faced to length' : 'made new'}`;
}

function trimWay(trim: Trim, index: number, want: StackWant): CutWay {
  const { part, from: present, to: target, lower, upper } = trim;
  const offer: CutOffer = {
    name: stackCutName(part, 'faced'),
    part,
    operation: 'face',
    of: 'length',
    present,
    target,
    lower,
    upper,
    limitsFrom: limitsFrom(want, trim),
  };
  return { id: `trim-${index + 1}`, name: `Face ${part}`, offers: [offer], ...unsure(trim) };
}

function longerWay(longer: LongerPart, index: number, want: StackWant): CutWay {
  const { part, to: target, lower, upper } = longer;
  return {
    id: `longer-${index + 1}`,
    name: `Make ${part} new, longer`,
    offers: [newPart(part, { target, lower, upper }, limitsFrom(want, longer))],
    ...unsure(longer),
  };
}

function newWay(made: NewPart, want: StackWant): CutWay {
  const { to: target, lower, upper } = made;
  return {
    id: 'extra',
    name: 'Make one more spacer',
    offers: [newPart(ONE_MORE, { target, lower, upper }, limitsFrom(want, made))],
    ...unsure(made),
  };
}

function newPart(part: string, size: Pick<CutOffer, 'target' | 'lower' | 'upper'>, from: string): CutOffer {
  return {
    name: stackCutName(part, 'new'),
    part,
    operation: 'face',
    of: 'length',
    ...size,
    limitsFrom: from,
  };
}

/**
 * The one part that stands in for several, to be cut.
 *
 * Units:   as `onePart`.
 * Range:   undefined for fewer than two pieces, for a place that the stack hasn't got, where the others fill the sleeve,
 *          and where a shim does it.
 */
export function cutOfOnePart(q: StackQuestion, places: readonly number[]): CutOffer | undefined {
  const one = onePart(q, places);
  if (!one?.made || one.made.isShim) return undefined;
  const { target, lower, upper } = one.made;
  return newPart(`${ONE_FOR}${names(one.parts)}`, { target, lower, upper }, limitsFrom(q.want, one.made));
}

/** The same as a way of its own; `id` is how it stands in an address. */
export function wayOfOnePart(q: StackQuestion, places: readonly number[], id: string): CutWay | undefined {
  const offer = cutOfOnePart(q, places);
  const made = onePart(q, places)?.made;
  return offer && made && { id, name: 'One part in place of several', offers: [offer], ...unsure(made) };
}

/**
 * Which parts a part that was made by such a cut stands in for, by its name: none for one more spacer, undefined for a part
 * that was made for anything else, and where more than one lot of parts has those names.
 */
export function placesReplaced(
  made: string,
  parts: readonly Pick<StackPart, 'name' | 'count'>[],
): readonly number[] | undefined {
  if (made === ONE_MORE) return [];
  if (!made.startsWith(ONE_FOR) || parts.length > MOST_PARTS) return undefined;
  const lots = Array.from({ length: 2 ** parts.length }, (_, lot) =>
    parts.flatMap((_part, place) => (Math.floor(lot / 2 ** place) % 2 === 1 ? [place] : [])),
  );
  const named = lots.filter(
    (places) => names(places.flatMap((place) => parts[place] ?? [])) === made.slice(ONE_FOR.length),
  );
  return named.length === 1 ? named[0] : undefined;
}

const ONE_MORE = 'one more spacer';
const ONE_FOR = 'one part for ';
const MOST_PARTS = 12; // chosen: every lot of them is looked through

function names(parts: readonly Pick<StackPart, 'name' | 'count'>[]): string {
  return listed(parts.map(({ name, count }) => (parts.length === 1 ? `${count} × ${name}` : name)));
}

function limitsFrom({ kind, limits }: StackWant, { proved }: Proof): string {
  return `${WANTED[kind]} (${limits.source}), ${proved ? LESS_THE_BAND : NOT_PROVED}`;
}

function unsure({ proved }: Proof): Pick<CutWay, 'unsure'> {
  return proved ? {} : { unsure: true };
}
