import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { keyMeaning, readBurst, type KeyPress } from '../../../src/engine/reading/gauge-burst.ts';

/** Keys one behind the other, so many milliseconds apart; the last is Enter unless it is said otherwise. */
function keys(text: string, gapMs: number, end: 'Enter' | 'Tab' | 'none' = 'Enter'): readonly KeyPress[] {
  const all = [...text.split(''), ...(end === 'none' ? [] : [end])];
  return all.map((key, index) => ({ key, atMs: 1000 + index * gapMs }));
}

/** Keys with the times between them, the first at nought. */
function timed(text: string, gapsMs: readonly number[]): readonly KeyPress[] {
  let atMs = 0;
  return [...text.split(''), 'Enter'].map((key, index) => {
    atMs += index === 0 ? 0 : (gapsMs[index - 1] ?? 0);
    return { key, atMs };
  });
}

describe('a gauge is told from a hand', () => {
  test.each([
    '.4487',
    '0,4487',
    '-0.0012',
    '+1.5',
    '11.40 mm',
    '11.4mm',
    '0.4487in',
    '.4487"',
    '1.5',
    '12.',
    '7',
  ])('%s at 20 ms a key, ended by Enter, is a gauge’s', (text) => {
    expect(readBurst(keys(text, 20))).toEqual({ by: 'gauge', text, ended: 'Enter' });
  });

  test('Tab ends it as Enter does', () => {
    expect(readBurst(keys('.4487', 20, 'Tab'))).toEqual({ by: 'gauge', text: '.4487', ended: 'Tab' });
  });

  test('50 ms a key is a gauge’s, 51 a hand’s', () => {
    expect(readBurst(keys('.4487', 50)).by).toBe('gauge');
    expect(readBurst(keys('.4487', 51)).by).toBe('person');
  });

  test('one time of 100 ms between quick ones is a gauge’s, one of 101 a hand’s', () => {
    expect(readBurst(timed('.4487', [10, 100, 10, 10, 10])).by).toBe('gauge');
    expect(readBurst(timed('.4487', [10, 101, 10, 10, 10]))).toMatchObject({ by: 'person', text: '.4487' });
  });

  test('the time to the end key counts: a number typed quickly, and Enter after a look, is a hand’s', () => {
    expect(readBurst(timed('.4487', [10, 10, 10, 10, 400]))).toEqual({
      by: 'person',
      text: '.4487',
      ended: 'Enter',
    });
  });

  test.each(['4.4.87', 'bore', '1/2', '1e3', '4487-', 'mm', '--1', '1 1/2'])(
    '%s is no number, and a hand’s however quick',
    (text) => {
      expect(readBurst(keys(text, 10))).toEqual({ by: 'person', text, ended: 'Enter' });
    },
  );

  test('without an end key nothing is called a gauge yet, and nothing is lost', () => {
    expect(readBurst(keys('.4487', 10, 'none'))).toEqual({ by: 'person', text: '.4487' });
    expect(readBurst([])).toEqual({ by: 'person', text: '' });
  });

  test('a key held down is a hand’s, though it repeats as quickly as a gauge types', () => {
    const held = keys('5555', 30).map((key, index) => ({ ...key, repeat: index > 0 && key.key !== 'Enter' }));
    expect(readBurst(held)).toMatchObject({ by: 'person', text: '5555' });
  });

  test('Enter alone is nobody’s number', () => {
    expect(readBurst(keys('', 10))).toEqual({ by: 'person', text: '', ended: 'Enter' });
  });

  test('keys that write nothing don’t stand in the text, and Backspace takes one back', () => {
    const shifted: readonly KeyPress[] = [
      { key: 'Shift', atMs: 0 },
      { key: '4', atMs: 10 },
      { key: '5', atMs: 20 },
      { key: 'Backspace', atMs: 30 },
      { key: 'Enter', atMs: 40 },
    ];
    expect(readBurst(shifted)).toEqual({ by: 'gauge', text: '4', ended: 'Enter' });
  });

  test('what comes behind the end key belongs to the next', () => {
    const two = [...keys('.4487', 20), { key: '9', atMs: 1121 }];
    expect(readBurst(two)).toEqual({ by: 'gauge', text: '.4487', ended: 'Enter' });
  });

  test('what a gauge sends behind a half-typed number is told apart, and all of it kept', () => {
    const half = [
      { key: '0', atMs: 0 },
      { key: '.', atMs: 300 },
      ...keys('.4487', 20).map((key) => ({ ...key, atMs: key.atMs + 1000 })),
    ];
    expect(readBurst(half)).toEqual({ by: 'person', text: '0..4487', ended: 'Enter', sent: '.4487' });
  });

  test('two quick keys at the end of typing are not taken for a gauge, three are', () => {
    const typed = (tail: string) => [
      { key: '.', atMs: 0 },
      ...keys(tail, 20).map((key) => ({ ...key, atMs: key.atMs + 1000 })),
    ];
    expect(readBurst(typed('.5'))).not.toHaveProperty('sent');
    expect(readBurst(typed('.50'))).toHaveProperty('sent', '.50');
  });

  test('a gauge that falters keeps the digits before each pause, what was half typed before it does not', () => {
    const faltering = [1000, 10, 300, 10, 10, 10, 10, 10];
    expect(readBurst(timed('4.448705', [10, ...faltering]))).toHaveProperty('sent', '4.448705');
    // "0." typed by hand, then ".448705" in two goes.
    expect(readBurst(timed('0..448705', [200, ...faltering]))).toHaveProperty('sent', '.448705');
  });

  test('a pause of 100 ms is none yet', () => {
    const close = [{ key: '1', atMs: 900 }, ...keys('.250', 60).map((key) => ({ ...key, atMs: key.atMs }))];
    expect(readBurst(close)).not.toHaveProperty('sent');
  });

  test('every character comes back in its place, whoever typed it and however fast', () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^[0-9.,/ a-z+-]{0,20}$/),
        fc.array(fc.integer({ min: 0, max: 500 }), { minLength: 20, maxLength: 20 }),
        (text, gaps) => {
          const burst = readBurst(timed(text, gaps));
          expect(burst.text).toBe(text);
          expect(burst.ended).toBe('Enter');
        },
      ),
    );
  });
});

