import type { StoreName } from './stores.ts';
import type { Result } from '../../engine/length/refusal.ts';

/** Why something could not be kept or opened; `say-store.ts` has the sentences. */
export type StoreRefusal =
  | { readonly code: 'no-storage' }
  | { readonly code: 'newer-database' }
  | { readonly code: 'held-by-another-tab' }
  | { readonly code: 'upgrade-failed'; readonly step: number }
  | { readonly code: 'opening-hung' }
  | { readonly code: 'opening-failed' }
  | { readonly code: 'full-disk' }
  | { readonly code: 'store-lost'; readonly store: StoreName }
  | { readonly code: 'nothing-kept' }
  | { readonly code: 'closed' }
  | { readonly code: 'closed-by-newer-version' }
  | { readonly code: 'thrown-away' }
  | { readonly code: 'connection-lost' }
  | { readonly code: 'write-failed' }
  | { readonly code: 'gone'; readonly store: StoreName }
  | { readonly code: 'record-unreadable'; readonly store: StoreName }
  | { readonly code: 'cannot-keep'; readonly store: StoreName; readonly field: string }
  | { readonly code: 'drawn-is-old' }
  | { readonly code: 'nothing-to-undo' }
  | { readonly code: 'changed-since'; readonly label: string }
  | { readonly code: 'others-since'; readonly label: string };

export type StoreResult<T> = Result<T, StoreRefusal>;

/** The refusal behind an error of the database. Names are compared, never numbers: QuotaExceededError has become a class of its own. */
export function refusalOf(error: unknown): StoreRefusal {
  const { name, message } = error instanceof Error || error instanceof DOMException ? error : noError;
  if (name === 'QuotaExceededError') return { code: 'full-disk' };
  if (isConnectionLoss(name, message)) return { code: 'connection-lost' };
  return { code: 'write-failed' };
}

const noError = { name: '', message: '' };

// WebKit reports the loss as UnknownError "Connection to Indexed Database server lost"; a closed connection throws InvalidStateError.
function isConnectionLoss(name: string, message: string): boolean {
  return name === 'InvalidStateError' || (name === 'UnknownError' && /connection/i.test(message));
}
