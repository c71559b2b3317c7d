import { screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { JobsScreen } from '../../../src/screens/jobs/jobs-screen.tsx';
import { drawPainted } from '../../../src/screens/jobs/painted-list.ts';
import { dropPainted } from '../../../src/screens/jobs/painted-mark.ts';
import { changeJob, createJob, removeJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

const KEY = 'slipfit-painted';

beforeEach(() => localStorage.clear());
afterEach(clearAway);

/** The list as the app draws it, in the place that a screen has in the frame. */
function listOn(store: Store) {
  return onScreen(
    store,
    <div class="app-place">
      <JobsScreen />
    </div>,
  );
}

/** What the next start draws before the app's own scripts are read. */
function nextStart(): HTMLElement {
  document.body.insertAdjacentHTML('beforeend', '<div class="app-main"></div>');
  const frame = document.querySelector<HTMLElement>('.app-main');
  if (!frame) throw new Error('no frame');
  drawPainted();
  frame.remove();
  return frame;
}

async function untilKept(words: string): Promise<void> {
  await waitFor(() => expect(localStorage.getItem(KEY)).toContain(words));
}

test('the next start begins with the list as it was painted last: its words, its links and no key that would do nothing', async () => {
  const store = await openForTest();
  const { id } = worked(
    await createJob(store, { name: 'Sprint & hub <b>', what: 'left leg', systems: ['axle'] }),
  );
  listOn(store);
  await screen.findByText('left leg');
  await untilKept('left leg');
  const frame = nextStart();
  expect(frame.querySelector('h1')?.textContent).toBe('Jobs');
  expect(frame.querySelector('li .row-title')?.textContent).toBe('Sprint & hub <b>');
  expect(frame.querySelector('li')?.textContent).toContain('safety-critical');
  const links = [...frame.querySelectorAll('a')].map((link) => link.getAttribute('href'));
  expect(links).toEqual([`#/job/${id}`, '#/find', '#/new-job']);
  expect(frame.querySelectorAll('button, input, img')).toHaveLength(0);
});

test('what changes on the screen is what the next start begins with', async () => {
  const store = await openForTest();
  const { id } = worked(await createJob(store, { name: 'old name', systems: [] }));
  listOn(store);
  await untilKept('old name');
  worked(await changeJob(store, id, { name: 'new name' }));
  await untilKept('new name');
  expect(nextStart().textContent).not.toContain('old name');
});

test('an empty list, lost records and another place leave nothing to begin with', async () => {
  const store = await openForTest();
  const { id } = worked(await createJob(store, { name: 'the only one', systems: [] }));
  const { unmount } = listOn(store);
  await untilKept('the only one');
  worked(await removeJob(store, id));
  await waitFor(() => expect(localStorage.getItem(KEY)).toBeNull());
  worked(await createJob(store, { name: 'another', systems: [] }));
  await untilKept('another');
  unmount();
  expect(localStorage.getItem(KEY)).toBeNull();
  expect(nextStart().childElementCount).toBe(0);
});

test.each([
  ['no text of ours', 'shopping list'],
  ['a script', JSON.stringify({ light: '', drawn: ['div', {}, ['script', {}, 'alert(1)']] })],
  [
    'an address that runs',
    JSON.stringify({ light: '', drawn: ['a', { href: 'javascript:alert(1)' }, 'Jobs'] }),
  ],
  ['what happens at a press', JSON.stringify({ light: '', drawn: ['a', { onclick: 'alert(1)' }, 'Jobs'] })],
  ['a drawing without end', JSON.stringify({ light: '', drawn: null })],
])('%s in its place is not drawn', (_what, text) => {
  localStorage.setItem(KEY, text);
  expect(nextStart().childElementCount).toBe(0);
  dropPainted();
});
