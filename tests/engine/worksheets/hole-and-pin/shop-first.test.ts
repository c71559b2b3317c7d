import { describe, expect, test } from 'vitest';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { cutsOfRoutes } from '../../../../src/engine/worksheets/hole-and-pin/cuts-of-routes.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { waysSaid } from '../../cut/cut-said.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const exactly = (text: string) => ({
  tightest: typedEstimate(inch(text)),
  loosest: typedEstimate(inch(text)),
});
const dial = { reads: 'diameter', graduation: inch('.0005') } as const;

/** A bore worn to .4430 on a 7/16 bolt of .4372 that its nut holds: 0 to .002 (common practice). */
const bolt: HoleAndPinQuestion = {
  bore: exactly('.4430'),
  pin: exactly('.4372'),
  joint: 'located',
  pinThread: '7/16-20 UNF',
  wall: inch('.400'),
};

const cutsOn = (q: HoleAndPinQuestion, way: string) =>
  waysSaid(cutsOfRoutes(q, holeAndPin(q), dial))[way] ?? [];

describe('a shop’s own sizes come first', () => {
  test('an inch shop opens the hole for a 1/2 bolt, though an M12 would take less', () => {
    // 1/2 located 0 to .002: .500 to .502; reamers in it: .5000 and .5010, the middle is .5010.
    expect(cutsOn({ ...bolt, shop: 'inch' }, 'larger-pin')[0]).toMatch(/→ \.5010 \(\.5000 to \.5020\)$/);
    expect(cutsOn({ ...bolt, shop: 'metric' }, 'larger-pin')[0]).toMatch(/→ \.47\d\d \(\.4724 to \.4744\)$/);
  });

  test('where the part has no wall for the 1/2, the M12 that leaves enough is named', () => {
    // 1/2: .260 − (.502 − .443)/2 = .2305, half of .502 has to stay; M12: .260 − (.4744 − .443)/2 = .2443, half of .4744 is .2372.
    expect(cutsOn({ ...bolt, shop: 'inch', wall: inch('.260') }, 'larger-pin')[0]).toMatch(/→ \.47/);
    const { routes } = holeAndPin({ ...bolt, shop: 'inch', wall: inch('.100') });
    expect(routes.find(({ kind }) => kind === 'larger-pin')?.state).toBe('out');
  });

  test('a metric shop reams for its bushing in millimetres, an inch shop in fractions', () => {
    // Inside .4392 at the most, two walls of .060: .5592; 9/16 is .5625, 15 mm .5906.
    expect(cutsOn({ ...bolt, shop: 'inch' }, 'bushing')[0]).toMatch(/^Bore, reamed 9\/16 in/);
    expect(cutsOn({ ...bolt, shop: 'metric' }, 'bushing')[0]).toMatch(/^Bore, reamed 15 mm/);
  });
});

describe('a bore that is too tight for its pin', () => {
  // .4365 − .4372: the pin is larger; located wants .4372 to .4392.
  const tight: HoleAndPinQuestion = { ...bolt, bore: exactly('.4365'), shop: 'inch' };

  test('is opened for the pin that is there, and cut so', () => {
    // Reamers between .4372 and .4392: .4375 (7/16) and .4385; the middle is .4382.
    expect(cutsOn(tight, 'open-bore')).toEqual(['Bore, reamed .4385 in: .4365 → .4385 (.4372 to .4392)']);
    expect(cutsOfRoutes(tight, holeAndPin(tight), dial)).toHaveLength(1);
  });

  test('in the wrong place is not: it would stay there', () => {
    expect(cutsOn({ ...tight, offBy: inch('.020') }, 'open-bore')).toEqual([]);
  });

  test('with its pin worn further than the joint has room has nothing it could be opened to', () => {
    const worn = {
      ...tight,
      pin: { tightest: typedEstimate(inch('.4372')), loosest: typedEstimate(inch('.4340')) },
    };
    expect(cutsOn(worn, 'open-bore')).toEqual([]);
  });
});
