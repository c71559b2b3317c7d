import { cleanup, render, screen, within } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { holeAndPin } from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { RouteTable } from '../../../../src/screens/worksheets/hole-and-pin/route-table.tsx';

afterEach(cleanup);

const exactly = (text: string) => ({
  tightest: typedEstimate(lengthOf(text)),
  loosest: typedEstimate(lengthOf(text)),
});

function compare(bore: string) {
  const { routes } = holeAndPin({
    bore: exactly(bore),
    pin: exactly('.4372 in'),
    joint: 'turns',
    wall: lengthOf('.400 in'),
  });
  render(<RouteTable routes={routes} unit="in" />);
}

test('the ways that are open stand in one table, each with its five answers', () => {
  compare('.4487 in');
  const table = screen.getByRole('table', { name: 'Ways that are open' });
  expect(
    within(table)
      .getAllByRole('columnheader')
      .map(({ textContent }) => textContent),
  ).toEqual(['Way', 'Restores', 'Metal', 'Tools', 'Undone?', 'Goes wrong']);
  const heads = within(table)
    .getAllByRole('rowheader')
    .map(({ textContent }) => textContent);
  expect(heads).toEqual(['Larger pin possible', 'Bushing not sure yet', 'Sleeve on the pin not sure yet']);
  expect(within(table).getAllByRole('cell')).toHaveLength(3 * 5);
});

test('a figure is never parted from its unit', () => {
  compare('.4487 in');
  // (.5625 − .4487) / 2 = .0569
  expect(document.body.textContent).toContain('Takes .0569\u00a0in each side');
});

test('the ways that are ruled out are one press further', () => {
  compare('.4487 in');
  const more = screen.getByText('Ruled out: 4').closest('details');
  expect(more?.open).toBe(false);
});

test('where every way is ruled out, they are shown at once', () => {
  compare('.4360 in');
  expect(screen.queryByRole('table', { name: 'Ways that are open' })).toBeNull();
  expect(screen.getByText('Ruled out: 7').closest('details')?.open).toBe(true);
});
