import { adapterPlateWorksheet } from './adapter-plate/worksheet.ts';
import { bearingSeatWorksheet } from './bearing-seat/worksheet.ts';
import { holeAndPinWorksheet } from './hole-and-pin/worksheet.ts';
import { fitWorksheet } from './fit/worksheet.ts';
import { bushingWorksheet } from './bushing/worksheet.ts';
import { misplacedHoleWorksheet } from './misplaced-hole/worksheet.ts';
import { threadInsertWorksheet } from './thread-insert/worksheet.ts';
import { threadCutWorksheet } from './thread-cut/worksheet.ts';
import { axleLineUpWorksheet } from './axle-line-up/worksheet.ts';
import { threadEngagementWorksheet } from './thread-engagement/worksheet.ts';
import { ringWorksheet } from './ring/worksheet.ts';
import { alignmentWorksheet } from './alignment/worksheet.ts';
import { taperWorksheet } from './taper/worksheet.ts';
import { spacerStackWorksheet } from './spacer-stack/worksheet.ts';
import { steeringWorksheet } from './steering-geometry/worksheet.ts';
import type { AnyWorksheet } from './worksheet.ts';

/** Every kind of worksheet, in the order a job meets them. A new kind is one line here and one in the drawings. */
export const worksheets = {
  'spacer-stack': spacerStackWorksheet,
  'hole-and-pin': holeAndPinWorksheet,
  fit: fitWorksheet,
  bushing: bushingWorksheet,
  'misplaced-hole': misplacedHoleWorksheet,
  'adapter-plate': adapterPlateWorksheet,
  'thread-insert': threadInsertWorksheet,
  'thread-cut': threadCutWorksheet,
  ring: ringWorksheet,
  taper: taperWorksheet,
  'bearing-seat': bearingSeatWorksheet,
  'axle-line-up': axleLineUpWorksheet,
  'thread-engagement': threadEngagementWorksheet,
  alignment: alignmentWorksheet,
  'steering-geometry': steeringWorksheet,
} as const satisfies Readonly<Record<string, AnyWorksheet>>;

export type WorksheetKind = keyof typeof worksheets;

/** Their names, in the same order. */
export const worksheetKinds = Object.keys(worksheets).filter(isWorksheetKind);

/** A record may hold a kind of a newer Slipfit. */
export function isWorksheetKind(kind: string): kind is WorksheetKind {
  return Object.hasOwn(worksheets, kind);
}

/** The kind by its name in a record; nothing where it is newer than this Slipfit. */
export function worksheetOf(kind: string): AnyWorksheet | undefined {
  return isWorksheetKind(kind) ? worksheets[kind] : undefined;
}
