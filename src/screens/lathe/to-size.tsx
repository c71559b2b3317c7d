import { sayProof } from '../../engine/cut/say-cuts.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { uncapital } from '../../engine/length/say-words.ts';
import { VerdictBand } from '../common/verdict-band.tsx';
import type { LatheCut } from './use-lathe-cut.ts';

/** Inside the limits: said with what the measurement proves. */
export function ToSize({ at: { cut, progress, older }, unit }: { at: LatheCut; unit: ShownUnit }) {
  const { proof } = progress;
  if (!proof) return null;
  const kind = proof.verdict.kind;
  // The mark above it says that these are not the figures of today: nothing green beside it.
  if (older) return <p>{`By its older figures: ${uncapital(sayProof(cut.of, proof, unit))}`}</p>;
  return (
    <VerdictBand kind={kind} headline={kind === 'good' ? 'To size' : 'To size by the figure'}>
      <p>{sayProof(cut.of, proof, unit)}</p>
    </VerdictBand>
  );
}
