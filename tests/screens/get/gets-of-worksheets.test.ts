import { describe, expect, test } from 'vitest';
import { worksheetOf as worksheetOfKind } from '../../../src/engine/worksheets/all-worksheets.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { partOf, typedSize, worksheetOf } from '../worksheets/worksheet-for-test.ts';

/** What has to be got for a worksheet's answer, and how many of each. */
function got(data: WorksheetData, way?: string): readonly string[] {
  return (worksheetOfKind(data.worksheet.kind)?.gets(givenOf(data), way) ?? []).map(({ what, count }) =>
    count === 1 ? what : `${count} × ${what}`,
  );
}

const bronzeInSteel = { partMetal: 'low-carbon-steel', bushingMetal: 'bearing-bronze' };

describe('what has to be got', () => {
  // .4487 worn: clean-up .4487 + 2 · .002 and its band, then the first reamer that leaves a wall over a .4372 pin is 9/16
  // (.5625); pressed in by some tenths, so the outside is a little over .5625: .5625 + .0313 = .594, a 5/8 bar.
  const bushing = worksheetOf('bushing', {
    sizes: {
      bore: typedSize('.4487'),
      pin: typedSize('.4372'),
      wall: typedSize('.400'),
      length: typedSize('1.500'),
    },
    choices: { joint: 'turns-under-load', ...bronzeInSteel },
  });

  test('a bushing is a bar with room for its skin', () => {
    expect(got(bushing)).toEqual([
      'bar for the bushing, 5/8 in or larger, 1.500 in long when finished, bearing bronze SAE 660 (C93200)',
    ]);
  });

  test('of an aluminium one, in an inch shop, aluminum', () => {
    const choices = { joint: 'turns', partMetal: 'alloy-steel', bushingMetal: 'aluminium-6061' };
    const { sizes } = bushing.worksheet;
    expect(got(worksheetOf('bushing', { sizes, choices }))[0]).toMatch(/, aluminum 6061$/);
  });

  test('nothing for a bushing that is turned already', () => {
    const { sizes, choices } = bushing.worksheet;
    const turned = { ...sizes, reamed: typedSize('.5628'), outside: typedSize('.5645') };
    expect(got(worksheetOf('bushing', { sizes: turned, choices }))).toEqual([]);
  });

  // Recess 1.500, stem .750: outside 1.500 − .002 and less, inside .750 + some thou; .093 deep, .010 stays free: .083.
  const ring = worksheetOf('ring', {
    sizes: {
      recess: typedSize('1.500'),
      stem: typedSize('.750'),
      depth: typedSize('.093'),
      stayFree: typedSize('.010'),
    },
    choices: { locates: 'recess' },
  });

  test('a ring is cut from a washer or plate that its sizes go into', () => {
    const [washer, ...more] = got(ring);
    expect(more).toEqual([]);
    expect(washer).toMatch(
      /^washer or plate for the ring, 1\.49\d+ in or more outside, hole \.7\d+ in or less, \.083 in or more thick$/,
    );
  });

  test('nothing for a ring that the washer in hand makes', () => {
    const washer = {
      blankOutside: typedSize('1.625'),
      blankInside: typedSize('.700'),
      blankThickness: typedSize('.100'),
    };
    const { sizes, choices } = ring.worksheet;
    expect(got(worksheetOf('ring', { sizes: { ...sizes, ...washer }, choices }))).toEqual([]);
  });

  // 1.000 − .960 = .040 free where .008 to .012 is wanted: .030 too much.
  const loose = worksheetOf('spacer-stack', {
    sizes: { fixed: typedSize('1.000') },
    choices: { want: 'float' },
    parts: { a: { ...partOf(1, typedSize('.960')), name: 'spacer', adjustable: true } },
  });

  test('a stack with too much room is a shim, until a way is gone that makes a part longer', () => {
    expect(got(loose)).toEqual(['shim of .030 in, or several: .028 to .032 in in all']);
    expect(got(loose, 'longer-1')).toEqual(['bar or tube for the spacer, .990 in long when finished']);
  });

  test('no shim where the drawer has one that does', () => {
    const shim = {
      piece: {
        id: 'shim',
        kind: 'shim',
        name: 'shim',
        material: '',
        thickness: typedSize('.030'),
        createdAt: 0,
        touchedAt: 0,
      },
      count: 1,
    } as const;
    expect(got({ ...loose, drawer: [shim] })).toEqual([]);
  });

  test('nothing for a stack whose parts are faced', () => {
    const { choices, parts } = loose.worksheet;
    expect(got(worksheetOf('spacer-stack', { sizes: { fixed: typedSize('.950') }, choices, parts }))).toEqual(
      [],
    );
  });

  const holeAndBolt = worksheetOf('hole-and-pin', {
    sizes: {
      bore: typedSize('.4487'),
      pin: typedSize('.4370'),
      wall: typedSize('.310'),
      thickness: typedSize('.750'),
    },
    choices: {
      thread: '7/16-20 UNF',
      joint: 'located',
      shankPasses: 'no',
      facesCarry: 'yes',
      ...bronzeInSteel,
    },
  });

  test('of a hole and its bolt what the way takes that is gone, and nothing before', () => {
    expect(got(holeAndBolt)).toEqual([]);
    // .750 of metal under a 7/16 thread: 1.5 diameters are .656, the longest that go in.
    expect(got(holeAndBolt, 'thread-insert')).toEqual(['insert 7/16-20 UNF, 1.5D, .6562 in']);
    expect(got(holeAndBolt, 'larger-pin')).toEqual(['bolt 1/2 in']);
    expect(got(holeAndBolt, 'bushing')).toEqual([
      expect.stringMatching(/^bar for the bushing, \S+ in or larger, .*bearing bronze SAE 660 \(C93200\)$/),
    ]);
  });

  // Between faces 2.4500; a sleeve 0 to .005 longer, .002 aimed at.
  test('a sleeve between bearings that is made new is bar or tube, one that is faced is there', () => {
    const between = { between: typedSize('2.4500') };
    const choices = { bearing: 'ball', mockUp: 'no' };
    expect(got(worksheetOf('bearing-seat', { sizes: between, choices }))).toEqual([
      expect.stringMatching(/^bar or tube for the sleeve, 2\.45\d* in long when finished$/),
    ]);
    const sleeve = { ...between, sleeve: typedSize('2.4580') };
    expect(got(worksheetOf('bearing-seat', { sizes: sleeve, choices }), 'trim')).toEqual([]);
  });

  test('of an axle every spacer that is made', () => {
    const front = worksheetOf('axle-line-up', {
      sizes: {
        width: typedSize('6.750'),
        hub: typedSize('4.412'),
        centre: typedSize('2.300'),
        disc: typedSize('.312'),
        slot: typedSize('.187'),
        bracket: typedSize('.500'),
        float: typedSize('.010'),
      },
      choices: { layout: 'front-one-disc', side: 'right' },
    });
    // A: 6.750/2 − 2.300 = 1.075.
    expect(got(front)).toContain('bar or tube for the left spacer, 1.075 in long when finished');
  });

  test('of a stud two nuts, and wires where none were measured', () => {
    const sizes = { outside: typedSize('.500'), grip: typedSize('1.875') };
    const choices = { makes: 'stud', thread: '7/16-20 UNF', ends: 'nuts' };
    // Best wire .57735 · 1/20 = .02887.
    expect(got(worksheetOf('thread-cut', { sizes, choices }))).toEqual([
      '2 × nut 7/16-20 UNF',
      'three thread wires of .0289 in',
    ]);
    const measured = { ...sizes, wire: typedSize('.0290') };
    expect(got(worksheetOf('thread-cut', { sizes: measured, choices }))).toEqual(['2 × nut 7/16-20 UNF']);
  });

  test('of a taper its bar, where none was measured', () => {
    const sizes = { large: typedSize('.750'), small: typedSize('.650'), length: typedSize('1.200') };
    const choices = { by: 'diameters' };
    // .750 + .031 = .781: 13/16.
    expect(got(worksheetOf('taper', { sizes, choices }))).toEqual([
      'bar for the taper, 13/16 in or larger, 1.200 in long when finished',
    ]);
    const blank = { ...sizes, blank: typedSize('.875') };
    expect(got(worksheetOf('taper', { sizes: blank, choices }))).toEqual([]);
  });

  test('of an adapter its plate', () => {
    const sizes = {
      aCircle: typedSize('4.500'),
      aHole: typedSize('17/32'),
      bCircle: typedSize('5.500'),
      bHole: typedSize('1/2'),
      round: typedSize('7.250'),
    };
    const choices = { aBy: 'circle', aCount: '5', bBy: 'circle', bCount: '5' };
    expect(got(worksheetOf('adapter-plate', { sizes, choices }))).toEqual(['plate, 7.250 in round']);
  });

  test('of a hole off its place the bar, and what locks the bushing', () => {
    const sizes = {
      offBy: typedSize('.0620'),
      bore: typedSize('.5010'),
      pin: typedSize('.4990'),
      wall: typedSize('.750'),
    };
    const choices = { joint: 'turns', found: 'offset', toward: '30', ...bronzeInSteel };
    const [bar, lock] = got(worksheetOf('misplaced-hole', { sizes, choices }));
    expect(bar).toMatch(/^bar for the bushing, /);
    expect(lock).toBe('dowel to lock the bushing');
  });

  test('of a pin that is made for its bore a bar, once that is the way', () => {
    const fit = worksheetOf('fit', { sizes: { bore: typedSize('.5023') }, choices: { joint: 'turns' } });
    expect(got(fit)).toEqual([]);
    // Just under .5023 and .031 of skin: .53, a 9/16 bar.
    expect(got(fit, 'pin')).toEqual(['bar for the pin, 9/16 in or larger']);
  });
});
