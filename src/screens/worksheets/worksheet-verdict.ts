import { withAssumed } from '../../engine/reading/say-assumed.ts';
import { assumedIn } from './assumed.ts';
import type { WorksheetData } from './worksheet-data.ts';
import { judgeWorksheet, type WorksheetVerdict } from './worksheet-judge.ts';

export type { WorksheetVerdict } from './worksheet-judge.ts';

/** The verdict of a worksheet of any kind, the same that its own page leads with, and in the same line what was assumed. */
export function worksheetVerdict(data: WorksheetData): WorksheetVerdict {
  const verdict = judgeWorksheet(data);
  const isJudged = verdict.found === 'good' || verdict.found === 'too-close' || verdict.found === 'no-good';
  if (!isJudged) return verdict;
  const words = assumedIn(data).map((one) => one.words);
  return { ...verdict, said: withAssumed(verdict.said, words) };
}
