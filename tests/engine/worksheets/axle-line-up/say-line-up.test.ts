import { describe, expect, test } from 'vitest';
import type { AxleLayoutName, AxleSide } from '../../../../src/engine/worksheets/axle-line-up/axle-layout.ts';
import { toleranceEstimate, typedEstimate, type Estimate } from '../../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import {
  lineUp,
  type LineUpAnswer,
  type LineUpQuestion,
} from '../../../../src/engine/worksheets/axle-line-up/line-up.ts';
import {
  lineUpVerdict,
  sayCheck,
  sayLineUp,
  sayLineUpRefusal,
  sayRoom,
} from '../../../../src/engine/worksheets/axle-line-up/say-line-up.ts';
import { sayDeed } from '../../../../src/engine/worksheets/axle-line-up/say-deeds.ts';
import {
  sayGive,
  sayGivesStrength,
  sayNotJudged,
  sayShares,
} from '../../../../src/engine/worksheets/axle-line-up/say-gives.ts';
import {
  sizeName,
  sizeOrder,
  spacerLetter,
  spacerName,
} from '../../../../src/engine/worksheets/axle-line-up/say-line-up-names.ts';
import { axleLayouts } from '../../../../src/engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { usualLineUpLimits } from '../../../../src/engine/worksheets/axle-line-up/tables/line-up-limits.ts';

type Sizes = Readonly<Record<string, string>>;

const inch = (text: string) => lengthOf(`${text} in`);
const known = (sizes: Sizes) =>
  Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedEstimate(inch(size))]));

/** A = 1.075, B = .120, C = .633, sleeve 1.263: worked out in line-up.test.ts. */
const front: Sizes = {
  width: '6.750',
  hub: '4.412',
  centre: '2.300',
  disc: '.312',
  slot: '.187',
  bracket: '.500',
  float: '.010',
  // (.300 − .160 − .010) / 2 = .065 beside the disc: .005 and the usual .010 of runout are wanted.
  slotWidth: '.300',
  discThickness: '.160',
};
const { slotWidth: _slot, discThickness: _thickness, ...discOpen } = front;

type More = Partial<Omit<LineUpQuestion, 'onHand'>> & {
  readonly onHand?: Readonly<Record<string, Estimate>>;
};

