import { combine, mean, resolutionBeside, STATISTICS_STEP, type Estimate } from './estimate.ts';
import {
  floatMm,
  isMore,
  largest,
  lengthFromFloat,
  minus,
  times,
  zero,
  type Length,
} from '../length/length.ts';
import { canMeasure, type FeatureKind, type MeasuringTool } from './measuring-tool.ts';
import { goesInSteps } from './reading.ts';
import { verdictOf, type Limits } from './verdict.ts';

type Warmth = Pick<Estimate, 'warmthDoubt' | 'warmthUnsaid'>;

/** One measured size in a sum: a bore with +1, its pin with −1. */
export type Leg = {
  readonly kind: FeatureKind;
  readonly size: Length;
  readonly coefficient: number;
  /** What its readings say of it already. */
  readonly known?: Estimate;
  /** What is not known of it for want of its warmth, where no estimate says so. */
  readonly warmth?: Warmth;
};

type ToolForLeg = { readonly tool: MeasuringTool; readonly leg: Leg };

export type Settler = {
  readonly tools: readonly ToolForLeg[];
  /** Of each size. */
  readonly readings: number;
  /** Whether those already taken with these tools are among them. */
  readonly inAll?: boolean;
  readonly halfWidth: Length;
};

const MOST_READINGS = 10; // chosen: more than ten of one size nobody takes
const MOST_CHOICES = 1000; // chosen: keeps the search to a moment on a phone

/** A size that was read, for asking what would settle it. */
export function legOf(kind: FeatureKind, known: Estimate, coefficient: number): Leg {
  return { kind, size: mean(known), coefficient, known };
}

/**
 * The half width to expect before a reading is taken.
 *
 * Units:   each size read `readings` times with its tool's usual repeatability; zero not checked. What was read with
 *          that tool already stays among the readings: their scatter counts where it is larger, and so does the error
 *          limit in force then.
 * Range:   one reading and more. With two, t95 of one degree of freedom makes the band wider than with one.
 * Source:  JCGM 100:2008, as `combine`.
 */
export function predictedBand(legs: readonly ToolForLeg[], readings: number): Length {
  return combine(
    legs.map(({ leg, tool }) => ({
      estimate: plannedEstimate({ leg, tool }, readings),
      coefficient: leg.coefficient,
    })),
  ).band.halfWidth;
}

/**
 * Whether readings as close as this can prove anything about these limits: the half width is no more than half of what
 * lies between them. With one limit there is always a size that can be proved.
 *
 * Source:  ISO 14253-1, default rule: the zone of acceptance is the limits less U at both ends.
 */
export function canProve({
  limits: { lower, upper },
  halfWidth,
}: {
  readonly limits: Limits;
  readonly halfWidth: Length;
}): boolean {
  return lower === undefined || upper === undefined || !isMore(times(halfWidth, 2), minus(upper, lower));
}

/**
 * Which tools, with how many readings of each size, would call a size that is too close to call, should it stay where it is.
 *
 * Range:   1 to 10 readings; the fewest first, then the coarsest tools (the widest band that still settles it).
 *          Sizes that the same tools can read are read with one of them. A tool that read a size already has to read it
 *          more often than that.
 * Refuses: nothing; undefined where none of the tools can.
 */
export function whatWouldSettle(q: {
  readonly value: Length;
  readonly limits: Limits;
  readonly legs: readonly Leg[];
  readonly tools: readonly MeasuringTool[];
}): Settler | undefined {
  return simplestTools(
    q,
    (halfWidth) => verdictOf({ value: q.value, halfWidth, limits: q.limits }).kind !== 'too-close',
  );
}

/** The simplest of the tools that can prove these limits, before anything is read. */
export function whatCouldProve(q: {
  readonly limits: Limits;
  readonly legs: readonly Leg[];
  readonly tools: readonly MeasuringTool[];
}): Settler | undefined {
  return simplestTools(q, (halfWidth) => canProve({ limits: q.limits, halfWidth }));
}

