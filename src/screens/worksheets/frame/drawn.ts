import type { ComponentChildren } from 'preact';

/**
 * The room a drawing has, in CSS pixels, so that its letters keep their size on every phone: a drawing lays itself out in it
 * instead of being shrunk.
 */
export type DrawingBox = { readonly width: number; readonly height: number };

/** A size written into a drawing, where it stands and what is pressed to change it. */
export type DrawnSize = {
  /** What the worksheet's address calls it: a field's name, `part/<id>`. */
  readonly field: string;
  readonly name: string;
  /** How it is heard, where its name is only a letter. */
  readonly said?: string | undefined;
  /** Left out while it isn't given: then its name stands alone. */
  readonly figure?: string | undefined;
  /** Where its words stand: x by `anchor`, y the base line of the name; the figure stands under it, or behind it. */
  readonly x: number;
  readonly y: number;
  readonly anchor?: 'start' | 'middle' | 'end' | undefined;
  readonly beside?: true | undefined;
  /** Only its figure has room: the name is heard, not drawn. */
  readonly unnamed?: true | undefined;
  /** Brass: the one thing that changes. */
  readonly changes?: boolean | undefined;
};

/** A drawing of a worksheet as it stands: lines, sizes that can be pressed, and the running figure. */
export type Drawn = {
  readonly shapes: ComponentChildren;
  readonly sizes: readonly DrawnSize[];
  /** `left .600`, `slop .018`: what the sizes so far come to; its name over it where the sizes beside it have theirs so. */
  readonly running?:
    | { readonly text: string; readonly x: number; readonly y: number; readonly name?: string | undefined }
    | undefined;
  /** The drawing in words, for whoever can't see it. */
  readonly words: string;
};
