import type { Verdict } from '../reading/verdict.ts';

/**
 * All that a worksheet says, in the order it is said: drawn on the phone, printed on the sheet. The words are made once,
 * here; the two renderers only place them.
 */
export type Account = readonly Block[];

export type Block =
  | VerdictBlock
  | LeadBlock
  | ProofBlock
  | SaidBlock
  | WayBlock
  | WhyBlock
  | { readonly is: 'caution'; readonly of: CautionName }
  /** What only one kind has, drawn by a component in that kind's folder of the screens. */
  | { readonly is: 'extra'; readonly name: string };

/** One line: what is so, and what is wanted. */
export type VerdictBlock = {
  readonly is: 'verdict';
  readonly kind: Verdict['kind'];
  readonly headline: string;
};

/** The one figure that is cut, bought or set. The first of an account is the large one; others are ways beside it. */
export type LeadBlock = {
  readonly is: 'lead';
  /** "Face outer spacer". */
  readonly label: string;
  readonly figure: string;
  /** "in off", "mm". */
  readonly unit: string;
  /** "1.155 → 1.123". */
  readonly change?: string | undefined;
  /** "good from 1.121 to 1.125". */
  readonly limits?: string | undefined;
  /** The name of the cut whose target it shows; figure and cut are one value. */
  readonly cut?: string | undefined;
};

/** To what these tools prove it, and which check or tool settles it. */
export type ProofBlock = { readonly is: 'proof'; readonly sentence: string };

/** A sentence beside the figure; `on` where only one of the two has room or need for it. */
export type SaidBlock = {
  readonly is: 'said';
  readonly sentence: string;
  readonly on?: 'phone' | 'paper' | undefined;
};

/** Another way to the same end: what it takes, or why it is ruled out. */
export type WayBlock = {
  readonly is: 'way';
  readonly title: string;
  readonly detail: string;
  readonly stands: 'open' | 'asks' | 'out';
  /** The field that has to be given first. */
  readonly asks?: string | undefined;
};

export type WhyLine = {
  readonly what: string;
  readonly how: string;
  readonly source?: string | undefined;
};

/** How the figures came about, with their sources: folded on the phone, small print on paper. */
export type WhyBlock = { readonly is: 'why'; readonly lines: readonly WhyLine[] };

export type CautionName = 'lathe' | 'hole' | 'insert' | 'bushing' | 'strength';

/** The blocks of one sort, in their order. */
export function blocksOf<Is extends Block['is']>(
  account: Account,
  is: Is,
): readonly Extract<Block, { readonly is: Is }>[] {
  return account.filter((block): block is Extract<Block, { readonly is: Is }> => block.is === is);
}
