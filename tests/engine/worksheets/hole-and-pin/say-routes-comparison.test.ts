import { expect, test } from 'vitest';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import type { RouteKind } from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin-routes.ts';
import { lengthOf, zero, type Length } from '../../../../src/engine/length/length.ts';
import { compareRoutes } from '../../../../src/engine/worksheets/hole-and-pin/route-comparison.ts';
import { sayComparison } from '../../../../src/engine/worksheets/hole-and-pin/say-routes-comparison.ts';
import { sayRoute } from '../../../../src/engine/worksheets/hole-and-pin/say-routes.ts';
import type { ShownUnit } from '../../../../src/engine/length/show.ts';
import { materialNamed, type MaterialId } from '../../../../src/engine/material/tables/materials.ts';

const inch = (text: string): Length => lengthOf(`${text} in`);
const spanOf = (tightest: string, loosest = tightest) => ({
  tightest: typedEstimate(inch(tightest)),
  loosest: typedEstimate(inch(loosest)),
});

const pivot: HoleAndPinQuestion = {
  bore: spanOf('.4484', '.4490'),
  pin: spanOf('.4372'),
  joint: 'turns',
  wall: inch('.400'),
  thickness: inch('.750'),
};
const bolt: HoleAndPinQuestion = {
  ...pivot,
  joint: 'located',
  pinThread: '7/16-20 UNF',
  shankPasses: false,
  clampedFacesCarry: true,
};

function lineOf(kind: RouteKind, question: HoleAndPinQuestion = pivot, unit: ShownUnit = 'in') {
  const route = compareRoutes(holeAndPin(question).routes).find((one) => one.kind === kind);
  if (!route) throw new Error(`no route ${kind}`);
  return sayComparison(route, unit);
}
function saidOf(kind: RouteKind, question: HoleAndPinQuestion = pivot, unit: ShownUnit = 'in') {
  const route = holeAndPin(question).routes.find((one) => one.kind === kind);
  if (!route) throw new Error(`no route ${kind}`);
  return sayRoute(route, unit);
}

test('the comparison keeps the order of the list, every cure in it', () => {
  const { routes } = holeAndPin(pivot);
  expect(compareRoutes(routes).map(({ kind }) => kind)).toEqual(routes.map(({ kind }) => kind));
});

test('a bushing: what goes each side, what stays, both reamers, lathe and press, and what can be renewed', () => {
  // (.5625 − .4484) / 2 = .05705, and .400 − .05705 = .34295, both to the even fourth place
  const { metal, tools, undo, goesWrong } = lineOf('bushing', bolt);
  expect(metal).toBe('Takes .057 in each side; wall left .343 in');
  // inside .4372 to .4392, middle .4382: the stocked .4385 is nearer than 7/16
  expect(tools).toBe('Reamer 9/16 in, lathe, press, reamer .4385 in');
  expect(undo).toBe('No, but the bushing can be renewed');
  expect(goesWrong).toMatch(/closes when it is pressed in/);
});

test('an insert needs its tap and winder, and its drill where the hole is too small', () => {
  expect(lineOf('thread-insert', bolt).tools).toBe('STI tap 7/16-20 UNF, insert winder');
  expect(lineOf('thread-insert', { ...bolt, bore: spanOf('.4420') }).tools).toMatch(/^Drill 29\/64 in/);
});

test('a sleeve takes nothing from the part, and says what the pin comes down to', () => {
  const { metal, tools, undo } = lineOf('sleeve');
  expect(metal).toBe(
    // (.4048 / .4372)³ = .794
    'Takes none from the part; pin down to .4048 in, 79 % of its bending strength; wall left .400 in',
  );
  expect(tools).toBe('Lathe, retaining compound');
  expect(undo).toBe('No, but the sleeve can be renewed');
});

test('a sleeve on a pin that is left as it is comes off again', () => {
  expect(lineOf('sleeve', { ...pivot, pin: spanOf('.4000') }).undo).toMatch(/^Yes/);
});

