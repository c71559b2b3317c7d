import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toleranceEstimate, typedEstimate, type Estimate } from '../../../../src/engine/reading/estimate.ts';
import {
  decimalText,
  isLess,
  isMore,
  isZero,
  lengthOf,
  minus,
  plus,
  sameLength,
  toText,
  zero,
  type Length,
} from '../../../../src/engine/length/length.ts';
import type { ToolInForce } from '../../../../src/engine/reading/measuring-tool.ts';
import {
  onePartInPlaceOf,
  spacerStack,
  stackWantPreset,
  type StackPart,
  type StackQuestion,
  type StackWant,
} from '../../../../src/engine/worksheets/spacer-stack/spacer-stack.ts';
import { verdictOf } from '../../../../src/engine/reading/verdict.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const shown = (length: Length) => decimalText(length, 'in', 4);

const known = (size: string, plusMinus = '0') => toleranceEstimate(inch(size), inch(plusMinus));

function part(name: string, thickness: Estimate, more: Partial<StackPart> = {}): StackPart {
  return { name, thickness, count: 1, adjustable: false, ...more };
}

function want(kind: StackWant['kind'], lower: string, aim: string, upper: string): StackWant {
  return { kind, aim: inch(aim), limits: { lower: inch(lower), upper: inch(upper), source: 'test' } };
}

const float = want('float', '.008', '.010', '.012');
const bracketStack: StackQuestion = {
  fixed: { name: 'sleeve', length: known('.970') },
  parts: [
    part('washer', known('.062')),
    part('spacer', known('.385'), { adjustable: true }),
    part('bracket', known('.500')),
    part('shim', known('.021')),
  ],
  want: float,
  step: inch('.001'),
};

function trimOf(answer: ReturnType<typeof spacerStack>, index = 0) {
  const offer = answer.trims[index];
  if (!offer) return 'no trim';
  if (!offer.result.ok) return offer.result.refusal.code;
  const { from, to, take, lower, upper } = offer.result.value;
  return { from: shown(from), to: shown(to), take: shown(take), lower: shown(lower), upper: shown(upper) };
}

/** The bracket stack with its sleeve as wide as asked, all sizes exact. */
function sleeveOf(size: string, more: Partial<StackQuestion> = {}): StackQuestion {
  return { ...bracketStack, fixed: { name: 'sleeve', length: known(size) }, ...more };
}

describe('a sleeve of .970 over parts of .968 that should float .008 to .012', () => {
  const answer = spacerStack(bracketStack);

  test('floats .002: too tight by .006', () => {
    // .062 + .385 + .500 + .021 = .968; .970 − .968 = .002; .008 − .002 = .006
    expect(shown(answer.partsTotal)).toBe('0.9680');
    expect(shown(answer.gap)).toBe('0.0020');
    expect(answer.verdict).toMatchObject({ kind: 'no-good', way: 'under' });
    expect(answer.verdict.kind === 'no-good' && shown(answer.verdict.by)).toBe('0.0060');
  });

  test('wants .008 off the .385 spacer: .377, good from .375 to .379', () => {
    // .385 − (.010 − .002) = .377; .385 − (.012 − .002) = .375; .385 − (.008 − .002) = .379
    expect(trimOf(answer)).toEqual({
      from: '0.3850',
      to: '0.3770',
      take: '0.0080',
      lower: '0.3750',
      upper: '0.3790',
    });
    expect(answer.trims).toHaveLength(1);
  });

  test('is offered no shim and no longer part', () => {
    expect(answer.shim).toBeUndefined();
    expect(answer.longerParts).toEqual([]);
  });

  test('can have one spacer of .447 in place of washer and spacer, with the same gap', () => {
    const [washer, spacer, ...others] = bracketStack.parts;
    if (!washer || !spacer) throw new Error('the stack has both');
    const one = onePartInPlaceOf([washer, spacer]);
    expect(shown(one.length)).toBe('0.4470');
    const replaced = spacerStack({
      ...bracketStack,
      parts: [part('one', typedEstimate(one.length)), ...others],
    });
    expect(toText(replaced.gap)).toBe(toText(answer.gap));
  });
});

