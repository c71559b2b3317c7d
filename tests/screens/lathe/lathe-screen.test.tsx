import { fireEvent, screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { LatheScreen } from '../../../src/screens/lathe/lathe-screen.tsx';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { passesOf } from '../../../src/store/kept/cut-state.ts';
import { createCuts, getCut } from '../../../src/store/kept/cuts.ts';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { addDemo } from '../../store/add-demo.ts';
import type { CutThreading } from '../../../src/store/base/records.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { inches } from '../../store/cut-for-test.ts';
import { fillDisk } from '../../store/fill-disk.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { aMomentLater, clearAway, onScreen, said } from '../on-screen.tsx';

let store: Store;
beforeEach(async () => {
  store = await openForTest();
  await addDemo(store);
});
afterEach(clearAway);

const atTheLathe = (cut: string) =>
  onScreen(store, <LatheScreen jobId="demo-outfit-7" cutId={`demo-cut-${cut}`} />);
const field = () => screen.findByLabelText<HTMLInputElement>(/touch it to light the keys/);

async function measure(size: string): Promise<void> {
  const input = await field();
  fireEvent.input(input, { target: { value: size } });
  fireEvent.keyDown(input, { key: 'Enter' });
}

/** The dial's box and the one beside it, with the note under them, as they are read. */
const dial = async () => (await screen.findByText(/^dial in/)).closest('.next-pass')?.textContent ?? '';

test('a dial that reads radius is set to half of what comes off the diameter', async () => {
  const thou = { typed: '.001', unit: 'in', exact: lengthOf('.001 in') } as const;
  await putSetting(store, 'dial', { reads: 'radius', graduation: thou });
  atTheLathe('ring');
  await field();
  // .056 to take, .020 in the first of the passes on diameter with a dial of diameter: .010 on one of radius
  expect(await dial()).toMatch(/^dial in \.0(0\d|1[0-8]).*reads radius/);
});

test('a metric dial is set in millimetres, also where sizes are shown in inches', async () => {
  const mark = { typed: '0.02', unit: 'mm', exact: lengthOf('0.02 mm') } as const;
  await putSetting(store, 'dial', { reads: 'diameter', graduation: mark });
  atTheLathe('ring');
  await field();
  const figure = /^dial in (\d+\.\d\d) mm/.exec(await dial())?.[1] ?? '';
  // whole marks of 0.02 mm
  expect(Number((Number(figure) / 0.02).toFixed(6)) % 1).toBe(0);
  expect(Number(figure)).toBeGreaterThan(0);
});

test('what is measured is kept with what was asked before it and the tool it was measured with', async () => {
  atTheLathe('ring');
  await measure('1.5345');
  await screen.findByText('left to take on Ø');
  await expect.poll(() => said()).toMatch(/^Logged 1\.5345 in/);
  const cut = await getCut(store, 'demo-cut-ring');
  const last = cut && passesOf(cut).at(-1)?.[1];
  // The screen had asked for .020: .0195 came off, so that pass was cut before it.
  expect(last).toMatchObject({ measured: { typed: '1.5345' }, asked: { typed: '.020' } });
  expect(last?.tool?.name).toBeTruthy();
  expect(cut?.state).toBe('cutting');
});

test('measuring again what was measured before asks nothing of the dial: no spring is learnt from it', async () => {
  atTheLathe('ring');
  await measure('1.5538');
  await expect.poll(() => said()).toMatch(/^Logged 1\.5538 in/);
  const cut = await getCut(store, 'demo-cut-ring');
  expect(cut && passesOf(cut).at(-1)?.[1].asked).toBeUndefined();
});

test('a bore that stands off the middle is set over first: twice as much over a turn', async () => {
  const [bore] = worked(
    await createCuts(store, [
      {
        jobId: 'demo-outfit-7',
        name: 'Bushing, bored off centre',
        part: 'bushing',
        operation: 'bore',
        of: 'bore',
        target: inches('.4280'),
        lower: inches('.4180'),
        upper: inches('.4360'),
        limitsFrom: 'the pin',
        machine: 'lathe',
        cuttingTool: 'hss',
        setOver: inches('.0600'),
        setOverWithin: inches('.0005'),
      },
    ]),
  );
  onScreen(store, <LatheScreen jobId="demo-outfit-7" cutId={bore?.id ?? ''} />);
  await screen.findByText('Four-jaw chuck: set it over .060.');
  screen.getByText('Over a turn the indicator reads .120 in all, ±.0010.');
  screen.getByText('Mark the thin side before you unchuck it.');
  expect(await getCut(store, bore?.id ?? '')).toMatchObject({ setOver: { typed: '.0600', unit: 'in' } });
});

/** 1/2-13 on an outside of .4950 over wires of .0450: from .6078 where the tool touches to .5120 to .5169 (ASME B1.1). */
async function threadOver(threading: Pick<CutThreading, 'infeed' | 'hand'>): Promise<string> {
  const [thread] = worked(
    await createCuts(store, [
      {
        jobId: 'demo-outfit-7',
        name: 'Thread, over wires',
        part: 'part',
        operation: 'thread',
        of: 'outside',
        blank: inches('.6078'),
        target: inches('.5145'),
        lower: inches('.5120'),
        upper: inches('.5169'),
        limitsFrom: 'class 2A',
        machine: 'lathe',
        cuttingTool: 'hss',
        material: 'low-carbon-steel',
        threading: { wire: inches('.0450'), pitch: inches('.0769'), ...threading },
      },
    ]),
  );
  return thread?.id ?? '';
}

test('a thread is fed in by the compound at 29.5°, slowly, and says which way the tool travels', async () => {
  const id = await threadOver({ infeed: 'flank', hand: 'left' });
  onScreen(store, <LatheScreen jobId="demo-outfit-7" cutId={id} />);
  await screen.findByText(/^Compound 29\.5° off square, its handle toward the chuck/);
  screen.getByText('Left hand: begin in the run-out groove; the tool travels away from the chuck.');
  screen.getByText('left to take over wires');
  // .008 deep at most is .0092 along the flank: nine marks
  expect(await dial()).toMatch(/^dial in \.009.*compound/);
  // a quarter of turning for this metal would be more than a hand opens half-nuts at: 120 rpm at most
  expect(Number(/(\d+) ?rpm/.exec(document.body.textContent ?? '')?.[1])).toBeLessThanOrEqual(120);
});

test('over the wires while they sit on the crests is refused; on the flanks it is planned anew from there', async () => {
  const id = await threadOver({ infeed: 'straight', hand: 'right' });
  onScreen(store, <LatheScreen jobId="demo-outfit-7" cutId={id} />);
  await measure('.5800');
  // .4950 + 1.5 · .0450 = .5625
  await screen.findByText(/^Over \.562\d in the wires sit on the crests/);
  expect(passesOf((await getCut(store, id)) ?? { passes: {} })).toEqual([]);
  await measure('.5400');
  await expect.poll(() => said()).toMatch(/^Logged \.5400 in/);
  // .5400 − .5145
  await expect.poll(async () => (await field()).placeholder).toBe('.0255');
  await measure('.5140');
  await screen.findByText(/^Good|To size/);
  expect((await getCut(store, id))?.state).toBe('to-size');
});

/** A bore measured once in the machine, 29.85 of 30, with the metric caliper's inside jaws. */
async function boreMeasured(first: string): Promise<string> {
  const mm = (typed: string) => ({ typed, unit: 'mm', exact: lengthOf(`${typed} mm`) }) as const;
  const [bore] = worked(
    await createCuts(store, [
      {
        jobId: 'demo-outfit-7',
        name: 'Hub, bored',
        part: 'hub',
        operation: 'bore',
        of: 'bore',
        target: mm('30'),
        lower: mm('30'),
        upper: mm('30.021'),
        limitsFrom: 'H7',
        machine: 'lathe',
        cuttingTool: 'carbide',
      },
    ]),
  );
  const id = bore?.id ?? '';
  const tool = usualTools.find((one) => one.id === 'metric-caliper-inside');
  worked(await logPass(store, id, { measured: mm(first), ...(tool && { tool }) }));
  await putSetting(store, 'shownUnit', 'mm');
  onScreen(store, <LatheScreen jobId="demo-outfit-7" cutId={id} />);
  await field();
  await screen.findAllByText('mm');
  return id;
}
const measuredOf = async (id: string) => {
  const cut = await getCut(store, id);
  return cut
    ? passesOf(cut).map(([, pass]) => `${pass.measured.typed}${pass.struckOut ? ' struck' : ''}`)
    : [];
};

test('a bore that shrank is not logged: which of the two is wrong is asked', async () => {
  const id = await boreMeasured('29.85');
  await measure('29.60 mm');
  expect((await screen.findByRole('alert')).textContent).toBe(
    'A bore only gets larger: 29.85 mm before, 29.60 mm now. Which is wrong?',
  );
  expect(await measuredOf(id)).toEqual(['29.85']);
  fireEvent.click(screen.getByRole('button', { name: '29.60 mm is wrong: measure again' }));
  await expect.poll(async () => (await field()).value).toBe('');
  expect(await measuredOf(id)).toEqual(['29.85']);
});

test('a bore that shrank is logged once the measurement before is struck out as the wrong one', async () => {
  const id = await boreMeasured('29.85');
  await measure('29.60 mm');
  fireEvent.click(await screen.findByRole('button', { name: '29.85 mm is wrong: strike it out' }));
  await screen.findByText('29.85 mm is struck out. 29.60 mm can be logged now.');
  await aMomentLater();
  fireEvent.keyDown(await field(), { key: 'Enter' });
  await expect.poll(() => measuredOf(id)).toEqual(['29.85 struck', '29.60 mm']);
});

test('a bore measured again within what the caliper knows is logged', async () => {
  const id = await boreMeasured('29.85');
  // U = 1.96 · √(0.05²/3 + 0.01²) = 0.060 for each of the two: 0.05 less is no contradiction.
  await measure('29.80 mm');
  await expect.poll(() => measuredOf(id)).toEqual(['29.85', '29.80 mm']);
});

test('a size past its limit is over in the list as well', async () => {
  atTheLathe('ring');
  await measure('1.4969');
  await screen.findByText('No good');
  expect((await getCut(store, 'demo-cut-ring'))?.state).toBe('over');
});

test('the cautions of the lathe stand on the screen, the one for a thin ring first', async () => {
  const { container } = atTheLathe('ring');
  await field();
  const cautions = container.querySelector('.at-the-lathe-cautions')?.textContent ?? '';
  for (const caution of [
    'mandrel',
    'No gloves',
    'loose sleeves',
    'Guard down',
    'glasses on',
    'chuck key out',
    'Stop the spindle',
  ])
    expect(cautions).toContain(caution);
  expect(cautions.startsWith('Thin ring')).toBe(true);
});

test('a lathe too fast for the cut says what can be done', async () => {
  await putSetting(store, 'lathe', { speedsRpm: [2000] });
  atTheLathe('ring');
  await field();
  const cautions = screen.getByLabelText('Cautions').textContent;
  expect(cautions).toContain('The slowest speed this lathe has, 2000 rpm, is faster than');
});

// 95 feet a minute for low carbon steel, a quarter of it tapped: 23.75 · 12 / (π · 1.1624) = 78.04 at the tap's outside,
// 1 + 1.299038/8; the hole of 1.0313 alone would give 87.9.
test('a tap turns by its own diameter, not by that of the hole it is run through', async () => {
  const size = (typed: string) => ({ typed, unit: 'in', exact: lengthOf(`${typed} in`) }) as const;
  const made = await createCuts(store, [
    {
      jobId: 'demo-outfit-7',
      name: 'Hole, tapped for an insert 1-8 UNC',
      part: 'hole',
      operation: 'tap',
      of: 'tap-drill',
      target: size('1.0313'),
      lower: size('1.0271'),
      upper: size('1.0441'),
      limitsFrom: 'the insert',
      material: 'low-carbon-steel',
      cuttingTool: 'hss',
      machine: 'lathe',
      thread: '1-8 UNC',
    },
  ]);
  if (!made.ok) throw new Error('not kept');
  const [cut] = made.value;
  const { container } = onScreen(store, <LatheScreen jobId="demo-outfit-7" cutId={cut?.id ?? ''} />);
  await expect.poll(() => container.textContent).toMatch(/rpm 78 /);
});

describe('a pass that was cut and not measured', () => {
  const press = async (name: string | RegExp) => fireEvent.click(await screen.findByRole('button', { name }));
  const note = (words: RegExp) => screen.findByText(words, { selector: '.at-the-lathe-note *' });
  afterEach(() => vi.restoreAllMocks());

  test.each(['drafts', 'cuts'])(
    'is not counted where the disk is full (%s), and that is said',
    async (full) => {
      const [cut] = worked(
        await createCuts(store, [
          {
            jobId: 'demo-outfit-7',
            name: 'Pin, turned',
            part: 'pin',
            operation: 'turn',
            of: 'outside',
            blank: inches('.6250'),
            target: inches('.5000'),
            lower: inches('.4990'),
            upper: inches('.5010'),
            limitsFrom: 'the bore',
            machine: 'lathe',
            cuttingTool: 'carbide',
          },
        ]),
      );
      onScreen(store, <LatheScreen jobId="demo-outfit-7" cutId={cut?.id ?? ''} />);
      await field();
      const before = await dial();
      fillDisk(full);
      await press('Cut it, next');
      await note(/^The phone is full/);
      expect(await dial()).toBe(before);
      expect(screen.queryByRole('button', { name: /^Take back/ })).toBeNull();
    },
  );

  test('stays counted where taking it back could not be kept, and that is said', async () => {
    atTheLathe('ring');
    await field();
    await press('Cut it, next');
    await screen.findByRole('button', { name: /^Take back/ });
    vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(() => {
      throw new DOMException('The disk is full', 'QuotaExceededError');
    });
    await press(/^Take back/);
    await note(/^The phone is full/);
    expect(screen.queryByRole('button', { name: /^Take back/ })).not.toBeNull();
  });
});
