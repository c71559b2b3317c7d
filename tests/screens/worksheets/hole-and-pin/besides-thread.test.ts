import { describe, expect, test } from 'vitest';
import { worksheets, type WorksheetKind } from '../../../../src/engine/worksheets/all-worksheets.ts';
import type { AnyWorksheet } from '../../../../src/engine/worksheets/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { ofFeature, typedSize, worksheetOf } from '../worksheet-for-test.ts';

function besides(
  given: Parameters<typeof worksheetOf>[1],
  value: string | undefined,
  kind: WorksheetKind = 'hole-and-pin',
  name = 'thread',
) {
  const worksheet: AnyWorksheet = worksheets[kind];
  return worksheet.besides(givenOf(worksheetOf(kind, given)), name, value);
}

describe('what follows from a bolt’s thread', () => {
  test('the pin has the bolt’s nominal size', () => {
    // 7/16 = .4375
    expect(besides({}, '7/16-20 UNF')).toEqual({ sizes: { pin: '0.4375 in' } });
  });

  test('a metric bolt gives its pin in millimetres', () => {
    expect(besides({}, 'M8x1.25')).toEqual({ sizes: { pin: '8 mm' } });
  });

  test.each([
    { pin: typedSize('.4370'), what: 'typed' },
    { pin: ofFeature('pin'), what: 'measured' },
  ])('a pin that was $what stays', ({ pin }) => {
    expect(besides({ sizes: { pin } }, '7/16-20 UNF')).toEqual({});
  });

  test('the nominal size of the bolt before gives way to the new bolt’s', () => {
    const nominal = { sizes: { pin: typedSize('.4375') }, choices: { thread: '7/16-20 UNF' } };
    expect(besides(nominal, '3/8-16 UNC')).toEqual({ sizes: { pin: '0.375 in' } });
  });

  test('a joint that turns goes on turning', () => {
    expect(besides({ choices: { joint: 'turns' } }, '7/16-20 UNF')).not.toHaveProperty('choices');
  });

  test('nothing follows from a thread that is taken out or doesn’t exist', () => {
    expect(besides({}, undefined)).toEqual({});
    expect(besides({}, '7/16-19 UNF')).toEqual({});
  });

  test('nothing follows from another field, or in another kind', () => {
    expect(besides({}, 'turns', 'hole-and-pin', 'joint')).toEqual({});
    expect(besides({}, '7/16-20 UNF', 'ring')).toEqual({});
  });
});
