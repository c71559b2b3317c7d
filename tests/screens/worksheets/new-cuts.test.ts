import { describe, expect, test } from 'vitest';
import {
  isTaken,
  machineOf,
  materialOf,
  picksText,
  readPicks,
  withKnownMaterials,
  withMachine,
  withMaterial,
  withTaken,
} from '../../../src/screens/worksheets/cut-picks.ts';
import { newCuts } from '../../../src/screens/worksheets/new-cuts.ts';
import { spacerStackWorksheet } from '../../../src/engine/worksheets/spacer-stack/worksheet.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import {
  onePartId,
  onePartPlaces,
  onePartWay,
} from '../../../src/screens/worksheets/spacer-stack/one-part-way.ts';
import {
  isWorksheetKind,
  worksheetKinds,
  worksheets,
  type WorksheetKind,
} from '../../../src/engine/worksheets/all-worksheets.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import {
  featureOf,
  ofFeature,
  partOf,
  readingOf,
  struckOut,
  tool,
  typedSize,
  worksheetOf,
} from './worksheet-for-test.ts';

/** Sleeve .970, .968 in it: the .385 spacer is faced to .377. */
function stack(more: Parameters<typeof worksheetOf>[1] = {}): WorksheetData {
  return worksheetOf('spacer-stack', {
    sizes: {
      fixed: typedSize('.970'),
      lower: typedSize('.008'),
      upper: typedSize('.012'),
      aim: typedSize('.010'),
    },
    choices: { want: 'float' },
    parts: {
      a: { ...partOf(1, typedSize('.583')), adjustable: false },
      b: partOf(2, typedSize('.385')),
    },
    ...more,
  });
}

function firstWay(data: WorksheetData) {
  const [way] = spacerStackWorksheet.cuts(givenOf(data));
  if (!way) throw new Error('nothing to cut');
  return way;
}

test('a part that is cut again is of the material it was said to be, until another is said', () => {
  const way = firstWay(stack());
  const place = { way, index: 0 };
  const cuts = [{ part: 'part 2', material: 'stainless-303' as const }, { part: 'part 1' }];
  expect(materialOf(withKnownMaterials([], cuts), place)).toBe('stainless-303');
  const said = withMaterial([], place, 'brass-360');
  expect(materialOf(withKnownMaterials(said, cuts), place)).toBe(materialOf(said, place));
});

describe('a cut that goes on the list', () => {
  test('has the worksheet’s figures as typed text, blank and all', () => {
    const data = stack();
    const [cut] = newCuts(data, firstWay(data), []);
    expect(cut).toMatchObject({
      jobId: 'job',
      worksheetId: 'sheet',
      name: 'Part 2, faced to length',
      part: 'part 2',
      operation: 'face',
      machine: 'lathe',
      cuttingTool: 'hss',
      blank: { typed: '.385', unit: 'in' },
      target: { typed: '.377', unit: 'in' },
      lower: { typed: '.375' },
      upper: { typed: '.379' },
    });
  });

  test('carries the readings that count for its worksheet, none struck out and none of another feature', () => {
    const micrometer = { tool: tool('micrometer-0-1') };
    const data = stack({
      features: [{ ...featureOf('spacer', 'length'), partId: 'kept-part' }, featureOf('other', 'length')],
      readings: [
        readingOf('spacer', '.385', micrometer),
        readingOf('spacer', '.395', { ...micrometer, ...struckOut }),
        readingOf('other', '.385', micrometer),
      ],
      parts: {
        a: { ...partOf(1, typedSize('.583')), adjustable: false },
        b: partOf(2, ofFeature('spacer')),
      },
    });
    const [cut] = newCuts(data, firstWay(data), []);
    expect(cut?.basis?.readings).toEqual([data.readings[0]?.id]);
    expect(cut?.partId).toBe('kept-part');
  });

  test('is left out where it was unticked, and back where it is ticked again', () => {
    const data = stack();
    const place = { way: firstWay(data), index: 0 };
    const without = withTaken([], place);
    expect(isTaken(without, place)).toBe(false);
    expect(newCuts(data, place.way, without)).toEqual([]);
    expect(isTaken(withTaken(without, place), place)).toBe(true);
  });

  test('is of the material and on the machine that was tapped, also when the draft is read again', () => {
    const data = stack();
    const place = { way: firstWay(data), index: 0 };
    const tapped = withMachine(
      withMachine(withMaterial([], place, 'brass-360'), place, 'mill'),
      place,
      'bench',
    );
    const again = readPicks(picksText(tapped));
    expect([materialOf(again, place), machineOf(again, place)]).toEqual(['brass-360', 'bench']);
    expect(newCuts(data, place.way, again)[0]).toMatchObject({ material: 'brass-360', machine: 'bench' });
  });
});

test('a material that was said for one cut of a part holds for its others, not for another part’s', () => {
  const offer = { operation: 'turn', of: 'outside', limitsFrom: '' } as const;
  const size = { target: typedSize('.5').exact, lower: typedSize('.5').exact, upper: typedSize('.5').exact };
  const way = {
    id: 'w',
    name: '',
    offers: [
      { ...offer, ...size, name: 'a', part: 'the bushing' },
      { ...offer, ...size, name: 'b', part: 'the bushing' },
      { ...offer, ...size, name: 'c', part: 'pin' },
    ],
  };
  const picks = withMaterial([], { way, index: 0 }, 'acetal');
  expect([0, 1, 2].map((index) => materialOf(picks, { way, index }))).toEqual([
    'acetal',
    'acetal',
    undefined,
  ]);
});

