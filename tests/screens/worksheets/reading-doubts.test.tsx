import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { holeAndPin } from '../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { sayVerdict } from '../../../src/engine/reading/say-verdict.ts';
import { spacerStack } from '../../../src/engine/worksheets/spacer-stack/spacer-stack.ts';
import { fitAnswer } from '../../../src/engine/worksheets/fit/fit.ts';
import { fitQuestion } from '../../../src/engine/worksheets/fit/question.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { holeAndPinQuestion as questionOf } from '../../../src/engine/worksheets/hole-and-pin/question.ts';
import { holeAndPinWorksheet } from '../../../src/engine/worksheets/hole-and-pin/worksheet.ts';
import { WorksheetForm } from '../../../src/screens/worksheets/frame/worksheet-form.tsx';
import { openForTest } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { ReadingDoubts } from '../../../src/screens/worksheets/reading-doubts.tsx';
import { stackQuestion } from '../../../src/engine/worksheets/spacer-stack/question.ts';
import { doubtsOf, type WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { worksheetVerdict } from '../../../src/screens/worksheets/worksheet-verdict.ts';
import {
  featureOf,
  ofFeature,
  partOf,
  readingOf,
  struckOut,
  tool,
  typedSize,
  worksheetOf,
} from './worksheet-for-test.ts';

afterEach(async () => {
  cleanup();
  await clearAway();
});

// The caliper knows a bore to ±.0022, the bore gauge to ±.0004; .4980 and .5015 are .0035 apart.
const byCaliper = (more = {}) =>
  readingOf('bore', '.4980', { tool: tool('digital-caliper-inside'), place: 'top', ...more });
const byGauge = readingOf('bore', '.5015', { tool: tool('dial-bore-gauge'), place: 'top' });
const pin = typedSize('.4990', tool('micrometer-0-1'));
const bore = { features: [featureOf('bore', 'bore')], readings: [byCaliper(), byGauge] };

const holeAndPinQuestion = (data: WorksheetData) => questionOf(givenOf(data));

const holeSheet = (given: Parameters<typeof worksheetOf>[1] = {}) =>
  worksheetOf('hole-and-pin', {
    ...bore,
    sizes: { bore: ofFeature('bore'), pin, lower: typedSize('-.1'), upper: typedSize('.1') },
    choices: { joint: 'turns' },
    ...given,
  });

describe('a bore whose readings contradict each other', () => {
  test('makes no hole and pin good, however wide the limits', () => {
    const question = holeAndPinQuestion(holeSheet());
    if (!question) throw new Error('nothing asked');
    const answer = holeAndPin(question);
    expect(answer.verdict).toMatchObject({ kind: 'too-close', doubt: true });
    const said = sayVerdict(answer.verdict, {
      quantity: 'clearance',
      unit: 'in',
      limits: answer.limits,
      value: answer.tightest,
    });
    expect(said).toContain('Its readings contradict each other');
  });

  test('makes no fit good or no good, by itself or with its pin', () => {
    const question = fitQuestion(
      givenOf(
        worksheetOf('fit', {
          ...bore,
          sizes: { nominal: typedSize('.5'), bore: ofFeature('bore'), pin },
          choices: { joint: 'turns' },
        }),
      ),
    );
    const answer = question && fitAnswer(question);
    if (answer?.ok !== true) throw new Error('nothing asked');
    expect(answer.value.bore?.verdict).toMatchObject({ kind: 'too-close', doubt: true });
    expect(answer.value.clearance?.verdict).toMatchObject({ kind: 'too-close', doubt: true });
    expect(answer.value.pin?.verdict).not.toHaveProperty('doubt');
  });

  test('is good again once one of them is struck out', () => {
    const question = holeAndPinQuestion(holeSheet({ readings: [byCaliper(struckOut), byGauge] }));
    if (!question) throw new Error('nothing asked');
    expect(holeAndPin(question).verdict.kind).toBe('good');
  });
});

test('a sleeve or a part that contradicts itself makes no stack good', () => {
  const twice = [
    readingOf('length', '.9700', { tool: tool('digital-caliper'), place: 'top' }),
    readingOf('length', '.9730', { tool: tool('micrometer-0-1'), place: 'top' }),
  ];
  const both = { features: [featureOf('length', 'length')], readings: twice };
  const limits = { lower: typedSize('0'), upper: typedSize('2') };
  const small = typedSize('.2', tool('micrometer-0-1'));
  const sheets = [
    worksheetOf('spacer-stack', {
      ...both,
      sizes: { fixed: ofFeature('length'), ...limits },
      parts: { a: partOf(1, small) },
    }),
    worksheetOf('spacer-stack', {
      ...both,
      sizes: { fixed: typedSize('1.5', tool('digital-caliper')), ...limits },
      parts: { a: partOf(1, ofFeature('length')) },
    }),
  ];
  for (const sheet of sheets) {
    const question = stackQuestion(givenOf(sheet));
    expect(question && spacerStack(question).verdict).toMatchObject({ kind: 'too-close', doubt: true });
    expect(doubtsOf(sheet).map(({ feature }) => feature.id)).toEqual(['length']);
  }
});

test('the question stands above the answer and leads to the readings', () => {
  render(<ReadingDoubts data={holeSheet()} />);
  expect(screen.getByRole('alert').textContent).toContain(
    '.4980 (digital caliper, inside jaws) or .5015 (dial bore gauge): which stands?',
  );
  expect(screen.getByRole('link').getAttribute('href')).toContain('bore');
});

test('readings that agree, or that this worksheet doesn’t stand on, raise no question', () => {
  expect(doubtsOf(holeSheet({ readings: [byCaliper(struckOut), byGauge] }))).toEqual([]);
  expect(doubtsOf(holeSheet({ sizes: { bore: typedSize('.5'), pin } }))).toEqual([]);
});

describe('the verdict that a sign-off asks', () => {
  test('is never good over a size that contradicts itself, and says which', () => {
    expect(worksheetVerdict(holeSheet())).toEqual({
      found: 'too-close',
      said: 'Left bore: .4980 (digital caliper, inside jaws) or .5015 (dial bore gauge): which stands?',
    });
    // A fit with its pin still to be made judges nothing by itself: the doubt is there all the same.
    const alone = worksheetOf('fit', {
      ...bore,
      sizes: { nominal: typedSize('.5'), bore: ofFeature('bore') },
      choices: { joint: 'turns' },
    });
    expect(worksheetVerdict(alone).found).toBe('too-close');
    expect(worksheetVerdict(holeSheet({ readings: [byCaliper(struckOut), byGauge] })).found).toBe('good');
  });
});

describe('a bore of .5010 by gauge on top and .5012 by caliper, ±.0022, below', () => {
  const readings = [
    readingOf('bore', '.5010', { tool: tool('dial-bore-gauge'), place: 'top' }),
    readingOf('bore', '.5012', { tool: tool('digital-caliper-inside'), place: 'bottom' }),
  ];
  // A pin of .5 known exactly: clearance .0005 to .0040 is a bore of .5005 to .5040; below it may be .4990.
  const sheet = (lower: string, upper: string) =>
    holeSheet({
      readings,
      sizes: {
        bore: ofFeature('bore'),
        pin: typedSize('.5'),
        lower: typedSize(lower),
        upper: typedSize(upper),
      },
    });

  test('is not good for .5005 to .5040, and in no doubt', () => {
    const question = holeAndPinQuestion(sheet('.0005', '.0040'));
    const verdict = question && holeAndPin(question).verdict;
    expect(verdict).toMatchObject({ kind: 'too-close', near: 'lower' });
    expect(verdict).not.toHaveProperty('doubt');
  });

  test.each([
    // .5012 ± .0022: .4990 to .5034, so −.0010 to .0034 over the pin
    { lower: '-.0011', upper: '.0035', kind: 'good' },
    { lower: '-.0009', upper: '.0035', kind: 'too-close' },
    { lower: '-.0011', upper: '.0033', kind: 'too-close' },
    // On top it is surely no more than .5014: .0014 and less
    { lower: '.0015', upper: '.0060', kind: 'no-good' },
  ])('is $kind for $lower to $upper over the pin', ({ lower, upper, kind }) => {
    const question = holeAndPinQuestion(sheet(lower, upper));
    expect(question && holeAndPin(question).verdict.kind).toBe(kind);
  });
});

describe('on the page of its worksheet', () => {
  const tooLoose = (readings: readonly ReturnType<typeof readingOf>[]) =>
    holeSheet({
      readings: [...readings],
      sizes: { bore: ofFeature('bore'), pin: typedSize('.437', tool('micrometer-0-1')) },
    });

  test('nothing is handed to the machine while two readings contradict each other', async () => {
    onScreen(
      await openForTest(),
      <WorksheetForm data={tooLoose([byCaliper(), byGauge])} kind="hole-and-pin" />,
    );
    await screen.findByRole('alert', { name: 'Readings that contradict each other' });
    expect(holeAndPinWorksheet.cuts(givenOf(tooLoose([byCaliper(), byGauge]))).length).toBeGreaterThan(0);
    expect(screen.queryByRole('link', { name: 'Cut it' })).toBeNull();
  });

  test('once one stands it is', async () => {
    onScreen(
      await openForTest(),
      <WorksheetForm data={tooLoose([byCaliper(struckOut), byGauge])} kind="hole-and-pin" />,
    );
    expect(await screen.findByRole('link', { name: 'Cut it' })).toBeTruthy();
  });
});
