import { describe, expect, test } from 'vitest';
import { route, type RouteQuestion } from '../../../src/engine/job/route.ts';
import { sayNext, sayRouteFault, sayRouteMark } from '../../../src/engine/job/say-route.ts';

const nothing: RouteQuestion = {
  sizes: [],
  worksheets: [],
  cuts: [],
  gets: [],
  checks: [],
  unchecked: [],
  steps: [],
  blockers: 0,
  rechecksDue: [],
};
const size = { id: 's', name: 'Left bore', doubted: false };
const stack = { id: 'w', name: 'Bracket float', found: 'good', asksForCut: false } as const;
const spacer = { id: 'c', name: 'Outer spacer, face', state: 'to-cut', older: false } as const;
const float = { id: 'f', name: 'Bracket float', found: 'not-done', older: false } as const;
const fit = { id: 'p', name: 'Fit the bracket', done: false, changed: false };
const rowOf = (q: Partial<RouteQuestion>, place: string) =>
  route({ ...nothing, ...q }).rows.find((row) => row.place === place);
const nextOf = (q: Partial<RouteQuestion>) => route({ ...nothing, ...q }).next;

describe('a job as its route', () => {
  test('has the places of the work in their order, none of them begun on a new job', () => {
    const { rows } = route(nothing);
    expect(rows.map(({ place }) => place)).toEqual([
      'measure',
      'decide',
      'cut',
      'get',
      'prove',
      'put-together',
      'sheet',
    ]);
    expect(new Set(rows.map(({ stands }) => stands))).toEqual(new Set(['not-begun']));
  });

  test('two of three cuts to size leave one open', () => {
    const done = { ...spacer, state: 'to-size' } as const;
    expect(rowOf({ cuts: [spacer, done, { ...done, id: 'd' }] }, 'cut')).toEqual({
      place: 'cut',
      stands: 'open',
      count: 3,
      open: 1,
    });
  });

  test('a scrapped cut counts no more', () => {
    expect(rowOf({ cuts: [{ ...spacer, state: 'scrapped' }] }, 'cut')).toMatchObject({ count: 0 });
  });

  test('a cut to size whose sizes changed since is not done, and says so', () => {
    const row = rowOf({ cuts: [{ ...spacer, state: 'to-size', older: true }] }, 'cut');
    expect(row).toMatchObject({ stands: 'open', open: 1, fault: 'stale' });
    expect(row && sayRouteFault(row)).toBe('older than its sizes');
  });

  test('a failed check is red, whatever else is open beside it', () => {
    const row = rowOf({ checks: [float, { ...float, id: 'g', found: 'no-good' }] }, 'prove');
    expect(row).toMatchObject({ fault: 'wrong', open: 2 });
    expect(row && sayRouteMark(row)).toBe('2 of 2 open');
  });

  test('a good worksheet that still asks for a cut is open; one that only says no good is wrong', () => {
    expect(rowOf({ worksheets: [{ ...stack, asksForCut: true }] }, 'decide')).toMatchObject({ open: 1 });
    expect(rowOf({ worksheets: [{ ...stack, found: 'no-good' }] }, 'decide')).toMatchObject({
      fault: 'wrong',
    });
    expect(rowOf({ worksheets: [stack] }, 'decide')).toMatchObject({ stands: 'done' });
  });

  test('a worksheet of which no check was made is a thing still to prove', () => {
    expect(rowOf({ unchecked: [{ id: 'w', name: 'Bracket float' }] }, 'prove')).toMatchObject({ open: 1 });
  });

  test('a signed job that was changed since is not done', () => {
    expect(rowOf({ signed: { changed: true } }, 'sheet')).toMatchObject({ stands: 'open', fault: 'stale' });
    expect(rowOf({ signed: { changed: false } }, 'sheet')).toMatchObject({ stands: 'done' });
  });
});

describe('the next act', () => {
  test.each([
    { when: 'nothing is there', q: {}, is: 'begin' },
    { when: 'sizes are read and nothing asked', q: { sizes: [size] }, is: 'decide' },
    {
      when: 'a cut is on the list',
      q: { worksheets: [{ ...stack, found: 'no-good' as const }], cuts: [spacer] },
      is: 'cut',
    },
    {
      when: 'a worksheet lacks a size',
      q: { worksheets: [{ ...stack, found: 'no-answer' as const }] },
      is: 'worksheet-lacks',
    },
    {
      when: 'an answer asks for a cut',
      q: { worksheets: [{ ...stack, asksForCut: true }] },
      is: 'worksheet-cut',
    },
    {
      when: 'all is cut and a tap is missing',
      q: { worksheets: [stack], gets: [{ what: 'STI tap M8', isThere: false }] },
      is: 'get',
    },
    { when: 'the check is not done', q: { worksheets: [stack], checks: [float] }, is: 'check' },
    {
      when: 'checks are good and a step is open',
      q: { worksheets: [stack], checks: [{ ...float, found: 'good' as const }], steps: [fit] },
      is: 'step',
    },
    { when: 'there are no steps yet', q: { worksheets: [stack] }, is: 'steps' },
    { when: 'all is done', q: { worksheets: [stack], steps: [{ ...fit, done: true }] }, is: 'sign' },
    {
      when: 'something stops the signing',
      q: { worksheets: [stack], steps: [{ ...fit, done: true }], blockers: 2 },
      is: 'blockers',
    },
    {
      when: 'it is signed and a re-check is due',
      q: { worksheets: [stack], signed: { changed: false }, rechecksDue: [{ id: 'r', name: 'Nuts' }] },
      is: 'recheck',
    },
  ])('$when: $is', ({ q, is }) => {
    expect(nextOf(q).is).toBe(is);
  });

  test('what is wrong comes before what is open: a failed check before the next cut', () => {
    expect(
      nextOf({ worksheets: [stack], cuts: [spacer], checks: [{ ...float, found: 'no-good' }] }),
    ).toMatchObject({ is: 'check-failed', of: { id: 'f' } });
  });

  test('a cut with older figures is never the next one to the machine', () => {
    expect(nextOf({ worksheets: [stack], cuts: [{ ...spacer, older: true }] }).is).toBe('cut-older');
  });

  test('what is on the machine goes on before what was listed first', () => {
    const cuts = [spacer, { ...spacer, id: 'd', state: 'cutting' } as const];
    expect(nextOf({ worksheets: [stack], cuts })).toMatchObject({ is: 'cut', of: { id: 'd' } });
  });

  test('is said in the fitter’s words, a name in the middle of a sentence with a small letter', () => {
    expect(sayNext({ is: 'check', of: { id: 'f', name: 'Side play of the bracket' } }).what).toBe(
      'Prove side play of the bracket',
    );
    expect(sayNext({ is: 'get', what: 'STI tap M8', more: 3 })).toMatchObject({
      what: 'Get STI tap M8',
      more: 'and 3 more',
    });
  });
});
