import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AxleLayoutName, AxleSide } from '../../../../src/engine/worksheets/axle-line-up/axle-layout.ts';
import {
  bandOf,
  toleranceEstimate,
  typedEstimate,
  type Estimate,
} from '../../../../src/engine/reading/estimate.ts';
import {
  decimalText,
  exactDecimalText,
  isNegative,
  lengthOf,
  minus,
  roundForShow,
  sameLength,
  toText,
  type Length,
} from '../../../../src/engine/length/length.ts';
import type { Reach } from '../../../../src/engine/worksheets/axle-line-up/line-up-spacer.ts';
import { givesForMiss } from '../../../../src/engine/worksheets/axle-line-up/line-up-gives.ts';
import {
  lineUp,
  type LineUpAnswer,
  type LineUpQuestion,
} from '../../../../src/engine/worksheets/axle-line-up/line-up.ts';
import { axleLayouts } from '../../../../src/engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { usualLineUpLimits } from '../../../../src/engine/worksheets/axle-line-up/tables/line-up-limits.ts';

type Sizes = Readonly<Record<string, string>>;
type More = Partial<Omit<LineUpQuestion, 'layout' | 'sizes' | 'onHand'>> & {
  readonly onHand?: Sizes;
  readonly estimates?: Readonly<Record<string, Estimate>>;
};

const lengthIn = (text: string) => lengthOf(/[a-z]/.test(text) ? text : `${text} in`);
const shown = (length: Length) => exactDecimalText(length, 'in');
const exactly = (sizes: Sizes) =>
  Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedEstimate(lengthIn(size))]));

function ask(layout: AxleLayoutName, sizes: Sizes, more: More = {}) {
  const { onHand = {}, estimates = {}, ...rest } = more;
  return lineUp({
    layout: axleLayouts[layout],
    side: 'right',
    sizes: { ...exactly(sizes), ...estimates },
    onHand: exactly(onHand),
    limits: usualLineUpLimits.in,
    step: lengthOf('.001 in'),
    ...rest,
  });
}

