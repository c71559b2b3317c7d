import { expect, test } from 'vitest';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import type { Route } from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin-routes.ts';
import { exactDecimalText, lengthOf, type Length } from '../../../../src/engine/length/length.ts';

const inch = (text: string): Length => lengthOf(`${text} in`);
const inInches = (length: Length | undefined): string => (length ? exactDecimalText(length, 'in') : 'none');
const spanOf = (tightest: string, loosest = tightest) => ({
  tightest: typedEstimate(inch(tightest)),
  loosest: typedEstimate(inch(loosest)),
});

// A pin that turns, .0112 to .0118 loose where it may have .0010 to .0030 (common practice, no source).
const pivot: HoleAndPinQuestion = {
  bore: spanOf('.4484', '.4490'),
  pin: spanOf('.4372'),
  joint: 'turns',
  wall: inch('.400'),
  thickness: inch('.750'),
  pinCaseHardened: false,
};

function sleeveOf(more: Partial<HoleAndPinQuestion> = {}): Route {
  const route = holeAndPin({ ...pivot, ...more }).routes.find(({ kind }) => kind === 'sleeve');
  if (!route) throw new Error('no sleeve');
  return route;
}
const codes = ({ why }: Route): readonly string[] => why.map(({ code }) => code);
const doing = ({ steps }: Route): readonly string[] => steps.map((step) => step.do);

function fitted(route: Route) {
  const step = route.steps.find((one) => one.do === 'fit-sleeve');
  if (!step) throw new Error('no sleeve is fitted');
  const { inside, outside, wall } = step;
  return {
    inside: [inInches(inside.lower), inInches(inside.upper)],
    outside: [inInches(outside.lower), inInches(outside.upper)],
    wall: inInches(wall),
  };
}

test('a pin with too little room is turned down until a .020 sleeve goes on it, and the hole is kept', () => {
  const route = sleeveOf();
  expect(route).toMatchObject({ state: 'in', irreversibleSteps: 2 });
  expect(doing(route)).toEqual(['turn-pin', 'fit-sleeve']);
  // outside .4490 − .0030 to .4484 − .0010; pin .4460 − .0012 of bond − two walls of .020 = .4048
  const turn = route.steps[0];
  expect(turn?.do === 'turn-pin' && inInches(turn.to)).toBe('0.4048');
  // bonded with a sliding clearance of .0003 to .0012, of which the pin has a quarter of .0009 either way: .405025 + .0003
  // to .404575 + .0012; wall (.4460 − .405775) / 2
  expect(fitted(route)).toEqual({
    inside: ['0.405325', '0.405775'],
    outside: ['0.446', '0.4474'],
    wall: '0.0201125',
  });
  expect(inInches(route.takes)).toBe('0');
  expect(inInches(route.wallLeft)).toBe('0.4');
  expect(codes(route)).toEqual(['sleeve-wall', 'pin-core-left']);
});

// .4372 to .4048 loses 1 − .92589³ = 20.6 % of its bending strength; the larger pin takes .013 of .400, the bushing .057: 14 %
test('a pin that would lose a fifth of its strength comes after the cures that leave it whole', () => {
  expect(
    holeAndPin(pivot)
      .routes.map(({ kind }) => kind)
      .slice(0, 3),
  ).toEqual(['larger-pin', 'bushing', 'sleeve']);
});

test.each([
  // (.4460 − (.4048 + .0012)) / 2 = .020 exactly
  { pin: '.4048', does: ['fit-sleeve'], cuts: 0 },
  { pin: '.4049', does: ['turn-pin', 'fit-sleeve'], cuts: 2 },
])('a $pin pin under a .446 sleeve: $does', ({ pin, does, cuts }) => {
  const route = sleeveOf({ pin: spanOf(pin) });
  expect(doing(route)).toEqual(does);
  expect(route.irreversibleSteps).toBe(cuts);
});

test('a pin worn by more than the bond can fill, .0009, is turned down to its worn place and no further', () => {
  expect(doing(sleeveOf({ pin: spanOf('.4000', '.3991') }))).toEqual(['fit-sleeve']);
  const [turn] = sleeveOf({ pin: spanOf('.4000', '.3990') }).steps;
  expect(turn?.do === 'turn-pin' && inInches(turn.to)).toBe('0.399');
});

