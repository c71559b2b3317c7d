import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { act } from 'preact/test-utils';
import { useState } from 'preact/hooks';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
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

test('a keyboard or a screen reader can’t brush: its press needs no second place', () => {
  render(<Pad />);
  fireEvent.click(commit(), key);
  expect(logged).toHaveBeenCalledTimes(1);
});
