import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { threadCutWorksheet } from '../../../../src/engine/worksheets/thread-cut/worksheet.ts';
import { drawThreadCut } from '../../../../src/screens/worksheets/thread-cut/thread-cut-drawing.tsx';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { newCuts } from '../../../../src/screens/worksheets/new-cuts.ts';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

type Given = NonNullable<Parameters<typeof worksheetOf>[1]>;

const choices = { makes: 'part', thread: '1/2-13 UNC' };
const dataOf = (more: Given = {}) =>
  worksheetOf('thread-cut', {
    ...more,
    sizes: { outside: typedSize('.550'), ...more.sizes },
    choices: { ...choices, ...more.choices },
  });
const accountOf = (more: Given = {}) => threadCutWorksheet.account(givenOf(dataOf(more)));
const needOf = (given: Given) => threadCutWorksheet.nextNeed(givenOf(worksheetOf('thread-cut', given)));
const saidOf = (more: Given = {}) => blocksOf(accountOf(more), 'said').map(({ sentence }) => sentence);
const rowsOf = (more: Given, title: RegExp) =>
  blocksOf(accountOf(more), 'rows')
    .filter((block) => title.test(block.title))
    .flatMap(({ rows }) => rows);

describe('what is asked', () => {
  test('what gets it, which thread, what there is; of a stud what it clamps and how deep it stands', () => {
    expect(needOf({})).toBe('makes');
    expect(needOf({ choices: { makes: 'part' } })).toBe('thread');
    expect(needOf({ choices })).toBe('outside');
    const outside = typedSize('.550');
    expect(needOf({ choices, sizes: { outside } })).toBeUndefined();
    const stud = { ...choices, makes: 'stud' };
    expect(needOf({ choices: stud, sizes: { outside } })).toBe('ends');
    const part = { ...stud, ends: 'part' };
    expect(needOf({ choices: part, sizes: { outside, grip: typedSize('1') } })).toBe('inPart');
  });

  test('a stud’s own sizes are listed only for one', () => {
    const listed = (more: Given) => Object.keys(threadCutWorksheet.fieldsFor(givenOf(dataOf(more))));
    expect(listed({})).not.toContain('grip');
    expect(listed({ choices: { makes: 'stud' } })).toEqual(expect.arrayContaining(['grip', 'washer']));
    expect(listed({ choices: { makes: 'stud' } })).not.toContain('inPart');
  });
});

describe('what is said', () => {
  test('first the outside, then the size over the wires, the best of three', () => {
    const leads = blocksOf(accountOf(), 'lead');
    expect(leads.map(({ label }) => label)).toEqual(['Turn the outside to', 'Over .0444 in wires, to']);
    expect(rowsOf({}, /^Over three wires/).map(({ what }) => what)).toEqual([
      'Best wire, .0444',
      'Drill #57, .0430',
      'Drill #56, .0465',
    ]);
  });

  test('wires on hand stand before those on offer, with their own limits', () => {
    const [onHand, ...offered] = rowsOf({ sizes: { wire: typedSize('.0450') } }, /^Over three wires/);
    // .5119856 to .5169833 (thread-cut.test.ts), rounded inwards
    expect(onHand).toEqual({ what: 'On hand, .0450', figure: '.5120 to .5169' });
    expect(offered).toHaveLength(3);
  });

  test('which way the tool travels, and where the compound stands, for either hand', () => {
    expect(saidOf().slice(0, 2)).toEqual([
      'Compound 29.5° off square, its handle toward the tailstock.',
      // three pitches of 1/13
      'Right hand: start .2308 in clear of the end, travel toward the chuck.',
    ]);
    expect(saidOf({ choices: { hand: 'left', infeed: 'straight' } }).slice(0, 2)).toEqual([
      'Straight in by the cross slide.',
      'Left hand: start in the run-out groove, travel away from the chuck.',
    ]);
    expect(saidOf()).toHaveLength(5);
    for (const sentence of saidOf()) expect(sentence.split(' ').length).toBeLessThanOrEqual(14);
  });

  test('each pass stands with its dial, and the last lands inside the limits', () => {
    const passes = rowsOf({}, /^Infeed/);
    expect(passes.length).toBeGreaterThan(8);
    expect(passes[0]?.figure).toBe('.009 in');
  });

  test('a lathe’s cautions stand with it', () => {
    expect(blocksOf(accountOf(), 'caution').map(({ of }) => of)).toContain('lathe');
  });

  test('a wire that sinks in is said, and nothing is offered to be cut', () => {
    const sinks = { sizes: { wire: typedSize('.030') } };
    expect(threadCutWorksheet.verdict(givenOf(dataOf(sinks))).said).toMatch(/^A wire of \.030 in sinks in/);
    expect(threadCutWorksheet.cuts(givenOf(dataOf(sinks)))).toEqual([]);
  });

  test('its drawing says the outside, the depth and what the wires read', () => {
    const drawn = drawThreadCut(givenOf(dataOf()), { width: 320, height: 130 });
    expect(drawn.words).toMatch(/^Thread 1\/2-13 UNC: outside .* deep, over wires of \.0444 in from/);
    expect(drawn.running?.text).toMatch(/^over wires \.51/);
  });
});

test('its cuts go on the list with wires, pitch, infeed and hand', () => {
  const data = dataOf({
    sizes: { wire: typedSize('.0450') },
    choices: { hand: 'left', metal: 'alloy-steel' },
  });
  const [way] = threadCutWorksheet.cuts(givenOf(data));
  if (!way) throw new Error('no way');
  const [outside, thread] = newCuts(data, way, []);
  expect(outside).toMatchObject({
    operation: 'turn',
    of: 'outside',
    machine: 'lathe',
    material: 'alloy-steel',
  });
  expect(thread).toMatchObject({
    operation: 'thread',
    machine: 'lathe',
    threading: { wire: { typed: '.045' }, pitch: { typed: '.0769' }, infeed: 'flank', hand: 'left' },
  });
});
