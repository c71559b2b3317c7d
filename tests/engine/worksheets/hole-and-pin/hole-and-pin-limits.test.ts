import { expect, test } from 'vitest';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import {
  limitsInForce,
  pressLimits,
  usualLimits,
} from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin-limits.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { exactDecimalText, lengthOf, type Length } from '../../../../src/engine/length/length.ts';

const inch = (text: string): Length => lengthOf(`${text} in`);
const micrometres = ({ lower, upper }: { lower: Length; upper: Length }) =>
  [lower, upper].map((one) => Number(exactDecimalText(one, 'mm')) * 1000);
const tenths = ({ lower, upper }: { lower: Length; upper: Length }) =>
  [lower, upper].map((one) => Math.round(Number(exactDecimalText(one, 'in')) * 10000));

test.each([
  // ISO 286-1, over 18 to 30 mm: H8 0/+33, f7 −20/−41; e8 −40/−73; H7 0/+21, g6 −7/−20; h7 0/−21; s6 +48/+35
  { joint: 'turns-under-load', lower: 20, upper: 74, fitClass: 'H8/f7' },
  { joint: 'turns', lower: 40, upper: 106, fitClass: 'H8/e8' },
  { joint: 'slides', lower: 7, upper: 41, fitClass: 'H7/g6' },
  { joint: 'located', lower: 0, upper: 54, fitClass: 'H8/h7' },
  { joint: 'pressed', lower: -48, upper: -14, fitClass: 'H7/s6' },
] as const)('a 25 mm joint that is $joint may have $lower to $upper µm by $fitClass', (row) => {
  const limits = usualLimits({ joint: row.joint, fitSystem: 'iso' }, lengthOf('25 mm'));
  expect(micrometres(limits)[0]).toBeCloseTo(row.lower, 6);
  expect(micrometres(limits)[1]).toBeCloseTo(row.upper, 6);
  expect(limits.source).toBe(`ISO 286-1, ${row.fitClass}`);
});

test('a 1/2 in pin that turns under load has .0006 to .0023 by RC4: hole 0/+.0010, shaft −.0006/−.0013', () => {
  // ANSI B4.1 RC4, over .40 to .71 in: hole +1.0/0, shaft −.6/−1.3 thousandths: clearance .6 to 2.3
  const limits = usualLimits({ joint: 'turns-under-load', fitSystem: 'ansi' }, inch('.5'));
  expect(tenths(limits)).toEqual([6, 23]);
  expect(limits.source).toMatch(/^ANSI B4\.1, RC4/);
});

test('without a class, common practice stands', () => {
  const limits = usualLimits({ joint: 'located' }, inch('.4372'));
  expect(tenths(limits)).toEqual([0, 20]);
  expect(limits.source).toBe('common practice, no source');
});

test('past its table, 500 mm, a class falls back on common practice and says so', () => {
  const { source } = usualLimits({ joint: 'turns', fitSystem: 'iso' }, lengthOf('600 mm'));
  expect(source).toMatch(/common practice.*H8\/e8 has no limits at this size/);
});

test('a bushing is pressed in by r6, not by the s6 of a solid pin: 25 mm, H7 0/+21, r6 +41/+28', () => {
  const limits = pressLimits({ fitSystem: 'iso' }, lengthOf('25 mm'));
  expect(micrometres(limits)[0]).toBeCloseTo(-41, 6);
  expect(micrometres(limits)[1]).toBeCloseTo(-7, 6);
  expect(tenths(pressLimits({}, inch('9/16')))).toEqual([-20, -7]);
});

test('limits of one’s own come before a class, which stands in for the side left free', () => {
  const ownLimits = { upper: lengthOf('0.050 mm'), source: 'own' };
  const limits = limitsInForce({ joint: 'turns', fitSystem: 'iso', ownLimits }, lengthOf('25 mm'));
  expect(micrometres(limits)[0]).toBeCloseTo(40, 6);
  expect(micrometres(limits)[1]).toBeCloseTo(50, 6);
  expect(limits.source).toBe('own');
  const least = limitsInForce(
    { joint: 'turns', ownLimits: { lower: inch('.010'), source: 'own' } },
    inch('.5'),
  );
  expect(tenths(least)).toEqual([100, 100]);
});

const exactly = (text: string) => ({
  tightest: typedEstimate(inch(text)),
  loosest: typedEstimate(inch(text)),
});
const bolt: HoleAndPinQuestion = {
  bore: exactly('.4484'),
  pin: exactly('.4375'),
  joint: 'located',
  pinThread: '7/16-20 UNF',
  shankPasses: false,
  clampedFacesCarry: true,
  wall: inch('.400'),
};

test('the verdict names its class: a 7/16 bolt by H8/h7, over 10 to 18 mm, may have 27 + 18 = 45 µm', () => {
  const { limits, verdict } = holeAndPin({ ...bolt, fitSystem: 'iso' });
  expect(limits.upper && Number(exactDecimalText(limits.upper, 'mm'))).toBeCloseTo(0.045, 9);
  expect(limits.source).toBe('ISO 286-1, H8/h7');
  expect(verdict.kind).toBe('no-good');
});

test('a class a little closer than common practice is still the usual for its joint: the insert stays in', () => {
  // 45 µm is .0018 in, under the .0020 of common practice
  const insert = holeAndPin({ ...bolt, fitSystem: 'iso' }).routes.find(
    ({ kind }) => kind === 'thread-insert',
  );
  expect(insert?.state).toBe('in');
});

test('a larger pin’s bore follows the class at its own size: M12 by H8/h7 opens to 12.000 to 12.045', () => {
  const pin = holeAndPin({ ...bolt, fitSystem: 'iso' }).routes.find(({ kind }) => kind === 'larger-pin');
  const open = pin?.steps.find((step) => step.do === 'open-bore');
  expect(open && [open.lower, open.upper].map((one) => Number(exactDecimalText(one, 'mm')))).toEqual([
    12, 12.045,
  ]);
});
