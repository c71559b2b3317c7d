import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { threadEngagementWorksheet } from '../../../../src/engine/worksheets/thread-engagement/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

const choices = { thread: '1/2-13 UNC', grade: 'sae-5', parent: 'cast-aluminium', insert: 'no' };

function joint(sizes: Readonly<Record<string, string>> = {}, more: Record<string, string> = {}) {
  const given = givenOf(
    worksheetOf('thread-engagement', {
      sizes: Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedSize(size)])),
      choices: { ...choices, ...more },
    }),
  );
  const account = threadEngagementWorksheet.account(given);
  return {
    lead: blocksOf(account, 'lead')[0],
    ask: blocksOf(account, 'ask')[0],
    rows: blocksOf(account, 'rows').flatMap(({ rows }) => rows),
    verdict: threadEngagementWorksheet.verdict(given),
    gets: threadEngagementWorksheet.gets(given),
    account,
  };
}

// Two legs of 5/8 together: holds 5/8 + nut .4375 + 4/13 = 1.3702; clears 5/8 + usual thread 1.25 = 1.875 (as in
// bolt-length.test.ts).
const legs = { leg1: '3/8', leg2: '1/4' };

describe('what leads', () => {
  test('is the range of lengths that are made, with its decimals, as soon as there is a leg', () => {
    expect(joint(legs, { held: 'nut' }).lead).toMatchObject({
      label: 'Bolt to buy',
      figure: '1-3/8 to 1-7/8',
      unit: 'in',
      change: '1.375 to 1.875 in',
      limits: 'at least 1.3702, at most 1.875 in',
    });
  });

  test('says what an inch bolt measures in millimetres, in a shop that counts in them', () => {
    const given = givenOf(
      worksheetOf('thread-engagement', {
        unit: 'mm',
        choices: { ...choices, held: 'nut' },
        sizes: { leg1: typedSize('3/8'), leg2: typedSize('1/4') },
      }),
    );
    // 1.375 · 25.4 = 34.925, 1.875 · 25.4 = 47.625
    expect(blocksOf(threadEngagementWorksheet.account(given), 'lead')[0]).toMatchObject({
      figure: '1-3/8 to 1-7/8',
      unit: 'in',
      change: expect.stringMatching(/^34\.92\d* to 47\.62\d* mm$/),
    });
  });

  test('is the least engagement where no leg is asked for', () => {
    // 1.30 in: worked by hand in thread-engagement.test.ts.
    const { lead } = joint({}, { legs: 'all' });
    expect(lead).toMatchObject({ label: 'Engage at least', unit: 'in' });
    expect(lead?.figure).toMatch(/^1\.(30|29)/);
  });

  test('says that none fits where the hole is too shallow for any', () => {
    // Into the part go 1.30 and the point: more than a hole of half an inch has.
    const { lead, gets } = joint({ leg1: '3/8', holeDepth: '.5' }, { held: 'tapped', hole: 'blind' });
    expect(lead).toMatchObject({ label: 'Bolt to buy', figure: 'none fits' });
    expect(gets).toEqual([]);
  });
});

