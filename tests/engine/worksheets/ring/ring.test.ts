import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toleranceEstimate } from '../../../../src/engine/reading/estimate.ts';
import { decimalText, lengthOf, toText, type Length } from '../../../../src/engine/length/length.ts';
import { ring, type RingAnswer, type RingQuestion } from '../../../../src/engine/worksheets/ring/ring.ts';
import type { CutFromBlank, RingBlank } from '../../../../src/engine/worksheets/ring/ring-blank.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const shown = (length: Length | undefined) => length && decimalText(length, 'in', 4);
const known = (size: string, plusMinus = '0') => toleranceEstimate(inch(size), inch(plusMinus));
const places = (tightest: string, loosest = tightest, plusMinus = '0') => ({
  tightest: known(tightest, plusMinus),
  loosest: known(loosest, plusMinus),
});
const clearance = (lower: string, aim: string, upper: string) => ({
  lower: inch(lower),
  aim: inch(aim),
  upper: inch(upper),
  source: 'test',
});

/** A dust shield: recess 1.500 bore, .093 deep, .020 to stay free; stem .750. The outside locates. */
const shield: RingQuestion = {
  recess: places('1.500'),
  stem: places('.750'),
  outsideClearance: clearance('.001', '.003', '.005'),
  insideClearance: clearance('.010', '.020', '.030'),
  depth: known('.093'),
  stayFree: inch('.020'),
  blanks: [],
  steps: { diameter: inch('.001'), length: inch('.001') },
};

function blank(name: string, outside: string, inside: string, thickness: string): RingBlank {
  return { id: name, name, outside: inch(outside), inside: inch(inside), thickness: inch(thickness) };
}

