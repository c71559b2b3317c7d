import { shimsFromDrawer, type ShimPick, type ShimPiece, type ShimRefusal } from '../../engine/shim/shims.ts';
import { shimsAsked, stackWithShims } from '../../engine/worksheets/spacer-stack/shims-in-stack.ts';
import type { Result } from '../../engine/length/refusal.ts';
import type { StackAnswer, StackQuestion } from '../../engine/worksheets/spacer-stack/spacer-stack.ts';
import { knownSize, type ReadIn, type WorksheetData } from './worksheet-data.ts';

/** Whatever on hand lies flat in a stack and has a known thickness, in the order the drawer lists it. */
export function shimsOnHand(data: ReadIn): readonly ShimPiece[] {
  return data.drawer.flatMap(({ piece, count }) => {
    const isShim = piece.kind === 'shim' || piece.kind === 'washer' || piece.kind === 'spacer';
    const thickness = isShim ? knownSize(data, piece.thickness) : undefined;
    return thickness && count > 0
      ? [{ id: piece.id, name: piece.name, thickness: thickness.tightest, count }]
      : [];
  });
}

export type ShimOffer = {
  readonly pick: ShimPick;
  readonly after: ReturnType<typeof stackWithShims>;
};

/** What the drawer gives for a stack with too much room; undefined where it wants no shims. */
export function shimOffer(
  data: WorksheetData,
  question: StackQuestion,
  answer: StackAnswer,
): Result<ShimOffer, ShimRefusal> | undefined {
  const asked = shimsAsked(question, answer);
  if (!asked) return undefined;
  const found = shimsFromDrawer({ drawer: shimsOnHand(data), ...asked });
  if (!found.ok) return found;
  const pick = found.value;
  return { ok: true, value: { pick, after: stackWithShims(question, pick) } };
}
