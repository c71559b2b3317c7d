import { describe, expect, test } from 'vitest';
import {
  decimalText,
  isLess,
  isMore,
  lengthOf,
  times,
  type Length,
} from '../../../src/engine/length/length.ts';
import { takesFor, type TakesQuestion } from '../../../src/engine/cut/pass-plan-takes.ts';
import { TAKES_SOURCE, turningDepths, unknownDepths } from '../../../src/engine/cut/tables/cut-takes.ts';
import { materials, rowOf } from '../../../src/engine/material/tables/materials.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const steel = {
  of: 'outside',
  operation: 'turn',
  cuttingTool: 'hss',
  material: 'low-carbon-steel',
} as const satisfies TakesQuestion;

function shown(q: TakesQuestion) {
  const { largest, least, finish } = takesFor(q);
  return [largest, least, finish].map((one) => decimalText(one, 'in', 4));
}

describe('what one pass may take', () => {
  test('is twice the depth of cut on a diameter, and the depth on a length', () => {
    // Steel, high-speed edge: .050 deep at most, .0005 at least, .006 for the finish; facing has half of the most.
    expect(shown(steel)).toEqual(['0.1000', '0.0010', '0.0120']);
    expect(shown({ ...steel, of: 'length', operation: 'face' })).toEqual(['0.0250', '0.0005', '0.0060']);
  });

  test('is half for a slender boring bar, and two fifths for a ring on its mandrel', () => {
    expect(shown({ ...steel, of: 'bore', operation: 'bore' })[0]).toBe('0.0500');
    expect(shown({ ...steel, operation: 'ring' })[0]).toBe('0.0400');
  });

  test('is never so little in stainless that it rubs: three thou deep in 304, five with an insert', () => {
    expect(shown({ ...steel, material: 'stainless-304' })[1]).toBe('0.0060');
    expect(shown({ ...steel, material: 'stainless-304', cuttingTool: 'carbide' })[1]).toBe('0.0100');
  });

  test('is the cut’s own figure where it has one, and the source says whose it is', () => {
    const own = { ...steel, largestTake: inch('.030'), finishTake: inch('.008') };
    expect(shown(own)).toEqual(['0.0300', '0.0010', '0.0080']);
    expect(takesFor(own).source).toBe('your own figures');
    expect(takesFor({ ...steel, largestTake: inch('.030') }).source).toBe(TAKES_SOURCE);
    expect(takesFor({ ...steel, finishTake: inch('.008') }).source).toBe(TAKES_SOURCE);
    expect(takesFor(steel).source).toMatch(/common practice, no source/);
  });

  test('has its least lowered to an own largest that is smaller: the user knows the tool', () => {
    expect(shown({ ...steel, material: 'stainless-304', largestTake: inch('.004') })).toEqual([
      '0.0040',
      '0.0040',
      '0.0080',
    ]);
  });

  test('leaves two passes that cut for the finish, and no more than two of the largest', () => {
    expect(shown({ ...steel, material: 'stainless-304', finishTake: inch('.002') })[2]).toBe('0.0120');
    expect(shown({ ...steel, largestTake: inch('.004'), finishTake: inch('.050') })[2]).toBe('0.0080');
  });

  test('is the most careful of all where the metal is not known', () => {
    const { cuttingTool, of, operation } = steel;
    expect(shown({ cuttingTool, of, operation })).toEqual(['0.0500', '0.0060', '0.0200']);
  });
});

describe('the usual depths', () => {
  const rows = (['hss', 'carbide'] as const).flatMap((tool) =>
    materials.map(({ id }) => ({ tool, id, ...turningDepths[tool][rowOf(id)] })),
  );
  const twice = (length: Length) => times(length, 2);

  test('leave two passes of at least the least for the finish, below the largest', () => {
    expect(rows.filter((row) => isLess(row.finish, twice(row.least)))).toEqual([]);
    expect(rows.filter((row) => isLess(row.largest, row.finish))).toEqual([]);
  });

  test('of an unknown metal take no more, and rub no sooner, than those of any metal', () => {
    for (const { tool, largest, least } of rows) {
      expect(isMore(unknownDepths[tool].largest, largest)).toBe(false);
      expect(isLess(unknownDepths[tool].least, least)).toBe(false);
    }
  });

  test('are larger at the least for the metals that harden where they are rubbed', () => {
    for (const tool of ['hss', 'carbide'] as const)
      for (const id of ['stainless-303', 'stainless-304', 'titanium-6-4'] as const)
        expect(isMore(turningDepths[tool][id].least, turningDepths[tool]['low-carbon-steel'].least)).toBe(
          true,
        );
  });
});
