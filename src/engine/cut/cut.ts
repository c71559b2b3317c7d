import { minus, plus, type Length } from '../length/length.ts';
import { leavesMoreWhenLarge, type CutKind } from '../length/metal-on.ts';
import type { MaterialId } from '../material/tables/materials.ts';

/**
 * What is done at the machine. A ring is its outside turned on a mandrel, thin metal that must not be squeezed. A thread is
 * cut by a single point and measured over wires: its size is the size over them.
 */
export type Operation = 'turn' | 'bore' | 'face' | 'drill' | 'ream' | 'tap' | 'ring' | 'thread';

/** What the edge is made of. */
export type CuttingTool = 'hss' | 'carbide';

/** A cut's size and its limits: what a plan, a verdict and a way out all start from. */
export type CutSizes = {
  readonly of: CutKind;
  readonly target: Length;
  readonly lower: Length;
  readonly upper: Length;
};

/** How far the middle of the work is set over in a four-jaw chuck, and how far that may be off. */
export type SetOver = { readonly by: Length; readonly within?: Length | undefined };

/** Where a hole stands on its work: across and up from the zero of both slides. */
export type OnWork = { readonly x: Length; readonly y: Length };

/** Straight in by the cross slide, or along the flank by the compound at 29.5°. */
export type Infeed = 'straight' | 'flank';

/** How a thread is cut with a single point, and the three wires that it is measured over. */
export type Threading = {
  readonly wire: Length;
  readonly pitch: Length;
  readonly infeed: Infeed;
  readonly hand: 'right' | 'left';
};

/**
 * A cut as a worksheet hands it over.
 *
 * Units:   target rounded metal-on already; lower ≤ target ≤ upper. Sizes of round parts are diameters.
 */
export type CutOffer = {
  /** "Spacer, faced to length". */
  readonly name: string;
  /** The part it is cut on: "spacer". */
  readonly part: string;
  readonly operation: Operation;
  /** Which side of the size metal stands on. */
  readonly of: CutKind;
  /** The size before the cut, where it is known. */
  readonly present?: Length;
  readonly target: Length;
  readonly lower: Length;
  readonly upper: Length;
  /** Where the limits come from, in words. */
  readonly limitsFrom: string;
  readonly material?: MaterialId;
  /** The drill by its name, for a drilled hole. */
  readonly drill?: string;
  /** The thread by its designation, for a tapped one. */
  readonly thread?: string;
  /** Where it doesn't stand on the middle of the work: how far that is set over. */
  readonly setOver?: SetOver;
  /** Where it stands, for a hole that is set by coordinates. */
  readonly at?: OnWork;
  /** The compound is set over so far for it, from the work's axis: half of a taper's included angle. Floating point. */
  readonly compoundDegrees?: number;
  /** Of a thread, whose sizes are over the wires: `present` as if the wires lay there when the tool just touches. */
  readonly threading?: Threading;
};

/**
 * Metal that stands between two sizes, off the size: above zero where it can still be taken to get from one to the
 * other, below zero where it is gone.
 */
export function metalBetween(of: CutKind, from: Length, to: Length): Length {
  return leavesMoreWhenLarge(of) ? minus(from, to) : minus(to, from);
}

/** The size with so much metal taken off. */
export function sizeAfterTaking(of: CutKind, from: Length, take: Length): Length {
  return leavesMoreWhenLarge(of) ? minus(from, take) : plus(from, take);
}

/** The limit past which no metal is left. */
export function lastLimit({ of, lower, upper }: CutSizes): Length {
  return leavesMoreWhenLarge(of) ? lower : upper;
}

/** The limit that is come to first: from there on the size is inside. */
export function firstLimit({ of, lower, upper }: CutSizes): Length {
  return leavesMoreWhenLarge(of) ? upper : lower;
}
