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

test('a passing line stands for six seconds from when it is drawn, however late that is, and then goes by itself', () => {
  vi.useFakeTimers();
  const onPutAway = vi.fn<(id: string) => void>();
  vi.advanceTimersByTime(60_000);
  render(<Notices notices={[{ id: 'offline', sentence: 'Ready.', passing: true }]} onPutAway={onPutAway} />);
  vi.advanceTimersByTime(5999);
  expect(onPutAway).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1);
  expect(onPutAway.mock.calls).toEqual([['offline']]);
  vi.useRealTimers();
});
