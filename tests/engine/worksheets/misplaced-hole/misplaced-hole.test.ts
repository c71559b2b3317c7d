import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exactDecimalText, floatMm, lengthOf, type Length } from '../../../../src/engine/length/length.ts';
import { modulusGpa } from '../../../../src/engine/material/material.ts';
import { materialNamed, type MaterialId } from '../../../../src/engine/material/tables/materials.ts';
import type { BushingQuestion } from '../../../../src/engine/press/bushing.ts';
import { finest } from '../../../../src/engine/length/finest.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import {
  misplacedHole,
  type MisplacedHoleAnswer,
  type MisplacedHoleQuestion,
} from '../../../../src/engine/worksheets/misplaced-hole/misplaced-hole.ts';
import { sayMisplacedHoleRefusal } from '../../../../src/engine/worksheets/misplaced-hole/say-misplaced-hole.ts';
import { readReference } from '../../../reference/read-csv.ts';

const mm = (text: string): Length => lengthOf(`${text} mm`);
const known = (text: string) => typedEstimate(mm(text));
const part = (size: string) => ({ tightest: known(size), loosest: known(size) });
const inMm = (length: Length | undefined) => (length ? exactDecimalText(length, 'mm') : 'none');

function metal(id: MaterialId) {
  const found = materialNamed(id);
  if (!found) throw new Error(id);
  return found;
}

const bushed: BushingQuestion = {
  bore: part('20.1'),
  pin: part('19.98'),
  insideClass: 'H8/e8',
  pressClass: 'H7/r6',
  part: metal('low-carbon-steel'),
  bushing: metal('bearing-bronze'),
  bushingYieldMpa: 400,
  finish: 'fine',
  condition: 'plain',
  cold: 'freezer',
  shopCelsius: 20,
  step: mm('0.01'),
};

/** A hole of 20.1 drilled 1.5 off, in a boss with 30 of wall. */
const arm: MisplacedHoleQuestion = {
  where: { by: 'offset', offBy: known('1.5'), towardDegrees: 90 },
  bushed,
  wall: known('30'),
  inRightPlace: false,
  lock: 'dowel',
  finest: finest.mm,
};

type More = Partial<Omit<MisplacedHoleQuestion, 'bushed'>> & { readonly bushed?: Partial<BushingQuestion> };

function asked({ bushed: other, ...more }: More = {}) {
  return misplacedHole({ ...arm, ...more, bushed: { ...bushed, ...other } });
}

function answered(more: More = {}): MisplacedHoleAnswer {
  const answer = asked(more);
  if (!answer.ok) throw new Error(answer.refusal.code);
  return answer.value;
}

function saidOf(more: More): string {
  const answer = asked(more);
  return answer.ok ? 'no refusal' : sayMisplacedHoleRefusal(answer.refusal, 'mm');
}

const off = (by: string, towardDegrees = 90): More => ({
  where: { by: 'offset', offBy: known(by), towardDegrees },
});

describe('a hole of 20.1 that is 1.5 off, with a pin of 19.98', () => {
  const answer = answered();

  test('is opened to 27: bore 20.086 + 2 · (1.524 least wall + 1.5 + .0245) is 26.183', () => {
    // H8/e8 at 20: clearance .040 to .106, so 20.020 to 20.086, half way 20.053, down to 20.05 on the dial.
    // That is .07 of clearance, and half of it, .035, is as close as it has to come; seven tenths of that .0245.
    // Least wall .060 in = 1.524.
    expect(inMm(answer.close.within)).toBe('0.035');
    expect(inMm(answer.least)).toBe('26.183');
    expect(inMm(answer.press.ream.size)).toBe('27');
  });

  test('its bushing goes in by the limits that ISO 286 prints for r6 at 27', () => {
    const row = readReference('iso286_deviations.csv').find(
      (one) =>
        one.cell('letter') === 'r' && Number(one.cell('over_mm')) < 27 && Number(one.cell('up_to_mm')) >= 27,
    );
    const grade = readReference('iso286_it.csv').find(
      (one) =>
        one.cell('grade') === 'IT6' && Number(one.cell('over_mm')) < 27 && Number(one.cell('up_to_mm')) >= 27,
    );
    const lower = Number(row?.cell('value_um'));
    const upper = lower + Number(grade?.cell('tolerance_um'));
    expect([lower, upper]).toEqual([28, 41]);
    expect([answer.press.outside.lower, answer.press.outside.upper].map(inMm)).toEqual(['27.028', '27.041']);
  });

  test('has a thin side of 1.9465 to 2.035 and a thick one of 4.9465 to 5.035', () => {
    // (27.028 − 20.086)/2 = 3.471 and (27.041 − 20.020)/2 = 3.5105, less and more 1.5 ∓ .0245
    expect([answer.thin.lower, answer.thin.upper].map(inMm)).toEqual(['1.9465', '2.035']);
    expect([answer.thick.lower, answer.thick.upper].map(inMm)).toEqual(['4.9465', '5.035']);
  });

  test('leaves 26.55 of the wall of 30: half of 27 less 20.1 goes', () => {
    expect(inMm(answer.wall.value)).toBe('26.55');
    expect(answer.wall.verdict.kind).toBe('good');
  });
});

