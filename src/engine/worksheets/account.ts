import type { Length } from '../length/length.ts';
import type { Limits, Verdict } from '../reading/verdict.ts';

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
  | StrengthBlock
  | AskBlock
  | WayBlock
  | RowsBlock
  | LineBlock
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
export type ProofBlock = {
  readonly is: 'proof';
  readonly sentence: string;
  /** The same at full length, where a glance leaves something out: under Why, and on paper. */
  readonly more?: string | undefined;
};

/** A sentence beside the figure; `on` where only one of the two has room or need for it. */
export type SaidBlock = {
  readonly is: 'said';
  readonly sentence: string;
  readonly on?: 'phone' | 'paper' | undefined;
};

/** That a part which carries load loses metal by what is offered: in sight on phone and paper, never folded or left out. */
export type StrengthBlock = { readonly is: 'strength'; readonly sentence: string };

/** One thing first: the size or choice without which the answer can't be acted on. Its key is the page's main one. */
export type AskBlock = {
  readonly is: 'ask';
  readonly sentence: string;
  /** The field that is asked for. */
  readonly field: string;
  /** The words of the key: "Give the wall". */
  readonly key: string;
};

/** A way to the same end: what it takes, or why it is ruled out. */
export type WayBlock = {
  readonly is: 'way';
  readonly title: string;
  readonly detail: string;
  readonly stands: 'open' | 'asks' | 'out';
  /** The field that has to be given first. */
  readonly asks?: string | undefined;
  /** Its place where ways are ranked: these stand on the page, the first three of them unfolded. */
  readonly rank?: number | undefined;
  /** The name of the cut that it takes, whose target it shows; `goes` is the way to cut that this cut is of. */
  readonly cut?: string | undefined;
  readonly goes?: string | undefined;
};

/** Figures that belong together: the lengths of all spacers, limits of hole and pin, before and after. */
export type RowsBlock = {
  readonly is: 'rows';
  readonly title: string;
  readonly rows: readonly {
    readonly what: string;
    readonly figure: string;
    /** The limits, or what is done with it. */
    readonly more?: string | undefined;
    /** The name of the cut whose target it shows. */
    readonly cut?: string | undefined;
  }[];
  /** Stands on the page as the answer itself; otherwise folded behind Why. */
  readonly leads?: true | undefined;
};

/** The picture of a verdict: limits, value, and the band that the readings leave. Under Why on the phone. */
export type LineBlock = {
  readonly is: 'line';
  readonly label: string;
  readonly value: Length;
  readonly halfWidth: Length;
  readonly limits: Limits;
  readonly verdict: Verdict['kind'];
};

/** `way`: of one way to cut alone; once another one was gone it is not printed. */
export type WhyLine = {
  readonly way?: string | undefined;
  readonly what: string;
  readonly how: string;
  readonly source?: string | undefined;
};

/** How the figures came about, with their sources: folded on the phone, small print on paper. */
export type WhyBlock = { readonly is: 'why'; readonly lines: readonly WhyLine[] };

export type CautionName =
  | 'lathe'
  | 'hole'
  | 'insert'
  | 'bushing'
  | 'engagement'
  | 'steering'
  | 'alignment'
  | 'strength'
  | 'bracket'
  | 'plate';

/** The blocks of one sort, in their order. */
export function blocksOf<Is extends Block['is']>(
  account: Account,
  is: Is,
): readonly Extract<Block, { readonly is: Is }>[] {
  return account.filter((block): block is Extract<Block, { readonly is: Is }> => block.is === is);
}

const ASKS_METAL: ReadonlySet<Block['is']> = new Set(['lead', 'way', 'ask', 'extra', 'strength']);

/** An account once what it asks for was cut: the same metal isn't asked for a second time. */
export function withoutMetal(account: Account): Account {
  return account.filter(({ is }) => !ASKS_METAL.has(is));
}
