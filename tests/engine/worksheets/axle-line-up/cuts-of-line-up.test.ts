import { describe, expect, test } from 'vitest';
import { cutsOfLineUp } from '../../../../src/engine/worksheets/axle-line-up/cuts-of-line-up.ts';
import { toleranceEstimate, typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { exactDecimalText, lengthOf } from '../../../../src/engine/length/length.ts';
import { lineUp, type LineUpQuestion } from '../../../../src/engine/worksheets/axle-line-up/line-up.ts';
import { axleLayouts } from '../../../../src/engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { usualLineUpLimits } from '../../../../src/engine/worksheets/axle-line-up/tables/line-up-limits.ts';
import { sayDeed } from '../../../../src/engine/worksheets/axle-line-up/say-deeds.ts';
import { waysSaid } from '../../cut/cut-said.ts';

type Sizes = Readonly<Record<string, string>>;
const exactly = (sizes: Sizes) =>
  Object.fromEntries(
    Object.entries(sizes).map(([name, size]) => [name, typedEstimate(lengthOf(`${size} in`))]),
  );

/**
 * A = 1.075, B = .120, C = .633, sleeve 1.263. Float and room may be off by .005 (common practice). Sleeve, inner and outer
 * spacer share the float's .005: .0016 each, in tenths of the dial's .001; the left spacer has what the sleeve leaves of
 * the room's .005: .00333.
 */
const front: Sizes = {
  width: '6.750',
  hub: '4.412',
  centre: '2.300',
  disc: '.312',
  slot: '.187',
  bracket: '.500',
  float: '.010',
};

function offered(onHand: Sizes = {}, sizes: Sizes = front, more: Partial<LineUpQuestion> = {}) {
  const q: LineUpQuestion = {
    layout: axleLayouts['front-one-disc'],
    side: 'right',
    sizes: exactly(sizes),
    onHand: exactly(onHand),
    limits: usualLineUpLimits.in,
    step: lengthOf('.001 in'),
    ...more,
  };
  const answer = lineUp(q);
  if (!answer.ok) throw new Error(answer.refusal.code);
  return waysSaid(cutsOfLineUp(q, answer.value));
}

const made = [
  'Left spacer, made new: 1.0750 (1.0717 to 1.0783)',
  'Sleeve, made new: 1.2630 (1.2614 to 1.2646)',
  'Hub to bracket, made new: .1200 (.1184 to .1216)',
  'Bracket to leg, made new: .6330 (.6314 to .6346)',
];

describe('the spacers of a front axle', () => {
  test('are all made new where none is on hand, in the order of work', () => {
    expect(offered()).toEqual({ spacers: made });
  });

  test('that are on hand and too long are faced, those that fit are left', () => {
    // 1.110 is .035 longer than 1.075; .122 is .002 off, inside .005, so the outer one is .002 shorter: .631. With the
    // inner one there already, sleeve and outer one share the float's .005, sleeve and left one the room's.
    expect(offered({ far: '1.110', inner: '.122' })).toEqual({
      spacers: [
        'Left spacer, faced to length: 1.1100 → 1.0750 (1.0725 to 1.0775)',
        'Sleeve, made new: 1.2630 (1.2605 to 1.2655)',
        'Bracket to leg, made new: .6310 (.6285 to .6335)',
      ],
    });
  });

  test('that a shim would do for are left, or made new in a second way', () => {
    // 1.050 is .025 short
    expect(offered({ far: '1.050' })).toEqual({ spacers: made.slice(1), 'new-for-shims': made });
  });

  test('have what is cut to the others at the end, on whichever side the disc is', () => {
    // Mirrored: right spacer 1.263, sleeve 1.075, inner .120, outer .445.
    expect(offered({}, front, { side: 'left' })['spacers']?.map((said) => said.split(',')[0])).toEqual([
      'Right spacer',
      'Sleeve',
      'Hub to bracket',
      'Bracket to leg',
    ]);
  });

  test('leave out what has no length before the others are measured', () => {
    // No step of a dial of .005 lies within .0016 of 1.263, so the outer one is left. Left spacer and sleeve then share the
    // room's .005, .0025 each, and 1.265 lies in it.
    const coarse = { step: lengthOf('.005 in') };
    expect(offered({}, front, coarse)['spacers']?.map((said) => said.split(',')[0])).toEqual([
      'Left spacer',
      'Sleeve',
      'Hub to bracket',
    ]);
    // Once they are measured it is cut to them: 1.265 − .120 − .500 − .010 = .635, and all of .005 is its own.
    const there = { far: '1.075', inner: '.120', sleeve: '1.265' };
    expect(offered(there, front, coarse)).toEqual({
      spacers: ['Bracket to leg, made new: .6350 (.6300 to .6400)'],
    });
  });

  test('are not cut while one of them has no room', () => {
    // B = .312 − .300 − .005 = .007; with a slot .400 in: −.093
    expect(offered({}, { ...front, slot: '.400' })).toEqual({});
  });
});

describe('a size whose readings contradict each other', () => {
  const doubted = (of: string) => {
    const sizes = Object.fromEntries(
      Object.entries({
        width: '6.750',
        hub: '4.412',
        centre: '2.300',
        disc: '.312',
        slot: '.187',
        bracket: '.500',
        float: '.010',
        slotWidth: '.300',
        discThickness: '.160',
      }).map(([name, size]) => [
        name,
        { ...typedEstimate(lengthOf(`${size} in`)), ...(name === of && { doubt: true as const }) },
      ]),
    );
    const question: LineUpQuestion = {
      layout: axleLayouts['front-one-disc'],
      side: 'right',
      sizes,
      onHand: {},
      limits: usualLineUpLimits.in,
      step: lengthOf('.001 in'),
    };
    const result = lineUp(question);
    if (!result.ok) throw new Error(result.refusal.code);
    return { answer: result.value, ways: cutsOfLineUp(question, result.value) };
  };

  test('is asked about before the first cut that stands on it, and the others are not marked', () => {
    // The disc sets hub to bracket and bracket to leg; left spacer and sleeve hang on hub, centre and legs alone.
    const [way] = doubted('disc').ways;
    expect(way?.unsure).toBe(true);
    expect(
      way?.offers.map(({ part, limitsFrom }) => [part, limitsFrom.includes('which reading stands')]),
    ).toEqual([
      ['left spacer', false],
      ['sleeve', false],
      ['hub to bracket', true],
      ['bracket to leg', true],
    ]);
    expect(
      doubted('centre').ways[0]?.offers.map(({ limitsFrom }) => /which reading stands/.test(limitsFrom)),
    ).toEqual([true, true, false, true]);
    expect(doubted('').ways[0]?.unsure).toBeUndefined();
  });

  test('is asked about at each length that stands on it', () => {
    const said = doubted('disc').answer.spacers.map((spacer) => [
      spacer.name,
      sayDeed(spacer, 'in').more.startsWith('Which of the two readings stands? '),
    ]);
    expect(said).toEqual([
      ['far', false],
      ['inner', true],
      ['outer', true],
      ['sleeve', false],
    ]);
  });
});

describe('the spacers of an axle on which something else is not good', () => {
  // Its slot .300 wide, its disc .160: .070 beside it, less half the float and .010 of runout.
  const known = { ...front, slotWidth: '.300', discThickness: '.160' };
  const isUnsure = (sizes: Sizes, more: Partial<LineUpQuestion> = {}) => {
    const q: LineUpQuestion = {
      layout: axleLayouts['front-one-disc'],
      side: 'right',
      sizes: exactly(sizes),
      onHand: {},
      limits: usualLineUpLimits.in,
      step: lengthOf('.001 in'),
      ...more,
    };
    const answer = lineUp(q);
    if (!answer.ok) throw new Error(answer.refusal.code);
    const ways = cutsOfLineUp(q, answer.value);
    expect(ways.length).toBeGreaterThan(0);
    return ways.map(({ unsure }) => unsure);
  };

  test('are sure where all of it holds', () => {
    expect(isUnsure(known)).toEqual([undefined]);
  });

  test.each([
    // (.165 − .160) / 2 − .005 − .010 = −.0125
    { what: 'the disc runs into its slot', sizes: { ...known, slotWidth: '.165' } },
    // (.190 − .160) / 2 − .005 − .010 = 0
    { what: 'the disc runs with nothing beside it', sizes: { ...known, slotWidth: '.190' } },
    { what: 'nobody knows how wide the slot is', sizes: { ...front, discThickness: '.160' } },
    { what: 'nothing is known of the disc', sizes: front },
    // .010 of side play was wanted, none was read
    { what: 'the bracket was read to have no side play', sizes: { ...known, floatRead: '0' } },
  ])('are not sure while $what: what cures it changes them', ({ sizes }) => {
    expect(isUnsure(sizes)).toEqual([true]);
  });

  test('are not sure while a bracket that follows its pads has less float than they wear', () => {
    // .010 of float, .200 of wear
    expect(isUnsure({ ...known, padWear: '.200' }, { slides: 'bracket' })).toEqual([true]);
    expect(isUnsure({ ...known, padWear: '.200' }, { slides: 'caliper' })).toEqual([undefined]);
    // and while nobody said how far they wear
    expect(isUnsure(known, { slides: 'bracket' })).toEqual([true]);
    expect(isUnsure({ ...known, float: '.050', padWear: '.020' }, { slides: 'bracket' })).toEqual([
      undefined,
    ]);
  });
});

test('a length that the readings can’t prove is offered as a figure, unsure, with its limits whole', () => {
  // Wheel centre known to ±.006 where .005 is allowed: 1.075 − .005 to 1.075 + .005
  const question: LineUpQuestion = {
    layout: axleLayouts['front-one-disc'],
    side: 'right',
    sizes: {
      ...exactly(front),
      centre: toleranceEstimate(lengthOf('2.300 in'), lengthOf('.006 in')),
    },
    onHand: {},
    limits: usualLineUpLimits.in,
    step: lengthOf('.001 in'),
  };
  const result = lineUp(question);
  if (!result.ok) throw new Error(result.refusal.code);
  const [way] = cutsOfLineUp(question, result.value);
  const far = way?.offers[0];
  expect(way?.unsure).toBe(true);
  expect(far && [far.target, far.lower, far.upper].map((one) => exactDecimalText(one, 'in'))).toEqual([
    '1.075',
    '1.07',
    '1.08',
  ]);
  expect(far?.limitsFrom).toContain('these readings can’t prove it');
});
