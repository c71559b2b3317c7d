import { Decimal } from 'decimal.js';
import * as fc from 'fast-check';
import { Fraction } from 'fraction.js';
import { expect, test } from 'vitest';
import { offBy, readEntry, typedWithUnit, type EntryRefusal } from '../../../src/engine/length/entry.ts';
import {
  absolute,
  exactDecimalText,
  isMore,
  lengthOf,
  sameLength,
  toText,
  type Length,
} from '../../../src/engine/length/length.ts';
import { sayEntry } from '../../../src/engine/length/say.ts';

const SURE = { seed: 20_127, numRuns: 3000 };
const Exact = Decimal.clone({ precision: 120 });
const MM_PER = { in: '25.4', thou: '0.0254', mm: '1' } as const;

function sizeOf(typed: string, unit: 'in' | 'thou' | 'mm' = 'in', signed = false): string {
  const result = readEntry(typed, { unit, signed });
  if (!result.ok) throw new Error(`${typed} was refused: ${result.refusal.code}`);
  return toText(result.value.exact);
}

function refusalOf(typed: string, signed = false): EntryRefusal {
  const result = readEntry(typed, { unit: 'in', signed });
  if (result.ok) throw new Error(`${typed} was taken as ${toText(result.value.exact)} mm`);
  return result.refusal;
}

// Every millimetre figure: inches times 25.4 (NIST SP 811, B.8), by hand.
test.each([
  ['.4487', '11.39698'],
  ['0.4487', '11.39698'],
  ['0,4487', '11.39698'],
  [',4487', '11.39698'],
  ['29/64', '11.509375'],
  ['29/64 in', '11.509375'],
  ['29/64"', '11.509375'],
  ['29 / 64 "', '11.509375'],
  ['1/016', '1.5875'],
  ['1-1/2', '38.1'],
  ['1 1/2', '38.1'],
  ['1  1/2 in.', '38.1'],
  ['3/2', '38.1'],
  ['449 thou', '11.4046'],
  ['449thou', '11.4046'],
  ['0.5 THOU', '0.0127'],
  ['11.4 mm', '11.4'],
  ['11,4mm', '11.4'],
  ['11.4 MM', '11.4'],
  ['2 inches', '50.8'],
  ['1 inch', '25.4'],
  ['5″', '127'],
  ['5”', '127'],
  ['7/16“', '11.1125'],
  ['0', '0'],
  ['0/8', '0'],
  ['+.4487', '11.39698'],
  ['+ .4487', '11.39698'],
  ['1/1', '25.4'],
  ['1/128', '0.1984375'],
  ['  .4487\r\n', '11.39698'],
  ['\u00A0.4487\u202F', '11.39698'],
  ['1\u20131/2', '38.1'],
  ['10000 mm', '10000'],
])('%s is read as %s mm', (typed, millimetres) => {
  expect(sizeOf(typed)).toBe(millimetres);
});

test('a figure without a unit is in the unit that is set', () => {
  expect(sizeOf('11.4', 'mm')).toBe('11.4');
  expect(sizeOf('449', 'thou')).toBe('11.4046');
  expect(sizeOf('1/2', 'mm')).toBe('0.5');
});

test('a minus is taken only where a sign has meaning, in front, in any of its shapes', () => {
  expect(refusalOf('-.002').code).toBe('minus-without-meaning');
  for (const minus of ['-', '\u2212', '\u2010', '\u2011', '\u2013', '- '])
    expect(sizeOf(`${minus}.002`, 'in', true)).toBe('-0.0508');
  expect(sizeOf('-1-1/2', 'in', true)).toBe('-38.1');
  expect(sizeOf('-0', 'in', true)).toBe('0');
});

test('what was typed is kept and shown again as typed, with its unit', () => {
  const taken = (typed: string) => {
    const result = readEntry(typed, { unit: 'in' });
    return result.ok ? typedWithUnit(result.value) : 'refused';
  };
  expect(taken(' 29/64 ')).toBe('29/64 in');
  expect(taken('449 thou')).toBe('449 thou');
  expect(taken('1-1/2"')).toBe('1-1/2"');
  // A phone's round quote is the inch mark, and is shown as one.
  expect(taken('1-1/2”')).toBe('1-1/2"');
  expect(taken('0,4487')).toBe('0,4487 in');
});

