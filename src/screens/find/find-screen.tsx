import { useState } from 'preact/hooks';
import type { Found } from '../../store/search/word-index.ts';
import { hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { useJobSearch } from './use-job-search.ts';
import './find-screen.css';

const PAGE = 20;

/** Every job by any word in it, at each key: what is found leads to where the word stands. */
export function FindScreen() {
  const { text, change, clear } = useTextDraft('find');
  const [shown, setShown] = useState(PAGE);
  const search = useJobSearch();
  const isAsked = /[\p{L}\p{N}]/u.test(text);
  const answer = isAsked ? search?.index.find(text, shown) : undefined;
  const type = (to: string) => {
    setShown(PAGE);
    change(to);
  };
  return (
    <Page title="Find" back={{ href: hrefOf({ at: 'jobs' }), to: 'the jobs' }}>
      <TextField label="Any word or size in a job" hint="7/16, a name, a machine" text={text} onText={type} />
      <div class="find-line">
        <p role="status">
          {[answer && countWords(answer.count), search && leftWords(search)].filter(Boolean).join(' ')}
        </p>
        {text !== '' && <Button onPress={clear}>Clear</Button>}
      </div>
      <ul>
        {answer?.found.map((one) => (
          <li key={one.job.id}>
            <FoundRow {...one} />
          </li>
        ))}
      </ul>
      {answer && answer.count > shown && (
        <div class="find-more">
          <Button onPress={() => setShown(shown + PAGE)}>Show more</Button>
        </div>
      )}
    </Page>
  );
}

function FoundRow({ job, line }: Found) {
  const at = ['job', job.id, ...(line?.at ?? [])].map(encodeURIComponent).join('/');
  return <Row href={`#/${at}`} title={job.name} {...(line && { detail: lineWords(line) })} />;
}

/** `Left bore: .4487 in`; of many figures the first few that are meant. */
function lineWords({ text, figures = [] }: NonNullable<Found['line']>): string {
  const some = figures.slice(0, FIGURES_SHOWN).map(([typed]) => typed);
  return [text, some.join(', ')].filter((one) => one !== '').join(': ');
}

const FIGURES_SHOWN = 3;

function countWords(count: number): string {
  return count === 0 ? 'Nothing found.' : count === 1 ? '1 job.' : `${count} jobs.`;
}

function leftWords({ left, all }: { readonly left: number; readonly all: number }): string {
  return left === 0 ? '' : `Still going through ${left} of ${all} jobs.`;
}
