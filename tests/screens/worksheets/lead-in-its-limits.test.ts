import { describe, expect, test } from 'vitest';
import { lengthOf, isLess, isMore } from '../../../src/engine/length/length.ts';
import { figureBetween, showBetween } from '../../../src/engine/length/show.ts';
import { worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import { blocksOf } from '../../../src/engine/worksheets/account.ts';
import { isWorksheetKind } from '../../../src/engine/worksheets/all-worksheets.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { tool, typedSize, worksheetOf } from './worksheet-for-test.ts';

// A figure that is cut to stands inside the limits beside it, as they are shown and as they are.

const number = (text: string) => Number(text.replace('−', '-'));

function leadsOf(data: WorksheetData) {
  const { kind } = data.worksheet;
  if (!isWorksheetKind(kind)) throw new Error(kind);
  return blocksOf(worksheets[kind].account(givenOf(data)), 'lead').flatMap(({ figure, limits = '' }) => {
    const [, from, to] = /([\d.]+) to ([\d.]+)/.exec(limits) ?? [];
    return from !== undefined && to !== undefined ? [{ figure, from, to }] : [];
  });
}

const dialOf = (typed: string, unit: 'in' | 'mm') => ({
  reads: 'diameter' as const,
  graduation: { typed, unit, exact: lengthOf(`${typed} ${unit}`) },
});

describe('a figure and its limits, rounded each its own way', () => {
  test.each([
    { size: '.44882', lower: '.44881', upper: '.44995', unit: 'in', shown: '.4489' },
    { size: '.44687', lower: '.4435', upper: '.44688', unit: 'in', shown: '.4468' },
    { size: '.4470', lower: '.4462', upper: '.4471', unit: 'in', shown: '.447' },
    // limits closer than a tenth get a place more, and so does the figure
    { size: '.082535', lower: '.08253', upper: '.08254', unit: 'in', shown: '.08254' },
    { size: '26.0602', lower: '26.0601', upper: '26.080', unit: 'mm', shown: '26.061' },
    // one that is past its limits is never shown as if it weren't
    { size: '.4500', lower: '.4462', upper: '.4471', unit: 'in', shown: '.450' },
  ] as const)('$size between $lower and $upper is $shown', ({ size, lower, upper, unit, shown }) => {
    const [exact, from, to] = [size, lower, upper].map((text) => lengthOf(`${text} ${unit}`));
    if (!exact || !from || !to) throw new Error('three sizes');
    expect(figureBetween(exact, from, to, unit)).toBe(shown);
    const [least, most] = showBetween(from, to, unit).split(' to ');
    if (isLess(exact, from) || isMore(exact, to)) return;
    expect(number(shown)).toBeGreaterThanOrEqual(number(least ?? ''));
    expect(number(shown)).toBeLessThanOrEqual(number(most ?? ''));
  });
});

describe('a lead', () => {
  const bushed = { joint: 'turns', partMetal: 'cast-iron', bushingMetal: 'brass-360' };
  const cases: readonly { readonly what: string; readonly data: WorksheetData }[] = [
    {
      what: 'of a fit in inches on a metric dial',
      data: {
        ...worksheetOf('fit', {
          sizes: { nominal: typedSize('11.12 mm'), bore: typedSize('11.40 mm'), pin: typedSize('.4504') },
          choices: { joint: 'turns' },
        }),
        dial: dialOf('0.05', 'mm'),
      },
    },
    {
      what: 'of a bushing in millimeters on a dial in inches',
      data: worksheetOf('bushing', {
        unit: 'mm',
        sizes: {
          bore: typedSize('.760', tool('dial-bore-gauge')),
          pin: typedSize('.625', tool('micrometer-0-1')),
          wall: typedSize('.8'),
          length: typedSize('1'),
          reamed: typedSize('.7631', tool('dial-bore-gauge')),
        },
        choices: bushed,
      }),
    },
    {
      what: 'of a sleeve between ball bearings',
      data: worksheetOf('bearing-seat', {
        unit: 'mm',
        sizes: { between: typedSize('2.193'), upper: typedSize('0.025 mm') },
        choices: { bearing: 'ball' },
      }),
    },
    {
      what: 'of a ring held down by its recess',
      data: {
        ...worksheetOf('ring', {
          sizes: {
            recess: typedSize('1.493'),
            stem: typedSize('.750'),
            depth: typedSize('2.3 mm'),
            blankOutside: typedSize('1.733'),
            blankInside: typedSize('17.4 mm'),
            blankThickness: typedSize('3.299 mm'),
          },
        }),
        dial: dialOf('0.05', 'mm'),
      },
    },
  ];

  test.each(cases)('$what is never past the limits beside it', ({ data }) => {
    const leads = leadsOf(data);
    expect(leads.length).toBeGreaterThan(0);
    for (const { figure, from, to } of leads) {
      expect(number(figure), `${figure} in ${from} to ${to}`).toBeGreaterThanOrEqual(number(from));
      expect(number(figure), `${figure} in ${from} to ${to}`).toBeLessThanOrEqual(number(to));
    }
  });

  test('of taper rollers whose play the reading can’t prove: the shim by the sizes alone, its limits not crossed', () => {
    const data = worksheetOf('bearing-seat', {
      unit: 'mm',
      sizes: {
        endPlay: typedSize('0.30 mm', tool('metric-caliper-inside')),
        lower: typedSize('0.025 mm'),
        upper: typedSize('0.100 mm'),
        shim: typedSize('2.45 mm'),
      },
      choices: { bearing: 'taper', setBy: 'shim-between' },
    });
    // .30 − .100 = .200 to .30 − .025 = .275 to lose: 2.45 less that is 2.175 to 2.250
    const [lead] = blocksOf(worksheets['bearing-seat'].account(givenOf(data)), 'lead');
    expect(lead?.limits).toBe('by the sizes alone from 2.175 to 2.250 mm');
    expect(lead && number(lead.figure)).toBeGreaterThan(2.175);
    expect(lead && number(lead.figure)).toBeLessThan(2.25);
  });
});