describe('a stack known to ± .001', () => {
  const banded = { ...bracketStack, fixed: { name: 'sleeve', length: known('.970', '.001') } };

  test('has only what the band leaves of the limits for the cut', () => {
    expect(trimOf(spacerStack(banded))).toMatchObject({ to: '0.3770', lower: '0.3760', upper: '0.3780' });
  });

  test('known to ± .003 has nothing left of .004: the figure stands, and is not proved', () => {
    const vague = { ...bracketStack, fixed: { name: 'sleeve', length: known('.970', '.003') } };
    const answer = spacerStack(vague);
    // .385 − (.010 − .002) = .377, within the whole .375 to .379
    expect(trimOf(answer)).toEqual({
      from: '0.3850',
      to: '0.3770',
      take: '0.0080',
      lower: '0.3750',
      upper: '0.3790',
    });
    const [offer] = answer.trims;
    expect(offer?.result).toMatchObject({ value: { proved: false } });
    expect(offer?.result.ok && shown(offer.result.value.halfWidth)).toBe('0.0030');
    expect(answer.provable).toBe(false);
    expect(spacerStack(banded)).toMatchObject({
      provable: true,
      trims: [{ result: { value: { proved: true } } }],
    });
  });

  test('read directly to ± .0005 uses that reading in place of the sum', () => {
    const answer = spacerStack({ ...banded, direct: known('.004', '.0005') });
    expect(answer.direct).toBe(true);
    expect(shown(answer.gap)).toBe('0.0040');
    expect([answer.band.halfWidth, answer.worstCase, answer.rss].map(shown)).toEqual([
      '0.0005',
      '0.0005',
      '0.0005',
    ]);
    // .385 − (.010 − .004) = .379, less or more .002 − .0005
    expect(trimOf(answer)).toMatchObject({ to: '0.3790', lower: '0.3775', upper: '0.3805' });
    expect(shown(answer.partsTotal)).toBe('0.9680');
  });

  test('that reads right directly is good, whatever the sum says', () => {
    const answer = spacerStack({ ...banded, direct: known('.010', '.0005') });
    expect(answer.verdict.kind).toBe('good');
    expect(answer.trims).toEqual([]);
  });
});

describe('an aim closer to a limit than the band', () => {
  /** One part of the size, its opening known to so much. */
  const one = (opening: string, size: string, wanted: StackWant): ReturnType<typeof spacerStack> =>
    spacerStack({
      fixed: { name: 'opening', length: known(opening, '.0015') },
      parts: [part('spacer', known(size), { adjustable: true })],
      want: wanted,
      step: inch('.001'),
    });

  test('still shims a stack that clamps too little to be sure: .0042 proud, ± .0024', () => {
    // ± .0024 leaves .0044 to .0056 of .002 to .008: .0044 − .0042 = .0002, up to .0056 − .0042 = .0014
    const answer = spacerStack({
      fixed: { name: 'sleeve', length: known('1.5000', '.0024') },
      parts: [
        part('spacer', known('.5020'), { adjustable: true }),
        part('washer', known('.5011'), { count: 2 }),
      ],
      want: want('clamp', '.002', '.004', '.008'),
      step: inch('.001'),
    });
    expect(answer.verdict.kind).toBe('too-close');
    expect(answer.trims).toEqual([]);
    const { shim } = answer;
    expect(shim && [shim.thickness, shim.lower, shim.upper].map(shown)).toEqual([
      '0.0002',
      '0.0002',
      '0.0014',
    ]);
    // .5020 + .0002 = .5022, up to the dial’s .503
    expect(answer.longerParts.map(({ to }) => shown(to))).toEqual(['0.5030']);
  });

  test('trims a part that leaves too little to be sure, though the aim lies below: no shim of less than nothing', () => {
    // gap .0032; ± .0015 leaves .0035 to .0085: .9968 − .0003 = .9965, down to the dial’s .996
    const answer = one('1.0000', '.9968', want('end-play', '.002', '.003', '.010'));
    expect(answer.shim).toBeUndefined();
    expect(answer.longerParts).toEqual([]);
    expect(trimOf(answer)).toMatchObject({ to: '0.9960', upper: '0.9965' });
  });

  test('shims a gap that is too large to be sure, though the aim lies above', () => {
    // gap .0092; ± .0015 leaves up to .0085: .0007
    const answer = one('1.0000', '.9908', want('end-play', '.002', '.0095', '.010'));
    expect(answer.trims).toEqual([]);
    expect(answer.shim && shown(answer.shim.thickness)).toBe('0.0007');
  });

  test('never asks for a cut that puts metal back, nor for a shim or longer part that takes some off', () => {
    const tenths = (count: number) => inch(`${count}/10000`);
    fc.assert(
      fc.property(
        fc.constantFrom('float' as const, 'end-play' as const, 'clamp' as const),
        fc.record({
          gap: fc.integer({ min: -200, max: 200 }),
          lower: fc.integer({ min: 0, max: 60 }),
          wide: fc.integer({ min: 1, max: 100 }),
          aimAt: fc.integer({ min: 0, max: 100 }),
          plusMinus: fc.integer({ min: 0, max: 40 }),
        }),
        (kind, { gap, lower, wide, aimAt, plusMinus }) => {
          const answer = spacerStack({
            fixed: { name: 'opening', length: toleranceEstimate(tenths(10_000 + gap), tenths(plusMinus)) },
            parts: [part('spacer', known('1.0000'), { adjustable: true })],
            want: {
              kind,
              aim: tenths(lower + Math.min(aimAt, wide)),
              limits: { lower: tenths(lower), upper: tenths(lower + wide), source: 'test' },
            },
            step: inch('.0001'),
          });
          const codes = answer.trims.map(({ result }) => (result.ok ? 'ok' : result.refusal.code));
          expect(codes).not.toContain('metal-gone');
          const { shim } = answer;
          expect(shim?.proved !== true || isMore(shim.lower, zero)).toBe(true);
          expect(shim === undefined || isMore(shim.thickness, zero)).toBe(true);
          for (const { from, to } of answer.longerParts) expect(isMore(to, from)).toBe(true);
          // Whatever the band: a figure, unless it is right already or lies on the aim.
          const isOffered = codes.includes('ok') || shim !== undefined;
          expect(isOffered).toBe(answer.verdict.kind !== 'good' && !isZero(answer.needed.aim));
          for (const { result } of answer.trims)
            expect(result.ok && isLess(result.value.to, result.value.from)).toBe(true);
        },
      ),
    );
  });
});

