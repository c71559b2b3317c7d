import { describe, expect, test } from 'vitest';
import { figure } from '../../../src/engine/length/show.ts';
import { blocksOf } from '../../../src/engine/worksheets/account.ts';
import { worksheets, type WorksheetKind } from '../../../src/engine/worksheets/all-worksheets.ts';
import type { AnyWorksheet } from '../../../src/engine/worksheets/worksheet.ts';
import { drawings } from '../../../src/screens/worksheets/all-drawings.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { typedSize, worksheetOf } from './worksheet-for-test.ts';

/** What holds of every kind of the registry. A new kind is held to it as soon as it has its line and an example here. */

const examples: Readonly<Record<WorksheetKind, readonly WorksheetData[]>> = {
  ring: [
    worksheetOf('ring', { sizes: { recess: typedSize('1.500'), stem: typedSize('.750') } }),
    worksheetOf('ring', {
      sizes: {
        recess: typedSize('1.500'),
        stem: typedSize('.750'),
        depth: typedSize('.093'),
        blankOutside: typedSize('1.625'),
        blankInside: typedSize('.688'),
        blankThickness: typedSize('.125'),
      },
    }),
    worksheetOf('ring', { unit: 'mm', sizes: { recess: typedSize('38.1 mm'), stem: typedSize('19 mm') } }),
  ],
};

// The keys of a record are its kinds.
const kinds = Object.entries(worksheets) satisfies [string, AnyWorksheet][];
const answered = kinds.flatMap(([kind, worksheet]) =>
  (Object.entries(examples).find(([name]) => name === kind)?.[1] ?? []).map(
    (data, index) => [`${kind} ${index + 1}`, worksheet, data] as const,
  ),
);

describe('every kind of worksheet', () => {
  test.each(kinds)(
    '%s: what it needs and starts with are fields of its own',
    (_kind, worksheet: AnyWorksheet) => {
      const fields = Object.keys(worksheet.fields);
      expect(fields).toEqual(expect.arrayContaining([...worksheet.needs, ...Object.keys(worksheet.starts)]));
    },
  );

  test.each(kinds)(
    '%s: what it starts with is among the answers it offers',
    (_kind, worksheet: AnyWorksheet) => {
      const strange = Object.entries(worksheet.starts).filter(([name, value]) => {
        const field = worksheet.fields[name];
        return field?.enter === 'choice' && !field.options.some((option) => option.value === value);
      });
      expect(strange).toEqual([]);
    },
  );

  test('has an example here that answers', () => {
    expect(new Set(answered.map(([, worksheet]) => worksheet)).size).toBe(kinds.length);
    expect(
      answered.filter(([, worksheet, data]) => worksheet.standing(givenOf(data)) !== 'answered'),
    ).toEqual([]);
  });
});

describe.each(answered)('%s', (_name, worksheet, data) => {
  const given = givenOf(data);
  const account = worksheet.account(given);

  test('begins with what leads and ends with why', () => {
    expect(['verdict', 'lead']).toContain(account[0]?.is);
    expect(account.at(-1)?.is).toBe('why');
  });

  test('a lead that names a cut shows that cut’s target', () => {
    const offers = worksheet.cuts(given).flatMap((way) => way.offers);
    const leads = blocksOf(account, 'lead').filter(({ cut }) => cut !== undefined);
    expect(leads.length).toBeGreaterThan(0);
    for (const lead of leads) {
      const offer = offers.find(({ name }) => name === lead.cut);
      expect(offer && figure(offer.target, data.unit)).toBe(lead.figure);
    }
  });

  test('every check has limits with a source, or is by eye', () => {
    const without = worksheet
      .checks(given)
      .filter(
        ({ by, limits }) => limits.source === '' || (by !== 'by-eye' && !limits.lower && !limits.upper),
      );
    expect(without).toEqual([]);
  });

  test('its drawing has words, and every size in it is a field', () => {
    const kind = data.worksheet.kind;
    const draw = Object.entries(drawings).find(([name]) => name === kind)?.[1];
    const drawn = draw?.(given, { width: 320, height: 130 });
    expect(drawn?.words).not.toBe('');
    expect(Object.keys(worksheet.fields)).toEqual(
      expect.arrayContaining(drawn?.sizes.map(({ field }) => field) ?? ['no drawing']),
    );
  });
});
