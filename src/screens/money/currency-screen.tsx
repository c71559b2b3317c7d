import type { Job } from '../../store/base/records.ts';
import { putSetting } from '../../store/kept/settings.ts';
import { hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';
import { Trouble, useTold } from '../common/told.tsx';
import './money-screen.css';

const SIGNS = ['$', '€', '£', ''];
const LONGEST = 8;

/** The sign before every amount, on all jobs. It also says how small the smallest coin is. */
export function CurrencyScreen({ job, sign }: { job: Job; sign: string }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const take = (text: string) => told(putSetting(store, 'currency', text.slice(0, LONGEST).trim()));
  return (
    <Page
      title="Currency sign"
      subtitle="on all jobs"
      back={{ href: hrefOf({ at: 'money', jobId: job.id }), to: 'money and time' }}
    >
      <div class="money-signs" role="group" aria-label="Usual signs">
        {SIGNS.map((one) => (
          <Button key={one} chosen={sign === one} onPress={() => take(one)}>
            {one === '' ? 'none' : one}
          </Button>
        ))}
      </div>
      <KeptField label="Another sign" hint="EUR, say" kept={sign} onWords={take} />
      <Trouble>{trouble}</Trouble>
      <p class="money-note">Amounts are only counted, never changed into another currency.</p>
    </Page>
  );
}
