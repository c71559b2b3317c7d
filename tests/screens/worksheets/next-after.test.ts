import { expect, test } from 'vitest';
import { nextAfter, type WorksheetPlan } from '../../../src/screens/worksheets/worksheet-plan.ts';
import { planOf } from '../../../src/screens/worksheets/worksheet-plans.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';

const plan: WorksheetPlan | undefined = planOf('hole-and-pin');
const size = { from: 'typed', typed: '.4487', unit: 'in', exact: lengthOf('.4487 in') } as const;

test.each([
  ['with nothing given, from the bore to the pin', {}, {}, 'bore', 'pin'],
  ['with the bore given, from the pin to how it runs', { bore: size }, {}, 'pin', 'joint'],
  [
    'with all but this given, nowhere: it is all that is missing',
    { bore: size },
    { joint: 'located' },
    'pin',
    undefined,
  ],
  ['with all given, to the answer', { bore: size, pin: size }, { joint: 'located' }, 'pin', 'answer'],
])('a foot switch steps on %s', (_what, sizes, choices, field, next) => {
  expect(plan && nextAfter(plan, { sizes, choices }, field)).toBe(next);
});
