import { cleanup, render } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { unbroken } from '../../../src/screens/common/unbroken.tsx';

afterEach(cleanup);

test.each([
  ['Hole, tapped for an insert 7/16-20 UNF', ['7/16-20']],
  ['Shock-link bolts 7/16-20, bought', ['7/16-20']],
  ['3 readings, 0–1 in micrometer', ['0–1']],
  ['The 25–50 mm micrometer', ['25–50']],
  ['4-13/32 in exactly', ['4-13/32']],
  ['safety-critical · demo data', ['safety-critical', 'demo data']],
  ['Shock-link bore, left', []],
  // What is long could not stand in one piece on a narrow screen at twice the text.
  ['part 123456-7890123', []],
  ['', []],
])('“%s” keeps its sizes in one piece, and reads as before', (text, pieces) => {
  const { container } = render(<p>{unbroken(text)}</p>);
  expect([...container.querySelectorAll('.unbroken')].map((piece) => piece.textContent)).toEqual(pieces);
  expect(container.textContent).toBe(text);
});

test('anything but text is left as it is', () => {
  const given = <em>7/16-20</em>;
  expect(unbroken(given)).toBe(given);
});
