import { assert, integer, property } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toleranceEstimate, typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import {
  decimalText,
  exactDecimalText,
  fromText,
  lengthOf,
  minus,
  plus,
  toText,
  type Length,
} from '../../../../src/engine/length/length.ts';
import { sayInsertRefusal } from '../../../../src/engine/worksheets/thread-insert/say-insert-refusal.ts';
import {
  insertLimits,
  threadInsert,
  wallNeeded,
  type InsertQuestion,
} from '../../../../src/engine/worksheets/thread-insert/thread-insert.ts';
import { threadNamed, type Thread } from '../../../../src/engine/thread/threads.ts';

function named(designation: string): Thread {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

const thread = named('7/16-20');
const limits = insertLimits(thread);
const hair = lengthOf('.000001 in');

function question(rest: Partial<InsertQuestion>): InsertQuestion {
  return { thread, metal: 'steel', ...rest };
}

function answer(rest: Partial<InsertQuestion>) {
  const result = threadInsert(question(rest));
  if (!result.ok) throw new Error(sayInsertRefusal(result.refusal, 'in'));
  return result.value;
}

function refusalOf(rest: Partial<InsertQuestion>): string | undefined {
  const result = threadInsert(question(rest));
  return result.ok ? undefined : result.refusal.code;
}

/** A hole of one size everywhere, known exactly or to ± `plusMinus`. */
function hole(size: Length, plusMinus?: string) {
  const estimate = plusMinus ? toleranceEstimate(size, lengthOf(plusMinus)) : typedEstimate(size);
  return { tightest: estimate, loosest: estimate };
}

describe('what a hole needs before the insert tap', () => {
  // Least minor .4375 + .216506/20 = .448325; the bore lies .0004 over it with a band of .0012.
  test('a .4487 bore known to .0012 for 7/16-20: run 29/64 through anyway, 75.9 % of thread', () => {
    const { hole: state, drill } = answer({ hole: hole(lengthOf('.4487 in'), '.0012 in') });
    expect(state.state).toBe('run-drill-through-anyway');
    expect(drill.drill.name).toBe('29/64');
    expect(state.percentAfterDrill).toBeCloseTo(75.9, 1);
    expect(state.percent).toBeCloseTo(82.8, 1); // (.502452 − .4487) / .064952 as it is now
  });

  test('no hole yet is solid metal: the drill’s own percent', () => {
    const { hole: state } = answer({});
    expect(state.state).toBe('solid');
    expect(state.percentAfterDrill).toBeCloseTo(75.9, 1);
  });

  test.each([
    { from: 'minorLeast', by: '0 in', state: 'straight-to-tap', why: 'exactly at the least, known exactly' },
    { from: 'minorLeast', by: '-.000001 in', state: 'drill', why: 'a hair under the least' },
    { from: 'minorMost', by: '0 in', state: 'straight-to-tap', why: 'exactly at the greatest' },
    { from: 'minorMost', by: '.000001 in', state: 'over', why: 'a hair over the greatest' },
  ] as const)('$why: $state', ({ from, by, state }) => {
    expect(answer({ hole: hole(plus(limits[from], lengthOf(by))) }).hole.state).toBe(state);
  });

  test.each([
    { by: '.0012 in', state: 'straight-to-tap', why: 'over the least by exactly its band' },
    { by: '.001199 in', state: 'run-drill-through-anyway', why: 'a hair less than its band over' },
    { by: '-.0012 in', state: 'run-drill-through-anyway', why: 'under the least by exactly its band' },
    { by: '-.001201 in', state: 'drill', why: 'under by more than its band' },
  ] as const)('$why: $state (ISO 14253-1)', ({ by, state }) => {
    const size = plus(limits.minorLeast, lengthOf(by));
    expect(answer({ hole: hole(size, '.0012 in') }).hole.state).toBe(state);
  });

  // (.502452 − .4600) / .064952 = 65.4 %; greatest .4561.
  test('a hole over the greatest says by how much and what thread is left', () => {
    const { hole: state } = answer({ hole: hole(lengthOf('.46 in')) });
    expect(state.state).toBe('over');
    expect(decimalText(state.overBy ?? hair, 'in', 4)).toBe('0.0039');
    expect(state.percent).toBeCloseTo(65.4, 1);
    expect(state.drillTightest).toBeUndefined();
  });

  test('an oval hole can be over at its loosest and still need the drill at its tightest', () => {
    const { hole: state } = answer({
      hole: { tightest: typedEstimate(lengthOf('.445 in')), loosest: typedEstimate(lengthOf('.458 in')) },
    });
    expect([state.state, state.drillTightest]).toEqual(['over', true]);
  });

  test('the loosest place rules the thread that is left, the tightest the drill', () => {
    const { hole: state } = answer({
      hole: { tightest: typedEstimate(lengthOf('.447 in')), loosest: typedEstimate(lengthOf('.4555 in')) },
    });
    expect(state.state).toBe('drill');
    expect(state.percent).toBeCloseTo(72.3, 1); // (.502452 − .4555) / .064952
    expect(state.percentAfterDrill).toBeCloseTo(72.3, 1); // 29/64 (.4531) is smaller than the loosest place
  });

  test('within its band of the greatest, the loosest place is said to be too close to call', () => {
    const near = minus(limits.minorMost, lengthOf('.0005 in'));
    const { hole: state } = answer({ hole: hole(near, '.0012 in') });
    expect([state.state, state.closeToMost]).toEqual(['straight-to-tap', true]);
  });

  test('percent of thread falls as the hole grows', () => {
    const grow = integer({ min: 1, max: 500_000 });
    assert(
      property(integer({ min: 10_000_000, max: 12_000_000 }), grow, (microns, more) => {
        const small = answer({ hole: hole(fromText((microns / 1e6).toFixed(6))) }).hole.percent;
        const large = answer({ hole: hole(fromText(((microns + more) / 1e6).toFixed(6))) }).hole.percent;
        expect(large).toBeLessThan(small ?? 0);
      }),
    );
  });
});

describe('the wall that is needed before the tap', () => {
  // Greatest major of 7/16-20: .4375 + (1.299038 + .075)/20 = .50620190; half the bolt, common practice: .21875.
  test('is what is to be left and half of what the hole of .4500 grows', () => {
    // .21875 + (.50620190 − .45)/2
    expect(decimalText(wallNeeded(question({ hole: hole(lengthOf('.45 in')) }), limits), 'in', 6)).toBe(
      '0.246851',
    );
  });

  test('is counted from the centre while there is no hole', () => {
    // .21875 + .50620190/2
    expect(decimalText(wallNeeded(question({}), limits), 'in', 6)).toBe('0.471851');
  });

  test('with one’s own least wall is that much', () => {
    const own = question({ leastWall: lengthOf('.1 in') });
    expect(decimalText(wallNeeded(own, limits), 'in', 6)).toBe('0.353101');
  });

  test('is exactly enough: a hair less is too thin', () => {
    const asked = question({ hole: hole(lengthOf('.45 in')) });
    const needed = wallNeeded(asked, limits);
    const enoughAt = (wall: Length) =>
      answer({ hole: hole(lengthOf('.45 in')), wall: { kind: 'present', wall } }).wallLeft?.enough;
    expect([enoughAt(needed), enoughAt(minus(needed, hair))]).toEqual([true, false]);
  });
});

describe('the wall beside the tapped hole', () => {
  // Greatest major of 1/4-20: .25 + (1.299038 + .075)/20 = .3187019 in. NASM33537 prints .3187.
  const quarter = named('1/4-20');

  // From the centre: .5 − .3187019/2 = .34064905.
  test('measured from the centre it is what lies past half the greatest major', () => {
    const { wallLeft } = answer({
      thread: quarter,
      wall: { kind: 'centre-to-edge', distance: lengthOf('.5 in') },
    });
    expect(decimalText(wallLeft?.wall ?? hair, 'in', 6)).toBe('0.340649');
  });

  // From the edge of a .25 hole: .375 − (.3187019 − .25)/2 = .34064905: the same edge, measured the other way.
  test('measured from the hole’s edge it loses half of what the hole grows', () => {
    const { wallLeft } = answer({
      thread: quarter,
      hole: hole(lengthOf('.25 in')),
      wall: { kind: 'present', wall: lengthOf('.375 in') },
    });
    expect(decimalText(wallLeft?.wall ?? hair, 'in', 6)).toBe('0.340649');
  });

  test('both ways of measuring the same edge leave the same wall', () => {
    const microns = integer({ min: 5_000_000, max: 7_000_000 });
    assert(
      property(microns, integer({ min: 8_000_000, max: 90_000_000 }), (bore, edge) => {
        const size = fromText(((bore * 2) / 2e6).toFixed(6));
        const distance = fromText((edge / 1e6).toFixed(6));
        const wall = fromText(((edge - bore / 2) / 1e6).toFixed(7));
        const present = answer({ thread: quarter, hole: hole(size), wall: { kind: 'present', wall } });
        const centre = answer({ thread: quarter, wall: { kind: 'centre-to-edge', distance } });
        expect(toText(present.wallLeft?.wall ?? hair)).toBe(toText(centre.wallLeft?.wall ?? size));
      }),
    );
  });

  // Half the bolt's diameter, .125, plus half the greatest major: .125 + .15935095 = .28435095.
  test.each([
    { distance: '.28435095 in', enough: true, why: 'exactly half the bolt’s diameter' },
    { distance: '.28435094 in', enough: false, why: 'a hair less' },
  ])('$why of wall is enough: $enough (common practice, no source)', ({ distance, enough }) => {
    const { wallLeft } = answer({
      thread: quarter,
      wall: { kind: 'centre-to-edge', distance: lengthOf(distance) },
    });
    expect(wallLeft?.enough).toBe(enough);
    expect(wallLeft?.source).toContain('common practice, no source');
  });

  test('the user’s own least wall rules instead, and the source says so', () => {
    const { wallLeft } = answer({
      thread: quarter,
      wall: { kind: 'centre-to-edge', distance: lengthOf('.25 in') },
      leastWall: lengthOf('.09 in'),
    });
    expect(wallLeft?.enough).toBe(true); // .25 − .1594 = .0906
    expect(exactDecimalText(wallLeft?.least ?? hair, 'in')).toBe('0.09');
    expect(wallLeft?.source).toContain('your own');
  });
});

describe('what can’t be worked out', () => {
  test.each([
    { rest: { hole: hole(limits.majorLeast) }, code: 'hole-past-insert-thread', why: 'no thread is left' },
    {
      rest: { hole: hole(minus(limits.majorLeast, hair)) },
      code: undefined,
      why: 'a trace of thread is left',
    },
    { rest: { thickness: lengthOf('0 in') }, code: 'no-metal-for-insert', why: 'there is no metal' },
    { rest: { thread: named('#5-44') }, code: 'no-insert-made', why: 'no insert is made' },
    {
      rest: { wall: { kind: 'present', wall: lengthOf('.2 in') } },
      code: 'wall-without-hole',
      why: 'a wall is measured from a hole that isn’t there',
    },
  ] as const)('where $why: $code', ({ rest, code }) => expect(refusalOf(rest)).toBe(code));
});

test('length, set-down and blind depth are in the same answer: M10 blind in 40 mm, plug tap', () => {
  const { lengths, setDown, blindDepth } = answer({
    thread: named('M10'),
    thickness: lengthOf('40 mm'),
    blind: { tap: 'plug' },
  });
  // 2.5D: 25 + 9 + point 0.3004 · 10.4 = 37.1 fits in 40; 3D would need 42.1.
  expect(lengths.find((length) => length.chosen)?.times).toBe('2.5D');
  expect(exactDecimalText(blindDepth?.drilling ?? hair, 'mm')).toBe('34');
  expect(exactDecimalText(setDown.most, 'mm')).toBe('2.25');
});
