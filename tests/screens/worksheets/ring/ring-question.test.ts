import { describe, expect, test } from 'vitest';
import { mean } from '../../../../src/engine/reading/estimate.ts';
import { ring } from '../../../../src/engine/worksheets/ring/ring.ts';
import * as engine from '../../../../src/engine/worksheets/ring/question.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../../src/screens/worksheets/worksheet-data.ts';
import type { DrawerPiece } from '../../../../src/store/base/records.ts';
import { featureOf, is, ofFeature, readingOf, tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

const ringQuestion = (data: WorksheetData) => engine.ringQuestion(givenOf(data));
const ringClearances = (data: WorksheetData) => engine.ringClearances(givenOf(data));

const sizes = { recess: typedSize('1.500'), stem: typedSize('.750') };

function piece(name: string, more: Partial<DrawerPiece>): DrawerPiece {
  return { id: name, kind: 'washer', name, material: '', createdAt: 0, ...more };
}

function withDrawer(data: WorksheetData, pieces: readonly { piece: DrawerPiece; count: number }[]) {
  return ringQuestion({ ...data, drawer: pieces })?.blanks.map(({ name }) => name);
}

describe('what a ring worksheet asks', () => {
  test('is recess and stem, and nothing that was not given', () => {
    const question = ringQuestion(worksheetOf('ring', { sizes }));
    expect(question && is(mean(question.recess.tightest), '1.5 in')).toBe(true);
    expect(question && is(mean(question.stem.tightest), '.75 in')).toBe(true);
    expect(question).not.toHaveProperty('depth');
    expect(question).not.toHaveProperty('stayFree');
    expect(question).not.toHaveProperty('leastThickness');
    expect(question?.blanks).toEqual([]);
  });

  test.each([{ left: 'recess' }, { left: 'stem' }] as const)(
    'can’t be asked with only the $left',
    ({ left }) => {
      expect(ringQuestion(worksheetOf('ring', { sizes: { [left]: sizes[left] } }))).toBeUndefined();
    },
  );

  test('takes the recess at its tightest and its loosest, the depth where it is shallowest', () => {
    const micrometer = { tool: tool('digital-caliper') };
    const data = worksheetOf('ring', {
      sizes: { ...sizes, recess: ofFeature('recess'), depth: ofFeature('depth') },
      features: [featureOf('recess', 'bore'), featureOf('depth', 'depth')],
      readings: [
        readingOf('recess', '1.500', { place: 'top' }),
        readingOf('recess', '1.502', { place: 'bottom' }),
        readingOf('depth', '.095', { place: 'top', ...micrometer }),
        readingOf('depth', '.093', { place: 'bottom', ...micrometer }),
      ],
    });
    const question = ringQuestion(data);
    expect(question && is(mean(question.recess.tightest), '1.5 in')).toBe(true);
    expect(question && is(mean(question.recess.loosest), '1.502 in')).toBe(true);
    expect(question?.depth && is(mean(question.depth), '.093 in')).toBe(true);
  });

  test('in millimetres and inches mixed is the same ring: 38.1 mm round .750', () => {
    // 38.1 mm = 1.5 in
    const mixed = ringQuestion(
      worksheetOf('ring', { sizes: { recess: typedSize('38.1 mm'), stem: sizes.stem } }),
    );
    const answer = mixed && ring(mixed);
    // 1.500 − .003
    expect(answer?.ok && is(answer.value.outside.target, '1.497 in')).toBe(true);
  });

  test('carries what must stay free and how thin it may be, below zero too', () => {
    const question = ringQuestion(
      worksheetOf('ring', {
        sizes: { ...sizes, stayFree: typedSize('-.010'), leastThickness: typedSize('.050') },
      }),
    );
    expect(is(question?.stayFree, '-.01 in')).toBe(true);
    expect(is(question?.leastThickness, '.05 in')).toBe(true);
  });

  test('steps a diameter by what the dial shows, a length by one graduation', () => {
    const question = ringQuestion(worksheetOf('ring', { sizes }));
    expect(is(question?.steps.diameter, '.001 in') && is(question?.steps.length, '.001 in')).toBe(true);
  });
});

describe('the clearances of a ring', () => {
  // Common practice, no source: the side that locates .001 to .005, the other .010 to .030.
  test('are close outside and free inside where the recess locates it', () => {
    const { outside, inside } = ringClearances(worksheetOf('ring', { choices: { locates: 'recess' } }));
    expect(is(outside.lower, '.001 in') && is(outside.upper, '.005 in')).toBe(true);
    expect(is(inside.lower, '.010 in') && is(inside.upper, '.030 in')).toBe(true);
  });

  test('are the other way round where the stem does', () => {
    const { outside, inside } = ringClearances(worksheetOf('ring', { choices: { locates: 'stem' } }));
    expect(is(outside.aim, '.020 in') && is(inside.aim, '.003 in')).toBe(true);
  });

  test('are round in millimetres in a metric shop', () => {
    const { outside } = ringClearances(worksheetOf('ring', { unit: 'mm' }));
    expect(is(outside.lower, '0.02 mm') && is(outside.upper, '0.12 mm')).toBe(true);
  });

  test('are one’s own where both were given, aimed at half-way', () => {
    const { outside } = ringClearances(
      worksheetOf('ring', { sizes: { outLeast: typedSize('.004'), outMost: typedSize('.010') } }),
    );
    expect(is(outside.lower, '.004 in') && is(outside.aim, '.007 in') && is(outside.upper, '.010 in')).toBe(
      true,
    );
    expect(outside.source).toBe('your own limits');
  });

  test('with only a least keep the usual room above it, with only a most never cross', () => {
    const least = ringClearances(worksheetOf('ring', { sizes: { outLeast: typedSize('.004') } })).outside;
    // .004 + (.005 − .001)
    expect(is(least.upper, '.008 in')).toBe(true);
    const most = ringClearances(worksheetOf('ring', { sizes: { inMost: typedSize('.008') } })).inside;
    expect(is(most.lower, '.008 in') && is(most.upper, '.008 in')).toBe(true);
  });
});

describe('what a ring could be cut from', () => {
  const data = worksheetOf('ring', { sizes });

  test('is what has a hole, while there is any', () => {
    const names = withDrawer(data, [
      { piece: piece('washer', {}), count: 3 },
      { piece: piece('spacer', { kind: 'spacer' }), count: 1 },
      { piece: piece('shim', { kind: 'shim' }), count: 1 },
      { piece: piece('bar', { kind: 'bar-end' }), count: 1 },
      { piece: piece('none left', {}), count: 0 },
    ]);
    expect(names).toEqual(['washer', 'spacer', 'shim']);
  });

  test('is the washer in hand first, as soon as one of its sizes is typed', () => {
    const inHand = worksheetOf('ring', { sizes: { ...sizes, blankOutside: typedSize('1.625') } });
    expect(withDrawer(inHand, [{ piece: piece('washer', {}), count: 3 }])).toEqual([
      'The washer in hand',
      'washer',
    ]);
  });

  test('carries the sizes the drawer knows', () => {
    const washer = piece('washer', {
      outside: typedSize('1.625'),
      inside: typedSize('.688'),
      thickness: typedSize('5/64'),
    });
    const [blank] = ringQuestion({ ...data, drawer: [{ piece: washer, count: 1 }] })?.blanks ?? [];
    expect(is(blank?.outside, '1.625 in') && is(blank?.inside, '.688 in')).toBe(true);
    expect(is(blank?.thickness, '5/64 in')).toBe(true);
  });
});
