import { byLength, isMore, plus } from '../../engine/length/length.ts';
import { canMeasure, usualTools, type FeatureKind } from '../../engine/reading/measuring-tool.ts';
import type { SizeInput, TypedSize } from '../../store/base/records.ts';
import { assumedElsewhere, type AssumedSize } from './assumed-elsewhere.ts';
import { assumedChoices } from './assumed-choices.ts';
import type { WorksheetData } from './worksheet-data.ts';
import { judgeWorksheet } from './worksheet-judge.ts';
import { fieldNamed } from './kind-fields.ts';

/**
 * All that a worksheet's verdict takes for granted: sizes of another part, choices that nobody made, and the tool of a size that was only typed,
 * where the verdict would be another one by the next coarser tool. Every place that says a verdict asks this one.
 */
export function assumedIn(data: WorksheetData): readonly AssumedSize[] {
  const [first, ...more] = sizesOfAssumedTools(data);
  const hangsOnTool =
    first !== undefined && judgeWorksheet(coarser(data)).found !== judgeWorksheet(data).found;
  const others = [...assumedElsewhere(data), ...assumedChoices(data)];
  if (!hangsOnTool) return others;
  const names = [...new Set([first, ...more].map(({ tool }) => tool))];
  return [...others, { field: first.field, words: names.join(' and '), asked: 'Which tool?' }];
}

/** Where the sizes stand whose tool nobody named, and which was taken for each. */
function sizesOfAssumedTools({
  worksheet: { sizes, parts },
}: WorksheetData): readonly { readonly field: string; readonly tool: string }[] {
  const typed: readonly (readonly [string, SizeInput | undefined])[] = [
    ...Object.entries(sizes),
    ...Object.entries(parts).map(([id, { size }]) => [`part/${id}/size`, size] as const),
  ];
  return typed.flatMap(([field, input]) =>
    isAssumed(input) && input.tool ? [{ field, tool: input.tool.name }] : [],
  );
}

function isAssumed(input: SizeInput | undefined): input is TypedSize {
  return input?.from === 'typed' && input.toolAssumed === true && input.tool !== undefined;
}

/** The worksheet as it would be had every size whose tool nobody named been read by the next coarser one. */
function coarser(data: WorksheetData): WorksheetData {
  const { worksheet } = data;
  const parts = Object.entries(worksheet.parts).map(
    ([id, { size, ...part }]) => [id, { ...part, ...(size && { size: byCoarser(size, 'length') }) }] as const,
  );
  const sizes = Object.entries(worksheet.sizes).map(
    ([name, size]) => [name, byCoarser(size, kindRead(worksheet, name))] as const,
  );
  return {
    ...data,
    worksheet: { ...worksheet, sizes: Object.fromEntries(sizes), parts: Object.fromEntries(parts) },
  };
}

/** What a worksheet's size is read as; undefined of one that nobody measures. */
export function kindRead(worksheet: WorksheetData['worksheet'], name: string): FeatureKind | undefined {
  const field = fieldNamed(worksheet, name);
  return field?.enter === 'size' ? field.measures : undefined;
}

/**
 * The finest usual tool of another kind that is coarser than the one assumed; where there is none, one that may be off
 * twice as far (chosen, not published: a worn caliper).
 */
function byCoarser(input: SizeInput, kind: FeatureKind | undefined): SizeInput {
  if (!isAssumed(input) || !input.tool) return input;
  const { tool, exact } = input;
  const next = usualTools
    .filter(
      (one) => one.kind !== tool.kind && isMore(one.mpe, tool.mpe) && kind && canMeasure(one, kind, exact),
    )
    .toSorted((a, b) => byLength(a.mpe, b.mpe))[0];
  return { ...input, tool: next ?? { ...tool, mpe: plus(tool.mpe, tool.mpe) } };
}
