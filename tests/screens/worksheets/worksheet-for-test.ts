import type { WorksheetKind } from '../../../src/engine/worksheets/all-worksheets.ts';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { lengthOf, sameLength, type Length } from '../../../src/engine/length/length.ts';
import {
  usualTools,
  type FeatureKind,
  type MeasuringTool,
} from '../../../src/engine/reading/measuring-tool.ts';
import { usualDial } from '../../../src/screens/common/use-dial.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import type {
  Feature,
  ReadingRecord,
  SizeInput,
  StackPartInput,
  TypedSize,
  Worksheet,
} from '../../../src/store/base/records.ts';

const job = {
  id: 'job',
  name: 'Outfit',
  what: '',
  systems: [],
  touchesNone: true,
  state: 'open',
  customerNote: '',
  demo: false,
  createdAt: 0,
  touchedAt: 0,
} as const;

type Given = Partial<Pick<Worksheet, 'sizes' | 'choices' | 'parts'>> &
  Partial<Pick<WorksheetData, 'features' | 'readings' | 'unit' | 'tools'>>;

/** A worksheet and what it is worked out from, as a screen would have read it. */
export function worksheetOf(kind: WorksheetKind, given: Given = {}): WorksheetData {
  const { sizes = {}, choices = {}, parts = {} } = given;
  const { features = [], readings = [], unit = 'in', tools = usualTools } = given;
  return {
    job,
    worksheet: {
      id: 'sheet',
      jobId: 'job',
      kind,
      title: 'Pivot',
      sizes,
      choices,
      parts,
      createdAt: 0,
      touchedAt: 0,
    },
    features,
    readings,
    tools,
    drawer: [],
    unit,
    dial: usualDial,
  };
}

export function tool(id: string): MeasuringTool {
  const found = usualTools.find((one) => one.id === id);
  if (!found) throw new Error(`no tool ${id}`);
  return found;
}

/** A size typed on the worksheet, in inches unless its text says otherwise. */
export function typedSize(typed: string, measuredWith?: MeasuringTool): TypedSize {
  const entry = readEntry(typed, { unit: 'in', signed: true });
  if (!entry.ok) throw new Error(`${typed}: ${entry.refusal.code}`);
  return { from: 'typed', ...entry.value, ...(measuredWith && { tool: measuredWith }) };
}

export function ofFeature(featureId: string): SizeInput {
  return { from: 'feature', featureId };
}

export function featureOf(id: string, kind: FeatureKind): Feature {
  return { id, jobId: 'job', kind, name: `Left ${kind}`, createdAt: 0 };
}

let logged = 0;

/** A reading of a feature, as kept. */
export function readingOf(
  featureId: string,
  typed: string,
  more: Partial<ReadingRecord> = {},
): ReadingRecord {
  logged += 1;
  const { exact, unit } = typedSize(typed);
  return {
    id: `r${logged}`,
    featureId,
    jobId: 'job',
    exact,
    typed,
    unit,
    tool: tool('dial-bore-gauge'),
    zeroChecked: false,
    at: logged,
    ...more,
  };
}

export const struckOut = { struckOut: { why: 'burr', at: 99 } } as const;

export function partOf(order: number, size?: SizeInput): StackPartInput {
  return { name: `part ${order}`, order, count: 1, adjustable: true, ...(size && { size }) };
}

/** Whether a length is exactly this size; says false for a length that isn't there. */
export function is(length: Length | undefined, text: string): boolean {
  return length !== undefined && sameLength(length, lengthOf(text));
}