describe('a textbook’s stack (Shigley 9th ed., example 1-3)', () => {
  const textbook: StackQuestion = {
    fixed: { name: 'a', length: known('1.750', '.003') },
    parts: [
      part('b', known('.750', '.001')),
      part('c', known('.120', '.005')),
      part('d', known('.875', '.001'), { adjustable: true }),
    ],
    want: want('float', '.003', '.003', '.050'),
    step: inch('.001'),
  };

  test('leaves .005, ± .010 at the worst and ± .006 by root-sum-square', () => {
    const answer = spacerStack(textbook);
    expect(shown(answer.gap)).toBe('0.0050');
    expect(shown(answer.worstCase)).toBe('0.0100');
    expect(shown(answer.rss)).toBe('0.0060');
    expect(shown(answer.band.halfWidth)).toBe('0.0060');
  });

  test('needs d no longer than .867 to have .003 at the worst', () => {
    // The .010 holds d's own .001 already, so d is exact beside it.
    const worst: StackQuestion = {
      ...textbook,
      parts: textbook.parts.map((one) => (one.name === 'd' ? { ...one, thickness: known('.875') } : one)),
      direct: known('.005', '.010'),
    };
    const answer = spacerStack(worst);
    // The aim of .003 is what the band can't prove: .003 + .010 − .005 = .008 off .875
    expect(trimOf(answer)).toMatchObject({ to: '0.8670', upper: '0.8670' });
    const aimed = spacerStack({ ...worst, want: want('float', '.003', '.013', '.050') });
    expect(trimOf(aimed)).toMatchObject({ to: '0.8670', upper: '0.8670' });
  });
});

describe('a stack measured with one caliper', () => {
  const caliper: ToolInForce = {
    id: 'caliper',
    name: 'caliper',
    kind: 'caliper',
    mpe: inch('.001'),
    resolution: inch('.0005'),
    resolutionInMpe: true,
    repeatability: inch('0'),
  };
  const read = (size: string) => typedEstimate(inch(size), caliper);

  test('knows its gap to three times the caliper’s error: four parts less one sleeve', () => {
    const answer = spacerStack({
      ...bracketStack,
      fixed: { name: 'sleeve', length: read('.970') },
      parts: ['.062', '.385', '.500', '.021'].map((size) => part(size, read(size))),
    });
    // one reading: 1.95996 · .001/√3 = .0011316; three times .003395, five in a row .005658, √5 of it .002530
    expect(decimalText(answer.band.halfWidth, 'in', 6)).toBe('0.003395');
    expect(decimalText(answer.worstCase, 'in', 6)).toBe('0.005658');
    expect(decimalText(answer.rss, 'in', 6)).toBe('0.002530');
  });
});

