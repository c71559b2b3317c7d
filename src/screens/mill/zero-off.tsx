import type { Entry } from '../../engine/length/entry.ts';
import { negate } from '../../engine/length/length.ts';
import { sayCoordinate } from '../../engine/cut/say-spot.ts';
import { shiftZero } from '../../store/kept/mill-cuts.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { Page } from '../common/page.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { useTold } from '../common/told.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import type { LatheCut } from '../lathe/use-lathe-cut.ts';
import { isDrilled, useAtMill } from './mill-hole.ts';

type ZeroProps = { readonly at: LatheCut; readonly field: string };
type Way = { readonly axis: 'x' | 'y'; readonly side: 'much' | 'little' };

const WAYS: readonly Way[] = [
  { axis: 'x', side: 'much' },
  { axis: 'x', side: 'little' },
  { axis: 'y', side: 'much' },
  { axis: 'y', side: 'little' },
];

/** A zero that was found to be wrong: what a slide reads at the right one, for all the holes that are left. */
export function ZeroOff({ at, field }: ZeroProps) {
  const way = WAYS.find(({ axis, side }) => field === `zero/${axis}-${side}`);
  return way ? <ShiftPad key={field} at={at} way={way} /> : <ZeroPage at={at} />;
}

function ZeroPage({ at: { cut, job } }: { readonly at: LatheCut }) {
  const unit = useShownUnit();
  const mill = useAtMill(cut);
  const left = mill?.holes.filter((one) => !isDrilled(one)).length ?? 0;
  const here = { at: 'lathe', jobId: job.id, cutId: cut.id } as const;
  return (
    <Page
      title="Zero was off"
      subtitle={`shifts the ${left} ${left === 1 ? 'hole' : 'holes'} left; drilled ones stay`}
      back={{ href: hrefOf(here), to: 'the mill' }}
    >
      <p class="zero-off-how">Leave the dials as they are. Go to the right zero and read them.</p>
      <ul>
        {WAYS.map(({ axis, side }) => (
          <li key={`${axis}-${side}`}>
            <Row
              href={hrefOf({ ...here, field: `zero/${axis}-${side}` })}
              title={`${axis} reads ${side === 'much' ? 'over zero' : 'under zero'}`}
              {...(cut.zeroShift && {
                detail: `shifted now by ${sayCoordinate(cut.zeroShift[axis].exact, unit)}`,
              })}
            />
          </li>
        ))}
      </ul>
    </Page>
  );
}

function ShiftPad({ at: { cut, job }, way: { axis, side } }: { readonly at: LatheCut; readonly way: Way }) {
  const store = useStore();
  const mill = useAtMill(cut);
  const draft = useSizeDraft(`mill/${cut.id}/zero-${axis}-${side}`, useShownUnit());
  const answer = useTold();
  const here = { at: 'lathe', jobId: job.id, cutId: cut.id } as const;
  const take = (entry: Entry) => {
    const reads =
      side === 'much' ? entry : { ...entry, exact: negate(entry.exact), typed: `-${entry.typed}` };
    const ids = (mill?.holes ?? []).filter((one) => !isDrilled(one)).map(({ id }) => id);
    return answer.told(shiftZero(store, ids, { axis, reads }), () => {
      draft.clear();
      announce(`Zero of ${axis} shifted for ${ids.length} holes. It can be undone.`);
      go(here);
    });
  };
  return (
    <PadScreen
      title={`${axis} at the right zero`}
      subtitle={side === 'much' ? 'reads so much over zero' : 'reads so much under zero'}
      back={{ href: hrefOf({ ...here, field: 'zero' }), to: 'zero was off' }}
    >
      <AskedSize label={`What ${axis} reads at the right zero`} draft={draft} answer={answer} onSize={take} />
    </PadScreen>
  );
}
