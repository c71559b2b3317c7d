import { describe, expect, test } from 'vitest';
import { spacerStack } from '../../../src/engine/worksheets/spacer-stack/spacer-stack.ts';
import { shimOffer, shimsOnHand } from '../../../src/screens/worksheets/shim-question.ts';
import { stackQuestion } from '../../../src/engine/worksheets/spacer-stack/question.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import type { DrawerPieceKind } from '../../../src/store/base/records.ts';
import { is, partOf, typedSize, worksheetOf } from './worksheet-for-test.ts';

type Piece = { kind?: DrawerPieceKind; size?: string; count?: number };

function dataWith(opening: string, pieces: readonly Piece[]): WorksheetData {
  const drawer = pieces.map(({ kind = 'shim', size, count = 4 }, index) => ({
    piece: {
      id: `piece ${index}`,
      kind,
      name: `${kind} ${size ?? ''}`,
      material: '',
      createdAt: 0,
      ...(size !== undefined && { thickness: typedSize(size) }),
    },
    count,
  }));
  const data = worksheetOf('spacer-stack', {
    sizes: { fixed: typedSize(opening) },
    parts: { hub: partOf(1, typedSize('.900')) },
    choices: { want: 'end-play' },
  });
  return { ...data, drawer };
}

function offered(data: WorksheetData) {
  const question = stackQuestion(givenOf(data));
  if (!question) throw new Error('no question');
  return shimOffer(data, question, spacerStack(question));
}

describe('shims on hand', () => {
  test('are shims, washers and spacers of a known thickness, while there are any', () => {
    const data = dataWith('.935', [
      { size: '.010' },
      { kind: 'washer', size: '1/32' },
      { kind: 'spacer', size: '.250' },
      { kind: 'bar-end' },
      { size: '.005', count: 0 },
      {},
    ]);
    expect(shimsOnHand(data).map(({ name }) => name)).toEqual(['shim .010', 'washer 1/32', 'spacer .250']);
  });
});

describe('what the drawer gives', () => {
  test('for .0348 end play that should be .004 is .030 of shims, leaving .0048', () => {
    // .9348 − .900 = .0348; 3 × .010 = .030 lies .0008 under the aim of .0308, inside .0288 to .0328.
    const offer = offered(dataWith('.9348', [{ size: '.010' }]));
    expect(offer?.ok && offer.value.pick.pieces).toBe(3);
    expect(offer?.ok && is(offer.value.after.gap, '.0048 in')).toBe(true);
    expect(offer?.ok && offer.value.after.verdict.kind).toBe('good');
  });

  test('for a stack that needs no shims is nothing', () => {
    expect(offered(dataWith('.904', [{ size: '.010' }]))).toBeUndefined();
  });

  test('out of an empty drawer is said to be nothing', () => {
    expect(offered(dataWith('.935', []))).toEqual({ ok: false, refusal: { code: 'no-shims' } });
  });
});