describe('several pieces of one thickness', () => {
  const threeWashers = sleeveOf('.200', {
    parts: [part('washer', known('.066'), { count: 3, adjustable: true })],
  });

  test('count each, and one of them is trimmed', () => {
    // .200 − 3 · .066 = .002; one washer .066 − .008 = .058
    const answer = spacerStack(threeWashers);
    expect(shown(answer.gap)).toBe('0.0020');
    expect(trimOf(answer)).toMatchObject({ from: '0.0660', to: '0.0580', take: '0.0080' });
  });
});

describe('a part with a least length', () => {
  const withLeast = (least: string) => ({
    ...bracketStack,
    parts: [
      part('bracket side', known('.583')),
      part('spacer', known('.385'), { adjustable: true, leastLength: inch(least) }),
    ],
  });

  test('that can’t give enough is refused, with how much is missing', () => {
    const [offer] = spacerStack(withLeast('.380')).trims;
    const refusal = offer?.result.ok === false ? offer.result.refusal : undefined;
    expect(refusal?.code).toBe('below-least-length');
    expect(refusal?.code === 'below-least-length' && shown(refusal.missing)).toBe('0.0030'); // .380 − .377
  });

  test('that can give enough for the limits but not for the aim gives what it has', () => {
    expect(trimOf(spacerStack(withLeast('.378')))).toMatchObject({
      to: '0.3780',
      take: '0.0070',
      lower: '0.3780',
    });
  });
});

test('a dial whose steps all miss the limits of the cut is refused', () => {
  const coarse = { ...bracketStack, step: inch('.020') };
  expect(trimOf(spacerStack(coarse))).toBe('no-step-in-limits');
});

test('every part that may give is offered a trim of its own, in the order of the stack', () => {
  const parts = bracketStack.parts.map((each) => ({ ...each, adjustable: each.name !== 'bracket' }));
  const answer = spacerStack({ ...bracketStack, parts });
  expect(answer.trims.map((offer) => offer.part)).toEqual(['washer', 'spacer', 'shim']);
});

describe('a stack that is too loose', () => {
  const answer = spacerStack(
    sleeveOf('.9931', { fixed: { name: 'sleeve', length: known('.9931', '.001') } }),
  );

  test('wants a shim of what is over the aim, with what the band leaves of the limits', () => {
    // gap .9931 − .968 = .0251; − .010 = .0151; lower .0251 − (.012 − .001) = .0141, upper .0251 − (.008 + .001) = .0161
    expect(answer.verdict).toMatchObject({ kind: 'no-good', way: 'over' });
    expect(answer.shim && [answer.shim.thickness, answer.shim.lower, answer.shim.upper].map(shown)).toEqual([
      '0.0151',
      '0.0141',
      '0.0161',
    ]);
    expect(answer.trims).toEqual([]);
  });

  test('or a new spacer longer by as much, left standing to the dial’s step', () => {
    // .385 + .0151 = .4001, up to .401; from .3991 to .4011
    expect(
      answer.longerParts.map(({ part: name, from, to, lower, upper }) => [
        name,
        ...[from, to, lower, upper].map(shown),
      ]),
    ).toEqual([['spacer', '0.3850', '0.4010', '0.3991', '0.4011']]);
  });
});

describe('a stack that clamps', () => {
  const clamp = want('clamp', '.002', '.004', '.008');

  test('wants its parts proud: .968 in a sleeve of .964 stands .004 proud and is good', () => {
    const answer = spacerStack(sleeveOf('.964', { want: clamp }));
    expect(shown(answer.gap)).toBe('-0.0040');
    expect(shown(answer.wanted)).toBe('0.0040');
    expect(answer.verdict.kind).toBe('good');
  });

  test('too proud is trimmed down to the aim', () => {
    // .968 − .958 = .010 proud; .385 − (.010 − .004) = .379; from .385 − .008 = .377 to .385 − .002 = .383
    const answer = spacerStack(sleeveOf('.958', { want: clamp }));
    expect(answer.verdict).toMatchObject({ kind: 'no-good', way: 'over' });
    expect(trimOf(answer)).toMatchObject({ to: '0.3790', lower: '0.3770', upper: '0.3830' });
  });

  test('not proud enough is shimmed up to the aim', () => {
    // .968 in .970: −.002 proud; a shim of .006 makes .004
    const answer = spacerStack(sleeveOf('.970', { want: clamp }));
    expect(answer.verdict).toMatchObject({ kind: 'no-good', way: 'under' });
    expect(answer.shim && shown(answer.shim.thickness)).toBe('0.0060');
    expect(answer.trims).toEqual([]);
  });
});

