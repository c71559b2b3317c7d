import { firstLimit, lastLimit, metalBetween, sizeAfterTaking, type CutSizes } from './cut.ts';
import { dialSetting, stepsIn, stepsToReach, type DialSetting, type LatheDial } from './dial.ts';
import {
  isLess,
  isMore,
  isNegative,
  isZero,
  minus,
  negate,
  plus,
  ratioOf,
  smallest,
  times,
  zero,
  type Length,
} from '../length/length.ts';
import { sizeStep } from '../length/metal-on.ts';
import { splitSteps, type SplitSteps } from './pass-plan-split.ts';
import { threadSteps } from './thread-passes.ts';
import { refuse, worked, type Refusal, type Result } from '../length/refusal.ts';

/** How much one pass may take, all off the size: off the diameter of a round part. */
export type Takes = {
  readonly largest: Length;
  /** Less than this rubs instead of cutting. */
  readonly least: Length;
  /** Left for the last two passes together. */
  readonly finish: Length;
};

export type PassQuestion = CutSizes & {
  readonly present: Length;
  readonly dial: LatheDial;
  readonly takes: Takes;
  /**
   * Of a thread: the size over its wires where the tool just touches. The deeper the tool stands, the less each pass goes on,
   * so that each takes the same area of metal.
   */
  readonly threadFrom?: Length;
  /** What a pass leaves standing of what it was asked, as learnt (spring.ts); below zero it takes more. */
  readonly spring?: Length;
};

export type PlannedPass = {
  /** `light`: one of the last two, equal and light. `last`: one of the last where there is too little for two equal ones. */
  readonly kind: 'rough' | 'light' | 'last';
  /** Off the size, as it is dialled. */
  readonly asked: Length;
  /** Off the size, as it is expected: what is asked, less what the tool springs in the last pass. */
  readonly takes: Length;
  readonly sizeAfter: Length;
  /** From the dial's zero at the present size. */
  readonly dial: DialSetting;
  /** It takes less than the least depth of cut. */
  readonly rubs: boolean;
};

export type PassPlan = {
  readonly passes: readonly PlannedPass[];
  /** Where the last pass lands. */
  readonly lands: Length;
  /** What is left standing over the target then; below zero it is past the target, yet inside the limits. */
  readonly proud: Length;
  /** How far it ends outside the limit that is come to first; left out where it ends inside. */
  readonly short?: Length;
  readonly takes: Takes;
  /** What is asked for beyond the metal because the tool springs; below zero less. */
  readonly correction: Length;
};

const MOST_PASSES = 200; // chosen: nobody takes more at one setting

export type PassRefusal =
  | Extract<Refusal, { code: 'metal-gone' }>
  | { readonly code: 'too-many-passes'; readonly passes: number; readonly largest: Length }
  | { readonly code: 'take-below-mark'; readonly largest: Length; readonly step: Length }
  | {
      readonly code: 'no-mark-lands';
      readonly from: Length;
      readonly step: Length;
      readonly lower: Length;
      readonly upper: Length;
      /** Where the dial lands to either side of the limits. */
      readonly before: Length;
      readonly past: Length;
    };

/**
 * The passes from the present size to the target, each on a mark of the dial.
 *
 * Units:   sizes and takes off the size. Every pass is whole steps of the dial from its zero at the present size; the
 *          plan lands on the target, or, where no mark does, less than a step short of it, so that metal is left on;
 *          where that lies outside the limits still, on the first step inside them. With a spring learnt, the last pass
 *          is asked for so much more that it lands there, but never for more than is left to the limit, so that the
 *          limit holds even if the tool doesn't spring. Where that, or the largest take, leaves it outside the limits,
 *          `short` says by how much. What springs further than it is asked takes nothing: no pass puts metal on.
 * Range:   no pass is larger than the largest take. One that is smaller than the least says that it rubs.
 *          Inside the limits and at the target, past it, or less than a step short: no passes.
 * Refuses: metal-gone, take-below-mark, no-mark-lands, too-many-passes (over 200).
 * Source:  lathe practice; the limits by the cut; equal areas for a thread: handbooks, common practice.
 */
