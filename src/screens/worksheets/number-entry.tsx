import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { readNumber, sayNumber, type NumberBounds } from '../../engine/length/number-entry.ts';
import { SizePad } from '../common/size-pad.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize } from '../common/use-settings.ts';

type NumberEntryProps = {
  readonly label: string;
  readonly draftKey: string;
  readonly bounds: NumberBounds;
  /** Whether it was kept: what wasn't stands in the field again. */
  readonly onNumber: (text: string) => Promise<boolean>;
  /** Where a foot switch steps on to. */
  readonly onNext?: (() => void) | undefined;
  readonly children?: ComponentChildren;
};

/** A number that is no length, on the same pad: degrees, a temperature, a strength. */
export function NumberEntry({ label, draftKey, bounds, onNumber, onNext, children }: NumberEntryProps) {
  const draft = useSizeDraft(draftKey, 'mm');
  const padSize = usePadSize();
  const [trouble, setTrouble] = useState<string>();
  const commit = async () => {
    const { half } = draft;
    const number = readNumber(half.typed, bounds);
    if (!number.ok) return setTrouble(sayNumber(number.refusal));
    draft.clear();
    if (!(await onNumber(number.value.text))) draft.putBack(half);
  };
  return (
    <SizePad
      label={label}
      half={draft.half}
      plain={bounds.unit}
      whole={bounds.whole === true}
      belowZero={bounds.least < 0}
      padSize={padSize}
      onChange={(half) => {
        setTrouble(undefined);
        draft.change(half);
      }}
      commit={{ text: 'Use it', onPress: commit }}
      onNext={onNext}
      {...(trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
    >
      {children}
    </SizePad>
  );
}
