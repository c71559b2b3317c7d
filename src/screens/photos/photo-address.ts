import type { Id, PhotoOwner } from '../../store/base/records.ts';
import type { Address } from '../address.ts';

const STORES: readonly PhotoOwner['store'][] = [
  'jobs',
  'parts',
  'features',
  'worksheets',
  'cuts',
  'checks',
  'steps',
  'drawer',
];

/** What an address says the photos belong to; nothing where it leads nowhere. */
export function ownerNamed(store: string, id: string): PhotoOwner | undefined {
  const known = STORES.find((one) => one === store);
  return known && { store: known, id };
}

/** What photos are of, and the job it belongs to; a piece of the drawer belongs to none. */
export type PhotosOf = { readonly owner: PhotoOwner; readonly jobId?: Id };

/** The photos of something, one of them, or the camera for it. */
export function photosAddress({ owner, jobId }: PhotosOf, field?: string): Address {
  if (jobId === undefined)
    return { at: 'piece', pieceId: owner.id, field: field === undefined ? 'photos' : `photos/${field}` };
  return {
    at: 'photos',
    jobId,
    ownerStore: owner.store,
    ownerId: owner.id,
    ...(field !== undefined && { field }),
  };
}

/** The screen the photos were opened from. */
export function placeOf({ owner: { store, id }, jobId }: PhotosOf): Address {
  if (jobId === undefined) return { at: 'piece', pieceId: id };
  switch (store) {
    case 'jobs':
      return { at: 'job', jobId };
    case 'features':
      return { at: 'feature', jobId, featureId: id, choosing: 'all' };
    case 'worksheets':
      return { at: 'worksheet', jobId, worksheetId: id, field: 'about' };
    case 'cuts':
      return { at: 'cut', jobId, cutId: id };
    case 'checks':
      return { at: 'check', jobId, checkId: id };
    case 'steps':
      return { at: 'step', jobId, stepId: id };
    case 'parts':
      return { at: 'assembly', jobId, field: `parts/${id}` };
    case 'drawer':
      return { at: 'piece', pieceId: id };
    default:
      return store satisfies never;
  }
}
