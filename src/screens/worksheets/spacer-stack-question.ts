import { dialFor } from '../common/slides.ts';
import {
  dividedBy,
  largest,
  minus,
  negate,
  plus,
  smallest,
  zero,
  type Length,
  isLess,
  isMore,
} from '../../engine/length/length.ts';
import { mean, typedEstimate, type Estimate } from '../../engine/reading/estimate.ts';
import { sizeStep } from '../../engine/length/metal-on.ts';
import {
  onePartInPlaceOf,
  rulingPlace,
  stackWantPreset,
  type StackPart,
  type StackQuestion,
  type StackWant,
} from '../../engine/worksheets/spacer-stack/spacer-stack.ts';
import { usualLeastLength } from '../../engine/fit/tables/least-part.ts';
import { middleOf } from '../../engine/reading/verdict.ts';
import type { Id, StackPartInput } from '../../store/records.ts';
import { exactSize, knownSize, type WorksheetData } from './worksheet-data.ts';

export type KnownPart = { readonly id: Id; readonly input: StackPartInput; readonly part?: StackPart };

/** The parts of a stack in their order, each with what is known of it. */
export function stackParts(data: WorksheetData): readonly KnownPart[] {
  return Object.entries(data.worksheet.parts)
    .map(([id, input]) => knownPart(data, id, input))
    .sort((a, b) => a.input.order - b.input.order);
}

function knownPart(data: WorksheetData, id: Id, input: StackPartInput): KnownPart {
  const size = knownSize(data, input.size);
  const leastLength = exactSize(data, input.leastLength);
  if (!size) return { id, input };
  // Of four places the thickest binds.
  const { name, count, adjustable } = input;
  return {
    id,
    input,
    part: { name, count, adjustable, thickness: size.most, ...(leastLength && { leastLength }) },
  };
}

export function stackWant(data: WorksheetData): StackWant {
  const { sizes, choices } = data.worksheet;
  const kind = choices['want'];
  const preset = stackWantPreset(kind === 'end-play' || kind === 'clamp' ? kind : 'float', data.unit);
  const lower = exactSize(data, sizes['lower']);
  const upper = exactSize(data, sizes['upper']);
  const aim = exactSize(data, sizes['aim']);
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
 * The question a stack worksheet asks the engine, once the sleeve and every part have a size; a gap that was read directly
 * stands in for the sleeve.
 */
export function spacerStackQuestion(data: WorksheetData): StackQuestion | undefined {
  const known = stackParts(data);
  const parts = known.flatMap(({ part }) => part ?? []);
  if (parts.length === 0 || parts.length < known.length) return undefined;
  const want = stackWant(data);
  const direct = directGap(data, want);
  const fixed = fixedLength(data, { want, parts, direct });
  if (!fixed) return undefined;
  return {
    fixed,
    parts,
    want,
    step: dialStep(data),
    usualLeast: usualLeastLength[data.unit],
    ...(direct && { direct }),
  };
}

type Around = Pick<StackQuestion, 'want' | 'parts'> & { readonly direct: Estimate | undefined };

function fixedLength(
  data: WorksheetData,
  { want, parts, direct }: Around,
): StackQuestion['fixed'] | undefined {
  const { sizes, choices } = data.worksheet;
  const name = choices['fixedName'] ?? 'sleeve';
  const fixed = knownSize(data, sizes['fixed']);
  // What floats or has end play binds at the shortest place of its sleeve; what is to be clamped, at the longest.
  if (fixed) return { name, length: want.kind === 'clamp' ? fixed.most : fixed.least };
  // Nothing is worked out from it: it is drawn, and shown as what it must be.
  return direct && { name, length: typedEstimate(plus(onePartInPlaceOf(parts).length, mean(direct))) };
}

/** The worksheet's size that reads what is wanted on the assembled stack. */
export function readInPlaceName({ kind }: Pick<StackWant, 'kind'>): string {
  return kind === 'clamp' ? 'directProud' : 'direct';
}

/** The gap as it was read, at the place that rules; parts that stand proud leave less than none. */
function directGap(data: WorksheetData, want: StackWant): Estimate | undefined {
  const { sizes } = data.worksheet;
  const proud = want.kind === 'clamp' ? knownSize(data, sizes['directProud']) : undefined;
  if (proud) {
    const ruling = rulingPlace(want, proud);
    return { ...ruling, sum: negate(ruling.sum) };
  }
  const gap = knownSize(data, sizes['direct']);
  // A gap says how far below the face parts lie that should stand proud: the widest rules.
  return gap && (want.kind === 'clamp' ? gap.most : rulingPlace(want, gap));
}

/** The step the shop's dial can face a length to. */
function dialStep(data: WorksheetData): Length {
  return sizeStep('length', dialFor('length', data.dial));
}
