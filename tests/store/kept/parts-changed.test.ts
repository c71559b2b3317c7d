import { afterEach, describe, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { addPiece } from '../../../src/store/kept/drawer.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { giveCutSize } from '../../../src/store/kept/give-cut-size.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { StackPartInput } from '../../../src/store/base/records.ts';
import { takePieces } from '../../../src/store/kept/take-pieces.ts';
import { takeShims } from '../../../src/store/kept/take-shims.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, getWorksheet, setPart, setSize } from '../../../src/store/kept/worksheets.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

const typed = (text: string) => ({ from: 'typed', ...worked(readEntry(text, { unit: 'in' })) }) as const;
const micrometer = usualTools.find(({ id }) => id === 'micrometer-0-1');
const washer: StackPartInput = { name: 'washer', order: 1, count: 1, adjustable: false, size: typed('.062') };

async function stackIn(store: Store, kind = 'spacer-stack') {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  return worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind,
      title: 'Bracket',
      sizes: { fixed: typed('.970') },
      parts: { a: washer, b: { ...washer, name: 'bracket', order: 2 } },
    }),
  );
}

const changed = async (store: Store, id: string) => (await getWorksheet(store, id))?.partsChanged?.why;

describe('the parts of a stack are other ones once', () => {
  const thicker = { ...washer, size: typed('.063') };
  test.each([
    { what: 'one is taken out', part: undefined, why: 'washer taken out' },
    { what: 'one is of another size', part: thicker, why: 'washer of another size' },
    { what: 'there are two of it', part: { ...washer, count: 2 }, why: '2 of washer in place of 1' },
  ])('$what', async ({ part, why }) => {
    const store = await openForTest();
    const { id } = await stackIn(store);
    worked(await setPart(store, id, 'a', part));
    expect(await changed(store, id)).toBe(why);
  });

  test('one is put in, or another sleeve', async () => {
    const store = await openForTest();
    const { id } = await stackIn(store);
    worked(await setPart(store, id, 'c', { ...washer, name: 'shim' }));
    expect(await changed(store, id)).toBe('shim put in');
    worked(await setSize(store, id, 'fixed', typed('.971')));
    expect(await changed(store, id)).toBe('sleeve or opening of another size');
  });

  test('a spacer of an axle is another one; what is only wanted of it changes nothing', async () => {
    const store = await openForTest();
    const { id } = await stackIn(store, 'axle-line-up');
    worked(await setSize(store, id, 'floatRead', typed('.010')));
    worked(await setSize(store, id, 'spacerLimit', typed('.004')));
    worked(await setSize(store, id, 'leftFloat', typed('.012')));
    expect(await changed(store, id)).toBeUndefined();
    worked(await setSize(store, id, 'onHand-outer', typed('.630')));
    expect(await changed(store, id)).toBe('a part of another size');
  });

  test('shims come out of the drawer into it', async () => {
    const store = await openForTest();
    const { id } = await stackIn(store);
    const piece = { kind: 'shim', name: 'Shim .010', material: '', thickness: typed('.010') } as const;
    const shim = worked(await addPiece(store, piece, 2));
    worked(await takeShims(store, id, [{ pieceId: shim.id, count: 1 }]));
    expect(await changed(store, id)).toBe('Shim .010 put in');
  });

  test('one was cut and its new size is in', async () => {
    const store = await openForTest();
    const { id } = await stackIn(store);
    const basis = { readings: [], worksheet: '' };
    worked(
      await giveCutSize(store, {
        worksheetId: id,
        place: { partId: 'a' },
        size: typed('.060'),
        cutIds: [],
        basis,
      }),
    );
    expect(await changed(store, id)).toBe('washer of another size');
  });

  test('and the same ones again after one undo', async () => {
    const store = await openForTest();
    const { id } = await stackIn(store);
    worked(await setPart(store, id, 'a', undefined));
    worked(await undoLast(store, (await latestUndo(store))?.id ?? ''));
    expect(await changed(store, id)).toBeUndefined();
  });
});

test.each<{ what: string; part: StackPartInput }>([
  { what: 'another name', part: { ...washer, name: 'thin washer' } },
  { what: 'that it may be cut', part: { ...washer, adjustable: true } },
  { what: 'its least length', part: { ...washer, leastLength: typed('.050') } },
  { what: 'its place in the stack', part: { ...washer, order: 5 } },
  {
    what: 'the tool it was read with',
    part: { ...washer, size: { ...typed('.062'), ...(micrometer && { tool: micrometer }) } },
  },
])('$what makes no other part of it', async ({ part }) => {
  const store = await openForTest();
  const { id } = await stackIn(store);
  worked(await setPart(store, id, 'a', part));
  expect(await changed(store, id)).toBeUndefined();
});