function answered(layout: AxleLayoutName, sizes: Sizes, more: More = {}): LineUpAnswer {
  const result = ask(layout, sizes, more);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const lengthsOf = ({ spacers }: LineUpAnswer) => spacers.map(({ name, value }) => [name, shown(value)]);
const deedOf = (answer: LineUpAnswer, name: string) => answer.spacers.find((one) => one.name === name)?.deed;
const givesOf = ({ gives }: LineUpAnswer) => gives.map(({ of, by, to }) => [of, shown(by), shown(to)]);
const planesOf = ({ planes }: LineUpAnswer) => planes.map(({ name, at }) => [name, shown(at)]);

/** Hub 4.412 between legs 6.750 apart, wheel centre 2.300 from the hub's left face; disc .312 out, bracket .500, float .010. */
const front: Sizes = {
  width: '6.750',
  hub: '4.412',
  centre: '2.300',
  disc: '.312',
  slot: '.187',
  bracket: '.500',
  float: '.010',
};

describe('a front wheel with one disc and a floating bracket', () => {
  test('has its spacers by A = W/2 + o − c, B = d − p − f/2, C = W − A − H − B − b − f, and the sleeve', () => {
    // A = 3.375 − 2.300 = 1.075; B = .312 − .187 − .005 = .120; C = 6.750 − 1.075 − 4.412 − .120 − .500 − .010 = .633;
    // sleeve = .120 + .500 + .633 + .010 = 1.263 = 6.750 − 1.075 − 4.412
    expect(lengthsOf(answered('front-one-disc', front))).toEqual([
      ['far', '1.075'],
      ['inner', '0.12'],
      ['outer', '0.633'],
      ['sleeve', '1.263'],
    ]);
  });

  test('that is wanted .100 right of the middle has .100 more on its left and less on its right', () => {
    expect(lengthsOf(answered('front-one-disc', { ...front, offset: '.100' }))).toEqual([
      ['far', '1.175'],
      ['inner', '0.12'],
      ['outer', '0.533'],
      ['sleeve', '1.163'],
    ]);
  });

  test('with its disc on the left has c from the hub’s left face still, and its spacers from left to right', () => {
    // Mirrored: c = 4.412 − 2.300 = 2.112, A = 3.375 − 2.112 = 1.263, which is the right spacer.
    // B = .120; C = 6.750 − 1.263 − 4.412 − .120 − .500 − .010 = .445; sleeve 1.075
    expect(lengthsOf(answered('front-one-disc', front, { side: 'left' }))).toEqual([
      ['outer', '0.445'],
      ['inner', '0.12'],
      ['far', '1.263'],
      ['sleeve', '1.075'],
    ]);
  });

  test('with its disc on the left and wanted .100 to the right has .100 less on its right', () => {
    expect(lengthsOf(answered('front-one-disc', { ...front, offset: '.100' }, { side: 'left' }))).toEqual([
      ['outer', '0.545'],
      ['inner', '0.12'],
      ['far', '1.163'],
      ['sleeve', '1.175'],
    ]);
  });

  test.each([{ side: 'right' as const }, { side: 'left' as const }])(
    'has the wheel’s centre .050 left of the middle where that is wanted, its disc on the $side or not',
    ({ side }) => {
      const answer = answered('front-one-disc', { ...front, offset: '-.050' }, { side });
      // 6.750 / 2 − .050 from the left leg, whichever side the disc is on.
      expect(planesOf(answer)).toContainEqual(['wheel centre', '3.325']);
    },
  );

  test('lays its disc and its slot on one plane, and its parts from leg to leg', () => {
    const answer = answered('front-one-disc', front, { side: 'left' });
    // From the left: .445 + .005 + .500 + .005 + .120 + 4.412 + 1.263 = 6.750; disc 1.075 − .312 = .763
    expect(answer.parts.map(({ name, length }) => [name, shown(length)])).toEqual([
      ['outer', '0.445'],
      ['float outside', '0.005'],
      ['bracket', '0.5'],
      ['float inside', '0.005'],
      ['inner', '0.12'],
      ['hub', '4.412'],
      ['far', '1.263'],
    ]);
    expect(planesOf(answer)).toEqual([
      ['slot', '0.763'],
      ['disc', '0.763'],
      ['wheel centre', '3.375'],
    ]);
  });

  test('names what its spacers make hold, and not the sleeve, which only is a length', () => {
    expect(answered('front-one-disc', front).held).toEqual(['fills', 'wheel centre', 'disc in slot']);
  });

  test('in millimetres and inches mixed comes out exactly', () => {
    // 170 mm / 2 = 85 mm; 2.500 in = 63.5 mm; A = 21.5 mm
    const mixed = { ...front, width: '170 mm', hub: '4.000', centre: '2.500' };
    const [far] = answered('front-one-disc', mixed).spacers;
    expect(far && toText(far.value)).toBe('21.5');
  });

  test('that lacks sizes is refused by their names', () => {
    expect(ask('front-one-disc', { width: '6.750', hub: '4.412', slot: '.187' })).toEqual({
      ok: false,
      refusal: { code: 'sizes-missing', names: ['centre', 'disc', 'bracket', 'float'] },
    });
  });

  test('takes no spacer for granted: a length given for one doesn’t bend the others', () => {
    expect(lengthsOf(answered('front-one-disc', { ...front, far: '9.000' }))).toEqual(
      lengthsOf(answered('front-one-disc', front)),
    );
  });

  test('whose conditions don’t fix a length says which', () => {
    const layout = axleLayouts['front-one-disc'];
    const open = { ...layout, conditions: layout.conditions.filter(({ name }) => name !== 'disc in slot') };
    const result = lineUp({
      layout: open,
      side: 'right',
      sizes: exactly(front),
      onHand: {},
      limits: usualLineUpLimits.in,
      step: lengthOf('.001 in'),
    });
    expect(result).toEqual({ ok: false, refusal: { code: 'lengths-free', names: ['inner', 'outer'] } });
  });
});

describe('a spacer that comes out below zero', () => {
  test('between hub and bracket: .063 has to give, and each size that can do it alone says how much', () => {
    // B = .312 − .370 − .005 = −.063. Disc out by .063, or slot in by .063, or float less by .126 (it has only .010).
    const answer = answered('front-one-disc', { ...front, slot: '.370' });
    expect(deedOf(answer, 'inner')).toMatchObject({ kind: 'no-room' });
    expect(lengthsOf(answer)[1]).toEqual(['inner', '-0.063']);
    expect(givesOf(answer)).toEqual([
      ['disc', '0.063', '0.375'],
      ['slot', '-0.063', '0.307'],
    ]);
  });

  test('between bracket and leg: the bracket thinner, the disc in, or the wheel over to the left', () => {
    // C = .633 with b = .500; b = 1.200: C = −.067. d −.067; p −? B grows when p shrinks, C shrinks: p +.067.
    // c is left; offset −.067 → A 1.008; hub 4.345. Float: C = … − f + f/2, so ½ f has to give .067: more than there is.
    const answer = answered('front-one-disc', { ...front, bracket: '1.200' });
    expect(givesOf(answer)).toEqual([
      ['disc', '-0.067', '0.245'],
      ['slot', '0.067', '0.254'],
      ['bracket', '-0.067', '1.133'],
      ['offset', '-0.067', '-0.067'],
      ['hub', '-0.067', '4.345'],
    ]);
  });

  test('is not cured by a change that leaves another one below zero', () => {
    // B = .120 and C = −.167 with b = 1.300: the disc can come in by .120 only, then B has nothing left.
    const names = answered('front-one-disc', { ...front, bracket: '1.300' }).gives.map(({ of }) => of);
    expect(names).toEqual(['bracket', 'offset', 'hub']);
  });

  test('on the side away from the disc: the wheel has to sit further over', () => {
    // A = 3.375 − 3.500 = −.125; C = 6.750 + .125 − 4.412 − .120 − .500 − .010 = 1.833
    const answer = answered('front-one-disc', { ...front, centre: '3.500' });
    expect(givesOf(answer)).toEqual([['offset', '0.125', '0.125']]);
  });

  test('beside a second one that wants the other way has nothing that could give alone', () => {
    // A = −.125 wants the wheel to the right, C = −.167 (bracket 2.500) to the left.
    const answer = answered('front-one-disc', { ...front, centre: '3.500', bracket: '2.500' });
    expect(lengthsOf(answer).slice(0, 3)).toEqual([
      ['far', '-0.125'],
      ['inner', '0.12'],
      ['outer', '-0.167'],
    ]);
    expect(answer.gives).toEqual([]);
  });

  test('that comes to exactly nothing needs no part, and nothing gives', () => {
    // B = .312 − .307 − .005 = 0
    const answer = answered('front-one-disc', { ...front, slot: '.307' });
    expect(deedOf(answer, 'inner')).toEqual({ kind: 'none' });
    expect(answer.spacers[1]?.room.kind).toBe('good');
    expect(answer.gives).toEqual([]);
  });

  test('by less than the readings prove is too close to call', () => {
    const answer = answered('front-one-disc', front, {
      estimates: { slot: toleranceEstimate(lengthIn('.308'), lengthIn('.002')) },
    });
    // B = −.001 ± .002
    expect(answer.spacers[1]?.room.kind).toBe('too-close');
  });
});

describe('a front wheel with two discs', () => {
  const two: Sizes = {
    width: '8.000',
    hub: '4.500',
    centre: '2.300',
    leftDisc: '.300',
    rightDisc: '.350',
    leftSlot: '.150',
    leftBracket: '.500',
    leftFloat: '.020',
  };

  test('has a spacer each side of both brackets, and two sleeves', () => {
    // Left sleeve = 4.000 − 2.300 = 1.700; inner .300 − .150 − .010 = .140; outer 1.700 − .140 − .500 − .020 = 1.040.
    // Right sleeve = 8.000 − 1.700 − 4.500 = 1.800; inner .350 − .150 − .010 = .190; outer 1.800 − .190 − .520 = 1.090.
    expect(lengthsOf(answered('front-two-discs', two))).toEqual([
      ['leftOuter', '1.04'],
      ['leftInner', '0.14'],
      ['rightInner', '0.19'],
      ['rightOuter', '1.09'],
      ['leftSleeve', '1.7'],
      ['rightSleeve', '1.8'],
    ]);
  });

  test('takes its right bracket as its left one until it is measured', () => {
    const answer = answered('front-two-discs', { ...two, rightBracket: '.600', rightFloat: '.040' });
    // Right inner .350 − .150 − .020 = .180; outer 1.800 − .180 − .600 − .040 = .980
    expect(lengthsOf(answer).slice(2, 4)).toEqual([
      ['rightInner', '0.18'],
      ['rightOuter', '0.98'],
    ]);
  });

  test('that lacks its left slot lacks the right one’s stand-in too, and names what was asked for', () => {
    const { leftSlot: _slot, ...others } = two;
    expect(ask('front-two-discs', others)).toEqual({
      ok: false,
      refusal: { code: 'sizes-missing', names: ['leftSlot'] },
    });
  });

  test('too wide on one side only has that side’s sizes to give, or the wheel’s place', () => {
    // Left outer 1.700 − .140 − 1.600 − .020 = −.060; the right bracket is given apart.
    const answer = answered('front-two-discs', { ...two, leftBracket: '1.600', rightBracket: '.500' });
    expect(givesOf(answer)).toEqual([
      ['leftDisc', '-0.06', '0.24'],
      ['leftSlot', '0.06', '0.21'],
      ['leftBracket', '-0.06', '1.54'],
      ['offset', '0.06', '0.06'],
    ]);
  });

  test('is the same whichever side is said: it has no side', () => {
    expect(lengthsOf(answered('front-two-discs', two, { side: 'left' }))).toEqual(
      lengthsOf(answered('front-two-discs', two)),
    );
  });

  test('has both discs on the planes of their slots', () => {
    // Left disc 1.700 − .300 = 1.400; right disc 1.700 + 4.500 + .350 = 6.550
    expect(planesOf(answered('front-two-discs', two))).toEqual([
      ['wheel centre', '4'],
      ['left disc', '1.4'],
      ['left slot', '1.4'],
      ['right disc', '6.55'],
      ['right slot', '6.55'],
    ]);
  });
});

describe('a wheel with a drum brake', () => {
  const drum: Sizes = { width: '7.000', hub: '4.000', centre: '1.900', plate: '.625' };

  test('has a spacer on either side, the brake plate between hub and leg', () => {
    // 3.500 − 1.900 = 1.600; 7.000 − 1.600 − 4.000 − .625 = .775
    expect(lengthsOf(answered('drum', drum))).toEqual([
      ['far', '1.6'],
      ['outer', '0.775'],
    ]);
  });

  test('with the brake on its left has the same centre', () => {
    // Mirrored c = 2.100: right spacer 1.400; left 7.000 − 1.400 − 4.000 − .625 = .975; .975 + .625 + 1.900 = 3.500
    expect(lengthsOf(answered('drum', drum, { side: 'left' }))).toEqual([
      ['outer', '0.975'],
      ['far', '1.4'],
    ]);
  });

  test('that is too wide for its legs says that plate, hub or the wheel’s place must give', () => {
    // 7.000 − 1.600 − 4.000 − 1.450 = −.050
    expect(givesOf(answered('drum', { ...drum, plate: '1.450' }))).toEqual([
      ['offset', '-0.05', '-0.05'],
      ['plate', '-0.05', '1.4'],
      ['hub', '-0.05', '3.95'],
    ]);
  });
});

describe('a trailer hub on its stub axle', () => {
  const trailer: Sizes = { seat: '5.250', hub: '3.875', mount: '1.500', wheelPlace: '2.000' };

  test('has a spacer at the shoulder and one under the nut', () => {
    // 2.000 − 1.500 = .500; 5.250 − .500 − 3.875 = .875
    expect(lengthsOf(answered('trailer-hub', trailer))).toEqual([
      ['far', '0.5'],
      ['outer', '0.875'],
    ]);
  });

  test('on the left of the trailer is the same, seen in a mirror', () => {
    const answer = answered('trailer-hub', trailer, { side: 'left' });
    expect(lengthsOf(answer)).toEqual([
      ['outer', '0.875'],
      ['far', '0.5'],
    ]);
    // 2.000 from the shoulder, which is now on the right: 5.250 − 2.000
    expect(planesOf(answer)).toEqual([['wheel face', '3.25']]);
  });

  test('that is too long for its nut says where the room could come from', () => {
    // 5.250 − .500 − 4.800 = −.050
    expect(givesOf(answered('trailer-hub', { ...trailer, hub: '4.800' }))).toEqual([
      ['wheelPlace', '-0.05', '1.95'],
      ['hub', '-0.05', '4.75'],
      ['seat', '0.05', '5.3'],
    ]);
  });
});

describe('a rear wheel with its centre and its sprocket line both wanted', () => {
  const rear: Sizes = { ...front, sprocket: '.200', chainLine: '2.460' };
  const lineOf = (answer: LineUpAnswer) => answer.checks.find(({ kind }) => kind === 'line');

  test('on centre has its sprocket .040 right of the chain: the line can’t hold', () => {
    // A = 1.075: sprocket at 1.075 − .200 = .875; chain at 3.375 − 2.460 = .915; .875 − .915 = −.040
    const answer = answered('rear-sprocket', rear);
    expect(lengthsOf(answer)).toEqual(lengthsOf(answered('front-one-disc', front)));
    const line = lineOf(answer);
    expect(line && [line.name, shown(line.value), line.verdict.kind]).toEqual([
      'sprocket line',
      '-0.04',
      'no-good',
    ]);
    expect(line?.against).toEqual(['wheel centre']);
    expect(answer.held).not.toContain('sprocket line');
  });

  test('says by how much which size would have to give for both to hold', () => {
    // Sprocket in to .160, chain line out to 2.500, or the wheel .040 further right.
    expect(
      lineOf(answered('rear-sprocket', rear))?.gives.map(({ of, by, to }) => [of, shown(by), shown(to)]),
    ).toEqual([
      ['sprocket', '-0.04', '0.16'],
      ['chainLine', '0.04', '2.5'],
      ['offset', '0.04', '0.04'],
    ]);
  });

  test('with the sprocket first is off centre by as much the other way', () => {
    // A = 3.375 − 2.460 + .200 = 1.115; the centre comes to 3.415, .040 right of 3.375
    const answer = answered('rear-sprocket', rear, { first: 'sprocket line' });
    expect(lengthsOf(answer)[0]).toEqual(['far', '1.115']);
    const line = lineOf(answer);
    expect(line && [line.name, shown(line.value)]).toEqual(['wheel centre', '0.04']);
    expect(line?.against).toEqual(['sprocket line']);
  });

  test('with the disc on the left has its sprocket on the right, and its miss the other way round', () => {
    // Mirrored c = 2.112, A = 1.263; sprocket at 1.263 − .200 = 1.063, chain at .915: .148 toward the disc, to the left.
    const line = lineOf(answered('rear-sprocket', rear, { side: 'left' }));
    expect(line && shown(line.value)).toBe('-0.148');
  });

  test('that happen to agree both hold', () => {
    const line = lineOf(answered('rear-sprocket', { ...rear, chainLine: '2.500' }));
    expect(line?.verdict.kind).toBe('good');
    expect(line?.gives).toEqual([]);
  });

  test.each([
    { chainLine: '2.470', off: 'exactly at', verdict: 'good' },
    { chainLine: '2.4699', off: 'just past', verdict: 'no-good' },
  ])('and the line $off the .030 it may be off is $verdict', ({ chainLine, verdict }) => {
    // .875 − (3.375 − 2.470) = −.030
    expect(lineOf(answered('rear-sprocket', { ...rear, chainLine }))?.verdict.kind).toBe(verdict);
  });

  test('pays no heed to a first that is none of its wishes', () => {
    expect(lineOf(answered('rear-sprocket', rear, { first: 'disc in slot' }))?.name).toBe('sprocket line');
  });
});

test('a size that has no share in a miss, or may only go the other way, can’t cure it', () => {
  const miss = { value: lengthIn('.040'), terms: [{ of: 'sprocket', top: -1, bottom: 1 }] };
  const sum = { ...miss, band: bandOf(typedEstimate(lengthIn('0'))), worstCase: lengthIn('0') };
  const sizes = exactly({ sprocket: '.200', hub: '4.412' });
  const may = (of: string, way: 'grow' | 'shrink' | 'both') =>
    givesForMiss(sum, [{ of, may: way }], sizes).length;
  // .040 − s: the sprocket has to grow by .040.
  expect([
    may('hub', 'both'),
    may('sprocket', 'shrink'),
    may('sprocket', 'grow'),
    may('sprocket', 'both'),
  ]).toEqual([0, 0, 1, 1]);
});

describe('what the bracket’s float has to do', () => {
  const worn: Sizes = { ...front, float: '.250', padWear: '.220' };
  const wear = (sizes: Sizes, more: More = { slides: 'bracket' }) =>
    answered('front-one-disc', sizes, more).checks.find(({ kind }) => kind === 'pad-wear');

  test.each([
    // .250 − .220 = .030 above the wear; .010 is the least (common practice, no source)
    { float: '.250', left: '0.03', verdict: 'good' },
    { float: '.230', left: '0.01', verdict: 'good' },
    { float: '.229', left: '0.009', verdict: 'no-good' },
  ])(
    'a bracket that follows its pads with $float of float for .220 of wear is $verdict',
    ({ float, left, verdict }) => {
      const check = wear({ ...worn, float });
      expect(check && [shown(check.value), check.verdict.kind]).toEqual([left, verdict]);
    },
  );

  test('a caliper that slides on its own pins asks nothing of the bracket’s float', () => {
    expect(wear(worn, { slides: 'caliper' })).toBeUndefined();
    expect(wear(worn, {})).toBeUndefined();
  });

  test('a bracket whose pads’ wear isn’t known can’t be judged by it', () => {
    expect(wear(front)).toBeUndefined();
  });

  const room = (sizes: Sizes) =>
    answered('front-one-disc', sizes).checks.find(({ kind }) => kind === 'disc-in-slot');

  test.each([
    // (.300 − .160 − f) / 2; .005 has to be left, and .010 for a runout that isn't read (common practice, no source)
    { float: '.010', left: '0.065', verdict: 'good' },
    { float: '.110', left: '0.015', verdict: 'good' },
    { float: '.111', left: '0.0145', verdict: 'no-good' },
    { float: '.140', left: '0', verdict: 'no-good' },
    { float: '.142', left: '-0.001', verdict: 'no-good' },
  ])('a disc of .160 in a slot of .300 with $float of float is $verdict', ({ float, left, verdict }) => {
    const check = room({ ...front, float, slotWidth: '.300', discThickness: '.160' });
    expect(check && [shown(check.value), check.verdict.kind]).toEqual([left, verdict]);
  });

  test.each([{ slotWidth: '.300' }, { discThickness: '.160' }])(
    'a slot with only %j known isn’t judged',
    (one) => {
      expect(room({ ...front, ...one })).toBeUndefined();
    },
  );
});

describe('a spacer beside the part on hand (A wants 1.075, ± .005 allowed, dial .001)', () => {
  const deed = (far: string, more: More = {}) =>
    deedOf(answered('front-one-disc', front, { onHand: { far }, ...more }), 'far');
  const cutOf = (found: ReturnType<typeof deed>) =>
    found?.kind === 'trim' && found.cut.ok
      ? [found.cut.value.to, found.cut.value.take, found.cut.value.lower, found.cut.value.upper].map(shown)
      : found;

  test.each([
    { size: '1.075', kind: 'keep' },
    { size: '1.080', kind: 'keep' },
    { size: '1.070', kind: 'keep' },
    { size: '1.0801', kind: 'trim' },
    { size: '1.0699', kind: 'shim' },
  ])('of $size: $kind', ({ size, kind }) => {
    expect(deed(size)?.kind).toBe(kind);
  });

  // Sleeve, inner and outer one share the float's .005, .00167 each; left spacer and sleeve the room's .005, of which the
  // left one has .00333, in tenths of the dial .0033.
  test('of 1.110 is trimmed by .035 to 1.075, good from 1.0717 to 1.0783', () => {
    expect(cutOf(deed('1.110'))).toEqual(['1.075', '0.035', '1.0717', '1.0783']);
  });

  test('is left full to the dial’s next step: 1.0742 is cut to 1.075', () => {
    // W = 6.7484: A = 3.3742 − 2.300
    const answer = answered('front-one-disc', { ...front, width: '6.7484' }, { onHand: { far: '1.110' } });
    expect(cutOf(deedOf(answer, 'far'))).toEqual(['1.075', '0.035', '1.0709', '1.0775']);
  });

  test('of 1.060 is shimmed by .015, from .0117 to .0183, or made new', () => {
    const found = deed('1.060');
    expect(found?.kind === 'shim' && found.shim.ok && Object.values(found.shim.value).map(shown)).toEqual([
      '0.015',
      '0.0117',
      '0.0183',
    ]);
    expect(found?.kind === 'shim' && found.make.ok && shown(found.make.value.to)).toBe('1.075');
  });

  test('with none on hand is made new, good from 1.0717 to 1.0783', () => {
    const found = deedOf(answered('front-one-disc', front), 'far');
    expect(found?.kind === 'make' && found.make.ok && Object.values(found.make.value).map(shown)).toEqual([
      '1.075',
      '1.0717',
      '1.0783',
    ]);
  });

  test('has for its cut what the band leaves: known to ± .003, from 1.073 to 1.077', () => {
    const estimates = { centre: toleranceEstimate(lengthIn('2.300'), lengthIn('.003')) };
    expect(cutOf(deed('1.110', { estimates }))).toEqual(['1.075', '0.035', '1.073', '1.077']);
    // .0015 from 1.080 with a band of .003: inside it, so it can't be called.
    expect(deed('1.0785', { estimates })).toMatchObject({
      kind: 'too-close',
      verdict: { kind: 'too-close', near: 'upper' },
    });
    expect(deed('1.077', { estimates })?.kind).toBe('keep');
  });

  const unprovedIn = ({ to, unproved }: Reach) => [
    shown(to),
    unproved && shown(roundForShow(unproved, lengthOf('.0001 in'))),
  ];

  test('with a band wider than it may be off isn’t proved, and its figure stands all the same', () => {
    const estimates = { centre: toleranceEstimate(lengthIn('2.300'), lengthIn('.006')) };
    const trim = deed('1.110', { estimates });
    expect(trim?.kind === 'trim' && trim.cut.ok && unprovedIn(trim.cut.value)).toEqual(['1.075', '0.006']);
    const shim = deed('1.040', { estimates });
    expect(shim?.kind === 'shim' && shim.shim.ok && unprovedIn(shim.shim.value)).toEqual(['0.035', '0.006']);
    const make = deedOf(answered('front-one-disc', front, { estimates }), 'far');
    expect(make?.kind === 'make' && make.make.ok && unprovedIn(make.make.value)).toEqual(['1.075', '0.006']);
  });

  test('with a dial too coarse for its limits says so', () => {
    // 1.0742 ± .005 has no multiple of .050 in it.
    const coarse = { step: lengthOf('.050 in') };
    const answer = answered('front-one-disc', { ...front, width: '6.7284' }, coarse);
    const found = deedOf(answer, 'far');
    expect(found?.kind === 'make' && !found.make.ok && found.make.refusal.code).toBe('no-step-in-limits');
    const trimmed = deedOf(
      answered('front-one-disc', { ...front, width: '6.7284' }, { ...coarse, onHand: { far: '1.110' } }),
      'far',
    );
    expect(trimmed?.kind === 'trim' && !trimmed.cut.ok && trimmed.cut.refusal.code).toBe('no-step-in-limits');
  });

  test('of .021 has limits that don’t reach below the .020 that can be faced', () => {
    // B = .312 − .286 − .005 = .021; its share is .0016
    const found = deedOf(answered('front-one-disc', { ...front, slot: '.286' }), 'inner');
    expect(found?.kind === 'make' && found.make.ok && shown(found.make.value.lower)).toBe('0.02');
  });

  test('shorter by what a shim makes up, with the band of the sum known', () => {
    const estimates = {
      centre: toleranceEstimate(lengthIn('2.300'), lengthIn('.003')),
    };
    const found = deedOf(
      lineUpWith({ far: toleranceEstimate(lengthIn('1.055'), lengthIn('.004')) }, estimates),
      'far',
    );
    // Band √(.003² + .004²) = .005: nothing but the aim itself is left of ± .005.
    expect(
      found?.kind === 'shim' &&
        found.shim.ok &&
        Object.values(found.shim.value).map((one) => decimalText(one, 'in', 5)),
    ).toEqual(['0.02000', '0.02000', '0.02000']);
  });
});

function lineUpWith(
  onHand: Readonly<Record<string, Estimate>>,
  estimates: Readonly<Record<string, Estimate>>,
) {
  const result = lineUp({
    layout: axleLayouts['front-one-disc'],
    side: 'right',
    sizes: { ...exactly(front), ...estimates },
    onHand,
    limits: usualLineUpLimits.in,
    step: lengthOf('.001 in'),
  });
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

describe('laws of a line-up', () => {
  const seed = 20_261_126;
  const size = (least: number, most: number) =>
    fc.integer({ min: least * 1000, max: most * 1000 }).map((thou) => `${thou} thou`);
  const sizes = fc.record({
    width: size(5, 9),
    hub: size(3, 5),
    centre: size(1, 3),
    offset: fc.integer({ min: -300, max: 300 }).map((thou) => `${thou < 0 ? '-' : ''}${Math.abs(thou)} thou`),
    disc: size(0, 1),
    slot: size(0, 1),
    bracket: size(0, 1),
    float: size(0, 1),
    plate: size(0, 1),
    sprocket: size(0, 1),
    chainLine: size(1, 3),
  });
  const withSide: readonly AxleLayoutName[] = ['front-one-disc', 'drum', 'rear-sprocket'];

  test(`mirrored sides mirror: o → −o and c → H − c on the other side gives the same spacers from the other end (seed ${seed})`, () => {
    fc.assert(
      fc.property(sizes, fc.constantFrom(...withSide), (given, layout) => {
        const there = answered(layout, given, { side: 'left' });
        const offset = given.offset.startsWith('-') ? given.offset.slice(1) : `-${given.offset}`;
        const centre = minus(lengthOf(given.hub), lengthOf(given.centre));
        const here = answered(
          layout,
          { ...given, offset },
          {
            side: 'right',
            estimates: { centre: typedEstimate(centre) },
          },
        );
        const byName = (answer: LineUpAnswer) =>
          answer.spacers.map(({ name, value }) => `${name} ${toText(value)}`).sort();
        expect(byName(there)).toEqual(byName(here));
        expect(there.parts.map(({ name }) => name)).toEqual(here.parts.map(({ name }) => name).toReversed());
        const missed = (answer: LineUpAnswer) => answer.checks.map(({ value }) => toText(value));
        const turned = (answer: LineUpAnswer) =>
          answer.checks.map(({ value }) => toText(minus(lengthOf('0 in'), value)));
        expect(missed(there)).toEqual(turned(here));
      }),
      { numRuns: 150, seed },
    );
  });

  test(`the parts fill the legs and the wheel is where it is wanted, on either side (seed ${seed})`, () => {
    fc.assert(
      fc.property(
        sizes,
        fc.constantFrom(...withSide),
        fc.constantFrom<AxleSide>('left', 'right'),
        (given, layout, side) => {
          const { parts, planes } = answered(layout, given, { side });
          const whole = parts.reduce((so, { length }) => so + Number(decimalText(length, 'thou', 4)), 0);
          const width = Number.parseInt(given.width, 10);
          expect(whole).toBeCloseTo(width, 6);
          const centre = planes.find(({ name }) => name === 'wheel centre');
          const wanted = width / 2 + Number.parseInt(given.offset, 10);
          expect(centre && Number(decimalText(centre.at, 'thou', 4))).toBeCloseTo(wanted, 6);
        },
      ),
      { numRuns: 150, seed },
    );
  });

  test(`what is said to give does give: put in, no spacer is below zero, and one is just there (seed ${seed})`, () => {
    let tried = 0;
    fc.assert(
      fc.property(
        sizes,
        fc.constantFrom(...withSide),
        fc.constantFrom<AxleSide>('left', 'right'),
        (given, layout, side) => {
          const before = answered(layout, given, { side });
          const hasNoRoom = before.spacers.some(({ value }) => isNegative(value));
          for (const { of, to } of before.gives) {
            const cured = answered(layout, given, { side, estimates: { [of]: typedEstimate(to) } });
            expect(cured.spacers.some(({ value }) => isNegative(value))).toBe(false);
            // Where there was room, but too little for a part that can be faced, up to .020.
            const wanted = lengthIn(hasNoRoom ? '0' : '.020');
            expect(cured.spacers.some(({ value }) => sameLength(value, wanted))).toBe(true);
            tried += 1;
          }
        },
      ),
      { numRuns: 150, seed },
    );
    expect(tried).toBeGreaterThan(50);
  });

  test(`what is said to bring the sprocket and the centre together does (seed ${seed})`, () => {
    fc.assert(
      fc.property(sizes, fc.constantFrom<AxleSide>('left', 'right'), (given, side) => {
        const [line] = answered('rear-sprocket', given, { side }).checks;
        for (const { of, to } of line?.gives ?? []) {
          const cured = answered('rear-sprocket', given, { side, estimates: { [of]: typedEstimate(to) } });
          expect(cured.checks.map(({ value }) => toText(value))).toEqual(['0']);
        }
      }),
      { numRuns: 100, seed },
    );
  });
});
