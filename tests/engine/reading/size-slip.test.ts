import { describe, expect, test } from 'vitest';
import { readEntry, type Entry } from '../../../src/engine/length/entry.ts';
import { lengthOf, sameLength, toText } from '../../../src/engine/length/length.ts';
import { saySizeSlip, sizeSlip, type SlipAround } from '../../../src/engine/reading/size-slip.ts';

function typed(text: string, unit: 'in' | 'mm' | 'thou' = 'in'): Entry {
  const entry = readEntry(text, { unit });
  if (!entry.ok) throw new Error(`${text} is no size`);
  return entry.value;
}
const usual = (least: string, most: string) => ({ least: lengthOf(least), most: lengthOf(most) });
const sleeve: SlipAround = { usual: usual('.1 in', '6 in') };
const bore: SlipAround = { usual: usual('.03 in', '8 in') };
const meant = (entry: Entry, around: SlipAround) => sizeSlip(entry, around)?.meant.map((one) => one.typed);

describe('a size typed on a worksheet', () => {
  // 24.12 mm is .9496 in, the sleeve; a point slipped gives the two others
  test.each([
    ['24.12', 'in', sleeve, ['24.12 mm', '2.412 in', '.2412 in']],
    ['23.590', 'in', sleeve, ['23.590 mm', '2.359 in', '.2359 in']],
    ['.970', 'mm', sleeve, ['.970 in', '9.70 mm', '97.0 mm']],
    ['.4487', 'mm', bore, ['.4487 in', '4.487 mm', '44.87 mm']],
    ['44.87', 'in', bore, ['44.87 mm', '4.487 in', '.4487 in']],
    ['375', 'in', bore, ['3.75 in', '.375 in', '.0375 in']],
  ] as const)('%s %s looks like a slip: %s', (text, unit, around, offered) => {
    const found = meant(typed(text, unit), around);
    expect(found?.map(Number.parseFloat)).toEqual(offered.map(Number.parseFloat));
    expect(found?.map((one) => one.slice(-2))).toEqual(offered.map((one) => one.slice(-2)));
  });

  test('the same digits in the other unit are exactly that', () => {
    const [first] = sizeSlip(typed('24.12'), sleeve)?.meant ?? [];
    expect(first && sameLength(first.exact, lengthOf('24.12 mm'))).toBe(true);
    const [inch] = sizeSlip(typed('.970', 'mm'), sleeve)?.meant ?? [];
    expect(inch && toText(inch.exact)).toBe('24.638'); // .970 · 25.4
  });

  test.each([
    ['6', 'in', sleeve], // right at the end
    ['.1', 'in', sleeve],
    ['.970', 'in', sleeve],
    ['24.12', 'mm', sleeve],
    ['0', 'in', sleeve],
    ['449', 'thou', bore],
  ] as const)('%s %s is usual and not asked about', (text, unit, around) => {
    expect(sizeSlip(typed(text, unit), around)).toBeUndefined();
  });

  test('one step past what is usual is asked about', () => {
    expect(sizeSlip(typed('6.001'), sleeve)).toBeDefined();
    expect(sizeSlip(typed('.0999'), sleeve)).toBeDefined();
  });
});

describe('beside the other sizes', () => {
  test('a bore 25.4 times its pin was typed in the other unit', () => {
    const around = { ...bore, near: [lengthOf('.1969 in')] }; // a 5 mm pin
    expect(meant(typed('5.01'), around)).toEqual(['5.01 mm']);
  });

  test('a bore ten times its pin has a slipped point', () => {
    const slip = sizeSlip(typed('4.490'), { ...bore, near: [lengthOf('.4375 in')] });
    expect(slip?.meant.map(({ exact }) => toText(exact))).toEqual(['11.4046']); // .449 · 25.4
    expect(slip && saySizeSlip(slip, typed('4.490'))).toBe(
      '4.490 in stands beside .4375 in here. Which is meant?',
    );
  });

  test('a part three times longer than its sleeve is asked about, one just too long is not', () => {
    const part: SlipAround = { goesInto: lengthOf('.970 in'), usual: usual('0 in', '14 in') };
    // 9.779 / .970 is over 10: 9.779 mm is .385 in; .9779 in is longer than the sleeve
    expect(meant(typed('9.779'), part)?.[0]).toBe('9.779 mm');
    expect(sizeSlip(typed('.980'), part)).toBeUndefined();
    expect(sizeSlip(typed('2.91'), part)).toBeUndefined(); // 3 times .970 exactly
    expect(sizeSlip(typed('2.911'), part)).toBeDefined();
  });

  test('a sleeve a third of its longest part or less is asked about', () => {
    const whole: SlipAround = { holds: lengthOf('.385 in'), usual: usual('.1 in', '6 in') };
    expect(meant(typed('.12'), whole)).toContain('1.200 in');
    expect(sizeSlip(typed('.130'), whole)).toBeUndefined();
  });

  test('a size like the others is never asked about, however unusual', () => {
    expect(sizeSlip(typed('9.1'), { ...bore, near: [lengthOf('9 in')] })).toBeUndefined();
  });
});
