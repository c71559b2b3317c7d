import type { CutWay } from '../cut/cuts-of-way.ts';
import type { Verdict } from '../reading/verdict.ts';
import { blocksOf, type Account } from './account.ts';

/** A verdict with its sentence; no answer while something is lacking, and none judged where nothing has limits. */
export type Found = {
  readonly found: Verdict['kind'] | 'no-answer' | 'not-judged';
  readonly said: string;
};

export type Standing = 'lacking' | 'impossible' | 'refused' | 'answered';

/** The verdict that an account leads with. */
export function foundIn(account: Account, standing: Standing): Found {
  if (standing === 'lacking') return { found: 'no-answer', said: 'A size it needs is missing.' };
  const [verdict] = blocksOf(account, 'verdict');
  return verdict ? { found: verdict.kind, said: verdict.headline } : { found: 'not-judged', said: '' };
}

/** What is cut may be cut for nothing while the verdict can't be called: nobody is told to before that is settled. */
export function asSureAs(verdict: () => Found, ways: readonly CutWay[]): readonly CutWay[] {
  if (ways.every(({ unsure }) => unsure) || verdict().found !== 'too-close') return ways;
  return ways.map((way) => ({ ...way, unsure: true as const }));
}
