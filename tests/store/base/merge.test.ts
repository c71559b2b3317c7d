import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { KeptStamped } from '../../../src/store/base/kept.ts';
import {
  bringsFeatureBack,
  bringsJobBack,
  latestStamp,
  mergeRecords,
  mergeSets,
  sameRecord,
} from '../../../src/store/base/merge.ts';
import { canonicalText } from '../../../src/store/base/paths.ts';

const stampAt = (second: number, device = 'phone'): string =>
  `${String(1_700_000_000_000 + second * 1000).padStart(15, '0')}-0000-${device}`;

function record(fields: Record<string, unknown>, stamps: KeptStamped['stamps'], id = 'one'): KeptStamped {
  return { ...fields, id, stamps };
}

test('two phones that changed two fields keep both changes', () => {
  const made = { '*': stampAt(0) };
  const a = record({ name: 'Outfit', what: 'sidecar' }, { ...made, name: stampAt(5, 'a') });
  const b = record({ name: 'job', what: 'trailer' }, { ...made, what: stampAt(6, 'b') });
  expect(mergeRecords(a, b)).toMatchObject({ name: 'Outfit', what: 'trailer' });
});

test('of two changes of one field the later one stays', () => {
  const a = record({ name: 'early' }, { '*': stampAt(0), name: stampAt(5, 'a') });
  const b = record({ name: 'late' }, { '*': stampAt(0), name: stampAt(6, 'b') });
  expect(mergeRecords(a, b)).toMatchObject({ name: 'late' });
});

test('two sizes of one worksheet set on two phones are both there', () => {
  const a = record({ sizes: { bore: 1 } }, { '*': stampAt(0), 'sizes.bore': stampAt(1, 'a') });
  const b = record({ sizes: { pin: 2 } }, { '*': stampAt(0), 'sizes.pin': stampAt(2, 'b') });
  expect(mergeRecords(a, b)).toMatchObject({ sizes: { bore: 1, pin: 2 } });
});

test('a size taken out later stays out', () => {
  const a = record({ sizes: { bore: 1 } }, { '*': stampAt(0), 'sizes.bore': stampAt(1, 'a') });
  const b = record({ sizes: {} }, { '*': stampAt(0), 'sizes.bore': stampAt(2, 'b') });
  expect(mergeRecords(a, b)).toMatchObject({ sizes: {} });
});

test('a removal holds against a later change of another field', () => {
  const removed = record(
    { name: 'Outfit', deleted: stampAt(5, 'a') },
    { '*': stampAt(0), deleted: stampAt(5, 'a') },
  );
  const renamed = record({ name: 'Outfit 8' }, { '*': stampAt(0), name: stampAt(9, 'b') });
  expect(mergeRecords(removed, renamed)).toMatchObject({ name: 'Outfit 8', deleted: stampAt(5, 'a') });
});

test('a removal that was undone later is undone everywhere', () => {
  const removed = record({ deleted: stampAt(5) }, { '*': stampAt(0), deleted: stampAt(5) });
  const undone = record({}, { '*': stampAt(0), deleted: stampAt(6) });
  expect('deleted' in mergeRecords(removed, undone)).toBe(false);
});

test('a reading logged elsewhere brings its removed feature back, one removed with it doesn’t', () => {
  const feature = { id: 'bore', deleted: stampAt(9) };
  expect(bringsFeatureBack(feature, [{ id: 'r', deleted: stampAt(9) }])).toBe(false);
  expect(bringsFeatureBack(feature, [{ id: 'r', deleted: stampAt(9) }, { id: 'elsewhere' }])).toBe(true);
});

test('a reading logged after its job was removed brings the job back, one from before doesn’t', () => {
  const job = { id: 'job', deleted: stampAt(9) };
  expect(bringsJobBack(job, [record({}, { '*': stampAt(8) })], [])).toBe(false);
  expect(bringsJobBack(job, [record({}, { '*': stampAt(10) })], [])).toBe(true);
});

test('the latest stamp of a record is that of its last changed field', () => {
  expect(latestStamp(record({}, { '*': stampAt(1), name: stampAt(7), what: stampAt(3) }))).toBe(stampAt(7));
});

// Few ids, fields, values and stamps, so that clashes and equal stamps are the rule and not the exception.
const value = fc.constantFrom<unknown>(undefined, 0, 1, 'a', ['x'], { deep: 1 }, { deep: 2, other: 1 });
const stamp = fc.constantFrom(stampAt(1), stampAt(2), stampAt(2, 'other'), stampAt(3));
const map = fc.dictionary(fc.constantFrom('bore', 'pin', '0'), fc.constantFrom<unknown>(1, 2, { from: 'x' }));
const path = fc.constantFrom(
  'name',
  'deleted',
  'sizes.bore',
  'parts.0',
  'passes.pin',
  'takes.0',
  'takes.bore',
);
const anyRecord = (id: fc.Arbitrary<string>): fc.Arbitrary<KeptStamped> =>
  fc
    .record({
      id,
      fields: fc.record({ name: value, what: value, deleted: value }),
      sizes: map,
      parts: map,
      passes: map,
      takes: map,
      every: stamp,
      stamps: fc.dictionary(path, stamp),
    })
    .map(({ id: ownId, fields, every, stamps, ...maps }) => {
      const present = Object.entries(fields).filter(([, one]) => one !== undefined);
      return {
        ...Object.fromEntries(present),
        ...maps,
        id: ownId,
        stamps: { ...stamps, '*': every },
      };
    });
const one = anyRecord(fc.constant('one'));
const set = fc.uniqueArray(anyRecord(fc.constantFrom('a', 'b', 'c', 'd')), { selector: ({ id }) => id });

const textOf = (records: readonly KeptStamped[]): string =>
  canonicalText(records.map((each) => mergeRecords(each, each)).toSorted((a, b) => a.id.localeCompare(b.id)));

test('two copies merged either way round are the same record', () => {
  fc.assert(
    fc.property(one, one, (a, b) => {
      expect(canonicalText(mergeRecords(a, b))).toBe(canonicalText(mergeRecords(b, a)));
    }),
  );
});

test('three phones’ records come to the same in any order of merging', () => {
  fc.assert(
    fc.property(set, set, set, (a, b, c) => {
      const inOrder = textOf(mergeSets(mergeSets(a, b), c));
      expect(textOf(mergeSets(a, mergeSets(b, c)))).toBe(inOrder);
      expect(textOf(mergeSets(mergeSets(c, a), b))).toBe(inOrder);
    }),
  );
});

test('merging the same records twice changes nothing', () => {
  fc.assert(
    fc.property(set, set, (a, b) => {
      const once = mergeSets(a, b);
      expect(textOf(mergeSets(once, b))).toBe(textOf(once));
      expect(once.every((merged) => sameRecord(merged, mergeRecords(merged, merged)))).toBe(true);
    }),
  );
});

test('no record is lost by merging', () => {
  fc.assert(
    fc.property(set, set, (a, b) => {
      const ids = new Set(mergeSets(a, b).map(({ id }) => id));
      expect([...a, ...b].every(({ id }) => ids.has(id))).toBe(true);
    }),
  );
});
