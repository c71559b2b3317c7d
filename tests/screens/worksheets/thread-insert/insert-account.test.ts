import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { threadInsertWorksheet } from '../../../../src/engine/worksheets/thread-insert/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

function insert(sizes: Readonly<Record<string, string>>, more: Record<string, string> = {}) {
  const typed = Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedSize(size)]));
  const data = worksheetOf('thread-insert', {
    sizes: typed,
    choices: { thread: '7/16-20 UNF', metal: 'steel', bottom: 'through', ...more },
  });
  const given = givenOf(data);
  return { data, given, account: threadInsertWorksheet.account(given) };
}

const rowsOf = (sizes: Readonly<Record<string, string>>, more: Record<string, string> = {}) =>
  blocksOf(insert(sizes, more).account, 'rows').flatMap(({ rows }) => rows);

describe('what leads', () => {
  // 7/16-20: least minor .4483, the usual drill 29/64 = .4531 = 11.509 mm, (.502452 − .453125)/.064952 = 75.9 %.
  test('is the drill with its decimal and its millimetres, then the STI tap', () => {
    const [lead] = blocksOf(insert({ hole: '.4437' }).account, 'lead');
    expect(lead).toMatchObject({
      // .4437 is larger than the bolt's 7/16: what may be worn is drilled where it is.
      label: 'Drill, where the hole is',
      figure: '29/64',
      unit: 'in',
      change: '.4531 in · 11.509 mm',
      limits: 'then STI tap 7/16-20 UNF · 75.9 %',
      cut: 'Hole, drilled 29/64, follows the hole',
    });
  });

  test('is no drill where the hole is to size', () => {
    const [lead] = blocksOf(insert({ hole: '.4500' }).account, 'lead');
    // (.502452 − .45)/.064952 = 80.8 %
    expect(lead).toMatchObject({
      label: 'No drill: straight to the',
      figure: 'STI tap',
      unit: '7/16-20 UNF',
    });
    expect(lead?.limits).toContain('80.8 %');
    expect(lead).not.toHaveProperty('cut');
  });

  test('is the thread that is left where the hole is over size, with a bush as another way', () => {
    const { account } = insert({ hole: '.4600' });
    // (.502452 − .46)/.064952 = 65.4 %
    expect(blocksOf(account, 'lead')[0]).toMatchObject({ label: 'Hole over size', figure: '65.4 %' });
    expect(blocksOf(account, 'way').map(({ title }) => title)).toContain('Bush the hole first');
  });

  test('names no cut where the wall would be too thin', () => {
    const { account, given } = insert({ hole: '.4437', wall: '.200' });
    expect(blocksOf(account, 'lead')[0]).not.toHaveProperty('cut');
    expect(threadInsertWorksheet.cuts(given)).toEqual([]);
  });
});