export function passPlan(q: PassQuestion): Result<PassPlan, PassRefusal> {
  const room = metalBetween(q.of, q.present, lastLimit(q));
  if (isNegative(room))
    return refuse({ code: 'metal-gone', present: q.present, limit: lastLimit(q), past: negate(room) });
  const step = sizeStep(q.of, q.dial);
  const largest = stepsIn(q.takes.largest, step);
  if (largest < 1) return refuse({ code: 'take-below-mark', largest: q.takes.largest, step });
  const all = stepsToLand(q, step, room);
  if (!all.ok) return all;
  const least = Math.min(Math.max(1, stepsToReach(q.takes.least, step)), largest);
  const passes = Math.ceil(all.value / largest);
  if (passes > MOST_PASSES) return refuse({ code: 'too-many-passes', passes, largest: q.takes.largest });
  const asked = stepsToAsk(q, { step, room, plain: all.value, largest, least });
  if (!asked.ok) return asked;
  if (asked.value.length > MOST_PASSES)
    return refuse({ code: 'too-many-passes', passes: asked.value.length, largest: q.takes.largest });
  return worked(planOf(q, { step, plain: all.value, passes: asked.value }));
}

/** Steps from the present size to where the cut lands without any spring. */
function stepsToLand(q: PassQuestion, step: Length, room: Length): Result<number, PassRefusal> {
  const toTarget = smallest(metalBetween(q.of, q.present, q.target), room);
  const toInside = metalBetween(q.of, q.present, firstLimit(q));
  const short = Math.max(0, stepsIn(toTarget, step));
  if (!isLess(times(step, short), toInside)) return worked(short);
  const inside = stepsToReach(toInside, step);
  const lands = !isMore(times(step, inside), room) || landsByTakingMore(q, step, room);
  return lands ? worked(inside) : refuse(noMarkLands(q, step));
}

/** Whether a tool that takes more than it is asked lands inside, where no mark by itself does. */
function landsByTakingMore(q: PassQuestion, step: Length, room: Length): boolean {
  if (isZero(takenBeyond(q))) return false;
  const all = stepsWithSpring(q, { step, room });
  return all >= 1 && !isLess(takenBy(q, times(step, all)), metalBetween(q.of, q.present, firstLimit(q)));
}

function noMarkLands(q: PassQuestion, step: Length): PassRefusal {
  const toInside = minus(metalBetween(q.of, q.present, firstLimit(q)), takenBeyond(q));
  const inside = Math.max(1, stepsToReach(toInside, step));
  const sizeAfter = (steps: number) =>
    sizeAfterTaking(q.of, q.present, steps > 0 ? plus(times(step, steps), takenBeyond(q)) : zero);
  return {
    code: 'no-mark-lands',
    from: q.present,
    step,
    lower: q.lower,
    upper: q.upper,
    before: sizeAfter(inside - 1),
    past: sizeAfter(inside),
  };
}

/** What the tool takes beyond what it is asked. */
function takenBeyond({ spring = zero }: PassQuestion): Length {
  return negate(smallest(spring, zero));
}

/** What comes off in all where so much is dialled. */
function takenBy({ spring = zero }: PassQuestion, dialled: Length): Length {
  return isMore(spring, dialled) ? zero : minus(dialled, spring);
}

type Split = {
  readonly step: Length;
  /** Metal left to the limit. */
  readonly room: Length;
  readonly plain: number;
  readonly largest: number;
  readonly least: number;
};

type StepPass = { readonly kind: PlannedPass['kind']; readonly steps: number };

function stepsToAsk(q: PassQuestion, split: Split): Result<readonly StepPass[], PassRefusal> {
  const light = stepsIn(q.takes.finish, times(split.step, 2));
  const passesOf = (all: number) =>
    q.threadFrom
      ? threadKinds(threadSteps({ ...split, all, light, before: stepsBefore(q, split.step) }))
      : kindsOf(splitSteps({ ...split, all, light }));
  const { plain } = split;
  if (!q.spring || plain === 0) return worked(passesOf(plain));
  const all = stepsWithSpring(q, split);
  if (all < 1) {
    const isInside = !isMore(metalBetween(q.of, q.present, firstLimit(q)), zero);
    return isInside ? worked([]) : refuse(noMarkLands(q, split.step));
  }
  if (all < plain) return worked(passesOf(all));
  return worked(withMoreInLast(passesOf(plain), all - plain, split.largest));
}

