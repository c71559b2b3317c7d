import { expect, test } from 'vitest';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import type { Route, RouteKind } from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin-routes.ts';
import { exactDecimalText, lengthOf, zero, type Length } from '../../../../src/engine/length/length.ts';

const inch = (text: string): Length => lengthOf(`${text} in`);
const inInches = (length: Length | undefined): string => (length ? exactDecimalText(length, 'in') : 'none');
const spanOf = (tightest: string, loosest = tightest) => ({
  tightest: typedEstimate(inch(tightest)),
  loosest: typedEstimate(inch(loosest)),
});

const bolt: HoleAndPinQuestion = {
  bore: spanOf('.4484', '.4490'),
  pin: spanOf('.4372'),
  joint: 'located',
  pinThread: '7/16-20 UNF',
  shankPasses: false,
  clampedFacesCarry: true,
  wall: inch('.400'),
  thickness: inch('.750'),
};

function routeOf(kind: RouteKind, more: Partial<HoleAndPinQuestion>): Route {
  const route = holeAndPin({ ...bolt, ...more }).routes.find((one) => one.kind === kind);
  if (!route) throw new Error(`no route ${kind}`);
  return route;
}
const codes = ({ why }: Route): readonly string[] => why.map(({ code }) => code);

test('a hole .015 off: .4392 + 2(.060 + .015) = .5892, so 15 mm, thin side (.590551 − .4392)/2 − .015', () => {
  const route = routeOf('offset-bushing', { offBy: inch('.015') });
  expect(route).toMatchObject({ state: 'in', irreversibleSteps: 3 });
  const [ream, press, bore] = route.steps;
  expect(ream).toMatchObject({ do: 'ream-for-bushing', reamer: { name: '15 mm' } });
  expect(press).toMatchObject({ do: 'press-blank' });
  expect(bore?.do === 'bore-offset' && [bore.by, bore.lower, bore.upper].map(inInches)).toEqual([
    '0.015',
    '0.4372',
    '0.4392',
  ]);
  const walls = route.why.find(({ code }) => code === 'offset-walls');
  if (walls?.code !== 'offset-walls') throw new Error('no walls');
  expect(Number(inInches(walls.thin))).toBeCloseTo(0.060676, 5);
  expect(Number(inInches(walls.thick))).toBeCloseTo(0.090676, 5);
  expect(Number(inInches(route.takes))).toBeCloseTo(0.071076, 5); // (.590551 − .4484) / 2
});

test('the blank is pressed in as any bushing: at 15 mm .0007 to .0020 larger than any hole of H7, 18 µm wide', () => {
  const press = routeOf('offset-bushing', { offBy: inch('.015') }).steps[1];
  if (press?.do !== 'press-blank') throw new Error('no blank');
  expect(Number(inInches(press.outsideLower))).toBeCloseTo(0.59196, 5); // .590551 + .000709 + .0007;
  expect(Number(inInches(press.outsideUpper))).toBeCloseTo(0.592551, 5);
});

test('no other cure moves the hole, so each is ruled out for that', () => {
  for (const kind of ['thread-insert', 'larger-pin', 'bushing', 'leave'] as const) {
    const route = routeOf(kind, { offBy: inch('.015') });
    expect(route.state).toBe('out');
    expect(codes(route)).toContain('place-stays');
  }
  expect(codes(routeOf('sleeve', { offBy: inch('.015'), joint: 'turns' }))).toEqual(['place-stays']);
});

test('a hole in the wrong place is moved even if its pin fits', () => {
  const fits = { bore: spanOf('.4380'), offBy: inch('.015') };
  expect(routeOf('offset-bushing', fits).state).toBe('in');
  expect(routeOf('leave', fits).state).toBe('out');
});

test('a hole said to be off is asked by how much', () => {
  expect(routeOf('offset-bushing', { offBy: zero })).toMatchObject({
    state: 'ask',
    why: [{ code: 'ask-off-by' }],
  });
});

test('a hole nobody called wrong gets no offset bushing', () => {
  expect(codes(routeOf('offset-bushing', {}))).toEqual(['hole-not-off']);
  expect(codes(routeOf('offset-bushing', { bore: spanOf('.4380') }))).toEqual(['not-needed']);
});

test('the further off, the larger the reamer, until the part’s wall or the list of reamers ends it', () => {
  // .4392 + 2(.060 + .5) = 1.5592, and the largest reamer is 1-1/2 in
  expect(codes(routeOf('offset-bushing', { offBy: inch('.5'), wall: inch('3') }))).toEqual(['no-reamer']);
  // .4392 + 2(.060 + .2) = .9592: 61/64 is .953125, so 31/32 = .96875 or 25 mm = .98425: 31/32; a .400 wall keeps .1398
  expect(codes(routeOf('offset-bushing', { offBy: inch('.2') }))).toContain('wall-too-thin');
  expect(codes(routeOf('offset-bushing', { offBy: inch('.015'), pin: spanOf('.4372', '.4340') }))).toEqual([
    'pin-worn',
  ]);
});

test('plug and re-bore is the last resort: only asked about when nothing else can be done', () => {
  expect(routeOf('plug', {})).toMatchObject({ state: 'out', why: [{ code: 'other-cures-first' }] });
  // A wall of .05 bears neither tap, pin nor bushing, and a bolt gets no sleeve.
  expect(routeOf('plug', { wall: inch('.05') })).toMatchObject({
    state: 'ask',
    why: [{ code: 'last-resort' }],
    steps: [],
  });
  expect(codes(routeOf('plug', { bore: spanOf('.4380') }))).toEqual(['not-needed']);
  expect(codes(routeOf('plug', { bore: spanOf('.4360') }))).toEqual(['not-for-a-tight-bore']);
  // The pin fits, but the hole has to move and the wall can't bear it.
  expect(routeOf('plug', { bore: spanOf('.4380'), offBy: inch('.2') }).state).toBe('ask');
});
