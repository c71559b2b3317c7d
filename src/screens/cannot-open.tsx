import type { ComponentChildren } from 'preact';
import { hrefOf } from './address.ts';
import { Button, LinkButton } from './common/button.tsx';
import { lazyScreen } from './common/lazy-screen.tsx';
import { Page } from './common/page.tsx';
import { StoreProvider } from './common/store-context.ts';
import { useAddress } from './use-address.ts';
import './common/tokens.css';
import './common/base.css';
import './app.css';
import './cannot-open.css';

const ChartsScreen = lazyScreen(() => import('./charts/charts-screen.tsx').then((file) => file.ChartsScreen));

type CannotOpenProps = {
  readonly sentence: string;
  readonly onRetry: () => void;
  readonly notice?: ComponentChildren;
};

/**
 * The store would not open: why, another try, and the charts, which keep nothing. Nothing is ever deleted to get in, and
 * no list is drawn that would look as if nothing had been kept.
 */
export function CannotOpen({ sentence, onRetry, notice }: CannotOpenProps) {
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
              <Reason sentence={sentence} onRetry={onRetry} />
            )}
          </div>
        </div>
      </div>
    </StoreProvider>
  );
}

function Reason({ sentence, onRetry }: Pick<CannotOpenProps, 'sentence' | 'onRetry'>) {
  return (
    <Page title="Slipfit">
      <div class="cannot-open">
        <p role="alert">{sentence}</p>
        <Button kind="main" onPress={onRetry}>
          Try again
        </Button>
        <p>Sizes, drills, fits and the other charts work all the same.</p>
        <LinkButton href={hrefOf({ at: 'charts', chart: 'drills' })}>To the charts</LinkButton>
      </div>
    </Page>
  );
}
