import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addressOf, hrefOf, type Address } from '../../src/screens/address.ts';

// Ids and names may hold anything a backup from elsewhere holds: slashes, spaces, percent signs, other scripts.
const id = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 });
const path = fc.array(id, { minLength: 1, maxLength: 4 }).map((parts) => parts.join('/'));

const address: fc.Arbitrary<Address> = fc.oneof(
  fc.constantFrom<Address>(
    { at: 'jobs' },
    { at: 'new-job' },
    { at: 'new-reading' },
    { at: 'drawer' },
    { at: 'new-piece' },
    { at: 'piece', pieceId: 'p/1' },
    { at: 'piece', pieceId: 'p1', field: 'outside' },
    { at: 'shop' },
    { at: 'restore' },
    { at: 'charts', chart: 'drills' },
    { at: 'charts', chart: 'list' },
    { at: 'charts', chart: 'tap-drills' },
    { at: 'charts', chart: 'inserts' },
    { at: 'charts', chart: 'clearance-holes' },
    { at: 'charts', chart: 'fits' },
    { at: 'charts', chart: 'materials' },
    { at: 'charts', chart: 'measuring-tools' },
  ),
  fc
    .tuple(fc.constantFrom('job', 'route', 'readings', 'new-feature', 'worksheets', 'get', 'sheet'), id)
    .map(([at, jobId]) => ({ at, jobId })),
  // A feature's id is never the word that stands for a new one.
  fc
    .tuple(
      id,
      id.filter((one) => one !== 'new'),
      fc.option(path, { nil: undefined }),
    )
    .map(([jobId, featureId, choosing]) => ({
      at: 'feature' as const,
      jobId,
      featureId,
      ...(choosing !== undefined && { choosing }),
    })),
  fc.tuple(id, id, fc.option(path, { nil: undefined })).map(([jobId, worksheetId, field]) => ({
    at: 'worksheet' as const,
    jobId,
    worksheetId,
    ...(field !== undefined && { field }),
  })),
  fc
    .tuple(id, fc.option(path, { nil: undefined }))
    .map(([toolId, field]) => ({ at: 'tool' as const, toolId, ...(field !== undefined && { field }) })),
);

describe('an address', () => {
  test('comes back from the browser’s bar as the place it was made for', () => {
    fc.assert(
      fc.property(address, (place) => {
        expect(addressOf(hrefOf(place))).toEqual(place);
      }),
    );
  });

  test('stays the same when the browser has spelled its odd characters in its own way', () => {
    fc.assert(
      fc.property(address, (place) => {
        const { hash } = new URL(hrefOf(place), 'https://shop.example/app/');
        expect(addressOf(hash)).toEqual(place);
      }),
    );
  });

  test('of a part’s size keeps the slashes of its field readable', () => {
    const place = { at: 'worksheet', jobId: 'j1', worksheetId: 'w1', field: 'part/p1/size' } as const;
    expect(hrefOf(place)).toBe('#/job/j1/worksheets/w1/part/p1/size');
    expect(addressOf('#/job/j1/worksheets/w1/part/p1/size')).toEqual(place);
  });

  test('of a part or a re-check is told from that of an assembly step', () => {
    const part = { at: 'assembly', jobId: 'j1', field: 'parts/p1' } as const;
    const step = { at: 'step', jobId: 'j1', stepId: 'p1', field: 'torque' } as const;
    expect(addressOf(hrefOf(part))).toEqual(part);
    expect(addressOf(hrefOf(step))).toEqual(step);
    expect(addressOf('#/job/j1/assembly')).toEqual({ at: 'assembly', jobId: 'j1' });
  });

  test('an id with a slash or a percent sign in it is one id', () => {
    const place = { at: 'feature', jobId: 'a/b', featureId: '50% #1', choosing: 'tool' } as const;
    expect(addressOf(hrefOf(place))).toEqual(place);
  });
});

describe('whatever is typed behind the #', () => {
  test('leads somewhere, and from there always to the same place', () => {
    const anything = fc.oneof(fc.string({ maxLength: 60 }), fc.webFragments(), path);
    fc.assert(
      fc.property(anything, fc.constantFrom('', '#', '#/', '#/job/', '#/shop/tool/'), (text, start) => {
        const place = addressOf(start + text);
        expect(addressOf(hrefOf(place))).toEqual(place);
      }),
    );
  });

  test.each(['', '#', '#/', '#/nowhere', '#/job', '#/job/', '#/%', '#/constructor'])(
    '“%s” leads to the job list',
    (hash) => {
      expect(addressOf(hash)).toEqual({ at: 'jobs' });
    },
  );

  test('an unknown chart leads to the first one, sizes and drills', () => {
    expect(addressOf('#/charts')).toEqual({ at: 'charts', chart: 'drills' });
    expect(addressOf('#/charts/nowhere')).toEqual({ at: 'charts', chart: 'drills' });
  });

  test('an unknown place inside a job leads to its route', () => {
    expect(addressOf('#/job/j1/nowhere')).toEqual({ at: 'route', jobId: 'j1' });
    expect(addressOf('#/job/j1')).toEqual({ at: 'route', jobId: 'j1' });
  });

  test('a broken percent sign is taken as it stands', () => {
    expect(addressOf('#/job/50%/sheet')).toEqual({ at: 'sheet', jobId: '50%' });
  });
});
