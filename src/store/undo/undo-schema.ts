import { storeNames } from '../base/stores.ts';
import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { UndoRecord } from '../base/records.ts';
import { id, line, time } from '../base/schema-common.ts';

const undoSchema: z.ZodMiniType<UndoRecord> = z.looseObject({
  id: z.string(),
  at: time,
  label: line,
  jobId: z.exactOptional(id),
  brought: z.exactOptional(z.literal(true)),
  changes: z.array(
    z.looseObject({
      store: z.enum(storeNames),
      id,
      made: z.boolean(),
      before: z.record(z.string(), z.unknown()),
      after: z.record(z.string(), z.unknown()),
    }),
  ),
});

export function readUndo(kept: unknown): UndoRecord | undefined {
  const undo = z.safeParse(undoSchema, kept);
  return undo.success ? undo.data : undefined;
}
