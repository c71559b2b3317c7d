import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { DrawerCount, DrawerPiece } from '../base/records.ts';
import { id, line, note, stamped, time, type RecordKind } from '../base/schema-common.ts';
import { sizeInputSchema } from './worksheet-schema.ts';

export const drawerPieceSchema = z.looseObject({
  ...stamped,
  kind: z.enum(['shim', 'washer', 'spacer', 'bar-end', 'bushing', 'insert', 'tap', 'reamer', 'gauge-block']),
  name: line,
  thickness: z.exactOptional(sizeInputSchema),
  inside: z.exactOptional(sizeInputSchema),
  outside: z.exactOptional(sizeInputSchema),
  material: line,
  createdAt: time,
});

export const drawerCountSchema = z.looseObject({
  ...stamped,
  pieceId: id,
  change: z.int().check(z.minimum(-100_000), z.maximum(100_000)),
  why: note,
  at: time,
});

export const drawerPieceKind: RecordKind<DrawerPiece> = { store: 'drawer', schema: drawerPieceSchema };
export const drawerCountKind: RecordKind<DrawerCount> = { store: 'drawerCounts', schema: drawerCountSchema };
