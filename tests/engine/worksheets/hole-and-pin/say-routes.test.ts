import { expect, test } from 'vitest';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import type { RouteKind } from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin-routes.ts';
import { lengthOf, minus, ratioOf, type Length } from '../../../../src/engine/length/length.ts';
import { sayRouteReason } from '../../../../src/engine/worksheets/hole-and-pin/say-route-reason.ts';
import { sayRock, sayRoute } from '../../../../src/engine/worksheets/hole-and-pin/say-routes.ts';
import type { ShownUnit } from '../../../../src/engine/length/show.ts';

const inch = (text: string): Length => lengthOf(`${text} in`);
const spanOf = (tightest: string, loosest: string) => ({
  tightest: typedEstimate(inch(tightest)),
  loosest: typedEstimate(inch(loosest)),
});
const bolt: HoleAndPinQuestion = {
  bore: spanOf('.4484', '.4490'),
  pin: spanOf('.4372', '.4372'),
  joint: 'located',
  pinThread: '7/16-20 UNF',
  shankPasses: false,
  clampedFacesCarry: true,
  wall: inch('.400'),
  thickness: inch('.750'),
};

function said(kind: RouteKind, question: HoleAndPinQuestion = bolt, unit: ShownUnit = 'in') {
  const route = holeAndPin(question).routes.find((one) => one.kind === kind);
  if (!route) throw new Error(`no route ${kind}`);
  return sayRoute(route, unit);
}

test.each([
  {
    loosest: '.0045',
    most: '.003',
    said: 'The slop is .0015 in more than this joint may have (.0045 of .003 in).',
  },
  { loosest: '.006', most: '.003', said: 'The slop is twice what this joint may have (.006 of .003 in).' },
  {
    loosest: '.0075',
    most: '.003',
    said: 'The slop is more than twice what this joint may have (.0075 of .003 in).',
  },
])(
  'a slop of $loosest where $most is the most is called no more than it is',
  ({ loosest, most, said: sentence }) => {
    const [size, upper] = [lengthOf(`${loosest} in`), lengthOf(`${most} in`)];
    const by = minus(size, upper);
    const reason = {
      code: 'too-loose',
      loosest: size,
      upper,
      by,
      timesTheMost: ratioOf(size, upper),
    } as const;
    expect(sayRouteReason(reason, 'in')).toBe(sentence);
  },
);

test('leaving the worn joint: the slop is six times what this joint may have', () => {
  expect(said('leave').why).toMatch(/slop is six times what this joint may have/);
});

test('less than twice the most is said by how much it is over', () => {
  // .4397 − .4372 = .0025, .0005 over .002
  expect(said('leave', { ...bolt, bore: spanOf('.4390', '.4397') }).why).toMatch(/\.0005 in more/);
});

test('the insert says what to tap, which insert, what wall is left, and what it doesn’t restore', () => {
  const { title, what, why, caution } = said('thread-insert');
  expect(title).toContain('7/16-20 UNF');
  expect(what).toMatch(/STI tap 7\/16-20 UNF/);
  expect(why).toMatch(/straight|already to size/);
  expect(why).toMatch(/Wall left \.3711 in, least \.2188 in/); // .400 − (.50245 + .00375 − .4484)/2; .4375/2
  expect(caution).toMatch(/gives back no metal/);
});

test('a bushing says reamer, outside, wall and inside, and what it doesn’t restore', () => {
  const { what, caution } = said('bushing');
  for (const figure of ['9/16 in', '.5625 in', '.5640 to .5645 in', '.0616 in', '.4372 to .4392 in'])
    expect(what).toContain(figure);
  expect(caution).toMatch(/does not give back the strength/);
});

test('figures come in the user’s unit, names of reamers and drills as they are stamped', () => {
  const { what } = said('bushing', bolt, 'mm');
  expect(what).toContain('9/16 in (14.288 mm)'); // .5625 · 25.4 = 14.2875, a tie to the even 8
  expect(what).toContain('1.566 mm'); // .06165 · 25.4 = 1.56591
});

test('a larger pin says which shank, that it is measured first, and that the mating holes are opened too', () => {
  const { title, what } = said('larger-pin');
  expect(title).toContain('M12');
  expect(what).toMatch(/M12 \(\.4724 in\), or 1\/2 in/);
  expect(what).toMatch(/measure its shank/);
  expect(what).toMatch(/holes of the parts/);
});

test('a least wall carries where it comes from', () => {
  expect(said('bushing').why).toMatch(/half the hole's diameter, common practice, no source/);
  expect(said('bushing', { ...bolt, leastWall: inch('.1') }).why).toMatch(/your own limit/);
});

test('a wall too thin is said with both figures', () => {
  const { why, what } = said('bushing', { ...bolt, wall: inch('.120'), leastWall: inch('.094') });
  expect(why).toMatch(/leaves the bushing a wall of \.0304 in, least \.060 in/);
  expect(what).not.toMatch(/Ream/);
});

test('threads in the shear plane are named', () => {
  expect(said('thread-insert', { ...bolt, clampedFacesCarry: false }).why).toMatch(
    /7\/16-20 UNF thread lies in the shear/,
  );
});

test('the rock is said both ways: each way, and in all', () => {
  const arm = { boreLength: inch('2'), bellMouth: inch('.125'), reach: inch('15') };
  const sentence = sayRock(holeAndPin({ ...bolt, arm }), 'in');
  expect(sentence).toContain('±.0944 in'); // .0118 · 15 / 1.875
  expect(sentence).toContain('in all .1888 in');
  expect(sayRock(holeAndPin({ ...bolt, arm }), 'mm')).toContain('±2.398 mm'); // 2.39776
});

test('a bell-mouth as long as the hold is refused politely, and no arm says nothing', () => {
  const arm = { boreLength: inch('1'), bellMouth: inch('1'), reach: inch('15') };
  expect(sayRock(holeAndPin({ ...bolt, arm }), 'in')).toMatch(
    /takes all of the 1\.000 in.*Measure both again/,
  );
  expect(sayRock(holeAndPin(bolt), 'in')).toBeUndefined();
});

test('no sentence of any route has a hole in it or speaks of what is to come', () => {
  const walls = [undefined, '0', '.05', '.4'];
  const bores = ['.4360', '.4380', '.4420', '.4484', '.4600', '.4800', '.6000', '1.6000'];
  const threads = [undefined, '7/16-20 UNF', 'M8', '1-64', 'nonsense'];
  const questions = (['turns-under-load', 'turns', 'slides', 'located', 'pressed'] as const).flatMap(
    (joint) =>
      walls.flatMap((wall) =>
        bores.flatMap((bore) =>
          threads.map((thread): HoleAndPinQuestion => ({
            bore: spanOf(bore, bore),
            pin: spanOf('.4372', '.4372'),
            joint,
            ...(wall !== undefined && { wall: inch(wall) }),
            ...(thread !== undefined && { pinThread: thread }),
          })),
        ),
      ),
  );
  for (const question of questions)
    for (const route of holeAndPin(question).routes) {
      const { title, what, why } = sayRoute(route, 'in');
      // A route that is ruled out has nothing to do, only a reason.
      for (const text of route.state === 'out' ? [title, why] : [title, what, why]) {
        expect(text).not.toMatch(/NaN|undefined|null|\[object|later|not yet| {2}|\d in in\b|\.\./);
        expect(text).not.toBe('');
      }
    }
});
