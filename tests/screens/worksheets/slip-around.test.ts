import { describe, expect, test } from 'vitest';
import type { Field, Fields } from '../../../src/engine/worksheets/fields.ts';
import {
  isWorksheetKind,
  worksheetKinds,
  worksheets,
  type WorksheetKind,
} from '../../../src/engine/worksheets/all-worksheets.ts';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { sizeSlip } from '../../../src/engine/reading/size-slip.ts';
import { slipAround } from '../../../src/screens/worksheets/slip-around.ts';
import { typedSize, worksheetOf } from './worksheet-for-test.ts';

/** Also one that is only asked for where first choices call for it. */
function fieldOf(kind: WorksheetKind, name: string): Field | undefined {
  const fields: Fields = worksheets[kind].fields;
  return fields[name];
}

/** What a field asks about a size typed in it: the likeliest of what was meant, undefined where nothing is asked. */
function meant(place: string, typed: string, sizes: Readonly<Record<string, string>> = {}) {
  const [kind, name] = place.split('/');
  if (kind === undefined || name === undefined || !isWorksheetKind(kind)) throw new Error(place);
  const field = fieldOf(kind, name);
  if (field?.enter !== 'size') throw new Error(place);
  const given = Object.fromEntries(Object.entries(sizes).map(([of, size]) => [of, typedSize(size)]));
  const entry = readEntry(typed, { unit: 'in', signed: true });
  if (!entry.ok) throw new Error(entry.refusal.code);
  const around = slipAround(worksheetOf(kind, { sizes: given }), name, field.measures);
  return sizeSlip(entry.value, around)?.meant[0]?.typed;
}

describe('a size that looks like a slip is asked about in each field that takes one', () => {
  test.each([
    // millimetres typed as inches
    ['bushing/wall', '8 in', '8 mm'],
    ['bushing/length', '25 in', '25 mm'],
    ['bushing/plating', '.2 in', '.2 mm'],
    ['hole-and-pin/wall', '6 in', '6 mm'],
    ['hole-and-pin/thickness', '12 in', '12 mm'],
    ['hole-and-pin/offBy', '2 in', '2 mm'],
    ['thread-insert/centreToEdge', '15 in', '15 mm'],
    ['ring/blankThickness', '3 in', '3 mm'],
    ['thread-engagement/nutHeight', '8 in', '8 mm'],
    ['thread-engagement/boltLength', '40 in', '40 mm'],
    ['steering-geometry/frontRadius', '305 in', '305 mm'],
    // inches typed as millimetres
    ['bushing/wall', '.3 mm', '.3 in'],
    ['bushing/length', '.98 mm', '.98 in'],
    ['hole-and-pin/boreLength', '1.5 mm', '1.5 in'],
    ['thread-insert/thickness', '.5 mm', '.5 in'],
    ['steering-geometry/frontRadius', '12 mm', '12 in'],
    ['steering-geometry/wheelbase', '55 mm', '55 in'],
    ['steering-geometry/forkLength', '30 mm', '30 in'],
  ])('%s: %s is asked, %s', (place, typed, asked) => {
    expect(meant(place, typed)).toBe(asked);
  });

  test.each([
    // beside the sizes that it goes with: 25.4, ten times, a tenth
    ['bushing/nominal', '12.7 in', { pin: '.498' }, '12.7 mm'],
    ['bushing/nominal', '5.0 in', { pin: '.498' }, '.500 in'],
    ['fit/nominal', '30 in', { pin: '30 mm' }, '30 mm'],
    ['fit/nominal', '.5 mm', { bore: '.501' }, '.5 in'],
    ['bushing/reamTo', '.0625 in', { bore: '.605' }, '.625 in'],
    ['bushing/reamed', '6.251 in', { reamTo: '.625', bore: '.605' }, '.6251 in'],
    ['bushing/outside', '15.91 in', { reamTo: '.625' }, '15.91 mm'],
  ])('%s: %s beside %o is asked, %s', (place, typed, sizes, asked) => {
    expect(meant(place, typed, sizes)).toBe(asked);
  });
});

describe('a usual size is never asked about', () => {
  test.each([
    ['bushing/wall', '.300 in'],
    ['bushing/wall', '8 mm'],
    ['bushing/length', '1 in'],
    ['bushing/length', '22 mm'],
    ['bushing/plating', '.0005 in'],
    ['bushing/plating', '0.012 mm'],
    ['bushing/leastBushingWall', '.06 in'],
    ['bushing/leastWall', '1 mm'],
    ['hole-and-pin/reach', '18 in'],
    ['hole-and-pin/reach', '450 mm'],
    ['hole-and-pin/boreLength', '9.5 in'],
    ['hole-and-pin/wall', '.25 in'],
    ['hole-and-pin/thickness', '6 mm'],
    ['thread-insert/leastFloor', '.06 in'],
    ['ring/blankThickness', '.063 in'],
    ['ring/outMost', '.010 in'],
    ['thread-engagement/headWasher', '1.6 mm'],
    ['thread-engagement/nutHeight', '8 mm'],
    ['thread-engagement/boltLength', '60 mm'],
    ['steering-geometry/frontRadius', '305 mm'],
    ['steering-geometry/wheelbase', '1420 mm'],
    ['steering-geometry/wheelbase', '56 in'],
    ['steering-geometry/clampOffset', '30 mm'],
    ['steering-geometry/axleLead', '-1 in'],
    // trail that is wanted, no limit of a fit
    ['steering-geometry/lower', '3.5 in'],
    ['steering-geometry/upper', '110 mm'],
  ])('%s: %s', (place, typed) => {
    expect(meant(place, typed)).toBeUndefined();
  });

  test('nor a reamer a size up, nor a nominal beside its worn pin', () => {
    expect(meant('bushing/reamTo', '.625 in', { bore: '.505', pin: '.500' })).toBeUndefined();
    expect(meant('bushing/outside', '.6265 in', { reamTo: '.625', bore: '.505' })).toBeUndefined();
    expect(meant('bushing/nominal', '.5 in', { pin: '.498', bore: '.515' })).toBeUndefined();
  });
});

test('every field that takes a size knows what is usual in it', () => {
  const without = worksheetKinds.flatMap((kind) =>
    Object.entries<Field>(worksheets[kind].fields).flatMap(([name, field]) =>
      field.enter === 'size' && !slipAround(worksheetOf(kind), name, field.measures).usual
        ? [`${kind}/${name}`]
        : [],
    ),
  );
  expect(without).toEqual([]);
});
