import type { ComponentChildren } from 'preact';
import { useEffect, useErrorBoundary, useLayoutEffect } from 'preact/hooks';
import type { Store } from '../store/open-store.ts';
import { hasActs } from '../store/open-work.ts';
import { StoreUnreadable } from '../store/read.ts';
import { sayStore } from '../store/say-store.ts';
import { putSetting } from '../store/settings.ts';
import type { Address } from './address.ts';
import { BottomBar } from './bottom-bar.tsx';
import { Button, LinkButton } from './common/button.tsx';
import { swallowBounces } from './common/same-press.ts';
import { lazyScreen } from './common/lazy-screen.tsx';
import { Rescue } from './common/rescue.tsx';
import { StoreProvider, useLive } from './common/store-context.ts';
import { TroublePage } from './common/trouble-page.tsx';
import { useLater } from './common/use-later.ts';
import { useLight } from './common/use-settings.ts';
import { JobsScreen } from './jobs/jobs-screen.tsx';
import { useAddress } from './use-address.ts';
import './common/tokens.css';
import './common/base.css';
import './app.css';

// The job list is the first load; the rest is read from the phone when it is opened.
const NewJobScreen = lazyScreen(() => import('./jobs/new-job-screen.tsx').then((file) => file.NewJobScreen));
const ReadingsScreen = lazyScreen(() =>
  import('./readings/readings-screen.tsx').then((file) => file.ReadingsScreen),
);
const NewFeatureScreen = lazyScreen(() =>
  import('./readings/new-feature-screen.tsx').then((file) => file.NewFeatureScreen),
);
const NewReadingScreen = lazyScreen(() =>
  import('./readings/new-reading-screen.tsx').then((file) => file.NewReadingScreen),
);
const FeatureScreen = lazyScreen(() =>
  import('./readings/feature-screen.tsx').then((file) => file.FeatureScreen),
);
const JobScreen = lazyScreen(() => import('./jobs/job-screen.tsx').then((file) => file.JobScreen));
const WorksheetsScreen = lazyScreen(() =>
  import('./worksheets/worksheets-screen.tsx').then((file) => file.WorksheetsScreen),
);
const WorksheetScreen = lazyScreen(() =>
  import('./worksheets/worksheet-screen.tsx').then((file) => file.WorksheetScreen),
);
const AllCutsScreen = lazyScreen(() =>
  import('./cuts/all-cuts-screen.tsx').then((file) => file.AllCutsScreen),
);
const CutsScreen = lazyScreen(() => import('./cuts/cuts-screen.tsx').then((file) => file.CutsScreen));
const CutScreen = lazyScreen(() => import('./cuts/cut-screen.tsx').then((file) => file.CutScreen));
const LatheScreen = lazyScreen(() => import('./lathe/lathe-screen.tsx').then((file) => file.LatheScreen));
const FitUpScreen = lazyScreen(() => import('./fit-up/fit-up-screen.tsx').then((file) => file.FitUpScreen));
const CheckScreen = lazyScreen(() => import('./fit-up/check-screen.tsx').then((file) => file.CheckScreen));
const AssemblyScreen = lazyScreen(() =>
  import('./assembly/assembly-screen.tsx').then((file) => file.AssemblyScreen),
);
const StepScreen = lazyScreen(() => import('./assembly/step-screen.tsx').then((file) => file.StepScreen));
const SignOffScreen = lazyScreen(() =>
  import('./assembly/sign-off-screen.tsx').then((file) => file.SignOffScreen),
);
const MoneyScreen = lazyScreen(() => import('./money/money-screen.tsx').then((file) => file.MoneyScreen));
const PhotosScreen = lazyScreen(() => import('./photos/photos-screen.tsx').then((file) => file.PhotosScreen));
const SheetScreen = lazyScreen(() => import('./sheet/sheet-screen.tsx').then((file) => file.SheetScreen));
const ChartsScreen = lazyScreen(() => import('./charts/charts-screen.tsx').then((file) => file.ChartsScreen));
const DrawerScreen = lazyScreen(() => import('./drawer/drawer-screen.tsx').then((file) => file.DrawerScreen));
const NewPieceScreen = lazyScreen(() =>
  import('./drawer/new-piece-screen.tsx').then((file) => file.NewPieceScreen),
);
const PieceScreen = lazyScreen(() => import('./drawer/piece-screen.tsx').then((file) => file.PieceScreen));
const ShopScreen = lazyScreen(() => import('./shop/shop-screen.tsx').then((file) => file.ShopScreen));
const RestoreScreen = lazyScreen(() =>
  import('./shop/restore-screen.tsx').then((file) => file.RestoreScreen),
);
const ToolScreen = lazyScreen(() => import('./shop/tool-screen.tsx').then((file) => file.ToolScreen));