describe('one part in place of several', () => {
  test('stands in an address by the places of the parts', () => {
    expect(onePartPlaces(onePartId([0, 2]))).toEqual([0, 2]);
    expect(onePartPlaces('trim-1')).toEqual([]);
    // one row of several pieces is a place too
    expect(onePartPlaces('one-part-1')).toEqual([1]);
    expect(onePartPlaces('one-part-')).toEqual([]);
    expect(onePartPlaces('one-part-x')).toEqual([]);
  });

  test('is cut .960: sleeve .970 less a float of .010', () => {
    const data = stack();
    const way = onePartWay(data, [0, 1]);
    expect(way && newCuts(data, way, [])[0]).toMatchObject({ target: { typed: '.96' } });
    expect(onePartWay(data, [0])).toBeUndefined();
  });
});

test.each(worksheetKinds)('a %s with nothing given asks for no cut', async (kind) => {
  expect(await waysOf(kind)).toEqual([]);
});

/** A kind of the registry says them itself. */
async function waysOf(kind: WorksheetKind, given: Parameters<typeof worksheetOf>[1] = {}) {
  const data = worksheetOf(kind, given);
  const registered = isWorksheetKind(kind) ? worksheets[kind] : undefined;
  return registered?.cuts(givenOf(data));
}

describe('what each kind hands over', () => {
  async function names(kind: WorksheetKind, given: Parameters<typeof worksheetOf>[1]) {
    const ways = (await waysOf(kind, given)) ?? [];
    return ways.flatMap(({ offers }) => offers.map(({ name }) => name));
  }

  test('a hole worn .012 over its bolt: the insert, or the hole opened for a larger pin', async () => {
    const cuts = await names('hole-and-pin', {
      sizes: { bore: typedSize('.4420'), pin: typedSize('.4300'), wall: typedSize('.400') },
      choices: {
        joint: 'located',
        thread: '7/16-20 UNF',
        shankPasses: 'no',
        facesCarry: 'yes',
        partMetal: 'low-carbon-steel',
      },
    });
    expect(cuts).toContain('Hole, drilled 29/64, follows the hole');
    expect(cuts).toContain('Hole, STI tap 7/16-20 UNF');
    expect(cuts).toContain('Bore, reamed .5010 in, follows the wear');
  });

  test('a fit with a bore: its pin', async () => {
    const sizes = { nominal: typedSize('1/2'), bore: typedSize('.5050') };
    expect(await names('fit', { sizes, choices: { joint: 'turns' } })).toEqual(['Pin, made new']);
  });

  test('an insert in solid metal: drill and tap', async () => {
    expect(await names('thread-insert', { choices: { thread: 'M8x1.25', metal: 'aluminium' } })).toEqual([
      'Hole, drilled 8.4 mm',
      'Hole, STI tap M8 × 1.25',
    ]);
  });

  test('a ring in a recess round a stem: inside, then outside', async () => {
    const sizes = { recess: typedSize('1.500'), stem: typedSize('.750') };
    expect(await names('ring', { sizes })).toEqual(['Ring, inside', 'Ring, outside']);
  });

  test('bearings: the sleeve between them, and a recess that is too shallow', async () => {
    expect(
      await names('bearing-seat', { sizes: { between: typedSize('2.000') }, choices: { bearing: 'ball' } }),
    ).toEqual(['Sleeve, made new']);
    const seat = {
      depth: typedSize('.580'),
      width: typedSize('.5906'),
      lower: typedSize('.001'),
      upper: typedSize('.003'),
    };
    expect(await names('bearing-seat', { sizes: seat, choices: { bearing: 'seat' } })).toEqual([
      'Recess, made deeper',
    ]);
  });

  test('taper rollers set by a shim between them: the shim faced', async () => {
    const sizes = {
      endPlay: typedSize('.008'),
      shim: typedSize('.060'),
      lower: typedSize('.002'),
      upper: typedSize('.004'),
    };
    expect(
      await names('bearing-seat', { sizes, choices: { bearing: 'taper', setBy: 'shim-between' } }),
    ).toEqual(['Shim, faced to thickness']);
  });

  test('an axle: all its spacers', async () => {
    const given = {
      width: '6.750',
      hub: '4.412',
      centre: '2.300',
      disc: '.312',
      slot: '.187',
      bracket: '.500',
      float: '.010',
    };
    const sizes = Object.fromEntries(
      Object.entries(given).map(([name, size]) => [name, typedSize(size)] as const),
    );
    expect(
      await names('axle-line-up', { sizes, choices: { layout: 'front-one-disc', side: 'right' } }),
    ).toEqual([
      'Left spacer, made new',
      'Sleeve, made new',
      'Hub to bracket, made new',
      'Bracket to leg, made new',
    ]);
  });

  test('a worn bore with a bushing: open, ream, turn, bore', async () => {
    const cuts = await names('bushing', {
      sizes: {
        bore: typedSize('.4500'),
        pin: typedSize('.4370'),
        wall: typedSize('.400'),
        length: typedSize('1'),
      },
      choices: { joint: 'turns', partMetal: 'low-carbon-steel', bushingMetal: 'bearing-bronze' },
    });
    expect(cuts.map((name) => name.replace(/ \d.*/, ''))).toEqual([
      'Bore, opened for the reamer, follows the wear',
      'Bore, reamed',
      'Bushing, outside turned',
      'Bushing, bored once it is in',
    ]);
  });
});
