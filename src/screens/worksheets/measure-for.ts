import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { createFeature } from '../../store/kept/features.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { Feature } from '../../store/base/records.ts';
import type { StoreResult } from '../../store/base/store-refusal.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** A feature to log readings for, named after what the worksheet asks; a second one of that name is numbered. */
export async function featureFor(
  store: Store,
  { job, features }: WorksheetData,
  { kind, name }: { readonly kind: FeatureKind; readonly name: string },
): Promise<StoreResult<Feature>> {
  const alike = features.filter(
    (feature) => feature.name === name || feature.name.startsWith(`${name} `),
  ).length;
  return createFeature(store, { jobId: job.id, kind, name: alike === 0 ? name : `${name} ${alike + 1}` });
}
