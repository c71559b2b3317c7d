import { metalBetween } from '../../engine/cut/cut.ts';
import type { Entry } from '../../engine/length/entry.ts';
import type { Length } from '../../engine/length/length.ts';
import { lastPassOf } from '../../store/kept/cut-state.ts';
import { countedAt20 } from '../../store/kept/read-at-20.ts';
import type { Cut } from '../../store/base/records.ts';

/** The size as it was last measured; of a cut nobody has begun the blank's. */
export function presentSize(cut: Pick<Cut, 'blank' | 'passes'>): Entry | undefined {
  return lastPassOf(cut)?.[1].measured ?? cut.blank;
}

/** The same as it is at 20 °C: what is left to take is worked out from this, and shown beside it. */
export function presentAt20(cut: Pick<Cut, 'blank' | 'passes'>): Length | undefined {
  const last = lastPassOf(cut)?.[1];
  return last ? countedAt20(last.measured.exact, last).exact : cut.blank?.exact;
}

/** Metal that is still to come off; below zero it is past the target. Not known before anything was measured. */
export function leftToTake(cut: Pick<Cut, 'of' | 'target' | 'blank' | 'passes'>): Length | undefined {
  const present = presentAt20(cut);
  return present && metalBetween(cut.of, present, cut.target.exact);
}
