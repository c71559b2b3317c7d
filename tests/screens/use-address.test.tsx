import { waitFor } from '@testing-library/preact';
import { render as draw } from 'preact';
import { afterEach, expect, test } from 'vitest';
import { useAddress } from '../../src/screens/use-address.ts';

function Here() {
  return <p>{useAddress().at}</p>;
}

afterEach(() => {
  draw(null, document.body);
  location.hash = '';
});

test('an address that changes in the very frame the app appears is followed', async () => {
  location.hash = '#/drawer';
  draw(<Here />, document.body);
  // Changed without an event that anybody is there to hear, as one that came before the listening.
  history.replaceState(null, '', '#/shop');
  await waitFor(() => expect(document.body.textContent).toBe('shop'));
});

test('an address changed later is followed', async () => {
  location.hash = '#/drawer';
  draw(<Here />, document.body);
  await waitFor(() => expect(document.body.textContent).toBe('drawer'));
  location.hash = '#/shop';
  await waitFor(() => expect(document.body.textContent).toBe('shop'));
});
