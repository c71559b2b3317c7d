import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { act } from 'preact/test-utils';
import { useState } from 'preact/hooks';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { lightAhead } from '../../../src/screens/common/two-places.ts';
import { SizePad } from '../../../src/screens/common/size-pad.tsx';

const logged = vi.fn<() => void>();
beforeEach(() => {
  logged.mockReset();
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

function Pad() {
  const [half, setHalf] = useState({ typed: '1.498', unit: 'in' as const });
  return (
    <SizePad
      label="Ring, size measured"
      half={half}
      onChange={({ typed }) => setHalf({ typed, unit: 'in' })}
      twoPlaces
      commit={{ text: 'Log it', onPress: logged }}
    />
  );
}

/** A finger's press has a place on the glass, and a count; a key's has none. */
const finger = { detail: 1 };
const key = { detail: 0 };
const commit = () => screen.getByRole('button', { name: 'Log it' });
const figure = () => screen.getByLabelText('Ring, size measured');

test('a sleeve that brushes over the commit key logs nothing, and the pad says what it wants', () => {
  render(<Pad />);
  fireEvent.click(commit(), finger);
  expect(logged).not.toHaveBeenCalled();
  expect(screen.getByText(/^Touch the figure first/)).toBeTruthy();
});

test('the commit key takes a finger for a moment after the figure was touched, and no longer', async () => {
  render(<Pad />);
  fireEvent.click(figure(), finger);
  fireEvent.click(commit(), finger);
  expect(logged).toHaveBeenCalledTimes(1);
  vi.advanceTimersByTime(1000);
  fireEvent.click(commit(), finger);
  expect(logged).toHaveBeenCalledTimes(1);
  fireEvent.click(figure(), finger);
  await act(() => void vi.advanceTimersByTime(10_000));
  fireEvent.click(commit(), finger);
  expect(logged).toHaveBeenCalledTimes(1);
});

test('the key that opened the pad counts as the first place: a size typed at once is logged, one left lying is not', async () => {
  lightAhead();
  render(<Pad />);
  // Each digit within 6 s of the one before, all of them together in more than that.
  for (const digit of ['2', '5', '1']) {
    await act(() => void vi.advanceTimersByTime(4000));
    fireEvent.click(screen.getByRole('button', { name: digit }), finger);
  }
  fireEvent.click(commit(), finger);
  expect(logged).toHaveBeenCalledTimes(1);

  cleanup();
  lightAhead();
  render(<Pad />);
  await act(() => void vi.advanceTimersByTime(10_000));
  // A sleeve that comes later types, but doesn't log: what has gone out is not lit by a digit.
  fireEvent.click(screen.getByRole('button', { name: '2' }), finger);
  fireEvent.click(commit(), finger);
  expect(logged).toHaveBeenCalledTimes(1);
});

test('a pad that was not opened by that key just now opens unlit', () => {
  lightAhead();
  vi.advanceTimersByTime(10_000);
  render(<Pad />);
  fireEvent.click(commit(), finger);
  expect(logged).not.toHaveBeenCalled();
});

test('a keyboard or a screen reader can’t brush: its press needs no second place', () => {
  render(<Pad />);
  fireEvent.click(commit(), key);
  expect(logged).toHaveBeenCalledTimes(1);
});
