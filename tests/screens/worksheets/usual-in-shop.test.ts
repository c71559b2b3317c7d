import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../src/engine/worksheets/account.ts';
import { worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import type { AnyWorksheet } from '../../../src/engine/worksheets/worksheet.ts';
import { jointLimits, type Joint } from '../../../src/engine/fit/joint-limits.ts';
import { decimalText, isLess, lengthOf } from '../../../src/engine/length/length.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { examples, furtherExamples } from './registry-examples.ts';
import { typedSize, worksheetOf } from './worksheet-for-test.ts';

/**
 * What is usual is a round figure in the shop's own unit. One that was only converted (0.0254 mm, .0591 in) was never anybody's
 * practice, and nobody can set it.
 */

const all = (Object.entries(worksheets) satisfies [string, AnyWorksheet][]).flatMap(([name, kind]) =>
  [...(inOf(examples, name) ?? []), ...(inOf(furtherExamples, name) ?? [])].map(
    (data, index) => [`${name} ${index + 1}`, kind, data] as const,
  ),
);

function inOf(of: Readonly<Partial<Record<string, readonly WorksheetData[]>>>, name: string) {
  return of[name];
}

/** What is said of a usual figure that nobody published: the classes of a standard stand as they are printed. */
function practiceIn(kind: AnyWorksheet, data: WorksheetData): readonly string[] {
  return Object.values(kind.usual(givenOf(data))).flatMap((text) =>
    text !== undefined && /usual:.*common practice|is counted/.test(text) ? [text] : [],
  );
}

const isWholeSteps = (text: string, step: number) =>
  Math.abs(Number(text) / step - Math.round(Number(text) / step)) < 1e-6;

describe.each(all)('%s: what is usual is round', (_name, kind, data) => {
  test.each([
    { unit: 'mm', step: 0.005, figures: /\d+\.\d+/g },
    { unit: 'in', step: 0.0005, figures: /\d*\.\d+/g },
  ] as const)('in $unit, to $step at the finest', ({ unit, step, figures }) => {
    const said = practiceIn(kind, { ...data, unit });
    expect(
      said.filter((text) => (text.match(figures) ?? []).some((one) => !isWholeSteps(one, step))),
    ).toEqual([]);
  });
});

describe('the clearance of a joint by common practice', () => {
  const joints: readonly Joint[] = ['turns-under-load', 'turns', 'slides', 'located', 'pressed'];
  const sizes = ['5 mm', '6.35 mm', '10 mm', '12.7 mm', '20 mm', '25.4 mm', '45 mm', '90 mm', '120 mm'];

  test.each(joints.flatMap((joint) => sizes.map((size) => ({ joint, size }))))(
    'of a $size pin that $joint is round in a metric shop, and inside what an inch shop allows',
    ({ joint, size }) => {
      const [mm, inch] = (['mm', 'in'] as const).map((unit) => jointLimits(joint, lengthOf(size), unit));
      if (!mm || !inch) throw new Error('both were asked for');
      const ends = [mm.lower, mm.upper].map((one) => decimalText(one, 'mm', 6));
      expect(ends.filter((one) => !isWholeSteps(one, 0.005))).toEqual([]);
      expect([isLess(mm.lower, inch.lower), isLess(inch.upper, mm.upper)]).toEqual([false, false]);
      expect(isLess(mm.lower, mm.upper)).toBe(true);
    },
  );

  test('a 12.7 mm pin that turns: .0010 to .0030 in is 0.0254 to 0.0762 mm, so 0.030 to 0.075', () => {
    const data = worksheetOf('hole-and-pin', {
      unit: 'mm',
      sizes: { bore: typedSize('12.76 mm'), pin: typedSize('12.70 mm') },
      choices: { joint: 'turns' },
    });
    const account = worksheets['hole-and-pin'].account(givenOf(data));
    expect(blocksOf(account, 'verdict').map(({ headline }) => headline)[0]).toMatch(
      /want 0\.030 to 0\.075 mm/,
    );
  });
});

describe('a least that is common practice', () => {
  test('of the wall beside a counterbore is 1.6 mm in a metric shop, never 1.524', () => {
    const said = (examples['adapter-plate'] ?? [])
      .filter(({ unit }) => unit === 'mm')
      .flatMap((data) => blocksOf(worksheets['adapter-plate'].account(givenOf(data)), 'verdict'))
      .map(({ headline }) => headline)
      .filter((headline) => /wall beside head/.test(headline));
    expect(said.length).toBeGreaterThan(0);
    expect(said.filter((headline) => !/want 1\.60? mm or more/.test(headline))).toEqual([]);
  });
});
