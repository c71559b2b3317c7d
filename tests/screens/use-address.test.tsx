import { waitFor } from '@testing-library/preact';
import { render as draw } from 'preact';
import { afterEach, expect, test } from 'vitest';
import { go, goInstead, hrefOf } from '../../src/screens/address.ts';
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

test('what was pressed for and is done when the fitter has walked on leaves him where he is', async () => {
  location.hash = hrefOf({ at: 'drawer' });
  draw(<Here />, document.body);
  const press = () => document.body.dispatchEvent(new MouseEvent('click', { bubbles: true }));
  press();
  location.hash = hrefOf({ at: 'shop' }); // by the bar below, while the write goes on
  goInstead({ at: 'new-job' });
  go({ at: 'new-job' });
  await waitFor(() => expect(document.body.textContent).toBe('shop'));
  press();
  go({ at: 'jobs' });
  await waitFor(() => expect(document.body.textContent).toBe('jobs'));
});
