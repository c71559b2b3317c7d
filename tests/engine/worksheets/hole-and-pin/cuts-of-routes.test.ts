import { describe, expect, test } from 'vitest';
import { cutsOfRoutes } from '../../../../src/engine/worksheets/hole-and-pin/cuts-of-routes.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { exactDecimalText, lengthOf, minus } from '../../../../src/engine/length/length.ts';
import { materialNamed } from '../../../../src/engine/material/tables/materials.ts';
import { keepsItsLimits, waysSaid } from '../../cut/cut-said.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const part = (tightest: string, loosest = tightest) => ({
  tightest: typedEstimate(inch(tightest)),
  loosest: typedEstimate(inch(loosest)),
});
const dial = { reads: 'diameter', graduation: inch('.0005') } as const;

/** A worn bore on a 7/16-20 bolt, fixed by its nut, .400 of wall, .750 thick. Located at 7/16: 0 to .002 (common practice). */
const bolt: HoleAndPinQuestion = {
  bore: part('.4420', '.4430'),
  pin: part('.4372'),
  joint: 'located',
  pinThread: '7/16-20 UNF',
  shankPasses: false,
  clampedFacesCarry: true,
  metal: 'steel',
  wall: inch('.400'),
  thickness: inch('.750'),
};

/** A 1/2 in pin that turns in a bore worn to .505. Turns at 1/2: .0010 to .0030 (common practice). */
const { pinThread: _bolt, shankPasses: _passes, clampedFacesCarry: _carry, ...plain } = bolt;
const pivot: HoleAndPinQuestion = {
  ...plain,
  bore: part('.5040', '.5050'),
  pin: part('.5000'),
  joint: 'turns',
};

function ways(q: HoleAndPinQuestion) {
  const found = cutsOfRoutes(q, holeAndPin(q), dial);
  expect(found.flatMap((way) => way.offers).every(keepsItsLimits)).toBe(true);
  return found;
}
const cutsOn = (q: HoleAndPinQuestion, route: string) => waysSaid(ways(q))[route] ?? [];

