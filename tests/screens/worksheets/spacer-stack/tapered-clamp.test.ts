import { describe, expect, test } from 'vitest';
import { decimalText } from '../../../../src/engine/length/length.ts';
import { blocksOf, type Account } from '../../../../src/engine/worksheets/account.ts';
import { spacerStackWorksheet } from '../../../../src/engine/worksheets/spacer-stack/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import {
  featureOf,
  ofFeature,
  partOf,
  readingOf,
  tool,
  typedSize,
  worksheetOf,
} from '../worksheet-for-test.ts';

const micrometer = tool('micrometer-0-1');

/** A part that is thicker at one side, and one that isn't, clamped on a sleeve: .002 to .008 wanted. */
function clamp(thick: string, thin: string, fixed: string, more: { readonly mayCut?: string } = {}) {
  const data = worksheetOf('spacer-stack', {
    sizes: { fixed: typedSize(fixed, micrometer) },
    choices: { want: 'clamp', ...more },
    parts: {
      a: { ...partOf(1, ofFeature('tapered')), name: 'bent washer', adjustable: false },
      b: { ...partOf(2, typedSize('.300', micrometer)), name: 'spacer', adjustable: false },
    },
    features: [featureOf('tapered', 'length')],
    readings: [
      readingOf('tapered', thick, { tool: micrometer, place: 'top' }),
      readingOf('tapered', thin, { tool: micrometer, place: 'bottom' }),
    ],
  });
  const given = givenOf(data);
  return { account: spacerStackWorksheet.account(given), cuts: spacerStackWorksheet.cuts(given) };
}

/** All that is said, as text. */
function said(account: Account): string {
  return JSON.stringify(account);
}

// "from .0015 to .0015", with and without its unit.
const STEP_OF_NOTHING = /from (−?[.\d]+)( in| mm)? to \1(?![.\d])/;

describe('parts .0085 thicker at one side, clamped .002 to .008', () => {
  // Thin .6165 + .300 − .9180 = −.0015, thick .625 + .300 − .918 = +.007: .0085 apart, and the limits are .006 apart.
  const { account, cuts } = clamp('.6250', '.6165', '.9180');

  test('get no shim and no spacer besides: neither makes them parallel', () => {
    expect(blocksOf(account, 'lead').map(({ label }) => label)).not.toContain('Add a shim of');
    expect(account.filter(({ is }) => is === 'extra')).not.toContainEqual({
      is: 'extra',
      name: 'drawer-shims',
    });
    expect(said(account)).not.toMatch(/one more spacer/i);
  });

  test('are said to be more out of parallel than the limits are apart', () => {
    expect(said(account)).toMatch(/One side has \.0085 more.*\.006 apart.*parallel/);
  });

  test('the part itself made new and parallel does it, as long as the others leave room for', () => {
    // .918 − .300 = .618 to be filled, and .002 to .008 to stand proud, less ±.0002 of the sizes: about .6202 to .6258.
    const ways = blocksOf(account, 'way').filter(({ stands }) => stands === 'open');
    expect(ways.map(({ title }) => title)).toEqual(['Make bent washer new, parallel']);
    const [way] = ways;
    expect(way?.detail).toMatch(/^\.622 /);
    expect(way?.detail).toMatch(/from \.620\d? to \.625\d?/);
    expect(cuts).toEqual([]); // nobody said that it may give
  });

  test('no limits are said that leave no room between them', () => {
    expect(said(account)).not.toMatch(STEP_OF_NOTHING);
  });
});

describe('a clamp that is too much where it is thick', () => {
  // Thick .625 + .300 − .9155 = .0095, over .008; thin .620 + .300 − .9155 = .0045. Facing the spacer takes both down alike:
  // .0015 at least off, and .0025 at the most, or the thin side is under .002.
  const { cuts } = clamp('.6250', '.6200', '.9155', { mayCut: 'b' });

  test('its other part is faced by no more than leaves enough where it is thin', () => {
    const [offer] = cuts.flatMap(({ offers }) => offers);
    expect(offer?.part).toBe('spacer');
    const [lower, upper] = [offer?.lower, offer?.upper].map((one) => one && decimalText(one, 'in', 4));
    // .300 − .0025 = .2975 and .300 − .0015 = .2985, each less the band of the sizes
    expect(Number(lower)).toBeGreaterThanOrEqual(0.2975);
    expect(Number(upper)).toBeLessThanOrEqual(0.2985);
    expect(Number(lower)).toBeLessThanOrEqual(Number(upper));
  });
});

test('a clamp whose parts lie below the face says so without a sign', () => {
  // .6250 + .300 − .9253 = −.0003
  const { account } = clamp('.6250', '.6250', '.9253');
  const why = blocksOf(account, 'why').flatMap(({ lines }) => lines.map(({ how }) => how));
  expect(why.filter((how) => /stand (below|proud)/.test(how))).toEqual(['the parts stand below by .0003']);
});

describe('a float of .008 to .012, felt .003 at one side and .011 at the other', () => {
  const data = worksheetOf('spacer-stack', {
    sizes: { direct: ofFeature('gap') },
    choices: { want: 'float', mayCut: 'b' },
    parts: {
      a: { ...partOf(1, typedSize('.500', micrometer)), name: 'bracket', adjustable: false },
      b: { ...partOf(2, typedSize('.300', micrometer)), name: 'spacer', adjustable: false },
    },
    features: [featureOf('gap', 'gap')],
    readings: [
      readingOf('gap', '.003', { tool: tool('feeler-gauges'), place: 'top' }),
      readingOf('gap', '.011', { tool: tool('feeler-gauges'), place: 'bottom' }),
    ],
  });
  const given = givenOf(data);
  const account = spacerStackWorksheet.account(given);

  // .008 apart where the limits are .004 apart: .005 off makes .008 and .016 of it.
  test('gets no cut that would leave it too loose at the other side', () => {
    expect(spacerStackWorksheet.cuts(given)).toEqual([]);
    expect(blocksOf(account, 'lead')).toEqual([]);
    expect(said(account)).toMatch(/One side has \.008 more.*\.004 apart.*parallel/);
    expect(said(account)).not.toMatch(STEP_OF_NOTHING);
  });
});
