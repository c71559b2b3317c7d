import { onDial } from '../../engine/length/metal-on.ts';
import { spokenFurther, spokenProgress } from '../../engine/cut/say-cuts-spoken.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { OLDER } from '../older/older-than-sizes.ts';
import { nextTake } from './use-passes.ts';
import type { LatheCut } from './use-lathe-cut.ts';

/**
 * What is read out of the cut as it stands. With passes cut and not measured the dial has left its zero: how much further
 * and the figure it comes to are both said, so that neither is taken for the other.
 */
export function saidAloud(at: LatheCut, unit: ShownUnit): string {
  return spokenOf(at, saidOfTheCut(at, unit));
}

/** What is said of a cut, with the mark said first: whoever is at the handles doesn't see it. */
export function spokenOf({ older }: Pick<LatheCut, 'older'>, said: string): string {
  return older ? `${OLDER}. ${said}` : said;
}

function saidOfTheCut(at: LatheCut, unit: ShownUnit): string {
  const { cut, dial, dialUnit, dialled, progress } = at;
  if (dialled.length === 0) return spokenProgress(progress, unit, dialUnit);
  const take = nextTake(at);
  if (!take || !progress.next) return 'Every pass is cut. Stop the spindle and measure it.';
  const last = progress.nextIsLast ? 'Last pass. ' : '';
  const more = onDial(cut.of, dial, take);
  return `${last}${spokenFurther(progress.next.dial, more, { unit: dialUnit, named: false })}`;
}
