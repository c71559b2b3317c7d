import type { ComponentChildren } from 'preact';
import type { Result } from '../../engine/length/refusal.ts';
import { readNumber, sayNumber, type NumberBounds } from '../../engine/length/number-entry.ts';
import { AskedPad } from '../common/asked-pad.tsx';
import { useTold } from '../common/told.tsx';
import { useSizeDraft } from '../common/use-draft.ts';

type NumberEntryProps = {
  readonly label: string;
  readonly draftKey: string;
  readonly bounds: NumberBounds;
  /** Whether it was kept: what wasn't stands in the field again. */
  readonly onNumber: (text: string) => Promise<boolean>;
  readonly commit?: string;
  /** Where a foot switch steps on to. */
  readonly onNext?: (() => void) | undefined;
  readonly children?: ComponentChildren;
};

/** A number that is no length, on the same pad: degrees, a temperature, a strength, a count. */
export function NumberEntry({ draftKey, bounds, onNumber, ...pad }: NumberEntryProps) {
  const draft = useSizeDraft(draftKey, 'mm');
  const answer = useTold();
  const take = async (text: string) => {
    const { half } = draft;
    draft.clear();
    if (!(await onNumber(text))) draft.putBack(half);
  };
  const { unit, whole, least } = bounds;
  return (
    <AskedPad
      {...pad}
      draft={draft}
      answer={answer}
      number={{ unit, whole, belowZero: least < 0 }}
      read={({ typed }) => readText(typed, bounds)}
      onRead={take}
    />
  );
}

function readText(typed: string, bounds: NumberBounds): Result<string, string> {
  const number = readNumber(typed, bounds);
  return number.ok
    ? { ok: true, value: number.value.text }
    : { ok: false, refusal: sayNumber(number.refusal) };
}
