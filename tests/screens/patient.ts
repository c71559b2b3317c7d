import { cleanup, configure } from '@testing-library/preact';
import { afterAll, vi } from 'vitest';

// A wait ends when what it waits for is there. How long that may take is no fact of the trade: a busy machine takes its time.
configure({ asyncUtilTimeout: 30_000 });

// The files of one worker share its page: each leaves it empty.
afterAll(() => {
  cleanup();
  vi.useRealTimers();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  document.body.replaceChildren();
  document.head.replaceChildren();
  localStorage.clear();
  location.hash = '';
});