const decimalTyped = fc
  .tuple(
    fc.nat({ max: 300 }),
    fc.nat({ max: 999_999 }),
    fc.integer({ min: 1, max: 6 }),
    fc.constantFrom('.', ','),
  )
  .map(([whole, places, count, point]) => {
    const after = String(places).padStart(6, '0').slice(0, count);
    return { typed: `${whole === 0 ? '' : whole}${point}${after}`, value: `${whole}.${after}` };
  });

test('any decimal in inches, thou or millimetres is exact (decimal.js)', () => {
  fc.assert(
    fc.property(decimalTyped, fc.constantFrom('in', 'thou', 'mm'), ({ typed, value }, unit) => {
      const want = new Exact(value).times(MM_PER[unit]);
      expect(new Exact(sizeOf(`${typed} ${unit}`)).eq(want)).toBe(true);
      expect(new Exact(sizeOf(typed, unit)).eq(want)).toBe(true);
    }),
    SURE,
  );
});

test('any shop fraction, alone or mixed, is exact (fraction.js)', () => {
  const bottoms = fc.constantFrom(2, 4, 8, 16, 32, 64, 128);
  fc.assert(
    fc.property(
      fc.nat({ max: 300 }),
      bottoms,
      fc.nat(),
      fc.constantFrom('-', ' '),
      (whole, bottom, n, between) => {
        const top = n % bottom;
        const want = new Fraction(top, bottom).add(whole).mul('25.4');
        const typed = whole === 0 ? `${top}/${bottom}` : `${whole}${between}${top}/${bottom}`;
        expect(new Fraction(sizeOf(typed)).equals(want)).toBe(true);
      },
    ),
    SURE,
  );
});

test('a size typed in inches, in thou and in millimetres is the same size', () => {
  fc.assert(
    fc.property(fc.nat({ max: 9_999_999 }), (tenThousandths) => {
      const inches = new Exact(tenThousandths).div('10000').toFixed();
      const thou = new Exact(tenThousandths).div('10').toFixed();
      const millimetres = new Exact(tenThousandths).times('0.00254').toFixed();
      fc.pre(tenThousandths * 2.54e-3 <= 10_000);
      expect(sizeOf(`${thou} thou`)).toBe(sizeOf(inches));
      expect(sizeOf(`${millimetres} mm`)).toBe(sizeOf(inches));
    }),
    SURE,
  );
});

test('a size typed again from its own inch text is the same size', () => {
  fc.assert(
    fc.property(decimalTyped, ({ typed }) => {
      const first = lengthOf(`${sizeOf(typed)} mm`);
      expect(sizeOf(exactDecimalText(first, 'in'))).toBe(toText(first));
    }),
    SURE,
  );
});

