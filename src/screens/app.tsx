import type { ComponentChildren, ComponentType } from 'preact';
import { useEffect, useErrorBoundary, useLayoutEffect } from 'preact/hooks';
import type { Store } from '../store/opening/open-store.ts';
import { hasActs } from '../store/kept/open-work.ts';
import { StoreUnreadable } from '../store/opening/read.ts';
import { sayStore } from '../store/base/say-store.ts';
import { putSetting } from '../store/kept/settings.ts';
import { charts, type Address } from './address.ts';
import { BottomBar } from './bottom-bar.tsx';
import { Button, LinkButton } from './common/button.tsx';
import { bringFocusInSight } from './common/focus-in-sight.ts';
import { swallowBounces } from './common/same-press.ts';
import { Rescue } from './common/rescue.tsx';
import { StoreProvider, useLive } from './common/store-context.ts';
import { TroublePage } from './common/trouble-page.tsx';
import { useLater } from './common/use-later.ts';
import { useLastChart, useLight } from './common/use-settings.ts';
import { places } from './places.tsx';
import { useAddress } from './use-address.ts';
import { usePlaceScroll } from './use-place-scroll.ts';
import './common/tokens.css';
import './common/base.css';
import './app.css';

type AppProps = { readonly store: Store; readonly notice?: ComponentChildren };

export function App({ store, notice }: AppProps) {
  const address = useAddress();
  const { hash } = location;
  const place = usePlaceScroll(hash);
  useEffect(() => {
    void putSetting(store, 'lastPlace', hash);
  }, [store, hash]);
  const chart = address.at === 'charts' && address.chart !== 'list' ? address.chart : undefined;
  useEffect(() => {
    if (chart !== undefined) void putSetting(store, 'lastChart', chart);
  }, [store, chart]);
  useEffect(swallowBounces, []);
  useEffect(bringFocusInSight, []);
  return (
    <StoreProvider value={store}>
      <PageLight />
      <div class="app">
        <div class="app-main">
          {notice}
          <div ref={place} class="app-place">
            <Guard key={location.hash}>
              <Screen address={address} />
            </Guard>
          </div>
          <Spared>
            <WayBack address={address} />
          </Spared>
        </div>
        {address.at !== 'lathe' && <Places address={address} />}
      </div>
    </StoreProvider>
  );
}

/** The places; the charts are entered at the one that was looked at last. */
function Places({ address }: { address: Address }) {
  const last = useLastChart();
  return <BottomBar address={address} chart={charts.find((chart) => chart === last)} />;
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
  // A place and its address are of one kind; the compiler can't follow that through the table.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  const Here = places[address.at] as ComponentType<Address>;
  return <Here key={address.at} {...address} />;
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