test('a bore out of true by more than the joint’s .002 of room is reamed first, to 29/64', () => {
  expect(doing(sleeveOf({ bore: spanOf('.4484', '.4504') }))).toEqual(['turn-pin', 'fit-sleeve']);
  // .4505 + .002 to clean up = .4525, and 29/64 is .453125
  const route = sleeveOf({ bore: spanOf('.4484', '.4505') });
  expect(route.steps[0]).toMatchObject({ do: 'ream-true', reamer: { name: '29/64 in' } });
  expect(route.irreversibleSteps).toBe(3);
  expect(inInches(route.takes)).toBe('0.0023625'); // (.453125 − .4484) / 2
  expect(inInches(route.wallLeft)).toBe('0.3976375');
  // .453125 + .000709 (H7, ISO 286-1 over 10 to 18 mm: 18 µm) − .003 to .453125 − .001, so that any reamed hole will do
  expect(fitted(route).outside.map((one) => Number(one).toFixed(6))).toEqual(['0.450834', '0.452125']);
});

test('reaming the bore true needs metal round it', () => {
  expect(codes(sleeveOf({ bore: spanOf('.4484', '.4505'), wall: inch('.2') }))).toContain('wall-too-thin');
  const { wall: _, ...unknown } = pivot;
  const route = holeAndPin({ ...unknown, bore: spanOf('.4484', '.4505') }).routes.find(
    ({ kind }) => kind === 'sleeve',
  );
  expect(route && codes(route)).toContain('ask-wall');
});

test.each([
  // slides .0003 to .0012 and turns .0010 to .0030: bore − .0030 − .0012 − .040 has to be .9 · .400 = .360
  { bore: '.4042', state: 'in' },
  { bore: '.4041', state: 'out' },
])('a .400 pin in a $bore bore, which has to keep .360: $state', ({ bore, state }) => {
  expect(sleeveOf({ bore: spanOf(bore), pin: spanOf('.4000') }).state).toBe(state);
});

test('a pin that would keep too little says to what it would have to come down', () => {
  // .2550 − .0020 − .0010 − .040 = .2120, and nine tenths of .250 is .225
  const [reason] = sleeveOf({ bore: spanOf('.2550'), pin: spanOf('.2500') }).why;
  expect(reason?.code === 'pin-core-too-thin' && [inInches(reason.turnTo), inInches(reason.least)]).toEqual([
    '0.212',
    '0.225',
  ]);
});

test('a bolt held by its nut gets no sleeve, whether its thread is known or not', () => {
  for (const more of [{}, { pinThread: '7/16-20 UNF' }])
    expect(codes(sleeveOf({ joint: 'located', ...more }))).toEqual(['sleeve-not-on-a-bolt']);
});

test('a bolt that turns gets a sleeve as it is or none: it is never turned down', () => {
  const thin = sleeveOf({ pinThread: '7/16-20 UNF' });
  expect(thin.state).toBe('out');
  const [reason] = thin.why;
  expect(reason?.code === 'no-room-for-sleeve' && inInches(reason.wall)).toBe('0.0038'); // (.4460 − .4384) / 2
  expect(doing(sleeveOf({ pin: spanOf('.4000'), pinThread: '3/8-16' }))).toEqual(['fit-sleeve']);
});

test('past the largest reamer, 1-1/2 in, a worn bore can’t be trued for a sleeve', () => {
  expect(codes(sleeveOf({ bore: spanOf('1.510', '1.530'), pin: spanOf('1.500') }))).toEqual(['no-reamer']);
});

test('a joint that fits, and one too tight, need no sleeve', () => {
  expect(codes(sleeveOf({ bore: spanOf('.4390') }))).toEqual(['not-needed']);
  expect(codes(sleeveOf({ bore: spanOf('.4370') }))).toEqual(['not-for-a-tight-bore']);
});

test('whether the pin is case-hardened is asked before it is turned; a hard skin rules it out', () => {
  const { pinCaseHardened: _, ...unsaid } = pivot;
  const asked = holeAndPin(unsaid).routes.find(({ kind }) => kind === 'sleeve');
  expect(asked?.state).toBe('ask');
  expect(asked && codes(asked)[0]).toBe('ask-case-hardened');
  const hard = sleeveOf({ pinCaseHardened: true });
  expect([hard.state, ...codes(hard)]).toEqual(['out', 'case-hardened']);
  // one that isn't turned keeps its skin
  const thin = holeAndPin({ ...unsaid, pin: spanOf('.4000') }).routes.find(({ kind }) => kind === 'sleeve');
  expect(thin?.state).toBe('in');
  expect(sleeveOf({ pin: spanOf('.4000'), pinCaseHardened: true }).state).toBe('in');
});

test('what the pin keeps of its strength is said with what it keeps of its size', () => {
  const [reason] = sleeveOf().why.filter(({ code }) => code === 'pin-core-left');
  // (.4048 / .4372)³ = .92589³ = .7938
  expect(reason?.code === 'pin-core-left' && reason.bendingLeft).toBeCloseTo(0.7938, 3);
});
