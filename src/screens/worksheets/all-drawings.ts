import type { WorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import type { AnyGiven } from '../../engine/worksheets/given.ts';
import type { Drawn, DrawingBox } from './frame/drawn.ts';
import { drawRing } from './ring/ring-drawing.tsx';

export type Draw = (given: AnyGiven, box: DrawingBox) => Drawn;

/** The drawing of each kind. A new kind is one line here and one in the engine's registry. */
export const drawings: Readonly<Record<WorksheetKind, Draw>> = {
  ring: drawRing,
};
