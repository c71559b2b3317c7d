import { act, cleanup, render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { useToday } from '../../../src/screens/common/use-today.ts';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date', 'setTimeout', 'clearTimeout'], now: new Date(2026, 2, 12, 22, 30) });
});
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

function Day() {
  return <output>{useToday()}</output>;
}

const pass = (ms: number) => void act(() => void vi.advanceTimersByTime(ms));
const shown = () => screen.getByRole('status').textContent;

test('the day changes at midnight while the screen is shown, with one timer for the whole night', () => {
  render(<Day />);
  expect(vi.getTimerCount()).toBe(1);
  pass(90 * 60_000 - 1);
  expect(shown()).toBe('2026-3-12');
  pass(1);
  expect(shown()).toBe('2026-3-13');
  pass(24 * 3_600_000);
  expect(shown()).toBe('2026-3-14');
  expect(vi.getTimerCount()).toBe(1);
});

test('a phone that slept over midnight asks when it is taken up again, and a screen that is left asks no more', () => {
  const { unmount } = render(<Day />);
  vi.setSystemTime(new Date(2026, 2, 13, 6, 0));
  expect(shown()).toBe('2026-3-12');
  void act(() => void document.dispatchEvent(new Event('visibilitychange')));
  expect(shown()).toBe('2026-3-13');
  unmount();
  // What preact itself waits for is over by then.
  pass(1000);
  expect(vi.getTimerCount()).toBe(0);
});
