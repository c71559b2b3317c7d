import { afterEach, expect, test } from 'vitest';
import { createFeature } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { act } from '../../../src/store/opening/act.ts';
import { rebuildClock } from '../../../src/store/opening/clock-rebuild.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { putDraft } from '../../../src/store/kept/drafts.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';
import { log } from '../two-phones-for-test.ts';

afterEach(closeAll);

/** As pairing leaves it: a mark beside the last stamp. */
async function pairedPhone(): Promise<Store> {
  const store = await openForTest();
  worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const clock: object = await store.db.get('device', 'clock');
  await store.db.put('device', { ...clock, home: true });
  await store.db.put('home', { id: 'place' });
  return store;
}

const noted = async (store: Store) => (await store.db.getAllKeys('outbox')).map(String);

test('a phone that is not paired notes nothing to be sent', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'left bore' }));
  expect(await noted(store)).toEqual([]);
});

test('on a paired phone each act notes what it touched, and neither drafts, settings nor undo', async () => {
  const store = await pairedPhone();
  const job = worked(await createJob(store, { name: 'Hand cart', systems: [] }));
  expect(await noted(store)).toEqual([`jobs/${job.id}`]);
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'left bore' }));
  const reading = worked(await log(store, bore.id, job.id, '.4487'));
  worked(await putDraft(store, 'size', { typed: '.44', unit: 'in' }));
  worked(await putSetting(store, 'shownUnit', 'mm'));
  expect(await noted(store)).toEqual([`features/${bore.id}`, `jobs/${job.id}`, `readings/${reading.id}`]);
});

test('an act that is refused notes nothing', async () => {
  const store = await pairedPhone();
  const job = { id: 'one', name: 'Hand cart' };
  const refused = await act(store, { stores: ['jobs'] }, (a) => {
    a.putKept('jobs', job);
    a.refuse({ code: 'nothing-to-undo' });
  });
  expect(refused.ok).toBe(false);
  expect(await noted(store)).toEqual([]);
});

test('an act on very many records notes once that all is to be looked through', async () => {
  const store = await pairedPhone();
  const many = Array.from({ length: 2001 }, (_none, index) => ({ id: `p${index}` }));
  worked(await act(store, { stores: ['parts'] }, (a) => a.putMany('parts', many)));
  expect(await noted(store)).toEqual(['*']);
});

test('a clock note that is damaged and made anew still says that the phone is paired', async () => {
  const store = await pairedPhone();
  await store.db.put('device', { id: 'clock', last: 7 });
  worked(await rebuildClock(store));
  const job = worked(await createJob(store, { name: 'Hand cart', systems: [] }));
  expect(await noted(store)).toEqual([`jobs/${job.id}`]);
});
