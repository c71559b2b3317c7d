import { mean, typedEstimate, type Estimate } from '../../engine/reading/estimate.ts';
import { featureForm, type Contradiction } from '../../engine/reading/feature-form.ts';
import type { Length } from '../../engine/length/length.ts';
import type { Reading } from '../../engine/reading/reading.ts';
import { listed } from '../../engine/length/say-words.ts';
import { canHaveRead, toolThatCounts, type MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { toolBeside } from '../../engine/reading/say-readings.ts';
import { type ShownUnit } from '../../engine/length/show.ts';
import type { Limits } from '../../engine/reading/verdict.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import { ownLimitsIn } from '../../engine/worksheets/own-limits.ts';
import type { ReadBefore } from '../../engine/worksheets/given.ts';
import type { CountedPiece } from '../../store/kept/drawer.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import { unsaidWarmth } from '../../engine/reading/temperature.ts';
import { countedAt20 } from '../../store/kept/read-at-20.ts';
import { otherThanRead } from '../../store/kept/parts-as-read.ts';
import { isInputOfTheWhole } from '../../store/kept/parts-changed.ts';
import type {
  Feature,
  Job,
  KeptDial,
  ReadingRecord,
  SizeInput,
  TypedSize,
  Worksheet,
} from '../../store/base/records.ts';
import { engineReadings } from '../readings/engine-readings.ts';
import { countedRecords, isElsewhere, whereElsewhere } from '../readings/elsewhere.ts';
import { readingWords } from '../readings/reading-figure.ts';
import { countSentence } from '../readings/readings-screen.tsx';
import { partReadAnew } from './parts-read-anew.ts';
import { metalOf } from './size-metal.ts';

/** All a worksheet is worked out from; read once by the screen, handed to whatever draws. */
export type WorksheetData = {
  readonly job: Job;
  readonly worksheet: Worksheet;
  readonly features: readonly Feature[];
  readonly readings: readonly ReadingRecord[];
  readonly tools: readonly MeasuringTool[];
  /** What the drawer holds, with counts. */
  readonly drawer: readonly CountedPiece[];
  readonly unit: ShownUnit;
  readonly dial: KeptDial;
};

/**
 * A size with what is known of it and the words that say where it comes from. `least` and `most` are its smallest and its
 * largest place, each with its own band (of a length the shortest and the longest); `tightest` and `loosest` are the same
 * two by what binds: a bore is tight where it is small, a pin and a length where they are large.
 */
export type KnownSize = {
  readonly least: Estimate;
  readonly most: Estimate;
  readonly tightest: Estimate;
  readonly loosest: Estimate;
  /** Every place that counts. */
  readonly places: readonly Estimate[];
  readonly words: string;
};

/** What a size is read in: what was read, and the worksheet that it belongs to, where there is one. */
export type ReadIn = Omit<WorksheetData, 'worksheet'> & { readonly worksheet?: Worksheet | undefined };

/** What a worksheet's input stands for; undefined while it isn't given or its feature has no reading left. */
export function knownSize(data: ReadIn, input: SizeInput | undefined): KnownSize | undefined {
  if (input === undefined) return undefined;
  // What was read of parts put together holds for those parts only.
  const isSetAside = (one: TypedSize | ReadingRecord) => whyAside(data, input, one) !== undefined;
  if (input.from === 'typed') {
    if (isSetAside(input)) return undefined;
    const { exact, doubt } = countedAt20(input.exact, input);
    const unsaid = input.warmth ? undefined : unsaidWarmth(exact, materialNamed(metalOfInput(data, input)));
    const estimate = typedEstimate(exact, input.tool, {
      ...(doubt && { warmthDoubt: doubt }),
      ...(unsaid && { warmthUnsaid: unsaid }),
    });
    return {
      least: estimate,
      most: estimate,
      tightest: estimate,
      loosest: estimate,
      places: [estimate],
      words: typedWords(input),
    };
  }
  const feature = data.features.find((one) => one.id === input.featureId);
  const own = data.readings.filter((one) => one.featureId === input.featureId && !isSetAside(one));
  const records = feature ? recordsIn(data, feature, { input, own }) : [];
  const readings = feature && engineReadings(feature.kind, records, feature.material);
  if (!feature || !readings) return undefined;
  const { least, most, tightest, loosest, places } = featureForm(feature.kind, readings);
  return {
    least: least.estimate,
    most: most.estimate,
    places: places.map(({ estimate }) => estimate),
    tightest: tightest.estimate,
    loosest: loosest.estimate,
    words: isElsewhere(feature, own)
      ? `${feature.name} of ${whereElsewhere(feature.elsewhere)}`
      : `${feature.name}, ${countSentence(records)}, ${toolsOf(readings)}${atTwenty(readings)}`,
  };
}

/** Another one's readings stand in for a part's own; of parts put together they would be of other parts. */
function recordsIn(
  { worksheet }: ReadIn,
  feature: Feature,
  { input, own }: { readonly input: SizeInput; readonly own: readonly ReadingRecord[] },
): readonly ReadingRecord[] {
  return worksheet && isInputOfTheWhole(worksheet, input) ? own : countedRecords(feature, own);
}

/** What a typed size's part is made of, where the worksheet was told. */
function metalOfInput({ worksheet, ...data }: ReadIn, input: SizeInput): string | undefined {
  if (!worksheet) return undefined;
  const named = Object.entries(worksheet.sizes).find(([, one]) => one === input);
  return named && metalOf({ ...data, worksheet }, named[0]);
}

/** A worksheet's size whose readings contradict each other, as what the fitter is asked. */
export type Doubt = { readonly feature: Feature; readonly contradictions: readonly Contradiction[] };

/**
 * Every size that the worksheet stands on and that contradicts itself: until one reading of each is struck out, nothing
 * worked out from it is good.
 */
export function doubtsOf(data: WorksheetData): readonly Doubt[] {
  const { sizes, parts } = data.worksheet;
  const inputs = [...Object.values(sizes), ...Object.values(parts).map(({ size }) => size)];
  const used = new Set(inputs.flatMap((input) => (input?.from === 'feature' ? [input.featureId] : [])));
  return data.features.flatMap((feature) => {
    const records = used.has(feature.id)
      ? data.readings.filter(({ featureId }) => featureId === feature.id)
      : [];
    const readings = engineReadings(feature.kind, records, feature.material);
    const contradictions = readings ? featureForm(feature.kind, readings).contradictions : [];
    return contradictions.length > 0 ? [{ feature, contradictions }] : [];
  });
}

/** An exact size where only the figure counts: a limit, a reach, a wall. */
export function exactSize(data: WorksheetData, input: SizeInput | undefined): Length | undefined {
  const known = knownSize(data, input);
  return known && mean(known.tightest);
}

// A bound is rounded to the shop's own step where it is typed: so much of its range may lie beyond it.
const BEYOND = 0.001;

/**
 * A number that is no length, kept among the choices; nothing where no pad would have taken it, as out of a file: a plate of a
 * thousand million holes would never be drawn.
 */
export function givenNumber({ worksheet }: WorksheetData, name: string): number | undefined {
  const text = worksheet.choices[name] ?? '';
  const figure = /^[+-]?(?:\d+(?:\.\d+)?|\.\d+)$/.test(text) ? Number(text) : NaN;
  if (!Number.isFinite(figure)) return undefined;
  const field = worksheetOf(worksheet.kind)?.fields[name];
  if (field?.enter !== 'number') return figure;
  const { least, most, whole } = field;
  const beyond = (most - least) * BEYOND;
  const isWithin = figure >= least - beyond && figure <= most + beyond;
  return isWithin && (whole !== true || Number.isInteger(figure)) ? figure : undefined;
}

/**
 * Why what was read counts no more: a part was changed or read as another size since, or on another phone without the
 * knowledge of whoever read it, and it was read of the parts put together.
 */
function whyAside(
  { worksheet, ...data }: ReadIn,
  input: SizeInput,
  read: TypedSize | ReadingRecord | undefined,
): string | undefined {
  if (!worksheet) return undefined;
  if (!isInputOfTheWhole(worksheet, input)) return undefined;
  const { partsChanged } = worksheet;
  const at = read?.at;
  if (partsChanged && (at ?? 0) <= partsChanged.at) return partsChanged.why;
  const other = ofOtherParts(worksheet, read);
  if (other !== undefined) return other;
  const anew = at === undefined ? undefined : partReadAnew({ ...data, worksheet }, at);
  return anew === undefined ? undefined : `${anew} read as another size`;
}

/** Which part is another one than was in when this was read. */
function ofOtherParts(worksheet: Worksheet, read: TypedSize | ReadingRecord | undefined): string | undefined {
  const readOf = read && ('from' in read ? read.readOf : read.readOf?.[worksheet.id]);
  return readOf === undefined ? undefined : otherThanRead(worksheet, readOf);
}

/** What was read of the parts put together, and set aside as one of them was changed since; undefined where nothing was. */
export type SetAside = { readonly name: string; readonly input: SizeInput; readonly why: string };

/** Of these sizes the one that was set aside. */
export function setAside(data: WorksheetData, names: readonly string[]): SetAside | undefined {
  return names.flatMap((name): SetAside[] => {
    const input = data.worksheet.sizes[name];
    if (!input || knownSize(data, input)) return [];
    const why = whyAside(data, input, lastRead(data, input));
    return why === undefined ? [] : [{ name, input, why }];
  })[0];
}

/** The same of one size, and whether it was the worksheet's answer that asked for the change. */
export function readBefore(data: WorksheetData, name: string): ReadBefore | undefined {
  const aside = setAside(data, [name]);
  const { partsChanged } = data.worksheet;
  if (!aside) return undefined;
  const read = lastRead(data, aside.input);
  const at = read?.at ?? 0;
  const isOfOthers =
    (partsChanged && at <= partsChanged.at) || ofOtherParts(data.worksheet, read) !== undefined;
  const byItsAnswer = isOfOthers && partsChanged?.otherwiseAt !== undefined && at > partsChanged.otherwiseAt;
  return { why: aside.why, byItsAnswer };
}

function lastRead({ readings }: WorksheetData, input: SizeInput): TypedSize | ReadingRecord | undefined {
  if (input.from === 'typed') return input;
  return readings.findLast((one) => one.featureId === input.featureId && !one.struckOut);
}

/** Why an input that was given gives nothing: it was set aside, every reading of it struck out, or the feature removed. */
export function missingWords(data: WorksheetData, input: SizeInput | undefined): string | undefined {
  if (input === undefined || knownSize(data, input)) return undefined;
  const last = lastRead(data, input);
  const why = last && whyAside(data, input, last);
  if (why !== undefined) return `read before this: ${why}`;
  if (input.from !== 'feature') return undefined;
  const feature = data.features.find((one) => one.id === input.featureId);
  return feature ? `${feature.name} has no readings yet` : 'its readings were removed';
}

function typedWords(input: TypedSize): string {
  const typed = `typed ${readingWords(input)}${input.warmth ? AT_TWENTY : ''}`;
  if (!input.tool) return typed;
  if (!canHaveRead(input.tool, input.exact)) return `${typed}: ${toolBeside({ ...input, tool: input.tool })}`;
  return input.toolAssumed
    ? `${typed}, ${input.tool.name} assumed`
    : `${typed}, as one reading with the ${input.tool.name}`;
}

const AT_TWENTY = ', brought to 20 °C';

/** Said where a reading was taken warm or cold, and counts as it is at 20 °C. */
function atTwenty(readings: readonly Reading[]): string {
  return readings.some(({ warmthDoubt }) => warmthDoubt !== undefined) ? AT_TWENTY : '';
}

function toolsOf(readings: readonly Reading[]): string {
  return listed([
    ...new Set(readings.map(({ tool, exact, asRead = exact }) => toolThatCounts(tool, asRead).name)),
  ]);
}

/** The limits the user gave himself, one or both. */
export function ownLimits(data: WorksheetData): Limits | undefined {
  return ownLimitsIn({ exact: (name) => exactSize(data, data.worksheet.sizes[name]) });
}
