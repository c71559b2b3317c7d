import { describe, expect, test } from 'vitest';
import { keptClass } from '../../../src/engine/fit/kept-class.ts';
import { dividedBy, lengthOf, minus, plus, type Length } from '../../../src/engine/length/length.ts';
import { typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { readReference } from '../../reference/read-csv.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';

function part(size: string, toolId?: string) {
  const tool = usualTools.find(({ id }) => id === toolId);
  const estimate = typedEstimate(lengthOf(size), tool);
  return { tightest: estimate, loosest: estimate };
}

const at12 = { nominal: lengthOf('12 mm'), system: 'iso' } as const;
const atHalf = { nominal: lengthOf('1/2 in'), system: 'ansi' } as const;

describe('the class that two measured parts keep', () => {
  // ISO 286-1, over 10 to 18 mm: H7 0/+18, g6 −6/−17, h6 0/−11, f7 −16/−34 µm.
  test('a 12.010 bore and a 11.990 pin keep H7/g6 first: of as little room as H7/h6, but nearer its middle', () => {
    const { read, proved } = keptClass({ ...at12, bore: part('12.010 mm'), pin: part('11.990 mm') });
    expect(read[0]).toEqual({ fitClass: 'H7/g6', by: 'sizes' });
    expect(read).toContainEqual({ fitClass: 'H7/h6', by: 'sizes' });
    expect(read).not.toContainEqual({ fitClass: 'H7/f6', by: 'sizes' });
    expect(proved[0]).toEqual(read[0]);
  });

  // ANSI B4.1 RC5 over .40 to .71: hole 0/+1.0, pin −1.2/−1.9 thou.
  test('a .5005 bore and a .4985 pin keep RC5', () => {
    expect(keptClass({ ...atHalf, bore: part('.5005 in'), pin: part('.4985 in') }).read[0]).toEqual({
      fitClass: 'RC5',
      by: 'sizes',
    });
  });

  test('off their own sizes they may keep one as a pair, and it says so', () => {
    const { read } = keptClass({ ...atHalf, bore: part('.5023 in'), pin: part('.5003 in') });
    expect(read).toContainEqual({ fitClass: 'RC5', by: 'pair' });
    expect(read.filter(({ by }) => by === 'sizes')).toEqual([]);
  });

  test('nothing is proved by readings that are too coarse, though it reads so', () => {
    const { read, proved } = keptClass({
      ...atHalf,
      bore: part('.5005 in', 'digital-caliper-inside'),
      pin: part('.4985 in', 'digital-caliper'),
    });
    expect(read[0]?.fitClass).toBe('RC5');
    expect(proved).not.toContainEqual({ fitClass: 'RC5', by: 'sizes' });
  });

  test('a pair as loose as no class has none', () => {
    expect(keptClass({ ...atHalf, bore: part('.550 in'), pin: part('.4985 in') })).toEqual({
      read: [],
      proved: [],
    });
  });

  test('the clearance that an indicator read counts before bore less pin', () => {
    const pair = { ...atHalf, bore: part('.5005 in'), pin: part('.4985 in') };
    // .0100 on the indicator is far past RC5's .0029.
    expect(keptClass({ ...pair, slop: part('.0100 in') }).read).not.toContainEqual({
      fitClass: 'RC5',
      by: 'sizes',
    });
  });
});

// ANSI B4.1-1967, each row of the printed tables; ISO 286-1 by its printed tolerances and deviations.
describe('of every printed row', () => {
  const thou = (text: string) => lengthOf(`${text.replace('+', '')} thou`);
  const middle = (one: Length, other: Length) => dividedBy(plus(one, other), 2);
  const exactly = (size: Length) => {
    const estimate = typedEstimate(size);
    return { tightest: estimate, loosest: estimate };
  };

  test.each(
    readReference('ansi_b41.csv').map((row) => ({
      name: `${row.cell('class')} up to ${row.cell('up_to_in')} in`,
      row,
    })),
  )('two parts in the middle of their limits keep $name', ({ row }) => {
    const nominal = lengthOf(`${row.cell('up_to_in')} in`);
    const at = (upper: string, lower: string) =>
      exactly(plus(nominal, middle(thou(row.cell(upper)), thou(row.cell(lower)))));
    const { read, proved } = keptClass({
      nominal,
      system: 'ansi',
      bore: at('hole_upper_thou', 'hole_lower_thou'),
      pin: at('shaft_upper_thou', 'shaft_lower_thou'),
    });
    const keeps = { fitClass: row.cell('class'), by: 'sizes' };
    expect(read).toContainEqual(keeps);
    expect(proved).toContainEqual(keeps);
  });

  // Shafts g (their upper deviation) with IT6, in a hole H of IT7.
  const tolerances = readReference('iso286_it.csv');
  const toleranceAt = (grade: string, upTo: string) => {
    const found = tolerances.find(
      (row) => row.cell('grade') === grade && Number(row.cell('up_to_mm')) >= Number(upTo),
    );
    if (!found) throw new Error(`no ${grade} up to ${upTo} mm`);
    return found.cell('tolerance_um');
  };
  test.each(
    readReference('iso286_deviations.csv')
      .filter((row) => row.cell('kind') === 'shaft' && row.cell('letter') === 'g')
      .map((row) => ({ upTo: row.cell('up_to_mm'), es: row.cell('value_um') })),
  )('H7/g6 up to $upTo mm is kept in the middle of its limits', ({ upTo, es }) => {
    const nominal = lengthOf(`${upTo} mm`);
    const um = (text: string | number) => dividedBy(lengthOf(`${text} mm`), 1000);
    const bore = plus(nominal, middle(um(0), um(toleranceAt('IT7', upTo))));
    const pin = plus(nominal, minus(um(es), dividedBy(um(toleranceAt('IT6', upTo)), 2)));
    const { proved } = keptClass({ nominal, system: 'iso', bore: exactly(bore), pin: exactly(pin) });
    expect(proved).toContainEqual({ fitClass: 'H7/g6', by: 'sizes' });
  });
});
