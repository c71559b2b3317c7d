import { inPoints, withoutMark } from '../../engine/length/decimal-text.ts';
import type { AssemblyStep } from '../../store/base/records.ts';
import { isOlderThanSizes, type Ground } from '../older/older-than-sizes.ts';
import type { SheetData } from '../sheet/sheet-data.ts';
import { worksheetDataOf } from '../sheet/worksheet-data-of.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { stepsFromWorksheet, type StepOffer } from './steps-from-worksheet.ts';

/** A worksheet's steps, each with a name that stays when its figures are others, or are written otherwise. */
export function namedSteps(
  data: WorksheetData,
): readonly { readonly name: string; readonly offer: StepOffer }[] {
  const stems = inPoints(() => stepsFromWorksheet(data).map(({ text }) => stemOf(text)));
  return stepsFromWorksheet(data).map((offer, index) => {
    const stem = stems[index] ?? '';
    const before = stems.slice(0, index).filter((one) => one === stem).length;
    return { offer, name: before === 0 ? stem : `${stem} ${before + 1}` };
  });
}

// What is done, without what it is done to: "Fit spacer A" of "Fit spacer A, 1.86 in".
function stemOf(text: string): string {
  return text
    .replace(/,.*$/s, '')
    .replace(/[\d.]+/g, '#')
    .slice(0, 200);
}

/** The step as its worksheet words it now; nothing where the worksheet has no such step any more. */
export function wordedNow({ workedOut }: Pick<AssemblyStep, 'workedOut'>, data: WorksheetData) {
  return namedSteps(data).find(({ name }) => name === workedOut?.offer)?.offer;
}

/** Whether a step's words are older than the sizes they name; a change that leaves them as they are is none. */
export function areWordsOlder(step: AssemblyStep, ground: Ground, data: WorksheetData | undefined): boolean {
  if (!isOlderThanSizes({ of: 'words', step }, ground)) return false;
  const now = data && wordedNow(step, data);
  const isSame = (one: string | undefined, other: string | undefined) =>
    withoutMark(one ?? '') === withoutMark(other ?? '');
  return !now || !isSame(now.text, step.text) || !isSame(now.orientation, step.orientation);
}

/**
 * The step as it stands: one that was done before a size behind it changed is to be done again. It follows from what the
 * step keeps of that day, so it stands so on every phone.
 */
export function asItStands(step: AssemblyStep, ground: Ground): AssemblyStep {
  const { done, ...rest } = step;
  return done && isOlderThanSizes({ of: 'done', step }, ground) ? { ...rest, wasDone: done } : step;
}

/** Whether a step was done by sizes that are others by now, or its words may be. */
export function isStepOlder(step: AssemblyStep, ground: Ground): boolean {
  return isOlderThanSizes({ of: 'done', step }, ground) || isOlderThanSizes({ of: 'words', step }, ground);
}

/** The same for certain, of a job that was read whole. */
export function isStepChanged(step: AssemblyStep, data: SheetData): boolean {
  const worksheet = data.worksheets.find(({ id }) => id === step.workedOut?.worksheetId);
  return (
    asItStands(step, data) !== step ||
    areWordsOlder(step, data, worksheet && worksheetDataOf(worksheet, data))
  );
}
