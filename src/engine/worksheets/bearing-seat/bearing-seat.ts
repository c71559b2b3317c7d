import {
  changeOfAll,
  cutOfAll,
  placeOf,
  spreadOf,
  worstOf,
  type Place,
  type Places,
  type SettingWant,
} from './change-of-places.ts';
import { combine, mean, type Band, type Estimate } from '../../reading/estimate.ts';
import { isLess, isMore, zero, type Length } from '../../length/length.ts';
import type { Result } from '../../length/refusal.ts';
import type { Verdict } from '../../reading/verdict.ts';
import { type Between, type SeatCut, cutWithin, shimFor } from './seat-cuts.ts';

export type { SettingWant };

type SeatSizes = {
  readonly depth: Estimate;
  readonly goesIn: readonly { readonly size: Estimate; readonly count: number }[];
  /** How far it stands proud, read with it home in its recess: replaces the sum. */
  readonly direct?: Estimate;
};

export type SeatQuestion = SeatSizes & {
  /** Where it stands least proud, if the sizes were read at several places; the others are where it stands proudest. */
  readonly leastProud?: SeatSizes;
  /** How far it should stand proud; below zero it should lie deeper. */
  readonly want?: SettingWant;
  /** Of the dial, for depths. */
  readonly step: Length;
};

export type SeatAnswer = {
  /** What goes in less the depth: above zero it stands proud, below zero it lies under the face. */
  readonly proud: Length;
  readonly band: Band;
  readonly goesIn: Length;
  readonly direct: boolean;
  readonly verdict?: Verdict;
  /** It lies too deep: a shim behind it. */
  readonly shim?: Between;
  /** It stands too proud: the recess made deeper. */
  readonly deepen?: Result<SeatCut>;
  /** Its places are so far from each other that neither shim nor cut puts all of them right. */
  readonly apart?: Length;
};

/**
 * How a bearing stands in its recess, and the shim or the cut that puts it right.
 *
 * Units:   proud = what goes in − depth; above zero it stands proud, below zero it lies under the face. Shim: aim − proud;
 *          deeper recess: depth + proud − aim, rounded metal-on. Limits of both are what the band leaves of the want.
 * Range:   without a want only the figure and its band. The place that is furthest past a limit counts; a shim lifts all
 *          places alike, a deeper floor is as deep everywhere, and both keep every place inside its limits.
 * Refuses: for the cut: no-proof, no-step-in-limits.
 * Source:  difference of a dimension chain; common practice.
 */
export function bearingInSeat({ leastProud, ...proudest }: SeatQuestion): SeatAnswer {
  const { want, step } = proudest;
  const first = seatAt(proudest);
  if (!want) return first;
  const place = (at: SeatSizes) => ({
    ...seatAt(at),
    ...placeOf(known(seatAt(at)), want),
    of: mean(at.depth),
  });
  const places: Places<SeatPlace> = leastProud ? [place(proudest), place(leastProud)] : [place(proudest)];
  const worst = worstOf(places);
  const { proud, band, goesIn, direct, verdict } = worst;
  const answer = { proud, band, goesIn, direct, verdict };
  if (verdict.kind === 'good') return answer;
  const change = changeOfAll(places, want);
  const { aim } = change ?? worst.change;
  if (isLess(aim, zero)) {
    const shim = change && shimFor(change);
    return { ...answer, ...(shim && { shim }), ...(!change && { apart: spreadOf(places) }) };
  }
  if (!isMore(aim, zero)) return answer;
  const cut = cutOfAll(places, want, 'recess-depth');
  if (!cut) return { ...answer, apart: spreadOf(places) };
  return { ...answer, deepen: cutWithin({ ...cut, kind: 'recess-depth', step, want, band }) };
}

type SeatFigures = Pick<SeatAnswer, 'proud' | 'band' | 'goesIn' | 'direct'>;

type SeatPlace = SeatFigures & Place & { readonly of: Length };

function seatAt({ depth, goesIn, direct }: SeatSizes): SeatFigures {
  const terms = goesIn.map(({ size, count }) => ({ estimate: size, coefficient: count }));
  const { value, band } = combine(
    direct ? [{ estimate: direct, coefficient: 1 }] : [...terms, { estimate: depth, coefficient: -1 }],
  );
  return { proud: value, band, goesIn: combine(terms).value, direct: direct !== undefined };
}

function known({ proud, band }: SeatFigures) {
  return { value: proud, band };
}
