import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { readHours, readMoney, type MoneyField } from '../../engine/job/money.ts';
import { sayMoney } from '../../engine/job/say-money.ts';
import { Button } from '../common/button.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize } from '../common/use-settings.ts';
import '../worksheets/size-entry.css';

type MoneyPadProps = {
  readonly label: string;
  readonly field: MoneyField;
  readonly sign: string;
  readonly draftKey: string;
  readonly commit: string;
  /** The tidied text; returns why it could not be kept. */
  readonly onText: (text: string) => Promise<string>;
};

/** Money or time on the usual pad; for hours with a key for the colon of 1:30. */
export function MoneyPad({ label, field, sign, draftKey, commit, onText }: MoneyPadProps): ComponentChildren {
  const draft = useSizeDraft(draftKey, 'mm');
  const padSize = usePadSize();
  const [trouble, setTrouble] = useState('');
  const take = async () => {
    const typed = draft.half.typed;
    const read = field === 'hours' ? readHours(typed) : readMoney(typed, field, sign);
    setTrouble(read.ok ? await onText(read.value.text) : sayMoney(read.refusal));
  };
  const addColon = () => draft.change({ ...draft.half, typed: `${draft.half.typed}:` });
  return (
    <SizePad
      label={label}
      half={draft.half}
      plain={unitOf(field, sign)}
      belowZero={field === 'amount'}
      padSize={padSize}
      onChange={(half) => {
        setTrouble('');
        draft.change(half);
      }}
      commit={{ text: commit, onPress: () => take() }}
      {...(trouble !== '' && { message: <p role="alert">{trouble}</p> })}
    >
      {field === 'hours' && (
        <div class="size-entry-extras">
          <Button disabled={!/^\d+$/.test(draft.half.typed)} onPress={addColon}>
            hours : minutes
          </Button>
        </div>
      )}
    </SizePad>
  );
}

function unitOf(field: MoneyField, sign: string): string {
  if (field === 'hours') return 'h';
  return field === 'rate' ? `${sign}/h` : sign;
}
