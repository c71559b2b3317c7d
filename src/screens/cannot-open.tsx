import type { ComponentChildren } from 'preact';
import { hrefOf } from './address.ts';
import { Button, LinkButton } from './common/button.tsx';
import { lazyScreen } from './common/lazy-screen.tsx';
import { Rescue } from './common/rescue.tsx';
import { StoreProvider } from './common/store-context.ts';
import { TroublePage } from './common/trouble-page.tsx';
import { useAddress } from './use-address.ts';
import { sayStore } from '../store/base/say-store.ts';
import type { StoreRefusal } from '../store/base/store-refusal.ts';
import './common/tokens.css';
import './common/base.css';
import './app.css';
import './cannot-open.css';

const ChartsScreen = lazyScreen(() => import('./charts/charts-screen.tsx').then((file) => file.ChartsScreen));

type CannotOpenProps = {
  readonly refusal: StoreRefusal;
  readonly onRetry: () => void;
  readonly notice?: ComponentChildren;
};

/**
 * The store would not open: why, another try, and the charts, which keep nothing. Nothing is ever deleted to get in, and
 * no list is drawn that would look as if nothing had been kept.
 */
export function CannotOpen({ refusal, onRetry, notice }: CannotOpenProps) {
  const address = useAddress();
  return (
    <StoreProvider value="none">
      <div class="app">
        <div class="app-main">
          {notice}
          <div class="app-place">
            {address.at === 'charts' ? (
              <>
                <a class="cannot-open-back" href={hrefOf({ at: 'jobs' })}>
                  Nothing is kept just now. Why, and another try
                </a>
                <ChartsScreen chart={address.chart} />
              </>
            ) : (
              <Reason refusal={refusal} onRetry={onRetry} />
            )}
          </div>
        </div>
      </div>
    </StoreProvider>
  );
}

function Reason({ refusal, onRetry }: Pick<CannotOpenProps, 'refusal' | 'onRetry'>) {
  return (
    <TroublePage sentence={sayStore(refusal)}>
      <Button kind="main" onPress={onRetry}>
        Try again
      </Button>
      {refusal.code !== 'no-storage' && <Rescue />}
      <p>Sizes, drills, fits and the other charts work all the same.</p>
      <LinkButton href={hrefOf({ at: 'charts', chart: 'drills' })}>To the charts</LinkButton>
    </TroublePage>
  );
}
