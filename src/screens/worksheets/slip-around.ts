import { isMore, lengthOf, type Length } from '../../engine/length/length.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import type { SlipAround } from '../../engine/reading/size-slip.ts';
import type { SizeInput } from '../../store/records.ts';
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
const USUAL_OF: Readonly<Record<string, Usual>> = {
  'spacer-stack/fixed': inches('.1', '6'),
  'axle-line-up/width': inches('1', '20'),
  'axle-line-up/hub': inches('.5', '14'),
};
const FRAME = inches('0', '100');
const LIMIT = inches('0', '.25');
const READ_IN_PLACE = inches('0', '2');
const LIMIT_NAMES: ReadonlySet<string> = new Set(['lower', 'upper', 'aim']);

/** What a size that is typed under this name can be held against. */
export function slipAround(data: WorksheetData, name: string, kind: FeatureKind | undefined): SlipAround {
  const { worksheet } = data;
  const partner = { bore: 'pin', pin: 'bore' }[name];
  const other = partner === undefined ? undefined : exactSize(data, worksheet.sizes[partner]);
  const isWhole = worksheet.kind === 'spacer-stack' && name === 'fixed';
  const isBetweenLegs = worksheet.kind === 'axle-line-up' && name !== 'width';
  return {
    ...(other && { near: [other] }),
    ...(isWhole && { holds: largestPart(data) }),
    ...(isBetweenLegs && { goesInto: exactSize(data, worksheet.sizes['width']) }),
    usual: usualOf(worksheet.kind, name, kind),
  };
}

/** The same of a part of a stack: it goes into the sleeve. */
export function slipAroundPart(data: WorksheetData): SlipAround {
  return { goesInto: exactSize(data, data.worksheet.sizes['fixed']), usual: USUAL.length };
}

function usualOf(worksheet: string, name: string, kind: FeatureKind | undefined): Usual | undefined {
  if (LIMIT_NAMES.has(name)) return LIMIT;
  if (worksheet === 'steering-geometry') return FRAME;
  if (/^direct|Read$/.test(name)) return READ_IN_PLACE;
  return USUAL_OF[`${worksheet}/${name}`] ?? (kind && USUAL[kind]);
}

function largestPart(data: WorksheetData): Length | undefined {
  const given = (size: SizeInput | undefined) => exactSize(data, size);
  return Object.values(data.worksheet.parts)
    .flatMap(({ size }) => given(size) ?? [])
    .reduce<Length | undefined>((most, size) => (most && !isMore(size, most) ? most : size), undefined);
}