describe('the verdict', () => {
  test('is the worst of hole, wall and floor', () => {
    // .200 − (.50620 − .4500)/2 = .1719 left of .21875
    const thin = threadInsertWorksheet.verdict(insert({ hole: '.4500', wall: '.200' }).given);
    expect(thin).toEqual({
      found: 'no-good',
      said: 'Wall too thin: .1719 in left after tapping, want .2188 in or more.',
    });
    expect(threadInsertWorksheet.verdict(insert({ hole: '.4500', wall: '.400' }).given).found).toBe('good');
  });

  test('is said of the leg it is about', () => {
    const blind = insert(
      { hole: '.4500', wall: '.400', thickness: '2', thickness2: '.750' },
      { bottom: 'last-blind' },
    );
    // 1D: .6375 and the point .136 are .774 of .750
    expect(threadInsertWorksheet.verdict(blind.given)).toMatchObject({
      found: 'no-good',
      said: expect.stringMatching(/^Leg 2: The drill's point may come through: .* of metal is missing\.$/),
    });
    expect(threadInsertWorksheet.cuts(blind.given)).toEqual([]);
  });
});

describe('what is bought', () => {
  test('is an insert for each leg, with what is trimmed', () => {
    const rows = rowsOf({ hole: '.4500', thickness: '.750', thickness2: '.375' });
    // 1.5D = .65625, .61875 to .63125 when in; 1D = .4375 is .0625 longer than .375
    expect(rows.slice(0, 2)).toEqual([
      {
        what: 'Leg 1',
        figure: '1.5D · .6562 in',
        more: 'nothing to trim',
      },
      {
        what: 'Leg 2',
        figure: '1D · .4375 in',
        more: 'trim or grind .0625 in off',
      },
    ]);
    const lengths = insert({ hole: '.4500', thickness: '.750', thickness2: '.375' }).account.find(
      (block) => block.is === 'rows' && block.title === 'Lengths, leg 2',
    );
    expect(lengths).toMatchObject({
      rows: expect.arrayContaining([
        {
          what: '1D, this one',
          figure: '.4375 in',
          more: '.400 to .4125 when it is in; .0625 in longer than the metal',
        },
      ]),
    });
    // .75 and 1.5 pitches of .05
    expect(rows[2]).toEqual({ what: 'Below the face', figure: '.0375 to .075 in' });
  });

  test('is on the list of what has to be got, two alike as two', () => {
    const gets = threadInsertWorksheet.gets(insert({ thickness: '.750', thickness2: '.700' }).given);
    expect(gets.map(({ what, count }) => [what, count])).toEqual([
      ['insert 7/16-20 UNF, 1.5D, .6562 in', 1],
      ['insert 7/16-20 UNF, 1.5D, .6562 in', 1],
    ]);
  });

  test('is wound in leg by leg', () => {
    const steps = threadInsertWorksheet.steps(insert({ thickness: '.750', thickness2: '.375' }).given);
    expect(steps.map(({ text }) => text)).toEqual([
      'Clean the tapped hole, no chip and no oil in it',
      'Leg 1: wind the 1.5D 7/16-20 UNF insert in',
      'Leg 2: wind the 1D 7/16-20 UNF insert in',
      'Break the tang off and take it out of the hole',
      'Leg 2: trim the insert or grind it flush: .0625 in stands out',
    ]);
  });

  test('may be a longer one, ground flush, for more thread', () => {
    // 2D = .875 in .750
    expect(blocksOf(insert({ hole: '.4500', thickness: '.750' }).account, 'way')).toContainEqual({
      is: 'way',
      title: '2D insert',
      detail: '.875 in: trim or grind .125 in off',
      stands: 'open',
    });
  });
});

describe('the wall', () => {
  const ask = (sizes: Readonly<Record<string, string>>, more: Record<string, string> = {}) =>
    blocksOf(insert(sizes, more).account, 'ask')[0];

  test('is asked for first, with what has to be there', () => {
    // .21875 + (.50620190 − .4500)/2 = .246851
    expect(ask({ hole: '.4500' })).toMatchObject({ field: 'wall', key: 'Give the wall' });
    expect(ask({ hole: '.4500' })?.sentence).toContain('.2469 in');
  });

  test('is asked from the centre where there is no hole yet', () => {
    expect(ask({})).toMatchObject({ field: 'centreToEdge' });
  });

  test('is not asked for once it is known, or said to be far away; that is kept on record', () => {
    expect(ask({ hole: '.4500', wall: '.400' })).toBeUndefined();
    expect(ask({ hole: '.4500' }, { wallIs: 'far' })).toBeUndefined();
    const why = blocksOf(insert({ hole: '.4500' }, { wallIs: 'far' }).account, 'why')[0]?.lines;
    expect(why?.find(({ what }) => what === 'Wall')?.how).toContain('you said that no edge is near');
  });
});

test('the drills next to it stand under the other ways, each with the thread it leaves', () => {
  const ways = blocksOf(insert({ hole: '.4437' }).account, 'way');
  // 7/16 = .4375 would leave (.502452 − .4375)/.064952 = 100.0 %, 15/32 = .46875 only 51.9 %; letters and numbers lie under .413
  expect(ways[0]?.title).toMatch(/^Drill 7\/16 in/);
  expect(ways[0]?.detail).toBe('100.0 % of thread, outside the hole’s limits');
  expect(ways[1]?.title).toMatch(/^Drill 15\/32 in/);
  expect(ways[1]?.detail).toContain('51.9 %');
});

test('every tap of it says STI, and that a plain one ruins the hole', () => {
  for (const hole of ['.4437', '.4500', '.4600']) {
    const { account } = insert({ hole });
    expect(JSON.stringify(account)).toContain('STI tap');
    expect(blocksOf(account, 'said').map(({ sentence }) => sentence)).toContain(
      'A plain tap of that name ruins the hole.',
    );
  }
});

test('a hole too close to call says what would settle it', () => {
  const data = worksheetOf('thread-insert', {
    sizes: { hole: typedSize('.4487', tool('digital-caliper-inside')) },
    choices: { thread: '7/16-20 UNF', metal: 'steel', bottom: 'through' },
  });
  const account = threadInsertWorksheet.account(givenOf(data));
  expect(blocksOf(account, 'lead')[0]?.label).toBe('Run through anyway, where the hole is');
  expect(blocksOf(account, 'proof')[0]?.sentence).toMatch(/would settle it/);
});
