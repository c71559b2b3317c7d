import type { DrawerPieceKind } from '../../store/records.ts';

/** What a drawer holds, and which of its sizes is the one that is asked for. */
export const PIECE_KINDS: readonly {
  readonly kind: DrawerPieceKind;
  readonly name: string;
  readonly many: string;
  readonly size: 'thickness' | 'outside' | 'inside';
}[] = [
  { kind: 'shim', name: 'Shim', many: 'Shims', size: 'thickness' },
  { kind: 'washer', name: 'Washer', many: 'Washers', size: 'thickness' },
  { kind: 'spacer', name: 'Spacer', many: 'Spacers', size: 'thickness' },
  { kind: 'bar-end', name: 'Bar end', many: 'Bar ends', size: 'outside' },
  { kind: 'bushing', name: 'Bushing', many: 'Bushings', size: 'inside' },
  { kind: 'insert', name: 'Insert', many: 'Inserts', size: 'inside' },
  { kind: 'tap', name: 'Tap', many: 'Taps', size: 'outside' },
  { kind: 'reamer', name: 'Reamer', many: 'Reamers', size: 'outside' },
];

export function pieceKind(kind: DrawerPieceKind) {
  return PIECE_KINDS.find((one) => one.kind === kind);
}
