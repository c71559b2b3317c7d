import { render, type ComponentType } from 'preact';
import { expect, test, vi } from 'vitest';
import { lazyScreen } from '../../../src/screens/common/lazy-screen.tsx';

test('a place whose code comes while another of the same kind is being opened is not left blank', async () => {
  let arrive: (code: ComponentType) => void = () => undefined;
  const code = new Promise<ComponentType>((done) => {
    arrive = done;
  });
  const Place = lazyScreen(() => code);
  const into = document.createElement('div');
  // Drawn as the app draws, whose effects come behind the drawing.
  render(<Place key="first" />, into);
  await new Promise((done) => setTimeout(done, 100));
  render(<Place key="second" />, into);
  arrive(() => <p>It is here</p>);
  await vi.waitFor(() => expect(into.textContent).toBe('It is here'));
});