function simplestTools(
  { legs, tools }: { readonly legs: readonly Leg[]; readonly tools: readonly MeasuringTool[] },
  isEnough: (halfWidth: Length) => boolean,
): Settler | undefined {
  const choices = choicesFor(legs, tools);
  for (let readings = 1; readings <= MOST_READINGS; readings += 1) {
    const enough = choices
      .filter((choice) => readings > mostTaken(choice))
      .map((choice) => ({
        tools: choice,
        readings,
        inAll: mostTaken(choice) > 0,
        halfWidth: predictedBand(choice, readings),
      }))
      .filter(({ halfWidth }) => isEnough(halfWidth));
    const [first, ...rest] = enough;
    if (first) return rest.reduce((so, next) => (isMore(next.halfWidth, so.halfWidth) ? next : so), first);
  }
  return undefined;
}

function mostTaken(choice: readonly ToolForLeg[]): number {
  return Math.max(0, ...choice.map((pick) => readAlready(pick)?.count ?? 0));
}

/** What was read of it with this very tool. */
function readAlready({ leg: { known }, tool }: ToolForLeg): Estimate | undefined {
  return known?.tool?.id === tool.id ? known : undefined;
}

/** Every way to give each leg a tool, legs with the same able tools sharing theirs; none where a leg has no tool. */
function choicesFor(
  legs: readonly Leg[],
  tools: readonly MeasuringTool[],
): readonly (readonly ToolForLeg[])[] {
  if (legs.length === 0) return [];
  const able = legs.map((leg) => tools.filter((tool) => canMeasure(tool, leg.kind, leg.size)));
  const keys = able.map((some) => JSON.stringify(some.map((tool) => tool.id)));
  const classes = new Map(keys.map((key, index) => [key, able[index] ?? []]));
  const most = Math.floor(MOST_CHOICES ** (1 / classes.size) + 1e-9);
  const picks = [...classes].reduce<readonly ReadonlyMap<string, MeasuringTool>[]>(
    (so, [key, some]) =>
      so.flatMap((pick) => finest(some, most).map((tool) => new Map([...pick, [key, tool]]))),
    [new Map()],
  );
  return picks.map((pick) =>
    legs.flatMap((leg, index) => {
      const tool = pick.get(keys[index] ?? '');
      return tool ? [{ leg, tool }] : [];
    }),
  );
}

/** At most so many, the finest; in the order they were given. */
function finest(tools: readonly MeasuringTool[], most: number): readonly MeasuringTool[] {
  const kept = tools.toSorted((a, b) => coarsenessMm(a) - coarsenessMm(b)).slice(0, most);
  return tools.filter((tool) => kept.includes(tool));
}

function coarsenessMm(tool: MeasuringTool): number {
  return floatMm(tool.mpe) + floatMm(tool.repeatability) + floatMm(resolutionBeside(tool));
}

function warmthOf({ known, warmth: { warmthDoubt, warmthUnsaid } = known ?? {} }: Leg): Warmth {
  return { ...(warmthDoubt && { warmthDoubt }), ...(warmthUnsaid && { warmthUnsaid }) };
}

function plannedEstimate(pick: ToolForLeg, readings: number): Estimate {
  const { leg, tool } = pick;
  const already = readAlready(pick);
  const ownMm = already ? floatMm(already.scatter) * Math.sqrt(already.count) : 0;
  const deviationMm = Math.max(ownMm, floatMm(tool.repeatability));
  const beside = goesInSteps(tool) ? zero : resolutionBeside(tool);
  return {
    sum: times(leg.size, readings),
    count: readings,
    scatter: lengthFromFloat(deviationMm / Math.sqrt(readings), STATISTICS_STEP),
    degreesOfFreedom: readings > 1 ? readings - 1 : Infinity,
    ...(goesInSteps(tool) && { step: already?.step ?? tool.resolution }),
    // No tool and no repeat takes out how warm the shop is.
    ...warmthOf(leg),
    tool: {
      id: tool.id,
      name: tool.name,
      mpe: largest(tool.mpe, already?.tool?.mpe ?? tool.mpe),
      resolutionBeside: largest(beside, already?.tool?.resolutionBeside ?? beside),
      zeroChecked: false,
    },
  };
}
