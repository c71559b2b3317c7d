import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import * as fc from 'fast-check';
import { useState } from 'preact/hooks';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { HalfTyped } from '../../../src/screens/common/pad-text.ts';
import { SizePad } from '../../../src/screens/common/size-pad.tsx';

afterEach(cleanup);

const logged = vi.fn<(typed: string, by: string) => void>();
const steppedOn = vi.fn<() => void>();
beforeEach(() => {
  logged.mockReset();
  steppedOn.mockReset();
});

type PadProps = {
  typed?: string;
  plain?: string;
  refuses?: (typed: string) => boolean;
  /** What was logged stands there until the screen goes. */
  stays?: boolean;
};

/** The pad with the state its screen holds for it; what was refused stays in the field. */
function Pad({ typed = '', plain, refuses = () => false, stays = false }: PadProps) {
  const [half, setHalf] = useState<HalfTyped>({ typed, unit: 'in' });
  const log = (by: string) => {
    if (refuses(half.typed)) return;
    logged(half.typed, by);
    if (!stays) setHalf({ typed: '', unit: 'in' });
  };
  return (
    <>
      <button type="button">Tool</button>
      <SizePad
        label="Left bore"
        half={half}
        onChange={setHalf}
        commit={{ text: 'Log reading', onPress: log }}
        onNext={steppedOn}
        {...(plain !== undefined && { plain })}
      />
    </>
  );
}

// Runs on from test to test, as the keys' own times do.
let clockMs = 0;
beforeEach(() => (clockMs = Math.max(clockMs, performance.now()) + 1000));

/** A key as a browser makes one: heard where the focus is, then written into the field, which says so. */
function key(name: string, afterMs: number): void {
  clockMs += afterMs;
  const down = new KeyboardEvent('keydown', { key: name, bubbles: true, cancelable: true });
  Object.defineProperty(down, 'timeStamp', { value: clockMs });
  const at = document.activeElement ?? document.body;
  if (!at.dispatchEvent(down) || !(at instanceof HTMLInputElement) || name.length > 1) return;
  at.value += name;
  at.dispatchEvent(new InputEvent('input', { bubbles: true }));
}

function keys(text: string, gapMs: number | ((index: number) => number)): void {
  const all = [...text.split(''), 'Enter'];
  all.forEach((name, index) => key(name, typeof gapMs === 'number' ? gapMs : gapMs(index)));
}

function focusOn(place: 'the field' | 'a button'): void {
  const focused = place === 'the field' ? '#size' : 'button';
  document.querySelector<HTMLElement>(focused)?.focus();
}

const sizes = () => logged.mock.calls.map(([typed]) => typed);
const places = ['the field', 'a button'] as const;

