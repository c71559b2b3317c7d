import type { CutWay } from '../cut/cuts-of-way.ts';
import { HOLE_WEAKER, sayStrengthOfCuts } from '../cut/say-strength.ts';
import { blocksOf, type Account, type CautionName, type StrengthBlock } from './account.ts';

// These say what a larger hole does in their own words.
const SAY_OF_HOLES: ReadonlySet<CautionName> = new Set(['insert', 'bushing', 'hole', 'strength']);

/** A sentence about strength, where there is one. */
export function strengthBlocks(sentences: readonly string[]): readonly StrengthBlock[] {
  return sentences.filter((one) => one !== '').map((sentence) => ({ is: 'strength', sentence }));
}

/**
 * An account with what is said of the strength of every part it offers to take metal off: of its own ways and of its cuts,
 * each sentence once. Phone and paper show these as they are, never folded.
 */
export function withStrength(account: Account, cuts: readonly CutWay[]): Account {
  const isSaid = blocksOf(account, 'caution').some(({ of }) => SAY_OF_HOLES.has(of));
  const sentences = new Set([
    ...blocksOf(account, 'strength').map(({ sentence }) => sentence),
    ...sayStrengthOfCuts(cuts.flatMap(({ offers }) => offers)),
  ]);
  const blocks = strengthBlocks([...sentences].filter((one) => one !== HOLE_WEAKER || !isSaid));
  const others = account.filter(({ is }) => is !== 'strength');
  const isWhyLast = others.at(-1)?.is === 'why';
  return isWhyLast ? [...others.slice(0, -1), ...blocks, ...others.slice(-1)] : [...others, ...blocks];
}
