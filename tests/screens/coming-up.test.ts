import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { mayComeUp, watchComingUp } from '../../src/screens/coming-up.ts';

const sheet = '#/job/outfit/sheet/signed/heavy one';

beforeEach(() => {
  vi.useFakeTimers();
  localStorage.clear();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('a place that did not come up twice is not gone back to, and then it is free again', () => {
  expect(mayComeUp(sheet)).toBe(true); // hangs
  expect(mayComeUp(sheet)).toBe(true); // hangs again
  expect(mayComeUp(sheet)).toBe(false);
  expect(mayComeUp(sheet)).toBe(true); // the fitter goes there himself
});

test('a place gone to by a press that hangs counts as the first time', () => {
  let place = '#/jobs';
  mayComeUp(place);
  watchComingUp(() => place);
  place = sheet;
  dispatchEvent(new HashChangeEvent('hashchange')); // hangs, the tab dies
  expect(mayComeUp(sheet)).toBe(true); // hangs at the start
  expect(mayComeUp(sheet)).toBe(false);
});

test.each([
  { what: 'stood for a while', leave: () => vi.advanceTimersByTime(6000) },
  { what: 'was left', leave: () => dispatchEvent(new Event('pagehide')) },
])('a place that $what is gone back to as often as one likes', ({ leave }) => {
  for (let start = 0; start < 5; start += 1) {
    expect(mayComeUp(sheet)).toBe(true);
    watchComingUp(() => sheet);
    leave();
  }
});

test('two places that died once each are both gone back to', () => {
  expect(mayComeUp(sheet)).toBe(true);
  expect(mayComeUp('#/jobs')).toBe(true);
  expect(mayComeUp(sheet)).toBe(true);
});

test('where the browser keeps nothing, the start goes where it always went', () => {
  const refuse = () => {
    throw new DOMException('no', 'SecurityError');
  };
  vi.stubGlobal('localStorage', { getItem: refuse, setItem: refuse, removeItem: refuse });
  for (let start = 0; start < 4; start += 1) expect(mayComeUp(sheet)).toBe(true);
});
