import { expect, test } from 'vitest';
import { cutName, tapName, tapOfCut } from '../../../src/engine/thread/tap-name.ts';
import { sayHoleStep } from '../../../src/engine/cut/say-cuts-hole.ts';
import { insertOffers } from '../../../src/engine/worksheets/thread-insert/cuts-of-insert.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { threadNamed, type Thread } from '../../../src/engine/thread/threads.ts';

function named(designation: string): Thread {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

// ASME B18.29.1: the tap of a screw thread insert is marked STI; a plain one of that name is smaller by 1.299 P.
test.each([
  { thread: '1/2-20 UNF', takes: 'insert', is: 'STI tap 1/2-20 UNF' },
  { thread: 'M8x1.25', takes: 'insert', is: 'STI tap M8 × 1.25' },
  { thread: '1/2-20 UNF', takes: 'bolt', is: 'tap 1/2-20 UNF' },
  { thread: undefined, takes: 'insert', is: 'STI tap' },
] as const)('a tap of $thread for a hole that takes an $takes is a $is', ({ thread, takes, is }) => {
  expect(tapName(thread, takes)).toBe(is);
});

test('a cut kept from before says STI in its name and of its tap', () => {
  const kept = {
    name: 'Hole, tapped for an insert 1/2-20 UNF',
    thread: '1/2-20 UNF',
    target: { exact: lengthOf('.5156 in') },
  };
  expect(cutName(kept)).toBe('Hole, STI tap 1/2-20 UNF');
  expect(cutName({ name: 'Hole, tapped for an insert M8x1.25' })).toBe('Hole, STI tap M8 × 1.25');
  expect(tapOfCut(kept)).toBe('STI tap 1/2-20 UNF');
  expect(cutName({ name: 'Hole, tapped' })).toBe('Hole, tapped');
  expect(tapOfCut({ target: kept.target })).toBeUndefined();
  // 29/64, the tap drill of a plain 1/2-20
  expect(tapOfCut({ ...kept, target: { exact: lengthOf('.4531 in') } })).toBe('tap 1/2-20 UNF');
});

test.each(['1/2-20', '7/16-20', '10-24', 'M8', 'M10x1.25'])(
  'the cuts for an insert of %s say STI',
  (designation) => {
    const thread = named(designation);
    const tap = insertOffers({ thread }).find(({ operation }) => operation === 'tap');
    expect(tap?.name).toMatch(/^Hole, STI tap /);
    const step = { do: 'tap', hole: tap?.target ?? thread.major, thread: thread.designation } as const;
    expect(sayHoleStep(step, 'in')).toMatch(/^STI tap /);
  },
);

test('a hole tapped for a bolt that nobody named is a plain tap', () => {
  expect(sayHoleStep({ do: 'tap', hole: lengthOf('.5 in') }, 'in')).toBe('Tap: the hole should be .500 in');
});
