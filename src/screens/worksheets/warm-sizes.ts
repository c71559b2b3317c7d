import { bandOf, typedEstimate } from '../../engine/reading/estimate.ts';
import { absolute, dividedBy, isLess, minus, type Length } from '../../engine/length/length.ts';
import { sayUnaskedWarmth } from '../../engine/reading/say-warmth.ts';
import { uncapital } from '../../engine/length/say-words.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import { readWarm, unaskedWarmth, UNASKED_CELSIUS } from '../../engine/reading/temperature.ts';
import type { Cut, Id, SizeInput, TypedSize } from '../../store/base/records.ts';
import { metalOfPart } from '../cuts/known-metal.ts';
import { formOfReadings } from '../readings/feature-summary.ts';
import { growsWithWarmth, warmthAsked, warmthOfMetal, warmthOfToday } from '../readings/warmth.ts';
import { metalOf } from './size-metal.ts';
import type { WorksheetData } from './worksheet-data.ts';
import { fieldNamed } from './kind-fields.ts';

/** A size that was typed as read by a tool, of which nobody said how warm it was read, and it could matter. */
export type UnaskedSize = {
  readonly place: { readonly sizeName: string } | { readonly partId: string };
  readonly label: string;
  readonly size: TypedSize;
  readonly material?: string;
  /** How much it may be off for that. */
  readonly off: Length;
};

/**
 * The sizes of a worksheet that want their warmth said: by the rule of the reading pad, a third of what the tool knows.
 * `cuts` say what a part is made of that was cut already.
 */
export function unaskedSizes(data: WorksheetData, cuts: readonly Cut[] = []): readonly UnaskedSize[] {
  const { worksheet, features } = data;
  const metalOfCut = (part: string) => metalOfPart({ worksheet, part, isThere: false }, { features, cuts });
  const { sizes, parts } = data.worksheet;
  const named = Object.entries(sizes).flatMap(([sizeName, input]) => {
    const field = fieldNamed(data.worksheet, sizeName);
    const grows = field?.enter === 'size' && field.measures !== undefined && growsWithWarmth(field.measures);
    return grows ? unasked(input, { sizeName }, field.label, metalOf(data, sizeName)) : [];
  });
  const ofParts = Object.entries(parts).flatMap(([partId, { size, name }]) =>
    size ? unasked(size, { partId }, name, metalOfCut(name)) : [],
  );
  return [...named, ...ofParts];
}

function unasked(
  input: SizeInput,
  place: UnaskedSize['place'],
  label: string,
  material: string | undefined,
): readonly UnaskedSize[] {
  if (input.from !== 'typed' || !input.tool || input.warmth) return [];
  const { halfWidth } = bandOf(typedEstimate(input.exact, input.tool));
  const off =
    material === undefined ? unaskedWarmth(input.exact, halfWidth) : offOf(input.exact, material, halfWidth);
  return off ? [{ place, label, size: input, off, ...(material !== undefined && { material }) }] : [];
}

/** The same where the metal is known: mild steel grows as the tool does, and is asked for nothing. */
function offOf(exact: Length, material: string, halfWidth: Length): Length | undefined {
  const metal = materialNamed(material);
  if (!metal) return unaskedWarmth(exact, halfWidth);
  const { at20 } = readWarm(exact, { celsius: 20 + UNASKED_CELSIUS, material: metal });
  const off = absolute(minus(at20, exact));
  return isLess(off, dividedBy(halfWidth, 3)) ? undefined : off;
}

/** A size as it is kept: with the job's warmth of that day where a tool read it and its metal is known. */
export function withWarmthOfDay(
  data: WorksheetData,
  sizeName: string,
  size: SizeInput,
  now: number,
): SizeInput {
  if (size.from !== 'typed' || !size.tool) return size;
  return { ...size, ...warmthOfMetal(data.job, metalOf(data, sizeName), now) };
}

/** What is asked in one line, and of which reading, where it is of one. */
export type WarmthWanted = { readonly said: string; readonly featureId?: Id };

/** One short line where a size was read without saying how warm, and it could matter. */
export function warmthWanted(data: WorksheetData, now: number): WarmthWanted | undefined {
  const { job, unit, worksheet } = data;
  const [first] = unaskedSizes(data);
  if (first) {
    const asks = warmthOfToday(job, now) ? 'metal' : 'warmth';
    return { said: `${first.label}: ${uncapital(sayUnaskedWarmth(first.off, asks, unit))}` };
  }
  const inputs = [
    ...Object.values(worksheet.sizes),
    ...Object.values(worksheet.parts).map(({ size }) => size),
  ];
  const used = new Set(inputs.flatMap((input) => (input?.from === 'feature' ? [input.featureId] : [])));
  for (const feature of data.features.filter(({ id }) => used.has(id))) {
    const records = data.readings.filter(({ featureId }) => featureId === feature.id);
    const form = formOfReadings(feature.kind, records, feature.material);
    const asked = form ? warmthAsked(form, records, { job, unit }) : '';
    if (asked !== '') return { said: `${feature.name}: ${uncapital(asked)}`, featureId: feature.id };
  }
  return undefined;
}