/** Steps to ask for so that what is left after the spring is where the cut should land; none where one is too many. */
function stepsWithSpring(q: PassQuestion, { step, room }: Pick<Split, 'step' | 'room'>): number {
  const { spring = zero } = q;
  const toTarget = metalBetween(q.of, q.present, q.target);
  const toInside = metalBetween(q.of, q.present, firstLimit(q));
  const short = stepsIn(plus(toTarget, spring), step);
  const isInside = !isLess(minus(times(step, short), spring), toInside);
  const wanted = isInside ? short : stepsToReach(plus(toInside, spring), step);
  return Math.min(Math.max(1, wanted), stepsIn(room, step), stepsIn(plus(room, spring), step));
}

function kindsOf({ rough, last, uneven }: SplitSteps): readonly StepPass[] {
  const kind = last.length === 2 && !uneven ? 'light' : 'last';
  return [
    ...rough.map((steps) => ({ kind: 'rough' as const, steps })),
    ...last.map((steps) => ({ kind, steps }) as const),
  ];
}

/** The last two are equal where they could be made so: what the tool springs is learnt from them. */
function threadKinds(steps: readonly number[]): readonly StepPass[] {
  const [before, last] = steps.slice(-2);
  const kind = last !== undefined && before === last ? 'light' : 'last';
  return steps.map((count, index) => ({ kind: index < steps.length - 2 ? 'rough' : kind, steps: count }));
}

/** How deep the thread is already, in steps of the dial; floating point, for sharing the area out. */
function stepsBefore({ of, threadFrom, present }: PassQuestion, step: Length): number {
  return threadFrom ? Math.max(0, ratioOf(metalBetween(of, threadFrom, present), step)) : 0;
}

function withMoreInLast(passes: readonly StepPass[], more: number, largest: number): readonly StepPass[] {
  return passes.map((pass, index) =>
    index === passes.length - 1 ? { ...pass, steps: Math.min(largest, pass.steps + more) } : pass,
  );
}

type Planned = {
  readonly step: Length;
  readonly plain: number;
  readonly passes: readonly StepPass[];
};

function planOf(q: PassQuestion, { step, plain, passes }: Planned): PassPlan {
  const dialled = passes.map((_, index) => times(step, sumOf(passes.slice(0, index + 1))));
  const inAll = takenBy(q, dialled.at(-1) ?? zero);
  const taken = dialled.map((all, index) => (index < dialled.length - 1 ? smallest(all, inAll) : inAll));
  const planned = passes.map(({ kind, steps }, index): PlannedPass => {
    const asked = times(step, steps);
    const all = dialled[index] ?? zero;
    const cut = taken[index] ?? zero;
    return {
      kind,
      asked,
      takes: minus(cut, taken[index - 1] ?? zero),
      sizeAfter: sizeAfterTaking(q.of, q.present, cut),
      dial: settingOf(q, all),
      rubs: isLess(asked, q.takes.least),
    };
  });
  const lands = planned.at(-1)?.sizeAfter ?? q.present;
  const short = metalBetween(q.of, lands, firstLimit(q));
  return {
    passes: planned,
    lands,
    proud: metalBetween(q.of, lands, q.target),
    ...(planned.length > 0 && isMore(short, zero) && { short }),
    takes: q.takes,
    correction: passes.length > 0 ? times(step, sumOf(passes) - plain) : zero,
  };
}

function settingOf({ of, dial }: PassQuestion, take: Length): DialSetting {
  const setting = dialSetting({ of, dial, take });
  if (!setting.ok) throw new Error('a planned pass is whole marks of the dial');
  return setting.value;
}

function sumOf(passes: readonly StepPass[]): number {
  return passes.reduce((so, { steps }) => so + steps, 0);
}
