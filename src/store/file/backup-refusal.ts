import type { BackupStore } from '../base/stores.ts';
import type { Result } from '../../engine/length/refusal.ts';
import type { StoreRefusal } from '../base/store-refusal.ts';

/** Which record of a backup: the 14th of its kind, on this line, by its own name and what it belongs to where they can be read. */
export type NamedRecord = {
  readonly store: BackupStore;
  readonly number: number;
  readonly line: number;
  readonly name?: string;
  readonly of?: string;
};

/** Why a backup was not restored. Nothing of it was applied. */
export type BackupRefusal =
  | StoreRefusal
  | { readonly code: 'not-a-backup' }
  | { readonly code: 'newer-backup'; readonly version: number }
  | { readonly code: 'too-big'; readonly mostMegabytes: number }
  | { readonly code: 'too-many'; readonly most: number }
  | { readonly code: 'file-in-use' }
  | { readonly code: 'no-file' }
  /** Another window has read another file since the fitter was shown one. */
  | { readonly code: 'another-file' }
  | { readonly code: 'line-too-long'; readonly line: number }
  | { readonly code: 'not-text' }
  | { readonly code: 'file-unreadable' }
  | { readonly code: 'cut-off'; readonly lines: number }
  | { readonly code: 'checksum-differs' }
  | { readonly code: 'something-behind-the-end'; readonly line: number }
  | {
      readonly code: 'counts-differ';
      readonly store: BackupStore;
      readonly said: number;
      readonly found: number;
    }
  | { readonly code: 'not-json'; readonly line: number }
  | { readonly code: 'unknown-line'; readonly line: number }
  | { readonly code: 'too-deep'; readonly line: number }
  | { readonly code: 'forbidden-name'; readonly line: number; readonly name: string }
  | { readonly code: 'wrong-field'; readonly record: NamedRecord; readonly field: string }
  | { readonly code: 'twice'; readonly record: NamedRecord }
  | { readonly code: 'belongs-to-nothing'; readonly record: NamedRecord; readonly missing: BackupStore }
  | { readonly code: 'belongs-to-another-job'; readonly record: NamedRecord; readonly of: BackupStore }
  | { readonly code: 'is-of-another-job'; readonly record: NamedRecord }
  | {
      readonly code: 'typed-differs' | 'below-zero';
      readonly record: NamedRecord;
      readonly typed: string;
      readonly field: string;
    }
  | { readonly code: 'picture-differs'; readonly record: NamedRecord }
  | { readonly code: 'reading-differs'; readonly record: NamedRecord }
  | { readonly code: 'sheet-differs'; readonly record: NamedRecord };

export type BackupResult<T> = Result<T, BackupRefusal>;
