import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { AnyGiven, GivenPart } from '../../engine/worksheets/given.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type { SizeInput } from '../../store/base/records.ts';
import { partsAreIn } from '../../store/kept/add-part.ts';
import { dialOfCut } from '../common/slides.ts';
import { exactSize, givenNumber, knownSize, readBefore, type WorksheetData } from './worksheet-data.ts';

const kept = new WeakMap<WorksheetData, AnyGiven>();

/** A worksheet's records as the engine sees them: the same for the same records, so that its answer is worked out once. */
export function givenOf(data: WorksheetData): AnyGiven {
  const before = kept.get(data);
  if (before) return before;
  const now = givenNow(data);
  kept.set(data, now);
  return now;
}

function givenNow(data: WorksheetData): AnyGiven {
  const { sizes, choices } = data.worksheet;
  const { reads, graduation } = data.dial;
  return {
    size: (name) => knownSize(data, sizes[name]),
    exact: (name) => exactSize(data, sizes[name]),
    enteredIn: (name) => enteredIn(data, sizes[name]),
    choice: (name) => choices[name],
    number: (name) => givenNumber(data, name),
    has: (name) => {
      if (name === 'parts') return partsAreIn(data.worksheet);
      if (worksheetOf(data.worksheet.kind)?.fields[name]?.enter === 'number')
        return givenNumber(data, name) !== undefined;
      return sizes[name] !== undefined || choices[name] !== undefined;
    },
    parts: partsOf(data),
    drawer: data.drawer.map(({ piece, count }) => ({
      id: piece.id,
      kind: piece.kind,
      name: piece.name,
      count,
      thickness: exactSize(data, piece.thickness),
      inside: exactSize(data, piece.inside),
      outside: exactSize(data, piece.outside),
    })),
    tools: data.tools,
    dial: { reads, graduation: graduation.exact },
    dialFor: (of, infeed) =>
      dialOfCut({ of, machine: 'lathe', ...(infeed && { threading: { infeed } }) }, data.dial),
    readBefore: (name) => readBefore(data, name),
    unit: data.unit,
  };
}

function enteredIn(
  { readings, features }: WorksheetData,
  input: SizeInput | undefined,
): ShownUnit | undefined {
  if (!input) return undefined;
  const entry =
    input.from === 'typed'
      ? input
      : (readings.find((one) => one.featureId === input.featureId) ??
        features.find(({ id }) => id === input.featureId)?.elsewhere?.readings[0]);
  return entry && (entry.unit === 'mm' ? 'mm' : 'in');
}

function partsOf(data: WorksheetData): readonly GivenPart[] {
  return Object.entries(data.worksheet.parts)
    .toSorted(([, a], [, b]) => a.order - b.order)
    .map(([id, { name, count, adjustable, size, leastLength }]) => ({
      id,
      name,
      count,
      adjustable,
      size: knownSize(data, size),
      leastLength: exactSize(data, leastLength),
    }));
}
