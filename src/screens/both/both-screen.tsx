import { undoableStores } from '../../store/base/stores.ts';
import { useState } from 'preact/hooks';
import { stampMs } from '../../store/base/clock.ts';
import type { OpenConflict, Whose } from '../../store/phones/conflicts-open.ts';
import { settleConflict } from '../../store/phones/conflicts-settle.ts';
import { sayStore } from '../../store/base/say-store.ts';
import { hrefOf } from '../address.ts';
import { timeWords } from '../common/day-words.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { bothData } from './both-data.ts';
import { fieldWords, recordWords } from './field-words.ts';
import { valueWords, type Names } from './value-words.ts';
import './both-screen.css';

// Chosen, not published: the next ones move up as these are settled.
const SHOWN = 20;

/** What two phones wrote differently, neither knowing the other's: both side by side, to be settled with one press. */
export function BothScreen() {
  const data = useLive('both-data', [...undoableStores, 'conflicts'], bothData);
  const more = (data?.open.length ?? 0) - SHOWN;
  return (
    <Page
      title="Two phones differ"
      subtitle="which one is it?"
      back={{ href: hrefOf({ at: 'shop' }), to: 'the shop' }}
    >
      {data?.open.length === 0 && (
        <EmptyLine>
          Nothing to settle. Where two phones wrote the same thing differently, you are asked here which one
          it is.
        </EmptyLine>
      )}
      {data?.open.slice(0, SHOWN).map((one) => (
        <OneQuestion key={one.conflict.id} open={one} names={data.names} />
      ))}
      {more > 0 && <p class="both-more">{more === 1 ? 'One more' : `${more} more`} behind these.</p>}
    </Page>
  );
}

function OneQuestion({ open, names }: { open: OpenConflict; names: Names }) {
  const store = useStore();
  const [refused, setRefused] = useState('');
  const { conflict, record, fields } = open;
  const about = aboutWords(open, names);
  const sidesOf = (side: 'now' | 'lost') =>
    fields.map((field) => ({
      label: fields.length > 1 ? fieldWords(conflict.of.store, record, field.path) : '',
      words: valueWords(field[side], { path: field.path, record, names }),
    }));
  const settle = async (take: 'now' | 'lost') => {
    const words = sidesOf(take)
      .map(({ words: text }) => text)
      .join(', ');
    const label = `Took ${shortened(words)} for ${shortened(about)}`;
    const done = await settleConflict(store, { id: conflict.id, take, label });
    const sentence = done.ok ? `${label}. Settled.` : sayStore(done.refusal);
    announce(sentence);
    if (!done.ok) setRefused(sentence);
  };
  return (
    <section class="both" aria-label={about}>
      <h2>{about}</h2>
      <div class="both-sides">
        <Side whose={open.now} fields={sidesOf('now')} stands onPress={() => settle('now')} />
        <Side whose={open.lost} fields={sidesOf('lost')} onPress={() => settle('lost')} />
      </div>
      {refused !== '' && <p role="alert">{refused}</p>}
    </section>
  );
}

type SideProps = {
  readonly whose: Whose;
  readonly fields: readonly { readonly label: string; readonly words: string }[];
  /** It is what the phones go by until somebody says otherwise. */
  readonly stands?: boolean;
  readonly onPress: () => unknown;
};

function Side({ whose, fields, stands = false, onPress }: SideProps) {
  const key = stands ? 'Keep this one' : 'Take that one';
  const all = fields.map(({ label, words }) => `${label} ${words}`.trim()).join(', ');
  return (
    <div class="both-side">
      <p class="both-whose">
        {whoseWords(whose)}
        <br />
        {timeWords(stampMs(whose.stamp))}
      </p>
      <dl class="both-values">
        {fields.map(({ label, words }) => (
          <div key={label}>
            {label !== '' && <dt>{label}</dt>}
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      <p class="both-stands">{stands ? 'counts for now' : 'left out for now'}</p>
      <Button label={`${key}: ${all}`} onPress={onPress}>
        {key}
      </Button>
    </div>
  );
}

function aboutWords({ conflict: { of, jobId }, record, fields }: OpenConflict, names: Names): string {
  const job = of.store === 'jobs' || jobId === undefined ? '' : (names.get(`jobs/${jobId}`) ?? '');
  const [first] = fields;
  const field = fields.length === 1 && first ? fieldWords(of.store, record, first.path) : '';
  return [job, recordWords(of.store, record, names), field].filter(Boolean).join(' · ');
}

function whoseWords({ phone, fitter }: Whose): string {
  if (phone === 'this') return 'This phone';
  return fitter === undefined ? 'Another phone' : `${shortened(fitter)}’s phone`;
}

function shortened(words: string): string {
  return words.length > 80 ? `${words.slice(0, 79)}…` : words;
}
