import { fireEvent, screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { LatheScreen } from '../../../src/screens/lathe/lathe-screen.tsx';
import { isDrilled } from '../../../src/screens/mill/mill-hole.ts';
import type { Cut } from '../../../src/store/base/records.ts';
import { createCuts, cutsOf, getCut } from '../../../src/store/kept/cuts.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { setMade, shiftZero } from '../../../src/store/kept/mill-cuts.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { facing, inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

let store: Store;
let cuts: readonly Cut[];
const signed = (typed: string) => worked(readEntry(typed, { unit: 'in', signed: true }));

beforeEach(async () => {
  store = await openForTest();
  const job = worked(await createJob(store, { name: 'Adapter', systems: ['wheel'] }));
  const hole = (name: string, x: string, y: string) =>
    facing(job.id, {
      name: `Hole ${name}`,
      part: 'adapter plate',
      operation: 'drill',
      of: 'bore',
      drill: '1/2',
      target: inches('.5'),
      lower: inches('.5'),
      upper: inches('.5106'),
      machine: 'mill',
      stands: { x: signed(x), y: signed(y) },
    });
  cuts = worked(
    await createCuts(store, [
      hole('A1', '-1.6164', '2.2248'),
      hole('A2', '0', '-2.75'),
      hole('A3', '2.6154', '.8498'),
    ]),
  );
});
afterEach(clearAway);

const id = (index: number) => cuts[index]?.id ?? '';
const kept = async (index: number) => {
  const cut = await getCut(store, id(index));
  if (!cut) throw new Error('no cut');
  return cut;
};
const atTheMill = (index: number) =>
  onScreen(store, <LatheScreen jobId={cuts[index]?.jobId ?? ''} cutId={id(index)} />);
const field = () => screen.findByLabelText<HTMLInputElement>(/Touch it to light the keys/);

async function fifthsOfAnInch(): Promise<void> {
  const slide = { graduation: inches('.001'), marksPerTurn: 200 };
  await putSetting(store, 'mill', { reads: 'dials', x: slide, y: slide, edgeFinder: inches('.2') });
}

describe('a hole fills the screen', () => {
  test('with its coordinates, and each dial in turns and what it then reads', async () => {
    await fifthsOfAnInch();
    atTheMill(0);
    expect((await field()).placeholder).toBe('−1.6164');
    expect(screen.getByText('2.2248')).toBeDefined();
    // −9 · .200 + .1836; 11 · .200 + .0248
    const dials = screen.getByText(/^x dial/).closest('.next-pass')?.textContent ?? '';
    expect(dials).toMatch(/x dial \.1836 9 turns back .*y dial \.0248 11 turns on/);
    // Half of a tip of .200.
    expect(screen.getByText(/go \.100 in further in/)).toBeDefined();
  });

  test('a digital readout needs no dial', async () => {
    const slide = { graduation: inches('.001') };
    await putSetting(store, 'mill', { reads: 'readout', x: slide, y: slide });
    atTheMill(0);
    await field();
    expect(screen.queryByText(/^x dial/)).toBeNull();
  });
});

test('holes put down together keep the order of work', async () => {
  const all = await cutsOf(store, cuts[0]?.jobId ?? '');
  expect(all.map(({ name }) => name)).toEqual(['Hole A1', 'Hole A2', 'Hole A3']);
});

describe('ticking a hole', () => {
  test('takes a finger only once the place was touched', async () => {
    atTheMill(0);
    const input = await field();
    const key = screen.getByRole('button', { name: 'Drilled, next' });
    fireEvent.click(key, { detail: 1 });
    expect((await screen.findAllByText('Touch the place first, then the key.')).length).toBeGreaterThan(0);
    expect(isDrilled(await kept(0))).toBe(false);
    fireEvent.click(input);
    fireEvent.click(key, { detail: 1 });
    await screen.findByText(/1 drilled/);
    expect(isDrilled(await kept(0))).toBe(true);
  });

  test('takes a key of a keyboard at any time', async () => {
    atTheMill(0);
    await field();
    fireEvent.click(screen.getByRole('button', { name: 'Drilled, next' }), { detail: 0 });
    await screen.findByText(/1 drilled/);
    expect(isDrilled(await kept(0))).toBe(true);
  });

  test('is undone', async () => {
    worked(await setMade(store, id(0), true));
    expect((await kept(0)).state).toBe('cutting');
    const undo = await latestUndo(store);
    expect(undo?.label).toBe('Drilled Hole A1');
    worked(await undoLast(store, undo?.id ?? ''));
    expect([(await kept(0)).made, (await kept(0)).state]).toEqual([undefined, 'to-cut']);
  });
});

describe('a zero found wrong', () => {
  test('moves what is left, and no hole that is drilled', async () => {
    worked(await setMade(store, id(0), true));
    worked(await shiftZero(store, [id(0), id(1), id(2)], { axis: 'x', reads: signed('.012') }));
    expect((await kept(0)).zeroShift).toBeUndefined();
    atTheMill(1);
    // 0 + .012
    expect((await field()).placeholder).toBe('.012');
    expect(screen.getByText(/Zero of x shifted by \.012/)).toBeDefined();
  });

  test('is counted from the zero that was set, and one undo takes it back from all', async () => {
    worked(await shiftZero(store, [id(1), id(2)], { axis: 'x', reads: signed('.012') }));
    worked(await shiftZero(store, [id(1), id(2)], { axis: 'x', reads: signed('-.005') }));
    atTheMill(2);
    // 2.6154 − .005
    expect((await field()).placeholder).toBe('2.6104');
    worked(await undoLast(store, (await latestUndo(store))?.id ?? ''));
    await screen.findByPlaceholderText('2.6274');
  });
});
