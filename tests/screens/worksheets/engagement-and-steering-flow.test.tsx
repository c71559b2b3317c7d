import { screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { planOf } from '../../../src/screens/worksheets/worksheet-plans.ts';
import { createJob } from '../../../src/store/jobs.ts';
import type { SizeInput, WorksheetKind } from '../../../src/store/records.ts';
import { createWorksheet, setChoice, setSize } from '../../../src/store/worksheets.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { tool, typedSize } from './worksheet-for-test.ts';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

type Given = {
  readonly sizes: Readonly<Record<string, SizeInput>>;
  readonly choices: Readonly<Record<string, string>>;
};

async function shown(
  kind: WorksheetKind,
  { sizes, choices }: Given,
  place: 'worksheet' | 'sheet' = 'worksheet',
) {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const worksheet = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind,
      title: 'Question',
      choices: planOf(kind)?.choices ?? {},
    }),
  );
  for (const [name, size] of Object.entries(sizes)) worked(await setSize(store, worksheet.id, name, size));
  for (const [name, choice] of Object.entries(choices))
    worked(await setChoice(store, worksheet.id, name, choice));
  location.hash = hrefOf(
    place === 'sheet'
      ? { at: 'sheet', jobId: job.id }
      : { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id },
  );
  onScreen(store, <App store={store} />);
}

const bolt = { thread: '1/2-13 UNC', grade: 'sae-5', parent: 'cast-aluminium' };
const text = () => document.body.textContent ?? '';

describe('thread engagement on its screen', () => {
  test('says first what is needed, while nothing is measured', async () => {
    await shown('thread-engagement', { sizes: {}, choices: bolt });
    // 1.30 in: worked by hand beside the engine's test.
    expect(await screen.findByText('Engage at least', {}, PATIENCE)).toBeTruthy();
    expect(document.querySelector('.lead-figure')?.textContent).toMatch(/^1\.(30|29)\d* in$/);
  });

  test('calls it good, no good, or too close to call with the tool that could settle it', async () => {
    const caliper = tool('digital-caliper-depth');
    await shown('thread-engagement', { sizes: { engaged: typedSize('1.5', caliper) }, choices: bolt });
    expect(await screen.findByText(/^Good: 1\.500 engaged/, {}, PATIENCE)).toBeTruthy();
    await clearAway();
    await shown('thread-engagement', { sizes: { engaged: typedSize('1.0', caliper) }, choices: bolt });
    expect(await screen.findByText(/^No good: 1\.000 engaged/, {}, PATIENCE)).toBeTruthy();
    await clearAway();
    await shown('thread-engagement', { sizes: { engaged: typedSize('1.3', caliper) }, choices: bolt });
    expect(await screen.findByText(/^Too close to call: 1\.300/, {}, PATIENCE)).toBeTruthy();
    expect(document.querySelector('.proof-lines')?.textContent).toMatch(/settle it/);
  });

  test('shows no torque of its own, and beside the manual’s figure only an estimate', async () => {
    const sizes = { engaged: typedSize('1.5') };
    await shown('thread-engagement', { sizes, choices: bolt });
    await screen.findByText(/^Good: 1\.500/, {}, PATIENCE);
    expect(text()).not.toMatch(/\d (lbf·ft|N·m)/);
    await clearAway();
    await shown('thread-engagement', { sizes, choices: { ...bolt, torquePoundFeet: '7.5' } });
    expect(await screen.findByText('The manual’s figure rules', {}, PATIENCE)).toBeTruthy();
    expect(text()).toContain('7.5 lbf·ft');
    expect(text()).toContain('10.2 N·m'); // 7.5 × 1.3558
    expect(text()).toContain('Estimate of its clamp load');
    await clearAway();
    await shown('thread-engagement', { sizes, choices: { ...bolt, torquePoundFeet: '7.5' } }, 'sheet');
    expect(
      await screen.findByText(
        'Torque from the service manual: 7.5 lbf·ft (10.2 N·m, 90.0 lbf·in).',
        {},
        PATIENCE,
      ),
    ).toBeTruthy();
  });

  test('says of each shear plane whether the shank lies in it, on the screen and on the sheet', async () => {
    const sizes = {
      engaged: typedSize('1.5'),
      leg1: typedSize('3/8'),
      leg2: typedSize('1/4'),
      shank: typedSize('.5'),
      boltLength: typedSize('2'),
    };
    const choices = { ...bolt, held: 'nut' };
    await shown('thread-engagement', { sizes, choices });
    const said = /^leg 1 on leg 2, \.375 in from under the head: plain shank lies in it, \.125 in past it\.$/;
    expect(await screen.findByText(said, {}, PATIENCE)).toBeTruthy();
    await clearAway();
    await shown('thread-engagement', { sizes, choices }, 'sheet');
    expect(await screen.findByText(said, {}, PATIENCE)).toBeTruthy();
    expect(text()).toContain('from memory');
  });

  test('gives the length to buy as a range, on the screen and on the sheet', async () => {
    // Holds 5/8 + nut .4375 + 4/13 = 1.3702; shank 3/8 + 5/13 + thread 1.25 > 5/8 + 1.25 = 1.875 needs washers.
    const sizes = { leg1: typedSize('3/8'), leg2: typedSize('1/4') };
    const choices = { ...bolt, held: 'nut' };
    for (const place of ['worksheet', 'sheet'] as const) {
      await shown('thread-engagement', { sizes, choices }, place);
      expect(await screen.findByText(/1-3\/8 to 1-7\/8 in/, {}, PATIENCE)).toBeTruthy();
      expect(text()).toMatch(/At least 1\.3702 in, at most 1\.875 in: longer, the run-out is in the way\./);
      await clearAway();
    }
  });

  test('says at the top that a bolt on hand is too short or may bottom, however well its thread would hold', async () => {
    const sizes = { engaged: typedSize('1.5'), leg1: typedSize('3/8'), boltLength: typedSize('1.5') };
    for (const place of ['worksheet', 'sheet'] as const) {
      await shown('thread-engagement', { sizes, choices: bolt }, place);
      expect(
        await screen.findByText(
          /^Bolt: The bolt is \.1\d* in too short to hold; assumed: no insert, bolt into the part\./,
          {},
          PATIENCE,
        ),
      ).toBeTruthy();
      await clearAway();
    }
    const long = { ...sizes, boltLength: typedSize('2') };
    await shown('thread-engagement', { sizes: long, choices: bolt });
    expect(await screen.findByText(/^Bolt: Give how deep the hole’s thread is/, {}, PATIENCE)).toBeTruthy();
    await clearAway();
    await shown('thread-engagement', {
      sizes: { ...long, holeDepth: typedSize('1.6') },
      choices: { ...bolt, hole: 'blind' },
    });
    // 3/8 + 1.6 = 1.975 for a bolt of 2.
    expect(
      await screen.findByText(
        /^Bolt: The bolt meets the end of its hole \.025 in before it clamps/,
        {},
        PATIENCE,
      ),
    ).toBeTruthy();
  });

  test('counts a stud from its part’s face', async () => {
    const sizes = { leg1: typedSize('10 mm'), leg2: typedSize('12 mm'), shank: typedSize('11 mm') };
    await shown('thread-engagement', { sizes, choices: { ...bolt, thread: 'M10x1.5', held: 'stud' } });
    expect(
      await screen.findByText(
        /^leg 1 on leg 2, \.3937 in from the part’s face: plain shank lies in it/,
        {},
        PATIENCE,
      ),
    ).toBeTruthy();
    expect(text()).not.toContain('Washer under the head');
  });

  test('refuses an insert where none is made, with what to do', async () => {
    await shown('thread-engagement', {
      sizes: {},
      choices: { ...bolt, thread: '1/4-32 UNEF', insert: 'yes' },
    });
    expect(
      await screen.findByText(/^No wire insert is usually made for 1\/4-32 UNEF\./, {}, PATIENCE),
    ).toBeTruthy();
  });
});

