import { expect, test } from 'vitest';
import {
  areWordsOlder,
  asItStands,
  namedSteps,
  wordedNow,
} from '../../../src/screens/assembly/step-standing.ts';
import { basisNow } from '../../../src/screens/worksheets/new-cuts.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import type { AssemblyStep } from '../../../src/store/base/records.ts';
import { typedSize, worksheetOf } from '../worksheets/worksheet-for-test.ts';

const axle = (bracket: string, more: Readonly<Record<string, string>> = {}) =>
  worksheetOf('axle-line-up', {
    sizes: {
      width: typedSize('6.750'),
      hub: typedSize('4.412'),
      centre: typedSize('2.300'),
      disc: typedSize('.312'),
      slot: typedSize('.187'),
      bracket: typedSize(bracket),
      float: typedSize('.010'),
    },
    choices: { layout: 'front-one-disc', side: 'right', ...more },
  });

function stepOf(data: WorksheetData, name: string): AssemblyStep {
  const found = namedSteps(data).find((one) => one.name === name);
  return {
    id: 'step',
    jobId: 'job',
    order: 0,
    partIds: [],
    createdAt: 0,
    text: '',
    ...found?.offer,
    workedOut: { worksheetId: 'sheet', offer: name, basis: basisNow(data) },
  };
}

const groundOf = ({ worksheet, features, readings }: WorksheetData) => ({
  worksheets: [worksheet],
  features,
  readings,
});

const SPACER_C = 'Fit spacer C (bracket to leg)';
const thin = axle('.500');
const thick = axle('.550');

test('a step keeps its name when its figure is another one', () => {
  expect(namedSteps(thin).map(({ name }) => name)).toEqual(namedSteps(thick).map(({ name }) => name));
  expect(new Set(namedSteps(thin).map(({ name }) => name)).size).toBe(namedSteps(thin).length);
});

test('the words of a spacer are older once its bracket is another one, and come with its new length', () => {
  // C = 6.750 − 1.075 − 4.412 − .120 − .500 − .010 = .633; with .550 of bracket .583.
  const step = stepOf(thin, SPACER_C);
  expect(step.text).toBe(`${SPACER_C}, .633 in`);
  expect(areWordsOlder(step, groundOf(thin), thin)).toBe(false);
  expect(areWordsOlder(step, groundOf(thick), thick)).toBe(true);
  expect(wordedNow(step, thick)?.text).toBe(`${SPACER_C}, .583 in`);
});

test('words without a figure stay as they are, but what was done by them is to be done again', () => {
  const step = stepOf(thin, 'Fit the bracket');
  expect(areWordsOlder(step, groundOf(thick), thick)).toBe(false);
  const done = { ...step, done: { at: 5, by: 'Jo B.', basis: basisNow(thin) } };
  expect(asItStands(done, groundOf(thin))).toBe(done);
  expect(asItStands(done, groundOf(thick))).toMatchObject({ wasDone: { by: 'Jo B.' } });
  expect(asItStands(done, groundOf(thick)).done).toBeUndefined();
});

test('a step whose worksheet asks for no such thing any more is older', () => {
  const drum = axle('.500', { layout: 'trailer-hub' });
  expect(areWordsOlder(stepOf(thin, SPACER_C), groundOf(drum), drum)).toBe(true);
});

test('what was done before a Slipfit kept what it was done by stands as it stood', () => {
  const done = { ...stepOf(thin, SPACER_C), done: { at: 5, by: 'Jo B.' } };
  expect(asItStands(done, groundOf(thick))).toBe(done);
});
