import { screen, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { RouteScreen } from '../../../src/screens/route/route-screen.tsx';
import { createCheck } from '../../../src/store/kept/checks.ts';
import { createCuts } from '../../../src/store/kept/cuts.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { logReading } from '../../../src/store/kept/readings.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { Job } from '../../../src/store/base/records.ts';
import { addSteps } from '../../../src/store/kept/steps.ts';
import { facing, inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

let store: Store;
let job: Job;
beforeEach(async () => {
  store = await openForTest();
  job = worked(await createJob(store, { name: 'Hillclimb three-wheeler', systems: ['brake'] }));
});
afterEach(clearAway);

const panel = () => screen.findByRole('region', { name: 'Next' });
const placeRow = async (name: RegExp) => screen.findByRole('link', { name });

describe('the route of a job', () => {
  test('begins with the first size, or with a question at once', async () => {
    onScreen(store, <RouteScreen jobId={job.id} />);
    await within(await panel()).findByText('Measure the first size');
    expect(screen.getByRole('link', { name: 'New size' }).getAttribute('href')).toBe(
      `#/job/${job.id}/readings/new`,
    );
    expect(screen.getByRole('link', { name: 'Decide' }).getAttribute('href')).toBe(
      `#/job/${job.id}/worksheets`,
    );
    expect(document.querySelectorAll('.button-main')).toHaveLength(1);
  });

  test('says of the next cut what, to what size, and where it is cut, one press from the machine', async () => {
    const [cut] = worked(await createCuts(store, [facing(job.id)]));
    onScreen(store, <RouteScreen jobId={job.id} />);
    const next = within(await panel());
    await next.findByText(new RegExp(`^${cut?.name} to `));
    expect(next.getByText(/lathe$/)).toBeTruthy();
    expect(screen.getByRole('link', { name: 'To the lathe' }).getAttribute('href')).toBe(
      `#/job/${job.id}/cuts/${cut?.id}/lathe`,
    );
    expect((await placeRow(/^Cut/)).textContent).toContain('1 at the lathe');
  });

  test('has each place with its mark in words, how many are in it, and what is open by name', async () => {
    worked(
      await createCheck(store, {
        jobId: job.id,
        name: 'Slides free by hand',
        by: 'by-eye',
        limitsFrom: 'own',
        how: 'look',
      }),
    );
    worked(
      await addSteps(store, [
        { jobId: job.id, text: 'Fit the bracket', locker: 'medium', cureHours: '24' },
        { jobId: job.id, text: 'Tighten it', torque: { typed: '30', unit: 'lbf-ft', source: 'manual' } },
      ]),
    );
    onScreen(store, <RouteScreen jobId={job.id} />);
    await screen.findByText('1 open');
    expect((await placeRow(/^Prove/)).textContent).toMatch(/1 open.*slides free by hand.*1$/);
    expect((await placeRow(/^Put together/)).textContent).toMatch(/2 open.*1 thread locker, 1 torque.*2$/);
    expect((await placeRow(/^Get/)).textContent).toMatch(/1 to get.*thread locker, medium/);
    expect((await placeRow(/^Measure/)).textContent).toContain('not begun');
  });

  test('has the size that was read last one press away, to be read again', async () => {
    const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'left bore' }));
    const [caliper] = usualTools;
    if (!caliper) throw new Error('there are no usual tools');
    worked(
      await logReading(store, {
        jobId: job.id,
        featureId: bore.id,
        entry: inches('.4487'),
        tool: caliper,
        zeroChecked: false,
      }),
    );
    onScreen(store, <RouteScreen jobId={job.id} />);
    const again = await screen.findByRole('link', { name: 'again left bore' });
    expect(again.getAttribute('href')).toBe(`#/job/${job.id}/readings/${bore.id}`);
  });

  test('of a job that is not there says so', async () => {
    onScreen(store, <RouteScreen jobId="nowhere" />);
    await screen.findByRole('heading', { name: /not here/i });
    expect(screen.queryByRole('link', { name: /^Measure/ })).toBeNull();
  });
});
