import { cleanup, fireEvent, screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { LatheScreen } from '../../../src/screens/lathe/lathe-screen.tsx';
import { ShopScreen } from '../../../src/screens/shop/shop-screen.tsx';
import { createCuts } from '../../../src/store/kept/cuts.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { KeptDial } from '../../../src/store/base/records.ts';
import { getSetting, putSetting } from '../../../src/store/kept/settings.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, wholeSentence } from '../on-screen.tsx';

let store: Store;
beforeEach(async () => {
  store = await openForTest();
});
afterEach(clearAway);

const size = (typed: string, unit: 'in' | 'mm' = 'in') =>
  ({ typed, unit, exact: lengthOf(`${typed} ${unit}`) }) as const;
/** A cross slide of 100 marks of .001, reading radius. */
const cross: KeptDial = { reads: 'radius', graduation: size('.001'), marksPerTurn: 100 };

/** A spacer 1.500 long in steel, to be faced to 1.230: .270 to come off, with .150 allowed at once. */
async function length(of: 'length' | 'bore' = 'length') {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const [cut] = worked(
    await createCuts(store, [
      {
        jobId: job.id,
        name: 'Spacer',
        part: 'spacer',
        operation: of === 'length' ? 'face' : 'bore',
        of,
        blank: size(of === 'length' ? '1.500' : '.960'),
        target: size('1.230'),
        lower: size('1.225'),
        upper: size('1.235'),
        limitsFrom: 'the stack',
        material: 'low-carbon-steel',
        cuttingTool: 'hss',
        machine: 'lathe',
        largestTake: size('.150'),
      },
    ]),
  );
  if (!cut) throw new Error('no cut');
  onScreen(store, <LatheScreen jobId={job.id} cutId={cut.id} />);
  await screen.findByLabelText(/touch it to light the keys/);
  return () => document.querySelector('.next-cut')?.textContent ?? '';
}

describe('a length at the lathe', () => {
  test('asks once which slide makes it, and sets no dial before', async () => {
    await putSetting(store, 'dial', cross);
    const shown = await length();
    expect(await screen.findByText('Which slide makes it?')).toBeTruthy();
    expect(shown()).not.toContain('feed in');
    fireEvent.click(screen.getByRole('button', { name: 'lead-screw handwheel' }));
    await expect.poll(shown).toMatch(/feed in/);
    expect(screen.queryByText('Which slide makes it?')).toBeNull();
    expect((await getSetting(store, 'dial'))?.lengthsBy).toBe('lead-screw');
    // What is known of the cross slide stays.
    expect(await getSetting(store, 'dial')).toMatchObject({ reads: 'radius', marksPerTurn: 100 });
    cleanup();
    const again = await length();
    await expect.poll(again).toMatch(/feed in.*lead-screw handwheel/);
  });

  // A lead screw of 8 threads an inch: 125 marks of .001, .125 a turn. The first pass of .132 is one turn and .007,
  // by the cross slide's 100 marks it would be one turn and .032.
  test.each([
    { lengthsBy: 'lead-screw', turn: 125 },
    { lengthsBy: 'compound', turn: 80 },
  ] as const)(
    'is counted on the dial of its own slide: $lengthsBy, $turn marks',
    async ({ lengthsBy, turn }) => {
      await putSetting(store, 'dial', {
        ...cross,
        lengthsBy,
        leadScrew: { graduation: size('.001'), marksPerTurn: 125 },
        compound: { graduation: size('.001'), marksPerTurn: 80 },
      });
      const shown = await length();
      await expect.poll(shown).toMatch(/feed in \.\d+ to 1 turn \+ \.\d+/);
      const [, asked = '', rest = ''] = /feed in \.(\d+) to 1 turn \+ \.(\d+)/.exec(shown()) ?? [];
      const thou = (digits: string) => Number(`.${digits}`) * 1000;
      expect(thou(asked) - thou(rest)).toBeCloseTo(turn, 6);
    },
  );

  test('on a slide whose dial nobody gave counts no turns, and says so', async () => {
    await putSetting(store, 'dial', { ...cross, lengthsBy: 'compound' });
    const shown = await length();
    await expect.poll(shown).toMatch(/Give its dial, for turns/);
    expect(shown()).toMatch(/feed in/);
    expect(shown()).not.toMatch(/turn \+/);
  });

  test('says how far to back off on a slide whose backlash is known', async () => {
    await putSetting(store, 'dial', {
      ...cross,
      lengthsBy: 'compound',
      compound: { graduation: size('0.05', 'mm'), backlash: size('0.3', 'mm') },
    });
    const shown = await length();
    await expect.poll(shown).toMatch(/Back off over 0\.30 mm, come up again\./);
    expect(shown()).toMatch(/feed in \d+\.\d+ mm/);
  });

  test('a bore is the cross slide’s, and asks nothing', async () => {
    await putSetting(store, 'dial', cross);
    const shown = await length('bore');
    await expect.poll(shown).toMatch(/dial out .*reads radius/);
    expect(screen.queryByText('Which slide makes it?')).toBeNull();
  });
});

describe('in the shop', () => {
  const button = (name: string) => screen.findByRole('button', { name });

  test('each slide has its graduation, marks and backlash, and keeps the others’', async () => {
    await putSetting(store, 'dial', cross);
    onScreen(store, <ShopScreen field="slide-lead-screw" />);
    fireEvent.click(await button('.001 in'));
    await expect
      .poll(async () => (await getSetting(store, 'dial'))?.leadScrew?.graduation.typed)
      .toMatch(/^\.001/);
    cleanup();
    onScreen(store, <ShopScreen field="marks-lead-screw" />);
    fireEvent.input(await screen.findByRole('textbox'), { target: { value: '125' } });
    fireEvent.click(await button('Use it'));
    await expect.poll(async () => (await getSetting(store, 'dial'))?.leadScrew?.marksPerTurn).toBe(125);
    cleanup();
    onScreen(store, <ShopScreen field="backlash-lead-screw" />);
    fireEvent.input(await screen.findByRole('textbox'), { target: { value: '.5' } });
    fireEvent.click(await button('Use it'));
    expect((await screen.findByRole('alert')).textContent).toMatch(/^No more than/);
    fireEvent.input(await screen.findByRole('textbox'), { target: { value: '.012' } });
    fireEvent.click(await button('Use it'));
    await expect.poll(async () => (await getSetting(store, 'dial'))?.leadScrew?.backlash?.typed).toBe('.012');
    expect(await getSetting(store, 'dial')).toMatchObject({ reads: 'radius', marksPerTurn: 100 });
    cleanup();
    onScreen(store, <ShopScreen />);
    expect(
      await screen.findByText(wholeSentence(/^\.001 in a mark, 125 marks: \.125 in a turn$/)),
    ).toBeTruthy();
    expect(screen.getByText('not given: no turns are counted')).toBeTruthy();
  });
});
