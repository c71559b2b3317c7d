import { describe, expect, test } from 'vitest';
import { getList, type Need } from '../../../src/engine/job/get-list.ts';
import { sayGetList, sayStillToGet } from '../../../src/engine/job/say-get.ts';

const tap: Need = { kind: 'tap', what: 'STI tap 7/16-20 UNF', count: 1, purpose: 'left link arm' };
const inserts: Need = { kind: 'insert', what: 'insert 7/16-20 × .656', count: 2, purpose: 'left link arm' };

describe('what has to be got for a job', () => {
  test('is one tap, however many holes it cuts, and as many inserts as all holes take', () => {
    const list = getList([
      tap,
      inserts,
      { ...tap, purpose: 'right link arm' },
      { ...inserts, purpose: 'right link arm' },
    ]);
    expect(list.map(({ what, count, purposes }) => ({ what, count, purposes }))).toEqual([
      { what: 'STI tap 7/16-20 UNF', count: 1, purposes: ['left link arm', 'right link arm'] },
      { what: 'insert 7/16-20 × .656', count: 4, purposes: ['left link arm', 'right link arm'] },
    ]);
  });

  test('has tools before what they work on, and what the fitter adds himself last', () => {
    const list = getList([
      { kind: 'own', what: 'brake fluid', count: 1, purpose: '' },
      { kind: 'stock', what: '303 bar, 1 in × 1 1/2', count: 1, purpose: 'outer spacer' },
      tap,
    ]);
    expect(list.map(({ kind }) => kind)).toEqual(['tap', 'stock', 'own']);
  });

  test('keeps a tick only for what was ticked: another size or more pieces are to be got again', () => {
    const [two] = getList([inserts]);
    const [four] = getList([inserts, { ...inserts, purpose: 'right link arm' }]);
    const [longer] = getList([{ ...inserts, what: 'insert 7/16-20 × .875' }]);
    expect(new Set([two?.key, four?.key, longer?.key]).size).toBe(3);
  });

  test('two long names that differ only at their ends are two things', () => {
    const bar = (metal: string) =>
      getList([
        {
          ...tap,
          kind: 'stock',
          what: `bar for the offset bushing of the brake arm, 1-1/16 in or larger, 1.500 in long when finished, ${metal}`,
        },
      ])[0]?.key;
    expect(bar('brass')).not.toBe(bar('bronze'));
    expect(bar('brass')?.length).toBeLessThanOrEqual(100);
  });

  test('a tick holds for a tap that a second hole needs too', () => {
    expect(getList([tap, { ...tap, purpose: 'right link arm' }])[0]?.key).toBe(getList([tap])[0]?.key);
  });

  test('goes out as text with the job over it, a line a thing, pieces counted', () => {
    expect(sayGetList('Outfit 7', getList([tap, inserts]))).toBe(
      'Outfit 7\n- STI tap 7/16-20 UNF\n- 2 × insert 7/16-20 × .656',
    );
  });

  test.each([
    { open: 0, said: 'all there' },
    { open: 1, said: '1 to get' },
    { open: 4, said: '4 to get' },
  ])('$open things that are missing: $said', ({ open, said }) => {
    expect(sayStillToGet(open)).toBe(said);
  });
});