type AppProps = { readonly store: Store; readonly notice?: ComponentChildren };

export function App({ store, notice }: AppProps) {
  const address = useAddress();
  const { hash } = location;
  useEffect(() => {
    void putSetting(store, 'lastPlace', hash);
  }, [store, hash]);
  useEffect(swallowBounces, []);
  return (
    <StoreProvider value={store}>
      <PageLight />
      <div class="app">
        <div class="app-main">
          {notice}
          <div class="app-place">
            <Guard key={location.hash}>
              <Screen address={address} />
            </Guard>
          </div>
          <Spared>
            <WayBack address={address} />
          </Spared>
        </div>
        {address.at !== 'lathe' && <BottomBar address={address} />}
      </div>
    </StoreProvider>
  );
}

/** The way back from the last act. Its code is no part of the first load: an empty phone has nothing to take back. */
function WayBack({ address }: { address: Address }) {
  const isWanted = useLive('has-acts', ['undo'], hasActs) === true;
  const Bar = useLater(isWanted, loadUndoBar);
  return Bar ? <Bar address={address} /> : null;
}

const loadUndoBar = async () => (await import('./common/undo-bar.tsx')).UndoBar;

/** The whole page takes its colours from where the phone is read, and the phone's own bar above it too. */
function PageLight() {
  const light = useLight();
  useLayoutEffect(() => {
    document.documentElement.dataset['light'] = light;
    const bar = document.querySelector<HTMLMetaElement>('meta[name=theme-color]');
    if (bar) bar.content = getComputedStyle(document.documentElement).getPropertyValue('--paper');
  }, [light]);
  return null;
}

function Screen({ address }: { address: Address }) {
  switch (address.at) {
    case 'jobs':
      return <JobsScreen />;
    case 'new-job':
      return <NewJobScreen />;
    case 'new-reading':
      return <NewReadingScreen />;
    case 'job':
      return <JobScreen jobId={address.jobId} />;
    case 'readings':
      return <ReadingsScreen jobId={address.jobId} />;
    case 'new-feature':
      return <NewFeatureScreen jobId={address.jobId} />;
    case 'feature':
      return <FeatureScreen {...address} />;
    case 'worksheets':
      return <WorksheetsScreen jobId={address.jobId} />;
    case 'worksheet':
      return <WorksheetScreen {...address} />;
    case 'all-cuts':
      return <AllCutsScreen />;
    case 'cuts':
      return <CutsScreen jobId={address.jobId} />;
    case 'cut':
      return <CutScreen {...address} />;
    case 'lathe':
      return <LatheScreen {...address} />;
    case 'fit-up':
      return <FitUpScreen jobId={address.jobId} />;
    case 'check':
      return <CheckScreen {...address} />;
    case 'assembly':
      return <AssemblyScreen {...address} />;
    case 'step':
      return <StepScreen {...address} />;
    case 'sign-off':
      return <SignOffScreen {...address} />;
    case 'money':
      return <MoneyScreen {...address} />;
    case 'photos':
      return <PhotosScreen {...address} />;
    case 'sheet':
      return <SheetScreen {...address} />;
    case 'charts':
      return <ChartsScreen chart={address.chart} />;
    case 'drawer':
      return <DrawerScreen />;
    case 'new-piece':
      return <NewPieceScreen />;
    case 'piece':
      return <PieceScreen {...address} />;
    case 'shop':
      return <ShopScreen {...address} />;
    case 'restore':
      return <RestoreScreen />;
    case 'tool':
      return <ToolScreen {...address} />;
    default:
      return address satisfies never;
  }
}

/** What the screen can do without is not drawn where it can't be read, until another screen is opened; the screen says why. */
function Spared({ children }: { children: ComponentChildren }) {
  const [fault, retry]: [unknown, () => void] = useErrorBoundary();
  useEffect(() => {
    if (fault !== undefined) retry();
  }, [location.hash]);
  return fault === undefined ? <>{children}</> : null;
}

/** A fault stops here: it says that nothing was lost, and why where the database knows it, and offers the way back in. */
function Guard({ children }: { children: ComponentChildren }) {
  const [fault, retry]: [unknown, () => void] = useErrorBoundary();
  if (fault === undefined) return <>{children}</>;
  return (
    <TroublePage
      sentence={
        fault instanceof StoreUnreadable
          ? sayStore(fault.refusal)
          : 'This screen ran into a fault of ours. Everything logged is safe; nothing was lost.'
      }
    >
      <Button kind="main" onPress={retry}>
        Try again
      </Button>
      <LinkButton href="#/jobs">To the jobs</LinkButton>
      <Rescue />
    </TroublePage>
  );
}
