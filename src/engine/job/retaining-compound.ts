import type { GetOffer } from './get-list.ts';

/** What a sleeve or a bushing is bonded with. */
export const RETAINING_COMPOUND: GetOffer = { kind: 'locker', what: 'retaining compound', count: 1 };
