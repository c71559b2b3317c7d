import { act } from '../opening/act.ts';
import type { Store } from '../opening/open-store.ts';
import { read } from '../opening/read.ts';
import type { Draft } from '../base/records.ts';
import { readDraft } from './setting-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** What is half typed in a field. The key is the place's address and the field's name. */
export async function getDraft(store: Store, key: string): Promise<Draft | undefined> {
  return readDraft(await read(store, ['drafts'], (tx) => tx.objectStore('drafts').get(key)));
}

const keptAtOnce = { stores: ['drafts'], durability: 'relaxed', stamped: false, oneWrite: true } as const;

/** Keeps what is half typed. Called at every press, never put off: a phone can die between two presses. */
export async function putDraft(store: Store, key: string, draft: Draft): Promise<StoreResult<void>> {
  return act(store, keptAtOnce, (a) => {
    a.putKept('drafts', { id: key, typed: draft.typed, unit: draft.unit });
  });
}

export async function clearDraft(store: Store, key: string): Promise<StoreResult<void>> {
  return act(store, keptAtOnce, (a) => {
    a.drop('drafts', key);
  });
}
