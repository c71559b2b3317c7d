import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { announce, announceAtOnce, announceQuietly } from '../../../src/screens/common/announce.ts';

let said: HTMLElement;
beforeEach(() => {
  said = document.createElement('p');
  said.id = 'said';
  document.body.append(said);
});
afterEach(() => said.remove());

describe('what is read out without the focus moving', () => {
  test('stands in the line that was on the page from the start', () => {
    announce('Logged .4487 in, reading 1 of left bore.');
    expect(said.textContent).toBe('Logged .4487 in, reading 1 of left bore.');
  });

  test('is read out again when it is the same sentence: the text changes, its words don’t', () => {
    announce('Undone: Struck out .4487 in');
    const first = said.textContent;
    announce('Undone: Struck out .4487 in');
    expect(said.textContent).not.toBe(first);
    expect(said.textContent?.trim()).toBe(first);
    announce('Undone: Struck out .4487 in');
    expect(said.textContent).toBe(first);
  });

  test('is not pushed aside by a line of the app’s own, which waits until it is spoken', () => {
    vi.useFakeTimers();
    announce('Logged .4487 in, reading 1 of left bore.');
    announceQuietly('Ready to work without signal.');
    vi.advanceTimersByTime(1000);
    expect(said.textContent).toContain('Logged .4487 in');
    vi.advanceTimersByTime(2000);
    expect(said.textContent).toBe('Ready to work without signal.');
    vi.useRealTimers();
  });

  test('takes a “Stop” out of the way that it answers', () => {
    const stop = document.createElement('p');
    stop.id = 'past-limit';
    document.body.append(stop);
    announceAtOnce('Stop. 1.110 in is .0014 in past the limit of 1.1114 in.');
    announce('Outer spacer is on the cut list again.');
    expect(stop.textContent).toBe('');
    stop.remove();
  });

  test('is let go without a fault where the line is missing', () => {
    said.remove();
    expect(() => announce('Logged .4487 in')).not.toThrow();
  });
});
