import { cleanup, render } from '@testing-library/preact';
import { useState } from 'preact/hooks';
import { afterEach, expect, test, vi } from 'vitest';
import { SizePad } from '../../../src/screens/common/size-pad.tsx';

afterEach(cleanup);

/** A pad as a screen has it. Its keys are pressed past the test library, which would draw at once. */
function onePad() {
  const taken = vi.fn<(typed: string) => void>();
  function Screen() {
    const [half, setHalf] = useState({ typed: '', unit: 'in' as const });
    const change = ({ typed }: { typed: string }) => setHalf({ typed, unit: 'in' });
    return (
      <>
        <p id="rest">{half.typed}</p>
        <SizePad
          label="Bore"
          half={half}
          onChange={change}
          commit={{ text: 'Log reading', onPress: () => taken(half.typed) }}
        />
      </>
    );
  }
  const { container } = render(<Screen />);
  const key = (name: string) =>
    [...container.querySelectorAll('button')].find(
      (button) => button.textContent === name || button.getAttribute('aria-label') === name,
    );
  const field = container.querySelector<HTMLInputElement>('#size');
  const rest = container.querySelector('#rest');
  return {
    taken,
    press: (name: string) => key(name)?.click(),
    shown: () => field?.value,
    rest: () => rest?.textContent,
  };
}

test('the digit stands in its field with the press; the rest of the screen follows by itself', async () => {
  const pad = onePad();
  pad.press('4');
  expect([pad.shown(), pad.rest()]).toEqual(['4', '']);
  await vi.waitFor(() => expect(pad.rest()).toBe('4'));
  expect(pad.shown()).toBe('4');
});

test('presses that are quicker than the screen lose no digit, and what is taken is what is shown', () => {
  const pad = onePad();
  for (const key of ['4', '7', 'delete last digit', '5', 'decimal point', '2']) pad.press(key);
  expect(pad.shown()).toBe('45.2');
  pad.press('Log reading');
  expect(pad.taken.mock.calls).toEqual([['45.2']]);
});

test('the last digit taken back leaves what the screen has for an empty field, at once', async () => {
  const pad = onePad();
  pad.press('4');
  pad.press('delete last digit');
  await vi.waitFor(() => expect([pad.shown(), pad.rest()]).toEqual(['', '']));
});