const hostile: readonly { typed: string; code: EntryRefusal['code']; at: number }[] = [
  { typed: '', code: 'nothing-typed', at: 0 },
  { typed: '   ', code: 'nothing-typed', at: 0 },
  { typed: '7/0', code: 'fraction-of-zero', at: 2 },
  { typed: '0/0', code: 'fraction-of-zero', at: 2 },
  { typed: '1/3', code: 'fraction-never-ends', at: 2 },
  { typed: '1/256', code: 'fraction-never-ends', at: 2 },
  { typed: '..5', code: 'two-points', at: 1 },
  { typed: '1.2.3', code: 'two-points', at: 3 },
  { typed: '1e9', code: 'power-of-ten', at: 1 },
  { typed: '1E-9', code: 'power-of-ten', at: 1 },
  { typed: '٣', code: 'foreign-digit', at: 0 },
  { typed: '４４９', code: 'foreign-digit', at: 0 },
  { typed: '4'.repeat(40), code: 'too-many-digits', at: 0 },
  { typed: '1'.padEnd(90), code: 'too-long', at: 0 },
  { typed: '🔧', code: 'strange-character', at: 0 },
  { typed: '.44🔧', code: 'strange-character', at: 3 },
  { typed: '1,234.5', code: 'comma-and-point', at: 1 },
  { typed: '1.234,5', code: 'comma-and-point', at: 1 },
  { typed: '0x10', code: 'base-sixteen', at: 1 },
  { typed: '5-', code: 'minus-behind', at: 1 },
  { typed: '5\u2212', code: 'minus-behind', at: 1 },
  { typed: '/8', code: 'fraction-without-top', at: 0 },
  { typed: '/', code: 'fraction-without-top', at: 0 },
  { typed: '1-/8', code: 'fraction-without-top', at: 2 },
  { typed: '5/', code: 'fraction-without-bottom', at: 1 },
  { typed: '5.', code: 'point-without-digits', at: 1 },
  { typed: '5. mm', code: 'point-without-digits', at: 1 },
  { typed: '.', code: 'no-digits', at: 0 },
  { typed: '-', code: 'no-digits', at: 0 },
  { typed: 'NaN', code: 'no-digits', at: 0 },
  { typed: 'Infinity', code: 'no-digits', at: 0 },
  { typed: 'undefined', code: 'no-digits', at: 0 },
  { typed: 'in', code: 'no-digits', at: 0 },
  { typed: '1/2/3', code: 'fraction-bar-twice', at: 3 },
  { typed: '1//2', code: 'fraction-bar-twice', at: 2 },
  { typed: '1.5/2', code: 'fraction-with-point', at: 1 },
  { typed: '1 3/2', code: 'fraction-over-one', at: 3 },
  { typed: '1-2/2', code: 'fraction-over-one', at: 3 },
  { typed: '.5 .6', code: 'two-numbers', at: 2 },
  { typed: '1 2', code: 'two-numbers', at: 1 },
  { typed: '1/2 3', code: 'two-numbers', at: 2 },
  { typed: '1 2 3/4', code: 'two-numbers', at: 0 },
  { typed: '1--1/2', code: 'minus-inside', at: 0 },
  { typed: '1-2', code: 'minus-inside', at: 1 },
  { typed: '1/-2', code: 'minus-inside', at: 2 },
  { typed: '--5', code: 'minus-inside', at: 1 },
  { typed: '-5', code: 'minus-without-meaning', at: 0 },
  { typed: '5 cm', code: 'unknown-unit', at: 2 },
  { typed: "5'", code: 'strange-character', at: 1 },
  { typed: '5 constructor', code: 'unknown-unit', at: 2 },
  { typed: '5 NaN', code: 'unknown-unit', at: 2 },
  { typed: '__proto__', code: 'strange-character', at: 0 },
  { typed: '5\0', code: 'strange-character', at: 1 },
  { typed: '\u200F5', code: 'strange-character', at: 0 },
  { typed: '\u202E5', code: 'strange-character', at: 0 },
  { typed: '5\u200B', code: 'strange-character', at: 1 },
  { typed: '\uD800', code: 'strange-character', at: 0 },
  { typed: '5\uDC00', code: 'strange-character', at: 1 },
  { typed: '½', code: 'strange-character', at: 0 },
  { typed: '5 \u212A', code: 'strange-character', at: 2 }, // the Kelvin sign folds to k when case is ignored
  { typed: '5\u017F', code: 'strange-character', at: 1 }, // the long s folds to s
  { typed: 'in 5', code: 'strange-character', at: 0 },
  { typed: '5 mm 3', code: 'strange-character', at: 2 },
  { typed: '5+3', code: 'strange-character', at: 1 },
  { typed: '10000.1 mm', code: 'out-of-reach', at: 0 },
  { typed: '394 in', code: 'out-of-reach', at: 0 }, // 394 · 25.4 = 10 007.6 mm
  { typed: '999999999999999', code: 'out-of-reach', at: 0 },
  { typed: '-10001 mm', code: 'minus-without-meaning', at: 0 },
];

test.each(hostile)('$typed is refused as $code, at $at', ({ typed, code, at }) => {
  expect(refusalOf(typed)).toMatchObject({ code, at, typed });
});