test('a larger pin can’t be undone, leaving it can, a plug has no figures', () => {
  expect(lineOf('larger-pin').undo).toBe('No, the metal is gone');
  expect(lineOf('leave')).toMatchObject({ tools: 'None', undo: 'Yes, nothing is cut', restores: 'Nothing' });
  expect(lineOf('plug')).toMatchObject({
    metal: 'No figures: named only',
    tools: 'Welder or press, and a mill',
  });
});

test('an offset bushing is bored in place on a mill', () => {
  const { tools } = lineOf('offset-bushing', { ...pivot, offBy: inch('.015') });
  expect(tools).toBe('Reamer 15 mm, lathe, press, mill with a boring head');
});

test('a bore no standard reamer makes is bored', () => {
  // M12 that turns: .4724 + .0010 to .0030, .4734 to .4754: no standard reamer lies between
  expect(lineOf('larger-pin').tools).toBe('Boring head or adjustable reamer');
});

test('a wall nobody measured is said, and one that is gone', () => {
  const { wall: _, ...bare } = bolt;
  expect(lineOf('larger-pin', bare).metal).toMatch(/wall not measured$/);
  expect(lineOf('bushing', { ...bolt, wall: inch('.05') }).metal).toMatch(/no wall left$/);
});

test('a way that is ruled out before any sum is not worked out', () => {
  expect(lineOf('thread-insert')).toMatchObject({ metal: 'Not worked out', tools: 'Not worked out' });
});

test('figures of the comparison come in millimetres too', () => {
  expect(lineOf('sleeve', pivot, 'mm').metal).toContain('pin down to 10.282 mm'); // .4048 · 25.4 = 10.28192
});

function metal(id: MaterialId) {
  const found = materialNamed(id);
  if (!found) throw new Error(id);
  return found;
}

test('a bushing says its grip, what it closes by, the force in both units, and which metals it was worked for', () => {
  const { why } = saidOf('bushing', {
    ...bolt,
    partMetal: metal('low-carbon-steel'),
    bushingMetal: metal('bearing-bronze'),
  });
  expect(why).toContain('Pressed in with .0007 to .002 in of interference (common practice, no source).');
  // by hand in the test of the press: .00032 to .00181, 13,791 N and 981 N
  expect(why).toMatch(/closes by \.0003 to \.0018 in/);
  expect(why).toContain('up to 3,100 lbf (13.8 kN)');
  expect(why).toContain('good for 221 lbf (981 N)');
  expect(why).toMatch(/part of low carbon steel .* bushing of bearing bronze/);
  expect(why).toMatch(/The bushing gives way/);
});

test('a metal nobody named is asked for', () => {
  const partMetal = metal('aluminium-6061');
  expect(saidOf('bushing', bolt).why).toContain('What are the part and the bushing made of?');
  expect(saidOf('bushing', { ...bolt, partMetal }).why).toContain('What is the bushing made of?');
  const bushingMetal = metal('low-carbon-steel');
  expect(saidOf('bushing', { ...bolt, bushingMetal }).why).toContain('What is the part made of?');
});

test('a sleeve says what to turn, its inside, its outside and how long', () => {
  const { what, caution } = saidOf('sleeve');
  for (const words of [
    'Turn the pin down to .4048 in',
    '.4054 to .4057 in inside',
    '.750 in long',
    '.4460 to .4474 in',
  ])
    expect(what).toContain(words);
  expect(caution).toMatch(/weaker for good/);
  expect(saidOf('sleeve', { ...pivot, bore: spanOf('.4484', '.4505') }).what).toMatch(
    /^Ream the bore true first, 29\/64 in \(\.4531 in\)\./,
  );
});

test('an offset bushing says how thick it is on both sides, and is locked', () => {
  const { what, why } = saidOf('offset-bushing', { ...bolt, offBy: inch('.015') });
  expect(what).toMatch(/lock it with a peg or a screw/);
  expect(what).toMatch(/\.015 in off its middle/);
  expect(why).toMatch(/\.0607 in thick on its thin side, least \.060 in .* and \.0907 in on the other/);
});

