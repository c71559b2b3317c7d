import { describe, expect, test } from 'vitest';
import { wayOf } from '../../../src/engine/cut/cuts-of-way.ts';
import { targetBetween } from '../../../src/engine/length/target-between.ts';
import { lengthOf, sameLength } from '../../../src/engine/length/length.ts';
import type { CutKind } from '../../../src/engine/length/metal-on.ts';
import { figure } from '../../../src/engine/length/show.ts';

const thou = lengthOf('.001 in');

function cutTo(kind: CutKind, lower: string, upper: string): string {
  const range = { lower: lengthOf(`${lower} in`), upper: lengthOf(`${upper} in`) };
  return figure(targetBetween(range, kind, thou), 'in');
}

describe('between two limits a part is cut to the mark of the dial that leaves metal on', () => {
  // Half way between .4486 and .4499 is .44925.
  test.each([
    ['outside', '.450 is past the upper limit, so the last mark inside is .449', '.449'],
    ['bore', '.44925 down to the mark below', '.449'],
  ] as const)('%s: %s', (kind, _why, target) => {
    expect(cutTo(kind, '.4486', '.4499')).toBe(target);
  });
});

describe('where no mark of the dial lies inside, it is cut to what the eye tells between two marks', () => {
  // The marks are .448 and .449, both outside of .4483 to .4487; half-way between them is .4485.
  test.each(['outside', 'length', 'bore', 'recess-depth', 'slot-width'] as const)('%s: .4485', (kind) => {
    expect(cutTo(kind, '.4483', '.4487')).toBe('.4485');
  });

  // Between .4486 and .4489 no half lies, but .4488 of the fifths: an outside above the middle .44875, a bore below it.
  test.each([
    ['outside', '.4488'],
    ['bore', '.4486'],
  ] as const)('%s in .4486 to .4489: %s', (kind, target) => {
    expect(cutTo(kind, '.4486', '.4489')).toBe(target);
  });

  test('26.0225 to 26.0355 by marks of .04: 26.032, never 26.036 past its own limit', () => {
    const range = { lower: lengthOf('26.0225 mm'), upper: lengthOf('26.0355 mm') };
    const target = targetBetween(range, 'outside', lengthOf('.04 mm'));
    expect(figure(target, 'mm')).toBe('26.032');
  });
});

test('limits closer than any figure that is shown: the one that leaves most metal', () => {
  const range = { lower: lengthOf('.44831 in'), upper: lengthOf('.44834 in') };
  expect(sameLength(targetBetween(range, 'outside', thou), range.upper)).toBe(true);
  expect(sameLength(targetBetween(range, 'bore', thou), range.lower)).toBe(true);
});

test('a way that takes no cut is none', () => {
  expect(wayOf({ id: 'pin', name: 'Turn the pin', offers: [] })).toEqual([]);
});