describe('a stack with exactly its least float', () => {
  test('is good when every size is exact and too close to call when it isn’t', () => {
    expect(spacerStack(sleeveOf('.976')).verdict.kind).toBe('good');
    const banded = sleeveOf('.976', { fixed: { name: 'sleeve', length: known('.976', '.0001') } });
    expect(spacerStack(banded).verdict).toMatchObject({ kind: 'too-close', near: 'lower' });
  });

  test('too close to call, it can be trimmed to the aim', () => {
    const banded = sleeveOf('.976', { fixed: { name: 'sleeve', length: known('.976', '.0001') } });
    expect(trimOf(spacerStack(banded))).toMatchObject({ to: '0.3830', take: '0.0020' });
  });
});

describe('usual wants', () => {
  test.each(['float', 'end-play', 'clamp'] as const)(
    'of a %s have their aim inside their limits, in both units',
    (kind) => {
      for (const unit of ['in', 'mm'] as const) {
        const { aim, limits } = stackWantPreset(kind, unit);
        expect(verdictOf({ value: aim, halfWidth: inch('.001'), limits }).kind).toBe('good');
        expect(limits.source).toBe('common practice, no source');
      }
    },
  );

  test('a bracket floats .008 to .012, aim .010', () => {
    const { aim, limits } = stackWantPreset('float');
    expect([limits.lower, aim, limits.upper].map(shown)).toEqual(['0.0080', '0.0100', '0.0120']);
  });
});

describe('laws of the stack', () => {
  const tenThous = fc.integer({ min: 500, max: 5000 }).map((n) => typedEstimate(lengthOf(`${n}/10000 in`)));
  const parts = fc.array(tenThous, { minLength: 1, maxLength: 6 });

  test('its parts in any order leave the same gap', () => {
    fc.assert(
      fc.property(parts, tenThous, (thicknesses, sleeve) => {
        const stack = thicknesses.map((thickness, index) => part(`part ${index}`, thickness));
        const q = { ...bracketStack, fixed: { name: 'sleeve', length: sleeve }, parts: stack };
        const gaps = [stack, stack.toReversed()].map((order) =>
          toText(spacerStack({ ...q, parts: order }).gap),
        );
        expect(gaps[0]).toBe(gaps[1]);
      }),
    );
  });

  test('a trim that was cut to size makes the stack good, with the band it had', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200, max: 75 }), fc.integer({ min: 0, max: 14 }), (gap, halfWidth) => {
        const sleeve = plus(inch('.968'), lengthOf(`${gap < 0 ? '-' : ''}${Math.abs(gap)}/10000 in`));
        const plusMinus = lengthOf(`${halfWidth}/10000 in`);
        const q = {
          ...bracketStack,
          fixed: { name: 'sleeve', length: toleranceEstimate(sleeve, plusMinus) },
        };
        const answer = spacerStack(q);
        const [offer] = answer.trims;
        const cut = offer?.result.ok ? offer.result.value : undefined;
        expect(cut).toBeDefined();
        const gapAfter = cut ? plus(answer.gap, minus(cut.from, cut.to)) : answer.gap;
        expect(
          verdictOf({ value: gapAfter, halfWidth: answer.band.halfWidth, limits: float.limits }).kind,
        ).toBe('good');
        expect(cut && sameLength(cut.take, minus(cut.from, cut.to))).toBe(true);
      }),
    );
  });
});

describe('a gap read directly, then a part trimmed that is itself known to so much', () => {
  const byFeeler = (own: string): StackQuestion => ({
    ...bracketStack,
    parts: bracketStack.parts.map((one) =>
      one.name === 'spacer' ? { ...one, thickness: known('.385', own) } : one,
    ),
    direct: known('.004', '.0003'),
  });

  test('keeps its own band: ± .0003 and ± .0004 are ± .0005 once it is shorter', () => {
    // √(.0003² + .0004²) = .0005. .385 − (.010 − .004) = .379; .377 + .0005, .381 − .0005
    const answer = spacerStack(byFeeler('.0004'));
    expect(shown(answer.band.halfWidth)).toBe('0.0003');
    expect(trimOf(answer)).toMatchObject({ to: '0.3790', lower: '0.3775', upper: '0.3805' });
  });

  test('known too badly itself is faced by a figure that is not proved', () => {
    // √(.0003² + .004²) leaves nothing of .004
    const [offer] = spacerStack(byFeeler('.004')).trims;
    expect(offer?.result).toMatchObject({ value: { proved: false } });
    expect(trimOf(spacerStack(byFeeler('.004')))).toMatchObject({ to: '0.3790', lower: '0.3770' });
  });

  test('made new and longer counts the band it had too: the room is read with the old one in', () => {
    // .022 read: .385 + .012 = .397; from .385 + .010 + .0005 to .385 + .014 − .0005
    const [longer] = spacerStack({ ...byFeeler('.0004'), direct: known('.022', '.0003') }).longerParts;
    expect(longer && [longer.to, longer.lower, longer.upper].map(shown)).toEqual([
      '0.3970',
      '0.3955',
      '0.3985',
    ]);
  });
});