test('a sign makes no size reach further than 10 m', () => {
  expect(refusalOf('-10000.1 mm', true).code).toBe('out-of-reach');
  expect(sizeOf('-10000 mm', 'in', true)).toBe('-10000');
});

test('every way of refusing has a sentence of its own, with no NaN, undefined or unseen mark in it', () => {
  const sentences = new Map<string, string>();
  for (const { typed } of hostile) {
    const refusal = refusalOf(typed);
    const sentence = sayEntry(refusal);
    expect(sentence).toMatch(/^\p{Lu}|^[“0-9.,/+−-]/u);
    expect(sentence).toMatch(/\.$/);
    expect(sentence).not.toMatch(/NaN|undefined|null|Infinity|\[object|\p{C}/u);
    sentences.set(refusal.code, sentence);
  }
  expect(new Set(sentences.values()).size).toBe(sentences.size);
  expect(sentences.size).toBe(new Set(hostile.map((one) => one.code)).size);
});

test('the twelve hostile entries of a bad day each get a sentence no other one gets', () => {
  const badDay = ['7/0', '1/3', '..5', '1e9', '٣', '4'.repeat(40), '', '🔧', '1,234.5', '0x10', '5-', '/8'];
  expect(new Set(badDay.map((typed) => sayEntry(refusalOf(typed)))).size).toBe(badDay.length);
});

// Texts near a size are the likeliest slips, so half of the tries are made of a size's own characters.
const nearly = fc.array(
  fc.constantFrom(...Array.from('0123456789.,/-+ "'), 'in', 'thou', 'mm', 'e', 'x', '−', '″', '\t', 'NaN'),
  { maxLength: 9 },
);
const anything = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.string({ unit: 'grapheme', maxLength: 20 }),
  fc
    .array(fc.integer({ min: 0, max: 0xff_ff }), { maxLength: 8 })
    .map((units) => String.fromCharCode(...units)),
  nearly.map((parts) => parts.join('')),
);

const LONGEST = lengthOf('10000 mm');

function sizeFault(size: Length, signed: boolean): string {
  const form = signed ? /^-?[0-9]+(\.[0-9]+)?$/ : /^[0-9]+(\.[0-9]+)?$/;
  if (!form.test(toText(size))) return `${toText(size)} is no plain figure`;
  return isMore(absolute(size), LONGEST) ? `${toText(size)} is past 10 m` : 'none';
}

function refusalFault(refusal: EntryRefusal): string {
  const { at, typed } = refusal;
  if (at < 0 || at >= Math.max(1, typed.length)) return `place ${at} lies outside “${typed}”`;
  const sentence = sayEntry(refusal);
  return /NaN|undefined|\p{C}/u.test(sentence) ? sentence : 'none';
}

test('any text at all is a size from 0 to 10 m or a refusal whose place lies in the text', () => {
  fc.assert(
    fc.property(anything, fc.constantFrom('in', 'thou', 'mm'), fc.boolean(), (typed, unit, signed) => {
      const result = readEntry(typed, { unit, signed });
      expect(result.ok ? sizeFault(result.value.exact, signed) : refusalFault(result.refusal)).toBe('none');
    }),
    { ...SURE, numRuns: 10_000 },
  );
});

test('a pasted page of text is refused and its sentence stays a sentence', () => {
  for (const page of [
    'a'.repeat(50_000),
    `1${' '.repeat(50_000)}`,
    `${'in '.repeat(20_000)}1`,
    '/'.repeat(50_000),
  ])
    expect(sayEntry(refusalOf(page)).length).toBeLessThan(160);
});

test('a size lies over, under or on another by a figure that is never negative', () => {
  const half = lengthOf('1/2 in');
  expect(offBy(lengthOf('.502 in'), half)).toMatchObject({ side: 'over' });
  expect(offBy(lengthOf('.498 in'), half)).toMatchObject({ side: 'under' });
  expect(sameLength(offBy(lengthOf('.498 in'), half).by, lengthOf('.002 in'))).toBe(true);
  expect(offBy(half, half).side).toBe('same');
});
