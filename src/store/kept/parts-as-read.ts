import type { Act } from '../opening/act.ts';
import { isGone } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import type { Id, SizeInput, Worksheet } from '../base/records.ts';
import { parseKept } from '../base/schema-common.ts';
import { inputsIn, inputsText } from './basis.ts';
import { changeOfParts, isReadOfTheWhole, saysOfParts } from './parts-changed.ts';
import { worksheetKind } from './worksheet-schema.ts';

/**
 * What the parts of a worksheet were when something was read of them put together: kept with that reading, as text. The time
 * of a change alone tells nothing of one that another phone made, and whoever read had not seen.
 */
export function partsAsRead({ kind, sizes, choices, parts }: Worksheet): string {
  return inputsText({
    sizes: Object.fromEntries(
      Object.entries(sizes).flatMap(([name, size]) =>
        saysOfParts({ kind }, name) ? [[name, sizeAlone(size)]] : [],
      ),
    ),
    choices,
    parts: Object.fromEntries(
      Object.entries(parts).map(([id, { leastLength: _least, size, ...part }]) => [
        id,
        { ...part, ...(size && { size: sizeAlone(size) }) },
      ]),
    ),
  });
}

/** Which part is another one than when this was read of them put together; nothing where none is, or it can't be told. */
export function otherThanRead(worksheet: Worksheet, asRead: string): string | undefined {
  const then = inputsIn({ worksheet: asRead });
  return then && changeOfParts({ ...then, kind: worksheet.kind }, worksheet);
}

// Which tool read it, and how warm, makes no other part of it.
function sizeAlone(size: SizeInput): SizeInput {
  if (size.from === 'feature') return { from: 'feature', featureId: size.featureId };
  const { typed, unit, exact } = size;
  return { from: 'typed', typed, unit, exact };
}

/** For a reading that is logged now: the parts of each worksheet in which its feature is what is read of them put together. */
export async function partsReadIn(
  a: Act,
  jobId: Id,
  featureId: Id,
): Promise<Readonly<Record<Id, string>> | undefined> {
  const all: readonly unknown[] = await a.tx.objectStore('worksheets').index('jobId').getAll(jobId);
  const read = all.flatMap((kept) => {
    if (!isPlainObject(kept) || isGone({ id: '', ...kept }) || !readsOfTheWhole(kept, featureId)) return [];
    const worksheet = parseKept(worksheetKind, kept);
    return worksheet.ok ? [[worksheet.value.id, partsAsRead(worksheet.value)] as const] : [];
  });
  return read.length === 0 ? undefined : Object.fromEntries(read);
}

function readsOfTheWhole({ kind, sizes }: Readonly<Record<string, unknown>>, featureId: Id): boolean {
  return Object.entries(isPlainObject(sizes) ? sizes : {}).some(
    ([name, size]) =>
      isPlainObject(size) &&
      size['featureId'] === featureId &&
      isReadOfTheWhole({ kind: String(kind) }, name),
  );
}
