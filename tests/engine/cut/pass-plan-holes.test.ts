import { describe, expect, test } from 'vitest';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { holePlan, isHoleOperation, type HoleOperation } from '../../../src/engine/cut/pass-plan-holes.ts';
import { sayHoleStep } from '../../../src/engine/cut/say-cuts-hole.ts';

const inch = (text: string) => lengthOf(`${text} in`);

type Hole = {
  readonly operation: HoleOperation;
  readonly target: string;
  readonly limits: readonly [string, string];
  readonly present?: string;
  readonly drill?: string;
  readonly thread?: string;
};

function steps({ target, limits, present, ...rest }: Hole): readonly string[] | string {
  const plan = holePlan({
    of: 'tap-drill',
    target: inch(target),
    lower: inch(limits[0]),
    upper: inch(limits[1]),
    ...rest,
    ...(present !== undefined && { present: inch(present) }),
  });
  return plan.ok ? plan.value.steps.map((step) => sayHoleStep(step, 'in')) : plan.refusal.code;
}

describe('a drilled hole', () => {
  test('is centre-drilled and drilled with the drill named', () => {
    expect(
      steps({ operation: 'drill', target: '.4531', limits: ['.4500', '.4560'], drill: '29/64' }),
    ).toEqual(['Center drill', 'Drill 29/64 (.4531 in)']);
  });

  test('takes the drill nearest to the target inside the limits where none is named', () => {
    // #7 is .2010, 5.1 mm is .2008, 13/64 is .2031.
    expect(steps({ operation: 'drill', target: '.2012', limits: ['.1960', '.2070'] })).toEqual([
      'Center drill',
      'Drill #7 (.201 in)',
    ]);
  });

  test('takes a drill that is just a limit', () => {
    expect(steps({ operation: 'drill', target: '.2500', limits: ['.2500', '.2500'] })).toEqual([
      'Center drill',
      'Drill 1/4 (.250 in)',
    ]);
  });

  test('over a half inch has a pilot of about half, and one inch and a half two of them', () => {
    expect(steps({ operation: 'drill', target: '.5000', limits: ['.4990', '.5010'] })).toHaveLength(2);
    expect(steps({ operation: 'drill', target: '.7500', limits: ['.7490', '.7510'] })).toEqual([
      'Center drill',
      'Pilot drill 3/8 (.375 in)',
      'Drill 3/4 (.750 in)',
    ]);
    expect(steps({ operation: 'drill', target: '1.5000', limits: ['1.4990', '1.5010'] })).toEqual([
      'Center drill',
      'Pilot drill 3/8 (.375 in)',
      'Pilot drill 3/4 (.750 in)',
      'Drill 1-1/2 (1.500 in)',
    ]);
  });

  test('of a metric size has a metric pilot: 25 mm has 12.5 mm before it', () => {
    expect(
      steps({ operation: 'drill', target: '.98425', limits: ['.9842', '.9843'], drill: '25 mm' }),
    ).toEqual(['Center drill', 'Pilot drill 12.5 mm (.4921 in)', 'Drill 25 mm (.9843 in)']);
  });

  test('that is there already needs neither centre drill nor the pilots that would fall through it', () => {
    expect(
      steps({ operation: 'drill', target: '1.5000', limits: ['1.4990', '1.5010'], present: '.500' }),
    ).toEqual(['Pilot drill 3/4 (.750 in)', 'Drill 1-1/2 (1.500 in)']);
    expect(
      steps({ operation: 'drill', target: '.7500', limits: ['.7490', '.7510'], present: '.375' }),
    ).toEqual(['Drill 3/4 (.750 in)']);
  });

  test('at its size already is not drilled', () => {
    expect(
      steps({ operation: 'drill', target: '.2010', limits: ['.196', '.207'], present: '.2010' }),
    ).toEqual([]);
  });

  test('that no drill fits is bored, from a pilot where there is no hole yet', () => {
    const between = { operation: 'drill', target: '.4999', limits: ['.4998', '.49995'] } as const;
    expect(steps(between)).toEqual([
      'Center drill',
      'Pilot drill 15/64 (.2344 in)',
      'Bore to .4999 in: no drill does it',
    ]);
    expect(steps({ ...between, present: '.250' })).toEqual(['Bore to .4999 in: no drill does it']);
  });

  test('that is too large already is refused', () => {
    expect(steps({ operation: 'drill', target: '.2010', limits: ['.196', '.207'], present: '.2071' })).toBe(
      'metal-gone',
    );
    expect(
      steps({ operation: 'drill', target: '.2010', limits: ['.196', '.207'], present: '.2070' }),
    ).toEqual([]);
  });
});

