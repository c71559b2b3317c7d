import { expect, expectTypeOf, test } from 'vitest';
import * as z from 'zod/mini';
import { fromText, toText, type Length } from '../../../src/engine/length/length.ts';
import type {
  AssemblyStep,
  Check,
  Cut,
  DrawerCount,
  DrawerPiece,
  Feature,
  Job,
  MoneyLine,
  Part,
  Photo,
  PhotoBytes,
  ReadingRecord,
  Recheck,
  SignedSheet,
  SizeInput,
  Stamped,
  ToolRecord,
  Worksheet,
} from '../../../src/store/base/records.ts';
import { recheckSchema, stepSchema } from '../../../src/store/kept/assembly-schema.ts';
import { checkSchema } from '../../../src/store/kept/check-schema.ts';
import { length, parseKept, toKept } from '../../../src/store/base/schema-common.ts';
import { cutSchema } from '../../../src/store/kept/cut-schema.ts';
import { drawerCountSchema, drawerPieceSchema } from '../../../src/store/kept/drawer-schema.ts';
import { featureSchema, readingKind, readingSchema } from '../../../src/store/kept/feature-schema.ts';
import { jobSchema, partSchema } from '../../../src/store/kept/job-schema.ts';
import { moneySchema } from '../../../src/store/kept/money-schema.ts';
import { photoBytesSchema, photoSchema } from '../../../src/store/kept/photo-schema.ts';
import { sheetSchema } from '../../../src/store/kept/sheet-schema.ts';
import { toolSchema } from '../../../src/store/kept/tool-schema.ts';
import { sizeInputSchema, worksheetSchema } from '../../../src/store/kept/worksheet-schema.ts';

// A schema's output as its own fields, without the "and any other field" of a loose object and without readonly,
// which zod doesn't write. Lengths stay what they are.
type Plain<T> = T extends Length | ArrayBuffer
  ? T
  : T extends readonly (infer Item)[]
    ? Plain<Item>[]
    : T extends object
      ? { -readonly [Key in keyof T as KnownKey<T, Key>]: Plain<T[Key]> }
      : T;
type KnownKey<T, Key extends keyof T> = IsLoose<T> extends true ? (string extends Key ? never : Key) : Key;
type IsLoose<T> = string extends keyof T ? (unknown extends T[keyof T] ? true : false) : false;

test('what a schema lets in is exactly the type the rest of the code trusts', () => {
  expectTypeOf<Plain<z.output<typeof jobSchema>>>().toEqualTypeOf<Plain<Job & Stamped>>();
  expectTypeOf<Plain<z.output<typeof partSchema>>>().toEqualTypeOf<Plain<Part & Stamped>>();
  expectTypeOf<Plain<z.output<typeof featureSchema>>>().toEqualTypeOf<Plain<Feature & Stamped>>();
  expectTypeOf<Plain<z.output<typeof readingSchema>>>().toEqualTypeOf<Plain<ReadingRecord & Stamped>>();
  expectTypeOf<Plain<z.output<typeof sizeInputSchema>>>().toEqualTypeOf<Plain<SizeInput>>();
  expectTypeOf<Plain<z.output<typeof worksheetSchema>>>().toEqualTypeOf<Plain<Worksheet & Stamped>>();
  expectTypeOf<Plain<z.output<typeof drawerPieceSchema>>>().toEqualTypeOf<Plain<DrawerPiece & Stamped>>();
  expectTypeOf<Plain<z.output<typeof drawerCountSchema>>>().toEqualTypeOf<Plain<DrawerCount & Stamped>>();
  expectTypeOf<Plain<z.output<typeof toolSchema>>>().toEqualTypeOf<Plain<ToolRecord & Stamped>>();
  expectTypeOf<Plain<z.output<typeof cutSchema>>>().toEqualTypeOf<Plain<Cut & Stamped>>();
  expectTypeOf<Plain<z.output<typeof checkSchema>>>().toEqualTypeOf<Plain<Check & Stamped>>();
  expectTypeOf<Plain<z.output<typeof stepSchema>>>().toEqualTypeOf<Plain<AssemblyStep & Stamped>>();
  expectTypeOf<Plain<z.output<typeof recheckSchema>>>().toEqualTypeOf<Plain<Recheck & Stamped>>();
  expectTypeOf<Plain<z.output<typeof photoSchema>>>().toEqualTypeOf<Plain<Photo & Stamped>>();
  expectTypeOf<Plain<z.output<typeof photoBytesSchema>>>().toEqualTypeOf<Plain<PhotoBytes & Stamped>>();
  expectTypeOf<Plain<z.output<typeof moneySchema>>>().toEqualTypeOf<Plain<MoneyLine & Stamped>>();
  expectTypeOf<Plain<z.output<typeof sheetSchema>>>().toEqualTypeOf<Plain<SignedSheet & Stamped>>();
  // The comparison itself can tell a missing field and a length from a number.
  expectTypeOf<Plain<z.output<typeof jobSchema>>>().not.toEqualTypeOf<Plain<Omit<Job, 'name'> & Stamped>>();
  expectTypeOf<Plain<z.output<typeof cutSchema>>>().not.toEqualTypeOf<Plain<Omit<Cut, 'passes'> & Stamped>>();
  expectTypeOf<Plain<{ exact: Length }>>().not.toEqualTypeOf<Plain<{ exact: number }>>();
});

