import type { CutOffer } from './cut.ts';
import { LESS_THE_BAND, targetBetween, wayOf, type CutWay } from './cuts-of-way.ts';
import { combine, type Term } from './estimate.ts';
import { isMore, largest, minus, plus, zero } from './length.ts';
import type { LongerPart, StackAnswer, StackPart, StackQuestion, StackWant, Trim } from './spacer-stack.ts';
import { capital } from './say-words.ts';

const WANTED = { float: 'float wanted', 'end-play': 'end play wanted', clamp: 'clamp wanted' } as const;

/**
 * What is cut for a stack: each part that may give is a way of its own, as one alone brings what is wanted.
 *
 * Units:   as `spacerStack`: a trim's target and limits, or those of a longer part made new.
 * Range:   none where the verdict is good, nor for a trim that was refused.
 */
export function cutsOfStack({ want }: StackQuestion, answer: StackAnswer): readonly CutWay[] {
  const trims = answer.trims.flatMap(({ result }, index) =>
    result.ok ? wayOf(trimWay(result.value, index, want)) : [],
  );
  return [...trims, ...answer.longerParts.map((part, index) => longerWay(part, index, want))];
}

function trimWay(trim: Trim, index: number, want: StackWant): CutWay {
  const { part, from: present, to: target, lower, upper } = trim;
  const offer: CutOffer = {
    name: `${capital(part)}, faced to length`,
    part,
    operation: 'face',
    of: 'length',
    present,
    target,
    lower,
    upper,
    limitsFrom: limitsFrom(want),
  };
  return { id: `trim-${index + 1}`, name: `Face ${part}`, offers: [offer] };
}

function longerWay({ part, to: target, lower, upper }: LongerPart, index: number, want: StackWant): CutWay {
  return {
    id: `longer-${index + 1}`,
    name: `Make ${part} new, longer`,
    offers: [newPart(part, { target, lower, upper }, want)],
  };
}

function newPart(
  part: string,
  size: Pick<CutOffer, 'target' | 'lower' | 'upper'>,
  want: StackWant,
): CutOffer {
  return {
    name: `${capital(part)}, made new`,
    part,
    operation: 'face',
    of: 'length',
    ...size,
    limitsFrom: limitsFrom(want),
  };
}

/**
 * The one part that stands in for several, long enough for what the stack should do with it in.
 *
 * Units:   length = what is left of the fixed length beside the other parts − the aim (a clamp: + the aim), rounded
 *          metal-on to the dial; limits likewise, less the band of the sizes that stay. `places` count the parts from 0.
 *          A gap that was read directly is taken together with the sizes of the parts that go.
 * Range:   undefined for fewer than two parts, or where no length above zero is left inside the limits.
 */
export function cutOfOnePart(q: StackQuestion, places: readonly number[]): CutOffer | undefined {
  const gone = q.parts.filter((_, place) => places.includes(place));
  if (gone.length < 2) return undefined;
  const room = combine(roomTerms(q, gone, places));
  const { aim, limits } = q.want;
  const [shortest, wanted, longest] =
    q.want.kind === 'clamp'
      ? [plus(room.value, limits.lower), plus(room.value, aim), plus(room.value, limits.upper)]
      : [minus(room.value, limits.upper), minus(room.value, aim), minus(room.value, limits.lower)];
  const { halfWidth } = room.band;
  const upper = minus(longest, halfWidth);
  const lower = largest(zero, plus(shortest, halfWidth));
  if (isMore(lower, upper) || !isMore(upper, zero)) return undefined;
  const size = { lower, upper, target: targetBetween({ lower, upper, aim: wanted }, 'length', q.step) };
  return newPart(`one part for ${names(gone)}`, size, q.want);
}

/** The room the one part has: the fixed length less the parts that stay, or a read gap and the parts that go. */
function roomTerms(
  { fixed, parts, direct }: StackQuestion,
  gone: readonly StackPart[],
  places: readonly number[],
): readonly Term[] {
  if (direct) return [{ estimate: direct, coefficient: 1 }, ...gone.map((part) => term(part, 1))];
  const stay = parts.filter((_, place) => !places.includes(place));
  return [{ estimate: fixed.length, coefficient: 1 }, ...stay.map((part) => term(part, -1))];
}

function term({ thickness, count }: StackPart, sign: 1 | -1): Term {
  return { estimate: thickness, coefficient: sign * count };
}

function names(parts: readonly StackPart[]): string {
  const all = parts.map(({ name }) => name);
  return `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
}

function limitsFrom({ kind, limits }: StackWant): string {
  return `${WANTED[kind]} (${limits.source}), ${LESS_THE_BAND}`;
}
