import { isMore, lengthOf, type Length } from '../../engine/length/length.ts';
import type { SlipOfField } from '../../engine/worksheets/fields.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import type { SlipAround } from '../../engine/reading/size-slip.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { SizeInput } from '../../store/base/records.ts';
import { exactSize, type WorksheetData } from './worksheet-data.ts';

type Usual = NonNullable<SlipAround['usual']>;

const inches = (least: string, most: string): Usual => ({
  least: lengthOf(`${least} in`),
  most: lengthOf(`${most} in`),
});

// Common practice, no source: what is met on motorcycles and trailers, with room to spare.
const USUAL: Readonly<Record<FeatureKind, Usual>> = {
  bore: inches('.03', '8'),
  pin: inches('.03', '8'),
  length: inches('0', '14'),
  depth: inches('0', '8'),
  gap: inches('0', '20'),
  runout: inches('0', '.25'),
};
/** What a size that is typed under this name can be held against. */
export function slipAround(data: WorksheetData, name: string, kind: FeatureKind | undefined): SlipAround {
  const own = ownSlip(data.worksheet.kind, name);
  const given = (other: string) => exactSize(data, data.worksheet.sizes[other]);
  return {
    near: (own?.near ?? []).flatMap((like) => given(like) ?? []),
    ...(own?.holdsParts && { holds: largestPart(data) }),
    ...(own?.goesInto !== undefined && { goesInto: given(own.goesInto) }),
    usual: own?.usual ?? (kind && USUAL[kind]),
  };
}

/** What the kind itself says of its field. */
function ownSlip(kind: string, name: string): SlipOfField | undefined {
  const field = worksheetOf(kind)?.fields[name];
  return field?.enter === 'size' || field?.enter === 'parts' ? field.slip : undefined;
}

/** The same of a part of a stack: it goes into the sleeve. */
export function slipAroundPart(data: WorksheetData): SlipAround {
  return { goesInto: exactSize(data, data.worksheet.sizes['fixed']), usual: USUAL.length };
}

function largestPart(data: WorksheetData): Length | undefined {
  const given = (size: SizeInput | undefined) => exactSize(data, size);
  return Object.values(data.worksheet.parts)
    .flatMap(({ size }) => given(size) ?? [])
    .reduce<Length | undefined>((most, size) => (most && !isMore(size, most) ? most : size), undefined);
}
