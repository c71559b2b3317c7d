import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { hrefOf } from './address.ts';
import { Button, LinkButton } from './common/button.tsx';
import { announce } from './common/announce.ts';
import { lazyScreen } from './common/lazy-screen.tsx';
import { StoreProvider } from './common/store-context.ts';
import { TroublePage } from './common/trouble-page.tsx';
import { useAddress } from './use-address.ts';
import { sayStore } from '../store/say-store.ts';
import type { StoreRefusal } from '../store/store-refusal.ts';
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
      {isThereToRead(refusal) && <Rescue />}
      <p>Sizes, drills, fits and the other charts work all the same.</p>
      <LinkButton href={hrefOf({ at: 'charts', chart: 'drills' })}>To the charts</LinkButton>
    </TroublePage>
  );
}

/** The records stand there, in a form that this Slipfit doesn't take: then a file of them can still be written. */
function isThereToRead({ code }: StoreRefusal): boolean {
  return code === 'upgrade-failed' || code === 'newer-database' || code === 'full-disk';
}

function Rescue() {
  const [said, setSaid] = useState('');
  const save = async () => {
    const { giveRescue } = await import('./shop/rescue-file.ts');
    const sentence = await giveRescue();
    setSaid(sentence);
    announce(sentence);
  };
  return (
    <>
      <p>A file with all of them can be saved meanwhile. Nothing is changed by it.</p>
      <Button onPress={() => save()}>Save a backup</Button>
      {said !== '' && <p role="status">{said}</p>}
    </>
  );
}