const machine = {
  frontRadius: typedSize('299.9 mm'),
  rearRadius: typedSize('300 mm'),
  wheelbase: typedSize('1410 mm'),
  clampOffset: typedSize('36 mm'),
};

describe('steering geometry on its screen', () => {
  test('shows the trail, says how it is rounded, and that steering kills', async () => {
    await shown('steering-geometry', { sizes: machine, choices: { rake: '23.5' } });
    expect(
      await screen.findByRole('heading', { name: /^Trail ?; assumed: rake to ±0\.2°$/ }, PATIENCE),
    ).toBeTruthy();
    // WE61: 91.14 mm = 3.588 in
    expect(document.querySelector('.lead-figure')?.textContent).toBe('3.59 in');
    expect(text()).toContain('Rounded to .01 in.');
    expect(text()).toContain('Steering kills.');
  });

  test('shows what each change did by itself, and the verdict on the wanted trail', async () => {
    await shown('steering-geometry', {
      sizes: {
        ...machine,
        forkLonger: typedSize('20 mm'),
        newClampOffset: typedSize('46 mm'),
        lower: typedSize('90 mm'),
      },
      choices: { rake: '23.5' },
    });
    expect(await screen.findByText('Which change moved it', {}, PATIENCE)).toBeTruthy();
    expect(screen.getAllByText('Clamp offset').length).toBeGreaterThan(0);
    expect(screen.getByText(/^Too small: trail/)).toBeTruthy();
    expect(document.querySelector('svg.drawing')?.getAttribute('aria-label')).toMatch(/Before: rake 23\.5°/);
  });

  test.each(['page', 'sheet'] as const)(
    'says on its %s that a trail of 1.5 ± 2.5 mm may be negative, though its own limits let it pass',
    async (place) => {
      // Rake 27°, R 310 mm, offset 139.4005 mm, rake known to ±.461°: worked out in the engine's test.
      const sizes = {
        ...machine,
        frontRadius: typedSize('310 mm'),
        clampOffset: typedSize('139.4005 mm'),
        upper: typedSize('100 mm'),
      };
      await shown(
        'steering-geometry',
        { sizes, choices: { rake: '27', rakeWithin: '0.461' } },
        ...(place === 'sheet' ? (['sheet'] as const) : []),
      );
      // 1.5 mm = .059 in; 2.5005 mm = .0984 in
      await screen.findAllByText(/Do not ride it\./, {}, PATIENCE);
      expect(text()).toMatch(/Trail may be negative: \.06 in, ±\.09[89]\d?\. Do not ride it\./);
      expect(text()).not.toMatch(/Good: trail/);
    },
  );

  test('asks for the fork’s length where clamps lean the fork; the sheet says the same', async () => {
    const given = { sizes: machine, choices: { rake: '23.5', newExtraAngle: '3' } };
    await shown('steering-geometry', given);
    expect(
      await screen.findByText(/Give the length from the clamps to the axle\.$/, {}, PATIENCE),
    ).toBeTruthy();
    await clearAway();
    await shown('steering-geometry', given, 'sheet');
    expect(
      await screen.findByText(/Give the length from the clamps to the axle\.$/, {}, PATIENCE),
    ).toBeTruthy();
  });
});
