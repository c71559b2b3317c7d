import { blocksOf, type Account, type LeadBlock, type VerdictBlock, type WayBlock } from './account.ts';

/**
 * What of an account stands on the phone's page before anything is unfolded. The renderer places it and the law of words
 * reads it, so that both mean the same page.
 */
export type OpenPage = {
  readonly verdict: VerdictBlock | undefined;
  /** The verdict with what it hangs on, without what is to be done about it. */
  readonly headline: string | undefined;
  readonly lead: LeadBlock | undefined;
  readonly ranked: readonly WayBlock[];
  readonly ask: string | undefined;
  readonly said: readonly string[];
  /** Sentences that there is no room for: behind Why. */
  readonly further: readonly string[];
};

// Ranked ways that stand on the page; the others are folded.
const MOST_RANKED = 3;
// Nobody reads more at a bench before the hand moves.
const MOST_SENTENCES = 5;
// Said beside verdict and figure: more lines push the key off a small screen.
const MOST_SAID = 2;

/** The page of an answer: at most five sentences, the verdict's and the limits' among them; `withAssumed` says what it hangs on. */
export function openPageOf(
  account: Account,
  withAssumed: (said: string) => string = (said) => said,
): OpenPage {
  const [verdict, ...others] = blocksOf(account, 'verdict');
  const [bare, toDo] = verdict ? inTwo(verdict.headline) : [];
  const headline = bare === undefined ? undefined : withAssumed(bare);
  const [lead] = blocksOf(account, 'lead');
  const ask = blocksOf(account, 'ask')[0]?.sentence;
  const proofs = blocksOf(account, 'proof');
  const sentences = [
    ...proofs.map(({ sentence }) => sentence),
    toDo,
    ...blocksOf(account, 'said').flatMap(({ on, sentence }) => (on === 'paper' ? [] : [sentence])),
  ].filter((sentence) => sentence !== undefined);
  const room =
    MOST_SENTENCES - sentencesOf(headline ?? '').length - (lead ? 1 : 0) - sentencesOf(ask ?? '').length;
  const count = Math.min(MOST_SAID, fitting(sentences, room));
  return {
    verdict,
    headline,
    lead,
    ranked: leadingWays(blocksOf(account, 'way')),
    ask,
    said: sentences.slice(0, count),
    further: [
      ...others.map((other) => other.headline),
      ...sentences.slice(count),
      ...proofs.flatMap(({ more }) => (more === undefined ? [] : [more])),
    ],
  };
}

/** Sentence by sentence: a full stop inside a figure ends none. No pattern that looks behind: Safari 16.3 reads none. */
export function sentencesOf(text: string): readonly string[] {
  const sentences: string[] = [];
  let begins = 0;
  for (const { index } of text.matchAll(/[.?!] (?=[\p{Lu}\d])/gu)) {
    sentences.push(text.slice(begins, index + 1));
    begins = index + 2;
  }
  return [...sentences, text.slice(begins)].filter((sentence) => sentence !== '');
}

/** How many of these, each kept whole, have no more sentences than there is room for. */
function fitting(texts: readonly string[], room: number): number {
  const ends = texts.map((_, index) =>
    texts.slice(0, index + 1).reduce((so, text) => so + sentencesOf(text).length, 0),
  );
  return ends.filter((end) => end <= room).length;
}

/** The first three in their order, and the first that is ruled out though it was ranked: why not is an answer too. */
function leadingWays(ways: readonly WayBlock[]): readonly WayBlock[] {
  const ranked = ways
    .filter(({ rank }) => rank !== undefined)
    .toSorted((a, b) => (a.rank ?? 0) - (b.rank ?? 0));
  return [
    ...ranked.filter(({ stands }) => stands !== 'out').slice(0, MOST_RANKED),
    ...ranked.filter(({ stands }) => stands === 'out').slice(0, 1),
  ];
}

/** The verdict itself, and what is to be done about it. */
function inTwo(headline: string): readonly [string, string?] {
  const [, first = headline, toDo] = /^(.*?\.) ([A-Z].*)$/s.exec(headline) ?? [];
  return toDo === undefined ? [first] : [first, toDo];
}
