import {
  changeOfAll,
  placeOf,
  spreadOf,
  worstOf,
  type Places,
  type SettingWant,
} from './change-of-places.ts';
import { bandOf, mean, type Estimate } from '../../reading/estimate.ts';
import { isMore, minus, plus, ratioOf, type Length } from '../../length/length.ts';
import { type Between, type Known, turnedRound, movedBy } from './seat-cuts.ts';

export type TaperSetting = 'nut' | 'shim-between' | 'shim-behind';

export type TaperQuestion = {
  /** Read with an indicator, rocking it axially; below zero it is preload. */
  readonly endPlay: Estimate;
  /** The most, where it was read at several places; `endPlay` is the least of them. */
  readonly endPlayMost?: Estimate;
  /** The maker's figure, typed in. */
  readonly want: SettingWant;
  /** A shim between the two cones gives play; a shim behind a cup takes it, one under a cover's flange gives it. */
  readonly setBy: TaperSetting;
  readonly shim?: Estimate;
  /** Of the nut's thread. */
  readonly pitch?: Length;
};

export type TaperAnswer = Known & {
  /** End play to lose; below zero to gain. Limits are what the band leaves of the maker's figure; by the sizes alone where that is nothing. */
  readonly change: Between;
  /** Whether readings as close as these can prove the maker's figure at all. */
  readonly provable: boolean;
  /** Set by a nut: how far to turn it, tighter above zero; floating point. */
  readonly turnDegrees?: number;
  /** Set by a shim: how much thicker it has to be; below zero thinner. */
  readonly shimThicker?: Between;
  readonly newShim?: Between;
};

/**
 * Taper rollers set to the maker's end play or preload.
 *
 * Units:   end play, preload below zero. Turn = change / pitch · 360°. Shim between the cones: thinner by the change;
 *          behind a cup: thicker by the change.
 * Range:   a good setting is left: no turn and no shim. Read at several places, the one furthest past a limit counts, and
 *          the turn or the shim keeps every place inside.
 * Source:  the figure is the maker's; the rest is geometry.
 */
export function taperSetting({ endPlay, endPlayMost, want, setBy, shim, pitch }: TaperQuestion): TaperAnswer {
  const place = (play: Estimate) => placeOf({ value: mean(play), band: bandOf(play) }, want);
  const places: Places = endPlayMost ? [place(endPlay), place(endPlayMost)] : [place(endPlay)];
  const { value, band, verdict, change: own } = worstOf(places);
  const change = changeOfAll(places, want);
  const { aim, least, most } = change ?? own;
  const provable = !isMore(least, most);
  const answer = {
    value,
    band,
    verdict,
    change: provable
      ? { aim, lower: least, upper: most }
      : { aim, lower: minus(least, band.halfWidth), upper: plus(most, band.halfWidth) },
    provable,
  };
  if (verdict.kind === 'good') return answer;
  if (!change) return { ...answer, apart: spreadOf(places) };
  if (setBy === 'nut') return { ...answer, ...(pitch && { turnDegrees: 360 * ratioOf(aim, pitch) }) };
  const shimThicker = setBy === 'shim-behind' ? answer.change : turnedRound(answer.change);
  return { ...answer, shimThicker, ...(shim && { newShim: movedBy(mean(shim), shimThicker) }) };
}
