import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bearingInSeat,
  type SeatQuestion,
  type SettingWant,
} from '../../../../src/engine/worksheets/bearing-seat/bearing-seat.ts';
import {
  innerSleeve,
  type SleeveQuestion,
} from '../../../../src/engine/worksheets/bearing-seat/inner-sleeve.ts';
import {
  taperSetting,
  type TaperQuestion,
} from '../../../../src/engine/worksheets/bearing-seat/taper-setting.ts';
import type { Between } from '../../../../src/engine/worksheets/bearing-seat/seat-cuts.ts';
import { toleranceEstimate, typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import {
  decimalText,
  lengthOf,
  sameLength,
  times,
  toText,
  type Length,
} from '../../../../src/engine/length/length.ts';
import { usualSleeveExcess } from '../../../../src/engine/worksheets/bearing-seat/tables/bearing-practice.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const shown = (length: Length | undefined) => length && decimalText(length, 'in', 4);
const known = (size: string, plusMinus = '0') => toleranceEstimate(inch(size), inch(plusMinus));
const want = (lower: string, aim: string, upper: string): SettingWant => ({
  aim: inch(aim),
  limits: { lower: inch(lower), upper: inch(upper), source: 'test' },
});
const between = (size: Between | undefined) =>
  size && { aim: shown(size.aim), lower: shown(size.lower), upper: shown(size.upper) };

describe('a bearing .5906 wide on a .062 shim in a recess .650 deep', () => {
  const seat: SeatQuestion = {
    depth: known('.650'),
    goesIn: [
      { size: known('.5906'), count: 1 },
      { size: known('.062'), count: 1 },
    ],
    step: inch('.001'),
  };

  test('stands .0026 proud: what goes in less the depth', () => {
    // .5906 + .062 − .650
    const answer = bearingInSeat(seat);
    expect([answer.goesIn, answer.proud].map(shown)).toEqual(['0.6526', '0.0026']);
    expect(answer.verdict).toBeUndefined();
  });

  test('in a recess .660 deep lies .0074 under the face', () => {
    expect(shown(bearingInSeat({ ...seat, depth: known('.660') }).proud)).toBe('-0.0074');
  });

  test('with the shim in it twice stands .0646 proud', () => {
    const goesIn = [
      { size: known('.5906'), count: 1 },
      { size: known('.062'), count: 2 },
    ];
    expect(shown(bearingInSeat({ ...seat, goesIn }).proud)).toBe('0.0646');
  });

  test('that should stand .002 to .004 proud is good, with nothing to do', () => {
    const answer = bearingInSeat({ ...seat, want: want('.002', '.003', '.004') });
    expect(answer.verdict).toEqual({ kind: 'good' });
    expect([answer.shim, answer.deepen]).toEqual([undefined, undefined]);
  });

  test('that should stand .006 to .010 proud needs a shim of .0054, from .0034 to .0074', () => {
    // .008 − .0026; .006 − .0026; .010 − .0026
    const answer = bearingInSeat({ ...seat, want: want('.006', '.008', '.010') });
    expect(answer.verdict?.kind).toBe('no-good');
    expect(between(answer.shim)).toEqual({ aim: '0.0054', lower: '0.0034', upper: '0.0074' });
    expect(answer.deepen).toBeUndefined();
  });

  test('known to ± .001 leaves .001 less at each end for the shim', () => {
    const answer = bearingInSeat({
      ...seat,
      depth: known('.650', '.001'),
      want: want('.006', '.008', '.010'),
    });
    expect(between(answer.shim)).toEqual({ aim: '0.0054', lower: '0.0044', upper: '0.0064' });
  });

  test('that should lie .001 to .003 deep needs the recess .654 deep, .004 more, cut shy', () => {
    // .650 + .0026 + .002 = .6546, down to .654; from .6536 (.001 deep) to .6556 (.003 deep)
    const answer = bearingInSeat({ ...seat, want: want('-.003', '-.002', '-.001') });
    const cut = answer.deepen?.ok ? answer.deepen.value : undefined;
    expect([cut?.from, cut?.to, cut?.take].map(shown)).toEqual(['0.6500', '0.6540', '0.0040']);
    expect(between(cut)).toEqual({ aim: '0.6546', lower: '0.6536', upper: '0.6556' });
    expect(answer.shim).toBeUndefined();
  });

  test('known to ± .003 can’t be cut to ± .001 nor shimmed to it', () => {
    const vague = { ...seat, depth: known('.650', '.003') };
    const cut = bearingInSeat({ ...vague, want: want('-.009', '-.008', '-.007') }).deepen;
    expect(cut && !cut.ok && cut.refusal.code).toBe('no-proof');
    const shimmed = bearingInSeat({ ...vague, want: want('.011', '.012', '.013') });
    expect([shimmed.shim, shimmed.deepen]).toEqual([undefined, undefined]);
  });

  test('right on an aim that its band reaches past both limits of is too close to call, with nothing to do', () => {
    const answer = bearingInSeat({
      ...seat,
      depth: known('.650', '.003'),
      want: want('.0016', '.0026', '.0036'),
    });
    expect(answer.verdict?.kind).toBe('too-close');
    expect([answer.shim, answer.deepen]).toEqual([undefined, undefined]);
  });

  test('can’t be cut where no step of the dial lies inside', () => {
    const answer = bearingInSeat({ ...seat, step: inch('.010'), want: want('-.003', '-.002', '-.001') });
    expect(answer.deepen && !answer.deepen.ok && answer.deepen.refusal.code).toBe('no-step-in-limits');
  });
});

describe('an aim closer to a limit than the band', () => {
  // Both sizes known to ± .001: their difference to √2 · .001 = .0014, which leaves .0014 to .0036 of 0 to .005.
  const two = (excess: string, aim: string) => ({
    excess: known(excess, '.001'),
    distance: known('2.000', '.001'),
    want: want('0', aim, '.005'),
  });
  const presentOf = (sleeve: string, aim: string) => {
    const { excess, distance, want: wanted } = two(sleeve, aim);
    const q = { between: distance, sleeve: excess, want: wanted, step: inch('.0005') };
    const result = innerSleeve(q);
    if (!result.ok) throw new Error(result.refusal.code);
    return result.value.present;
  };

  test('of .0045 asks for a cut of a sleeve .004 long, not for a shim', () => {
    // 2.004 − (.0040 − .0036) = 2.0036, down to the dial’s 2.0035
    const present = presentOf('2.0040', '.0045');
    expect(present?.verdict.kind).toBe('too-close');
    expect(present?.shim).toBeUndefined();
    expect(present?.trim?.ok && shown(present.trim.value.to)).toBe('2.0035');
  });

  test('of .001 asks for a shim beside a sleeve .0012 long, not for a cut that metal is gone for', () => {
    // .0014 − .0012 = .0002, up to .0036 − .0012 = .0024
    const present = presentOf('2.0012', '.001');
    expect(present?.trim).toBeUndefined();
    expect(between(present?.shim)).toEqual({ aim: '0.0002', lower: '0.0002', upper: '0.0024' });
  });

  test('of .0045 asks for a deeper recess where a bearing stands .0042 proud, never for a shim of less than nothing', () => {
    // .0042 − .0036 = .0006 deeper at least: .600 + .0006, up to .6005 + .0005
    const { deepen, shim } = bearingInSeat({
      depth: known('.600', '.001'),
      goesIn: [{ size: known('.6042', '.001'), count: 1 }],
      want: want('0', '.0045', '.005'),
      step: inch('.0005'),
    });
    expect(shim).toBeUndefined();
    expect(deepen?.ok && shown(deepen.value.to)).toBe('0.6010');
  });

  test('of .0045 has the nut tightened where end play is too close to the most', () => {
    // ± .0014 leaves .0036 of .005: .0040 − .0036
    const { change, turnDegrees } = taperSetting({
      endPlay: known('.0040', '.0014'),
      want: want('0', '.0045', '.005'),
      setBy: 'nut',
      pitch: inch('.05'),
    });
    expect(shown(change.aim)).toBe('0.0004');
    expect(turnDegrees).toBeCloseTo(2.88, 6); // .0004 / .05 · 360
  });
});

describe('the sleeve between two ball bearings whose faces are 2.750 apart', () => {
  const q: SleeveQuestion = {
    between: known('2.750'),
    want: want('0', '.002', '.005'),
    step: inch('.001'),
  };
  const worked = (more: Partial<SleeveQuestion>) => {
    const result = innerSleeve({ ...q, ...more });
    if (!result.ok) throw new Error(result.refusal.code);
    return result.value;
  };

  test('is made 2.752, good from 2.750 to 2.755', () => {
    const { make, present } = worked({});
    expect(between(make)).toEqual({ aim: '2.7520', lower: '2.7500', upper: '2.7550' });
    expect(shown(make.target)).toBe('2.7520');
    expect(present).toBeUndefined();
  });

  test('is rounded longer, never shorter', () => {
    // 2.7504 + .002 = 2.7524, up to 2.753
    expect(shown(worked({ between: known('2.7504') }).make.target)).toBe('2.7530');
  });

  test('of a distance known to ± .001 is good from 2.751 to 2.754', () => {
    const { make } = worked({ between: known('2.750', '.001') });
    expect(between(make)).toEqual({ aim: '2.7520', lower: '2.7510', upper: '2.7540' });
  });

  test('of a distance known to ± .003 can’t be proved', () => {
    expect(innerSleeve({ ...q, between: known('2.750', '.003') })).toMatchObject({
      refusal: { code: 'no-proof' },
    });
  });

  test('must not be wanted shorter than the distance: that loads the balls sideways', () => {
    expect(innerSleeve({ ...q, want: want('-.001', '.001', '.003') })).toMatchObject({
      refusal: { code: 'sleeve-would-side-load', lower: inch('-.001') },
    });
  });

  test('can’t be made where no step of the dial lies inside', () => {
    expect(innerSleeve({ ...q, between: known('2.7502'), step: inch('.010') })).toMatchObject({
      refusal: { code: 'no-step-in-limits' },
    });
  });

  test('of 2.760 is .010 long: face .008 off, to 2.752', () => {
    const { present } = worked({ sleeve: known('2.760') });
    expect(shown(present?.value)).toBe('0.0100');
    expect(present?.verdict).toMatchObject({ kind: 'no-good', way: 'over' });
    const cut = present?.trim?.ok ? present.trim.value : undefined;
    expect([cut?.from, cut?.to, cut?.take].map(shown)).toEqual(['2.7600', '2.7520', '0.0080']);
    expect(between(cut)).toEqual({ aim: '2.7520', lower: '2.7500', upper: '2.7550' });
  });

  test('of 2.748 is .002 short: a shim of .004, from .002 to .007', () => {
    // .002 + .002; .002 + 0; .002 + .005
    const { present } = worked({ sleeve: known('2.748') });
    expect(shown(present?.value)).toBe('-0.0020');
    expect(present?.verdict).toMatchObject({ kind: 'no-good', way: 'under' });
    expect(between(present?.shim)).toEqual({ aim: '0.0040', lower: '0.0020', upper: '0.0070' });
    expect(present?.trim).toBeUndefined();
  });

  test('of exactly the distance is good, and stays', () => {
    const { present } = worked({ sleeve: known('2.750') });
    expect(present?.verdict.kind).toBe('good');
    expect([present?.trim, present?.shim]).toEqual([undefined, undefined]);
  });

  test('that is long by as much as is aimed for and known too badly is left alone', () => {
    const { present } = worked({ sleeve: known('2.752', '.004') });
    expect(present?.verdict.kind).toBe('too-close');
    expect([present?.trim, present?.shim]).toEqual([undefined, undefined]);
  });

  test('right on an aim that is the least, known to ± .001, is too close to call and wants the .001 that proves it', () => {
    const atLeast = { sleeve: known('2.750', '.001'), want: want('0', '0', '.005') };
    const { present } = worked(atLeast);
    expect(present?.verdict.kind).toBe('too-close');
    expect(present?.trim).toBeUndefined();
    // 0 + .001; .005 − .001
    expect(between(present?.shim)).toEqual({ aim: '0.0010', lower: '0.0010', upper: '0.0040' });
  });

  test('known too badly to prove a trim is told so', () => {
    const { present } = worked({ sleeve: known('2.760', '.004') });
    expect(present?.trim && !present.trim.ok && present.trim.refusal.code).toBe('no-proof');
  });

  test.each([
    // Common practice, no source.
    { unit: 'in', lower: '0 in', aim: '.002 in', upper: '.005 in' },
    { unit: 'mm', lower: '0 mm', aim: '0.05 mm', upper: '0.12 mm' },
  ] as const)('is usually $lower to $upper long, best $aim', ({ unit, lower, aim, upper }) => {
    const usual = usualSleeveExcess[unit];
    expect(sameLength(usual.limits.lower, lengthOf(lower))).toBe(true);
    expect(sameLength(usual.aim, lengthOf(aim))).toBe(true);
    expect(sameLength(usual.limits.upper, lengthOf(upper))).toBe(true);
  });
});

describe('taper rollers that should have .001 to .005 end play, best .003', () => {
  const q: TaperQuestion = {
    endPlay: typedEstimate(inch('.009')),
    want: want('.001', '.003', '.005'),
    setBy: 'nut',
    pitch: inch('1/16'),
  };

  test('with .009 have .006 to lose, from .004 to .008', () => {
    // .009 − .003; .009 − .005; .009 − .001
    const answer = taperSetting(q);
    expect(answer.verdict).toMatchObject({ kind: 'no-good', way: 'over' });
    expect(between(answer.change)).toEqual({ aim: '0.0060', lower: '0.0040', upper: '0.0080' });
    expect(answer.provable).toBe(true);
  });

  test('lose it with 34.56° of a nut of 16 threads per inch', () => {
    // .006 / .0625 · 360
    expect(taperSetting(q).turnDegrees).toBeCloseTo(34.56, 10);
  });

  test('with .001 of preload gain .004 with 23.04°, slackening', () => {
    // (−.001 − .003) / .0625 · 360
    const answer = taperSetting({ ...q, endPlay: typedEstimate(inch('-.001')) });
    expect(shown(answer.change.aim)).toBe('-0.0040');
    expect(answer.turnDegrees).toBeCloseTo(-23.04, 10);
  });

  test('whose nut’s thread isn’t known get no angle', () => {
    const { pitch: _pitch, ...noPitch } = q;
    expect(taperSetting(noPitch)).not.toHaveProperty('turnDegrees');
  });

  test('with .003 are left', () => {
    const answer = taperSetting({ ...q, endPlay: typedEstimate(inch('.003')) });
    expect(answer.verdict.kind).toBe('good');
    expect([answer.turnDegrees, answer.shimThicker]).toEqual([undefined, undefined]);
  });

  test('set by a shim between the cones want it .006 thinner: .094 out of .100', () => {
    const answer = taperSetting({ ...q, setBy: 'shim-between', shim: known('.100') });
    expect(between(answer.shimThicker)).toEqual({ aim: '-0.0060', lower: '-0.0080', upper: '-0.0040' });
    expect(between(answer.newShim)).toEqual({ aim: '0.0940', lower: '0.0920', upper: '0.0960' });
    expect(answer.turnDegrees).toBeUndefined();
  });

  test('set by a shim behind a cup want it .006 thicker: .106 out of .100', () => {
    const answer = taperSetting({ ...q, setBy: 'shim-behind', shim: known('.100') });
    expect(between(answer.shimThicker)).toEqual({ aim: '0.0060', lower: '0.0040', upper: '0.0080' });
    expect(between(answer.newShim)).toEqual({ aim: '0.1060', lower: '0.1040', upper: '0.1080' });
  });

  test('set by a shim nobody has measured are told only by how much it has to change', () => {
    expect(taperSetting({ ...q, setBy: 'shim-behind' })).not.toHaveProperty('newShim');
  });

  test('read to ± .003 can’t be proved right', () => {
    expect(taperSetting({ ...q, endPlay: known('.009', '.003') }).provable).toBe(false);
    // ± .002 just leaves the aim.
    expect(taperSetting({ ...q, endPlay: known('.009', '.002') }).provable).toBe(true);
  });
});

describe('of two places the remedy serves the one that binds, and keeps the other', () => {
  test('a sleeve good at its shortest and .0016 too long at its longest is faced from there', () => {
    // 1.2566 − 1.2500 = .0066, want 0 to .005; to 1.2500 + .002, good to 1.2500 + .005
    const result = innerSleeve({
      between: known('1.2500'),
      sleeve: known('1.2507'),
      longest: { between: known('1.2500'), sleeve: known('1.2566') },
      want: want('0', '.002', '.005'),
      step: inch('.001'),
    });
    const present = result.ok ? result.value.present : undefined;
    expect(shown(present?.value)).toBe('0.0066');
    expect(present?.verdict).toMatchObject({ kind: 'no-good', way: 'over' });
    const cut = present?.trim?.ok ? present.trim.value : undefined;
    expect([cut?.from, cut?.to, cut?.take].map(shown)).toEqual(['1.2566', '1.2520', '0.0046']);
    expect(between(cut)).toEqual({ aim: '1.2520', lower: '1.2500', upper: '1.2550' });
  });

  const seat = { goesIn: [{ size: known('.4375'), count: 1 }], step: inch('.0005') };

  test('a bearing .0005 proud here and .0007 under there, wanted 0 to .003 proud, takes a shim for both', () => {
    // At least .0007 for the low place, at most .003 − .0005 for the high one; the middle of both is −.0001, .0016 to .0015.
    const answer = bearingInSeat({
      ...seat,
      depth: known('.4370'),
      leastProud: { ...seat, depth: known('.4382') },
      want: want('0', '.0015', '.003'),
    });
    expect(shown(answer.proud)).toBe('-0.0007');
    expect(answer.verdict).toMatchObject({ kind: 'no-good', way: 'under' });
    expect(between(answer.shim)).toEqual({ aim: '0.0016', lower: '0.0007', upper: '0.0025' });
  });

  test('a recess too shallow on one side is cut no deeper than the other side bears', () => {
    // .5000 goes in. Proud .0062 and .0021, want .002 to .006: a floor from .494 to .498, .496 for .004.
    const goesIn = [{ size: known('.5000'), count: 1 }];
    const answer = bearingInSeat({
      goesIn,
      depth: known('.4938'),
      leastProud: { goesIn, depth: known('.4979') },
      want: want('.002', '.004', '.006'),
      step: inch('.001'),
    });
    expect(answer.verdict).toMatchObject({ kind: 'no-good', way: 'over' });
    const cut = answer.deepen?.ok ? answer.deepen.value : undefined;
    expect([cut?.from, cut?.to].map(shown)).toEqual(['0.4938', '0.4960']);
    expect(between(cut)).toEqual({ aim: '0.4960', lower: '0.4940', upper: '0.4980' });
  });

  test.each([
    // Read in place: .008 too much by .005, −.001 too little by .001; what one wants takes the other further out.
    { fact: 'read in place', depths: ['.4295', '.4295'], direct: ['.0080', '-.0010'] },
    // A floor is good from .4345 to .4375 deep; at .4385 it is past that already.
    { fact: 'by their sum', depths: ['.4295', '.4385'], direct: [] },
  ])('places .009 apart where .003 is allowed have no one remedy, $fact', ({ depths, direct }) => {
    const [high, low] = depths.map((depth, at) => ({
      ...seat,
      depth: known(depth),
      ...(direct[at] !== undefined && { direct: known(direct[at]) }),
    }));
    if (!high || !low) throw new Error('two places');
    const answer = bearingInSeat({ ...high, leastProud: low, want: want('0', '.0015', '.003') });
    expect([answer.shim, answer.deepen]).toEqual([undefined, undefined]);
    expect(shown(answer.apart)).toBe('0.0090');
  });

  test('end play .0025 here and .0060 there, wanted .001 to .005, is set by the middle of both', () => {
    // To lose at least .0060 − .005 and at most .0025 − .001; the middle is .00425, .00125 over .003: .00125 / .0625 · 360.
    const answer = taperSetting({
      endPlay: known('.0025'),
      endPlayMost: known('.0060'),
      want: want('.001', '.003', '.005'),
      setBy: 'nut',
      pitch: inch('1/16'),
    });
    expect(shown(answer.value)).toBe('0.0060');
    expect([answer.change.lower, answer.change.upper].map(shown)).toEqual(['0.0010', '0.0015']);
    expect(answer.turnDegrees).toBeCloseTo(7.2, 10);
    expect(answer.apart).toBeUndefined();
  });

  test('end play .0048 apart round the hub can’t be set inside .004', () => {
    const answer = taperSetting({
      endPlay: known('.0020'),
      endPlayMost: known('.0068'),
      want: want('.001', '.003', '.005'),
      setBy: 'shim-behind',
      shim: known('.100'),
    });
    expect(shown(answer.apart)).toBe('0.0048');
    expect([answer.shimThicker, answer.newShim]).toEqual([undefined, undefined]);
  });
});

describe('laws', () => {
  const thou = (least: number, most: number) =>
    fc.integer({ min: least, max: most }).map((count) => times(lengthOf('.0001 in'), count));

  test('the shim that is asked for brings the bearing to the aim', () => {
    fc.assert(
      fc.property(thou(5000, 9000), thou(4000, 5000), (depth, width) => {
        const q = { depth: typedEstimate(depth), step: inch('.001'), want: want('.001', '.002', '.003') };
        const first = bearingInSeat({ ...q, goesIn: [{ size: typedEstimate(width), count: 1 }] });
        const shim = first.shim?.aim;
        if (!shim) throw new Error('it lies too deep, so a shim is asked for');
        const goesIn = [width, shim].map((size) => ({ size: typedEstimate(size), count: 1 }));
        expect(toText(bearingInSeat({ ...q, goesIn }).proud)).toBe(toText(inch('.002')));
      }),
      { seed: 5, numRuns: 80 },
    );
  });

  test('wider limits never turn a good sleeve into one that is no good', () => {
    fc.assert(
      fc.property(thou(27_480, 27_580), fc.integer({ min: 0, max: 20 }), (length, more) => {
        const verdictWith = (upper: Length) => {
          const limits = { lower: inch('0'), upper, source: 'test' };
          const q = { between: known('2.750', '.0005'), want: { aim: inch('.002'), limits } };
          const result = innerSleeve({ ...q, sleeve: typedEstimate(length), step: inch('.001') });
          return result.ok && result.value.present?.verdict.kind;
        };
        const narrow = verdictWith(inch('.005'));
        const wide = verdictWith(times(lengthOf('.0001 in'), 50 + more));
        expect([narrow, wide]).not.toEqual(['good', 'no-good']);
      }),
      { seed: 6, numRuns: 100 },
    );
  });
});
