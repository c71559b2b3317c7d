import { render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { lengthOf, minus, negate, plus, sameLength, type Length } from '../../../src/engine/length/length.ts';
import { mean, typedEstimate, type Estimate } from '../../../src/engine/reading/estimate.ts';
import { blocksOf } from '../../../src/engine/worksheets/account.ts';
import { worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import { shownPlace } from '../../../src/engine/worksheets/shown-place.ts';
import type { AnyGiven, GivenSize } from '../../../src/engine/worksheets/given.ts';
import type { AnyWorksheet } from '../../../src/engine/worksheets/worksheet.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { SizeRows } from '../../../src/screens/worksheets/frame/size-rows.tsx';
import { clearAway } from '../on-screen.tsx';
import { examples } from './registry-examples.ts';
import {
  featureOf,
  is,
  ofFeature,
  partOf,
  readingOf,
  tool,
  typedSize,
  worksheetOf,
} from './worksheet-for-test.ts';

afterEach(clearAway);

/**
 * A part that was read in two places has a shortest and a longest. Whoever looks at the list of sizes sees one figure, and it
 * is the one that the verdict goes by: a figure that could be any other without the verdict moving would be the wrong one.
 */

const BY = lengthOf('.05 mm');

const isSmallTight = new Set(['bore', 'gap', 'depth']);

function inTwoPlaces(of: GivenSize, { least, most }: Record<'least' | 'most', Length>, measures: string) {
  const tool = of.tightest.tool;
  const at = (by: Length): Estimate => ({
    ...typedEstimate(plus(mean(of.tightest), by)),
    ...(tool && { tool }),
  });
  const [small, large] = [at(least), at(most)];
  const [tightest, loosest] = isSmallTight.has(measures) ? [small, large] : [large, small];
  return { least: small, most: large, tightest, loosest, places: [small, large], words: of.words };
}

function answerOf(kind: AnyWorksheet, given: AnyGiven): string {
  const account = kind.account(given);
  const verdicts = blocksOf(account, 'verdict');
  return JSON.stringify(verdicts.length > 0 ? verdicts : blocksOf(account, 'lead'));
}

const sizes = (Object.entries(worksheets) satisfies [string, AnyWorksheet][]).flatMap(([name, kind]) =>
  (Object.entries(examples).find(([one]) => one === name)?.[1] ?? []).flatMap((data, index) => {
    const given = givenOf(data);
    return Object.entries(kind.fieldsFor(given)).flatMap(([field, { enter, ...of }]) => {
      const measures = enter === 'size' && 'measures' in of ? of.measures : undefined;
      return measures !== undefined && given.size(field)
        ? [[`${name} ${index + 1}: ${field}`, kind, given, field, measures] as const]
        : [];
    });
  }),
);

describe('the place that the list of sizes shows', () => {
  test.each(sizes)('%s: the verdict goes by it', (_name, kind, given, field, measures) => {
    const known = given.size(field);
    if (!known) throw new Error('it was given');
    const read = (by: Record<'least' | 'most', Length>): AnyGiven => ({
      ...given,
      size: (name) => (name === field ? inTwoPlaces(known, by, measures) : given.size(name)),
    });
    const down = negate(BY);
    const further = minus(down, BY);
    const both = read({ least: down, most: BY });
    const now = answerOf(kind, both);
    const byLeast = answerOf(kind, read({ least: further, most: BY })) !== now;
    const byMost = answerOf(kind, read({ least: down, most: plus(BY, BY) })) !== now;
    const shown = shownPlace(kind, both, field);
    const isLeast = shown !== undefined && sameLength(mean(shown.size), minus(mean(known.tightest), BY));
    const hasASay = shown?.also ? byLeast === byMost : isLeast ? byLeast || !byMost : byMost || !byLeast;
    expect({ which: shown?.which, hasASay }).toMatchObject({ hasASay: true });
  });
});

describe('a sleeve read .970 at one end and .967 at the other', () => {
  const sleeve = (want: string) =>
    worksheetOf('spacer-stack', {
      sizes: { fixed: ofFeature('sleeve') },
      choices: { want },
      parts: { a: partOf(1, typedSize('.960')) },
      features: [featureOf('sleeve', 'length')],
      readings: [
        readingOf('sleeve', '.970', { place: 'top', tool: tool('micrometer-0-1') }),
        readingOf('sleeve', '.967', { place: 'bottom', tool: tool('micrometer-0-1') }),
      ],
    });

  test.each([
    // .967 − .960 = .007 of float: the short end binds. To be clamped it has to give way where it is long.
    ['float', 'shortest', '0.967'],
    ['end-play', 'shortest', '0.967'],
    ['clamp', 'longest', '0.970'],
  ])('for %s shows its %s place', (want, which, figure) => {
    const given = givenOf(sleeve(want));
    const shown = shownPlace(worksheets['spacer-stack'], given, 'fixed');
    expect([shown?.which, is(shown && mean(shown.size), `${figure} in`), shown?.also]).toEqual([
      which,
      true,
      undefined,
    ]);
  });

  test('the list of its sizes says so', async () => {
    const data = sleeve('float');
    render(<SizeRows data={data} kind={worksheets['spacer-stack']} />);
    expect((await screen.findByRole('link', { name: /Sleeve or opening/ })).textContent).toMatch(
      /at its shortest.*\.9670?/,
    );
  });
});
