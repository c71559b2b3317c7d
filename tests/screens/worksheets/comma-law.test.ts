import { describe, expect, test } from 'vitest';
import { worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import type { AnyWorksheet } from '../../../src/engine/worksheets/worksheet.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { inCommaShop } from '../../comma-shop.ts';
import { pointsLeft, textsIn, thousandsLeft } from '../../engine/points-left.ts';
import { demoOf, examples, furtherExamples } from './registry-examples.ts';
import { tool } from './worksheet-for-test.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';

inCommaShop();

/** What holds of every kind in a shop that counts in millimetres and types commas. */
const answers = Object.entries(worksheets).flatMap(([kind, worksheet]: [string, AnyWorksheet]) => {
  const named = <T>(of: Readonly<Record<string, readonly T[]>>) => of[kind] ?? [];
  return [demoOf(kind, worksheet), ...named(examples), ...named(furtherExamples)].flatMap((data, index) =>
    [undefined, 'metric-caliper'].map(
      (by) => [`${kind} ${index} by ${by ?? 'drawing'}`, worksheet, readBy(data, by)] as const,
    ),
  );
});

function readBy(data: WorksheetData, by: string | undefined): WorksheetData {
  const { sizes } = data.worksheet;
  const read = Object.entries(sizes).map(([name, size]) => [
    name,
    by === undefined || size.from !== 'typed' ? size : { ...size, tool: tool(by) },
  ]);
  return { ...data, unit: 'mm', worksheet: { ...data.worksheet, sizes: Object.fromEntries(read) } };
}

describe.each(answers)('%s', (_name, worksheet, data) => {
  const given = givenOf(data);
  test('every figure has a comma and nothing between its thousands; what is published keeps its points', () => {
    const said = textsIn({
      account: worksheet.account(given),
      cuts: worksheet.cuts(given),
      checks: worksheet.checks(given),
      steps: worksheet.steps(given),
      gets: worksheet.gets(given),
      usual: worksheet.usual(given),
      assumed: worksheet.assumed(given),
      fields: worksheet.fieldsFor(given),
    });
    expect(said.some((text) => /\d,\d/.test(text))).toBe(true);
    expect(said.flatMap((text) => [...pointsLeft(text), ...thousandsLeft(text)])).toEqual([]);
  });
});
