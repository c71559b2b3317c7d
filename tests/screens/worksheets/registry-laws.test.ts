import { render } from 'preact';
import { describe, expect, test } from 'vitest';
import { lengthOf, zero, type Length } from '../../../src/engine/length/length.ts';
import { figure } from '../../../src/engine/length/show.ts';
import { blocksOf } from '../../../src/engine/worksheets/account.ts';
import { worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import type { AnyWorksheet } from '../../../src/engine/worksheets/worksheet.ts';
import { drawings } from '../../../src/screens/worksheets/all-drawings.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { demoOf, examples } from './registry-examples.ts';

/** What holds of every kind of the registry. A new kind is held to it as soon as it has its line and an example. */

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
    (kind, worksheet: AnyWorksheet) => {
      const given = givenOf(demoOf(kind, worksheet));
      const fields = Object.keys(worksheet.fields);
      expect(fields).toEqual(
        expect.arrayContaining([...worksheet.needs(given), ...Object.keys(worksheet.starts)]),
      );
      expect(Object.keys(worksheet.fieldsFor(given))).toEqual(
        expect.arrayContaining([...worksheet.needs(given)]),
      );
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

  test.each(kinds)('%s: its demo answers, and it lacks nothing', (kind, worksheet) => {
    const given = givenOf(demoOf(kind, worksheet));
    expect(worksheet.standing(given)).toBe('answered');
    expect(worksheet.nextNeed(given)).toBeUndefined();
  });

  test('has an example here that answers', () => {
    expect(new Set(answered.map(([, worksheet]) => worksheet)).size).toBe(kinds.length);
    expect(
      answered.filter(([, worksheet, data]) => worksheet.standing(givenOf(data)) !== 'answered'),
    ).toEqual([]);
  });
});

/** The same worksheets with one size below zero, where none can be, or a bore or pin of nothing. */
function impossibleIn(worksheet: AnyWorksheet, data: WorksheetData): (readonly [string, WorksheetData])[] {
  const { sizes, parts } = data.worksheet;
  const given = givenOf(data);
  const typed = (exact: Length) => ({ from: 'typed', exact, typed: '-1', unit: 'mm' }) as const;
  const below = typed(lengthOf('-1 mm'));
  const ofSizes = Object.keys(sizes).flatMap((name) => {
    const field = worksheet.fields[name];
    if (field?.enter !== 'size' || field.signed === true) return [];
    const isRound = field.measures === 'bore' || field.measures === 'pin';
    const isListed = Object.hasOwn(worksheet.fieldsFor(given), name);
    return [
      ...(isListed ? [[`${name} below zero`, below] as const] : []),
      ...(isRound && worksheet.needs(given).includes(name)
        ? [[`${name} of nothing`, typed(zero)] as const]
        : []),
    ].map(([what, size]) => [what, withInputs(data, { sizes: { ...sizes, [name]: size } })] as const);
  });
  const ofParts = Object.entries(parts).map(
    ([id, part]) =>
      [
        `${id} below zero`,
        withInputs(data, { parts: { ...parts, [id]: { ...part, size: below } } }),
      ] as const,
  );
  return [...ofSizes, ...ofParts];
}

function withInputs(data: WorksheetData, inputs: Partial<WorksheetData['worksheet']>): WorksheetData {
  return { ...data, worksheet: { ...data.worksheet, ...inputs } };
}

