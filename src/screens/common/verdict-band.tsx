import type { ComponentChildren } from 'preact';
import { unbroken } from './unbroken.tsx';
import './verdict-band.css';

export type VerdictKind = 'good' | 'too-close' | 'no-good';

type VerdictBandProps = {
  readonly kind: VerdictKind;
  readonly headline: string;
  readonly children?: ComponentChildren;
};

/** A verdict is never colour alone: a word, a mark and an edge say the same. Its first sentence is the large one. */
export function VerdictBand({ kind, headline, children }: VerdictBandProps) {
  const [, verdict = headline, further] = /^(.*?\.) ([A-Z].*)$/s.exec(headline) ?? [];
  return (
    <div class={`verdict-band verdict-band-${kind}`}>
      <VerdictMark kind={kind} />
      <div>
        <p class="verdict-band-headline">
          {unbroken(verdict)}
          {further !== undefined && <span class="verdict-band-further"> {further}</span>}
        </p>
        {children}
      </div>
    </div>
  );
}

const SPOKEN: Record<VerdictKind, string> = {
  good: 'good',
  'too-close': 'too close to call',
  'no-good': 'no good',
};

/** Good: a ring with a dot. Too close to call: a half-filled ring. No good: a bar. */
export function VerdictMark({ kind }: { kind: VerdictKind }) {
  return (
    <svg
      class={`verdict-mark verdict-mark-${kind}`}
      viewBox="0 0 32 32"
      width="32"
      height="32"
      role="img"
      aria-label={SPOKEN[kind]}
    >
      {kind === 'no-good' && <rect x="3" y="13" width="26" height="6" fill="currentColor" />}
      {kind !== 'no-good' && (
        <circle cx="16" cy="16" r="12" fill="none" stroke="currentColor" stroke-width="3.4" />
      )}
      {kind === 'good' && <circle cx="16" cy="16" r="5.6" fill="currentColor" />}
      {kind === 'too-close' && <path d="M16 4a12 12 0 0 0 0 24z" fill="currentColor" />}
    </svg>
  );
}