function answered(layout: AxleLayoutName, sizes: Sizes, more: More = {}): LineUpAnswer {
  const result = lineUp({
    layout: axleLayouts[layout],
    side: 'right',
    onHand: {},
    limits: usualLineUpLimits.in,
    step: lengthOf('.001 in'),
    ...more,
    sizes: { ...known(sizes), ...more.sizes },
  });
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const whole = (answer: LineUpAnswer, layout: AxleLayoutName = 'front-one-disc', side: AxleSide = 'right') =>
  sayLineUp(answer, { layout: axleLayouts[layout], side, unit: 'in' });

function deed(spacer: string, answer: LineUpAnswer) {
  const found = answer.spacers.find(({ name }) => name === spacer);
  return found && sayDeed(found, 'in');
}

describe('an axle in one sentence', () => {
  test('with nothing on hand says how many lengths are to be made', () => {
    expect(whole(answered('front-one-disc', front))).toBe('It lines up with 4 lengths made right.');
  });

  test('with every part on hand right says so', () => {
    const onHand = known({ far: '1.075', inner: '.120', outer: '.633', sleeve: '1.263' });
    expect(whole(answered('front-one-disc', front, { onHand }))).toBe('It lines up with the parts on hand.');
  });

  test('with one part to be made right counts one', () => {
    const onHand = known({ far: '1.075', inner: '.120', outer: '.633', sleeve: '1.300' });
    expect(whole(answered('front-one-disc', front, { onHand }))).toBe(
      'It lines up with one length made right.',
    );
  });

  test('says first which spacer has no room', () => {
    const answer = answered('front-one-disc', { ...front, slot: '.370' });
    expect(lineUpVerdict(answer)).toBe('no-good');
    expect(whole(answer)).toBe('No room: hub to bracket comes out .063 short.');
  });

  test('says when the readings can’t tell whether there is room', () => {
    const short = answered('front-one-disc', front, {
      sizes: { slot: toleranceEstimate(inch('.308'), inch('.002')) },
    });
    expect(whole(short)).toBe('Too close to call: hub to bracket comes out .001 short, ±.0020.');
    const room = answered('front-one-disc', front, {
      sizes: { slot: toleranceEstimate(inch('.306'), inch('.002')) },
    });
    expect(whole(room)).toBe('Too close to call: hub to bracket comes out .001, ±.0020.');
    const [far] = room.spacers;
    expect(far && sayRoom(far, { layout: axleLayouts['front-one-disc'], side: 'right', unit: 'in' })).toBe(
      'Left spacer has room.',
    );
  });

  // A spacer may be .005 off. Width known to ±.032: the left spacer takes half of it, ±.016.
  test('is not good while the readings don’t prove a length that is to be made', () => {
    const answer = answered('front-one-disc', front, {
      sizes: { width: toleranceEstimate(inch('6.750'), inch('.032')) },
    });
    expect(lineUpVerdict(answer)).toBe('too-close');
    expect(whole(answer)).toBe(
      'Too close to call: left spacer. These readings know it only to ±.016, more than it may be off.',
    );
  });

  test('is not good while a part on hand is too close to call', () => {
    const onHand = { far: toleranceEstimate(inch('1.079'), inch('.003')) };
    const answer = answered('front-one-disc', front, { onHand });
    expect(lineUpVerdict(answer)).toBe('too-close');
    expect(whole(answer)).toBe('Too close to call: left spacer. The one on hand is .004 longer, ±.0030.');
  });

  test('is no good with a dial that reaches none of a spacer’s lengths', () => {
    // 1.070 to 1.080 in steps of .050
    const answer = answered('front-one-disc', front, { step: inch('.050') });
    expect(lineUpVerdict(answer)).toBe('no-good');
    expect(whole(answer)).toMatch(/^Left spacer\. No step of the dial \(.050 in\) falls/);
  });

  test('says which of two wishes can’t hold, by how much and which way', () => {
    const rear = { ...front, sprocket: '.200', chainLine: '2.460' };
    expect(whole(answered('rear-sprocket', rear))).toBe(
      'The sprocket line can’t hold beside the wheel centre. It comes out .040 too far left; .030 is allowed.',
    );
    expect(whole(answered('rear-sprocket', rear, { first: 'sprocket line' }))).toBe(
      'The wheel centre can’t hold beside the sprocket line. It comes out .040 too far right; .030 is allowed.',
    );
  });

  test('says when both wishes hold', () => {
    const agreed = answered('rear-sprocket', { ...front, sprocket: '.200', chainLine: '2.500' });
    expect(whole(agreed)).toBe(
      'Wheel centre and sprocket line both hold. It lines up with 4 lengths made right.',
    );
    const [line] = agreed.checks;
    expect(line && sayCheck(line, 'in')).toBe(
      'Good: the sprocket line comes out where it is wanted; .030 is allowed.',
    );
  });

  test('says when the readings can’t tell whether the line holds', () => {
    const answer = answered(
      'rear-sprocket',
      { ...front, sprocket: '.200', chainLine: '2.471' },
      {
        sizes: { sprocket: toleranceEstimate(inch('.200'), inch('.004')) },
      },
    );
    // .875 − (3.375 − 2.471) = −.029, .001 inside .030
    expect(lineUpVerdict(answer)).toBe('too-close');
    expect(whole(answer)).toBe(
      'Too close to call: the sprocket line. It comes out .029 too far left, ±.0040; .030 is allowed.',
    );
  });
});

describe('what to do for a spacer', () => {
  const withFar = (size: string, more: More = {}) =>
    deed('far', answered('front-one-disc', front, { onHand: known({ far: size }), ...more }));

  test.each([
    { size: '1.075', act: 'keep', more: 'The one on hand is just right.' },
    { size: '1.078', act: 'keep', more: 'The one on hand is .003 longer.' },
    { size: '1.110', act: 'trim .035', more: 'Face it to 1.075; good from 1.0717 to 1.0783 in.' },
    {
      size: '1.060',
      act: 'shim .015',
      more: 'Shims of .0117 to .0183 do. Or make it new: 1.075 in.',
    },
  ])('of 1.075 where $size is on hand: $act', ({ size, act, more }) => {
    expect(withFar(size)).toEqual({ act, more });
  });

  test('with none on hand is to make it', () => {
    expect(deed('far', answered('front-one-disc', front))).toEqual({
      act: 'make',
      more: 'Face it to 1.075; good from 1.0717 to 1.0783 in.',
    });
  });

  test('without room names by how much it is short; that comes to nothing needs no part', () => {
    expect(deed('inner', answered('front-one-disc', { ...front, slot: '.370' }))?.act).toBe('.063 short');
    expect(deed('inner', answered('front-one-disc', { ...front, slot: '.307' }))?.act).toBe('no part');
  });

  const vague = (plusMinus: string): More => ({
    sizes: { centre: toleranceEstimate(inch('2.300'), inch(plusMinus)) },
  });

  test('that can’t be called names the band', () => {
    expect(withFar('1.0785', vague('.003'))).toEqual({
      act: 'too close to call',
      more: 'The one on hand is .0035 longer, ±.0030.',
    });
  });

  test('whose band is wider than it may be off says that it isn’t proved, and what it would be faced to', () => {
    const unproved = 'These readings know it only to ±.0060, more than it may be off.';
    expect(withFar('1.110', vague('.006'))).toEqual({
      act: 'trim .035',
      more: `Face it to 1.075 in. ${unproved}`,
    });
    expect(withFar('1.040', vague('.006'))).toEqual({
      act: 'shim .035',
      more: `Shims of .035. ${unproved} Or make it new: 1.075 in.`,
    });
  });

  test('that no step of the dial can reach says so', () => {
    const coarse = { step: lengthOf('.050 in') };
    expect(deed('far', answered('front-one-disc', { ...front, width: '6.728' }, coarse))?.more).toMatch(
      /^No step of the dial \(\.050 in\)/,
    );
  });
});

test('a trim in millimetres names its unit', () => {
  const far = answered('front-one-disc', front, { onHand: known({ far: '1.110' }) }).spacers.find(
    ({ name }) => name === 'far',
  );
  // .035 in × 25.4 = .889 mm
  expect(far && sayDeed(far, 'mm').act).toBe('trim 0.889 mm');
});

describe('what a check says', () => {
  const check = (sizes: Sizes, more: More = {}) => {
    const [first] = answered('front-one-disc', { ...front, ...sizes }, more).checks;
    return first && sayCheck(first, 'in');
  };

  test('of a bracket that follows its pads', () => {
    const wear = { float: '.250', padWear: '.220' };
    expect(check(wear, { slides: 'bracket' })).toBe(
      'Good: float beyond the pads’ wear .030, want .010 or more.',
    );
    expect(check({ ...wear, padWear: '.245' }, { slides: 'bracket' })).toBe(
      'Too small: float beyond the pads’ wear .005, want .010 or more.',
    );
  });

  test('of two brackets that follow their pads says which', () => {
    const two = {
      width: '8.000',
      hub: '4.500',
      centre: '2.300',
      leftDisc: '.300',
      rightDisc: '.350',
      leftSlot: '.150',
      leftBracket: '.500',
      leftFloat: '.040',
      padWear: '.020',
    };
    const { checks } = answered('front-two-discs', two, { slides: 'bracket' });
    expect(checks.map((one) => sayCheck(one, 'in'))).toEqual([
      'Good: left float beyond the pads’ wear .020, want .010 or more.',
      'Good: right float beyond the pads’ wear .020, want .010 or more.',
    ]);
  });

  test('of a disc in its slot', () => {
    const slot = { slotWidth: '.300', discThickness: '.160' };
    expect(check(slot)).toBe('Good: the disc keeps .065 clear of its slot at both ends.');
    expect(check({ ...slot, float: '.150' })).toBe(
      'The disc runs .005 into its slot before the float ends. Less float, or a wider slot.',
    );
    const band = { sizes: { slotWidth: toleranceEstimate(inch('.202'), inch('.004')) } };
    // (.202 − .160 − .010) / 2 = .016 ± .002; .005 has to be left, and .010 for a runout that isn't read
    expect(check({ discThickness: '.160' }, band)).toBe(
      'Too close to call: room beside the disc .016 ±.0020, want .015 or more. Only .001 inside.',
    );
    // (.186 − .160 − .010) / 2 − .003 = .005
    expect(check({ ...slot, slotWidth: '.186', discRunout: '.003' })).toBe(
      'Good: the disc keeps .005 clear of its slot at both ends.',
    );
    expect(check({ ...slot, slotWidth: '.185', discRunout: '.003' })).toBe(
      'The disc keeps only .0045 of its slot; .005 is least. Less float, or a wider slot.',
    );
  });
});

describe('a disc whose room isn’t known', () => {
  const GIVE_BOTH = 'Not finished: the disc may rub. Give its slot’s width and its thickness.';
  test.each([
    { sizes: {}, said: GIVE_BOTH },
    { sizes: { slotWidth: '.300' }, said: 'Not finished: the disc may rub. Give its thickness.' },
    { sizes: { discThickness: '.160' }, said: 'Not finished: the disc may rub. Give its slot’s width.' },
    // Of two faces one was read: nothing is known of the other.
    {
      sizes: { discInsideRead: '.020' },
      said: 'Not finished: the disc may rub. Read the gap at its outer face too.',
    },
    {
      sizes: { discOutsideRead: '.020', slotWidth: '.300' },
      said: 'Not finished: the disc may rub. Read the gap at its inner face too.',
    },
  ])('is not finished, however well all else lines up ($sizes)', ({ sizes, said }) => {
    const answer = answered('front-one-disc', { ...discOpen, ...sizes });
    expect(lineUpVerdict(answer)).toBe('too-close');
    expect(whole(answer)).toBe(said);
    expect(sayNotJudged(answer)).toEqual([said]);
    const onHand = known({ far: '1.075', inner: '.120', outer: '.633', sleeve: '1.263' });
    expect(lineUpVerdict(answered('front-one-disc', { ...discOpen, ...sizes }, { onHand }))).toBe(
      'too-close',
    );
    const rear = { ...discOpen, ...sizes, sprocket: '.200', chainLine: '2.500' };
    expect(lineUpVerdict(answered('rear-sprocket', rear, { side: 'right' }))).toBe('too-close');
  });

  test('is known by its slot and its thickness, or by both gaps that were read', () => {
    for (const sizes of [
      { slotWidth: '.300', discThickness: '.160' },
      { discInsideRead: '.020', discOutsideRead: '.060' },
      // The face that wasn't read has its sum: .065 less .010 of runout.
      { discInsideRead: '.020', slotWidth: '.300', discThickness: '.160' },
    ]) {
      const answer = answered('front-one-disc', { ...discOpen, ...sizes });
      expect(lineUpVerdict(answer)).toBe('good');
      expect(sayNotJudged(answer)).toEqual([]);
    }
  });

  test('one face read leaves the other to its sum: with too little room it is no good', () => {
    // (.190 − .160 − .010) / 2 = .010 where .015 is wanted
    const tight = { discInsideRead: '.020', slotWidth: '.190', discThickness: '.160' };
    expect(lineUpVerdict(answered('front-one-disc', { ...discOpen, ...tight }))).toBe('no-good');
  });

  test('comes after what is no good, and is named by its side where there are two', () => {
    const short = answered('front-one-disc', { ...discOpen, slot: '.370' });
    expect(whole(short)).toBe('No room: hub to bracket comes out .063 short.');
    expect(sayNotJudged(short)).toEqual([GIVE_BOTH]);
    const two = {
      width: '8.000',
      hub: '4.500',
      centre: '2.300',
      leftDisc: '.300',
      rightDisc: '.350',
      leftSlot: '.150',
      leftBracket: '.500',
      leftFloat: '.020',
      leftSlotWidth: '.300',
      leftDiscThickness: '.160',
    };
    const open = answered('front-two-discs', two);
    expect(lineUpVerdict(open)).toBe('too-close');
    expect(whole(open, 'front-two-discs')).toBe(
      'Not finished: the right disc may rub. Give its slot’s width and its thickness.',
    );
    // (.300 − .160 − .020) / 2 = .060
    const known2 = { ...two, rightSlotWidth: '.300', rightDiscThickness: '.160' };
    expect(lineUpVerdict(answered('front-two-discs', known2))).toBe('good');
  });

  test('changes nothing where there is none', () => {
    const drum = answered('drum', { width: '7.000', hub: '4.000', centre: '1.900', plate: '.625' });
    expect(lineUpVerdict(drum)).toBe('good');
    expect(sayNotJudged(drum)).toEqual([]);
    const trailer = { seat: '5.250', hub: '3.875', mount: '1.500', wheelPlace: '2.000' };
    expect(lineUpVerdict(answered('trailer-hub', trailer))).toBe('good');
  });
});

describe('what would have to give', () => {
  test.each([
    // What may take metal off a part that isn't named is never offered without its strength.
    { of: 'disc', by: '-.063', said: true },
    { of: 'disc', by: '.063', said: false },
    { of: 'sprocket', by: '-.040', said: true },
    { of: 'leftSlot', by: '.067', said: true },
    { of: 'plate', by: '-.050', said: true },
    { of: 'hub', by: '-.050', said: true },
    { of: 'offset', by: '.125', said: false },
    { of: 'float', by: '-.004', said: false },
  ])('has its strength said beside it where $of gives $by: $said', ({ of, by, said }) => {
    const words = sayGivesStrength([{ of, by: inch(by), to: inch('.1') }]);
    expect(words.endsWith('strength judged before you cut.')).toBe(said);
  });

  test.each([
    { of: 'disc', by: '.063', to: '.375', said: 'Space the disc out by .063, to .375.' },
    { of: 'disc', by: '-.063', to: '.249', said: 'Set the disc in by .063, to .249.' },
    { of: 'leftDisc', by: '.063', to: '.375', said: 'Space the left disc out by .063, to .375.' },
    { of: 'sprocket', by: '-.040', to: '.160', said: 'Set the sprocket in by .040, to .160.' },
    { of: 'slot', by: '.067', to: '.254', said: 'Move the slot outward on its bracket by .067, to .254.' },
    {
      of: 'rightSlot',
      by: '-.067',
      to: '.120',
      said: 'Move the right slot inward on its bracket by .067, to .120.',
    },
    {
      of: 'bracket',
      by: '-.067',
      to: '1.133',
      said: 'Thin the bracket by .067, to 1.133 in. Metal off the bracket makes it weaker: have its strength judged before you cut.',
    },
    { of: 'float', by: '-.004', to: '.006', said: 'Give the bracket less float by .004, to .006.' },
    {
      of: 'rightFloat',
      by: '-.004',
      to: '.006',
      said: 'Give the right bracket less float by .004, to .006.',
    },
    { of: 'offset', by: '.125', to: '.125', said: 'Let the wheel sit further right than you asked by .125.' },
    { of: 'offset', by: '-.125', to: '0', said: 'Let the wheel sit further left than you asked by .125.' },
    { of: 'hub', by: '-.050', to: '3.950', said: 'Take a narrower hub by .050, to 3.950 in over its faces.' },
    { of: 'plate', by: '-.050', to: '1.400', said: 'Bring the brake plate in by .050, to 1.400 in.' },
    {
      of: 'chainLine',
      by: '.040',
      to: '2.500',
      said: 'Move the chain line outward by .040, to 2.500 in from the middle.',
    },
    {
      of: 'chainLine',
      by: '-.040',
      to: '2.420',
      said: 'Move the chain line inward by .040, to 2.420 in from the middle.',
    },
    {
      of: 'wheelPlace',
      by: '-.050',
      to: '1.950',
      said: 'Let the wheel sit further in by .050, to 1.950 in from the shoulder to its face.',
    },
    {
      of: 'wheelPlace',
      by: '.050',
      to: '2.050',
      said: 'Let the wheel sit further out by .050, to 2.050 in from the shoulder to its face.',
    },
    {
      of: 'seat',
      by: '.050',
      to: '5.300',
      said: 'Set the nut further out by .050, to 5.300 in from the shoulder.',
    },
    { of: 'width', by: '-.050', to: '6.700', said: 'Change between the legs by −.050, to 6.700 in.' },
  ])('$of by $by: $said', ({ of, by, to, said }) => {
    expect(sayGive({ of, by: inch(by), to: inch(to) }, 'in')).toBe(said);
  });

  test('in millimetres names them', () => {
    const give = { of: 'disc', by: lengthOf('1.6 mm'), to: lengthOf('9.525 mm') };
    expect(sayGive(give, 'mm')).toBe('Space the disc out by 1.60 mm, to 9.525 mm.');
  });
});

describe('names and sums', () => {
  test.each([
    { name: 'far', side: 'right', called: 'Left spacer', letter: 'A' },
    { name: 'far', side: 'left', called: 'Right spacer', letter: 'A' },
    { name: 'inner', side: 'right', called: 'Hub to bracket', letter: 'B' },
    { name: 'outer', side: 'right', called: 'Bracket to leg', letter: 'C' },
    { name: 'sleeve', side: 'right', called: 'Sleeve', letter: '' },
    { name: 'x', side: 'right', called: 'x', letter: '' },
  ] as const)(
    'the $name spacer with the disc on the $side is the “$called”',
    ({ name, side, called, letter }) => {
      const layout = axleLayouts['front-one-disc'];
      expect(spacerName(name, { layout, side })).toBe(called);
      expect(spacerLetter(name, layout)).toBe(letter);
    },
  );

  test('a trailer’s spacers and a drum’s are named by what they lie between', () => {
    expect(spacerName('far', { layout: axleLayouts['trailer-hub'], side: 'left' })).toBe('Shoulder to hub');
    expect(spacerName('outer', { layout: axleLayouts['trailer-hub'], side: 'left' })).toBe('Hub to nut');
    expect(spacerName('outer', { layout: axleLayouts.drum, side: 'left' })).toBe('Brake plate to leg');
  });

  test.each([
    { name: 'leftBracket', called: 'left bracket' },
    { name: 'width', called: 'between the legs' },
    { name: 'elsewhere', called: 'elsewhere' },
    { name: 'leftElse', called: 'left else' },
  ])('the size $name is called “$called”', ({ name, called }) => {
    expect(sizeName(name)).toBe(called);
  });

  test('a size nobody listed comes last in a sum', () => {
    expect(sizeOrder('elsewhere')).toBe(Infinity);
    expect(sizeOrder('width')).toBe(0);
  });

  test('a sum names what is added first, from leg to leg, then what is taken off', () => {
    const terms = [
      { of: 'float', top: -1, bottom: 2 },
      { of: 'hub', top: -1, bottom: 1 },
      { of: 'centre', top: 1, bottom: 1 },
      { of: 'width', top: 1, bottom: 2 },
    ];
    expect(sayShares(terms)).toBe('½ · between the legs + wheel centre − hub − ½ · float');
    expect(sayShares([{ of: 'hub', top: -2, bottom: 1 }])).toBe('−2 · hub');
    expect(sayShares([{ of: 'hub', top: 3, bottom: 2 }])).toBe('3/2 · hub');
  });
});

describe('what can’t be worked out', () => {
  test('names the sizes that are missing', () => {
    expect(sayLineUpRefusal({ code: 'sizes-missing', names: ['centre', 'leftDisc'] })).toBe(
      'Still without a size: wheel centre, left disc.',
    );
  });

  test('names the lengths that nothing fixes', () => {
    expect(sayLineUpRefusal({ code: 'lengths-free', names: ['inner', 'outer'] })).toBe(
      'Nothing fixes inner, outer. Give one of them, or one more thing that has to hold.',
    );
  });
});