describe('its press', () => {
  test('squeezes it as a ring of its thin side: Lamé by hand', () => {
    // As thick as it is thin all round its bore would be 27 − 2 · 1.9465 = 23.107; the most that r6 is over H7 is 41 µm.
    // In a part that is solid all round: p = δ / (d · [(1 + νo)/Eo + ((d² + Di²)/(d² − Di²) − νi)/Ei]), σ = 2p·d²/(d² − Di²).
    const [d, di, over] = [27, 23.107, 0.041];
    const [steel, bronze] = [bushed.part, bushed.bushing];
    const poisson = ({ low, high }: { low: number; high: number }) => (low + high) / 2;
    const inner = (d ** 2 + di ** 2) / (d ** 2 - di ** 2) - poisson(bronze.poisson);
    const flex =
      (1 + poisson(steel.poisson)) / (1000 * modulusGpa(steel).high) +
      inner / (1000 * modulusGpa(bronze).high);
    const pressureMpa = over / (d * flex);
    const stressMpa = (2 * pressureMpa * d ** 2) / (d ** 2 - di ** 2);
    expect(answered().press.stress?.bushing.equivalentMpa).toBeCloseTo(stressMpa, 6);
  });

  test('a pin that is pressed leaves no clearance to judge by: then .001 in is close enough', () => {
    const { close } = answered({ bushed: { insideClass: 'H7/s6' } });
    expect([inMm(close.within), close.from]).toEqual(['0.0254', 'practice']);
  });
});

const TURN = Array.from({ length: 3600 }, (_, tenth) => (tenth * Math.PI) / 1800);

/** The least way from a circle to a larger one round it, point by point; below zero it breaks out. */
function leastWall(inner: { radius: number; x: number; y: number }, outerRadius: number): number {
  return Math.min(
    ...TURN.map(
      (turned) =>
        outerRadius -
        Math.hypot(inner.x + inner.radius * Math.cos(turned), inner.y + inner.radius * Math.sin(turned)),
    ),
  );
}