test.each(['11.509375', '0', '-0.0254', '0.0000000000000000000000000000000000000001', '9999999.9'])(
  '%s mm comes back from the database as the same text',
  (text) => {
    const read = z.safeParse(length, text);
    expect(read.success && toText(read.data)).toBe(text);
    expect(z.encode(length, fromText(text))).toBe(text);
  },
);

test.each([
  '1e3',
  '5.',
  '.5',
  '',
  ' 1',
  '1,5',
  'NaN',
  'Infinity',
  '01',
  '0x10',
  '12345678',
  11.4,
  null,
  { s: 1, e: 0, c: [1] },
])('%j is no kept length', (kept) => {
  expect(z.safeParse(length, kept).success).toBe(false);
});

const reading = {
  id: 'r1',
  stamps: { '*': '001700000000000-0000-phone' },
  featureId: 'f1',
  jobId: 'j1',
  typed: '29/64',
  unit: 'in',
  exact: '11.509375',
  tool: {
    id: 'digital-caliper',
    name: 'digital caliper',
    kind: 'caliper',
    mpe: '0.0254',
    resolution: '0.0127',
    resolutionInMpe: true,
    repeatability: '0.00508',
  },
  zeroChecked: true,
  at: 1_700_000_000_000,
};

test('a kept reading comes in and goes out as the same record, unknown fields with it', () => {
  const kept = { ...reading, temperature: { of: 'part', celsius: 21 } };
  const parsed = parseKept(readingKind, kept);
  expect(parsed.ok && toKept(readingKind, parsed.value)).toEqual({ ok: true, value: kept });
});

test.each([
  { why: 'a length as a number', change: { exact: 11.5 }, field: 'exact' },
  {
    why: 'a tool without its error limit',
    change: { tool: { ...reading.tool, mpe: undefined } },
    field: 'tool.mpe',
  },
  { why: 'a time that is no number', change: { at: '2023' }, field: 'at' },
  { why: 'an unknown unit', change: { unit: 'cubit' }, field: 'unit' },
  {
    why: 'a stamp from the year 9999',
    change: { stamps: { '*': '253370764800000-0000-x' } },
    field: 'stamps.*',
  },
  { why: 'no stamp at all', change: { stamps: {} }, field: 'stamps.*' },
])('a reading with $why is refused by that field', ({ change, field }) => {
  expect(parseKept(readingKind, { ...reading, ...change })).toEqual({ ok: false, field });
});
