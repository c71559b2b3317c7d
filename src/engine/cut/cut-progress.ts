import {
  firstLimit,
  lastLimit,
  metalBetween,
  type CutSizes,
  type CuttingTool,
  type Operation,
} from './cut.ts';
import { stepsToReach, type LatheDial } from './dial.ts';
import { bandOf, mean, typedEstimate, type Band } from '../reading/estimate.ts';
import {
  dividedBy,
  isMore,
  isNegative,
  largest,
  negate,
  plus,
  ratioOf,
  times,
  zero,
} from '../length/length.ts';
import type { Length } from '../length/length.ts';
import type { FeatureKind, MeasuringTool } from '../reading/measuring-tool.ts';
import { sizeStep, type CutKind } from '../length/metal-on.ts';
import { passPlan, type PassPlan, type PassRefusal, type PlannedPass } from './pass-plan.ts';
import { holePlan, isHoleOperation, type HolePlan, type HolePlanRefusal } from './pass-plan-holes.ts';
import { takesFor, type TakesWithSource } from './pass-plan-takes.ts';
import type { Result } from '../length/refusal.ts';
import { whatWouldSettle, type Settler } from '../reading/settle.ts';
import { springOf, type MeasuredPass, type Spring } from './spring.ts';
import type { MaterialId } from '../material/tables/materials.ts';
import { verdictOf, type Limits, type Verdict } from '../reading/verdict.ts';

export type CutQuestion = CutSizes & {
  readonly operation: Operation;
  readonly cuttingTool: CuttingTool;
  readonly limitsFrom: string;
  readonly material?: MaterialId;
  readonly drill?: string;
  readonly thread?: string;
  /** Of a thread: the size over its wires where the tool just touches. */
  readonly threadFrom?: Length;
  /** The size before the first cut, where it is known. */
  readonly blank?: Length;
  readonly largestTake?: Length;
  readonly finishTake?: Length;
  /** In the order they were made, struck-out ones in their places. */
  readonly passes: readonly MeasuredPass[];
  /** Off the size: what was dialled in and cut since the last measurement, all together. */
  readonly dialledSince?: Length;
  readonly dial: LatheDial;
  /** Those in Shop, to name the one that would settle a close call. */
  readonly tools: readonly MeasuringTool[];
};

/**
 * `to-measure`: no size is known yet. `to-cut`: nothing cut yet. `last-pass`: one pass is left, to be warned of.
 * `to-size`: inside the limits. `over`: past the limit.
 */
export type CutStage = 'to-measure' | 'to-cut' | 'cutting' | 'last-pass' | 'to-size' | 'over';

export type CutProgress = {
  readonly stage: CutStage;
  /** The last measurement that counts, else the blank. */
  readonly present?: Length;
  /** Metal from the present size to the target; below zero it is past the target. */
  readonly left?: Length;
  /** Of the way from the first known size to the target, 0 to 1, for the bar. */
  readonly share: number;
  /** How far past the limit; only where it is over. */
  readonly past?: Length;
  /** Passes made that count. */
  readonly made: number;
  readonly takes: TakesWithSource;
  /** Left out where no size is known, for drilling, reaming and tapping, and where it is over. */
  readonly plan?: Result<PassPlan, PassRefusal>;
  /** The first pass of the plan that is not dialled in yet. */
  readonly next?: PlannedPass;
  /** It is the last one: to be warned of. */
  readonly nextIsLast: boolean;
  /** For drilling, reaming and tapping. */
  readonly hole?: Result<HolePlan, HolePlanRefusal>;
  readonly spring: Spring;
  /** Only of a measured size inside or past its limits. */
  readonly proof?: CutProof;
};

export type CutProof = {
  readonly verdict: Verdict;
  readonly limits: Limits;
  readonly value: Length;
  readonly band: Band;
  /** Without a named tool the size is taken as exact, and proves less than it says. */
  readonly toolKnown: boolean;
  /** What would settle it where it is too close to call; left out where none can. */
  readonly settler?: Settler;
};

/**
 * Where a cut stands: what is left, the plan from here, how the last measurement stands to the limits.
 *
 * Units:   off the size. Left = present − target in the metal's direction, never rounded by itself.
 * Range:   struck-out measurements count for nothing; without any that counts the blank is the present size. Inside the
 *          limits is to size, however proud of the target: metal left on is never a fault. Past the limit is over at
 *          once, by the figure measured, whatever its band; whether that is proved the verdict says.
 * Refuses: as `passPlan` and `holePlan`, in the plan.
 * Source:  verdict by the ISO 14253-1 idea.
 */
