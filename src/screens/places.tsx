import type { ComponentType } from 'preact';
import type { AddressOf, Place } from './address.ts';
import { lazyScreen } from './common/lazy-screen.tsx';
import { JobsScreen } from './jobs/jobs-screen.tsx';

/** What is drawn at each place, given its address. The job list is the first load; the rest is read from the phone when opened. */
export const places: { readonly [At in Place]: ComponentType<AddressOf<At>> } = {
  jobs: JobsScreen,
  'new-job': lazyScreen(() => import('./jobs/new-job-screen.tsx').then((file) => file.NewJobScreen)),
  'new-reading': lazyScreen(() =>
    import('./readings/new-reading-screen.tsx').then((file) => file.NewReadingScreen),
  ),
  job: lazyScreen(() => import('./jobs/job-screen.tsx').then((file) => file.JobScreen)),
  route: lazyScreen(() => import('./route/route-screen.tsx').then((file) => file.RouteScreen)),
  again: lazyScreen(() => import('./jobs/again-screen.tsx').then((file) => file.AgainScreen)),
  readings: lazyScreen(() => import('./readings/readings-screen.tsx').then((file) => file.ReadingsScreen)),
  'new-feature': lazyScreen(() =>
    import('./readings/new-feature-screen.tsx').then((file) => file.NewFeatureScreen),
  ),
  feature: lazyScreen(() => import('./readings/feature-screen.tsx').then((file) => file.FeatureScreen)),
  worksheets: lazyScreen(() =>
    import('./worksheets/worksheets-screen.tsx').then((file) => file.WorksheetsScreen),
  ),
  worksheet: lazyScreen(() =>
    import('./worksheets/worksheet-screen.tsx').then((file) => file.WorksheetScreen),
  ),
  'all-cuts': lazyScreen(() => import('./cuts/all-cuts-screen.tsx').then((file) => file.AllCutsScreen)),
  cuts: lazyScreen(() => import('./cuts/cuts-screen.tsx').then((file) => file.CutsScreen)),
  cut: lazyScreen(() => import('./cuts/cut-screen.tsx').then((file) => file.CutScreen)),
  lathe: lazyScreen(() => import('./lathe/lathe-screen.tsx').then((file) => file.LatheScreen)),
  'fit-up': lazyScreen(() => import('./fit-up/fit-up-screen.tsx').then((file) => file.FitUpScreen)),
  check: lazyScreen(() => import('./fit-up/check-screen.tsx').then((file) => file.CheckScreen)),
  assembly: lazyScreen(() => import('./assembly/assembly-screen.tsx').then((file) => file.AssemblyScreen)),
  step: lazyScreen(() => import('./assembly/step-screen.tsx').then((file) => file.StepScreen)),
  'sign-off': lazyScreen(() => import('./assembly/sign-off-screen.tsx').then((file) => file.SignOffScreen)),
  money: lazyScreen(() => import('./money/money-screen.tsx').then((file) => file.MoneyScreen)),
  photos: lazyScreen(() => import('./photos/photos-screen.tsx').then((file) => file.PhotosScreen)),
  sheet: lazyScreen(() => import('./sheet/sheet-screen.tsx').then((file) => file.SheetScreen)),
  charts: lazyScreen(() => import('./charts/charts-screen.tsx').then((file) => file.ChartsScreen)),
  drawer: lazyScreen(() => import('./drawer/drawer-screen.tsx').then((file) => file.DrawerScreen)),
  'new-piece': lazyScreen(() => import('./drawer/new-piece-screen.tsx').then((file) => file.NewPieceScreen)),
  piece: lazyScreen(() => import('./drawer/piece-screen.tsx').then((file) => file.PieceScreen)),
  shop: lazyScreen(() => import('./shop/shop-screen.tsx').then((file) => file.ShopScreen)),
  restore: lazyScreen(() => import('./shop/restore-screen.tsx').then((file) => file.RestoreScreen)),
  tool: lazyScreen(() => import('./shop/tool-screen.tsx').then((file) => file.ToolScreen)),
  get: lazyScreen(() => import('./get/get-screen.tsx').then((file) => file.GetScreen)),
};
