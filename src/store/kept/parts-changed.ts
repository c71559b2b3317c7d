import { sameLength } from '../../engine/length/length.ts';
import type { SizeInput, StackPartInput, Worksheet } from '../base/records.ts';

// What is read of a bracket, a disc and the wheel once the axle is together; of an axle with two discs, of either side.
const AXLE_READS = ['floatRead', 'discInsideRead', 'discOutsideRead'];
const AXLE_FREE = ['float', 'discRunout'];
const eachSide = (names: readonly string[]) =>
  names.flatMap((name) => {
    const capital = name.charAt(0).toUpperCase() + name.slice(1);
    return [name, `left${capital}`, `right${capital}`];
  });

type OfTheWhole = {
  readonly reads: readonly string[];
} & (
  | { readonly free: readonly string[]; readonly parts?: never }
  /** The sizes that are its parts. Given for the first time one makes no other part: it is measured after what was read. */
  | { readonly parts: Readonly<Record<string, string>>; readonly free?: never }
);

const BORE_AND_PIN = { bore: 'bore', pin: 'pin' };

/** Sizes that are read on the assembled thing, and sizes that say nothing of its parts or the only ones that do. */
const READ_OF_THE_WHOLE: Readonly<Record<string, OfTheWhole>> = {
  'hole-and-pin': { reads: ['slop', 'rockInAll'], parts: BORE_AND_PIN },
  fit: { reads: ['slop'], parts: BORE_AND_PIN },
  'spacer-stack': { reads: ['direct', 'directProud'], free: ['lower', 'upper', 'aim'] },
  'axle-line-up': {
    reads: ['centreRead', 'centreLeftRead', 'centreRightRead', ...eachSide(AXLE_READS)],
    free: [
      ...eachSide(AXLE_FREE),
      'spacerLimit',
      'openingLimit',
      'lineLimit',
      'wearMargin',
      'discClearance',
      'padWear',
      'offset',
      'chainLine',
      'wheelPlace',
    ],
  },
  'bearing-seat': {
    reads: ['direct', 'directProud', 'directBelow', 'endPlay'],
    free: ['lower', 'upper', 'aim'],
  },
};

type Parts = Pick<Worksheet, 'kind' | 'sizes' | 'choices' | 'parts'>;
type Inputs = Parts & Pick<Worksheet, 'partsChanged'>;

/** A kind out of a file may be any word, one that every object knows too. */
function wholeOf({ kind }: Pick<Worksheet, 'kind'>): OfTheWhole | undefined {
  return Object.hasOwn(READ_OF_THE_WHOLE, kind) ? READ_OF_THE_WHOLE[kind] : undefined;
}

/** Whether a worksheet's size is read on its parts put together, so that it holds for those parts only. */
export function isReadOfTheWhole(worksheet: Pick<Worksheet, 'kind'>, name: string): boolean {
  return wholeOf(worksheet)?.reads.includes(name) === true;
}

/** The sizes of what the worksheet's parts are, with the name of each: its parts', and what they stand in. */
export function sizesOfParts({ kind, sizes, parts }: Pick<Worksheet, 'kind' | 'sizes' | 'parts'>): readonly {
  readonly name: string;
  readonly size: SizeInput;
}[] {
  const whole = wholeOf({ kind });
  const fields = Object.entries(sizes).filter(([name]) => saysOfParts({ kind }, name));
  return [
    ...Object.values(parts).flatMap(({ name, size }) => (size ? [{ name, size }] : [])),
    ...fields.map(([name, size]) => ({ name: partNamed(whole, name), size })),
  ];
}

/** Whether a worksheet's size is one of its parts, or what they stand in. */
export function saysOfParts(worksheet: Pick<Worksheet, 'kind'>, name: string): boolean {
  const whole = wholeOf(worksheet);
  if (!whole) return true;
  if (whole.parts) return Object.hasOwn(whole.parts, name);
  return !whole.reads.includes(name) && !whole.free.includes(name);
}

function partNamed(whole: OfTheWhole | undefined, name: string): string {
  return whole?.parts?.[name] ?? (name === 'fixed' ? 'sleeve or opening' : 'a part');
}

/** Whether an input is one of the worksheet's sizes that were read on its parts put together. */
export function isInputOfTheWhole(worksheet: Pick<Worksheet, 'kind' | 'sizes'>, input: SizeInput): boolean {
  return Object.entries(worksheet.sizes).some(
    ([name, size]) => size === input && isReadOfTheWhole(worksheet, name),
  );
}

/**
 * Notes on the worksheet that its parts are others than before, and which: what was read of them together is set aside.
 * `byItsAnswer`: it was the worksheet that asked for this, by what was read. Then the sum of the sizes, which the reading had
 * shown to be wrong, doesn't count in its place.
 */
export function withPartsChange<W extends Inputs>(
  before: W,
  after: W,
  at: number,
  { byItsAnswer = false }: { readonly byItsAnswer?: boolean } = {},
): W {
  const why = changeOfParts(before, after);
  if (why === undefined) return after;
  const last = before.partsChanged;
  const otherwiseAt = last?.otherwiseAt ?? last?.at ?? 0;
  return { ...after, partsChanged: { at, why, ...(byItsAnswer && { otherwiseAt }) } };
}

/** Which part is another one after than before, in words; nothing where none is. */
export function changeOfParts(before: Parts, after: Parts): string | undefined {
  const kind = wholeOf(after);
  if (!kind) return undefined;
  const parts = [...new Set([...Object.keys(before.parts), ...Object.keys(after.parts)])].flatMap(
    (id) => changeOfPart(before.parts[id], after.parts[id]) ?? [],
  );
  const names = [...new Set([...Object.keys(before.sizes), ...Object.keys(after.sizes)])];
  const sizes = names.filter(
    (name) =>
      saysOfParts(after, name) &&
      !isTheOneThatWasIn(kind, before, name) &&
      !isSameSize(before.sizes[name], after.sizes[name]),
  );
  const [first] = parts;
  if (first !== undefined) return parts.length > 1 ? `${first}, and more` : first;
  const changed = sizes.includes('fixed') ? 'fixed' : sizes[0];
  return changed === undefined ? undefined : `${partNamed(kind, changed)} of another size`;
}

/** Given for the first time: of taper rollers the shim that was in when their end play was read. */
function isTheOneThatWasIn(whole: OfTheWhole, before: Parts, name: string): boolean {
  const isAsked = whole.parts !== undefined || (name === 'shim' && before.choices['bearing'] === 'taper');
  return isAsked && before.sizes[name] === undefined;
}

function changeOfPart(
  before: StackPartInput | undefined,
  after: StackPartInput | undefined,
): string | undefined {
  if (!after) return before && `${before.name} taken out`;
  if (!before) return `${after.name} put in`;
  if (before.count !== after.count) return `${after.count} of ${after.name} in place of ${before.count}`;
  return isSameSize(before.size, after.size) ? undefined : `${after.name} of another size`;
}

/** The tool it was read with is no matter: the part is the same one. */
function isSameSize(a: SizeInput | undefined, b: SizeInput | undefined): boolean {
  if (a?.from === 'typed' && b?.from === 'typed') return sameLength(a.exact, b.exact);
  if (a?.from === 'feature' && b?.from === 'feature') return a.featureId === b.featureId;
  return a === b;
}