describe('as its circles are drawn', () => {
  test.each(['0.2', '0.75', '1.5', '3.1', '5'])('%s off the thin side is never under its least', (by) => {
    const { press, off: set, thin, thick } = answered({ ...off(by, 33), wall: known('60') });
    if (!set) throw new Error('not off');
    const at = (far: number, bore: Length, outside: Length) =>
      leastWall(
        { radius: floatMm(bore) / 2, x: far * Math.cos(0.576), y: far * Math.sin(0.576) },
        floatMm(outside) / 2,
      );
    const [most, least] = [floatMm(set.by) + floatMm(set.within), floatMm(set.by) - floatMm(set.within)];
    const worst = at(most, press.inside.upper, press.outside.lower);
    expect(worst).toBeGreaterThanOrEqual(1.524 - 1e-9);
    expect(floatMm(thin.lower)).toBeCloseTo(worst, 4);
    expect(floatMm(thin.upper)).toBeCloseTo(at(least, press.inside.lower, press.outside.upper), 4);
    // Across the axis through both middles the whole outside is bore, thin side and thick side.
    expect(floatMm(thin.lower) + floatMm(thick.upper)).toBeCloseTo(
      (floatMm(press.outside.lower) +
        floatMm(press.outside.upper) -
        floatMm(press.inside.lower) -
        floatMm(press.inside.upper)) /
        2,
      9,
    );
  });

  test.each(['0.05', '0.75', '1.5', '5'])(
    '%s off, an offset and a mark that are off as far as they may leave the hole close enough, and use most of it',
    (by) => {
      const { off: set, close } = answered({ ...off(by), wall: known('60') });
      if (!set) throw new Error('not off');
      const [e, may, turn] = [floatMm(set.by), floatMm(set.within), (set.degrees * Math.PI) / 180];
      const missed = [-1, -0.5, 0, 0.5, 1].flatMap((along) =>
        [-1, -0.5, 0, 0.5, 1].map((turned) => {
          const far = e + along * may;
          return Math.hypot(far * Math.cos(turned * turn) - e, far * Math.sin(turned * turn));
        }),
      );
      expect(Math.max(...missed)).toBeLessThanOrEqual(floatMm(close.within));
      expect(Math.max(...missed)).toBeGreaterThan(0.9 * floatMm(close.within));
    },
  );

  test.each(['0.2', '1.5', '4'])(
    '%s off and bored in its right place nothing is left of the old hole, and the wall goes by its far edge',
    (by) => {
      const answer = answered({ ...off(by), inRightPlace: true, wall: known('60') });
      const opened = floatMm(answer.press.ream.size) / 2;
      const left = leastWall({ radius: 20.1 / 2, x: 0, y: floatMm(mm(by)) }, opened);
      // .002 in to clean up, on the diameter: common practice
      expect(left).toBeGreaterThanOrEqual(0.0254 - 1e-9);
      expect(answer.off).toBeUndefined();
      // The part's edge is 10.05 + 60 from the old middle, on the side that the hole goes to.
      expect(floatMm(answer.wall.value)).toBeCloseTo(10.05 + 60 - Number(by) - opened, 9);
    },
  );

  test('a reamer that goes midway through both holes of a joint leaves nothing of either', () => {
    const { midway, alongOne } = answered().others;
    for (const side of [-0.75, 0.75])
      expect(leastWall({ radius: 10.05, x: side, y: 0 }, floatMm(midway) / 2)).toBeGreaterThanOrEqual(
        0.0254 - 1e-9,
      );
    expect(leastWall({ radius: 10.05, x: 1.5, y: 0 }, floatMm(alongOne) / 2)).toBeGreaterThanOrEqual(
      0.0254 - 1e-9,
    );
    // and the reamer below each would not do: 20.1 + 1.5 + .0508 = 21.6508 and 23.1508
    expect([midway, alongOne].map(inMm)).toEqual(['22', '24']);
  });

  test('whatever the hole, the pin and the offset, the thin side keeps its least and the opened hole is clean', () => {
    let worked = 0;
    const steps = (least: number, most: number) =>
      fc.integer({ min: least * 100, max: most * 100 }).map((at) => at / 100);
    fc.assert(
      fc.property(steps(8, 24), steps(0.01, 3), steps(0, 2), fc.boolean(), (pin, by, wider, inRightPlace) => {
        const answer = asked({
          ...off(String(by)),
          inRightPlace,
          wall: known('90'),
          bushed: { pin: part(String(pin)), bore: part(String(Number((pin + wider).toFixed(2)))) },
        });
        if (!answer.ok) return;
        worked += 1;
        const { thin, press, off: set } = answer.value;
        const opened = floatMm(press.ream.size) / 2;
        expect(floatMm(thin.lower)).toBeGreaterThanOrEqual(1.524 - 1e-9);
        const far = set ? 0 : by;
        expect(leastWall({ radius: (pin + wider) / 2, x: far, y: 0 }, opened)).toBeGreaterThanOrEqual(
          0.0254 - 1e-6,
        );
      }),
      { numRuns: 60 },
    );
    expect(worked).toBeGreaterThan(30);
  });
});

describe('in inches', () => {
  const inch = (text: string) => lengthOf(`${text} in`);
  const size = (text: string) => ({
    tightest: typedEstimate(inch(text)),
    loosest: typedEstimate(inch(text)),
  });
  const inInches = (length: Length) => exactDecimalText(length, 'in');

  test('.062 off with a .499 pin: .7473 at least, 3/4 reamer, by the limits of RC5 and FN1 as printed', () => {
    const row = (name: string, at: number) => {
      const found = readReference('ansi_b41.csv').find(
        (one) =>
          one.cell('class') === name &&
          Number(one.cell('over_in')) < at &&
          Number(one.cell('up_to_in')) >= at,
      );
      return (column: string) => Number(found?.cell(column)) / 1000;
    };
    const running = row('RC5', 0.5);
    const press = row('FN1', 0.75);
    const answer = misplacedHole({
      ...arm,
      finest: finest.in,
      where: { by: 'offset', offBy: typedEstimate(inch('.0620')) },
      wall: typedEstimate(inch('.750')),
      bushed: {
        ...bushed,
        bore: size('.5010'),
        pin: size('.4990'),
        insideClass: 'RC5',
        pressClass: 'FN1',
        step: inch('.001'),
      },
    });
    if (!answer.ok) throw new Error(answer.refusal.code);
    const { least, press: goesIn, close } = answer.value;
    const bore = {
      lower: 0.499 + running('clearance_min_thou'),
      upper: 0.499 + running('clearance_max_thou'),
    };
    expect([goesIn.inside.lower, goesIn.inside.upper].map((one) => Number(inInches(one)))).toEqual([
      Number(bore.lower.toFixed(5)),
      Number(bore.upper.toFixed(5)),
    ]);
    // half way .50105, down to .501: .002 of clearance, half of it .001, seven tenths of that .0007
    expect(inInches(close.within)).toBe('0.001');
    expect(Number(inInches(least))).toBeCloseTo(bore.upper + 2 * (0.06 + 0.062 + 0.0007), 9);
    expect(goesIn.ream.name).toBe('3/4 in');
    expect([goesIn.outside.lower, goesIn.outside.upper].map((one) => Number(inInches(one)))).toEqual([
      Number((0.75 + press('shaft_lower_thou')).toFixed(5)),
      Number((0.75 + press('shaft_upper_thou')).toFixed(5)),
    ]);
  });
});

