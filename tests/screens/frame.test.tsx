import { readFileSync } from 'node:fs';
import { cleanup, render } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { BottomBar } from '../../src/screens/bottom-bar.tsx';

afterEach(cleanup);

test('the frame that stands before any script has run has the places that the app draws', () => {
  const page = new DOMParser().parseFromString(readFileSync('index.html', 'utf8'), 'text/html');
  render(<BottomBar address={{ at: 'jobs' }} />);
  const drawn = document.querySelector('nav');
  drawn?.querySelector('[aria-current]')?.removeAttribute('aria-current');
  expect(drawn?.querySelectorAll('a')).toHaveLength(4);
  expect(page.querySelector('#app nav')?.outerHTML).toBe(drawn?.outerHTML);
});
