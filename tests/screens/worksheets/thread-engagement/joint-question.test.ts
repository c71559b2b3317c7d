import { describe, expect, test } from 'vitest';
import { mean } from '../../../../src/engine/reading/estimate.ts';
import {
  engagementNeeds,
  gripQuestion,
  jointQuestion,
} from '../../../../src/engine/worksheets/thread-engagement/question.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { featureOf, is, ofFeature, readingOf, tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

const choices = { thread: '7/16-20 UNF', grade: 'sae-5', parent: 'cast-aluminium' };
const asked = (given: Parameters<typeof worksheetOf>[1]) =>
  jointQuestion(givenOf(worksheetOf('thread-engagement', given)))?.thread;

describe('what a thread-engagement worksheet asks', () => {
  test('is the bolt, its grade and the part, as soon as they are known', () => {
    const question = asked({ choices });
    expect(is(question?.thread.major, '.4375 in')).toBe(true);
    // Cast 356-T6, 30 ksi, about 205 MPa at least (ASTM B26, from memory).
    expect([question?.grade, question?.parentTensileMpa, question?.withInsert]).toEqual([
      'sae-5',
      205,
      false,
    ]);
    expect(question).not.toHaveProperty('engaged');
  });

  test.each(['thread', 'grade', 'parent'])('can’t be asked without its %s', (name) => {
    const { [name]: _missing, ...without } = choices as Record<string, string>;
    expect(asked({ choices: without })).toBeUndefined();
  });

  test('can’t be asked of a thread, a grade or a metal that doesn’t exist', () => {
    expect(asked({ choices: { ...choices, thread: '7/16-19' } })).toBeUndefined();
    expect(asked({ choices: { ...choices, grade: 'sae-99' } })).toBeUndefined();
    expect(asked({ choices: { ...choices, parent: 'cheese' } })).toBeUndefined();
  });

  test('takes the fitter’s own strength of the part before the table’s', () => {
    const data = worksheetOf('thread-engagement', { choices: { ...choices, parentTensile: '180' } });
    const question = jointQuestion(givenOf(data));
    expect(question?.thread.parentTensileMpa).toBe(180);
    expect(question?.parentSource).toBe('your own figure');
  });

  test('takes the shallowest place a thread was measured at: it holds least', () => {
    const question = asked({
      choices: { ...choices, insert: 'yes' },
      sizes: { engaged: ofFeature('deep') },
      features: [featureOf('deep', 'depth')],
      readings: [
        readingOf('deep', '.700', { tool: tool('digital-caliper-depth'), place: 'top' }),
        readingOf('deep', '.650', { tool: tool('digital-caliper-depth'), place: 'bottom' }),
      ],
    });
    expect(question?.engaged && is(mean(question.engaged), '.65 in')).toBe(true);
    expect(question?.withInsert).toBe(true);
  });
});

