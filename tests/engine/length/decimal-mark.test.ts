import { describe, expect, test } from 'vitest';
import { spokenAmount, spokenSize } from '../../../src/engine/cut/say-cuts-numbers.ts';
import { sayFitRefusal, sayLimits } from '../../../src/engine/fit/say-fit.ts';
import { readMoney } from '../../../src/engine/job/money.ts';
import { sayMoney, showHours, showMoney } from '../../../src/engine/job/say-money.ts';
import {
  grouped,
  inPoints,
  listedFigures,
  marked,
  withoutMark,
} from '../../../src/engine/length/decimal-text.ts';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { lengthOf, sameLength } from '../../../src/engine/length/length.ts';
import { readNumber, sayNumber } from '../../../src/engine/length/number-entry.ts';
import { sayEntry } from '../../../src/engine/length/say.ts';
import {
  asTyped,
  figure,
  knownFigure,
  show,
  showBand,
  showBetween,
  signedFigure,
  withUnit,
} from '../../../src/engine/length/show.ts';
import { sizeSlip } from '../../../src/engine/reading/size-slip.ts';
import { inCommaShop } from '../../comma-shop.ts';

const typed = (text: string, unit: 'in' | 'mm' = 'mm') => {
  const entry = readEntry(text, { unit });
  if (!entry.ok) throw new Error(sayEntry(entry.refusal));
  return entry.value;
};

const refusalOf = (text: string) => {
  const entry = readEntry(text, { unit: 'mm' });
  return entry.ok ? '' : sayEntry(entry.refusal);
};

