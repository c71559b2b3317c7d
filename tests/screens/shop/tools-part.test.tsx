import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { canMeasure } from '../../../src/engine/reading/measuring-tool.ts';
import { FeatureScreen } from '../../../src/screens/readings/feature-screen.tsx';
import { ShopScreen } from '../../../src/screens/shop/shop-screen.tsx';
import { createFeature } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { measuringTools, removeTool } from '../../../src/store/kept/tools.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(clearAway);

async function withoutGapTools(): Promise<Store> {
  const store = await openForTest();
  const gapTools = (await measuringTools(store)).filter((tool) => canMeasure(tool, 'gap'));
  // One after the other, as they are removed.
  // oxlint-disable-next-line no-await-in-loop
  for (const { id } of gapTools) worked(await removeTool(store, id));
  return store;
}

const gapToolsOf = async (store: Store) =>
  (await measuringTools(store)).filter((tool) => canMeasure(tool, 'gap')).map(({ id }) => id);

test('a removed usual tool is put back in Shop by one press, and that can be undone', async () => {
  const store = await withoutGapTools();
  onScreen(store, <ShopScreen />);
  fireEvent.click(await screen.findByRole('button', { name: 'Put back feeler gauges' }));
  await screen.findByText('feeler gauges');
  expect(await gapToolsOf(store)).toEqual(['feeler-gauges']);
  expect(screen.queryByRole('button', { name: 'Put back feeler gauges' })).toBeNull();
  fireEvent.click(await screen.findByRole('button', { name: 'Undo: put back feeler gauges' }));
  await waitFor(async () => expect(await gapToolsOf(store)).toEqual([]));
  expect(await screen.findByRole('button', { name: 'Put back feeler gauges' })).toBeTruthy();
});

test('a shop with all its usual tools has nothing to put back', async () => {
  onScreen(await openForTest(), <ShopScreen />);
  await screen.findByText('feeler gauges');
  expect(screen.queryByRole('button', { name: /^Put back/ })).toBeNull();
});

test('a pad that no tool can read for leads to Shop', async () => {
  const store = await withoutGapTools();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const gap = worked(await createFeature(store, { jobId: job.id, kind: 'gap', name: 'Side gap' }));
  onScreen(store, <FeatureScreen jobId={job.id} featureId={gap.id} />);
  const way = await screen.findByRole('link', { name: 'Shop' });
  expect(way.getAttribute('href')).toBe('#/shop');
  expect(screen.queryByRole('link', { name: 'Tool' })).toBeNull();
});
