import { expect, test } from 'vitest';
import { grownBack } from '../../../src/engine/cut/grown-back.ts';
import { lengthOf, toText } from '../../../src/engine/length/length.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { sayGrownBack } from '../../../src/engine/cut/say-cuts.ts';

const tool = (id: string) => {
  const found = usualTools.find((one) => one.id === id);
  if (!found) throw new Error(`no ${id} in the starter set`);
  return found;
};
const [caliper, inside, micrometer] = ['digital-caliper', 'digital-caliper-inside', 'micrometer-0-1'].map(
  tool,
);

// The sum of both bands; U = 1.96 · √(MPE²/3 + repeatability²): .0012 for the caliper, .0022 for its inside jaws,
// .00015 for the micrometer.
test.each([
  { of: 'bore', before: '29.85 mm', now: '29.60 mm', grown: '0.25', by: inside },
  { of: 'bore', before: '.5012 in', now: '.4990 in', grown: undefined, by: inside }, // .0022 of .0044
  { of: 'bore', before: '.5012 in', now: '.4960 in', grown: '0.13208', by: inside }, // .0052
  { of: 'tap-drill', before: '.4531 in', now: '.4400 in', grown: '0.33274', by: inside },
  { of: 'outside', before: '.9970 in', now: '.9990 in', grown: undefined, by: caliper }, // .0020 of .0024
  { of: 'outside', before: '.9970 in', now: '.9995 in', grown: '0.0635', by: caliper }, // .0025
  { of: 'outside', before: '.4990 in', now: '.4994 in', grown: '0.01016', by: micrometer }, // .0004 of .0003
  { of: 'length', before: '.4990 in', now: '.4985 in', grown: undefined, by: micrometer }, // shorter: cut
  { of: 'recess-depth', before: '.250 in', now: '.240 in', grown: '0.254', by: caliper },
  { of: 'slot-width', before: '.250 in', now: '.260 in', grown: undefined, by: caliper },
] as const)('$of $before, then $now: grown by $grown mm', ({ of, before, now, grown, by }) => {
  const measured = (size: string) => ({ measured: lengthOf(size), ...(by && { tool: by }) });
  const back = grownBack({ of, before: measured(before), now: measured(now) });
  expect(back && toText(back)).toBe(grown);
});

test('without a named tool any growth is asked about', () => {
  const sizes = { before: { measured: lengthOf('1 in') }, now: { measured: lengthOf('1.0001 in') } };
  expect(grownBack({ of: 'outside', ...sizes })).toBeDefined();
});

test('it is said as what it is', () => {
  const sizes = { before: lengthOf('.250 in'), now: lengthOf('.240 in') };
  expect(sayGrownBack('recess-depth', sizes, 'in')).toBe(
    'A recess only gets deeper: .250 in before, .240 in now. Which is wrong?',
  );
});