test.each(['toString', 'constructor', 'a newer kind'])(
  'a worksheet of a kind that isn’t known here (%s) can be changed all the same',
  async (kind) => {
    const store = await openForTest();
    const { id } = await stackIn(store, kind);
    worked(await setPart(store, id, 'a', undefined));
    expect(await changed(store, id)).toBeUndefined();
  },
);

test('what is wanted, and the gap itself, make no other parts', async () => {
  const store = await openForTest();
  const { id, jobId } = await stackIn(store);
  const gap = worked(await createFeature(store, { jobId, kind: 'gap', name: 'gap' }));
  for (const name of ['lower', 'upper', 'aim', 'direct', 'directProud'])
    // oxlint-disable-next-line no-await-in-loop
    worked(await setSize(store, id, name, typed('.010')));
  worked(await setSize(store, id, 'direct', { from: 'feature', featureId: gap.id }));
  expect(await changed(store, id)).toBeUndefined();
});

describe('slop that was read of a pin in its bore', () => {
  const pinned = async (store: Store, kind: 'hole-and-pin' | 'fit') => {
    const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    const sizes = { bore: typed('.4380'), pin: typed('.4375'), slop: typed('.0005') };
    return worked(await createWorksheet(store, { jobId: job.id, kind, title: 'Pivot', sizes }));
  };

  test.each(['hole-and-pin', 'fit'] as const)(
    'is of other parts once either is another one: %s',
    async (kind) => {
      const store = await openForTest();
      const { id } = await pinned(store, kind);
      worked(await setSize(store, id, 'nominal', typed('7/16')));
      worked(await setSize(store, id, 'lower', typed('.0005')));
      expect(await changed(store, id)).toBeUndefined();
      worked(await setSize(store, id, 'pin', typed('.4340')));
      expect(await changed(store, id)).toBe('pin of another size');
      worked(await setSize(store, id, 'bore', typed('.4390')));
      expect(await changed(store, id)).toBe('bore of another size');
    },
  );

  test('stays of the same parts where one is measured after it, or is the same size again', async () => {
    const store = await openForTest();
    const { id } = await pinned(store, 'fit');
    const { id: other } = worked(
      await createWorksheet(store, {
        jobId: (await getWorksheet(store, id))?.jobId ?? '',
        kind: 'fit',
        title: 'Pivot',
        sizes: { slop: typed('.0005'), bore: typed('.4380') },
      }),
    );
    worked(await setSize(store, other, 'pin', typed('.4375')));
    worked(await setSize(store, other, 'bore', typed('.4380')));
    expect(await changed(store, other)).toBeUndefined();
  });
});

test('end play of taper rollers was read with the shim that was in: another shim sets it aside', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Trailer', systems: [] }));
  const { id } = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'bearing-seat',
      title: 'Hub',
      choices: { bearing: 'taper', setBy: 'shim-behind' },
      sizes: { lower: typed('.001'), upper: typed('.003') },
    }),
  );
  worked(await setSize(store, id, 'endPlay', typed('.009')));
  expect((await getWorksheet(store, id))?.sizes['endPlay']).toHaveProperty('at');
  worked(await setSize(store, id, 'shim', typed('.100')));
  worked(await setSize(store, id, 'upper', typed('.004')));
  expect(await changed(store, id)).toBeUndefined();
  worked(await setSize(store, id, 'shim', typed('.107')));
  expect(await changed(store, id)).toBe('a part of another size');
});

test('a gap that is typed keeps when, a size of a part doesn’t', async () => {
  const store = await openForTest();
  const { id } = await stackIn(store);
  worked(await setSize(store, id, 'direct', typed('.004')));
  const sizes = (await getWorksheet(store, id))?.sizes;
  expect(sizes?.['direct']).toHaveProperty('at');
  expect(sizes?.['fixed']).not.toHaveProperty('at');
});

test('a shim taken for a bearing makes its recess another one, too', async () => {
  const store = await openForTest();
  const { id } = await stackIn(store, 'bearing-seat');
  const piece = { kind: 'shim', name: 'Shim .010', material: '', thickness: typed('.010') } as const;
  const shim = worked(await addPiece(store, piece, 2));
  worked(await takePieces(store, id, [{ pieceId: shim.id, count: 1 }], { shim: typed('.010') }));
  expect(await changed(store, id)).toBe('a part of another size');
});
