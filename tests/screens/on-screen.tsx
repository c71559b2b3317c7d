import { cleanup, render } from '@testing-library/preact';
import type { ComponentChildren } from 'preact';
import { StoreProvider } from '../../src/screens/common/store-context.ts';
import { draftsWritten } from '../../src/screens/common/drafts-unwritten.ts';
import type { Store } from '../../src/store/opening/open-store.ts';
import { closeAll } from '../store/open-for-test.ts';

/** A screen over a real store, on the page as index.html has it: with the line a screen reader reads out. */
export function onScreen(store: Store, screen: ComponentChildren) {
  if (!document.getElementById('said')) {
    const said = document.createElement('p');
    said.id = 'said';
    said.setAttribute('role', 'status');
    document.body.append(said);
  }
  return render(<StoreProvider value={store}>{screen}</StoreProvider>);
}

/** What a screen reader was last given to say. */
export function said(): string {
  return document.getElementById('said')?.textContent ?? '';
}

/** Until a press can't be taken for a glove's bounce of the one before it. */
export async function aMomentLater(): Promise<void> {
  await new Promise((done) => setTimeout(done, 400));
}

/** The screen goes, what was half typed is written, the stores close. */
export async function clearAway(): Promise<void> {
  cleanup();
  document.getElementById('said')?.remove();
  await draftsWritten();
  closeAll();
}

/** For a sentence with a size or a thread in it, which stands in an element of its own so that no line ends inside it. */
export function wholeSentence(words: RegExp) {
  return (_own: string, element: Element | null): boolean =>
    element !== null &&
    words.test(element.textContent) &&
    ![...element.children].some((child) => words.test(child.textContent));
}
