import { describe, expect, test } from 'vitest';
import { targetBetween, wayOf } from '../../src/engine/cuts-of-way.ts';
import { lengthOf } from '../../src/engine/length.ts';
import type { CutKind } from '../../src/engine/metal-on.ts';
import { figure } from '../../src/engine/show.ts';

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

describe('where no mark of the dial lies inside, it is cut to the limit that leaves most metal', () => {
  // The marks are .448 and .449, both outside of .4483 to .4487.
  test.each([
    ['outside', '.4487'],
    ['length', '.4487'],
    ['bore', '.4483'],
    ['recess-depth', '.4483'],
    ['slot-width', '.4483'],
  ] as const)('%s: %s', (kind, target) => {
    expect(cutTo(kind, '.4483', '.4487')).toBe(target);
  });
});

test('a way that takes no cut is none', () => {
  expect(wayOf({ id: 'pin', name: 'Turn the pin', offers: [] })).toEqual([]);
});
