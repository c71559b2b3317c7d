import { backupStores, type BackupStore } from '../base/stores.ts';
import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { Differing } from './conflicts-find.ts';
import type { Id } from '../base/records.ts';
import { id, stamp, time } from '../base/schema-common.ts';

/** What a merge left out, kept on this phone until a fitter has said which of the two it is. */
export type Conflict = Differing & {
  readonly id: Id;
  readonly of: { readonly store: BackupStore; readonly id: Id };
  readonly jobId?: Id;
  readonly foundAt: number;
  /** The phone whose file it came with, and who uses that phone. */
  readonly from: { readonly phone?: string; readonly fitter?: string };
};

const lostFields = z.array(
  z.looseObject({ path: z.string(), value: z.optional(z.unknown()), won: z.optional(z.unknown()) }),
);

const conflictSchema: z.ZodMiniType<Conflict> = z.looseObject({
  id,
  of: z.looseObject({ store: z.enum(backupStores), id }),
  jobId: z.exactOptional(id),
  foundAt: time,
  from: z.looseObject({ phone: z.exactOptional(z.string()), fitter: z.exactOptional(z.string()) }),
  lostStamp: stamp,
  wonStamp: stamp,
  fields: lostFields,
  along: lostFields,
});

export function readConflict(kept: unknown): Conflict | undefined {
  const conflict = z.safeParse(conflictSchema, kept);
  return conflict.success ? conflict.data : undefined;
}