describe.each(places)('with the focus on %s no key is lost', (place) => {
  test('when twelve keys and Enter come before anything was drawn', () => {
    render(<Pad />);
    focusOn(place);
    keys('-123.4567890', 8);
    expect(logged.mock.calls).toEqual([['-123.4567890', 'gauge']]);
  });

  test('when two numbers come before anything was drawn', () => {
    render(<Pad />);
    focusOn(place);
    keys('.4487', 8);
    keys('.4489', 8);
    expect(sizes()).toEqual(['.4487', '.4489']);
  });

  test('when the phone stalls for 300 ms between some of them', () => {
    render(<Pad />);
    focusOn(place);
    keys('0.4487123456', (index) => (index % 4 === 2 ? 300 : 8));
    expect(sizes()).toEqual(['0.4487123456']);
  });

  test('when a number that is too long for a length has a stall in it', () => {
    render(<Pad plain="mi" />);
    focusOn(place);
    keys('120472', (index) => (index === 2 ? 300 : 8));
    expect(sizes()).toEqual(['120472']);
  });

  test('wherever the stalls are, and however many keys are drawn at once', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.stringMatching(/^[0-9]{1,6}[.][0-9]{1,6}$/),
        fc.array(fc.record({ gapMs: fc.constantFrom(1, 8, 60, 99, 101, 300), isDrawn: fc.boolean() }), {
          minLength: 14,
          maxLength: 14,
        }),
        async (number, times) => {
          cleanup();
          logged.mockReset();
          render(<Pad plain="mi" />);
          focusOn(place);
          for (const [index, name] of [...number.split(''), 'Enter'].entries()) {
            key(name, times[index]?.gapMs ?? 8);
            if (times[index]?.isDrawn) await Promise.resolve();
          }
          expect(sizes()).toEqual([number]);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('a gauge behind what stands half typed', () => {
  test('logs its own number, also when it stalls', () => {
    render(<Pad typed=".44" />);
    focusOn('the field');
    keys('.4487', (index) => (index === 2 ? 300 : 8));
    expect(sizes()).toEqual(['.4487']);
  });

  test('logs its own number behind one that was refused and still stands there', () => {
    render(<Pad refuses={(typed) => typed === '1/3'} />);
    focusOn('the field');
    keys('1/3', 200);
    clockMs += 5000;
    keys('.4487', 8);
    expect(sizes()).toEqual(['.4487']);
  });

  test.each([
    ['4.4.8', '12', 8, 'two digits of a quick one'],
    ['4.4.8', '12.34', 60, 'a slow one, whose keys come like a hand’s'],
    ['1/3', '.5', 120, 'a slower one'],
    ['999999999999999999', '29.85', 8, 'a long refused one'],
  ])('starts anew behind %s, which was refused: %s (%#)', (refused, sent, gapMs) => {
    render(<Pad refuses={(typed) => typed.startsWith(refused)} />);
    focusOn('the field');
    keys(refused, 200);
    clockMs += 5000;
    keys(sent, gapMs);
    expect(sizes()).toEqual([sent]);
  });

  test('leaves a person who goes on with a refused fraction to it', () => {
    render(<Pad refuses={(typed) => typed === '1 1/'} />);
    focusOn('the field');
    keys('1 1/', 200);
    clockMs += 2000;
    keys('2', 200);
    expect(sizes()).toEqual(['1 1/2']);
  });

  test('does not bring back a digit that a finger took out', () => {
    render(<Pad />);
    focusOn('the field');
    key('1', 200);
    key('2', 200);
    fireEvent.click(screen.getByRole('button', { name: 'delete last digit' }));
    clockMs += 5000;
    keys('.345', 8);
    expect(sizes()).toEqual(['.345']);
  });

  test('loses no character of a key that the phone gives no name to', () => {
    render(<Pad />);
    focusOn('the field');
    const field = document.querySelector<HTMLInputElement>('#size');
    key('Unidentified', 8);
    if (field) field.value = '.';
    field?.dispatchEvent(new InputEvent('input', { bubbles: true }));
    keys('4487', 8);
    expect(sizes()).toEqual(['.4487']);
  });
});

test('backspace takes back a digit, also where a key of the pad has the focus', () => {
  render(<Pad typed=".448" />);
  screen.getByRole('button', { name: '7' }).focus();
  key('Backspace', 200);
  expect(document.querySelector<HTMLInputElement>('#size')?.value).toBe('.44');
  // The next one is the field's own: the browser takes the digit out.
  expect(document.activeElement?.id).toBe('size');
});

test('backspace on an empty field is left to the browser', () => {
  render(<Pad />);
  screen.getByRole('button', { name: '7' }).focus();
  expect(fireEvent.keyDown(document.activeElement ?? document.body, { key: 'Backspace' })).toBe(true);
});

test('a mouse that presses a key of the pad leaves the focus in the field', () => {
  render(<Pad />);
  focusOn('the field');
  expect(fireEvent.mouseDown(screen.getByRole('button', { name: '7' }))).toBe(false);
});

describe('a key that is held', () => {
  const repeated = (name: string) =>
    fireEvent.keyDown(document.activeElement ?? document.body, { key: name, repeat: true });

  test.each(places)('writes its digit once, with the focus on %s', (place) => {
    render(<Pad />);
    focusOn(place);
    key('4', 200);
    const field = document.querySelector<HTMLInputElement>('#size');
    // What is not prevented, the browser writes.
    for (let times = 0; times < 5; times += 1) expect(repeated('4')).toBe(false);
    expect(field?.value).toBe('4');
    keys('87', 200);
    expect(sizes()).toEqual(['487']);
  });

  test('goes on taking digits out where it is backspace', () => {
    render(<Pad typed=".448" />);
    focusOn('the field');
    expect(repeated('Backspace')).toBe(true);
  });

  test('logs once where it is Enter', () => {
    render(<Pad refuses={(typed) => typed === '1/3'} />);
    focusOn('the field');
    keys('.4487', 200);
    keys('.4487', 200);
    for (let times = 0; times < 5; times += 1) repeated('Enter');
    expect(sizes()).toEqual(['.4487', '.4487']);
  });
});

test('an Enter that ends a word in the making logs nothing', () => {
  render(<Pad />);
  focusOn('the field');
  for (const name of '.4487') key(name, 200);
  fireEvent.keyDown(document.activeElement ?? document.body, { key: 'Enter', isComposing: true });
  expect(sizes()).toEqual([]);
  keys('', 200);
  expect(sizes()).toEqual(['.4487']);
});

test.each(['Enter', 'Tab', 'ArrowDown'])('a gauge that ends with Enter and %s logs one reading', (second) => {
  render(<Pad stays />);
  focusOn('the field');
  keys('.4487', 8);
  key(second, 8);
  expect(sizes()).toEqual(['.4487']);
  expect(steppedOn).not.toHaveBeenCalled();
});

describe('a foot switch', () => {
  test('that sends two Enters steps on once, though the phone stalled between hearing them', () => {
    render(<Pad />);
    focusOn('the field');
    vi.useFakeTimers({ toFake: ['performance'] });
    key('Enter', 0);
    vi.advanceTimersByTime(900);
    key('Enter', 120);
    vi.useRealTimers();
    expect(steppedOn).toHaveBeenCalledTimes(1);
  });
});
