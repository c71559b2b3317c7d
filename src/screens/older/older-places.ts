import type { Store } from '../../store/open-store.ts';
import type { Id } from '../../store/records.ts';
import { isStepChanged } from '../assembly/step-standing.ts';
import { countsStill } from '../cuts/cut-words.ts';
import { knownChecks } from '../fit-up/check-data.ts';
import { readSheet } from '../sheet/sheet-data.ts';
import { olderAmong } from './job-ground.ts';

/** The places of a job in which a figure can be older than its sizes. */
export type OlderPlace = 'cuts' | 'fit-up' | 'assembly';

/** Those of a job in which one is. */
export async function olderPlaces(store: Store, jobId: Id): Promise<ReadonlySet<OlderPlace>> {
  const data = await readSheet(store, jobId);
  if (!data) return new Set();
  const areCuts = olderAmong(data.cuts.filter(countsStill), data).size > 0;
  const areChecks = knownChecks(data).some(({ older, readBefore }) => older || readBefore);
  const areSteps = data.steps.some((step) => isStepChanged(step, data));
  return new Set<OlderPlace>([
    ...(areCuts ? (['cuts'] as const) : []),
    ...(areChecks ? (['fit-up'] as const) : []),
    ...(areSteps ? (['assembly'] as const) : []),
  ]);
}
