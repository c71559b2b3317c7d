import { describe, expect, test } from 'vitest';
import { boundsInShop, keptOfShop, numberInShop } from '../../../src/engine/worksheets/number-in-shop.ts';

const temperature = { unit: '°C', least: -60, most: 500 };

describe('a temperature in an inch shop', () => {
  test('is typed in °F, and its bounds are those in °C', () => {
    expect(boundsInShop(temperature, 'in')).toEqual({ unit: '°F', least: -76, most: 932 });
    expect(boundsInShop(temperature, 'mm')).toBe(temperature);
  });

  // °F = °C · 9/5 + 32, exact by definition.
  test.each([
    ['140', '60', '140 °F'],
    ['-40', '-40', '−40 °F'],
    ['72', '22.2222', '72 °F'],
    ['71.5', '21.9444', '71.5 °F'],
  ])('%s °F is kept as %s °C and shown again as typed', (typed, kept, shown) => {
    expect(keptOfShop(typed, '°C', 'in')).toBe(kept);
    expect(numberInShop(kept, '°C', 'in')).toBe(shown);
    expect(keptOfShop(typed, '°C', 'mm')).toBe(typed);
  });

  test('every whole degree comes back as it was typed', () => {
    for (let degrees = -76; degrees <= 932; degrees += 1) {
      const kept = keptOfShop(String(degrees), '°C', 'in');
      expect(numberInShop(kept, '°C', 'in')).toBe(`${degrees} °F`.replace('-', '−'));
    }
  });
});

test('a strength is typed in psi, and kept in MPa: 53,000 psi is 365.4 MPa (NIST SP 811, B.8)', () => {
  const kept = keptOfShop('53000', 'MPa', 'in');
  expect(Number(kept)).toBeCloseTo(365.4, 1);
  expect(numberInShop(kept, 'MPa', 'in')).toBe('53000 psi');
  expect(numberInShop('250', 'MPa', 'mm')).toBe('250 MPa');
});
