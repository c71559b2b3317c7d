import { readHours, readMoney, type MoneyField } from '../../engine/job/money.ts';
import { sayMoney } from '../../engine/job/say-money.ts';
import type { Result } from '../../engine/length/refusal.ts';
import { AskedPad } from '../common/asked-pad.tsx';
import { Button } from '../common/button.tsx';
import type { Answer } from '../common/told.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import '../worksheets/size-entry.css';

type MoneyPadProps = {
  readonly label: string;
  readonly field: MoneyField;
  readonly sign: string;
  readonly draftKey: string;
  readonly commit?: string;
  /** Where it is said why it could not be kept. */
  readonly answer: Answer;
  /** The tidied text. */
  readonly onText: (text: string) => unknown;
};

/** Money or time on the usual pad; for hours with a key for the colon of 1:30. */
export function MoneyPad({ field, sign, draftKey, onText, ...pad }: MoneyPadProps) {
  const draft = useSizeDraft(draftKey, 'mm');
  const { typed } = draft.half;
  return (
    <AskedPad
      {...pad}
      draft={draft}
      number={{ unit: unitOf(field, sign), belowZero: field === 'amount' }}
      read={(half) => readText(half.typed, field, sign)}
      onRead={onText}
    >
      {field === 'hours' && (
        <div class="size-entry-extras">
          <Button
            disabled={!/^\d+$/.test(typed)}
            onPress={() => draft.change({ ...draft.half, typed: `${typed}:` })}
          >
            hours : minutes
          </Button>
        </div>
      )}
    </AskedPad>
  );
}

function readText(typed: string, field: MoneyField, sign: string): Result<string, string> {
  const read = field === 'hours' ? readHours(typed) : readMoney(typed, field, sign);
  return read.ok ? { ok: true, value: read.value.text } : { ok: false, refusal: sayMoney(read.refusal) };
}

function unitOf(field: MoneyField, sign: string): string {
  if (field === 'hours') return 'h';
  return field === 'rate' ? `${sign}/h` : sign;
}
