import { describe, expect, test } from 'vitest';
import {
  cutOfOnePart,
  cutsOfStack,
  placesReplaced,
} from '../../../../src/engine/worksheets/spacer-stack/cuts-of-stack.ts';
import { toleranceEstimate } from '../../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import {
  spacerStack,
  type StackPart,
  type StackQuestion,
} from '../../../../src/engine/worksheets/spacer-stack/spacer-stack.ts';
import { cutSaid, waysSaid } from '../../cut/cut-said.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const known = (size: string, plusMinus = '0') => toleranceEstimate(inch(size), inch(plusMinus));

function part(name: string, size: string, more: Partial<StackPart> = {}): StackPart {
  return { name, thickness: known(size), count: 1, adjustable: false, ...more };
}

/** Sleeve .970 over parts of .968: a float of .002 where .008 to .012, aim .010, is wanted. */
const bracket: StackQuestion = {
  fixed: { name: 'sleeve', length: known('.970') },
  parts: [
    part('washer', '.062'),
    part('spacer', '.385', { adjustable: true }),
    part('bracket', '.500'),
    part('shim', '.021'),
  ],
  want: {
    kind: 'float',
    aim: inch('.010'),
    limits: { lower: inch('.008'), upper: inch('.012'), source: 'own limits' },
  },
  step: inch('.001'),
};

const offered = (q: StackQuestion) => waysSaid(cutsOfStack(q, spacerStack(q)));
const onePart = (q: StackQuestion, ...places: number[]) => {
  const offer = cutOfOnePart(q, places);
  return offer && cutSaid(offer);
};

describe('a stack .008 too tight', () => {
  test('has its spacer faced from .385 to .377, good from .375 to .379', () => {
    // .385 − (.010 − .002); .385 − (.012 − .002); .385 − (.008 − .002)
    expect(offered(bracket)).toEqual({
      'trim-1': ['Spacer, faced to length: .3850 → .3770 (.3750 to .3790)'],
    });
  });

  test('with two parts that may give has two ways, not two cuts', () => {
    // .500 − .008 = .492; .500 − .010; .500 − .006
    const two = bracket.parts.map((one) => (one.name === 'bracket' ? { ...one, adjustable: true } : one));
    expect(offered({ ...bracket, parts: two })).toEqual({
      'trim-1': ['Spacer, faced to length: .3850 → .3770 (.3750 to .3790)'],
      'trim-2': ['Bracket, faced to length: .5000 → .4920 (.4900 to .4940)'],
    });
  });

  test('says that the limits come from the float that is wanted, and whose word that is', () => {
    const [way] = cutsOfStack(bracket, spacerStack(bracket));
    expect(way?.offers[0]).toMatchObject({
      operation: 'face',
      of: 'length',
      part: 'spacer',
      limitsFrom: 'float wanted (own limits), less what the readings can’t tell',
    });
  });

  test('where no part may be cut offers no cut', () => {
    const fixed = bracket.parts.map((one) => ({ ...one, adjustable: false }));
    expect(offered({ ...bracket, parts: fixed })).toEqual({});
  });

  test('offers no trim below a part’s least length', () => {
    const short = bracket.parts.map((one) =>
      one.name === 'spacer' ? { ...one, leastLength: inch('.380') } : one,
    );
    expect(offered({ ...bracket, parts: short })).toEqual({});
  });
});

test('a stack that floats as it should offers no cut', () => {
  // .978 − .968 = .010
  expect(offered({ ...bracket, fixed: { name: 'sleeve', length: known('.978') } })).toEqual({});
});

test('a stack .010 too loose has its spacer made new, .010 longer', () => {
  // .988 − .968 = .020; .385 + .010 = .395; limits .385 + .020 − .012 and .385 + .020 − .008
  expect(offered({ ...bracket, fixed: { name: 'sleeve', length: known('.988') } })).toEqual({
    'longer-1': ['Spacer, made new: .3950 (.3930 to .3970)'],
  });
});

