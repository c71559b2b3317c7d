import type { Chain, Share } from './chain.ts';

export type AxleLayoutName = 'front-one-disc' | 'front-two-discs' | 'drum' | 'rear-sprocket' | 'trailer-hub';

/** The side the disc, the drum or the wheel's outer face is on. */
export type AxleSide = 'left' | 'right';

/** A size that may give when a spacer comes out below zero, and which way it can. */
export type Giver = { readonly of: string; readonly may: 'grow' | 'shrink' | 'both' };

/** Where the disc runs in its slot, and with which float: one for each disc of a layout. */
export type DiscInSlot = {
  readonly name: string;
  readonly float: string;
  readonly slotWidth: string;
  readonly discThickness: string;
  /** Of the disc's face from side to side, whole swing; a stand-in of tables/line-up-limits.ts counts while it isn't read. */
  readonly discRunout: string;
};

export type EndKind =
  | 'opening'
  | 'float'
  | 'wheel-place'
  | 'slot-middle'
  | 'disc-inside'
  | 'disc-outside'
  | 'pad-wear';

/**
 * Something that has to hold once the parts are in, as a sum of sizes and of the lengths the spacers really have: what
 * the limits of single parts share.
 *
 * Units:   opening: the room less the parts that fill it. float: the bracket's side play. wheel-place: a plane less where it is
 *          wanted, + to the right. slot-middle: the slot's middle less the disc's, with the bracket in mid-float, + outward.
 *          disc-inside and disc-outside: room at the disc's inner face with the bracket pushed out, at its outer face
 *          with it pushed in. pad-wear: side play less the pads' whole wear.
 */
export type EndCondition = {
  readonly kind: EndKind;
  /** The condition or the disc it is about. */
  readonly name: string;
  readonly is: readonly Share[];
};

/** An arrangement on an axle as data, drawn with the disc (or drum, or outer face) on the right. */
export type AxleLayout = Chain & {
  readonly name: AxleLayoutName;
  /** Whether it has one disc, drum or outer face that may be on the other side. */
  readonly hasSide: boolean;
  /** Sizes it can't do without. */
  readonly needs: readonly string[];
  /** What a size is taken as while it isn't given: nothing, or as another size. */
  readonly usual: Readonly<Record<string, 'nothing' | { readonly as: string }>>;
  /** Unknown lengths to be made, from left to right. */
  readonly spacers: readonly string[];
  /** The same in the order of work: each is cut to those before it, as they were measured; what sets a float comes last. */
  readonly workOrder: readonly string[];
  /** Those that can be left until the others are measured. */
  readonly last: readonly string[];
  readonly ends: readonly EndCondition[];
  readonly givers: readonly Giver[];
  /** What a share of a length becomes when the chain is mirrored; a length that isn't here stays. */
  readonly mirror: Readonly<Record<string, readonly Share[]>>;
  readonly discs: readonly DiscInSlot[];
  /** Two conditions that can't both hold unless the parts happen to, and what may give so that they do. */
  readonly rivals?: { readonly conditions: readonly [string, string]; readonly givers: readonly Giver[] };
};

/**
 * The chain with right and left changed over.
 *
 * Units:   the disc is on the right again; sizes that were measured to the right or from a left face are put in
 *          mirrored: o becomes −o, c becomes H − c. Solve it, and read its parts from right to left.
 */
export function mirrored<C extends AxleLayout>(layout: C): C {
  const sharesOf = (shares: readonly Share[]) => shares.flatMap((share) => mirroredShare(layout, share));
  return {
    ...layout,
    parts: layout.parts.map((part) => ({ ...part, length: sharesOf(part.length) })),
    datums: layout.datums.map((datum) => ({ ...datum, at: sharesOf(datum.at) })),
    conditions: layout.conditions.map((condition) => ({ ...condition, is: sharesOf(condition.is) })),
    ends: layout.ends.map((end) => ({ ...end, is: sharesOf(end.is) })),
  };
}

function mirroredShare({ mirror }: AxleLayout, share: Share): readonly Share[] {
  const becomes = mirror[share.of];
  if (!becomes) return [share];
  return becomes.map(({ of, top, bottom }) => ({
    of,
    top: top * share.top,
    bottom: bottom * share.bottom,
  }));
}