describe('the legs and the bolt', () => {
  const gripOf = (given: Parameters<typeof worksheetOf>[1]) =>
    gripQuestion(givenOf(worksheetOf('thread-engagement', given)));

  test('are left out until there is a leg', () => {
    expect(gripOf({ choices })).toBeUndefined();
    expect(gripOf({ choices, sizes: { shank: typedSize('1') } })).toBeUndefined();
    expect(gripOf({ sizes: { leg1: typedSize('.5') } })).toBeUndefined();
  });

  test('are counted from the head, in mixed units, with washers, nut, shank and bolt', () => {
    const grip = gripOf({
      choices: { ...choices, held: 'nut' },
      sizes: {
        leg1: typedSize('3/8'),
        leg3: typedSize('10 mm'),
        headWasher: typedSize('.09'),
        nutWasher: typedSize('.08'),
        nutHeight: typedSize('.38'),
        shank: typedSize('.7'),
        boltLength: typedSize('1-1/2'),
      },
    });
    expect(grip?.legs.map(({ name }) => name)).toEqual(['leg 1', 'leg 3']);
    expect(
      grip?.legs.map(({ thickness }, at) => is(mean(thickness), ['.375 in', '10 mm'][at] ?? '')),
    ).toEqual([true, true]);
    expect(
      is(grip?.headWasher, '.09 in') && is(grip?.nutWasher, '.08 in') && is(grip?.nutHeight, '.38 in'),
    ).toBe(true);
    expect(grip?.shank && is(mean(grip.shank), '.7 in')).toBe(true);
    expect(grip?.boltLength && is(mean(grip.boltLength), '1.5 in')).toBe(true);
    expect(grip?.held).toBe('nut');
  });

  test('go by the thin and the thick place of a leg, the short and the long end of shank, bolt and nut’s stop', () => {
    const ends = (name: string, short: string, long: string) => [
      readingOf(name, long, { tool: tool('digital-caliper'), place: 'top' }),
      readingOf(name, short, { tool: tool('digital-caliper'), place: 'bottom' }),
    ];
    const names = ['leg1', 'shank', 'boltLength', 'nutRunsTo'];
    const grip = gripOf({
      choices: { ...choices, held: 'nut' },
      sizes: Object.fromEntries(names.map((name) => [name, ofFeature(name)])),
      features: names.map((name) => featureOf(name, 'length')),
      readings: [
        ...ends('leg1', '.375', '.381'),
        ...ends('shank', '.700', '.704'),
        ...ends('boltLength', '1.490', '1.500'),
        ...ends('nutRunsTo', '.740', '.752'),
      ],
    });
    const [leg] = grip?.legs ?? [];
    const found = [
      leg?.thickness,
      leg?.thickest,
      grip?.shank,
      grip?.shankLongest,
      grip?.boltLength,
      grip?.boltLongest,
      grip?.nutRunsTo,
    ];
    const wanted = ['.375', '.381', '.700', '.704', '1.490', '1.500', '.752'];
    // The nut stops worst where it stops furthest out.
    expect(found.map((one, at) => is(one && mean(one), `${wanted[at] ?? ''} in`))).toEqual(
      wanted.map(() => true),
    );
  });

  test('hold in the tapped part where nothing else is said', () => {
    expect(gripOf({ choices, sizes: { leg1: typedSize('.5') } })?.held).toBe('tapped');
    expect(gripOf({ choices: { ...choices, held: 'stud' }, sizes: { leg1: typedSize('.5') } })?.held).toBe(
      'stud',
    );
  });
});

describe('what is asked one after the other', () => {
  const needsOf = (given: Parameters<typeof worksheetOf>[1]) =>
    engagementNeeds(givenOf(worksheetOf('thread-engagement', given)));
  const leg1 = typedSize('3/8');

  test('is thread, grade and metal, then how it holds and the first leg', () => {
    expect(needsOf({})).toEqual(['thread', 'grade', 'parent', 'held', 'leg1']);
  });

  test('is leg after leg until that is all of them, or all four are there', () => {
    expect(needsOf({ choices, sizes: { leg1 } }).at(-1)).toBe('leg2');
    const four = { leg1, leg2: leg1, leg3: leg1, leg4: leg1 };
    expect(needsOf({ choices, sizes: four })).toEqual(['thread', 'grade', 'parent']);
    expect(needsOf({ choices: { ...choices, legs: 'all' }, sizes: { leg1 } })).toEqual([
      'thread',
      'grade',
      'parent',
    ]);
  });

  test('is no metal where the fitter gave its strength, and no leg where the engaged thread was measured', () => {
    expect(needsOf({ choices: { parentTensile: '180' }, sizes: { engaged: typedSize('.750') } })).toEqual([
      'thread',
      'grade',
    ]);
  });
});

describe('a torque', () => {
  const torqueOf = (more: Record<string, string>) =>
    jointQuestion(givenOf(worksheetOf('thread-engagement', { choices: { ...choices, ...more } })))?.torque;

  test('is never there of itself: only the manual’s figure brings one', () => {
    expect(torqueOf({})).toBeUndefined();
    expect(torqueOf({ nutFactor: 'oiled' })).toBeUndefined();
  });

  test('is the manual’s, in either unit', () => {
    expect(torqueOf({ torqueNewtonMetres: '50' })).toEqual({
      manual: { typed: '50', unit: 'Nm' },
      newtonMetres: 50,
      // Dry black steel: Shigley 9th ed., table 8-15.
      nutFactor: 0.3,
      isDryAssumed: true,
    });
    // 1 lbf ft = 1.3558179 N m (NIST SP 811)
    expect(torqueOf({ torquePoundFeet: '37', nutFactor: 'antiseize' })?.newtonMetres).toBeCloseTo(50.165, 3);
    expect(torqueOf({ torquePoundFeet: '37', nutFactor: 'antiseize' })?.nutFactor).toBe(0.12);
  });
});
