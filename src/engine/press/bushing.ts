import { bushingHeat, type HeatLimit } from './bushing-heat.ts';
import { checkGrip, gripNow } from './bushing-grip.ts';
import { holeFor, insideNominal, outsideFor, pressNominal } from './bushing-sizes.ts';
import {
  likelyInterference,
  pressStress,
  worstInterference,
  type Interference,
  type PressStress,
} from './bushing-stress.ts';
import { runningInUse, type RunningInUse } from './bushing-running.ts';
import { findBushingWarnings, type BushingWarning } from './bushing-warnings.ts';
import { targetBetween } from '../length/target-between.ts';
import { mean } from '../reading/estimate.ts';
import { boreForPin, surest, type FormRefusal, type MeasuredPart } from '../fit/fit-check.ts';
import type { IsoRefusal } from '../fit/fits-iso.ts';
import { fitLimits, type FitLimits, type Range } from '../fit/fits.ts';
import type { HeatWay } from './heat-fit.ts';
import { cleanUpSize } from '../fit/clean-up.ts';
import {
  dividedBy,
  isMore,
  largest,
  minus,
  plus,
  smallest,
  times,
  zero,
  type Length,
} from '../length/length.ts';
import { metalOnTarget } from '../length/metal-on.ts';
import type { Nominal } from '../fit/nominal.ts';
import { sizeBeforePlating } from './plating.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';
import type { ShownUnit } from '../length/show.ts';
import type { Material } from '../material/tables/materials.ts';
import type { Cold, Condition, Finish } from './tables/press-practice.ts';
import type { Reamer } from '../fit/tables/reamer-sizes.ts';
import { takenFromWall, wornAxis, type WornAxis } from '../fit/worn-axis.ts';
import { middleOf, type Limits, type Verdict } from '../reading/verdict.ts';

export type BushingQuestion = {
  /** As it is now. */
  readonly bore: MeasuredPart;
  /** What will run in the bushing, and the class it runs with. */
  readonly pin: MeasuredPart;
  readonly insideClass: string;
  /** What that class is taken at; left out: the preferred size nearest the pin. */
  readonly nominal?: Length;
  readonly pressClass: string;
  readonly part: Material;
  readonly bushing: Material;
  /** For the clearance it runs with when it is hot or cold; never taken for granted. */
  readonly pinMetal?: Material;
  /** Whether the finished hole has to stand on its old axis; left out or false: it goes where the wear leads a reamer. */
  readonly keepsAxis?: boolean;
  /** From the present hole's edge to the part's edge, at the thinnest. */
  readonly wall?: Length;
  /** The same at the thickest; left out, the part counts as solid all round there. */
  readonly thickWall?: Length;
  readonly length?: Length;
  /** Another size to ream or bore to. */
  readonly reamTo?: Length;
  /** The bore once it is reamed, the bushing once it is turned. */
  readonly reamed?: MeasuredPart;
  readonly outside?: MeasuredPart;
  /** Thickness of a coat that the turned outside still gets. */
  readonly plating?: Length;
  readonly finish: Finish;
  readonly condition: Condition;
  readonly cold: Cold;
  /** What usual figures are round in; inches where it is left out. */
  readonly shop?: ShownUnit;
  readonly shopCelsius: number;
  /** How hot the joint gets when it runs. */
  readonly hotCelsius?: number;
  /** How cold it gets, standing outside in winter say. */
  readonly coldestCelsius?: number;
  readonly leastWall?: Length;
  readonly leastBushingWall?: Length;
  readonly partYieldMpa?: number;
  readonly bushingYieldMpa?: number;
  /** The smallest step a diameter can be cut to. */
  readonly step: Length;
};

export type BushingRefusal =
  | IsoRefusal
  | FormRefusal
  | { readonly code: 'no-reamer'; readonly needs: Length }
  | { readonly code: 'reams-too-small'; readonly reamTo: Length; readonly needs: Length }
  | { readonly code: 'no-bushing-wall'; readonly reamTo: Length; readonly inside: Length }
  | { readonly code: 'breaks-through'; readonly reamTo: Length; readonly by: Length };

