import { describe, expect, test } from 'vitest';
import { offersOf } from '../../../src/screens/fit-up/offers.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { partOf, typedSize, worksheetOf } from '../worksheets/worksheet-for-test.ts';

const sizes = (given: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(given).map(([name, size]) => [name, typedSize(size)]));
const named = (data: WorksheetData) => offersOf(data).map(({ name }) => name);

describe('a worksheet with its answer offers what can be proved on the machine', () => {
  test.each([
    {
      kind: 'spacer-stack',
      data: worksheetOf('spacer-stack', {
        sizes: sizes({ fixed: '.970' }),
        parts: { a: partOf(1, typedSize('.960')) },
      }),
      names: ['Float', 'Slides free by hand'],
    },
    {
      kind: 'hole-and-pin',
      data: worksheetOf('hole-and-pin', {
        sizes: sizes({ bore: '.4380', pin: '.4375', boreLength: '1.5', reach: '9' }),
        choices: { joint: 'turns' },
      }),
      names: ['Rock at the end of the arm', 'Turns free'],
    },
    {
      kind: 'fit',
      data: worksheetOf('fit', { sizes: sizes({ nominal: '7/16' }), choices: { joint: 'turns' } }),
      names: ['Clearance of the pair'],
    },
    {
      kind: 'bushing',
      data: worksheetOf('bushing', {
        sizes: sizes({ bore: '.510', pin: '.4375' }),
        choices: { joint: 'turns', partMetal: 'low-carbon-steel', bushingMetal: 'bearing-bronze' },
      }),
      names: ['Bore of the bushing, pressed in', 'Bushing against its seat'],
    },
    {
      kind: 'thread-insert',
      data: worksheetOf('thread-insert', { choices: { thread: '7/16-20 UNF' } }),
      names: ['Insert set down, tang out', 'The bolt goes in by hand'],
    },
    {
      kind: 'ring',
      data: worksheetOf('ring', { sizes: sizes({ recess: '2', stem: '1', stayFree: '.020' }) }),
      names: ['Free above the ring', 'Ring clear all round'],
    },
    {
      kind: 'bearing-seat',
      data: worksheetOf('bearing-seat', { sizes: sizes({ between: '2' }), choices: { bearing: 'ball' } }),
      names: ['Sleeve longer than the distance', 'Turns free with the axle torqued'],
    },
    {
      kind: 'bearing-seat',
      data: worksheetOf('bearing-seat', {
        sizes: sizes({ endPlay: '.004', lower: '.001', upper: '.005' }),
        choices: { bearing: 'taper', setBy: 'nut' },
      }),
      names: ['End play of the bearings', 'Turns free'],
    },
    {
      kind: 'bearing-seat',
      data: worksheetOf('bearing-seat', {
        sizes: sizes({ depth: '.5', width: '.504', lower: '.002', upper: '.006' }),
        choices: { bearing: 'seat' },
      }),
      names: ['Stands proud of the face'],
    },
    {
      kind: 'axle-line-up',
      data: worksheetOf('axle-line-up', {
        sizes: sizes({ width: '6.75', hub: '4.412', centre: '2.3' }),
        choices: { layout: 'drum', side: 'right' },
      }),
      names: [],
    },
    {
      kind: 'thread-engagement',
      data: worksheetOf('thread-engagement', {
        choices: { thread: '7/16-20 UNF', grade: 'sae-5', parent: 'low-carbon-steel', held: 'nut' },
      }),
      names: ['Threads past the nut'],
    },
  ] as const)('$kind: $names', ({ data, names }) => {
    expect(named(data)).toEqual(names);
  });

  test('an axle with all it needs offers its centre and its brake', () => {
    const data = worksheetOf('axle-line-up', {
      sizes: sizes({
        width: '6.75',
        hub: '4.412',
        centre: '2.3',
        disc: '.312',
        slot: '.187',
        bracket: '.5',
        float: '.010',
      }),
      choices: { layout: 'front-one-disc', side: 'right' },
    });
    expect(named(data)).toContain('Bracket’s side play');
  });

  test('limits come from the worksheet: .010 to .014 there is .010 to .014 here', () => {
    const data = worksheetOf('spacer-stack', {
      sizes: sizes({ fixed: '.970', lower: '.010', upper: '.014' }),
      parts: { a: partOf(1, typedSize('.960')) },
    });
    const [float] = offersOf(data);
    expect(float?.limits.source).toBe('your own limits');
  });

  test('trail is worked out, not read: steering offers no check, nor does a kind this Slipfit doesn’t know', () => {
    expect(named(worksheetOf('steering-geometry'))).toEqual([]);
    const newer = worksheetOf('ring');
    expect(named({ ...newer, worksheet: { ...newer.worksheet, kind: 'gearbox' } })).toEqual([]);
  });

  test.each([
    'spacer-stack',
    'hole-and-pin',
    'fit',
    'bushing',
    'thread-insert',
    'ring',
    'bearing-seat',
    'axle-line-up',
  ] as const)('a %s without an answer offers nothing yet', (kind) => {
    expect(named(worksheetOf(kind))).toEqual([]);
  });
});