describe('what the readings leave open', () => {
  const caliper = usualTools.find(({ id }) => id === 'metric-caliper');
  if (!caliper) throw new Error('no caliper');
  // U = 1.96 · √(s² + MPE²/3): wider than .035 for one reading of a caliper that is good for .02 to .05.
  const read = typedEstimate(mm('1.5'), caliper);

  test('an offset by a caliper is too close to call where it has to come within .035', () => {
    const { judgedPlace } = answered({ where: { by: 'offset', offBy: read } });
    expect(judgedPlace.verdict.kind).toBe('too-close');
    expect(
      answered({ where: { by: 'offset', offBy: read }, within: mm('0.2') }).judgedPlace.verdict.kind,
    ).toBe('good');
  });

  test('a wall is good, too close or no good by its own band: half of 27 is the least, 13.5', () => {
    const wallOf = (wall: string, by = caliper) => answered({ wall: typedEstimate(mm(wall), by) }).wall;
    // 3.45 comes off: 17.5 leaves 14.05, 16.95 leaves 13.5, 16.4 leaves 12.95
    expect(wallOf('17.5').verdict.kind).toBe('good');
    expect(wallOf('16.95').verdict.kind).toBe('too-close');
    expect(wallOf('16.4').verdict).toMatchObject({ kind: 'no-good', way: 'under' });
    expect(floatMm(wallOf('17.5').halfWidth)).toBeGreaterThan(0.01);
  });

  test('bored in its right place, what the offset is not known by is opened as well', () => {
    const exact = answered({ inRightPlace: true });
    const doubtful = answered({ inRightPlace: true, where: { by: 'offset', offBy: read } });
    const more = floatMm(doubtful.least) - floatMm(exact.least);
    expect(more).toBeCloseTo(2 * floatMm(doubtful.place.halfWidth), 9);
  });
});

describe('refused, with what would do', () => {
  test('a hole in its place', () => {
    expect(saidOf(off('0'))).toBe('The hole is in its place: a plain bushing does. Check how far it is off.');
    expect(saidOf(off('0.0003'))).toMatch(/^The hole is in its place/);
  });

  test('a size whose thin side is under its least: (25 − 20.086)/2 − 1.5245 is .9325', () => {
    expect(saidOf({ bushed: { reamTo: mm('25') } })).toBe(
      'At 25.00 mm the thin side is 0.932 mm: want 1.524 mm. Open it to 26.183 mm or more.',
    );
    expect(answered({ bushed: { reamTo: mm('26.183') } }).press.ream.size).toEqual(mm('26.183'));
  });

  test('a size at which the bushing’s bore breaks out', () => {
    expect(saidOf({ bushed: { reamTo: mm('23') } })).toBe(
      'At 23.00 mm the bushing breaks out on its thin side. Open it to 26.183 mm or more.',
    );
  });

  test('a size that leaves some of the old hole: 20.1 + 2 · 1.5 + .0508 in its right place', () => {
    expect(saidOf({ inRightPlace: true, bushed: { reamTo: mm('23.1') } })).toMatch(
      /^23\.10 mm leaves some of the old hole\. Open it to 23\.151 mm or more\.$/,
    );
  });

  test('a hole reamed already is held to the same', () => {
    expect(saidOf({ bushed: { reamed: part('26.1') } })).toMatch(/^At 26\.10 mm the thin side is/);
    expect(answered({ bushed: { reamed: part('27.005') } }).press.next).toBe('turn');
  });

  test('a part whose wall is gone', () => {
    expect(saidOf({ wall: known('3') })).toMatch(/breaks through the part’s edge/);
  });
});

test('one’s own least wall and closeness count: 20.086 + 2 · (2 + 1.5 + .07)', () => {
  const { least, off: set } = answered({ within: mm('0.1'), bushed: { leastBushingWall: mm('2') } });
  expect(inMm(set?.within)).toBe('0.07');
  expect(inMm(least)).toBe('27.226');
});
