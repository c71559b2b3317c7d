import { exactDecimalText, sameLength } from '../../engine/length/length.ts';
import { isInchThread, threadNamed } from '../../engine/thread/threads.ts';
import type { SizeInput } from '../../store/records.ts';
import type { WorksheetData } from './worksheet-data.ts';
import type { FieldPlan } from './worksheet-plan.ts';

/**
 * What else follows when one field is given: a bolt's thread gives the pin its nominal size and the joint its usual way
 * to run, where nothing was said about them yet. A measured pin is never replaced.
 */
export function fieldsBesides(
  { worksheet }: WorksheetData,
  field: FieldPlan,
  value: string | undefined,
): Readonly<Record<string, SizeInput | string>> {
  const thread =
    field.name === 'thread' && worksheet.kind === 'hole-and-pin' && value !== undefined
      ? threadNamed(value)
      : undefined;
  if (!thread) return {};
  const unit = isInchThread(thread) ? 'in' : 'mm';
  const nominal = {
    from: 'typed',
    exact: thread.major,
    typed: `${exactDecimalText(thread.major, unit)} ${unit}`,
    unit,
  } as const;
  return {
    ...(isNominalOfOldThread(worksheet) && { pin: nominal }),
    ...(worksheet.choices['joint'] === undefined && { joint: 'located' }),
  };
}

/** No pin yet, or only the nominal size that an earlier thread gave it. */
function isNominalOfOldThread({ sizes, choices }: WorksheetData['worksheet']): boolean {
  const pin = sizes['pin'];
  if (pin === undefined) return true;
  const old = choices['thread'] === undefined ? undefined : threadNamed(choices['thread']);
  return (
    old !== undefined && pin.from === 'typed' && pin.tool === undefined && sameLength(pin.exact, old.major)
  );
}
