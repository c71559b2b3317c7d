import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { misplacedHoleWorksheet } from '../../../../src/engine/worksheets/misplaced-hole/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { newCuts } from '../../../../src/screens/worksheets/new-cuts.ts';
import { roundPartsOf } from '../../../../src/screens/sheet/round-parts.ts';
import { is, tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

type Given = NonNullable<Parameters<typeof worksheetOf>[1]>;

const sizes = {
  offBy: typedSize('.0620'),
  bore: typedSize('.5010'),
  pin: typedSize('.4990'),
  wall: typedSize('.750'),
};
const choices = {
  found: 'offset',
  toward: '90',
  joint: 'turns',
  partMetal: 'alloy-steel',
  bushingMetal: 'bearing-bronze',
};
const dataOf = (more: Given = {}) =>
  worksheetOf('misplaced-hole', {
    ...more,
    sizes: { ...sizes, ...more.sizes },
    choices: { ...choices, ...more.choices },
  });
const accountOf = (more: Given = {}) => misplacedHoleWorksheet.account(givenOf(dataOf(more)));
const needsOf = (given: Given) =>
  misplacedHoleWorksheet.nextNeed(givenOf(worksheetOf('misplaced-hole', given)));
const rowsOf = (more: Given, title: string) =>
  Object.fromEntries(
    blocksOf(accountOf(more), 'rows')
      .filter((block) => block.title === title)
      .flatMap(({ rows }) => rows.map(({ what, figure, more: beside }) => [what, [figure, beside]])),
  );

describe('what is asked', () => {
  test('how the place is known, then what says so, then the hole', () => {
    expect(needsOf({})).toBe('found');
    expect(needsOf({ choices: { found: 'offset' } })).toBe('offBy');
    expect(needsOf({ choices: { found: 'apart' }, sizes: { apart: typedSize('6') } })).toBe('apartWanted');
    expect(
      needsOf({ choices: { found: 'edges' }, sizes: { nowX: typedSize('1'), wantX: typedSize('1') } }),
    ).toBe('nowY');
    expect(needsOf({ choices: { found: 'offset' }, sizes: { offBy: typedSize('.062') } })).toBe('bore');
  });

  test('only what goes with it is listed, and of the classes those of the system in hand', () => {
    const listed = (found: string) =>
      Object.keys(misplacedHoleWorksheet.fieldsFor(givenOf(dataOf({ choices: { found } }))));
    expect(listed('offset')).toEqual(
      expect.arrayContaining(['offBy', 'toward', 'apart', 'axis', 'lock', 'ansiPress']),
    );
    expect(listed('offset').some((name) => ['nowX', 'apartWanted', 'isoPress'].includes(name))).toBe(false);
    expect(listed('edges')).toEqual(expect.arrayContaining(['nowX', 'otherWantY']));
    expect(listed('apart').some((name) => ['offBy', 'toward', 'otherX'].includes(name))).toBe(false);
  });
});

describe('what is said', () => {
  test('the indicator reads twice the offset, and which way the thin side goes', () => {
    const rows = rowsOf({}, 'Offset bushing');
    expect(rows['Set over']).toEqual(['.062', 'reads .124 in over a turn']);
    expect(rows['Toward']?.[0]).toMatch(/^12.o’clock$/);
  });

  test('both holes before and after: straight across the line √(6² + .062²) = 6.0003, turned by atan(.062/6) = .59°', () => {
    const rows = rowsOf({ sizes: { apart: typedSize('6.000') } }, 'Both holes');
    expect(rows['Middle to middle']?.[0]).toBe('6.000 → 6.0003');
    expect(rows['Their line turns']).toEqual(['0.59°', 'clockwise']);
  });

  test('read by calipers the place is too close to call, and what would settle it is said', () => {
    const account = accountOf({ sizes: { offBy: typedSize('.0620', tool('digital-caliper')) } });
    const [verdict] = blocksOf(account, 'verdict');
    expect(verdict?.kind).toBe('too-close');
    expect(verdict?.headline).toMatch(/^Too close to call: its place to ±\.00\d+, want it within \.001\.$/);
    expect(blocksOf(account, 'proof')[0]?.sentence).toMatch(/settle/);
  });

  test('with too little wall it is no good, nothing is cut, and what can be done is said', () => {
    const data = dataOf({ sizes: { wall: typedSize('.300') } });
    const account = misplacedHoleWorksheet.account(givenOf(data));
    expect(blocksOf(account, 'verdict')[0]?.kind).toBe('no-good');
    expect(misplacedHoleWorksheet.cuts(givenOf(data))).toEqual([]);
    expect(blocksOf(account, 'said').map(({ sentence }) => sentence)).toContain(
      'Build the boss up, or bore it in its right place.',
    );
  });

  test('opened in its right place the bushing is a plain one: no lock is said or assumed', () => {
    const right = { choices: { axis: 'right' } };
    expect(rowsOf(right, 'Offset bushing')).toEqual({});
    expect(rowsOf(right, 'Plain bushing')['Its wall']).toBeDefined();
    expect(misplacedHoleWorksheet.assumed(givenOf(dataOf(right))).map(({ field }) => field)).toEqual([
      'condition',
    ]);
    expect(blocksOf(accountOf(right), 'said').some(({ sentence }) => /lock/.test(sentence))).toBe(false);
  });

  test('ways beside it are ranked: welding comes last', () => {
    expect(blocksOf(accountOf(), 'way').map(({ title }) => title)).toEqual([
      'Bore it in its right place',
      'Line-ream both parts together',
      'Move the other hole',
      'Weld it up and drill anew',
    ]);
  });
});

test('its cut on the list keeps how far it is set over, and how far that may be off', () => {
  const data = dataOf();
  const [way] = misplacedHoleWorksheet.cuts(givenOf(data));
  const set = way && newCuts(data, way, []).filter(({ setOver }) => setOver);
  expect(
    set?.map(({ name, setOver, setOverWithin }) => [name, setOver?.typed, setOverWithin?.typed]),
  ).toEqual([['Bushing, bored off its middle', '.062', '.0007']]);
});

test('as a round part its bore stands off the middle', () => {
  const [bushing] = roundPartsOf(dataOf());
  expect(bushing?.name).toBe('Offset bushing');
  expect(is(bushing?.offCentre, '.062 in')).toBe(true);
  expect(roundPartsOf(dataOf({ choices: { axis: 'right' } }))[0]?.offCentre).toBeUndefined();
});

test('what locks the bushing is to be got beside its bar', () => {
  const gets = (lock: string) =>
    misplacedHoleWorksheet
      .gets(givenOf(dataOf({ choices: { lock } })))
      .map(({ kind, what }) => (kind === 'stock' ? kind : what));
  expect(gets('bond')).toEqual(['stock', 'retaining compound']);
  expect(gets('dowel')).toEqual(['stock', 'dowel to lock the bushing']);
});
