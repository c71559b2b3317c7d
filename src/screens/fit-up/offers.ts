import type { CheckOffer } from '../../engine/reading/check-offer.ts';
import { centreCheckOf, provesTooLittle } from '../../engine/worksheets/axle-line-up/checks-of-line-up.ts';
import { axleQuestion } from '../../engine/worksheets/axle-line-up/question.ts';
import { offerInShopWords } from '../../engine/worksheets/worksheet.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import { givenOf } from '../worksheets/given-of.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';

/** What can be checked on the machine of a worksheet's answer, with its own limits; nothing while it has no answer. */
export function offersOf(data: WorksheetData): readonly CheckOffer[] {
  return worksheetOf(data.worksheet.kind)?.checks(givenOf(data)) ?? [];
}

/** What of an axle is to be read in place of a check whose limits, as they are kept, would let pass what must not be. */
export function insteadOfKept(
  kept: Pick<CheckOffer, 'sizeName' | 'limits'>,
  data: WorksheetData,
): CheckOffer | undefined {
  const question = data.worksheet.kind === 'axle-line-up' ? axleQuestion(givenOf(data)) : undefined;
  if (!question || !provesTooLittle(kept, question)) return undefined;
  const centre = centreCheckOf(question);
  return (
    offersOf(data).find((offer) => offer.sizeName === kept.sizeName) ??
    (centre && offerInShopWords(centre, data.unit))
  );
}
