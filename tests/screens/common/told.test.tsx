import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { sayStore } from '../../../src/store/base/say-store.ts';
import type { StoreResult } from '../../../src/store/base/store-refusal.ts';
import { Trouble, useTold } from '../../../src/screens/common/told.tsx';

afterEach(cleanup);

const isFull: StoreResult<string> = { ok: false, refusal: { code: 'full-disk' } };
const isKept: StoreResult<string> = { ok: true, value: 'the washer' };

/** A screen with one key, whose presses end as they are listed. */
function aKey(...ends: StoreResult<string>[]) {
  const onKept = vi.fn<(value: string) => void>();
  const answers: boolean[] = [];
  function Key() {
    const { trouble, told } = useTold();
    const press = async () => answers.push(await told(Promise.resolve(ends.shift() ?? isKept), onKept));
    return (
      <>
        <Trouble>{trouble}</Trouble>
        <button onClick={() => void press()}>Keep</button>
      </>
    );
  }
  render(<Key />);
  return { onKept, answers, press: () => fireEvent.click(screen.getByRole('button')) };
}

test('what a full phone could not keep is said at once to a screen reader, and nothing is led on to', async () => {
  const { press, onKept, answers } = aKey(isFull);
  press();
  expect((await screen.findByRole('alert')).textContent).toBe(sayStore({ code: 'full-disk' }));
  await waitFor(() => expect(answers).toEqual([false]));
  expect(onKept).not.toHaveBeenCalled();
});

test('once there is room again the sentence goes, and what was made is led on with', async () => {
  const { press, onKept, answers } = aKey(isFull, isKept);
  press();
  await screen.findByRole('alert');
  press();
  await waitFor(() => expect(answers).toEqual([false, true]));
  expect(screen.queryByRole('alert')).toBeNull();
  expect(onKept.mock.calls).toEqual([['the washer']]);
});
