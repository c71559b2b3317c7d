import { lastLimit, metalBetween, type CutSizes, type Operation } from '../cut/cut.ts';
import type { FitSystem } from '../fit/fits.ts';
import type { MeasuredPart } from '../fit/fit-check.ts';
import type { Joint } from '../fit/joint-limits.ts';
import { isNegative, negate, type Length } from '../length/length.ts';
import type { ShownUnit } from '../length/show.ts';
import type { MeasuringTool, ToolInForce } from '../reading/measuring-tool.ts';
import type { CutKind } from '../length/metal-on.ts';
import type { ShimPiece } from '../shim/shims.ts';
import type { Material } from '../material/tables/materials.ts';
import { bushWay, sleeveWay } from './ways-out-metal.ts';
import { nextClassWay, newMateWay } from './ways-out-fit.ts';
import { measureAgainWay, newPartWay, shimWay } from './ways-out-plain.ts';
import type { WayOut, WayOutKind } from './ways-out-kinds.ts';

export type WaysOutQuestion = CutSizes & {
  readonly operation: Operation;
  /** What was measured, past the limit. */
  readonly present: Length;
  readonly tool?: ToolInForce;
  readonly tools: readonly MeasuringTool[];
  readonly limitsFrom: string;
  /** What usual figures are round in; inches where it is left out. */
  readonly unit?: ShownUnit;
  /** The smallest step the size can be cut in. */
  readonly step: Length;
  /** Left for the last two passes together, off the size. */
  readonly finish: Length;
  /** What runs in the bore, or what the shaft runs in, as measured. */
  readonly mate?: MeasuredPart;
  readonly joint?: Joint;
  /** The class the cut was made for; left out: the joint's usual one. */
  readonly fitClass?: string;
  readonly system?: FitSystem;
  /** From the bore's edge to the part's edge as it is now, at the thinnest. */
  readonly wall?: Length;
  /** How long the bore is. */
  readonly depth?: Length;
  readonly partMetal?: Material;
  readonly bushingMetal?: Material;
  /** Shims and washers on hand. */
  readonly drawer?: readonly ShimPiece[];
};

/** A cut that has gone past its limit. */
export type WaysOut = {
  readonly limit: Length;
  readonly past: Length;
  /** Those that can be gone first, fewest steps that can't be undone before more; ruled-out ones last, with the reason. */
  readonly ways: readonly WayOut[];
};

const LAST = 100;

const KINDS: Readonly<Record<CutKind, readonly WayOutKind[]>> = {
  bore: ['measure-again', 'next-class', 'new-mate', 'bush', 'new-part'],
  outside: ['measure-again', 'next-class', 'new-mate', 'sleeve', 'new-part'],
  length: ['measure-again', 'shim', 'new-part'],
  'recess-depth': ['measure-again', 'shim', 'new-part'],
  'slot-depth': ['measure-again', 'shim', 'new-part'],
  'slot-width': ['measure-again', 'shim', 'new-part'],
  'tap-drill': ['measure-again', 'new-part'],
};

// No sleeve and no other class gives a thread its flanks back.
const OF_A_THREAD: readonly WayOutKind[] = ['measure-again', 'new-part'];

/**
 * What can be done about a cut that has gone past its limit, with the figures in hand.
 *
 * Units:   past is off the size. Each way carries its own figures.
 * Range:   undefined where the size is not past the limit. Fits need the mate's size. A new part is always possible and
 *          always last of those that are: it gives up all the work in this one.
 * Refuses: way by way, each with its reason.
 * Source:  fits.ts, bushing.ts, shims.ts; the ranking common practice, no source.
 */
export function waysOut(q: WaysOutQuestion): WaysOut | undefined {
  const limit = lastLimit(q);
  const room = metalBetween(q.of, q.present, limit);
  if (!isNegative(room)) return undefined;
  const kinds = q.operation === 'thread' ? OF_A_THREAD : KINDS[q.of];
  const ways = kinds.map((kind) => wayOf(kind, q));
  return { limit, past: negate(room), ways: ways.toSorted(byRank) };
}

function wayOf(kind: WayOutKind, q: WaysOutQuestion): WayOut {
  switch (kind) {
    case 'measure-again':
      return measureAgainWay(q);
    case 'next-class':
      return nextClassWay(q);
    case 'new-mate':
      return newMateWay(q);
    case 'bush':
      return bushWay(q);
    case 'sleeve':
      return sleeveWay(q);
    case 'shim':
      return shimWay(q);
    case 'new-part':
      return newPartWay(q);
    default:
      return kind satisfies never;
  }
}

function byRank(a: WayOut, b: WayOut): number {
  return rankOf(a) - rankOf(b);
}

/** Steps that can't be undone; a new part behind every other way that is open, a ruled-out one behind that. */
function rankOf(way: WayOut): number {
  if (way.state === 'out') return LAST + 1;
  return way.kind === 'new-part' ? LAST : way.irreversibleSteps;
}
