import { describe, expect, test } from 'vitest';
import { drillNamed } from '../../../../src/engine/thread/drill-series.ts';
import { toleranceEstimate, typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { blindDepth } from '../../../../src/engine/thread/insert-lengths.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import {
  sayBlindDepth,
  sayDrillNeighbours,
  sayDrillSize,
  sayInsertDrill,
  sayInsertHole,
  sayInsertLength,
  sayInsertWall,
} from '../../../../src/engine/worksheets/thread-insert/say-insert.ts';
import { sayInsertRefusal } from '../../../../src/engine/worksheets/thread-insert/say-insert-refusal.ts';
import {
  threadInsert,
  type InsertQuestion,
} from '../../../../src/engine/worksheets/thread-insert/thread-insert.ts';
import { insertThreads, threadNamed, type Thread } from '../../../../src/engine/thread/threads.ts';

function named(designation: string): Thread {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

function answer(designation: string, rest: Partial<InsertQuestion> = {}) {
  const result = threadInsert({ thread: named(designation), metal: 'aluminium', ...rest });
  if (!result.ok) throw new Error(sayInsertRefusal(result.refusal, 'in'));
  return result.value;
}

function refusal(designation: string, rest: Partial<InsertQuestion>): string {
  const result = threadInsert({ thread: named(designation), metal: 'aluminium', ...rest });
  return result.ok ? '' : sayInsertRefusal(result.refusal, 'in');
}

function hole(size: string, plusMinus?: string) {
  const estimate = plusMinus
    ? toleranceEstimate(lengthOf(size), lengthOf(plusMinus))
    : typedEstimate(lengthOf(size));
  return { tightest: estimate, loosest: estimate };
}

describe('the hole', () => {
  test('a bore too close to call is told to take the drill anyway, with name, decimal, mm and percent', () => {
    expect(sayInsertHole(answer('7/16-20', { hole: hole('.4487 in', '.0012 in') }), 'in')).toBe(
      'Run 29/64 in (.4531 in, 11.509 mm) through anyway: it is .4487 in (±.0012) at its tightest, .0004 in over the least, too close to call. With the drill through: 75.9 % of thread is left.',
    );
  });

  test.each([
    { size: '.440 in', says: 'too small for the STI tap' },
    { size: '.453 in', says: 'straight to the STI tap' },
    { size: '.460 in', says: '.0039 in over the greatest of .4561 in' },
  ])('a $size bore for 7/16-20 is said to be: $says', ({ size, says }) => {
    expect(sayInsertHole(answer('7/16-20', { hole: hole(size) }), 'in').replaceAll("'", '’')).toContain(says);
  });

  test('a hole over the greatest offers to accept what thread is left, or to bush first', () => {
    const sentence = sayInsertHole(answer('7/16-20', { hole: hole('.460 in') }), 'in');
    expect(sentence).toContain('65.4 % of thread is left at the loosest place.');
    expect(sentence).toContain('Accept that, or bush the hole first.');
  });
});

describe('the drill', () => {
  test.each([
    ['29/64', '29/64 in (.4531 in, 11.509 mm)'],
    ['H', 'H (.266 in, 6.756 mm)'], // .266 · 25.4 = 6.7564
    ['#7', '#7 (.201 in, 5.105 mm)'], // .201 · 25.4 = 5.1054
    ['13.2 mm', '13.2 mm (.5197 in)'], // 13.2 / 25.4 = .51969
  ])('%s reads %s', (name, text) => {
    const drill = drillNamed(name);
    expect(drill && sayDrillSize(drill)).toBe(text);
  });

  test('a listed drill left out for lying under the least is named with how much it is under', () => {
    // .516656 − .515625 = .0010
    expect(sayInsertDrill(answer('1/2-13'), 'in')).toContain(
      '33/64 is listed too, but lies .001 in under the least hole',
    );
    // .53125 − .5276
    expect(sayInsertDrill(answer('1/2-13', { metal: 'steel' }), 'in')).toMatch(
      /17\/32 is listed too, but lies \.003\d in over the greatest hole/,
    );
  });

  test('a drill from memory says so, and one chosen by the limits too', () => {
    expect(sayInsertDrill(answer('1/4-20'), 'in')).toContain('memory of insert makers');
    expect(sayInsertDrill(answer('#4-40'), 'in')).toContain('chosen by the limits');
  });

  test('the limit it is held against names its standing', () => {
    expect(sayInsertDrill(answer('1/4-20'), 'in')).toContain('inferred from ASME B1.1, confirmed on one row');
    expect(sayInsertDrill(answer('M8'), 'mm')).toContain('memory of DIN 8140-2');
  });

  test('the neighbours are named with the thread each gives', () => {
    expect(sayDrillNeighbours(answer('7/16-20').drill)).toContain(
      '15/32 in (.4688 in, 11.906 mm) gives 51.9 %',
    );
  });
});

describe('wall and length', () => {
  test.each([
    { distance: '.5 in', says: 'is enough' },
    { distance: '.25 in', says: 'too thin' },
    { distance: '.15 in', says: 'cut through the wall' },
  ])('$distance from centre to edge for 1/4-20: $says', ({ distance, says }) => {
    const { wallLeft } = answer('1/4-20', {
      wall: { kind: 'centre-to-edge', distance: lengthOf(distance) },
    });
    expect(wallLeft && sayInsertWall(wallLeft, 'in')).toContain(says);
  });

  test('an insert longer than the metal is told how much to trim', () => {
    const sentence = sayInsertLength(answer('M8', { thickness: lengthOf('6.5 mm') }), 'mm');
    expect(sentence).toContain('Insert 1D (8.00 mm)');
    expect(sentence).toContain('1.50 mm longer than the metal');
  });

  test('a blind hole gives both depths and warns where the point would come through', () => {
    const q = { blind: { tap: 'plug' } as const, thickness: lengthOf('20 mm') };
    const sentence = sayInsertLength(answer('M8', q), 'mm');
    expect(sentence).toContain('drill 19.50 mm deep'); // 8 + 4 + 7.5
    expect(sentence).toContain('full thread 9.25 mm deep'); // 8 + 1.25
    // 19.5 + 2.52336 + 1.5 of floor − 20
    expect(sentence).toContain('may come through: 3.523 mm of metal is missing.'); // 19.5 + 2.52336 + 1.5 of floor − 20
  });
});

describe('refusals', () => {
  test.each([
    { thread: '7/16-20', rest: { hole: hole('.51 in') }, says: 'Nothing is left to tap' },
    { thread: '7/16-20', rest: { thickness: lengthOf('0 in') }, says: 'holds no insert' },
    { thread: '#5-44', rest: {}, says: 'No wire insert is usually made for #5-44 UNF' },
    {
      thread: '1/4-20',
      rest: { wall: { kind: 'present', wall: lengthOf('.2 in') } as const },
      says: 'needs the hole',
    },
  ])('$thread: $says', ({ thread, rest, says }) => expect(refusal(thread, rest)).toContain(says));

  test('no sentence about any thread ever shows a word of ours', () => {
    for (const { designation } of insertThreads) {
      const whole = answer(designation, { hole: hole('1.5 mm'), blind: { tap: 'bottoming' } });
      const sentences = [
        sayInsertHole(whole, 'mm'),
        sayInsertDrill(whole, 'mm'),
        sayDrillNeighbours(whole.drill),
        sayInsertLength(whole, 'mm'),
      ].join(' ');
      expect(sentences).not.toMatch(/undefined|NaN|null|\[object/);
    }
  });
});

describe('the floor of a blind hole', () => {
  // M8 1D, plug: 8 + 4 + 7.5 = 19.5 to the full diameter, 2.52336 of point; 23 − 22.02336 = .97664 of floor, 1.5 wanted.
  test.each([
    {
      thickness: '23 mm',
      says: 'At least 0.977 mm stays under its point, 1.50 mm wanted. 0.523 mm of metal is missing.',
    },
    { thickness: '22 mm', says: 'point may come through: 1.523 mm of metal is missing.' },
    { thickness: undefined, says: 'Give how thick the metal is: the drill may come through.' },
  ])('in $thickness of metal: $says', ({ thickness, says }) => {
    const depth = blindDepth({
      thread: named('M8'),
      drill: lengthOf('8.4 mm'),
      tap: 'plug',
      nominal: lengthOf('8 mm'),
      ...(thickness !== undefined && { thickness: lengthOf(thickness) }),
    });
    expect(sayBlindDepth(depth, 'mm')).toContain(says);
  });
});