function worked(more: Partial<RingQuestion> = {}): RingAnswer {
  const result = ring({ ...shield, ...more });
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

function refusal(more: Partial<RingQuestion>) {
  const result = ring({ ...shield, ...more });
  return result.ok ? 'no refusal' : result.refusal;
}

const limitsOf = ({ target, lower, upper }: { target: Length; lower: Length; upper: Length }) =>
  [target, lower, upper].map(shown);
const cutsOf = (from: CutFromBlank | undefined) =>
  from?.cuts.map(({ kind, to, take }) => `${kind} ${shown(to)} ${shown(take)}`);

describe('a shield for a 1.500 recess round a .750 stem', () => {
  const answer = worked();

  test('is 1.497 outside, good from 1.495 to 1.499: recess less clearance', () => {
    // 1.500 − .003; 1.500 − .005; 1.500 − .001
    expect(limitsOf(answer.outside)).toEqual(['1.4970', '1.4950', '1.4990']);
  });

  test('is .770 inside, good from .760 to .780: stem and clearance', () => {
    // .750 + .020; .750 + .010; .750 + .030
    expect(limitsOf(answer.inside)).toEqual(['0.7700', '0.7600', '0.7800']);
  });

  test('is .073 thick at most: .093 deep less .020 that must stay free', () => {
    expect(shown(answer.thickness?.target)).toBe('0.0730');
    expect(shown(answer.thickness?.upper)).toBe('0.0730');
    // .073 − .093
    expect(shown(answer.proud)).toBe('-0.0200');
  });

  test('has .3635 of metal between', () => {
    // (1.497 − .770) / 2
    expect(shown(answer.wall)).toBe('0.3635');
  });

  test('with a dial of .002 steps is cut full: outside up, inside and thickness down', () => {
    const coarse = worked({ steps: { diameter: inch('.002'), length: inch('.002') } });
    // 1.497 up to 1.498; .770 stays; .073 down to .072, as .074 is past the most
    expect([coarse.outside, coarse.inside, coarse.thickness].map((size) => shown(size?.target))).toEqual([
      '1.4980',
      '0.7700',
      '0.0720',
    ]);
  });

  test('without a depth has no thickness to cut and nothing to say of what stands proud', () => {
    const { depth: _depth, ...open } = shield;
    const result = ring(open);
    expect(result.ok && [result.value.thickness, result.value.proud]).toEqual([undefined, undefined]);
  });

  test('that may stand .010 proud is .103 thick', () => {
    const proud = worked({ stayFree: inch('-.010') });
    expect([proud.thickness?.target, proud.proud].map(shown)).toEqual(['0.1030', '0.0100']);
  });

  test('with nothing said of what stays free may fill the recess', () => {
    const { stayFree: _stayFree, ...level } = shield;
    const result = ring(level);
    expect(result.ok && shown(result.value.thickness?.target)).toBe('0.0930');
    expect(result.ok && shown(result.value.proud)).toBe('0.0000');
  });
});

describe('what the readings leave of the limits', () => {
  test('a recess known to ± .001 takes .001 off each end', () => {
    const { outside } = worked({ recess: places('1.500', '1.500', '.001') });
    expect(limitsOf(outside)).toEqual(['1.4970', '1.4960', '1.4980']);
  });

  test('a stem known to ± .002 takes .002 off each end', () => {
    const { inside } = worked({ stem: places('.750', '.750', '.002') });
    expect(limitsOf(inside)).toEqual(['0.7700', '0.7620', '0.7780']);
  });

  test('a recess out of round is ruled by its tightest place for the least, by its loosest for the most', () => {
    // 1.500 − .001 and 1.502 − .005
    const { outside } = worked({ recess: places('1.500', '1.502') });
    expect(limitsOf(outside)).toEqual(['1.4970', '1.4970', '1.4990']);
  });

  test('a stem worn oval is ruled by its thickest place for the least, by its thinnest for the most', () => {
    // .750 + .010 and .745 + .030
    const { inside } = worked({ stem: places('.750', '.745') });
    expect(limitsOf(inside)).toEqual(['0.7700', '0.7600', '0.7750']);
  });

  test('a depth known to ± .003 leaves .070 for the ring', () => {
    expect(shown(worked({ depth: known('.093', '.003') }).thickness?.target)).toBe('0.0700');
  });

  test('a recess known to ± .003 leaves nothing of .001 to .005: the whole limits stand, and prove nothing', () => {
    const { outside } = worked({ recess: places('1.500', '1.500', '.003') });
    expect(limitsOf(outside)).toEqual(['1.4970', '1.4950', '1.4990']);
    expect(outside.provable).toBe(false);
  });

  test('a recess known to ± .002 leaves just the middle of them, and proves it', () => {
    const { outside } = worked({ recess: places('1.500', '1.500', '.002') });
    expect(limitsOf(outside)).toEqual(['1.4970', '1.4970', '1.4970']);
    expect(outside.provable).toBe(true);
  });

  test('a recess of 1.5005 known to ± .0018 leaves no thou to cut to: the whole limits stand', () => {
    // 1.5005 − .005 + .0018 = 1.4973; 1.5005 − .001 − .0018 = 1.4977; the aim 1.4975 up to 1.498
    const { outside } = worked({ recess: places('1.5005', '1.5005', '.0018') });
    expect(limitsOf(outside)).toEqual(['1.4980', '1.4955', '1.4995']);
    expect(outside.provable).toBe(false);
  });

  test('a stem known to ± .011 leaves nothing of .010 to .030', () => {
    const { inside } = worked({ stem: places('.750', '.750', '.011') });
    expect(limitsOf(inside)).toEqual(['0.7700', '0.7600', '0.7800']);
    expect(inside.provable).toBe(false);
  });

  test('a recess more out of round than the limits are apart can’t be proved either: its tightest place rules', () => {
    const { outside } = worked({ recess: places('1.500', '1.505') });
    expect(limitsOf(outside)).toEqual(['1.4970', '1.4950', '1.4990']);
    expect(outside.provable).toBe(false);
  });
});

describe('a ring is refused', () => {
  test('where it would have no wall', () => {
    // 1.500 − .003 = 1.497 outside; 1.485 + .020 = 1.505 inside
    expect(refusal({ stem: places('1.485') })).toMatchObject({ code: 'ring-no-wall' });
  });

  test('where as much must stay free as the recess is deep', () => {
    expect(refusal({ stayFree: inch('.093') })).toMatchObject({ code: 'ring-no-depth' });
  });

  test('where it could only be thinner than it should; not where it is just thick enough', () => {
    expect(refusal({ leastThickness: inch('.074') })).toMatchObject({ code: 'ring-too-thin' });
    expect(refusal({ leastThickness: inch('.073') })).toBe('no refusal');
  });

  test('where there is room for less than .020: left out, and the room is said', () => {
    // .093 − .073 = .020; a thou less is foil
    expect(refusal({ stayFree: inch('.073') })).toBe('no refusal');
    const foil = refusal({ stayFree: inch('.074') });
    expect(foil).toMatchObject({ code: 'ring-too-thin' });
    expect(
      foil !== 'no refusal' && foil.code === 'ring-too-thin' && [foil.most, foil.least].map(shown),
    ).toEqual(['0.0190', '0.0200']);
    const { thickness } = worked({ stayFree: inch('.073') });
    expect(thickness && limitsOf(thickness)).toEqual(['0.0200', '0.0200', '0.0200']);
  });

  test('at no thickness: that is no least of one’s own', () => {
    const { thickness } = worked({ leastThickness: inch('0') });
    expect(shown(thickness?.lower)).toBe('0.0200');
    expect(refusal({ leastThickness: inch('0'), stayFree: inch('.080') })).toMatchObject({
      code: 'ring-too-thin',
    });
    // but a thinner one may be the fitter's own word
    expect(refusal({ leastThickness: inch('.010'), stayFree: inch('.080') })).toBe('no refusal');
  });

  test('with a wall of less than .020 at its worst', () => {
    // outside 1.495 at least, inside stem + .030 at most: 1.425 leaves .020, 1.426 less
    expect(refusal({ stem: places('1.425') })).toBe('no refusal');
    expect(refusal({ stem: places('1.426') })).toMatchObject({ code: 'ring-no-wall' });
  });

  test('a washer of foil is none to cut it from, with a depth and without', () => {
    const blanks = [blank('foil', '1.625', '.688', '.019'), blank('shim', '1.625', '.688', '.020')];
    const { depth: _, ...noDepth } = shield;
    for (const question of [
      { ...shield, blanks },
      { ...noDepth, blanks },
    ]) {
      const result = ring(question);
      const { best, ruledOut } = result.ok ? result.value.fromBlanks : { best: undefined, ruledOut: [] };
      expect(best?.blank.name).toBe('shim');
      expect(ruledOut.map(({ why }) => why)).toEqual(['too-thin']);
    }
  });

  test('where no step of the dial lies inside', () => {
    const steps = { diameter: inch('.010'), length: inch('.001') };
    expect(refusal({ steps })).toMatchObject({ code: 'no-step-in-limits' });
    const stem = places('.751');
    const close = clearance('.001', '.003', '.005');
    // 1.495 to 1.499 has no hundredth either; a recess of 1.503 has 1.500, .752 to .756 has none.
    expect(refusal({ steps, stem, recess: places('1.503'), insideClearance: close })).toMatchObject({
      code: 'no-step-in-limits',
      lower: inch('.752'),
    });
  });

  test('where the dial can’t face between what it should have and what there is room for', () => {
    const steps = { diameter: inch('.001'), length: inch('.010') };
    expect(refusal({ steps, leastThickness: inch('.072') })).toMatchObject({ code: 'no-step-in-limits' });
  });
});

describe('from a washer in the drawer', () => {
  test('1.625 by .688 by .078 comes .082 off the bore, .128 off the outside, .005 off the thickness', () => {
    const { best } = worked({ blanks: [blank('washer', '1.625', '.688', '.078')] }).fromBlanks;
    // .770 − .688; 1.625 − 1.497; .078 − .073
    expect(cutsOf(best)).toEqual(['bore 0.7700 0.0820', 'outside 1.4970 0.1280', 'length 0.0730 0.0050']);
  });

  test('whose thickness is below the most is not faced, and lies deeper', () => {
    const answer = worked({ blanks: [blank('washer', '1.625', '.688', '.063')] });
    expect(cutsOf(answer.fromBlanks.best)).toEqual(['bore 0.7700 0.0820', 'outside 1.4970 0.1280']);
    // .063 − .093
    expect(shown(answer.proud)).toBe('-0.0300');
  });

  test('that is inside all limits goes in as it is, at the limits too', () => {
    const { best } = worked({ blanks: [blank('washer', '1.499', '.760', '.073')] }).fromBlanks;
    expect(best?.cuts).toEqual([]);
    expect(best?.holding).toEqual([]);
  });

  test.each([
    { name: 'a step too small outside', sizes: ['1.4949', '.700', '.078'], why: 'too-small-outside' },
    { name: 'a step too wide inside', sizes: ['1.625', '.7801', '.078'], why: 'too-wide-inside' },
    { name: 'a step too thin', sizes: ['1.625', '.700', '.0499'], why: 'too-thin' },
  ] as const)('$name is ruled out, and says why', ({ sizes: [outside, inside, thickness], why }) => {
    const { fromBlanks } = worked({
      leastThickness: inch('.050'),
      blanks: [blank('washer', outside, inside, thickness)],
    });
    expect(fromBlanks.best).toBeUndefined();
    expect(fromBlanks.ruledOut.map((one) => one.why)).toEqual([why]);
  });

  test('with a size missing is not judged', () => {
    const { fromBlanks } = worked({ blanks: [{ id: 'a', name: 'a', thickness: inch('.078') }] });
    expect(fromBlanks.ruledOut.map((one) => one.why)).toEqual(['not-measured']);
  });

  test('the one with the fewest cuts is taken, then the one with the least to come off', () => {
    const blanks = [
      blank('three cuts', '1.510', '.750', '.075'),
      blank('two cuts, much', '1.750', '.688', '.063'),
      blank('two cuts, less', '1.625', '.688', '.063'),
    ];
    const { best, others } = worked({ blanks }).fromBlanks;
    expect([best, ...others].map((one) => one?.blank.name)).toEqual([
      'two cuts, less',
      'two cuts, much',
      'three cuts',
    ]);
  });

  test('of two alike the first listed is taken', () => {
    const blanks = ['first', 'second'].map((name) => blank(name, '1.625', '.688', '.063'));
    expect(worked({ blanks }).fromBlanks.best?.blank.name).toBe('first');
  });
});

describe('how it is held', () => {
  const holdingOf = (...sizes: readonly [string, string, string]) =>
    worked({ blanks: [blank('washer', ...sizes)] }).fromBlanks.best?.holding;

  test('bored first, then turned on a mandrel, faced there too', () => {
    expect(holdingOf('1.625', '.688', '.078')).toEqual(['bore-first', 'mandrel', 'face-on-mandrel']);
  });

  test('turned on a mandrel where the bore is right already', () => {
    expect(holdingOf('1.625', '.770', '.073')).toEqual(['mandrel']);
  });

  test('with care where it is thinner than a sixteenth', () => {
    expect(holdingOf('1.497', '.688', '.062')).toEqual(['thin']);
    expect(holdingOf('1.497', '.688', '.063')).toEqual([]);
  });

  test('with care where its wall is less than an eighth', () => {
    const holding = (stem: string) =>
      worked({ stem: places(stem), blanks: [blank('washer', '1.497', '.750', '.073')] }).fromBlanks.best
        ?.holding;
    // (1.497 − 1.248) / 2 = .1245; (1.497 − 1.247) / 2 = .125
    expect(holding('1.228')).toEqual(['thin']);
    expect(holding('1.227')).toEqual([]);
  });
});

describe('laws', () => {
  const thou = (least: number, most: number) => fc.integer({ min: least, max: most });
  const text = (count: number) => `${count} thou`;

  test('in inches or millimetres the ring is exactly the same before a dial rounds it', () => {
    fc.assert(
      fc.property(thou(1200, 3000), thou(200, 900), (bore, stem) => {
        const inInches = worked({ recess: places(`${bore / 1000}`), stem: places(`${stem / 1000}`) });
        const mm = (count: number) => toleranceEstimate(lengthOf(`${(count * 254) / 10_000} mm`), inch('0'));
        const inMm = worked({
          recess: { tightest: mm(bore), loosest: mm(bore) },
          stem: { tightest: mm(stem), loosest: mm(stem) },
        });
        expect(toText(inMm.outside.aim)).toBe(toText(inInches.outside.aim));
        expect(toText(inMm.inside.upper)).toBe(toText(inInches.inside.upper));
      }),
      { seed: 2, numRuns: 60 },
    );
  });

  test('what is cut never leaves the limits, whatever the washer', () => {
    fc.assert(
      fc.property(thou(1400, 2000), thou(300, 900), thou(20, 120), (outside, inside, thickness) => {
        const [o, i, t] = [outside, inside, thickness].map((count) => lengthOf(text(count)));
        const one = {
          id: 'w',
          name: 'w',
          ...(o && { outside: o }),
          ...(i && { inside: i }),
          ...(t && { thickness: t }),
        };
        const { best } = worked({ blanks: [one] }).fromBlanks;
        const past = best?.cuts.filter(
          ({ to, lower, upper }) =>
            Number(toText(to)) < Number(toText(lower)) || Number(toText(to)) > Number(toText(upper)),
        );
        expect(past ?? []).toEqual([]);
      }),
      { seed: 3, numRuns: 100 },
    );
  });
});
