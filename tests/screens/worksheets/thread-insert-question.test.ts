import { describe, expect, test } from 'vitest';
import { mean } from '../../../src/engine/reading/estimate.ts';
import { threadInsertQuestion } from '../../../src/screens/worksheets/thread-insert-question.ts';
import {
  featureOf,
  is,
  ofFeature,
  readingOf,
  struckOut,
  tool,
  typedSize,
  worksheetOf,
} from './worksheet-for-test.ts';

const choices = { thread: '7/16-20 UNF' };

describe('what a thread-insert worksheet asks', () => {
  test('is the thread and the hole as it is now', () => {
    const question = threadInsertQuestion(
      worksheetOf('thread-insert', { choices, sizes: { hole: typedSize('.4487') } }),
    );
    // 7/16 in = .4375 in
    expect(is(question?.thread.major, '.4375 in')).toBe(true);
    expect(question?.hole && is(mean(question.hole.tightest), '.4487 in')).toBe(true);
  });

  test('can’t be asked without a thread, or with one that doesn’t exist', () => {
    expect(threadInsertQuestion(worksheetOf('thread-insert'))).toBeUndefined();
    expect(
      threadInsertQuestion(worksheetOf('thread-insert', { choices: { thread: '7/16-19 UNF' } })),
    ).toBeUndefined();
  });

  test('without a hole, or with one whose readings are all struck out, is of solid metal', () => {
    const data = worksheetOf('thread-insert', {
      choices,
      sizes: { hole: ofFeature('bore') },
      features: [featureOf('bore', 'bore')],
      readings: [readingOf('bore', '.4487', struckOut)],
    });
    expect(threadInsertQuestion(data)).not.toHaveProperty('hole');
    expect(threadInsertQuestion(worksheetOf('thread-insert', { choices }))).not.toHaveProperty('hole');
  });

  test('keeps the hole’s tightest and loosest place apart', () => {
    const data = worksheetOf('thread-insert', {
      choices,
      sizes: { hole: ofFeature('bore') },
      features: [featureOf('bore', 'bore')],
      readings: [
        readingOf('bore', '.4470', { place: 'top' }),
        readingOf('bore', '.4520', { place: 'bottom' }),
      ],
    });
    const hole = threadInsertQuestion(data)?.hole;
    expect(hole && is(mean(hole.tightest), '.447 in') && is(mean(hole.loosest), '.452 in')).toBe(true);
  });

  test('takes the metal where it is thinnest: there the drill comes through', () => {
    const data = worksheetOf('thread-insert', {
      choices: { ...choices, bottom: 'blind' },
      sizes: { thickness: ofFeature('boss') },
      features: [featureOf('boss', 'length')],
      readings: [
        readingOf('boss', '1.250', { place: 'top', tool: tool('digital-caliper') }),
        readingOf('boss', '1.190', { place: 'bottom', tool: tool('digital-caliper') }),
      ],
    });
    expect(is(threadInsertQuestion(data)?.thickness, '1.19 in')).toBe(true);
  });

  test('is in aluminium unless it says steel', () => {
    const metalOf = (metal: Record<string, string>) =>
      threadInsertQuestion(worksheetOf('thread-insert', { choices: { ...choices, ...metal } }))?.metal;
    expect([metalOf({}), metalOf({ metal: 'steel' }), metalOf({ metal: 'aluminium' })]).toEqual([
      'aluminium',
      'steel',
      'aluminium',
    ]);
  });

  test('is of a through hole unless it says blind, and then of a bottoming tap unless it says plug', () => {
    const blindOf = (more: Record<string, string>) =>
      threadInsertQuestion(worksheetOf('thread-insert', { choices: { ...choices, ...more } }))?.blind;
    expect(blindOf({ bottom: 'through', tap: 'plug' })).toBeUndefined();
    expect(blindOf({ bottom: 'blind' })).toEqual({ tap: 'bottoming' });
    expect(blindOf({ bottom: 'blind', tap: 'plug' })).toEqual({ tap: 'plug' });
  });
});

describe('the wall', () => {
  const wallOf = (sizes: Record<string, ReturnType<typeof typedSize>>) =>
    threadInsertQuestion(worksheetOf('thread-insert', { choices, sizes }))?.wall;

  test('from the centre is surer than from the edge of the hole, and is taken where both are given', () => {
    const wall = wallOf({ wall: typedSize('.300'), centreToEdge: typedSize('.520') });
    expect(wall?.kind === 'centre-to-edge' && is(wall.distance, '.52 in')).toBe(true);
  });

  test('from the edge of the hole is taken where the centre is not known', () => {
    const wall = wallOf({ wall: typedSize('.300') });
    expect(wall?.kind === 'present' && is(wall.wall, '.3 in')).toBe(true);
  });

  test('is left out where neither is known', () => {
    expect(wallOf({})).toBeUndefined();
  });

  test('that may be left is one’s own where it is given, else the usual one', () => {
    const leastOf = (sizes: Record<string, ReturnType<typeof typedSize>>) =>
      threadInsertQuestion(worksheetOf('thread-insert', { choices, sizes }))?.leastWall;
    expect(is(leastOf({ leastWall: typedSize('.150') }), '.15 in')).toBe(true);
    expect(leastOf({})).toBeUndefined();
  });
});
