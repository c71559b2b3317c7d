import type { ComponentChildren } from 'preact';
import type { CheckFound } from '../../engine/reading/check.ts';
import { VerdictBand, VerdictMark } from '../common/verdict-band.tsx';
import './check-mark.css';

/** A verdict's mark, or an open ring for what is not done: word and edge say the same beside it. */
export function CheckMark({ found }: { found: CheckFound }) {
  if (found !== 'not-done') return <VerdictMark kind={found} />;
  return (
    <svg class="check-mark" viewBox="0 0 32 32" width="32" height="32" role="img" aria-label="not done">
      <circle
        cx="16"
        cy="16"
        r="12"
        fill="none"
        stroke="currentColor"
        stroke-width="3"
        stroke-dasharray="5 4.4"
      />
    </svg>
  );
}

type CheckBandProps = {
  readonly found: CheckFound;
  readonly headline: string;
  readonly children?: ComponentChildren;
};

/** A verdict, or that there is none yet, in the one place where it is looked for. */
export function CheckBand({ found, headline, children }: CheckBandProps) {
  if (found !== 'not-done')
    return (
      <VerdictBand kind={found} headline={headline}>
        {children}
      </VerdictBand>
    );
  return (
    <div class="check-band">
      <CheckMark found={found} />
      <div>
        <p class="check-band-headline">{headline}</p>
        {children}
      </div>
    </div>
  );
}
