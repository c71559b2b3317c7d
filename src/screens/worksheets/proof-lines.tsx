import type { Length } from '../../engine/length/length.ts';
import { WHICH_STANDS } from '../../engine/reading/say-readings.ts';
import { saySettler, sayTooWide } from '../../engine/reading/say-verdict.ts';
import { canProve, whatCouldProve, whatWouldSettle, type Leg } from '../../engine/reading/settle.ts';
import type { Limits, Verdict } from '../../engine/reading/verdict.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { useMeasuring } from '../readings/use-measuring.ts';
import { proofNote } from './proof-note.ts';
import type { WorksheetData } from './worksheet-data.ts';
import './proof-lines.css';

type ProofLinesProps = {
  readonly data: Pick<WorksheetData, 'tools' | 'unit'>;
  readonly limits: Limits;
  readonly value: Length;
  readonly halfWidth: Length;
  readonly verdict: Verdict;
  readonly legs: readonly Leg[];
};

/** What the readings can't prove, and what would: only said where it matters. */
export function ProofLines({ data, limits, value, halfWidth, verdict, legs }: ProofLinesProps) {
  const { tools, unit } = data;
  if (verdict.kind === 'too-close' && verdict.doubt) return <p class="proof-lines">{WHICH_STANDS}</p>;
  if (verdict.kind === 'too-close') {
    return <p class="proof-lines">{saySettler(whatWouldSettle({ value, limits, legs, tools }), unit)}</p>;
  }
  if (canProve({ limits, halfWidth })) return null;
  const better = whatCouldProve({ limits, legs, tools });
  return (
    <p class="proof-lines">
      {sayTooWide(halfWidth, better, unit)}
      {!better && ` ${saySettler(better, unit)}`}
    </p>
  );
}

/** Before the first reading: that the tool last used for this kind can't prove what is wanted, and what could. */
export function ProofBefore({ data, kind }: { data: WorksheetData; kind: FeatureKind }) {
  const { measuring } = useMeasuring(kind, { jobId: data.job.id });
  const note = measuring ? proofNote(data, kind, measuring.tool) : '';
  return note === '' ? null : <p class="proof-lines">{note}</p>;
}
