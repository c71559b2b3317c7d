import type { ComponentType } from 'preact';
import type { AddressOf, Place } from './address.ts';
import { AssemblyScreen } from './assembly/assembly-screen.tsx';
import { SignOffScreen } from './assembly/sign-off-screen.tsx';
import { StepScreen } from './assembly/step-screen.tsx';
import { AllCutsScreen } from './cuts/all-cuts-screen.tsx';
import { CutScreen } from './cuts/cut-screen.tsx';
import { CutsScreen } from './cuts/cuts-screen.tsx';
import { DrawerScreen } from './drawer/drawer-screen.tsx';
import { NewPieceScreen } from './drawer/new-piece-screen.tsx';
import { PieceScreen } from './drawer/piece-screen.tsx';
import { FindScreen } from './find/find-screen.tsx';
import { CheckScreen } from './fit-up/check-screen.tsx';
import { FitUpScreen } from './fit-up/fit-up-screen.tsx';
import { GetScreen } from './get/get-screen.tsx';
import { AgainScreen } from './jobs/again-screen.tsx';
import { JobScreen } from './jobs/job-screen.tsx';
import { NewJobScreen } from './jobs/new-job-screen.tsx';
import { LatheScreen } from './lathe/lathe-screen.tsx';
import { MoneyScreen } from './money/money-screen.tsx';
import { PhotosScreen } from './photos/photos-screen.tsx';
import { FeatureScreen } from './readings/feature-screen.tsx';
import { KnownPartsScreen } from './readings/known-parts-screen.tsx';
import { NewFeatureScreen } from './readings/new-feature-screen.tsx';
import { NewReadingScreen } from './readings/new-reading-screen.tsx';
import { ReadingsScreen } from './readings/readings-screen.tsx';
import { RouteScreen } from './route/route-screen.tsx';
import { SheetScreen } from './sheet/sheet-screen.tsx';
import { RestoreScreen } from './shop/restore-screen.tsx';
import { ShopScreen } from './shop/shop-screen.tsx';
import { ToolScreen } from './shop/tool-screen.tsx';
import { WorksheetScreen } from './worksheets/worksheet-screen.tsx';
import { WorksheetsScreen } from './worksheets/worksheets-screen.tsx';

export type LaterPlace = Exclude<Place, 'jobs' | 'charts'>;

/** All places but the first and the charts: they need each other, and come in one piece when the first of them is opened. */
export const laterPlaces: { readonly [At in LaterPlace]: ComponentType<AddressOf<At>> } = {
  'new-job': NewJobScreen,
  'new-reading': NewReadingScreen,
  find: FindScreen,
  job: JobScreen,
  route: RouteScreen,
  again: AgainScreen,
  readings: ReadingsScreen,
  'new-feature': NewFeatureScreen,
  known: KnownPartsScreen,
  feature: FeatureScreen,
  worksheets: WorksheetsScreen,
  worksheet: WorksheetScreen,
  'all-cuts': AllCutsScreen,
  cuts: CutsScreen,
  cut: CutScreen,
  lathe: LatheScreen,
  'fit-up': FitUpScreen,
  check: CheckScreen,
  assembly: AssemblyScreen,
  step: StepScreen,
  'sign-off': SignOffScreen,
  money: MoneyScreen,
  photos: PhotosScreen,
  sheet: SheetScreen,
  drawer: DrawerScreen,
  'new-piece': NewPieceScreen,
  piece: PieceScreen,
  shop: ShopScreen,
  restore: RestoreScreen,
  tool: ToolScreen,
  get: GetScreen,
};
