import { describe, expect, test } from 'vitest';
import { mean } from '../../../../src/engine/reading/estimate.ts';
import { legFields } from '../../../../src/engine/worksheets/thread-insert/fields.ts';
import { insertQuestion } from '../../../../src/engine/worksheets/thread-insert/question.ts';
import { threadInsertWorksheet } from '../../../../src/engine/worksheets/thread-insert/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../../src/screens/worksheets/worksheet-data.ts';
import {
  featureOf,
  is,
  ofFeature,
  readingOf,
  struckOut,
  tool,
  typedSize,
  worksheetOf,
} from '../worksheet-for-test.ts';

const threadInsertQuestion = (data: WorksheetData) => insertQuestion(givenOf(data));

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
    expect(is(threadInsertQuestion(data)?.legs[0]?.thickness, '1.19 in')).toBe(true);
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
      threadInsertQuestion(worksheetOf('thread-insert', { choices: { ...choices, ...more } }))?.legs[0]
        ?.blind;
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

describe('the legs', () => {
  const legsOf = (sizes: Record<string, ReturnType<typeof typedSize>>, more: Record<string, string> = {}) =>
    threadInsertQuestion(worksheetOf('thread-insert', { choices: { ...choices, ...more }, sizes }))?.legs;
  const two = { thickness: typedSize('.750'), thickness2: typedSize('.500') };

  test('are each as thick as they were given, from the head of the bolt on', () => {
    const legs = legsOf(two);
    expect(legs?.length).toBe(2);
    expect(is(legs?.[0]?.thickness, '.75 in') && is(legs?.[1]?.thickness, '.5 in')).toBe(true);
  });

  test('are one of no known thickness while none was given', () => {
    expect(legsOf({})).toEqual([{}]);
  });

  test('are all blind, or only the last, as was said', () => {
    const blind = (bottom: string) => legsOf(two, { bottom })?.map((leg) => leg.blind !== undefined);
    expect(blind('through')).toEqual([false, false]);
    expect(blind('blind')).toEqual([true, true]);
    expect(blind('last-blind')).toEqual([false, true]);
  });
});

describe('what is asked for, one after the other', () => {
  const next = (
    sizes: Record<string, ReturnType<typeof typedSize>>,
    more: Record<string, string> = {},
  ): string | undefined =>
    threadInsertWorksheet.nextNeed(givenOf(worksheetOf('thread-insert', { sizes, choices: more })));
  const hole = typedSize('.4487');
  const metal = typedSize('.500');

  test('is thread, hole, then leg after leg until that is all of them', () => {
    expect(next({})).toBe('thread');
    expect(next({}, choices)).toBe('hole');
    expect(next({ hole }, choices)).toBe('thickness');
    expect(next({ hole, thickness: metal }, choices)).toBe('thickness2');
    expect(next({ hole, thickness: metal, thickness2: metal }, { ...choices, legs: 'all' })).toBeUndefined();
  });

  test('ends by itself with the fourth leg', () => {
    const four = Object.fromEntries(legFields.map((name) => [name, metal]));
    expect(next({ hole, ...four }, choices)).toBeUndefined();
  });

  test('leaves the hole out where there is none yet', () => {
    expect(next({}, { ...choices, noHole: 'yes' })).toBe('thickness');
  });

  test.each([{ wall: typedSize('.310') }, { centreToEdge: typedSize('.520') }])(
    'is no further leg once the wall is known: such a worksheet is kept from before, or has gone on',
    (wall) => {
      expect(next({ hole, thickness: metal, ...wall }, choices)).toBeUndefined();
    },
  );

  test('is no further leg once the metal or the bottom was chosen', () => {
    expect(next({ hole, thickness: metal }, { ...choices, metal: 'steel' })).toBeUndefined();
    expect(next({ hole, thickness: metal }, { ...choices, bottom: 'blind' })).toBeUndefined();
  });
});
