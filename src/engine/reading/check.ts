import { bandOf, mean, type Band, type Estimate } from './estimate.ts';
import { featureForm } from './feature-form.ts';
import type { Length } from '../length/length.ts';
import type { FeatureKind } from './measuring-tool.ts';
import type { Reading } from './reading.ts';
import { canProve } from './settle.ts';
import { hangsOnLower, rulingPlace, verdictOf, worseVerdict, type Limits, type Verdict } from './verdict.ts';

/** How a check is made: read with a tool as one kind of size, or looked at. */
export type CheckBy = FeatureKind | 'by-eye';

/** One go at a check: its readings that count, or what was seen. */
export type CheckGo = {
  readonly readings: readonly Reading[];
  readonly seen?: 'holds' | 'fails';
};

type Read = { readonly value: Length; readonly band: Band; readonly estimate: Estimate };

/** What one go proves. */
export type GoResult =
  | { readonly kind: 'nothing-yet' }
  | { readonly kind: 'seen'; readonly holds: boolean }
  | ({ readonly kind: 'unjudged' } & Read)
  | ({
      readonly kind: 'judged';
      readonly verdict: Verdict;
      /** Whether readings as close as these can prove the limits at all. */
      readonly provable: boolean;
    } & Read);

/** What a check was found to be. */
export type CheckFound = 'not-done' | 'good' | 'no-good' | 'too-close';

export type CheckState = {
  readonly found: CheckFound;
  /** Why it is not done although something was: it is to be taken again, or it has no limits to be held against. */
  readonly wants?: 'retake' | 'limits';
  /** Of each go, in their order. */
  readonly goes: readonly GoResult[];
  /** The one that counts. */
  readonly last: GoResult;
};

type Judged = { readonly by: CheckBy; readonly limits: Limits };

/**
 * What a check was found to be: the last go counts, the earlier ones stay readable.
 *
 * Range:   a go without readings after earlier ones is a retake that is still to come, so the check is not done, however
 *          good the go before was. Readings without any limits prove nothing and count as not done.
 * Source:  verdicts by the ISO 14253-1 idea.
 */
export function checkState({ by, limits, goes }: Judged & { readonly goes: readonly CheckGo[] }): CheckState {
  const results = goes.map((go) => goResult({ by, limits, go }));
  const last = results.at(-1) ?? { kind: 'nothing-yet' };
  const isRetake = last.kind === 'nothing-yet' && results.some(({ kind }) => kind !== 'nothing-yet');
  return {
    found: foundBy(last),
    ...(isRetake && { wants: 'retake' }),
    ...(last.kind === 'unjudged' && { wants: 'limits' }),
    goes: results,
    last,
  };
}

/**
 * What one go at a check proves.
 *
 * Units:   the place whose value less its band is least is held against the lower limit, the one whose value plus its
 *          band is most against the upper, and the worse of the two verdicts counts; the value is that of the place that
 *          decides. A place that is surely past a limit decides before one that only may be.
 * Range:   by eye there is no band: it holds or it doesn't.
 * Source:  JCGM 100:2008 for the band; ISO 14253-1 idea for the verdict.
 */
export function goResult({ by, limits, go }: Judged & { readonly go: CheckGo }): GoResult {
  if (by === 'by-eye')
    return go.seen ? { kind: 'seen', holds: go.seen === 'holds' } : { kind: 'nothing-yet' };
  const [first, ...rest] = go.readings;
  if (!first) return { kind: 'nothing-yet' };
  const { least, most, places } = featureForm(by, [first, ...rest]);
  if (!limits.lower && !limits.upper) return { kind: 'unjudged', ...readOf(most.estimate) };
  const all = places.map(({ estimate }) => estimate);
  const low = rulingAgainst(only('lower', limits), least.estimate, all);
  const high = rulingAgainst(only('upper', limits), most.estimate, all);
  const verdict = worseVerdict(low.verdict, high.verdict);
  const decides = (hangsOnLower(verdict) || !limits.upper ? low : high).read;
  return {
    kind: 'judged',
    ...decides,
    verdict,
    provable: canProve({ limits, halfWidth: decides.band.halfWidth }),
  };
}

/** What a go was found to be; readings without limits prove nothing. */
export function foundBy(last: GoResult): CheckFound {
  if (last.kind === 'judged') return last.verdict.kind;
  if (last.kind === 'seen') return last.holds ? 'good' : 'no-good';
  return 'not-done';
}

/** The place that rules of all: the one whose band reaches furthest past the limit, unless another is surely past it. */
function rulingAgainst(limits: Limits, furthest: Estimate, all: readonly Estimate[]) {
  const judged = (estimate: Estimate) => {
    const read = readOf(estimate);
    return { read, verdict: verdictOf({ value: read.value, ...read.band, limits }) };
  };
  return rulingPlace(judged(furthest), all.map(judged));
}

function readOf(estimate: Estimate): Read {
  return { value: mean(estimate), band: bandOf(estimate), estimate };
}

function only(side: 'lower' | 'upper', { source, ...limits }: Limits): Limits {
  const limit = limits[side];
  return { source, ...(limit && { [side]: limit }) };
}
