import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isMore, lengthOf, sum, toText, type Length } from '../../../src/engine/length/length.ts';
import type { CutKind } from '../../../src/engine/length/metal-on.ts';
import { sayPlanNote } from '../../../src/engine/cut/say-cuts.ts';
import { passPlan, type PassPlan, type PassQuestion } from '../../../src/engine/cut/pass-plan.ts';

/** Laws that hold whatever the figures are. All sizes are whole hundred-thousandths of an inch, so that this side adds in integers. */

const PER_INCH = 100_000;
const length = (count: number): Length => lengthOf(`${count < 0 ? '-' : ''}${inchText(Math.abs(count))} in`);
const inchText = (count: number) =>
  `${Math.floor(count / PER_INCH)}.${String(count % PER_INCH).padStart(5, '0')}`;
const mmText = (count: number) => {
  const digits = (BigInt(count) * 254n).toString().padStart(7, '0'); // .00001 in is 0.000254 mm
  return `${digits.slice(0, -6)}.${digits.slice(-6)}`;
};
const counted = new Map<string, number>();
/** Back to whole hundred-thousandths of an inch, by the text and in integers. */
function count(size: Length): number {
  const known = counted.get(toText(size));
  if (known !== undefined) return known;
  const [whole = '0', places = ''] = toText(size).replace('-', '').split('.');
  const micro = BigInt(whole + places.padEnd(6, '0').slice(0, 6)); // 0.000001 mm
  const value = Number(micro / 254n) * (toText(size).startsWith('-') ? -1 : 1);
  counted.set(toText(size), value);
  return value;
}

type Figures = {
  readonly of: CutKind;
  readonly reads: 'radius' | 'diameter';
  readonly graduation: number;
  readonly target: number;
  /** From the target to the limit that is come to first, and past it to the last. */
  readonly first: number;
  readonly last: number;
  readonly left: number;
  readonly largest: number;
  readonly least: number;
  readonly finish: number;
};

const grows = (of: CutKind) => of !== 'outside' && of !== 'length';

function question(f: Figures, make = length): PassQuestion {
  const sign = grows(f.of) ? -1 : 1; // metal stands on the large side of outsides and lengths
  const [upper, lower] = grows(f.of) ? [f.last, f.first] : [f.first, f.last];
  return {
    of: f.of,
    target: make(f.target),
    lower: make(f.target - lower),
    upper: make(f.target + upper),
    present: make(f.target + sign * f.left),
    dial: { reads: f.reads, graduation: make(f.graduation) },
    takes: { largest: make(f.largest), least: make(f.least), finish: make(f.finish) },
  };
}

const stepOf = ({ of, reads, graduation }: Pick<Figures, 'of' | 'reads' | 'graduation'>) =>
  reads === 'radius' && ['outside', 'bore', 'tap-drill'].includes(of) ? 2 * graduation : graduation;

const figures: fc.Arbitrary<Figures> = fc
  .record({
    of: fc.constantFrom<CutKind[]>(
      'outside',
      'length',
      'bore',
      'recess-depth',
      'slot-depth',
      'slot-width',
      'tap-drill',
    ),
    reads: fc.constantFrom('radius' as const, 'diameter' as const),
    graduation: fc.constantFrom(20, 50, 100, 200),
    target: fc.integer({ min: 60_000, max: 300_000 }),
    first: fc.integer({ min: 0, max: 300 }),
    last: fc.integer({ min: 0, max: 300 }),
    left: fc.integer({ min: 0, max: 12_000 }),
    marks: fc.integer({ min: 2, max: 60 }),
    least: fc.integer({ min: 0, max: 900 }),
    finish: fc.integer({ min: 0, max: 3000 }),
  })
  .map(({ marks, ...rest }) => {
    const largest = marks * stepOf(rest);
    return { ...rest, largest, least: Math.min(rest.least, largest) };
  });

/** Only sizes that can be planned are tried. */
function planOf(f: Figures, spring?: number): PassPlan {
  const result = passPlan({ ...question(f), ...(spring !== undefined && { spring: length(spring) }) });
  fc.pre(result.ok);
  return result.value;
}

/** With something to cut. */
function passesOf(f: Figures, spring?: number): PassPlan {
  const plan = planOf(f, spring);
  fc.pre(plan.passes.length > 0);
  return plan;
}

const asked = (plan: PassPlan) => plan.passes.map((pass) => count(pass.asked));
const total = (numbers: readonly number[]) => numbers.reduce((so, next) => so + next, 0);
/** Metal left over the target after so much is taken; `left` before. */
const leftAfter = (f: Figures, taken: number) => f.left - taken;