describe('in a shop that types commas', () => {
  inCommaShop();

  // ISO 80000-1:2009, 7.3.2: a comma or a point on the line, and a zero in front of it.
  test.each([
    ['.4487 in', 'mm', '11,397'], // .4487 · 25.4 = 11.39698
    ['11.4 mm', 'mm', '11,40'],
    ['0.4 mm', 'mm', '0,40'],
    ['-0.05 mm', 'mm', '−0,05'],
    ['0.00004 mm', 'mm', '0,000'],
    ['.4487 in', 'in', '0,4487'],
    ['12 mm', 'mm', '12,00'],
    ['0 mm', 'mm', '0'],
  ] as const)('%s is written in %s as %s', (size, unit, shown) => {
    expect(figure(lengthOf(size), unit)).toBe(shown);
  });

  test('bands, limits and differences have the comma too', () => {
    expect(showBand(lengthOf('0.0124 mm'), 'mm')).toBe('±0,012');
    expect(knownFigure(lengthOf('11.4 mm'), lengthOf('0.0124 mm'), 'mm')).toBe('11,400');
    expect(showBetween(lengthOf('11.1 mm'), lengthOf('11.15 mm'), 'mm')).toBe('11,10 to 11,15');
    expect(sayLimits({ lower: lengthOf('12 mm'), upper: lengthOf('12.018 mm') }, 'mm')).toBe(
      '12,000 to 12,018',
    );
    expect(signedFigure(lengthOf('0.05 mm'), 'mm')).toBe('+0,05');
    expect(signedFigure(lengthOf('0.00004 mm'), 'mm')).toBe('0,000');
  });

  test('an inch figure, which no point tells any more, is named by its unit', () => {
    expect(withUnit(figure(lengthOf('.0012 in'), 'in'), 'in')).toBe('0,0012 in');
  });

  test('what is written is read as the very size again', () => {
    for (const text of ['11.397 mm', '0.05 mm', '1204.5 mm', '.4487 in'])
      for (const unit of ['in', 'mm'] as const) {
        const size = lengthOf(text);
        const shown = show(size, unit);
        const points = inPoints(() => show(size, unit));
        expect(sameLength(typed(shown).exact, typed(points).exact)).toBe(true);
      }
  });

  test('what was typed is shown with a comma, whichever mark a gauge or another phone wrote', () => {
    expect(asTyped(typed('11.40'))).toBe('11,40 mm');
    expect(asTyped(typed('11,40'))).toBe('11,40 mm');
    expect(asTyped(typed('29/64', 'in'))).toBe('29/64 in');
  });

  test('between figures in a row stand semicolons', () => {
    expect(listedFigures(['1,5', '2,5', '3'])).toBe('1,5; 2,5 and 3');
    expect(listedFigures(['1,5', '3'])).toBe('1,5 and 3');
    expect(marked('0.05, 0.02 or 0.01 mm')).toBe('0,05; 0,02 or 0,01 mm');
  });

  test('nothing stands between thousands', () => {
    expect(grouped(13_300)).toBe('13300');
    expect(showMoney('12500.50', '€')).toBe('€12500,50');
    expect(showHours({ top: 5n, bottom: 2n })).toBe('2,5 h');
  });

  test('a size meant otherwise is offered with a text that any phone reads', () => {
    // 114 beside pins of 11.4: ten times too large
    const slip = sizeSlip(typed('114'), { near: [lengthOf('11.4 mm')] });
    expect(slip?.meant.map(({ typed: text }) => text)).toEqual(['11.40 mm']);
  });

  test('what can’t be read is answered in the words of the shop', () => {
    expect(refusalOf('')).toContain('11,4 mm or 29/64');
    expect(refusalOf('1,2,3')).toBe('1,2,3 has two decimal commas. Leave one out.');
    expect(refusalOf('12,')).toBe(
      'Nothing stands after the comma in 12,. Type the missing digit, or leave the comma out.',
    );
    const number = readNumber('12.5', { least: 0.5, most: 1.5, unit: '°' });
    expect(number.ok ? '' : sayNumber(number.refusal)).toBe(
      '12,5 ° is outside 0,5 to 1,5 °. Check the figure.',
    );
    expect(sayFitRefusal({ code: 'no-such-class', fitClass: 'H99' }, 'mm')).toContain('H7/g6');
  });

  test('an amount that may be thousands stays a question, and what it says to type is taken', () => {
    for (const text of ['1,250', '1.250']) {
      const read = readMoney(text, 'amount', '€');
      const said = read.ok ? '' : sayMoney(read.refusal);
      expect(said).toContain('may be 1250 or 1,250. Type 1250 or 1,2500.');
    }
    expect(readMoney('1,2500', 'amount', '€')).toMatchObject({ ok: true, value: { text: '1.2500' } });
  });

  test('the voice says comma', () => {
    expect(spokenSize(lengthOf('11.4 mm'), 'mm')).toBe('eleven comma four zero millimetres');
    expect(spokenAmount(lengthOf('0.46 mm'), 'mm')).toBe('zero comma four six millimetres');
  });

  test('what is written for a machine has points, and the shop its commas again behind it', () => {
    expect(inPoints(() => figure(lengthOf('11.4 mm'), 'mm'))).toBe('11.40');
    expect(() =>
      inPoints(() => {
        throw new Error('in the middle of it');
      }),
    ).toThrow('in the middle of it');
    expect(figure(lengthOf('11.4 mm'), 'mm')).toBe('11,40');
  });
});

test('texts that differ in the mark alone are told for one, others are not', () => {
  expect(withoutMark('Fit spacer, 0,4487 in')).toBe(withoutMark('Fit spacer, .4487 in'));
  expect(withoutMark('Fit spacer, 47,25 mm')).toBe(withoutMark('Fit spacer, 47.25 mm'));
  expect(withoutMark('Fit spacer, 47,25 mm')).not.toBe(withoutMark('Fit spacer, 47,26 mm'));
});

test('in a shop that types points a thousand is set apart as before', () => {
  expect([grouped(13_300), grouped(999), grouped(1234.5)]).toEqual(['13,300', '999', '1,234.5']);
  expect(marked('0.05, 0.02 or 0.01 mm')).toBe('0.05, 0.02 or 0.01 mm');
  expect(listedFigures(['1.5', '2.5', '3'])).toBe('1.5, 2.5 and 3');
});