describe('a part that would be faced too short', () => {
  /** One thin part beside a hub, exact sizes, and so much too little float. */
  const thin = (
    size: string,
    gap: string,
    more: Partial<StackPart> = {},
    plusMinus = '0',
  ): ReturnType<typeof spacerStack> => {
    const washer = part('washer', known(size), { adjustable: true, ...more });
    const whole = [inch(size), ...Array.from({ length: washer.count - 1 }, () => inch(size))].reduce(
      (so, next) => plus(so, next),
      plus(inch('.900'), inch(gap)),
    );
    return spacerStack({
      fixed: { name: 'sleeve', length: toleranceEstimate(whole, inch(plusMinus)) },
      parts: [part('hub', known('.900')), washer],
      want: float,
      step: inch('.001'),
    });
  };

  test('is never faced to nothing: .010 off a .010 washer leaves it out', () => {
    const answer = thin('.010', '0');
    expect(trimOf(answer)).toBe('below-least-length');
    expect(answer.trims[0]?.instead).toMatchObject({ pieces: 1, proved: true });
    expect(answer.trims[0]?.instead && shown(answer.trims[0].instead.leaves)).toBe('0.0100');
    expect(answer.trims[0]?.instead?.put).toBeUndefined();
  });

  test.each([
    { size: '.030', to: '0.0200' }, // .030 − .010, just the usual least
    { size: '.0309', to: '0.0210' }, // .0209, left full to the dial
    { size: '.029', to: '0.0200' }, // .019 would be too short; .020 still lies within .008 to .012
    { size: '.0279', to: 'below-least-length' }, // .0199 is the longest that does
  ])('a $size washer with .010 too little comes to $to', ({ size, to }) => {
    const trim = trimOf(thin(size, '0'));
    expect(typeof trim === 'string' ? trim : trim.to).toBe(to);
  });

  test('is replaced by a shim where leaving it out is too much: .019 less .010 is .009', () => {
    const instead = thin('.019', '0').trims[0]?.instead;
    expect(instead?.put && [instead.put.aim, instead.put.lower, instead.put.upper].map(shown)).toEqual([
      '0.0090',
      '0.0070',
      '0.0110',
    ]);
  });

  test('and is shorter than what has to go says what is wanted still: .010 of .025', () => {
    // −.015 of gap wants .025 off; the .010 washer out leaves .015 to come off another part
    const instead = thin('.010', '-.015').trims[0]?.instead;
    expect(instead?.still && shown(instead.still)).toBe('0.0150');
  });

  test('of which three are in goes out as often as it takes: two of .006 for .012', () => {
    // gap −.002; two of three out: +.012 = .010
    const instead = thin('.006', '-.002', { count: 3 }).trims[0]?.instead;
    expect(instead).toMatchObject({ pieces: 2, proved: true });
    expect(instead && shown(instead.leaves)).toBe('0.0100');
  });

  test('that was given a least length of its own has no shim put in its place', () => {
    const answer = thin('.390', '0', { leastLength: inch('.385') });
    expect(trimOf(answer)).toBe('below-least-length');
    expect(answer.trims[0]?.instead).toBeUndefined();
    // all it has to spare is .005 of .010
    const { shared } = answer;
    expect(shared && shown(shared.missing ?? zero)).toBe('0.0050');
  });

  test('left out by sizes that can’t prove it is said so', () => {
    expect(thin('.010', '0', {}, '.003').trims[0]?.instead).toMatchObject({ pieces: 1, proved: false });
  });

  test('in millimetres the shop’s own usual least counts', () => {
    const mm = (text: string) => toleranceEstimate(lengthOf(`${text} mm`), zero);
    const q = (washer: string): StackQuestion => ({
      fixed: { name: 'sleeve', length: mm('20.60') },
      parts: [part('hub', mm('20')), part('washer', mm(washer), { adjustable: true })],
      want: stackWantPreset('float', 'mm'),
      step: lengthOf('0.01 mm'),
      usualLeast: lengthOf('0.5 mm'),
    });
    // gap −0.15, aim 0.25: 0.75 − 0.40 = 0.35, at the most 0.40: too short. 0.95: gap −0.35, still 0.35.
    expect(trimOf(spacerStack(q('0.75')))).toBe('below-least-length');
    const put = spacerStack(q('0.75')).trims[0]?.instead?.put;
    expect(put && sameLength(put.aim, lengthOf('0.35 mm'))).toBe(true);
  });
});