describe('whatever the sizes, a plan', () => {
  test('never goes past the limit', () => {
    fc.assert(
      fc.property(figures, (f) => {
        expect(leftAfter(f, total(asked(planOf(f))))).toBeGreaterThanOrEqual(-f.last);
      }),
    );
  });

  test('always reaches the target: on it, less than a step proud of it, or the first step inside', () => {
    fc.assert(
      fc.property(figures, (f) => {
        const plan = planOf(f);
        const left = leftAfter(f, total(asked(plan)));
        expect(count(plan.proud)).toBe(left);
        expect(left).toBeLessThanOrEqual(f.first);
        // One step less would still be over the first limit where it is past the target already.
        expect(left >= 0 ? left < stepOf(f) : left + stepOf(f) > f.first).toBe(true);
      }),
    );
  });

  test('is only refused for a landing where none of the steps falls inside the limits', () => {
    fc.assert(
      fc.property(figures, (f) => {
        const result = passPlan(question(f));
        const step = stepOf(f);
        const isInside = (left: number) => left <= f.first && left >= -f.last;
        const steps = Array.from({ length: Math.ceil((f.left + f.last) / step) + 1 }, (_, place) => place);
        const someLand = steps.some((place) => isInside(f.left - place * step));
        expect(result.ok || result.refusal.code !== 'no-mark-lands').toBe(someLand);
      }),
    );
  });

  test('has no cut deeper than allowed, none of nothing, and all on marks of the dial', () => {
    fc.assert(
      fc.property(figures, (f) => {
        for (const one of asked(passesOf(f))) {
          expect(one).toBeLessThanOrEqual(f.largest);
          expect(one).toBeGreaterThan(0);
          expect(one % stepOf(f)).toBe(0);
        }
      }),
    );
  });

  test('takes as much as the dial moves in all, and each size follows from the one before', () => {
    fc.assert(
      fc.property(figures, (f) => {
        const plan = passesOf(f);
        const { present } = question(f);
        const factor = stepOf(f) / f.graduation;
        let so = 0;
        for (const pass of plan.passes) {
          so += count(pass.asked);
          expect(count(pass.dial.total) * factor).toBe(so);
          expect(pass.dial.marks * f.graduation * factor).toBe(so);
          expect(count(pass.sizeAfter)).toBe(count(present) + (grows(f.of) ? so : -so));
        }
        expect(Math.abs(count(present) - count(plan.lands))).toBe(so);
        expect(toText(sum(plan.passes.map(({ takes }) => takes)))).toBe(toText(length(so)));
      }),
    );
  });

  test('has its last two equal and light wherever one mark of the dial cuts', () => {
    fc.assert(
      fc.property(figures, (given) => {
        const f = { ...given, least: 0 };
        const plan = planOf(f);
        fc.pre(total(asked(plan)) >= 2 * stepOf(f));
        const [before, last] = asked(plan).slice(-2);
        expect(before).toBe(last);
        expect(plan.passes.slice(-2).map(({ kind }) => kind)).toEqual(['light', 'light']);
        const wanted = Math.max(stepOf(f), Math.floor(f.finish / 2 / stepOf(f)) * stepOf(f));
        expect(last).toBeLessThanOrEqual(Math.max(wanted, stepOf(f)));
      }),
    );
  });

  test('spreads roughing evenly, a mark apart at most, the heavier ones first and no lighter than the last two', () => {
    fc.assert(
      fc.property(figures, (given) => {
        const f = { ...given, least: 0 };
        const { passes } = passesOf(f);
        const rough = passes.filter(({ kind }) => kind === 'rough').map((one) => count(one.asked));
        const last = Math.max(0, ...passes.slice(-2).map((one) => count(one.asked)));
        const [first = 0] = rough;
        expect(rough.every((one) => first - one === 0 || first - one === stepOf(f))).toBe(true);
        expect(rough).toEqual(rough.toSorted((a, b) => b - a));
        expect(rough.every((one) => one >= last)).toBe(true);
        expect(rough).toHaveLength(Math.ceil(total(rough) / f.largest));
      }),
    );
  });

  test('rubs nowhere, where there is enough for two passes that cut and one pass may be twice the least', () => {
    fc.assert(
      fc.property(figures, (f) => {
        const step = stepOf(f);
        const least = Math.max(1, Math.ceil(f.least / step)) * step;
        const plan = planOf(f);
        fc.pre(total(asked(plan)) >= 2 * least && f.largest >= 2 * least);
        expect(plan.passes.some(({ rubs }) => rubs)).toBe(false);
      }),
    );
  });

  test('is the same for a radius dial and for a diameter dial of twice its graduation', () => {
    fc.assert(
      fc.property(figures, fc.constantFrom<CutKind[]>('outside', 'bore', 'tap-drill'), (given, of) => {
        const radius = planOf({ ...given, of, reads: 'radius' });
        const diameter = planOf({
          ...given,
          of,
          reads: 'diameter',
          graduation: 2 * given.graduation,
        });
        expect(asked(radius)).toEqual(asked(diameter));
        expect(radius.passes.map(({ dial }) => 2 * count(dial.total))).toEqual(
          diameter.passes.map(({ dial }) => count(dial.total)),
        );
      }),
    );
  });

  test('is the same for sizes typed in inches and in millimetres', () => {
    fc.assert(
      fc.property(figures, (f) => {
        const inch = passPlan(question(f));
        const mm = passPlan(question(f, (size) => lengthOf(`${mmText(size)} mm`)));
        expect(inch.ok).toBe(mm.ok);
        fc.pre(inch.ok && mm.ok);
        expect(mm.value.passes.map((pass) => toText(pass.sizeAfter))).toEqual(
          inch.value.passes.map((pass) => toText(pass.sizeAfter)),
        );
      }),
    );
  });
});

