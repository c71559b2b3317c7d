import type { ComponentType } from 'preact';
import type { WorksheetKind as OnOnePage } from '../../engine/worksheets/all-worksheets.ts';
import type { WorksheetKind } from '../../store/records.ts';
import { lazyScreen } from '../common/lazy-screen.tsx';
import type { WorksheetData } from './worksheet-data.ts';
import type { WorksheetPlan } from './worksheet-plan.ts';

export type WorksheetViewProps = { readonly data: WorksheetData; readonly plan: WorksheetPlan };

/** What draws the answer of each kind that isn't on one page yet. */
export const worksheetViews: Readonly<Partial<Record<string, ComponentType<WorksheetViewProps>>>> = {
  'spacer-stack': lazyScreen(() => import('./spacer-stack-view.tsx').then((file) => file.SpacerStackView)),
  'hole-and-pin': lazyScreen(() => import('./hole-and-pin-view.tsx').then((file) => file.HoleAndPinView)),
  fit: lazyScreen(() => import('./fit-view.tsx').then((file) => file.FitView)),
  bushing: lazyScreen(() => import('./bushing-view.tsx').then((file) => file.BushingView)),
  'thread-insert': lazyScreen(() => import('./thread-insert-view.tsx').then((file) => file.ThreadInsertView)),
  'bearing-seat': lazyScreen(() => import('./bearing-seat-view.tsx').then((file) => file.BearingSeatView)),
  'axle-line-up': lazyScreen(() => import('./axle-line-up-view.tsx').then((file) => file.AxleLineUpView)),
  'thread-engagement': lazyScreen(() =>
    import('./thread-engagement-view.tsx').then((file) => file.ThreadEngagementView),
  ),
  'steering-geometry': lazyScreen(() =>
    import('./steering-geometry-view.tsx').then((file) => file.SteeringGeometryView),
  ),
} satisfies Record<Exclude<WorksheetKind, OnOnePage>, ComponentType<WorksheetViewProps>>;