test('parts that can’t give it alone give it together: .040 and .010 of .050', () => {
  // spacers .100 and .090, both down to .060 at the least: .040 and .030 to spare; .050 has to go
  const answer = spacerStack({
    fixed: { name: 'sleeve', length: known('1.050') },
    parts: [
      part('hub', known('.900')),
      part('left', known('.090'), { adjustable: true, leastLength: inch('.060') }),
      part('right', known('.100'), { adjustable: true, leastLength: inch('.060') }),
    ],
    want: float,
    step: inch('.001'),
  });
  expect(answer.shared?.missing).toBeUndefined();
  expect(answer.shared?.trims.map(({ part: name, from, to }) => [name, shown(from), shown(to)])).toEqual([
    ['right', '0.1000', '0.0600'],
    ['left', '0.0900', '0.0800'],
  ]);
});

test('of parts that are in a thousand times each as many give as it takes, one of them the rest', () => {
  // 100 kinds of 1,000 washers .0625 over a sleeve of 1 in: 6,250 − 1 = 6,249 of overlap, and the .010 wanted, to go. Each
  // washer may give .0625 − .0600 = .0025: 250 in all, so 5,999.01 are missing, and every one goes down to its least.
  const parts = Array.from({ length: 100 }, (_none, kind) =>
    part(`washer ${kind}`, known('.0625'), { count: 1000, adjustable: true, leastLength: inch('.060') }),
  );
  const q = { fixed: { name: 'sleeve', length: known('1') }, want: float, step: inch('.001') };
  const all = spacerStack({ ...q, parts }).shared;
  expect(all?.missing && sameLength(all.missing, inch('5999.01'))).toBe(true);
  expect(all?.trims.map(({ pieces }) => pieces)).toEqual(parts.map(() => 1000));
  // A thousand over a sleeve of 62.3: .2 and .010 to go, 84 washers by .0025 each, and no rest; of .211 the rest is .001.
  const some = (length: string) =>
    spacerStack({ ...q, fixed: { name: 'sleeve', length: known(length) }, parts: parts.slice(0, 1) }).shared;
  expect(some('62.3')?.trims).toMatchObject([{ pieces: 84 }]);
  expect(some('62.299')?.trims.map(({ pieces, to }) => [pieces, shown(to)])).toEqual([
    [84, '0.0600'],
    [1, '0.0615'],
  ]);
});

describe('a stack .070 short, measured with a caliper that proves ± .003', () => {
  const short = (more: Partial<StackQuestion> = {}, adjustable = true): StackQuestion => ({
    fixed: { name: 'sleeve', length: known('1.0480', '.003') },
    parts: [part('hub', known('.900')), part('spacer', known('.068'), { adjustable })],
    want: float,
    step: inch('.001'),
    ...more,
  });

  // 1.048 − .968 = .080; .080 − .010 = .070; whole limits .068 to .072
  test('has its shim, its longer part and its new part, none of them proved', () => {
    const { shim, longerParts, newPart, provable } = spacerStack(short());
    expect(provable).toBe(false);
    expect(shim && [shim.thickness, shim.lower, shim.upper].map(shown)).toEqual([
      '0.0700',
      '0.0680',
      '0.0720',
    ]);
    // .068 + .070
    expect(longerParts.map(({ part: name, to, proved }) => [name, shown(to), proved])).toEqual([
      ['spacer', '0.1380', false],
    ]);
    expect(newPart && [shown(newPart.to), newPart.proved]).toEqual(['0.0700', false]);
  });

  test('and no part that may be cut has every part longer by it', () => {
    const { shim, longerParts } = spacerStack(short({}, false));
    expect(shim && shown(shim.thickness)).toBe('0.0700');
    expect(longerParts.map(({ part: name, to, mayGive }) => [name, shown(to), mayGive])).toEqual([
      ['hub', '0.9700', false],
      ['spacer', '0.1380', false],
    ]);
  });

  test('read directly as coarsely says the same', () => {
    const { shim, longerParts } = spacerStack(short({ direct: known('.080', '.003') }));
    expect(shim).toMatchObject({ proved: false });
    expect(longerParts.map(({ to }) => shown(to))).toEqual(['0.1380']);
  });

  test.each([
    { kind: 'end-play', aim: '.004', by: '0.0760' }, // .080 − .004
    { kind: 'clamp', aim: '.004', by: '0.0840' }, // .080 + .004
  ] as const)('to $kind wants $by', ({ kind, aim, by }) => {
    const { shim } = spacerStack(short({ want: want(kind, '.002', aim, '.006') }));
    expect(shim && shown(shim.thickness)).toBe(by);
  });

  test('needs less than a spacer: no new part is made of .012', () => {
    expect(
      spacerStack(short({ fixed: { name: 'sleeve', length: known('.990', '.003') } })).newPart,
    ).toBeUndefined();
  });
});

