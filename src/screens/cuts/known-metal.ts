import { cutsOf } from '../../store/kept/cuts.ts';
import { changeFeature, featuresOf } from '../../store/kept/features.ts';
import { getWorksheet } from '../../store/kept/worksheets.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { Cut, Feature, Id, SizeInput, Worksheet } from '../../store/base/records.ts';
import type { StoreResult } from '../../store/base/store-refusal.ts';
import { sizeOfPart } from './size-of-part.ts';

/**
 * What a part is made of is asked once, wherever it comes up first: where its size was read, or at a cut of it. Everyone
 * else asks here first.
 */
export type MetalGround = {
  readonly features: readonly Pick<Feature, 'id' | 'material'>[];
  /** The cuts of the part's worksheet. */
  readonly cuts: readonly Pick<Cut, 'worksheetId' | 'part' | 'material' | 'touchedAt'>[];
};

export const metalStores = ['cuts', 'worksheets', 'features'] as const;

type PartAsked = {
  readonly worksheet: Pick<Worksheet, 'id' | 'sizes' | 'parts'>;
  readonly part: string;
  /** It is cut from the part that was measured; one made new may be of anything. */
  readonly isThere: boolean;
};

/** What a worksheet's part is known to be made of: said at a cut of it, the last time, or where its size was read. */
export function metalOfPart(
  { worksheet, part, isThere }: PartAsked,
  { features, cuts }: MetalGround,
): string | undefined {
  const [last] = cuts
    .filter((cut) => cut.worksheetId === worksheet.id && cut.part === part && cut.material !== undefined)
    .toSorted((a, b) => b.touchedAt - a.touchedAt);
  return last?.material ?? (isThere ? metalOfSize(sizeOfPart(worksheet, part), features) : undefined);
}

function metalOfSize(size: SizeInput | undefined, features: MetalGround['features']): string | undefined {
  if (size?.from === 'typed') return size.warmth?.material;
  return features.find(({ id }) => id === size?.featureId)?.material;
}

/** A cut with what its part is known to be made of, where nobody said it at the cut itself. */
export async function withKnownMetal(store: Store, cut: Cut): Promise<Cut> {
  if (cut.material !== undefined || cut.worksheetId === undefined) return cut;
  const [worksheet, features, cuts] = await Promise.all([
    getWorksheet(store, cut.worksheetId),
    featuresOf(store, cut.jobId),
    cutsOf(store, cut.jobId),
  ]);
  if (!worksheet) return cut;
  const asked = { worksheet, part: cut.part, isThere: cut.blank !== undefined };
  const material = metalOfPart(asked, { features, cuts });
  return material === undefined ? cut : { ...cut, material };
}

type CutOfPart = Pick<Cut, 'jobId' | 'worksheetId' | 'part' | 'blank' | 'material'>;

/**
 * What is said at a cut is known where the part's size was read, too: nobody asks it there again. `isSaid`: a fitter said
 * it just now; otherwise what is known there already stands.
 */
export async function keepMetalOf(
  store: Store,
  { jobId, worksheetId, part, blank, material }: CutOfPart,
  isSaid: boolean,
): Promise<StoreResult<unknown>> {
  const nothing = { ok: true, value: undefined } as const;
  if (worksheetId === undefined || blank === undefined || material === undefined) return nothing;
  const worksheet = await getWorksheet(store, worksheetId);
  const size = worksheet && sizeOfPart(worksheet, part);
  if (size?.from !== 'feature') return nothing;
  const feature = await featureIn(store, jobId, size.featureId);
  if (!feature || feature.material === material) return nothing;
  if (feature.material !== undefined && !isSaid) return nothing;
  return changeFeature(store, feature.id, { material });
}

async function featureIn(store: Store, jobId: Id, featureId: Id): Promise<Feature | undefined> {
  return (await featuresOf(store, jobId)).find(({ id }) => id === featureId);
}
