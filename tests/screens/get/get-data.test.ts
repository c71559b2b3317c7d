import { describe, expect, test } from 'vitest';
import { worksheetOf as worksheetOfKind } from '../../../src/engine/worksheets/all-worksheets.ts';
import { getLines } from '../../../src/screens/get/get-data.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { newCuts } from '../../../src/screens/worksheets/new-cuts.ts';
import type { Cut, CutState } from '../../../src/store/base/records.ts';
import { typedSize, worksheetOf } from '../worksheets/worksheet-for-test.ts';

const data = worksheetOf('hole-and-pin', {
  sizes: {
    bore: typedSize('.4487'),
    pin: typedSize('.4370'),
    wall: typedSize('.600'),
    thickness: typedSize('.750'),
  },
  choices: {
    thread: '7/16-20 UNF',
    joint: 'located',
    shankPasses: 'no',
    facesCarry: 'yes',
    partMetal: 'low-carbon-steel',
    bushingMetal: 'bearing-bronze',
  },
});

/** The cuts of a way as they stand in the job's list once it was taken. */
function taken(id: string, stateOf: (part: string) => CutState = () => 'to-cut'): readonly Cut[] {
  const way = worksheetOfKind('hole-and-pin')
    ?.cuts(givenOf(data))
    .find((other) => other.id === id);
  if (!way) throw new Error(`there is no way ${id}`);
  return newCuts(data, way, []).map((cut, index) => ({
    ...cut,
    id: `cut${index}`,
    state: stateOf(cut.part),
    passes: {},
    createdAt: 0,
    touchedAt: 0,
  }));
}

const listed = (cuts: readonly Cut[]) =>
  getLines({
    ...data,
    worksheets: [data.worksheet],
    features: [],
    readings: [],
    drawer: [],
    tools: [...data.tools],
    cuts: [...cuts],
    steps: [],
  }).map(({ what }) => what);

describe('of a hole with several cures the list', () => {
  test('is empty while none is taken', () => {
    expect(listed([])).toEqual([]);
  });

  test('has the reamers by their names and the bar of the bushing that is taken', () => {
    expect(listed(taken('bushing'))).toEqual([
      'reamer 9/16 in',
      'reamer 7/16 in',
      expect.stringMatching(/^bar for the bushing, /),
    ]);
  });

  test('has the larger bolt, where that is taken', () => {
    expect(listed(taken('larger-pin'))).toEqual([expect.stringMatching(/^reamer /), 'bolt 1/2 in']);
  });

  test('asks for no bar once the bushing is in the chuck, and again where it was scrapped', () => {
    const bars = (state: CutState) =>
      listed(taken('bushing', (part) => (part === 'bushing' ? state : 'to-cut'))).filter((what) =>
        what.startsWith('bar'),
      );
    expect(bars('cutting')).toEqual([]);
    expect(bars('to-size')).toEqual([]);
    expect(bars('scrapped')).toHaveLength(1);
  });
});