describe('a worn bore on a 7/16-20 bolt', () => {
  test('with an insert is drilled 29/64, then tapped', () => {
    // least minor .4375 + .216506/20 = .4483
    const cuts = cutsOn(bolt, 'thread-insert');
    expect(cuts).toHaveLength(2);
    expect(cuts[0]).toMatch(/^Hole, drilled 29\/64, follows the hole: \.4420 → \.4531 \(\.4483 to /);
    expect(cuts[1]).toMatch(/^Hole, STI tap 7\/16-20 UNF: \.4531 /);
  });

  test('with a larger bolt is opened for it, from the tightest place it has', () => {
    // Next shank that cleans up from .4430 + .002: M12 = .47244; located 0 to .002: .4724 to .4744; 12 mm reamer or .4724..
    const [bore, ...more] = cutsOn(bolt, 'larger-pin');
    expect(bore).toMatch(/^Bore, reamed .*: \.4420 → \.47\d\d \(\.4724 to \.4744\)$/);
    expect(more).toEqual([]);
  });

  test('lists its ways as the routes are ranked', () => {
    const routes = holeAndPin(bolt)
      .routes.filter(({ state }) => state !== 'out')
      .map(({ kind }) => kind);
    expect(ways(bolt).map(({ id }) => id)).toEqual(routes);
  });

  test('that is not sure yet, as nobody said what the nut clamps, is marked so', () => {
    const { clampedFacesCarry: _unknown, ...open } = bolt;
    expect(ways(open).find(({ id }) => id === 'thread-insert')?.unsure).toBe(true);
  });

  test('that fits is not cut at all', () => {
    expect(ways({ ...bolt, bore: part('.4382') })).toEqual([]);
  });
});

describe('a 1/2 in pin that turns in a bore worn to .505', () => {
  test('with a bushing is reamed, the bushing turned for it, then finished inside', () => {
    // Inside .5010 to .5030; two walls of .060: .6230, reamer 5/8 = .6250, H7 over 10 to 18 mm +.018 mm = .6257.
    // Pressed at 5/8 by .0007 to .0020, whichever hole it is: .62571 + .0007 = .6264 to .6250 + .0020 = .6270, left full .6270.
    // Finish .5010 to .5030: reamer nearest the middle .5020 is .5010.
    expect(cutsOn(pivot, 'bushing')).toEqual([
      'Bore, reamed 5/8 in, follows the wear: .5040 → .6250 (.6250 to .6257)',
      'Bushing, outside turned: .6270 (.6264 to .6270)',
      'Bushing, once it is in, reamed .5010 in: .5010 (.5010 to .5030)',
    ]);
  });

  test.each([
    // ISO 286-1, over 10 to 18 mm, at 14.2875: H7 0/+18, r6 +34/+23 µm
    { system: 'iso', unit: 'mm', hole: ['14.2875', '14.3055'], outside: ['14.3105', '14.3215'] },
    // ANSI B4.1, row .56 to .71, at .5625: FN1 hole 0/+.4, shaft +.9/+.6 thousandths
    { system: 'ansi', unit: 'in', hole: ['0.5625', '0.5629'], outside: ['0.5631', '0.5634'] },
  ] as const)('by $system hole and bushing cut to size always grip', ({ system, unit, hole, outside }) => {
    const q = { ...bolt, bore: part('.4420'), fitSystem: system, leastBushingWall: inch('.0595') };
    const [reamed, turned] = ways(q).find(({ id }) => id === 'bushing')?.offers ?? [];
    const limits = (cut: typeof reamed) =>
      cut && [cut.lower, cut.upper].map((one) => one && exactDecimalText(one, unit));
    expect([limits(reamed), limits(turned)]).toEqual([hole, outside]);
  });

  test('is bored where no standard reamer falls inside: a pin of .5020', () => {
    // Over 1/2 in it turns with .0015 to .0040: .5035 to .5060, middle .50475 cut shy: .5045
    const last = cutsOn({ ...pivot, pin: part('.5020'), bore: part('.5090') }, 'bushing').at(-1);
    expect(last).toBe('Bushing, once it is in, bored to size: .5045 (.5035 to .5060)');
  });

  test('with a sleeve on a pin turned down: pin, sleeve inside, then outside once it is on', () => {
    const sleeved = { ...pivot, bore: part('.5050') };
    const [pin, inside, outside] = cutsOn(sleeved, 'sleeve');
    // Outside: .5050 − .0030 to .5050 − .0010, middle .5030.
    expect(outside).toBe('Sleeve, outside once it is bonded on: .5030 (.5020 to .5040)');
    // Sleeve walls of .020 under .5020: .4620 less the bond's .0012 = .4608; a quarter of its room, .000225, either way (.460575 to .461025), full: .4610.
    expect(pin).toBe('Pin, turned down for the sleeve: .5000 → .4610 (.4606 to .4610)');
    // .461025 + .0003 to .460575 + .0012: middle .46155 cut shy to the half thou .4615
    expect(inside).toBe('Sleeve, inside: .4615 (.4613 to .4618)');
  });

  test('any pin and any sleeve inside their limits leave the bond its .0003 to .0012', () => {
    const [pin, inside] =
      ways({ ...pivot, bore: part('.5050') }).find(({ id }) => id === 'sleeve')?.offers ?? [];
    if (!pin || !inside) throw new Error('no sleeve');
    expect(exactDecimalText(minus(inside.lower, pin.upper), 'in')).toBe('0.0003');
    expect(exactDecimalText(minus(inside.upper, pin.lower), 'in')).toBe('0.0012');
  });

  test('in the wrong place is reamed, a blank turned for it, and bored off its middle', () => {
    const off = { ...pivot, offBy: inch('.020'), wall: inch('.500') };
    const cuts = ways(off).find(({ id }) => id === 'offset-bushing')?.offers;
    expect(cuts?.map(({ name }) => name)).toEqual([
      expect.stringMatching(/^Bore, reamed /),
      'Bushing blank, outside turned',
      expect.stringMatching(/^Bushing, off its middle, /),
    ]);
  });

  test('has a bore out of true reamed before a sleeve', () => {
    // .004 out of true is more than the .002 the joint may have
    const [first] = cutsOn({ ...pivot, bore: part('.5010', '.5050') }, 'sleeve');
    expect(first).toMatch(/^Bore, reamed .*: \.5010 → /);
  });

  test('names what part and bushing are made of, where it was said', () => {
    const partMetal = materialNamed('cast-iron');
    const bushingMetal = materialNamed('bearing-bronze');
    if (!partMetal || !bushingMetal) throw new Error('not in the chart');
    const made = ways({ ...pivot, partMetal, bushingMetal }).find(({ id }) => id === 'bushing');
    expect(made?.offers.map(({ material }) => material)).toEqual([
      'cast-iron',
      'bearing-bronze',
      'bearing-bronze',
    ]);
  });

  test('by an ANSI class is reamed to the hole of FN1', () => {
    const [way] = ways({ ...pivot, fitSystem: 'ansi' }).filter(({ id }) => id === 'bushing');
    expect(way?.offers[0]?.limitsFrom).toContain('ANSI B4.1, FN1');
  });

  test('says what each size hangs on', () => {
    const from = ways(pivot)
      .find(({ id }) => id === 'bushing')
      ?.offers.map(({ limitsFrom }) => limitsFrom);
    expect(from).toEqual([
      'the hole of ISO 286-1, H7/r6',
      'the press (common practice, no source) in a hole inside its limits; measure the hole first',
      'the pin and how it runs (common practice, no source)',
    ]);
  });
});