test('every cure that leaves a hole in the wrong place says so', () => {
  expect(saidOf('larger-pin', { ...bolt, offBy: inch('.015') }).why).toBe(
    'The hole is .015 in off its place, and this leaves it there.',
  );
  expect(saidOf('larger-pin', { ...bolt, offBy: zero }).why).toBe(
    'The hole is in the wrong place, and this leaves it there.',
  );
});

test('no sentence and no line of the comparison has a hole in it', () => {
  const places = [undefined, zero, inch('.015')];
  const bores = ['.4360', '.4380', '.4412', '.4484', '1.6000'];
  const threads = [undefined, '7/16-20 UNF'];
  const questions = (['turns', 'located', 'pressed'] as const).flatMap((joint) =>
    places.flatMap((offBy) =>
      bores.flatMap((bore) =>
        threads.flatMap((pinThread) =>
          [undefined, 'ansi'].map((system): HoleAndPinQuestion => ({
            bore: spanOf(bore),
            pin: spanOf('.4372'),
            joint,
            ...(offBy && { offBy }),
            ...(pinThread !== undefined && { pinThread, wall: inch('.3') }),
            ...(system === 'ansi' && { fitSystem: system }),
          })),
        ),
      ),
    ),
  );
  for (const question of questions)
    for (const route of holeAndPin(question).routes) {
      const said = sayRoute(route, 'mm');
      const [line] = compareRoutes([route]);
      if (!line) throw new Error('no line');
      const texts = Object.values(sayComparison(line, 'mm'));
      const all = [said.title, said.why, ...texts, ...(route.state === 'out' ? [] : [said.what])];
      expect(all.join('\n')).not.toMatch(/NaN|undefined|null|\[object| {2}|\d mm in\b|\.\./);
      expect(all).not.toContain('');
    }
});

test('why a bolt gets no sleeve: its nut clamps it, or there is no room', () => {
  expect(saidOf('sleeve', bolt).why).toMatch(
    /^A bolt that its nut clamps gets no sleeve, and this is a 7\/16-20 UNF\./,
  );
  const turning = { ...pivot, pinThread: '7/16-20 UNF' };
  expect(saidOf('sleeve', turning).why).toMatch(/room for a sleeve wall of \.0038 in, least \.020 in/);
  // bore .4412: outside .4382 at the least, and the pin with its bond is .4384
  expect(saidOf('sleeve', { ...turning, bore: spanOf('.4412') }).why).toMatch(/no room for a sleeve/);
});

test('a pin that would keep too little says both sizes', () => {
  // .2550 − .0020 − .0010 − .040 = .212; nine tenths of .250
  expect(saidOf('sleeve', { ...pivot, bore: spanOf('.2550'), pin: spanOf('.2500') }).why).toBe(
    'The pin would have to be turned down to .212 in, least .225 in (nine tenths of the pin, common practice, no source). It would keep 60 % of its strength in bending.',
  );
});

test('the last resort asks whether the part may be plugged at all, and works out nothing', () => {
  const { why, what } = saidOf('plug', { ...bolt, wall: inch('.05') });
  expect(why).toMatch(/May this part be plugged or welded at all\?.*No figures are worked out/);
  expect(what).toBe('Answer the question first.');
  expect(saidOf('plug', bolt).why).toMatch(/there are other ways/);
});

test('a hole said to be off is asked by how much, and one that nobody called wrong is told of the cure', () => {
  expect(saidOf('offset-bushing', { ...bolt, offBy: zero }).why).toMatch(
    /^How far is the middle of the hole/,
  );
  expect(saidOf('offset-bushing', bolt).why).toMatch(/^Only for a hole that is in the wrong place/);
});

test('a bushing whose bore no standard reamer finishes is bored', () => {
  // A pressed .4300 pin: inside .4285 to .4295, and no reamer lies between 27/64 = .4219, .4365 or 11 mm = .4331
  const pressed = { ...pivot, joint: 'pressed', pin: spanOf('.4300') } as const;
  expect(lineOf('bushing', pressed).tools).toMatch(/boring head or adjustable reamer$/);
});
