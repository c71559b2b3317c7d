import { signedStores, type SignedStore } from '../../store/base/stores.ts';
import { changedSinceSigning, type ChangedThing } from '../../store/kept/signed-since.ts';
import type { Id, Job } from '../../store/base/records.ts';
import { useLive } from '../common/store-context.ts';
import { listed } from '../../engine/length/say-words.ts';

/** What of a job was changed since it was signed, in words; nothing while it stands as signed, or was never signed. */
export function useSignedSince(jobId: Id): string | undefined {
  const things = useChangedSince(jobId);
  return things && things.length > 0 ? changedWords(things) : undefined;
}

/** Who signed a job that stands as it was signed. */
export function useSigner({ id, signedOff }: Job): Job['signedOff'] {
  const things = useChangedSince(id);
  return things?.length === 0 ? signedOff : undefined;
}

function useChangedSince(jobId: Id): readonly ChangedThing[] | undefined {
  return useLive(`signed-since/${jobId}`, signedStores, (store) => changedSinceSigning(store, jobId));
}

const KINDS: Readonly<Record<SignedStore, readonly [one: string, several: string]>> = {
  jobs: ['what the job is', 'what the job is'],
  parts: ['part', 'parts'],
  features: ['readings of', 'readings'],
  readings: ['reading', 'readings'],
  worksheets: ['worksheet', 'worksheets'],
  cuts: ['cut', 'cuts'],
  checks: ['check', 'checks'],
  steps: ['step', 'steps'],
  rechecks: ['re-check', 're-checks'],
};

/** One thing by its name, several by their kinds. */
export function changedWords(things: readonly ChangedThing[]): string {
  const [only, another] = things;
  if (only?.name === undefined || another || only.store === 'jobs')
    return listed([...new Set(things.map(({ store }) => KINDS[store][1]))]);
  // A step is called by a whole sentence.
  const name = only.store === 'steps' ? `“${only.name}”` : only.name;
  return `${KINDS[only.store][0]} ${name}${only.removed ? ', removed' : ''}`;
}