describe('a reamed hole', () => {
  const half = { operation: 'ream', target: '.5000', limits: ['.5000', '.5007'] } as const;

  test('is drilled some ten thou under: 12.4 mm is .4882, 31/64 is .4844, 12.5 mm is .4921', () => {
    // Nearest to .4900 inside .480 to .495: 12.4 mm is .0018 off, 12.5 mm .0021.
    expect(steps(half)).toEqual([
      'Center drill',
      'Drill 12.4 mm (.4882 in)',
      'Ream to .500 in: the reamer takes .0118 in',
    ]);
  });

  test('is drilled with the drill that is named for it', () => {
    expect(steps({ ...half, drill: '31/64' })).toEqual([
      'Center drill',
      'Drill 31/64 (.4844 in)',
      'Ream to .500 in: the reamer takes .0156 in',
    ]);
  });

  test('is reamed straight off where twenty thou or less are left', () => {
    expect(steps({ ...half, present: '.480' })).toEqual(['Ream to .500 in: the reamer takes .020 in']);
    expect(steps({ ...half, present: '.4799' })).toEqual([
      'Drill 12.4 mm (.4882 in)',
      'Ream to .500 in: the reamer takes .0118 in',
    ]);
  });

  test('is warned of where less than five thou are left: the reamer may rub', () => {
    expect(steps({ ...half, present: '.4951' })).toEqual([
      'Ream to .500 in: the reamer takes .0049 in, so little that it may rub',
    ]);
    expect(steps({ ...half, present: '.495' })).toEqual(['Ream to .500 in: the reamer takes .005 in']);
  });

  test('past the largest drill is bored for the reamer', () => {
    // 1-1/2 in is the largest drill there is. Half of 1.740 is .870, half of .8594 is .4297.
    expect(steps({ operation: 'ream', target: '1.7500', limits: ['1.75', '1.7512'] })).toEqual([
      'Center drill',
      'Pilot drill 27/64 (.4219 in)',
      'Pilot drill 55/64 (.8594 in)',
      'Bore to 1.740 in: no drill does it',
      'Ream to 1.750 in: the reamer takes .010 in',
    ]);
  });
});

describe('a tapped hole', () => {
  const tap = { operation: 'tap', target: '.2010', limits: ['.196', '.207'] } as const;

  test('is only tapped where nothing is known to be missing', () => {
    expect(steps({ ...tap, thread: '1/4-20 UNC' })).toEqual(['Tap 1/4-20 UNC: the hole should be .201 in']);
    expect(steps(tap)).toEqual(['Tap: the hole should be .201 in']);
    expect(steps({ ...tap, present: '.196' })).toEqual(['Tap: the hole should be .201 in']);
  });

  test('is drilled first where it is too small, or a drill is named', () => {
    expect(steps({ ...tap, present: '.1959' })).toEqual([
      'Drill #7 (.201 in)',
      'Tap: the hole should be .201 in',
    ]);
    expect(steps({ ...tap, drill: '#7' })).toEqual([
      'Center drill',
      'Drill #7 (.201 in)',
      'Tap: the hole should be .201 in',
    ]);
  });
});

test('drill, reamer and tap make a hole to size themselves; the rest is cut in passes', () => {
  expect((['drill', 'ream', 'tap', 'turn', 'bore', 'face', 'ring'] as const).filter(isHoleOperation)).toEqual(
    ['drill', 'ream', 'tap'],
  );
});
