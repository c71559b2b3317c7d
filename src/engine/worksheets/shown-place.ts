import { isLess, isNegative, isZero, minus, negate, plus, times, type Length } from '../length/length.ts';
import { mean, type Estimate } from '../reading/estimate.ts';
import type { FeatureKind } from '../reading/measuring-tool.ts';
import { blocksOf } from './account.ts';
import type { AnyGiven } from './given.ts';
import type { AnyWorksheet } from './worksheet.ts';

/** The place of a size that its worksheet's verdict goes by; of both ends where it goes by both. */
export type ShownPlace = {
  readonly size: Estimate;
  /** Said where there is more than one place: "its shortest". */
  readonly which?: string;
  /** The other end, where that rules as well. */
  readonly also?: { readonly size: Estimate; readonly which: string };
};

/**
 * Which place of a size the verdict goes by: the one whose change changes it; of two such the one that can stand for both.
 *
 * Range:   both where neither can stand for the other. Without a verdict what leads is asked in its place. What no verdict
 *          hangs on shows its tightest place.
 */
export function shownPlace(worksheet: AnyWorksheet, given: AnyGiven, name: string): ShownPlace | undefined {
  const size = given.size(name);
  if (!size) return undefined;
  const { tightest, loosest } = size;
  const apart = minus(mean(tightest), mean(loosest));
  if (isZero(apart)) return { size: tightest };
  const ends = endsOf(worksheet.fields[name]);
  const [tightIs, looseIs] = isNegative(apart) ? [ends.least, ends.most] : [ends.most, ends.least];
  const tight = { size: tightest, which: tightIs };
  const loose = { size: loosest, which: looseIs };
  const now = leads(worksheet, given);
  const changes = (ofTight: Estimate, ofLoose: Estimate) =>
    leads(worksheet, readAs(given, name, ofTight, ofLoose)) !== now;
  const byTight = changes(movedBy(tightest, apart), loosest);
  const byLoose = changes(tightest, movedBy(loosest, negate(apart)));
  if (byTight !== byLoose) return byTight ? tight : loose;
  if (!changes(tightest, tightest)) return tight;
  return changes(loosest, loosest) ? { ...tight, also: loose } : loose;
}

function movedBy(size: Estimate, by: Length): Estimate {
  return { ...size, sum: plus(size.sum, times(by, size.count)) };
}

function readAs(given: AnyGiven, field: string, tightest: Estimate, loosest: Estimate): AnyGiven {
  const [least, most] = isLess(mean(loosest), mean(tightest)) ? [loosest, tightest] : [tightest, loosest];
  const size = { least, most, tightest, loosest, places: [tightest, loosest], words: '' };
  return { ...given, size: (name) => (name === field ? size : given.size(name)) };
}

function leads(worksheet: AnyWorksheet, given: AnyGiven): string {
  const account = worksheet.account(given);
  const verdicts = blocksOf(account, 'verdict');
  return JSON.stringify(verdicts.length > 0 ? verdicts : blocksOf(account, 'lead'));
}

const ENDS: Readonly<Record<FeatureKind, Readonly<Record<'least' | 'most', string>>>> = {
  bore: { least: 'smallest', most: 'largest' },
  pin: { least: 'smallest', most: 'largest' },
  length: { least: 'shortest', most: 'longest' },
  depth: { least: 'shallowest', most: 'deepest' },
  gap: { least: 'narrowest', most: 'widest' },
  runout: { least: 'least', most: 'most' },
};

function endsOf(field: AnyWorksheet['fields'][string] | undefined): (typeof ENDS)[FeatureKind] {
  return ENDS[(field?.enter === 'size' ? field.measures : undefined) ?? 'length'];
}
