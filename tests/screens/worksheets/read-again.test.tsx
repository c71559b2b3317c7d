import { fireEvent, screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { mean } from '../../../src/engine/reading/estimate.ts';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { stackQuestion } from '../../../src/engine/worksheets/spacer-stack/question.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import {
  missingWords,
  readBefore,
  setAside,
  type WorksheetData,
} from '../../../src/screens/worksheets/worksheet-data.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { createWorksheet, setPart, setSize } from '../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
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

const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

const sizes = { fixed: typedSize('.970') };
const parts = { a: partOf(1, typedSize('.480')), b: partOf(2, typedSize('.478')) };

/** The stack with a part taken out at 500. */
function changedAt500(data: WorksheetData): WorksheetData {
  const partsChanged = { at: 500, why: 'washer taken out' };
  return { ...data, worksheet: { ...data.worksheet, partsChanged } };
}

function gapRead(...times: readonly number[]): WorksheetData {
  return changedAt500(
    worksheetOf('spacer-stack', {
      sizes: { ...sizes, direct: ofFeature('gap') },
      parts,
      features: [featureOf('gap', 'gap')],
      readings: times.map((at) =>
        readingOf('gap', at < 500 ? '.004' : '.010', { tool: tool('test-indicator'), at }),
      ),
    }),
  );
}

const direct = (data: WorksheetData) => {
  const read = stackQuestion(givenOf(data))?.direct;
  return read && mean(read);
};

describe('a gap that was read with other parts', () => {
  test('is set aside: the sum counts, and it is said which part', () => {
    const data = gapRead(400);
    expect(direct(data)).toBeUndefined();
    expect(setAside(data, ['direct'])?.why).toBe('washer taken out');
    expect(missingWords(data, data.worksheet.sizes['direct'])).toBe('read before this: washer taken out');
  });

  test.each([
    // Read at 400; another part was put in at 300 by choice, then one was cut as the reading had asked.
    { otherwiseAt: 300, byItsAnswer: true },
    // Changed by choice after it was read: it was a reading of other parts.
    { otherwiseAt: 450, byItsAnswer: false },
    { otherwiseAt: undefined, byItsAnswer: false },
  ])('is set aside by its own answer only where nothing else was changed since ($otherwiseAt)', (given) => {
    const data = gapRead(400);
    const { otherwiseAt, byItsAnswer } = given;
    const why = 'spacer of another size';
    const partsChanged = { at: 500, why, ...(otherwiseAt !== undefined && { otherwiseAt }) };
    const cut = { ...data, worksheet: { ...data.worksheet, partsChanged } };
    expect(readBefore(cut, 'direct')).toEqual({ why, byItsAnswer });
    expect(readBefore(gapRead(400, 600), 'direct')).toBeUndefined();
  });

  test('counts again once it was read again, by the new reading alone', () => {
    const data = gapRead(400, 600);
    expect(is(direct(data), '.010 in')).toBe(true);
    expect(setAside(data, ['direct'])).toBeUndefined();
  });

  test('is set aside as well where it was typed, until it is typed anew', () => {
    const typedAt = (at?: number) =>
      changedAt500(
        worksheetOf('spacer-stack', {
          sizes: { ...sizes, direct: { ...typedSize('.004'), ...(at !== undefined && { at }) } },
          parts,
        }),
      );
    expect(direct(typedAt())).toBeUndefined();
    expect(direct(typedAt(499))).toBeUndefined();
    expect(is(direct(typedAt(501)), '.004 in')).toBe(true);
  });

  test('is set aside of parts that should stand proud, too', () => {
    const data = changedAt500(
      worksheetOf('spacer-stack', {
        sizes: { ...sizes, directProud: { ...typedSize('.004'), at: 1 } },
        choices: { want: 'clamp' },
        parts,
      }),
    );
    expect(direct(data)).toBeUndefined();
  });

  test.each([
    // .478 by micrometer, read again as .470: it was faced in between
    { read: '.4700', aside: true },
    { read: '.4781', aside: false }, // within what both are known to: the same part, read once more
  ])('is set aside once a part is read as $read: $aside', ({ read, aside }) => {
    const micrometer = { tool: tool('micrometer-0-1') };
    const data = worksheetOf('spacer-stack', {
      sizes: { ...sizes, direct: ofFeature('gap') },
      parts: { a: parts.a, b: { ...partOf(2, ofFeature('spacer')), name: 'spacer' } },
      features: [featureOf('gap', 'gap'), featureOf('spacer', 'length')],
      readings: [
        readingOf('spacer', '.4780', { ...micrometer, at: 100, struckOut: { why: 'faced', at: 690 } }),
        readingOf('gap', '.004', { tool: tool('test-indicator'), at: 400 }),
        readingOf('spacer', read, { ...micrometer, at: 700 }),
      ],
    });
    expect(direct(data) === undefined).toBe(aside);
    expect(setAside(data, ['direct'])?.why).toBe(aside ? 'spacer read as another size' : undefined);
  });

  test('leaves every other size as it was', () => {
    const question = stackQuestion(givenOf(gapRead(400)));
    expect(question && is(mean(question.fixed.length), '.970 in')).toBe(true);
    expect(question?.parts).toHaveLength(2);
  });
});