describe('whatever a tool springs, a plan', () => {
  const springs = fc.integer({ min: -400, max: 400 });

  test('never goes past the limit, whether the tool springs as it did or not at all', () => {
    fc.assert(
      fc.property(figures, springs, (f, spring) => {
        const plan = passesOf(f, spring);
        const dialled = total(asked(plan));
        expect(leftAfter(f, dialled)).toBeGreaterThanOrEqual(-f.last);
        expect(leftAfter(f, dialled - spring)).toBeGreaterThanOrEqual(-f.last);
      }),
    );
  });

  test('never asks for a deeper cut than allowed, and says what it expects to take', () => {
    fc.assert(
      fc.property(figures, springs, (f, spring) => {
        const plan = passesOf(f, spring);
        expect(Math.max(...asked(plan))).toBeLessThanOrEqual(f.largest);
        expect(count(plan.proud)).toBe(leftAfter(f, Math.max(0, total(asked(plan)) - spring)));
      }),
    );
  });

  test('takes nothing at the least in every pass, and all it takes is what is between the present size and the last', () => {
    fc.assert(
      fc.property(figures, springs, (f, spring) => {
        const plan = passesOf(f, spring);
        const takes = plan.passes.map((pass) => count(pass.takes));
        expect(Math.min(...takes)).toBeGreaterThanOrEqual(0);
        expect(total(takes)).toBe(f.left - count(plan.proud));
      }),
    );
  });

  test('says how far it ends short of the limits, and only there', () => {
    fc.assert(
      fc.property(figures, springs, fc.integer({ min: 0, max: 400 }), (given, spring, near) => {
        const f = { ...given, left: given.first + near }; // where the spring counts: a little outside
        const plan = passesOf(f, spring);
        const left = leftAfter(f, Math.max(0, total(asked(plan)) - spring));
        expect(plan.short ? count(plan.short) : 0).toBe(Math.max(0, left - f.first));
        expect(/short of the limits/.test(sayPlanNote(plan, 'in'))).toBe(left > f.first);
        expect(left > f.first && /as near as the dial/.test(sayPlanNote(plan, 'in'))).toBe(false);
      }),
    );
  });

  test('is only refused for a landing where none of the steps falls inside the limits, by itself or as the tool cuts', () => {
    fc.assert(
      fc.property(figures, springs, fc.integer({ min: 0, max: 400 }), (given, spring, near) => {
        const f = { ...given, left: given.first + near };
        const result = passPlan({ ...question(f), spring: length(spring) });
        fc.pre(!result.ok && result.refusal.code === 'no-mark-lands');
        const lands = Array.from({ length: 60 }, (_, place) => (place + 1) * stepOf(f));
        const isInside = (left: number) => left <= f.first && left >= -f.last;
        const works = lands.filter((dialled) => isInside(f.left - dialled + spring));
        expect(works.filter((dialled) => f.left - dialled >= -f.last)).toEqual([]);
      }),
    );
  });

  test('lands inside the limits, unless the limit or the largest cut holds it back', () => {
    fc.assert(
      fc.property(figures, fc.integer({ min: 1, max: 400 }), (f, spring) => {
        const plan = passesOf(f, spring);
        fc.pre(isMore(plan.proud, length(f.first)));
        const dialled = total(asked(plan));
        const heldByLimit = leftAfter(f, dialled + stepOf(f)) < -f.last;
        const heldBySpringing = leftAfter(f, dialled + stepOf(f) - spring) < -f.last;
        const heldByLargest = (asked(plan).at(-1) ?? 0) + stepOf(f) > f.largest;
        expect(heldByLimit || heldBySpringing || heldByLargest).toBe(true);
      }),
    );
  });
});
