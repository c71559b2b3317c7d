import { sayProof } from '../../engine/say-cuts.ts';
import type { ShownUnit } from '../../engine/show.ts';
import { VerdictBand } from '../common/verdict-band.tsx';
import type { LatheCut } from './use-lathe-cut.ts';

/** Inside the limits: said with what the measurement proves. */
export function ToSize({ at: { cut, progress }, unit }: { at: LatheCut; unit: ShownUnit }) {
  const { proof } = progress;
  if (!proof) return null;
  const kind = proof.verdict.kind;
  return (
    <VerdictBand kind={kind} headline={kind === 'good' ? 'To size' : 'To size by the figure'}>
      <p>{sayProof(cut.of, proof, unit)}</p>
    </VerdictBand>
  );
}