describe('a part thinner than a spacer can be', () => {
  // .970 − .500 − .006 leaves .464 beside a gap: .446 + .006 + .500 = .952, gap .018, .010 wanted: .008 too much
  const thin = (more: Partial<StackPart> = {}, fixed = '.970') =>
    spacerStack({
      ...bracketStack,
      fixed: { name: 'sleeve', length: known(fixed) },
      parts: [
        part('bracket', known('.500')),
        part('spacer', known('.446')),
        part('packing', known('.006'), { adjustable: true, ...more }),
      ],
    });

  test('is not made new at .014: a shim of .008 does it', () => {
    const { shim, longerParts } = thin();
    expect(longerParts).toEqual([]);
    expect(shim && shown(shim.thickness)).toBe('0.0080');
  });

  test('is made at .014 where its own least says that it may be', () => {
    expect(thin({ leastLength: inch('.010') }).longerParts.map(({ to }) => shown(to))).toEqual(['0.0140']);
  });

  test.each([
    // .012 too much of a sleeve of .974: .018, and from .016 to .020 by the limits; the least it may be is the most
    { fixed: '.974', to: ['0.0200', '0.0200', '0.0200'] },
    { fixed: '.973', to: undefined },
    // .015: .021, from .019 to .023, of which .020 is the least
    { fixed: '.977', to: ['0.0210', '0.0200', '0.0230'] },
  ])('in a sleeve of $fixed is made no shorter than .020', ({ fixed, to }) => {
    const [longer] = thin({}, fixed).longerParts;
    expect(longer && [longer.to, longer.lower, longer.upper].map(shown)).toEqual(to);
  });

  test('one more spacer isn’t let down to .019 by its limits: .021 wanted, ± .002', () => {
    // sleeve .983: .031 less .010
    const { newPart } = thin({}, '.983');
    expect(newPart && [newPart.to, newPart.lower, newPart.upper].map(shown)).toEqual([
      '0.0210',
      '0.0200',
      '0.0230',
    ]);
  });
});

test('too tight with nothing that may be cut still says how much in all: .008', () => {
  const parts = bracketStack.parts.map((one) => ({ ...one, adjustable: false }));
  const { needed, trims } = spacerStack({ ...bracketStack, parts });
  expect(trims).toEqual([]);
  expect([needed.aim, needed.least, needed.most].map(shown)).toEqual(['0.0080', '0.0060', '0.0100']);
});

describe('a float’s least', () => {
  const nothing = (kind: StackWant['kind'], plusMinus: string, lower = '0') =>
    spacerStack({ ...bracketStack, direct: known('0', plusMinus), want: want(kind, lower, '.002', '.005') })
      .verdict.kind;

  test('is proved always: nothing read is not a float, whatever least was given', () => {
    expect(nothing('float', '.001')).toBe('too-close');
    expect(nothing('float', '0')).toBe('too-close');
    expect(nothing('float', '.001', '.005')).toBe('no-good');
  });

  test('goes for a clamp as well: parts that just touch are not held', () => {
    expect(nothing('clamp', '0')).toBe('too-close');
  });

  test('does not go for end play, which may be nothing', () => {
    expect(nothing('end-play', '0')).toBe('good');
    expect(nothing('end-play', '.001')).toBe('too-close');
  });
});