test('a washer taken out after the gap was read is said, marked, and one press leads to reading it again', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const worksheet = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Bracket',
      sizes,
      choices: { want: 'float' },
      parts: { ...parts, c: { ...partOf(3, typedSize('.002')), name: 'washer' } },
    }),
  );
  worked(await setSize(store, worksheet.id, 'direct', typedSize('.0105')));
  location.hash = hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id });
  onScreen(store, <App store={store} />);
  await screen.findByText(/^Good: float \.0105/, {}, PATIENCE);
  worked(await setPart(store, worksheet.id, 'c', undefined));
  // .970 − .958 = .012, exact
  await screen.findByText(/^Good: float \.012/, {}, PATIENCE);
  expect(screen.getByRole('complementary', { name: 'Reading set aside.' }).textContent).toContain(
    '.0105 in was read before this: washer taken out. Until it is read again the sum counts.',
  );
  fireEvent.click(screen.getByRole('link', { name: 'Read it again' }));
  expect(
    await screen.findAllByText(/Feeler or indicator in the assembled stack/, {}, PATIENCE),
  ).not.toHaveLength(0);
});

describe('on the printed sheet, whatever the kind, a reading of other parts than now', () => {
  const recess = { bearing: 'seat' };
  const joint = { joint: 'turns' };
  test.each([
    {
      kind: 'bearing-seat',
      choices: recess,
      sizes: { depth: '.500', width: '.505', directProud: '.004' },
      other: ['width', '.509'],
      why: 'a part of another size',
      until: 'Read it again.',
    },
    {
      kind: 'hole-and-pin',
      choices: joint,
      sizes: { bore: '.4387', pin: '.4375', slop: '.004' },
      other: ['pin', '.4340'],
      why: 'pin of another size',
      until: 'Until it is read again the sum counts.',
    },
    {
      kind: 'fit',
      choices: joint,
      sizes: { nominal: '7/16', bore: '.4387', pin: '.4375', slop: '.004' },
      other: ['bore', '.4400'],
      why: 'bore of another size',
      until: 'Until it is read again the sum counts.',
    },
  ] as const)(
    'is said to be set aside: $kind',
    async ({ kind, choices, sizes: given, other, why, until }) => {
      const store = await openForTest();
      const { id: jobId } = worked(await createJob(store, { name: 'Outfit', systems: [] }));
      const worksheet = worked(await createWorksheet(store, { jobId, kind, title: 'Pivot', choices }));
      for (const [name, size] of Object.entries(given))
        // oxlint-disable-next-line no-await-in-loop
        worked(await setSize(store, worksheet.id, name, typedSize(size)));
      const [name, size] = other;
      worked(await setSize(store, worksheet.id, name, typedSize(size)));
      location.hash = hrefOf({ at: 'sheet', jobId });
      onScreen(store, <App store={store} />);
      expect(
        await screen.findByText(`.004 in was read before this: ${why}. ${until}`, {}, PATIENCE),
      ).toBeTruthy();
    },
  );
});
