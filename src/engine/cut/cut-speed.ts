import type { CuttingTool, Operation } from './cut.ts';
import { spindleRpm } from './cutting-speed.ts';
import {
  floatMm,
  isMore,
  largest,
  lengthFromFloat,
  lengthOf,
  ratioOf,
  zero,
  type Length,
} from '../length/length.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';
import { largeWork, mostRpm, ownSpeeds, type SpeedCap } from './tables/cut-speeds.ts';
import type { Figure, Material, Range } from '../material/tables/materials.ts';

/** What of the lathe matters for its speed. */
export type LatheSpeeds = {
  /** The speeds it has; none: any. */
  readonly speedsRpm: readonly number[];
  readonly mostRpm?: number;
};

export type SpeedQuestion = {
  readonly material: Material;
  readonly cuttingTool: CuttingTool;
  readonly operation: Operation;
  /** Of the pass: roughing goes slower than finishing. */
  readonly pass: 'rough' | 'finish';
  /** The sizes the tool passes over; the largest of them rules. */
  readonly diameters: readonly [Length, ...(readonly Length[])];
  /** How big around the work is that the chuck turns, where the tool passes over less of it: a bore in a hub. */
  readonly work?: Length;
  readonly lathe: LatheSpeeds;
};

export type CutSpeed = {
  readonly surfaceFeetPerMinute: number;
  /** What the books give for this pass, lowest to highest; the speed is its middle. */
  readonly rangeRpm: Range;
  readonly at: Length;
  readonly idealRpm: number;
  /** What holds it below the ideal. */
  readonly cap?: { readonly rpm: number; readonly by: SpeedCap | 'lathe' };
  /** The lathe's next lower speed, or the ideal itself where it has any. Left out where even the slowest is too fast. */
  readonly chosenRpm?: number;
  /** The lathe's slowest, where that is too fast already. */
  readonly slowestTooFastRpm?: number;
  readonly source: string;
  readonly fromMemory: boolean;
  /** No figure for carbide in this material: that of high-speed steel stands in. */
  readonly hssStandsIn: boolean;
  readonly note?: string;
};

export type SpeedRefusal = { readonly code: 'no-diameter-for-speed' };

/**
 * Spindle speed for a pass: from the surface speed of material and tool, held by what the lathe and the work allow, and
 * the next lower one that the lathe has.
 *
 * Units:   surface feet a minute and revolutions a minute, floating point. n = v / (π D) at the largest diameter in the
 *          cut, at the middle of what the books give; where they print roughing and finishing apart, of the one in hand.
 *          Drilling, reaming, tapping and threading at their own share of roughing, whatever the tool.
 * Range:   a lathe with no speeds listed has any. A lathe's most and a cap for the work hold every one of them; where no
 *          most is given a chuck is held to a cautious one. Large work by what is known of it: a bore's speed
 *          hangs on the bore, its cap on what turns round it. No cap jumps between two neighbouring sizes.
 * Refuses: no-diameter-for-speed.
 * Source:  tables/materials.ts; tables/cut-speeds.ts; the middle of a range: common practice, no source.
 */
export function cutSpeed(q: SpeedQuestion): Result<CutSpeed, SpeedRefusal> {
  const at = largest(...q.diameters);
  if (!isMore(at, zero)) return refuse({ code: 'no-diameter-for-speed' });
  const { range, ...speed } = surfaceSpeed(q);
  const rpmOf = (feet: number) => spindleRpm({ surfaceFeetPerMinute: feet, diameter: at });
  const idealRpm = rpmOf(speed.surfaceFeetPerMinute);
  const cap = capOf(q, at, idealRpm);
  return worked({
    ...speed,
    at,
    idealRpm,
    rangeRpm: { low: rpmOf(range.low), high: rpmOf(range.high) },
    ...(cap && { cap }),
    ...onThisLathe(q.lathe, cap?.rpm ?? idealRpm),
  });
}

type SurfaceSpeed = Pick<
  CutSpeed,
  'surfaceFeetPerMinute' | 'source' | 'fromMemory' | 'hssStandsIn' | 'note'
> & { readonly range: Range };

function surfaceSpeed({ material, cuttingTool, operation, pass }: SpeedQuestion): SurfaceSpeed {
  const { speedHssSfm, speedCarbideSfm } = material;
  if (isDrilled(operation) || operation === 'thread') {
    const own = ownSpeeds[operation];
    const turning = fromFigure(speedHssSfm, 'rough');
    return {
      ...turning,
      surfaceFeetPerMinute: turning.surfaceFeetPerMinute * own.share,
      range: { low: turning.range.low * own.share, high: turning.range.high * own.share },
      source: `${own.source}; turning: ${turning.source}`,
      hssStandsIn: false,
    };
  }
  if (cuttingTool === 'hss') return { ...fromFigure(speedHssSfm, pass), hssStandsIn: false };
  return speedCarbideSfm
    ? { ...fromFigure(speedCarbideSfm, pass), hssStandsIn: false }
    : { ...fromFigure(speedHssSfm, pass), hssStandsIn: true };
}

function fromFigure(figure: Figure, pass: 'rough' | 'finish') {
  const { source, basis, note } = figure;
  const { low, high } = figure[pass] ?? figure;
  return {
    surfaceFeetPerMinute: (low + high) / 2,
    range: { low, high },
    source,
    fromMemory: basis === 'memory',
    ...(note !== undefined && { note }),
  };
}

/** The lowest of what holds it back, where that is below the ideal. */
function capOf({ operation, lathe, work }: SpeedQuestion, at: Length, idealRpm: number): CutSpeed['cap'] {
  const around = isDrilled(operation) ? work : largest(at, work ?? at);
  const caps = [
    mostOf(lathe),
    ...(operation === 'ring' ? [named('ring-on-mandrel')] : []),
    ...(operation === 'tap' ? [named('tapping')] : []),
    ...(operation === 'thread' ? [named('threading')] : []),
    ...(around ? [{ rpm: largeWork.rpm * ratioOf(largeWork.at, around), by: 'large-work' as const }] : []),
  ].filter(({ rpm }) => rpm < idealRpm);
  return caps.toSorted((a, b) => a.rpm - b.rpm)[0];
}

/** The most that anything in a chuck is turned: what the lathe may, or a cautious figure where nobody gave it. */
export function mostOf({ mostRpm: given }: Pick<LatheSpeeds, 'mostRpm'>): NonNullable<CutSpeed['cap']> {
  return given === undefined ? named('chuck-not-given') : { rpm: given, by: 'lathe' };
}

function named(by: keyof typeof mostRpm) {
  return { rpm: mostRpm[by], by };
}

/** The largest work that may turn so fast: what a speed worked out without knowing the work is good for. */
export function largestWorkAt(rpm: number): Length {
  return lengthFromFloat((floatMm(largeWork.at) * largeWork.rpm) / rpm, lengthOf('1 mm'));
}

function isDrilled(operation: Operation): operation is 'drill' | 'ream' | 'tap' {
  return operation === 'drill' || operation === 'ream' || operation === 'tap';
}

function onThisLathe(
  { speedsRpm }: LatheSpeeds,
  wantedRpm: number,
): Pick<CutSpeed, 'chosenRpm' | 'slowestTooFastRpm'> {
  if (speedsRpm.length === 0) return { chosenRpm: wantedRpm };
  const slowEnough = speedsRpm.filter((rpm) => rpm <= wantedRpm);
  return slowEnough.length > 0
    ? { chosenRpm: Math.max(...slowEnough) }
    : { slowestTooFastRpm: Math.min(...speedsRpm) };
}