describe('one part in place of washer and spacer', () => {
  test('is as long as what is left for it beside the others: .439', () => {
    // .970 − .500 − .021 = .449; less .010 = .439; .449 − .012 = .437; .449 − .008 = .441
    expect(onePart(bracket, 0, 1)).toBe('One part for washer and spacer, made new: .4390 (.4370 to .4410)');
  });

  test('of a stack that is good as it is keeps the same float', () => {
    // .978 − .521 = .457; less .010 = .447 = .062 + .385
    const good = { ...bracket, fixed: { name: 'sleeve', length: known('.978') } };
    expect(onePart(good, 0, 1)).toBe('One part for washer and spacer, made new: .4470 (.4450 to .4490)');
  });

  test('loses from its limits what the sizes that stay aren’t known to', () => {
    // sleeve ± .001: .438 to .440
    const rough = { ...bracket, fixed: { name: 'sleeve', length: known('.970', '.001') } };
    const said = onePart(rough, 0, 1);
    expect(said).toMatch(/^One part for washer and spacer, made new: \.4390 \(\.43[789]\d to \.4[34]\d\d\)$/);
    expect(said).not.toContain('.4370 to');
  });

  test('is worked from a gap that was read directly and the parts that go', () => {
    // .003 read, .062 + .385 = .447 go: .450 of room, less .010 = .440; .438 to .442
    expect(onePart({ ...bracket, direct: known('.003') }, 0, 1)).toBe(
      'One part for washer and spacer, made new: .4400 (.4380 to .4420)',
    );
  });

  test('that clamps stands proud by the aim', () => {
    // .970 − .521 = .449; .002 to .006 proud, aim .004: .453 (.451 to .455)
    const clamp: StackQuestion = {
      ...bracket,
      want: {
        kind: 'clamp',
        aim: inch('.004'),
        limits: { lower: inch('.002'), upper: inch('.006'), source: 'own limits' },
      },
    };
    expect(onePart(clamp, 0, 1)).toBe('One part for washer and spacer, made new: .4530 (.4510 to .4550)');
  });

  test('counts a part that is in the stack twice as often', () => {
    // two washers of .062: .970 − .521 = .449 are left for them and the spacer all the same
    const twice = bracket.parts.map((one) => (one.name === 'washer' ? { ...one, count: 2 } : one));
    expect(onePart({ ...bracket, parts: twice }, 0, 1)).toContain('.4390');
    // and where they stay: .970 − .124 − .021 = .825, less .010
    expect(onePart({ ...bracket, parts: twice }, 1, 2)).toContain(': .8150 (');
  });

  test('is not offered for one part alone', () => {
    expect(onePart(bracket, 1)).toBeUndefined();
  });

  test('stands in for several pieces of one part: .970 − .906 = .064, less .010', () => {
    const three = bracket.parts.map((one) => (one.name === 'shim' ? { ...one, count: 3 } : one));
    // .970 − .062 − .385 − .500 = .023, less .010 = .013: a shim does that, and nothing is cut
    expect(onePart({ ...bracket, parts: three }, 3)).toBeUndefined();
    expect(onePart({ ...bracket, fixed: { name: 'sleeve', length: known('1.020') }, parts: three }, 3)).toBe(
      // 1.020 − .947 = .073, less .010
      'One part for 3 × shim, made new: .0630 (.0610 to .0650)',
    );
  });

  test('keeps its figure where the band leaves nothing of the limits, and says so', () => {
    const rough = { ...bracket, fixed: { name: 'sleeve', length: known('.970', '.010') } };
    expect(onePart(rough, 0, 1)).toBe('One part for washer and spacer, made new: .4390 (.4370 to .4410)');
    expect(cutOfOnePart(rough, [0, 1])?.limitsFrom).toBe(
      'float wanted (own limits), by the sizes alone: these readings can’t prove it',
    );
  });

  test('is not offered where the others already fill the sleeve', () => {
    expect(onePart({ ...bracket, fixed: { name: 'sleeve', length: known('.520') } }, 0, 1)).toBeUndefined();
  });

  test('three parts are named one after the other', () => {
    expect(onePart(bracket, 0, 1, 2)).toMatch(/^One part for washer, spacer and bracket, made new/);
  });
});

describe('a stack whose readings leave nothing of its limits', () => {
  const rough = (sleeve: string): StackQuestion => ({
    ...bracket,
    fixed: { name: 'sleeve', length: known(sleeve, '.010') },
  });
  const ways = (sleeve: string) => cutsOfStack(rough(sleeve), spacerStack(rough(sleeve)));

  test('is cut by the figure all the same, as a way that is not sure yet', () => {
    expect(offered(rough('.970'))).toEqual({
      'trim-1': ['Spacer, faced to length: .3850 → .3770 (.3750 to .3790)'],
    });
    expect(ways('.970')).toMatchObject([{ unsure: true }]);
  });

  test('and is .070 short has the longer part and one more spacer', () => {
    // 1.048 − .968 = .080; .080 − .010 = .070; .385 + .070
    expect(offered(rough('1.048'))).toEqual({
      'longer-1': ['Spacer, made new: .4550 (.4530 to .4570)'],
      extra: ['One more spacer, made new: .0700 (.0680 to .0720)'],
    });
    expect(ways('1.048').every(({ unsure }) => unsure === true)).toBe(true);
  });
});

test('with no part that may be cut only one more spacer is made: nobody said which part gives', () => {
  const fixed = bracket.parts.map((one) => ({ ...one, adjustable: false }));
  const q = { ...bracket, fixed: { name: 'sleeve', length: known('1.048') }, parts: fixed };
  expect(offered(q)).toEqual({ extra: ['One more spacer, made new: .0700 (.0680 to .0720)'] });
});

describe('a part that was made stands in for', () => {
  const three = [part('washer', '.062'), part('spacer', '.385'), part('washer', '.062')];

  test('the parts of its name', () => {
    expect(placesReplaced('one part for washer, spacer and bracket', bracket.parts)).toEqual([0, 1, 2]);
    expect(placesReplaced('one part for 3 × shim', [part('shim', '.021', { count: 3 })])).toEqual([0]);
  });

  test('none, where it is one more spacer', () => {
    expect(placesReplaced('one more spacer', bracket.parts)).toEqual([]);
  });

  test('nobody knows which, where two lots of parts have its name, or none', () => {
    expect(placesReplaced('one part for washer and spacer', three)).toEqual([0, 1]);
    expect(placesReplaced('one part for washer and washer', three)).toEqual([0, 2]);
    const twice = [...three, part('spacer', '.385')];
    expect(placesReplaced('one part for washer and spacer', twice)).toBeUndefined();
    expect(placesReplaced('one part for bushing and ring', three)).toBeUndefined();
    expect(placesReplaced('spacer', three)).toBeUndefined();
  });
});