describe('what a key means', () => {
  const at = (key: string, text: string, typedBy: 'keys' | 'pad' = 'keys', sinceEnterMs?: number) =>
    keyMeaning({ key, text, typedBy, ...(sinceEnterMs !== undefined && { sinceEnterMs }) });

  test('Enter logs what the same keys typed', () => {
    expect(at('Enter', '.4487')).toBe('log');
  });

  test('Enter and page down on an empty field are a foot switch: next', () => {
    expect(at('Enter', '')).toBe('next');
    expect(at('Enter', '  ', 'pad')).toBe('next');
    expect(at('PageDown', '')).toBe('next');
  });

  test('a foot switch never logs what a finger half typed, nor what keys did by page down', () => {
    expect(at('Enter', '.44', 'pad')).toBe('hold');
    expect(at('PageDown', '.44', 'pad')).toBe('hold');
    expect(at('PageDown', '.44', 'keys')).toBe('hold');
  });

  test('an arrow down right behind Enter is a line feed and swallowed, later it is an arrow', () => {
    expect(at('ArrowDown', '', 'keys', 0)).toBe('swallow');
    expect(at('ArrowDown', '', 'keys', 100)).toBe('swallow');
    expect(at('ArrowDown', '', 'keys', 101)).toBe('type');
    expect(at('ArrowDown', '')).toBe('type');
  });

  test('a second Enter right behind the first is the same press', () => {
    expect(at('Enter', '', 'keys', 100)).toBe('swallow');
    expect(at('Enter', '', 'keys', 101)).toBe('next');
    expect(at('Enter', '.4487', 'keys', 20)).toBe('log');
  });

  test('any other key is typing', () => {
    expect(['4', '.', 'Shift', 'PageUp', 'Unidentified'].map((key) => at(key, ''))).toEqual(
      Array.from({ length: 5 }, () => 'type'),
    );
  });
});
