import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { noteCommit, swallowBounces } from '../../../src/screens/common/same-press.ts';

let stop = () => undefined as void;
let heard = 0;
let now = 10_000;

beforeEach(() => {
  heard = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => now);
  document.body.innerHTML = '<button>key</button>';
  document.querySelector('button')?.addEventListener('click', () => (heard += 1));
  stop = swallowBounces();
});

afterEach(() => {
  stop();
  vi.restoreAllMocks();
});

function click({ x, y, finger = true }: { x: number; y: number; finger?: boolean }): MouseEvent {
  return new MouseEvent('click', {
    bubbles: true,
    cancelable: true,
    clientX: x,
    clientY: y,
    detail: finger ? 1 : 0,
  });
}

test.each([
  { what: 'a bounce at the same place', after: 200, x: 110, y: 705, finger: true, lands: 0 },
  { what: 'a press elsewhere', after: 200, x: 300, y: 500, finger: true, lands: 1 },
  { what: 'a press at the same place later', after: 400, x: 110, y: 705, finger: true, lands: 1 },
  { what: 'a keyboard at the same time', after: 200, x: 110, y: 705, finger: false, lands: 1 },
])('$what counts $lands times', ({ after, x, y, finger, lands }) => {
  now = 20_000;
  noteCommit(click({ x: 100, y: 700 }));
  now += after;
  document.querySelector('button')?.dispatchEvent(click({ x, y, finger }));
  expect(heard).toBe(lands);
});

test.each([
  { what: 'Enter', on: 'button', repeat: false, presses: true },
  { what: 'a held Enter', on: 'button', repeat: true, presses: false },
  { what: 'a held Enter', on: 'textarea', repeat: true, presses: true },
])('$what on a $on does what it does: $presses', ({ on, repeat, presses }) => {
  const target = document.createElement(on);
  document.body.append(target);
  const down = new KeyboardEvent('keydown', { key: 'Enter', repeat, bubbles: true, cancelable: true });
  // What is not prevented, the browser turns into a press, or into a line of its own.
  expect(target.dispatchEvent(down)).toBe(presses);
});
