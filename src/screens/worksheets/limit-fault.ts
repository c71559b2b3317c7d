import { isLess, isMore, type Length } from '../../engine/length/length.ts';
import { show } from '../../engine/length/show.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import { givenOf } from './given-of.ts';
import { exactSize, type WorksheetData } from './worksheet-data.ts';

/** Why a limit or an aim just given can't stand beside those given before; undefined where it can. */
export function limitFault(data: WorksheetData, name: string, size: Length): string | undefined {
  const given = (other: string) => (other === name ? size : exactSize(data, data.worksheet.sizes[other]));
  const [lower, upper, aim] = [given('lower'), given('upper'), given('aim')];
  const { unit } = data;
  // An aim is held against the usual limits too, where there are no own ones.
  const { kind } = data.worksheet;
  const usual = worksheetOf(kind)?.usualLimits(givenOf(data));
  const [least, most] = [lower ?? usual?.lower, upper ?? usual?.upper];
  if (lower && upper && isMore(lower, upper)) {
    return `The least, ${show(lower, unit)}, would be more than the most, ${show(upper, unit)}. Change one of them.`;
  }
  if (aim && least && isLess(aim, least))
    return `The aim, ${show(aim, unit)}, would lie below the least, ${show(least, unit)}.`;
  if (aim && most && isMore(aim, most))
    return `The aim, ${show(aim, unit)}, would lie above the most, ${show(most, unit)}.`;
  return undefined;
}
