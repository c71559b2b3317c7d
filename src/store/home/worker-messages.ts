import type { HomeCalls, HomeResult } from './home-calls.ts';

/** What goes between a page and home's worker. */

/** The calls that go over the network. */
export type AskedOfWorker = 'setUp' | 'join' | 'joinByHand' | 'addPhone' | 'lockOut' | 'picture';

export type AskWorker = {
  [Name in AskedOfWorker]: {
    readonly ask: Name;
    readonly number: number;
    readonly wanted: Parameters<HomeCalls[Name]>[0];
    readonly say?: never;
  };
}[AskedOfWorker];

export type FromPage =
  | AskWorker
  | { readonly say: 'pressed' }
  | { readonly say: 'seen'; readonly isVisible: boolean };

export type ToPage = { readonly ask: number; readonly result: HomeResult<unknown> };
