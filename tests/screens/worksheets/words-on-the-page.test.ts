import { describe, expect, test } from 'vitest';
import type { ShownUnit } from '../../../src/engine/length/show.ts';
import { withAssumed } from '../../../src/engine/reading/say-assumed.ts';
import { blocksOf, type Account } from '../../../src/engine/worksheets/account.ts';
import { worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import { openPageOf, sentencesOf } from '../../../src/engine/worksheets/open-page.ts';
import type { AnyWorksheet } from '../../../src/engine/worksheets/worksheet.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { demoOf, examples, furtherExamples } from './registry-examples.ts';
import { tool } from './worksheet-for-test.ts';

/** What stands on the page of an answer before anything is unfolded, each piece as it is read. */
function onThePage(account: Account, assumed: readonly string[]): readonly string[] {
  const { headline, lead, ranked, ask, said } = openPageOf(account, (text) => withAssumed(text, assumed));
  return [
    headline,
    lead?.label,
    lead?.change,
    lead?.limits,
    ask,
    ...said,
    ...ranked.flatMap(({ title, detail }) => [title, detail]),
    ...blocksOf(account, 'rows')
      .filter(({ leads }) => leads)
      .flatMap(({ title, rows }) => [
        title,
        ...rows.flatMap(({ what, figure, more }) => [what, figure, more]),
      ]),
  ].flatMap((piece) => (piece === undefined || piece === '' ? [] : [piece]));
}

/** A figure is a word, and so is ±.003. */
function wordsIn(sentence: string): number {
  return sentence.split(/\s+/).filter((word) => word !== '' && word !== '·').length;
}

/** Each kind as its examples have it, in both units, read by a micrometer, by a caliper, and taken as exact. */
const answers = Object.entries(worksheets).flatMap(([kind, worksheet]: [string, AnyWorksheet]) => {
  const named = <T>(of: Readonly<Record<string, readonly T[]>>) => of[kind] ?? [];
  return [demoOf(kind, worksheet), ...named(examples), ...named(furtherExamples)].flatMap((data, index) =>
    (['in', 'mm'] as const).flatMap((unit) =>
      [undefined, 'digital-caliper', 'metric-caliper', 'micrometer-0-1'].map(
        (by) =>
          [`${kind} ${index} in ${unit} by ${by ?? 'drawing'}`, worksheet, readBy(data, unit, by)] as const,
      ),
    ),
  );
});

function readBy(data: WorksheetData, unit: ShownUnit, by: string | undefined): WorksheetData {
  const { sizes, parts } = data.worksheet;
  const read = <Size extends WorksheetData['worksheet']['sizes'][string]>(size: Size) =>
    by === undefined || size.from !== 'typed' ? size : { ...size, tool: tool(by) };
  return {
    ...data,
    unit,
    worksheet: {
      ...data.worksheet,
      sizes: Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, read(size)])),
      parts: Object.fromEntries(
        Object.entries(parts).map(([id, { size, ...part }]) => [
          id,
          { ...part, ...(size && { size: read(size) }) },
        ]),
      ),
    },
  };
}

const accounts = answers.map(([name, worksheet, data]) => {
  const given = givenOf(data);
  const account = worksheet.account(given);
  const assumed = worksheet.assumed(given).map(({ words }) => words);
  return {
    name,
    kind: data.worksheet.kind,
    unit: data.unit,
    worksheet,
    given,
    account,
    assumed,
    page: onThePage(account, assumed),
  };
});

/** Pieces of pages that break a rule, with whose they are: the same piece once. */
function breaking(rule: (piece: string, unit: ShownUnit) => boolean, at = accounts): readonly string[] {
  const found = at.flatMap(({ name, unit, page }) =>
    page.filter((piece) => rule(piece, unit)).map((piece) => [piece, name] as const),
  );
  return [...new Map(found)].map(([piece, name]) => `${name}: ${piece}`);
}

describe('on the page of an answer', () => {
  test('there are answers that are good, too close to call, no good, and refused', () => {
    const found = new Set(accounts.map(({ worksheet, given }) => worksheet.verdict(given).found));
    const standing = new Set(accounts.map(({ worksheet, given }) => worksheet.standing(given)));
    expect([...found]).toEqual(expect.arrayContaining(['good', 'too-close', 'no-good']));
    expect([...standing]).toEqual(expect.arrayContaining(['answered', 'refused']));
  });

  test('no sentence has more than 14 words', () => {
    expect(breaking((piece) => sentencesOf(piece).some((sentence) => wordsIn(sentence) > 14))).toEqual([]);
  });

  test('there are at most five sentences before something is folded', () => {
    const long = accounts.flatMap(({ name, account, assumed }) => {
      const { headline, lead, ask, said } = openPageOf(account, (text) => withAssumed(text, assumed));
      const sentences = [headline, lead?.limits, ask, ...said].flatMap((piece) => sentencesOf(piece ?? ''));
      return sentences.length > 5 ? [`${name}: ${sentences.join(' ')}`] : [];
    });
    expect(long).toEqual([]);
  });

  test('no source stands: where a figure comes from is under Why', () => {
    expect(
      breaking((piece) =>
        /common practice|from memory|no source|\b(?:ISO|ANSI|DIN|JCGM|ASME)\b/i.test(piece),
      ),
    ).toEqual([]);
  });

  test('an inch shop sees no figure in millimetres before its own, a metric shop none in inches', () => {
    const foreign: Readonly<Record<ShownUnit, RegExp>> = {
      in: /\d (?:mm|N·m|MPa|km)\b/,
      mm: /\d (?:in|thou|lbf?·?-?ft|ft-lb|psi|mi|miles)\b/,
    };
    // Beside the shop's own figure, in brackets or behind a point, the other may stand; a tool is called what it is called,
    // and a torque stands as its manual states it, whichever the shop's unit.
    const asInTheManual = /^[\d.,]+ (?:N·m|lbf·ft|lbf·in)/;
    const own = (piece: string) =>
      piece
        .replace(/ \([^()]*\)| · .*$/g, '')
        .replace(/[\d/–.]+ (?:mm|in) (?:micrometer|reamer)/g, '')
        .replace(asInTheManual, '');
    expect(breaking((piece, unit) => foreign[unit].test(own(piece)))).toEqual([]);
  });
});

test.each([
  ['in', /aluminium|\bgrey\b|\btyres?\b|\bcentres?\b|colour/i],
  ['mm', /aluminum|\bgray\b|\btires?\b|\bcenters?\b|\bcolor/i],
] as const)(
  'a shop that counts in %s reads no word of the other country, under Why neither',
  (unit, foreign) => {
    const found = accounts
      .filter((one) => one.unit === unit)
      .flatMap(({ name, account, worksheet, given }) =>
        [JSON.stringify(account), labelsOf(worksheet, given)]
          .filter((text) => foreign.test(text))
          .map((text) => `${name}: ${foreign.exec(text)?.[0] ?? ''}`),
      );
    expect(found).toEqual([]);
  },
);

function labelsOf(worksheet: AnyWorksheet, given: Parameters<AnyWorksheet['fieldsFor']>[0]): string {
  return Object.values(worksheet.fieldsFor(given))
    .flatMap((field) => [
      field.label,
      field.ask,
      ...(field.enter === 'choice' ? field.options.flatMap(({ words, more = '' }) => [words, more]) : []),
    ])
    .join('\n');
}
