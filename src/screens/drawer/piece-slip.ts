import type { Entry } from '../../engine/length/entry.ts';
import { lengthOf } from '../../engine/length/length.ts';
import { sizeSlip, type SizeSlip } from '../../engine/reading/size-slip.ts';
import type { DrawerPieceKind } from '../../store/base/records.ts';

const inches = (least: string, most: string) => ({
  least: lengthOf(`${least} in`),
  most: lengthOf(`${most} in`),
});

// Common practice, no source: what lies in a drawer, with room to spare.
const ROUND = inches('.04', '14');
const USUAL_THICKNESS: Partial<Record<DrawerPieceKind, typeof ROUND>> = {
  shim: inches('.0005', '.25'),
  washer: inches('.01', '1'),
};
const THICKNESS = inches('.01', '14');

/** Whether the size of a piece looks like a slip: a shim of 10 in was meant as .010, or as 10 mm. */
export function pieceSlip(
  kind: DrawerPieceKind,
  size: 'thickness' | 'outside' | 'inside',
  typed: Entry,
): SizeSlip | undefined {
  const usual = size === 'thickness' ? (USUAL_THICKNESS[kind] ?? THICKNESS) : ROUND;
  return sizeSlip(typed, { usual });
}
