import { useState } from 'preact/hooks';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { isMore } from '../../engine/length/length.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { asTyped } from '../../engine/length/show.ts';
import { changeCheck } from '../../store/checks.ts';
import { sayStore } from '../../store/say-store.ts';
import { go, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { useStore } from '../common/store-context.ts';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize, useShownUnit } from '../common/use-settings.ts';
import type { KnownCheck } from './check-data.ts';

type CheckLimitProps = { readonly known: KnownCheck; readonly side: 'lower' | 'upper' };

const OWN_SOURCE = 'your own limits';

/** The least or the most that a check may come to, by the pad. From then on it is the fitter's own. */
export function CheckLimit({ known: { check }, side }: CheckLimitProps) {
  const store = useStore();
  const unit = useShownUnit();
  const padSize = usePadSize();
  const draftKey = `check/${check.id}/${side}`;
  const draft = useSizeDraft(draftKey, unit);
  const [trouble, setTrouble] = useState<string>();
  const here = { at: 'check', jobId: check.jobId, checkId: check.id } as const;
  const other = side === 'lower' ? check.upper : check.lower;
  const take = async (entry: Entry | undefined) => {
    // A limit that a worksheet worked out is replaced: what it was worked out from says nothing about the new one.
    const kept = await changeCheck(
      store,
      check.id,
      { [side]: entry, limitsFrom: OWN_SOURCE, basis: undefined },
      draftKey,
    );
    if (kept.ok) go(here);
    else setTrouble(sayStore(kept.refusal));
  };
  const commit = () => {
    const entry = readEntry(draft.half.typed, { unit: draft.half.unit });
    if (!entry.ok) return setTrouble(sayEntry(entry.refusal));
    const fault = other && crossed(side, entry.value, other);
    return fault === undefined ? take(entry.value) : setTrouble(fault);
  };
  const now = check[side];
  return (
    <div class="pad-screen">
      <Page
        title={side === 'lower' ? 'What is the least it may be?' : 'What is the most it may be?'}
        subtitle={check.name}
        back={{ href: hrefOf(here), to: 'the check' }}
        aside={now && <Button onPress={() => take(undefined)}>Leave out</Button>}
      >
        <SizePad
          label={side === 'lower' ? 'Least' : 'Most'}
          half={draft.half}
          padSize={padSize}
          onChange={(half) => {
            setTrouble(undefined);
            draft.change(half);
          }}
          commit={{ text: 'Use it', onPress: commit }}
          {...(trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
        />
      </Page>
    </div>
  );
}

function crossed(side: 'lower' | 'upper', entry: Entry, other: Entry): string | undefined {
  const [least, most] = side === 'lower' ? [entry, other] : [other, entry];
  return isMore(least.exact, most.exact)
    ? `The least, ${asTyped(least)}, would be more than the most, ${asTyped(most)}.`
    : undefined;
}
