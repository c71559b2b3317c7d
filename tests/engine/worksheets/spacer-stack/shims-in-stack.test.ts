import { describe, expect, test } from 'vitest';
import { toleranceEstimate, typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { decimalText, lengthOf, type Length } from '../../../../src/engine/length/length.ts';
import { sayPick, sayPickBand, sayPieces, sayShimRefusal } from '../../../../src/engine/shim/say-shims.ts';
import { shimsFromDrawer, type ShimPick, type ShimPiece } from '../../../../src/engine/shim/shims.ts';
import {
  shimsAsked,
  shimsWanted,
  stackWithShims,
} from '../../../../src/engine/worksheets/spacer-stack/shims-in-stack.ts';
import {
  spacerStack,
  type StackQuestion,
  type StackWant,
} from '../../../../src/engine/worksheets/spacer-stack/spacer-stack.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const shown = (length: Length | undefined) => length && decimalText(length, 'in', 4);

function stack(
  opening: string,
  kind: StackWant['kind'],
  [lower, aim, upper]: readonly [string, string, string],
  more: { plusMinus?: string; direct?: string } = {},
): StackQuestion {
  const { plusMinus = '0', direct } = more;
  return {
    fixed: { name: 'opening', length: toleranceEstimate(inch(opening), inch(plusMinus)) },
    parts: [
      { name: 'hub', thickness: toleranceEstimate(inch('.900'), inch('0')), count: 1, adjustable: false },
    ],
    want: { kind, aim: inch(aim), limits: { lower: inch(lower), upper: inch(upper), source: 'test' } },
    step: inch('.001'),
    ...(direct !== undefined && { direct: typedEstimate(inch(direct)) }),
  };
}

function shims(...sizes: readonly (readonly [string, string?])[]): readonly ShimPiece[] {
  return sizes.map(([size, plusMinus = '0'], index) => ({
    id: `s${index}`,
    name: `shim ${size}`,
    thickness: toleranceEstimate(inch(size), inch(plusMinus)),
    count: 2,
  }));
}

function wantedOf(question: StackQuestion) {
  const wanted = shimsWanted(spacerStack(question));
  return wanted && { aim: shown(wanted.aim), lower: shown(wanted.lower), upper: shown(wanted.upper) };
}

function pickFor(question: StackQuestion, drawer: readonly ShimPiece[]): ShimPick {
  const wanted = shimsAsked(question, spacerStack(question));
  if (!wanted) throw new Error('no shims wanted');
  const pick = shimsFromDrawer({ drawer, ...wanted });
  if (!pick.ok) throw new Error(pick.refusal.code);
  return pick.value;
}

const endPlay = ['.002', '.004', '.006'] as const;

describe('a stack with .035 end play that should have .002 to .006', () => {
  const question = stack('.935', 'end-play', endPlay);

  test('wants shims of .031, from .029 to .033', () => {
    // .035 − .004; .035 − .006; .035 − .002
    expect(wantedOf(question)).toEqual({ aim: '0.0310', lower: '0.0290', upper: '0.0330' });
  });

  test('known to ± .001 wants them from .030 to .032', () => {
    expect(wantedOf(stack('.935', 'end-play', endPlay, { plusMinus: '.001' }))).toEqual({
      aim: '0.0310',
      lower: '0.0300',
      upper: '0.0320',
    });
  });

  test('known to ± .003 can’t be proved, and wants them between the limits themselves', () => {
    expect(wantedOf(stack('.935', 'end-play', endPlay, { plusMinus: '.003' }))).toEqual({
      aim: '0.0310',
      lower: '0.0290',
      upper: '0.0330',
    });
  });

  test('has .0050 left with .020 and .010 in it, and is good', () => {
    const pick = pickFor(question, shims(['.020'], ['.010']));
    const after = stackWithShims(question, pick);
    expect(shown(after.gap)).toBe('0.0050');
    expect(after.verdict.kind).toBe('good');
  });

  test('is too close to call once the shims’ own error is counted: 3 pieces of ± .0008', () => {
    // One size in it three times: 3 · .0008 = .0024, and .0050 lies .0010 inside the limit of .006.
    const pick = pickFor(question, shims(['.010', '.0008'])).picked.map((one) => ({ ...one, count: 3 }));
    const after = stackWithShims(question, { picked: pick });
    expect(shown(after.gap)).toBe('0.0050');
    expect(after.verdict.kind).toBe('too-close');
  });
});

describe('no shims are wanted', () => {
  test('where the end play is right', () => {
    expect(wantedOf(stack('.9045', 'end-play', endPlay))).toBeUndefined();
  });

  test('where there is too little of it', () => {
    expect(wantedOf(stack('.901', 'end-play', endPlay))).toBeUndefined();
  });
});

describe('parts that should stand proud by .002 to .006', () => {
  const question = stack('.910', 'clamp', endPlay);

  test('and lie .010 below want shims of .014, from .012 to .016', () => {
    // .010 + .004; .010 + .002; .010 + .006
    expect(wantedOf(question)).toEqual({ aim: '0.0140', lower: '0.0120', upper: '0.0160' });
  });

  test('stand .005 proud with .015 in it', () => {
    const after = stackWithShims(question, pickFor(question, shims(['.015'])));
    expect([shown(after.gap), shown(after.wanted)]).toEqual(['-0.0050', '0.0050']);
    expect(after.verdict.kind).toBe('good');
  });

  test('known too badly to be proved want the same', () => {
    expect(wantedOf(stack('.910', 'clamp', endPlay, { plusMinus: '.003' }))).toEqual({
      aim: '0.0140',
      lower: '0.0120',
      upper: '0.0160',
    });
  });
});

test('an aim closer to a limit than the band wants the shims that can be proved, or none', () => {
  // Known to ± .001, .003 to .005 of .002 to .006 is left. Gap .0052 with the aim .0055: .0052 − .005
  expect(
    wantedOf(stack('.9052', 'end-play', ['.002', '.0055', '.006'], { plusMinus: '.001' })),
  ).toMatchObject({
    aim: '0.0002',
    lower: '0.0002',
  });
  // Gap .0028 with the aim .0025: too little to be sure, which wants a cut.
  expect(
    wantedOf(stack('.9028', 'end-play', ['.002', '.0025', '.006'], { plusMinus: '.001' })),
  ).toBeUndefined();
});

test('a gap read with a feeler counts, not the sum of the parts', () => {
  const question = stack('.999', 'end-play', endPlay, { direct: '.035' });
  const after = stackWithShims(question, pickFor(question, shims(['.031'])));
  expect(shown(after.gap)).toBe('0.0040');
});

describe('a pick is said', () => {
  const question = stack('.935', 'end-play', endPlay);

  test('as pieces, their sum, and what is left', () => {
    const pick = pickFor(question, shims(['.010'], ['.0105']));
    expect(sayPieces(pick, 'in')).toBe('2 × .0105 + .010');
    // 2 × .0105 + .010 = .031; .035 − .031 = .004
    expect(sayPick(pick, stackWithShims(question, pick).gap, 'in')).toBe('Together .031, leaves .004.');
  });

  test('in millimetres with its unit', () => {
    const pick = pickFor(question, shims(['.031']));
    // .031 in = 0.7874 mm; .004 in = 0.1016 mm
    expect(sayPick(pick, stackWithShims(question, pick).gap, 'mm')).toBe(
      'Together 0.787 mm, leaves 0.102 mm.',
    );
  });

  test('as the nearest possible where nothing fits, and by how much it is off', () => {
    const thin = pickFor(question, shims(['.012']));
    expect(sayPick(thin, stackWithShims(question, thin).gap, 'in')).toBe(
      'Nothing in the drawer fits. Nearest possible: together .024, leaves .011, .007 too thin for the aim.',
    );
    const thick = pickFor(question, shims(['.034']));
    expect(sayPick(thick, stackWithShims(question, thick).gap, 'in')).toContain(
      '.003 too thick for the aim.',
    );
  });

  test('with how closely it is known, growing with each piece', () => {
    // One size was measured and is in it twice: 2 · .0002.
    expect(sayPickBand(pickFor(question, shims(['.0155', '.0002'])), 'in')).toBe(
      'The 2 pieces together are known to ±.00040: each one adds to it.',
    );
    expect(sayPickBand(pickFor(question, shims(['.031', '.0002'])), 'in')).toBe(
      'The piece is known to ±.00020.',
    );
  });

  test('and what keeps a drawer from giving one', () => {
    expect(sayShimRefusal({ code: 'no-shims' })).toMatch(/no shim or washer with a thickness/);
    expect(sayShimRefusal({ code: 'shims-too-fine' })).toMatch(/more places than any gauge shows/);
  });
});
