import { createContext, type ComponentChildren } from 'preact';
import { useContext, useMemo } from 'preact/hooks';
import { capital } from '../../engine/length/say-words.ts';
import { sayAssumed, withAssumed } from '../../engine/reading/say-assumed.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { VerdictBand, type VerdictKind } from '../common/verdict-band.tsx';
import { assumedIn } from './assumed.ts';
import type { AssumedSize } from './assumed-elsewhere.ts';
import type { WorksheetData } from './worksheet-data.ts';
import './worksheet-page.css';

type Here = {
  readonly assumed: readonly AssumedSize[];
  /** Where each is changed, or read; none on paper. */
  readonly changedAt?: (one: AssumedSize) => string;
};

const AssumedHere = createContext<Here>({ assumed: [] });

type Props = {
  readonly data: WorksheetData;
  readonly onPaper?: boolean;
  readonly children: ComponentChildren;
};

/** What is drawn of a worksheet inside knows what the worksheet takes for granted. */
export function WithAssumed({ data, onPaper = false, children }: Props) {
  const here = useMemo(() => {
    const { job, worksheet } = data;
    const changedAt = ({ field, featureId }: AssumedSize) =>
      featureId === undefined
        ? hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field })
        : hrefOf({ at: 'feature', jobId: job.id, featureId, choosing: `for/${worksheet.id}` });
    return { assumed: assumedIn(data), ...(!onPaper && { changedAt }) };
  }, [data, onPaper]);
  return <AssumedHere.Provider value={here}>{children}</AssumedHere.Provider>;
}

/** A figure or a sentence with what it hangs on, in the same line. */
export function useWithAssumed(): (said: string) => string {
  const { assumed } = useContext(AssumedHere);
  return (said) =>
    withAssumed(
      said,
      assumed.map(({ words }) => words),
    );
}

/** `assumed: float`; empty where nothing was. */
export function useAssumedWords(): string {
  const { assumed } = useContext(AssumedHere);
  return sayAssumed(assumed.map(({ words }) => words));
}

type BandProps = {
  readonly kind: VerdictKind;
  readonly headline: string;
  /** Another band of the same answer: the keys stand with the first. */
  readonly isSecond?: boolean;
  readonly children?: ComponentChildren;
};

/** A worksheet's verdict: what it hangs on stands in its line, each thing one press from being changed. */
export function WorksheetBand({ kind, headline, isSecond = false, children }: BandProps) {
  const said = useWithAssumed();
  return (
    <VerdictBand kind={kind} headline={said(headline)}>
      {children}
      {!isSecond && <AssumedKeys />}
    </VerdictBand>
  );
}

/** One press to each thing that was assumed; none on paper. */
export function AssumedKeys() {
  const { assumed, changedAt } = useContext(AssumedHere);
  if (!changedAt || assumed.length === 0) return null;
  return (
    <p class="worksheet-assumed not-printed">
      {assumed.map((one) => {
        const { field, words, asked = askedOf(words) } = one;
        return (
          <LinkButton key={field} href={changedAt(one)} label={`${asked} Assumed: ${words}. Change it`}>
            {asked}
          </LinkButton>
        );
      })}
    </p>
  );
}

function askedOf(words: string): string {
  return words.startsWith('not ') ? `${capital(words.slice(4))}?` : `Not ${words}?`;
}
