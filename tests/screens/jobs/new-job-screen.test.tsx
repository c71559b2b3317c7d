import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { NewJobScreen } from '../../../src/screens/jobs/new-job-screen.tsx';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { openForTest } from '../../store/open-for-test.ts';
import { aMomentLater, clearAway, onScreen } from '../on-screen.tsx';

afterEach(clearAway);

const key = (name: string) => screen.getByRole('button', { name });
const press = (name: string) => fireEvent.click(key(name));
const SYSTEMS = ['brake', 'steering', 'axle', 'wheel', 'engine', 'none of these'];

async function newJob() {
  const store = await openForTest();
  onScreen(store, <NewJobScreen />);
  return async () => (await listJobs(store, { limit: 9 })).jobs;
}

test('nothing is chosen beforehand, and a job isn’t made before it is said what it touches', async () => {
  const jobs = await newJob();
  expect(SYSTEMS.map((name) => key(name).getAttribute('aria-pressed'))).toEqual(SYSTEMS.map(() => 'false'));
  press('Make the job');
  expect((await screen.findByRole('alert')).textContent).toBe(
    'Say what it touches first. “None of these” is an answer too.',
  );
  expect(await jobs()).toEqual([]);
});

test('“none of these” is a choice, kept with the job', async () => {
  const jobs = await newJob();
  press('none of these');
  expect(key('none of these').getAttribute('aria-pressed')).toBe('true');
  press('Make the job');
  await waitFor(async () => expect(await jobs()).toMatchObject([{ systems: [], touchesNone: true }]));
});

test('a system takes the place of none, and taken back leaves nothing chosen', async () => {
  const jobs = await newJob();
  press('none of these');
  press('brake');
  expect(key('none of these').getAttribute('aria-pressed')).toBe('false');
  expect(key('brake').getAttribute('aria-pressed')).toBe('true');
  await aMomentLater();
  press('brake');
  expect(SYSTEMS.map((name) => key(name).getAttribute('aria-pressed'))).toEqual(SYSTEMS.map(() => 'false'));
  press('Make the job');
  await screen.findByRole('alert');
  press('axle');
  await aMomentLater();
  press('Make the job');
  await waitFor(async () => expect(await jobs()).toMatchObject([{ systems: ['axle'] }]));
});
