import { describe, expect, test } from 'vitest';
import { mean } from '../../../src/engine/reading/estimate.ts';
import { worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import type { AnyWorksheet } from '../../../src/engine/worksheets/worksheet.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { is, typedSize, worksheetOf } from '../worksheets/worksheet-for-test.ts';

/** What a cut that has gone past its limit runs with, by the worksheet that it came from. */
describe('the way out of a bore cut too large', () => {
  test('of a bolt that nobody said more of goes by a bolt that its nut holds, as its worksheet does', () => {
    const given = givenOf(
      worksheetOf('hole-and-pin', {
        sizes: { bore: typedSize('.4545'), pin: typedSize('.4365'), wall: typedSize('.310') },
        choices: { thread: '7/16-20 UNF', fitSystem: 'ISO 286', partMetal: 'cast-iron' },
      }),
    );
    const { mate, joint, system, wall, partMetal } = worksheets['hole-and-pin'].runsWith(given, 'bore');
    expect(mate && is(mean(mate.tightest), '.4365 in')).toBe(true);
    expect([joint, system, partMetal?.id]).toEqual(['located', 'iso', 'cast-iron']);
    expect(is(wall, '.310 in')).toBe(true);
  });

  test('of a fit keeps the class that it was cut for', () => {
    const given = givenOf(
      worksheetOf('fit', {
        sizes: { nominal: typedSize('1/2'), pin: typedSize('.4990') },
        choices: { joint: 'turns', system: 'iso', isoClass: 'H7/g6' },
      }),
    );
    expect(worksheets.fit.runsWith(given, 'bore')).toMatchObject({ fitClass: 'H7/g6', joint: 'turns' });
  });

  test('of a bushing knows its length, its walls and its metals', () => {
    const given = givenOf(
      worksheetOf('bushing', {
        sizes: { pin: typedSize('.5000'), wall: typedSize('.400'), length: typedSize('1.000') },
        choices: { joint: 'turns', partMetal: 'cast-iron', bushingMetal: 'bearing-bronze' },
      }),
    );
    const { depth, partMetal, bushingMetal } = worksheets.bushing.runsWith(given, 'bore');
    expect(is(depth, '1 in')).toBe(true);
    expect([partMetal?.id, bushingMetal?.id]).toEqual(['cast-iron', 'bearing-bronze']);
  });

  test('of a shaft runs in its bore', () => {
    const given = givenOf(
      worksheetOf('fit', { sizes: { bore: typedSize('.5020') }, choices: { joint: 'turns' } }),
    );
    const { mate } = worksheets.fit.runsWith(given, 'outside');
    expect(mate && is(mean(mate.tightest), '.502 in')).toBe(true);
  });

  test('of a kind that has no pin in a hole knows of none', () => {
    const stack: AnyWorksheet = worksheets['spacer-stack'];
    expect(stack.runsWith(givenOf(worksheetOf('spacer-stack', {})), 'length')).toEqual({});
  });
});