describe.each(answered)('%s', (_name, worksheet, data) => {
  const given = givenOf(data);
  const account = worksheet.account(given);

  test.each(impossibleIn(worksheet, data))(
    '%s is no size, and is said to be none: nothing is good, cut, checked or drawn by it',
    (_what, changed) => {
      const asked = givenOf(changed);
      const verdict = worksheet.verdict(asked);
      expect(verdict.found).toBe('no-good');
      expect(verdict.said).toMatch(
        /: −?[\d.]+(?: in| mm)? is no size that a part can have\. Type it again, or read it\.$/,
      );
      expect([worksheet.cuts(asked), worksheet.checks(asked), worksheet.makes(asked)]).toEqual([[], [], []]);
      const drawn = document.createElement('div');
      const draw = Object.entries(drawings).find(([kind]) => kind === data.worksheet.kind)?.[1];
      render(draw?.(asked, { width: 390, height: 300 }).shapes, drawn);
      // SVG 2, 7.2 and 10: a negative radius, width or height is an error.
      expect(drawn.innerHTML).not.toMatch(/ (?:r|rx|ry|width|height)="-/);
    },
  );

  test('begins with what leads and ends with why', () => {
    expect(['verdict', 'lead']).toContain(account[0]?.is);
    expect(account.at(-1)?.is).toBe('why');
  });

  test('a lead that names a cut shows that cut’s target', () => {
    const offers = worksheet.cuts(given).flatMap((way) => way.offers);
    const leads = [
      ...blocksOf(account, 'lead'),
      ...blocksOf(account, 'rows').flatMap(({ leads: isLead, rows }) => (isLead ? rows : [])),
    ].filter(({ cut }) => cut !== undefined);
    const ways = blocksOf(account, 'way').filter(({ cut }) => cut !== undefined);
    // What is made names its cut; a kind that cuts nothing has none to name.
    expect(leads.length + ways.length > 0).toBe(offers.length > 0);
    for (const lead of leads) {
      const offer = offers.find(({ name }) => name === lead.cut);
      // A drill's size is its name; a lead that says how much comes off has the target behind its arrow.
      const change = 'change' in lead ? lead.change : undefined;
      const shown = [lead.figure, ...(change?.split(' → ').slice(1) ?? [])];
      expect(shown).toContain(offer && (offer.drill ?? figure(offer.target, data.unit)));
    }
  });

  test('a way that names a cut shows that cut’s target, or the drill or tap by its name', () => {
    for (const { title, detail, cut, goes } of blocksOf(account, 'way')) {
      if (cut === undefined) continue;
      const offer = worksheet
        .cuts(given)
        .filter(({ id }) => goes === undefined || id === goes)
        .flatMap(({ offers }) => offers)
        .find(({ name }) => name === cut);
      const shown =
        offer?.drill ?? offer?.thread?.replace('x', ' × ') ?? (offer && figure(offer.target, data.unit));
      expect(wordsOf(`${title} ${detail}`)).toContain(` ${shown ?? 'no such cut'} `);
    }
  });

  test('a way that is open and has cuts leads to them', () => {
    const cuts = worksheet.cuts(given).map(({ id }) => id);
    const led = blocksOf(account, 'way').flatMap(({ goes }) => goes ?? []);
    expect(led.length === 0 ? [] : cuts.filter((id) => !led.includes(id))).toEqual([]);
  });

  test('what is asked first, or gives a size too, is a field', () => {
    const asked = [
      ...blocksOf(account, 'ask').map(({ field }) => field),
      ...blocksOf(account, 'way').flatMap(({ asks }) => asks ?? []),
      ...Object.values(worksheet.fields).flatMap((field) =>
        field.enter === 'size' && field.givenBy ? [field.givenBy.field] : [],
      ),
    ];
    expect(Object.keys(worksheet.fields)).toEqual(expect.arrayContaining(asked));
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
    const drawn = drawOf(kind)?.(given, { width: 320, height: 130 });
    expect(drawn?.words).not.toBe('');
    const sizesOfParts = givenOf(data).parts.map(({ id }) => `part/${id}/size`);
    expect([...Object.keys(worksheet.fields), ...sizesOfParts]).toEqual(
      expect.arrayContaining(drawn?.sizes.map(({ field }) => field) ?? ['no drawing']),
    );
  });

  test('an inch shop reads American words, in the drawing and on the machine too', () => {
    const inches = givenOf({ ...data, unit: 'in' });
    const drawn = drawOf(data.worksheet.kind)?.(inches, { width: 320, height: 130 });
    const read = [
      drawn?.words,
      drawn?.running?.text,
      ...(drawn?.sizes ?? []).flatMap(({ name, said }) => [name, said]),
      ...worksheet.checks(inches).flatMap(({ name, how }) => [name, how]),
      ...worksheet.steps(inches).flatMap(({ text, orientation }) => [text, orientation]),
      ...worksheet.gets(inches).map(({ what }) => what),
      ...worksheet
        .cuts(inches)
        .flatMap(({ offers }) => offers.flatMap(({ name, part, limitsFrom }) => [name, part, limitsFrom])),
      ...Object.values(worksheet.usual(inches)),
    ];
    expect(read.filter((text) => /\b(aluminium|grey|tyres?|centres?|colour)/i.test(text ?? ''))).toEqual([]);
  });
});

function drawOf(kind: string) {
  return Object.entries(drawings).find(([name]) => name === kind)?.[1];
}

/** Words and figures with one space round each, brackets, commas and full stops away. */
function wordsOf(text: string): string {
  return ` ${text.replace(/[(),:;]|\.(?!\d)/g, ' ').replace(/\s+/g, ' ')} `;
}
