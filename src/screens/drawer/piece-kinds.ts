import { tapName } from '../../engine/thread/tap-name.ts';
import type { DrawerPieceKind } from '../../store/base/records.ts';

const STI = tapName(undefined, 'insert');

export type PieceKind = {
  readonly kind: DrawerPieceKind;
  readonly name: string;
  readonly many: string;
  readonly size: 'thickness' | 'outside' | 'inside';
  /** What the size is called where its side says nothing of use. */
  readonly asks?: string;
  /** Beside another of its kind: what tells it from that. */
  readonly words?: string;
};

/** What a drawer holds, and which of its sizes is the one that is asked for. */
export const PIECE_KINDS: readonly [PieceKind, ...PieceKind[]] = [
  { kind: 'shim', name: 'Shim', many: 'Shims', size: 'thickness' },
  { kind: 'washer', name: 'Washer', many: 'Washers', size: 'thickness' },
  { kind: 'spacer', name: 'Spacer', many: 'Spacers', size: 'thickness' },
  { kind: 'bar-end', name: 'Bar end', many: 'Bar ends', size: 'outside' },
  { kind: 'bushing', name: 'Bushing', many: 'Bushings', size: 'inside' },
  { kind: 'insert', name: 'Insert', many: 'Inserts', size: 'inside', asks: 'bolt’s size' },
  { kind: 'tap', name: 'Tap', many: 'Taps', size: 'outside', words: 'plain tap' },
  { kind: 'tap', name: STI, many: 'STI taps', size: 'inside', asks: 'bolt’s size' },
  { kind: 'reamer', name: 'Reamer', many: 'Reamers', size: 'outside' },
  { kind: 'gauge-block', name: 'Gauge block', many: 'Gauge blocks', size: 'thickness' },
];

/** Whether a kind has a key of its own; what else there is of it is asked for then. */
export function isFirstOfItsKind(one: PieceKind): boolean {
  return PIECE_KINDS.find(({ kind }) => kind === one.kind) === one;
}

/** Whether a piece belongs under a kind: a tap for inserts is told from a plain one by its name. */
export function isOfKind(
  piece: { readonly kind: DrawerPieceKind; readonly name: string },
  { kind, name }: { readonly kind: DrawerPieceKind; readonly name: string },
): boolean {
  if (piece.kind !== kind) return false;
  return kind !== 'tap' || /^sti\b/i.test(piece.name) === (name === STI);
}

export function pieceKind(kind: DrawerPieceKind) {
  return PIECE_KINDS.find((one) => one.kind === kind);
}
