import { cleanup, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { useWakeLock } from '../../../src/screens/common/wake-lock.ts';

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
  Reflect.deleteProperty(navigator, 'wakeLock');
});

function Screen() {
  return <p>{useWakeLock()}</p>;
}

/** A lock as a phone gives it, which the phone may take back. */
class Lock extends EventTarget {
  release = vi.fn<() => Promise<void>>(() => Promise.resolve());
}

function phoneThat(request: () => Promise<Lock>) {
  const asked = vi.fn<() => Promise<Lock>>(request);
  Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request: asked } });
  return asked;
}

describe('the screen at the lathe', () => {
  test('stays on once the phone has said so, and not before', async () => {
    const lock = new Lock();
    phoneThat(() => Promise.resolve(lock));
    const { unmount } = render(<Screen />);
    await screen.findByText('on');
    unmount();
    await waitFor(() => expect(lock.release).toHaveBeenCalledTimes(1));
  });

  test('may go dark where the phone refuses; every press asks again', async () => {
    let battery = 'low';
    const asked = phoneThat(() =>
      battery === 'low' ? Promise.reject(new Error('low battery')) : Promise.resolve(new Lock()),
    );
    render(<Screen />);
    await screen.findByText('refused');
    battery = 'charged';
    document.body.click();
    await screen.findByText('on');
    expect(asked).toHaveBeenCalledTimes(2);
  });

  test('is asked to stay on again when the phone took the lock back', async () => {
    const locks = [new Lock(), new Lock()];
    const asked = phoneThat(() => Promise.resolve(locks[asked.mock.calls.length - 1] ?? new Lock()));
    render(<Screen />);
    await screen.findByText('on');
    locks[0]?.dispatchEvent(new Event('release'));
    await screen.findByText('refused');
    document.dispatchEvent(new Event('visibilitychange'));
    await screen.findByText('on');
    expect(asked).toHaveBeenCalledTimes(2);
  });

  test('a phone without a wake lock is told apart from one that refuses', () => {
    render(<Screen />);
    expect(screen.getByText('not-here')).toBeTruthy();
  });
});
