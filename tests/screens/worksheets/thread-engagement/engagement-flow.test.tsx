import { fireEvent, screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { worksheets, type WorksheetKind } from '../../../../src/engine/worksheets/all-worksheets.ts';
import { hrefOf } from '../../../../src/screens/address.ts';
import { App } from '../../../../src/screens/app.tsx';
import { createJob } from '../../../../src/store/kept/jobs.ts';
import type { SizeInput } from '../../../../src/store/base/records.ts';
import { createWorksheet, setChoice, setSize } from '../../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../../store/open-for-test.ts';
import { clearAway, onScreen, wholeSentence } from '../../on-screen.tsx';
import { tool, typedSize } from '../worksheet-for-test.ts';

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
      choices: worksheets[kind].starts,
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

const bolt = { thread: '1/2-13 UNC', grade: 'sae-5', parent: 'cast-aluminium', legs: 'all' };
const text = () => document.body.textContent ?? '';

describe('thread engagement on its screen', () => {
  test('says first what is needed, while nothing is measured', async () => {
    await shown('thread-engagement', { sizes: {}, choices: bolt });
    // 1.30 in: worked by hand beside the engine's test.
    expect(await screen.findByText('Engage at least', {}, PATIENCE)).toBeTruthy();
    expect(document.querySelector('.account-lead-figure')?.textContent).toMatch(/^1\.(30|29)\d* in$/);
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
    expect(document.querySelector('.account')?.textContent).toMatch(/settle it/);
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
    const said = 'from under the head: plain shank lies in it, .125 in past it.';
    for (const place of ['worksheet', 'sheet'] as const) {
      await shown('thread-engagement', { sizes, choices }, place);
      // A row on the phone, a line of a list on paper.
      await screen.findByText(place === 'sheet' ? /^leg 1 on leg 2: / : 'leg 1 on leg 2', {}, PATIENCE);
      expect(text()).toContain(
        place === 'sheet' ? `leg 1 on leg 2: .375 in; ${said}` : `leg 1 on leg 2.375 in${said}`,
      );
      if (place === 'worksheet') await clearAway();
    }
    expect(text()).toContain('from memory');
  });

  test('gives the length to buy as a range, on the screen and on the sheet', async () => {
    // Holds 5/8 + nut .4375 + 4/13 = 1.3702; shank 3/8 + 5/13 + thread 1.25 > 5/8 + 1.25 = 1.875 needs washers.
    const sizes = { leg1: typedSize('3/8'), leg2: typedSize('1/4') };
    const choices = { ...bolt, held: 'nut' };
    for (const place of ['worksheet', 'sheet'] as const) {
      await shown('thread-engagement', { sizes, choices }, place);
      await screen.findAllByText(/1-3\/8 to 1-7\/8/, {}, PATIENCE);
      expect(text()).toContain('1-3/8 to 1-7/8 in');
      await clearAway();
    }
    await shown('thread-engagement', { sizes, choices });
    fireEvent.click(await screen.findByRole('button', { name: 'Why' }, PATIENCE));
    expect(text()).toMatch(/At least 1\.3702 in, at most 1\.875 in: longer, the run-out is in the way\./);
  });

  test('says at the top that a bolt on hand is too short or may bottom, however well its thread would hold', async () => {
    const sizes = { engaged: typedSize('1.5'), leg1: typedSize('3/8'), boltLength: typedSize('1.5') };
    for (const place of ['worksheet', 'sheet'] as const) {
      await shown('thread-engagement', { sizes, choices: bolt }, place);
      await screen.findAllByText(wholeSentence(/The bolt is \.1\d* in too short to hold\./), {}, PATIENCE);
      // At the top, and in its row.
      expect(text().match(/The bolt is \.1\d* in too short to hold\./g)).toHaveLength(2);
      expect(text()).toContain('Assumed: no insert, bolt into the part.');
      await clearAway();
    }
    const long = { ...sizes, boltLength: typedSize('2') };
    await shown('thread-engagement', { sizes: long, choices: bolt });
    expect(await screen.findByText(/^Give how deep the hole’s thread is/, {}, PATIENCE)).toBeTruthy();
    await clearAway();
    await shown('thread-engagement', {
      sizes: { ...long, holeDepth: typedSize('1.6') },
      choices: { ...bolt, hole: 'blind' },
    });
    // 3/8 + 1.6 = 1.975 for a bolt of 2.
    expect(
      await screen.findAllByText(
        wholeSentence(/^The bolt meets the end of its hole \.025 in before it clamps/),
        {},
        PATIENCE,
      ),
    ).toHaveLength(2);
  });

  test('counts a stud from its part’s face', async () => {
    const sizes = { leg1: typedSize('10 mm'), leg2: typedSize('12 mm'), shank: typedSize('11 mm') };
    await shown('thread-engagement', { sizes, choices: { ...bolt, thread: 'M10x1.5', held: 'stud' } });
    expect(await screen.findByText('leg 1 on leg 2', {}, PATIENCE)).toBeTruthy();
    expect(text()).toContain('leg 1 on leg 2.3937 infrom the part’s face: plain shank lies in it');
    fireEvent.click(screen.getByRole('button', { name: /^Sizes/ }));
    expect(text()).toContain('Washer under the nut');
    expect(text()).not.toContain('Washer under the head');
  });

  test('refuses an insert where none is made, with what to do', async () => {
    await shown('thread-engagement', {
      sizes: {},
      choices: { ...bolt, thread: '1/4-32 UNEF', insert: 'yes' },
    });
    expect(
      await screen.findByText(
        wholeSentence(/^No wire insert is usually made for 1\/4-32 UNEF\./),
        {},
        PATIENCE,
      ),
    ).toBeTruthy();
  });
});
