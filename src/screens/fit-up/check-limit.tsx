import type { Entry } from '../../engine/length/entry.ts';
import { isMore } from '../../engine/length/length.ts';
import { asTyped } from '../../engine/length/show.ts';
import { changeCheck } from '../../store/kept/checks.ts';
import { go, hrefOf } from '../address.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { Button } from '../common/button.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { useStore } from '../common/store-context.ts';
import { useTold } from '../common/told.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import type { KnownCheck } from './check-data.ts';
import { limitSlip } from './limit-slip.ts';

type CheckLimitProps = { readonly known: KnownCheck; readonly side: 'lower' | 'upper' };

const OWN_SOURCE = 'your own limits';

/** The least or the most that a check may come to, by the pad. From then on it is the fitter's own. */
export function CheckLimit({ known: { check }, side }: CheckLimitProps) {
  const store = useStore();
  const draftKey = `check/${check.id}/${side}`;
  const draft = useSizeDraft(draftKey, useShownUnit());
  const answer = useTold();
  const here = { at: 'check', jobId: check.jobId, checkId: check.id } as const;
  const other = side === 'lower' ? check.upper : check.lower;
  const keep = (limit: Entry | undefined) => {
    // A limit that a worksheet worked out is replaced: what it was worked out from says nothing about the new one.
    const changes = { [side]: limit, limitsFrom: OWN_SOURCE, basis: undefined };
    return answer.told(changeCheck(store, check.id, changes, draftKey), () => go(here));
  };
  const take = (limit: Entry) => {
    const fault = other && crossed(side, limit, other);
    return fault === undefined ? keep(limit) : answer.say(fault);
  };
  return (
    <PadScreen
      title={side === 'lower' ? 'What is the least it may be?' : 'What is the most it may be?'}
      subtitle={check.name}
      back={{ href: hrefOf(here), to: 'the check' }}
      aside={check[side] && <Button onPress={() => keep(undefined)}>Leave out</Button>}
    >
      <AskedSize
        label={side === 'lower' ? 'Least' : 'Most'}
        draft={draft}
        answer={answer}
        slip={(limit) => limitSlip(check, side, limit)}
        onSize={take}
      />
    </PadScreen>
  );
}

function crossed(side: 'lower' | 'upper', entry: Entry, other: Entry): string | undefined {
  const [least, most] = side === 'lower' ? [entry, other] : [other, entry];
  return isMore(least.exact, most.exact)
    ? `The least, ${asTyped(least)}, would be more than the most, ${asTyped(most)}.`
    : undefined;
}
