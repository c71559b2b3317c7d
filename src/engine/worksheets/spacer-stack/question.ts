import {
  dividedBy,
  isLess,
  isMore,
  largest,
  minus,
  negate,
  plus,
  smallest,
  zero,
} from '../../length/length.ts';
import { usualLeastLength } from '../../fit/tables/least-part.ts';
import { sizeStep } from '../../length/metal-on.ts';
import { mean, typedEstimate, type Estimate } from '../../reading/estimate.ts';
import { hangsOnLower, middleOf } from '../../reading/verdict.ts';
import type { Given, GivenPart, GivenSize } from '../given.ts';
import type { SpacerStackFields } from './fields.ts';
import { mayCut } from './may-cut.ts';
import {
  onePartInPlaceOf,
  rulingPlace,
  spacerStack,
  stackWantPreset,
  type StackPart,
  type StackQuestion,
  type StackWant,
} from './spacer-stack.ts';

export type StackGiven = Given<SpacerStackFields>;

export function stackWant(given: StackGiven): StackWant {
  const kind = given.choice('want');
  const preset = stackWantPreset(kind === 'end-play' || kind === 'clamp' ? kind : 'float', given.unit);
  const lower = given.exact('lower');
  const upper = given.exact('upper');
  const aim = given.exact('aim');
  const room = minus(preset.limits.upper, preset.limits.lower);
  // Down to nothing it would no longer be what is wanted: a float that is seized, a clamp that holds nothing. End play may
  // be nothing. A third of the most: chosen, common practice has no figure for so little.
  const leastBelow = upper && (kind === 'end-play' ? zero : dividedBy(upper, 3));
  const roomBelow = upper && leastBelow && largest(leastBelow, minus(upper, room));
  const limits = {
    lower: lower ?? (roomBelow ? smallest(preset.limits.lower, roomBelow) : preset.limits.lower),
    upper: upper ?? (lower ? largest(preset.limits.upper, plus(lower, room)) : preset.limits.upper),
    source: lower || upper ? 'your own limits' : preset.limits.source,
  };
  // An aim that was given for another want may lie outside now; then the middle stands in for it.
  const stands = aim && !isLess(aim, limits.lower) && !isMore(aim, limits.upper);
  return { ...preset, limits, aim: stands ? aim : lower || upper ? middleOf(limits) : preset.aim };
}

/**
 * The question a stack worksheet asks the engine, once all parts are in and the sleeve and every part have a size; a gap that
 * was read directly stands in for the sleeve.
 */
export function stackQuestion(given: StackGiven): StackQuestion | undefined {
  if (!given.has('parts')) return undefined;
  const { ids, leads } = mayCut(given);
  const want = stackWant(given);
  const sized = given.parts.flatMap((part) => stackPart(part, ids.has(part.id)) ?? []);
  if (sized.length === 0 || sized.length < given.parts.length) return undefined;
  const read = directGap(given, want);
  const direct = read?.gap;
  // Which of the parts a gap owes its two sides to nobody has read.
  const parts = read ? sized.map(({ taper: _taper, ...part }) => part) : sized;
  const fixed = fixedLength(given, { want, parts, direct });
  const first = given.parts.findIndex(({ id }) => id === leads);
  if (!fixed) return undefined;
  const question = {
    fixed,
    parts,
    want: read?.taper ? { ...want, taper: read.taper } : want,
    step: sizeStep('length', given.dialFor('length')),
    usualLeast: usualLeastLength[given.unit],
    ...(first >= 0 && { first }),
    ...(direct && { direct }),
  };
  const thin = given.parts.flatMap((part) => stackPart(part, ids.has(part.id), 'least') ?? []);
  return clampedAtBothSides(question, thin);
}

/** A clamp that its parts hold where they are thick, and may not where they are thin, goes by the thin places. */
function clampedAtBothSides(question: StackQuestion, parts: readonly StackPart[]): StackQuestion {
  if (question.want.kind !== 'clamp' || question.direct) return question;
  const thin = { ...question, parts };
  const atThin = spacerStack(thin);
  const by = minus(atThin.gap, spacerStack(question).gap);
  if (!isMore(by, zero)) return question;
  const judgedAt = (at: 'least' | 'most') => ({ ...question.want, taper: { by, at } });
  return hangsOnLower(atThin.verdict)
    ? { ...thin, want: judgedAt('least') }
    : { ...question, want: judgedAt('most') };
}

function stackPart(
  { name, count, size, leastLength }: GivenPart,
  adjustable: boolean,
  place: 'least' | 'most' = 'most',
): StackPart | undefined {
  if (!size) return undefined;
  const taper = minus(mean(size.most), mean(size.least));
  return {
    name,
    count,
    adjustable,
    // Of four places the thickest binds.
    thickness: size[place],
    ...(leastLength && { leastLength }),
    ...(isMore(taper, zero) && { taper }),
  };
}

/** What the parts go into, in a word: the sleeve, or the opening between two faces. */
export function fixedNameOf(given: StackGiven): string {
  return given.choice('fixedName') ?? 'sleeve';
}

type WithRest = Pick<StackQuestion, 'want' | 'parts'> & { readonly direct: Estimate | undefined };

function fixedLength(
  given: StackGiven,
  { want, parts, direct }: WithRest,
): StackQuestion['fixed'] | undefined {
  const name = fixedNameOf(given);
  const fixed = given.size('fixed');
  // What floats or has end play binds at the shortest place of its sleeve; what is to be clamped, at the longest.
  if (fixed) return { name, length: want.kind === 'clamp' ? fixed.most : fixed.least };
  // Nothing is worked out from it: it is drawn, and shown as what it must be.
  return direct && { name, length: typedEstimate(plus(onePartInPlaceOf(parts).length, mean(direct))) };
}

/** The worksheet's size that reads what is wanted on the assembled stack. */
export function readInPlaceName({ kind }: Pick<StackWant, 'kind'>): 'direct' | 'directProud' {
  return kind === 'clamp' ? 'directProud' : 'direct';
}

type ReadGap = { readonly gap: Estimate; readonly taper?: StackWant['taper'] };

/** The gap as it was read, at the place that rules; parts that stand proud leave less than none. */
function directGap(given: StackGiven, want: StackWant): ReadGap | undefined {
  const proud = want.kind === 'clamp' ? given.size('directProud') : undefined;
  if (proud) {
    const { gap, taper } = atRulingPlace(proud, rulingPlace(want, proud));
    return { gap: { ...gap, sum: negate(gap.sum) }, ...(taper && { taper }) };
  }
  const gap = given.size('direct');
  if (!gap) return undefined;
  if (want.kind !== 'clamp') return atRulingPlace(gap, rulingPlace(want, gap));
  // A gap says how far below the face parts lie that should stand proud: the widest rules.
  const { taper } = atRulingPlace(gap, gap.most);
  return { gap: gap.most, ...(taper && { taper: { ...taper, at: 'least' } }) };
}

function atRulingPlace({ least, most }: Pick<GivenSize, 'least' | 'most'>, gap: Estimate): ReadGap {
  const by = minus(mean(most), mean(least));
  return isMore(by, zero) ? { gap, taper: { by, at: gap === most ? 'most' : 'least' } } : { gap };
}
