import { backupStores, type BackupStore } from '../base/stores.ts';
import { isPlainObject } from '../base/paths.ts';
import type { KeptStamped } from '../base/kept.ts';

type Reference = { readonly store: BackupStore; readonly id: unknown };

/** Ids in the file, those it could not read itself too: they stand for a reference. With each the job it is of, if any. */
export type IdsInFile = Readonly<Record<BackupStore, ReadonlyMap<string, string | undefined>>>;

/** What a record belongs to and isn't in the file. A file is whole, so everything must be in it. */
export function missingFor(ids: IdsInFile, store: BackupStore, record: KeptStamped): BackupStore | undefined {
  const missing = referencesOf(store, record).find(({ store: name, id }) => !hasId(ids[name], id));
  return missing?.store;
}

/** What a record belongs to and is of another job than the record: a figure would be worked out from somebody else's part. */
export function strangerFor(
  ids: IdsInFile,
  store: BackupStore,
  record: KeptStamped,
): BackupStore | undefined {
  // A picture's bytes are of whatever job their photo is of.
  if (store === 'photoBytes') return undefined;
  const jobId = jobOf(store, record);
  const all = [...referencesOf(store, record), ...workedOutFrom(store, record)];
  return all.find(({ store: name, id }) => {
    if (name === 'jobs') return store === 'photos' && id !== jobId;
    const other = typeof id === 'string' ? ids[name].get(id) : undefined;
    return name === 'drawer' ? jobId !== undefined : other !== undefined && other !== jobId;
  })?.store;
}

/** The job that a record is of; none for the drawer, the tools and the settings. */
export function jobOf(store: BackupStore, record: Fields): string | undefined {
  const jobId = store === 'jobs' ? record['id'] : record['jobId'];
  return typeof jobId === 'string' ? jobId : undefined;
}

/** What may have gone for good since: whose job it is of is looked at where it is there. */
function workedOutFrom(store: BackupStore, { workedOut, checkId }: Fields): Reference[] {
  if (store === 'steps' && isPlainObject(workedOut))
    return [{ store: 'worksheets', id: workedOut['worksheetId'] }];
  return store === 'readings' && checkId !== undefined ? [{ store: 'checks', id: checkId }] : [];
}

function hasId(ids: ReadonlyMap<string, unknown>, id: unknown): boolean {
  return typeof id === 'string' && ids.has(id);
}

function referencesOf(store: BackupStore, record: KeptStamped): Reference[] {
  const to = (name: BackupStore, id: unknown): Reference[] => (id === undefined ? [] : [{ store: name, id }]);
  const job: Reference = { store: 'jobs', id: record['jobId'] };
  switch (store) {
    case 'parts':
    case 'rechecks':
    case 'money':
    case 'sheets':
      return [job];
    case 'features':
      return [job, ...to('parts', record['partId']), ...to('checks', record['checkId'])];
    case 'readings':
      return [{ store: 'features', id: record['featureId'] }, job];
    case 'worksheets':
      return [job, ...featuresNamedIn(record).flatMap((id) => to('features', id))];
    case 'cuts':
      // What it is a copy of may be in a job that was never in this file, or that went for good since: it only tells where
      // the cut came from.
      return [job, ...to('worksheets', record['worksheetId']), ...to('parts', record['partId'])];
    case 'checks':
      return [job, ...to('worksheets', record['worksheetId']), ...takenFeatures(record)];
    case 'steps':
      return [job, ...to('worksheets', record['worksheetId']), ...partsNamedIn(record)];
    case 'photos':
      return [...to('jobs', record['jobId']), ...ownerOf(record)];
    case 'photoBytes':
      return to('photos', record.id);
    case 'drawerCounts':
      return [{ store: 'drawer', id: record['pieceId'] }];
    case 'jobs':
      return isPlainObject(record['signedOff']) ? to('sheets', record['signedOff']['sheetId']) : [];
    case 'drawer':
    case 'tools':
    case 'settings':
      return [];
    default:
      return store satisfies never;
  }
}

type Fields = Readonly<Record<string, unknown>>;

function takenFeatures({ takes }: Fields): Reference[] {
  return valuesOf(takes).flatMap((take) =>
    isPlainObject(take) && take['featureId'] !== undefined
      ? [{ store: 'features' as const, id: take['featureId'] }]
      : [],
  );
}

function partsNamedIn({ partIds }: Fields): Reference[] {
  return Array.isArray(partIds) ? partIds.map((id: unknown) => ({ store: 'parts' as const, id })) : [];
}

function ownerOf({ owner }: Fields): Reference[] {
  if (!isPlainObject(owner)) return [];
  const store = backupStores.find((name) => name === owner['store']);
  return store ? [{ store, id: owner['id'] }] : [];
}

function featuresNamedIn(worksheet: Fields): unknown[] {
  const sizes = valuesOf(worksheet['sizes']);
  const parts = valuesOf(worksheet['parts']).flatMap((part) =>
    isPlainObject(part) ? [part['size'], part['leastLength']] : [],
  );
  return [...sizes, ...parts].flatMap((input) =>
    isPlainObject(input) && input['from'] === 'feature' ? [input['featureId']] : [],
  );
}

function valuesOf(map: unknown): unknown[] {
  return isPlainObject(map) ? Object.values(map) : [];
}
