import {
  absolute,
  byLength,
  dividedBy,
  hypotenuse,
  isMore,
  minus,
  plus,
  ratioOf,
  times,
  zero,
  type Length,
} from '../length/length.ts';
import type { FeatureKind, ToolInForce } from './measuring-tool.ts';

export type Place = 'top' | 'middle' | 'bottom';
export type Direction = '0' | '90';

/**
 * One reading that counts; struck-out ones are left out by the caller. `exact` is the size meant: a bore read across
 * a caliper's jaw flats has been through `trueBoreAcrossJaws` already.
 */
export type Reading = {
  /** By which its record is found again, where there is one. */
  readonly id?: string;
  readonly exact: Length;
  /** What the tool showed, where something was corrected: its range is of that. */
  readonly asRead?: Length;
  readonly tool: ToolInForce;
  /** Standard uncertainty of what was corrected for warmth. */
  readonly warmthDoubt?: Length;
  /** Where nobody said how warm it was read: the standard uncertainty of that, see `unsaidWarmth`. */
  readonly warmthUnsaid?: Length;
  /** Of a leaf or plug that goes: the next one, which doesn't. */
  readonly stops?: Length;
  readonly place?: Place;
  readonly direction?: Direction;
  /** The tool's zero was checked since the app was opened. */
  readonly zeroChecked: boolean;
};

/**
 * Whether a tool tells only that one of its sizes goes and the next doesn't: leaves, plugs.
 */
export function goesInSteps(tool: Pick<ToolInForce, 'kind'>): boolean {
  return tool.kind === 'feeler' || tool.kind === 'plug-gauge';
}

/**
 * The next one that doesn't go, where it isn't said: one step of the set on.
 *
 * Range:   tools in steps only; towards the larger, as leaves and plugs go; of rings over a pin towards the smaller. Where
 *          none goes, the thinnest of the set.
 */
export function nextThatStops(
  { exact, tool, stops }: Pick<Reading, 'exact' | 'tool' | 'stops'>,
  kind?: FeatureKind,
): Length | undefined {
  if (!goesInSteps(tool)) return undefined;
  if (stops) return stops;
  if (kind === 'pin') return minus(exact, tool.resolution);
  return isMore(exact, zero) ? plus(exact, tool.resolution) : (tool.least ?? tool.resolution);
}

/**
 * The size a reading stands for: what was read, or the middle between what goes and the next one that doesn't.
 *
 * Source:  JCGM 100:2008 4.3.7: anywhere in the step is as likely.
 */
export function sizeRead(reading: Pick<Reading, 'exact' | 'tool' | 'stops'>): Length {
  const stops = nextThatStops(reading);
  return stops ? dividedBy(plus(reading.exact, stops), 2) : reading.exact;
}

/** From what goes to what doesn't; undefined for a tool that shows a figure. */
export function stepWidth(reading: Pick<Reading, 'exact' | 'tool' | 'stops'>): Length | undefined {
  const stops = nextThatStops(reading);
  return stops && absolute(minus(stops, reading.exact));
}

/**
 * A probable slip. `inch-for-mm`: the figure was taken as inches where millimetres were meant (25.4 times too big);
 * `mm-for-inch`: the other way. `meant` is the size if it was the slip, `usual` the median of the other readings.
 */
export type SlipQuestion = {
  readonly kind: 'inch-for-mm' | 'mm-for-inch' | 'point-slipped';
  readonly meant: Length;
  readonly usual: Length;
};

// Chosen, not published: readings of one feature agree far closer than this, and no two of the factors overlap within it.
const NEAR = 0.15;

type Slip = { readonly kind: SlipQuestion['kind']; readonly ratio: number; meant(typed: Length): Length };

const pointSlips = ['10', '100', '1000'].flatMap((factor): readonly Slip[] => [
  { kind: 'point-slipped', ratio: Number(factor), meant: (typed) => dividedBy(typed, factor) },
  { kind: 'point-slipped', ratio: 1 / Number(factor), meant: (typed) => times(typed, factor) },
]);

const slips: readonly Slip[] = [
  { kind: 'inch-for-mm', ratio: 25.4, meant: (typed) => dividedBy(typed, '25.4') },
  { kind: 'mm-for-inch', ratio: 1 / 25.4, meant: (typed) => times(typed, '25.4') },
  ...pointSlips,
];

/**
 * What to ask when a size stands beside the other readings as if the unit or the point had slipped.
 *
 * Range:   asks within 15 % of a ratio of 25.4, 10, 100 or 1000 either way beside the median of the others; never when
 *          one of the others reads about the same (within 15 %), never without other readings, never at zero.
 * Source:  thresholds chosen, not published.
 */
export function slipQuestion(typed: Length, others: readonly Length[]): SlipQuestion | undefined {
  const usual = median(others);
  if (usual === undefined || !isMore(usual, zero) || !isMore(typed, zero)) return undefined;
  if (others.some((other) => isMore(other, zero) && isNear(ratioOf(typed, other), 1))) return undefined;
  const slip = slips.find(({ ratio }) => isNear(ratioOf(typed, usual), ratio));
  return slip && { kind: slip.kind, meant: slip.meant(typed), usual };
}

/**
 * The bore's diameter from a caliper reading across its inside jaws, whose flats touch on a chord.
 *
 * Units:   D = √(M² + w²), M the reading, w the width of one jaw's flat.
 * Source:  Pythagoras in the rectangle of the two flats.
 */
export function trueBoreAcrossJaws({ measured, flatWidth }: { measured: Length; flatWidth: Length }): Length {
  return hypotenuse(measured, flatWidth);
}

function isNear(ratio: number, factor: number): boolean {
  return Math.abs(ratio / factor - 1) <= NEAR;
}

function median(sizes: readonly Length[]): Length | undefined {
  const sorted = sizes.toSorted(byLength);
  const below = sorted[Math.ceil(sorted.length / 2) - 1];
  const above = sorted[Math.floor(sorted.length / 2)];
  return below && above && dividedBy(plus(below, above), 2);
}
