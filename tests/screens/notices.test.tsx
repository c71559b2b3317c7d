import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { Notices } from '../../src/screens/notices.tsx';

afterEach(cleanup);

const again = { text: 'Open again', onPress: async () => undefined };

test('a line from the app is put away by a press, one that nothing can be kept under stays', () => {
  const onPutAway = vi.fn<(id: string) => void>();
  render(
    <Notices
      notices={[
        { id: 'update', sentence: 'A new version is ready.' },
        { id: 'closing', sentence: 'Nothing is kept now.', staying: true, action: again },
      ]}
      onPutAway={onPutAway}
    />,
  );
  fireEvent.click(screen.getByRole('button', { name: 'OK, put away: A new version is ready.' }));
  expect(onPutAway.mock.calls).toEqual([['update']]);
  expect(screen.getAllByRole('button').map((key) => key.textContent)).toEqual(['OK', 'Open again']);
});
