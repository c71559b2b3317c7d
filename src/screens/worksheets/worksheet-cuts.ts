import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { worksheets } from '../../engine/worksheets/all-worksheets.ts';
import type { WorksheetKind } from '../../store/records.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** The ways a worksheet's answer can be cut; none where there is nothing to cut. */
export type WaysToCut = (data: WorksheetData) => readonly CutWay[];

/** How each kind gives its cuts; a kind that isn't here never has any. */
export const worksheetCuts: Partial<Readonly<Record<string, () => Promise<WaysToCut>>>> = {
  'spacer-stack': () => import('./spacer-stack-cuts.ts').then((file) => file.spacerStackCuts),
  'hole-and-pin': () => import('./hole-and-pin-cuts.ts').then((file) => file.holeAndPinCuts),
  fit: () => import('./fit-cuts.ts').then((file) => file.fitCuts),
  bushing: () => import('./bushing-cuts.ts').then((file) => file.bushingCuts),
  'thread-insert': () => import('./thread-insert-cuts.ts').then((file) => file.threadInsertCuts),
  ring: () =>
    import('./given-of.ts').then(
      ({ givenOf }) =>
        (data) =>
          worksheets.ring.cuts(givenOf(data)),
    ),
  'bearing-seat': () => import('./bearing-seat-cuts.ts').then((file) => file.bearingSeatCuts),
  'axle-line-up': () => import('./axle-line-up-cuts.ts').then((file) => file.axleLineUpCuts),
} satisfies Partial<Record<WorksheetKind, () => Promise<WaysToCut>>>;