export type BushingAnswer = {
  readonly next: 'ream' | 'turn' | 'press';
  /** The size at which the worn bore is clean all round. */
  readonly cleanUp: Length;
  /** Where its middle goes; left out where it isn't worn. */
  readonly axis?: WornAxis;
  readonly ream: Reamer;
  /** What the bushing goes into: as reamed where that was measured, its least and its greatest place; else as planned. */
  readonly hole: Range;
  readonly reamTakes: Length;
  readonly pressFit: FitLimits;
  readonly insideFit: FitLimits;
  /** What the class inside is taken at. */
  readonly nominal: Nominal;
  /** The bushing's outside, finished, and as turned where it is plated after. */
  readonly outside: Range;
  readonly turn: Range;
  /** Where to turn it to, as its cut says. */
  readonly turnTo: Length;
  /** The same on a mark of the dial, or that none lies inside. */
  readonly turnTarget: Result<Length>;
  /** The bushing's bore when it is in, and what to bore it to before pressing; left out where that can't be relied on. */
  readonly inside: Range;
  /** Whether the pin's band has been taken off those limits; where it would leave nothing, they stand whole. */
  readonly insideProvable: boolean;
  readonly insideTo: Length;
  readonly insideTarget: Result<Length>;
  readonly insideBefore?: Range;
  readonly interference: Interference;
  /** Only once both are measured. */
  readonly measured?: {
    readonly value: Length;
    readonly halfWidth: Length;
    readonly limits: Limits & Range;
    readonly verdict: Verdict;
  };
  readonly bushingWall: Length;
  readonly partWall?: Length;
  /** Only where the wall is known. */
  readonly stress?: PressStress;
  readonly dropRoom: Length;
  readonly heat: readonly HeatWay[];
  readonly mostHeat: HeatLimit;
  /** Least interference left when the joint is hot, and when it is cold. */
  readonly interferenceHot?: Length;
  readonly interferenceCold?: Length;
  /** The greatest at any temperature it sees; the stress then, where the wall is known. */
  readonly running?: RunningInUse;
  readonly greatestInUse: Length;
  readonly stressInUse?: PressStress;
  readonly warnings: readonly BushingWarning[];
};

/**
 * A worn bore bushed back to size: what to ream, turn, press and bore, and what that does to both parts.
 *
 * Units:   sizes are diameters; wall = half of (reamed − greatest inside), as measured where it was. Interference is the class's; once the bore is
 *          measured that of a bushing turned to it; once both are, their own, the coat still to come counted in, with their bands. Room to drop in: .001 in, .001 in an inch above one.
 * Refuses: no-reamer, reams-too-small, no-bushing-wall, breaks-through, form-eats-class, and what a class refuses.
 * Source:  fits.ts, press-fit.ts, heat-fit.ts; tables/least-walls.ts, tables/press-practice.ts.
 */
export function bushing(asked: BushingQuestion): Result<BushingAnswer, BushingRefusal> {
  const q = { ...asked, ...thinAndThick(asked) };
  const nominal = insideNominal(q);
  const insideFit = fitLimits({ fitClass: q.insideClass, nominal: nominal.size });
  if (!insideFit.ok) return insideFit;
  const inside = boreForPin(insideFit.value, q.pin);
  if (!inside.ok) return inside;
  const insideLimits = surest(inside.value);
  const axis = wornAxis({
    loosest: q.bore.loosest,
    nominal: nominal.size,
    most: largest(zero, insideFit.value.clearance.upper),
    ...(q.shop && { unit: q.shop }),
  });
  const cleanUp = (q.keepsAxis === true && axis?.onOldAxis) || cleanUpSize(q.bore.loosest, q.shop);
  const pressedInto = holeFor(q, cleanUp, insideLimits);
  if (!pressedInto.ok) return pressedInto;
  const { ream, hole } = pressedInto.value;
  const pressFit = fitLimits({ fitClass: q.pressClass, nominal: pressNominal(q, ream.size) });
  if (!pressFit.ok) return pressFit;
  const outside = q.reamed ? outsideFor(pressFit.value, q.reamed) : worked(pressFit.value.pin);
  if (!outside.ok) return outside;
  const reamTakes = minus(hole.upper, mean(q.bore.tightest));
  const taken = takenFromWall({
    finished: hole.upper,
    tightest: mean(q.bore.tightest),
    oldAxis: q.keepsAxis === true && axis ? nominal.size : undefined,
  });
  const partWall = q.wall && minus(q.wall, taken);
  if (partWall && !isMore(partWall, zero))
    return refuse({ code: 'breaks-through', reamTo: hole.upper, by: minus(zero, partWall) });
  return worked(
    answerOf(q, {
      cleanUp,
      ...(axis && { axis }),
      ream,
      hole,
      reamTakes,
      nominal,
      insideFit: insideFit.value,
      pressFit: pressFit.value,
      inside: insideLimits,
      insideProvable: inside.value.sure !== undefined,
      outside: outside.value,
      ...(partWall && { partWall }),
    }),
  );
}

