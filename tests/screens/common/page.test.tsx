import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { Page } from '../../../src/screens/common/page.tsx';

beforeEach(() => {
  // The first screen of all is read by itself.
  render(<Page title="Jobs">{null}</Page>);
  cleanup();
});
afterEach(cleanup);

const focused = () => document.activeElement?.textContent;

test('a new screen’s name has the focus, so that it is read out', () => {
  render(<Page title="Spacer stack">{null}</Page>);
  expect(focused()).toBe('Spacer stack');
});

test('while a screen is still being fetched nothing is read out, then its name is', () => {
  const { rerender } = render(<Page title=" ">{null}</Page>);
  expect(document.activeElement).toBe(document.body);
  rerender(<Page title="Cuts">{null}</Page>);
  expect(focused()).toBe('Cuts');
});

test('a field that is typed in keeps the focus when the name changes', () => {
  const field = <input aria-label="Name" />;
  const { rerender } = render(<Page title="Stack">{field}</Page>);
  screen.getByLabelText('Name').focus();
  rerender(<Page title="Stack of the brake">{field}</Page>);
  expect(document.activeElement).toBe(screen.getByLabelText('Name'));
});
