import type { Block } from '../account.ts';
import type { Answered } from '../worksheet.ts';
import { outfitBlocks } from './account-outfit.ts';
import { trailerBlocks } from './account-trailer.ts';
import type { AlignmentAnswer, AlignmentQuestion } from './alignment.ts';
import type { AlignmentFields } from './fields.ts';
import { whyOfAlignment } from './why-of-alignment.ts';

export type AlignmentAnswered = Answered<AlignmentFields, AlignmentQuestion, AlignmentAnswer>;

/** What is said of an outfit or a trailer: how it stands, what is moved by how much, and what is set before what. */
export function alignmentAccount(worked: AlignmentAnswered): readonly (Block | undefined)[] {
  const { question, answer, given, unit } = worked;
  return [
    ...(answer.of === 'outfit' && question.of === 'outfit'
      ? outfitBlocks({ question, answer, given, unit })
      : []),
    ...(answer.of === 'trailer' && question.of === 'trailer'
      ? trailerBlocks({ question, answer, given, unit })
      : []),
    { is: 'caution', of: 'alignment' },
    { is: 'why', lines: whyOfAlignment(question, answer, unit) },
  ];
}