export function cutProgress(q: CutQuestion): CutProgress {
  const takes = takesFor(q);
  const spring = springOf({ of: q.of, passes: q.passes, largestLight: largestLight(q, takes) });
  const counting = q.passes.filter(({ struckOut }) => !struckOut);
  const last = counting.at(-1);
  const present = last?.measured ?? q.blank;
  const made = counting.filter(({ asked }) => asked !== undefined).length;
  const hole =
    isHoleOperation(q.operation) && holePlan({ ...q, operation: q.operation, ...(present && { present }) });
  const common = { takes, spring, made, ...(hole && { hole }) };
  if (!present) return { ...common, stage: 'to-measure', share: 0, nextIsLast: false };
  const room = metalBetween(q.of, present, lastLimit(q));
  const proof = last && proofOf(q, last);
  const known = {
    ...common,
    present,
    left: metalBetween(q.of, present, q.target),
    share: shareDone(q, counting, present),
    ...(proof && { proof }),
  };
  if (isNegative(room)) return { ...known, stage: 'over', past: negate(room), nextIsLast: false };
  const plan = hole ? undefined : planFrom(q, { present, takes, spring });
  const next = plan && nextOf(plan, q.dialledSince ?? zero);
  const nextIsLast = plan?.ok === true && next !== undefined && next === plan.value.passes.at(-1);
  return {
    ...known,
    stage: stageOf(q, { present, isMeasured: last !== undefined, made, nextIsLast }),
    ...(plan && { plan }),
    ...(next && { next }),
    nextIsLast,
  };
}

/** Which kind of reading a cut's size is, so that a tool can be named for it. */
export function featureKindOf(of: CutKind): FeatureKind {
  switch (of) {
    case 'outside':
      return 'pin';
    case 'bore':
    case 'tap-drill':
      return 'bore';
    case 'length':
      return 'length';
    case 'recess-depth':
    case 'slot-depth':
      return 'depth';
    case 'slot-width':
      return 'gap';
    default:
      return of satisfies never;
  }
}

type From = { readonly present: Length; readonly takes: TakesWithSource; readonly spring: Spring };

function planFrom(q: CutQuestion, { present, takes, spring }: From): Result<PassPlan, PassRefusal> {
  return passPlan({
    of: q.of,
    target: q.target,
    lower: q.lower,
    upper: q.upper,
    dial: q.dial,
    present,
    takes,
    ...(q.threadFrom && { threadFrom: q.threadFrom }),
    ...(spring.kind === 'learnt' && { spring: spring.springs }),
  });
}

/** The first pass that is deeper than what is dialled in already. */
function nextOf(plan: Result<PassPlan, PassRefusal>, dialled: Length): PlannedPass | undefined {
  if (!plan.ok) return undefined;
  let all = zero;
  return plan.value.passes.find(({ asked }) => {
    all = plus(all, asked);
    return isMore(all, dialled);
  });
}

/** The heaviest pass that is light yet: half the finish allowance, or the least one that cuts. */
function largestLight({ of, dial }: CutQuestion, { finish, least }: TakesWithSource): Length {
  const step = sizeStep(of, dial);
  return largest(dividedBy(finish, 2), times(step, stepsToReach(least, step)));
}

type At = {
  readonly present: Length;
  readonly isMeasured: boolean;
  readonly made: number;
  readonly nextIsLast: boolean;
};

function stageOf(q: CutQuestion, { present, isMeasured, made, nextIsLast }: At): CutStage {
  const isInside = !isMore(metalBetween(q.of, present, firstLimit(q)), zero);
  if (isInside && isMeasured) return 'to-size';
  if (nextIsLast) return 'last-pass';
  return made > 0 || isMore(q.dialledSince ?? zero, zero) ? 'cutting' : 'to-cut';
}

function shareDone(q: CutQuestion, counting: readonly MeasuredPass[], present: Length): number {
  const start = q.blank ?? counting[0]?.measured ?? present;
  const whole = metalBetween(q.of, start, q.target);
  if (!isMore(whole, zero)) return 1;
  const done = ratioOf(metalBetween(q.of, start, present), whole);
  return Math.min(1, Math.max(0, done));
}

function proofOf(
  q: CutQuestion,
  { measured, tool, warmthDoubt, warmthUnsaid }: MeasuredPass,
): CutProof | undefined {
  if (isMore(metalBetween(q.of, measured, firstLimit(q)), zero)) return undefined;
  const limits = { lower: q.lower, upper: q.upper, source: q.limitsFrom };
  const warmth = { ...(warmthDoubt && { warmthDoubt }), ...(warmthUnsaid && { warmthUnsaid }) };
  const known = typedEstimate(measured, tool, warmth);
  // Of a plug that goes while the next doesn't, the middle.
  const value = mean(known);
  const band = bandOf(known);
  const verdict = verdictOf({ value, ...band, limits });
  const settler =
    verdict.kind === 'too-close'
      ? whatWouldSettle({
          value,
          limits,
          legs: [{ kind: featureKindOf(q.of), size: measured, coefficient: 1, warmth }],
          tools: q.tools,
        })
      : undefined;
  return {
    verdict,
    limits,
    value,
    band,
    toolKnown: tool !== undefined,
    ...(settler && { settler }),
  };
}