describe('the verdict', () => {
  const onHand = { ...legs, boltLength: '1.5' };

  test('is the worst of engagement and grip', () => {
    // 1.3702 of 1.5, and 1.0 of 1.3 engaged.
    expect(joint({ ...onHand, engaged: '1.0' }, { held: 'nut' }).verdict).toMatchObject({
      found: 'no-good',
      said: expect.stringMatching(/^No good: 1\.000 engaged/),
    });
    expect(joint({ ...legs, boltLength: '1.0', engaged: '1.5' }, { held: 'nut' }).verdict).toMatchObject({
      found: 'no-good',
      // 1.0 − 5/8 − .4375
      said: 'The bolt is .0625 in too short to fill its nut.',
    });
  });

  test('of a bolt that is all right says only what was judged of it', () => {
    expect(joint(onHand, { held: 'nut' }).verdict).toEqual({ found: 'good', said: 'Good: the bolt holds.' });
    // Shank .5 past the plane at .375; run-out at most 5/13 = .385 of the .125 that are left.
    expect(joint({ ...onHand, nutRunsTo: '.55', shank: '.45' }, { held: 'nut' }).verdict).toEqual({
      found: 'good',
      said: 'Good: the bolt holds, clamps and has shank in every plane.',
    });
  });

  test('says of thread in a plane where, and how short the shank is', () => {
    // .3 of .375
    const { verdict } = joint({ ...onHand, shank: '.3', nutRunsTo: '.5' }, { held: 'nut' });
    expect(verdict).toEqual({
      found: 'no-good',
      said: 'Thread lies between leg 1 and leg 2: shank .075 in short.',
    });
  });

  test('is none where only lengths were asked', () => {
    expect(joint(legs, { held: 'nut' }).verdict.found).toBe('not-judged');
  });

  test.each([
    ['no-good', { leg1: '3/8', boltLength: '1.5', engaged: '1.0' }, {}],
    ['too-close', { ...onHand, shank: '.4' }, { held: 'nut' }],
    ['too-close', { leg1: '3/8', boltLength: '1.7' }, { hole: 'through' }],
  ] as const)('is said in at most 14 words: %s', (kind, sizes, more) => {
    const { account, verdict } = joint(sizes, more);
    expect(verdict.found).toBe(kind);
    const long = blocksOf(account, 'verdict')
      .flatMap(({ headline }) => headline.split(/(?<=\.) (?=[A-Z])/))
      .filter((sentence) => sentence.split(' ').length > 14);
    expect(long).toEqual([]);
  });
});

describe('asked first', () => {
  test('is the hole of a bolt into the part, then how deep a blind one is', () => {
    expect(joint({ leg1: '3/8' }, { held: 'tapped' }).ask).toMatchObject({
      field: 'hole',
      key: 'Give the hole',
    });
    expect(joint({ leg1: '3/8' }, { held: 'tapped', hole: 'blind' }).ask).toMatchObject({
      field: 'holeDepth',
      key: 'Give the depth',
    });
    expect(joint({ leg1: '3/8' }, { held: 'tapped', hole: 'through' }).ask).toBeUndefined();
  });

  test('is where a nut stops, while the run-out may be in its way', () => {
    // .225 from where it clamps to the shank; the run-out may take .385 of it.
    expect(joint({ ...legs, boltLength: '1.5', shank: '.4' }, { held: 'nut' }).ask?.field).toBe('nutRunsTo');
  });

  test('is the shank of a bolt so long that its usual thread would not clamp', () => {
    expect(joint({ ...legs, boltLength: '2.5' }, { held: 'nut' }).ask?.field).toBe('shank');
  });

  test('is what is engaged, where only the thread is looked at', () => {
    expect(joint({}, { legs: 'all' }).ask?.field).toBe('engaged');
  });
});

describe('leg by leg', () => {
  test('there stand the grip, each plane, the shank wanted and what goes past the grip', () => {
    // Shank past 3/8, at most 5/8 − 5/13 = .2404: both can't be had. Nut .4375 + 2/13 + 2/13.
    expect(joint(legs, { held: 'nut' }).rows).toMatchObject([
      { what: 'Grip', figure: '.625 in' },
      { what: 'leg 1 on leg 2', figure: '.375 in' },
      { what: 'Plain shank wanted', figure: 'past .375 in' },
      { what: 'Past the grip', figure: '.7452 in' },
    ]);
  });

  test('the manual’s torque stands before any estimate, and without it there is none', () => {
    expect(joint({}, { legs: 'all' }).rows).toEqual([]);
    expect(joint({}, { legs: 'all', torquePoundFeet: '7.50' }).rows[0]).toMatchObject({
      what: 'The manual’s figure rules',
      figure: '7.50 lbf·ft',
    });
  });
});

describe('what is to be got', () => {
  test('is the bolt by its thread, its grade and the range of its length', () => {
    expect(joint(legs, { held: 'nut' }).gets).toEqual([
      { kind: 'bolt', what: 'bolt 1/2-13 UNC, SAE grade 5, 1-3/8 to 1-7/8 in long', count: 1 },
    ]);
  });

  test('is nothing where one is on hand, unless that one is no good', () => {
    expect(joint({ ...legs, boltLength: '1.5' }, { held: 'nut' }).gets).toEqual([]);
    expect(joint({ ...legs, boltLength: '1.0' }, { held: 'nut' }).gets).toHaveLength(1);
  });
});