/** Given the wrong way round, the lesser is still the thinnest: no hold and no wall is counted on that isn't there. */
function thinAndThick({
  wall,
  thickWall,
}: Pick<BushingQuestion, 'wall' | 'thickWall'>): Pick<BushingQuestion, 'wall' | 'thickWall'> {
  return wall && thickWall ? { wall: smallest(wall, thickWall), thickWall: largest(wall, thickWall) } : {};
}

type Sizes = Pick<
  BushingAnswer,
  | 'cleanUp'
  | 'axis'
  | 'ream'
  | 'hole'
  | 'reamTakes'
  | 'nominal'
  | 'insideFit'
  | 'pressFit'
  | 'inside'
  | 'insideProvable'
  | 'outside'
  | 'partWall'
>;

function answerOf(q: BushingQuestion, sizes: Sizes): BushingAnswer {
  const { hole, inside, outside, pressFit } = sizes;
  const grip = gripNow(q, sizes);
  const interference = worstInterference(grip, q.finish);
  const pressed = pressedWith(q, sizes, interference);
  const { stress } = pressed;
  const before = stress && {
    lower: plus(inside.lower, stress.closes.upper),
    upper: plus(inside.upper, stress.closes.lower),
  };
  const turn = {
    lower: sizeBeforePlating(outside.lower, 'outside', q.plating ?? zero),
    upper: sizeBeforePlating(outside.upper, 'outside', q.plating ?? zero),
  };
  const answer = {
    ...sizes,
    next: q.reamed ? (q.outside ? ('press' as const) : ('turn' as const)) : ('ream' as const),
    turn,
    turnTo: targetBetween(turn, 'outside', q.step),
    turnTarget: metalOnTarget({ ...turn, aim: middleOf(turn) }, 'outside', q.step),
    insideTo: targetBetween(inside, 'bore', q.step),
    insideTarget: metalOnTarget({ ...inside, aim: middleOf(inside) }, 'bore', q.step),
    ...(before && !isMore(before.lower, before.upper) && { insideBefore: before }),
    ...pressed,
    ...(q.reamed && q.outside && { measured: checkGrip(pressFit, grip) }),
    bushingWall: dividedBy(minus(hole.lower, inside.upper), 2),
  };
  // Warned of by the readings themselves; that the far ends of their band are worse is one warning of its own.
  const central = likelyInterference(grip, q.finish);
  const running = runningInUse(q, answer);
  const likely = { ...answer, ...pressedWith(q, sizes, central), heat: answer.heat };
  const found = { ...answer, ...(running && { running }) };
  return {
    ...found,
    warnings: findBushingWarnings(q, { likely: { ...likely, ...(running && { running }) }, worst: found }),
  };
}

/** All that hangs on how tight it is: stress in the shop and at any temperature in use, ways in, what is left of the grip. */
function pressedWith(q: BushingQuestion, sizes: Sizes, interference: Interference) {
  const { partWall, ream } = sizes;
  const heat = bushingHeat(q, ream.size, interference);
  const stressAt = (greatest: Length) =>
    partWall && pressStressOf(q, sizes, partWall, { ...interference, greatest });
  const stress = stressAt(interference.greatest);
  const stressInUse = stressAt(heat.greatestInUse);
  return {
    interference,
    ...heat,
    ...(stress && { stress }),
    ...(stressInUse && { stressInUse }),
  };
}

function pressStressOf(
  q: BushingQuestion,
  { hole, inside, reamTakes }: Sizes,
  partWall: Length,
  interference: Interference,
): PressStress {
  const across = (wall: Length): Length => plus(hole.upper, times(wall, 2));
  return pressStress({
    at: hole.upper,
    outside: across(partWall),
    ...(q.thickWall && { thickOutside: across(minus(q.thickWall, dividedBy(reamTakes, 2))) }),
    inside: inside.upper,
    part: q.part,
    bushing: q.bushing,
    interference,
    ...(q.length && { length: q.length }),
  });
}
