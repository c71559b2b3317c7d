import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { NumberLine } from '../../../src/screens/common/number-line.tsx';

afterEach(cleanup);

type Given = { value: string; halfWidth?: string; lower?: string; upper?: string; unit?: 'in' | 'mm' };

function draw({ value, halfWidth = '.0005 in', lower, upper, unit = 'in' }: Given) {
  const { container } = render(
    <NumberLine
      value={lengthOf(value)}
      halfWidth={lengthOf(halfWidth)}
      limits={{
        source: 'your own limits',
        ...(lower !== undefined && { lower: lengthOf(lower) }),
        ...(upper !== undefined && { upper: lengthOf(upper) }),
      }}
      verdict="good"
      unit={unit}
      label="float"
    />,
  );
  const all = [...container.querySelectorAll('svg *')];
  return {
    marks: [...container.querySelectorAll('.number-line-mark')].map((mark) => mark.textContent),
    x: (name: string) => Number(container.querySelector(`.number-line-${name}`)?.getAttribute('x1')),
    limitLines: container.querySelectorAll('.number-line-limit').length,
    /** Every place along the line that was worked out. */
    places: all.flatMap((element) =>
      ['x', 'x1', 'x2', 'width'].flatMap((name) => element.getAttribute(name) ?? []),
    ),
  };
}

describe('the line as it is spoken', () => {
  test('names the value, the band the readings leave and both limits', () => {
    draw({ value: '.0100 in', lower: '.008 in', upper: '.012 in' });
    expect(screen.getByRole('img').getAttribute('aria-label')).toBe(
      'float .010 in, band ±.00050; wanted from .008 to .012.',
    );
  });

  test('names the one limit there is', () => {
    draw({ value: '0.25 mm', halfWidth: '0.02 mm', upper: '0.30 mm', unit: 'mm' });
    expect(screen.getByRole('img').getAttribute('aria-label')).toBe(
      'float 0.25 mm, band ±0.020; wanted to 0.30.',
    );
  });
});

describe('the line as it is drawn', () => {
  test('a value half-way between its limits stands half-way between their lines', () => {
    const line = draw({ value: '.010 in', lower: '.008 in', upper: '.012 in' });
    // The limits span the 292 wide line from 34 to 326; its middle is 180.
    expect(line.x('value')).toBeCloseTo(180);
  });

  test('limits far apart are each written under their line', () => {
    expect(draw({ value: '.010 in', lower: '.008 in', upper: '.012 in' }).marks).toEqual(['.008', '.012']);
  });

  test('limits too near each other to stand under their lines are written once, as from and to', () => {
    // A gap of .100 beside limits .004 apart: .004 / .092 of 292 is 13 wide, less than a figure.
    expect(draw({ value: '.100 in', lower: '.008 in', upper: '.012 in' }).marks).toEqual(['.008 to .012']);
  });

  test('with one limit there is one line and one figure', () => {
    const line = draw({ value: '.010 in', lower: '.008 in' });
    expect(line.limitLines).toBe(1);
    expect(line.marks).toEqual(['.008']);
  });

  test.each<Given & { fact: string }>([
    {
      fact: 'known exactly and exactly at its one limit',
      value: '.011 in',
      halfWidth: '0 in',
      lower: '.011 in',
    },
    {
      fact: 'known exactly and all that is allowed',
      value: '.011 in',
      halfWidth: '0 in',
      lower: '.011 in',
      upper: '.011 in',
    },
    { fact: 'known exactly, without a limit', value: '.011 in', halfWidth: '0 in' },
  ])('a value $fact is drawn all the same', (given) => {
    const { places } = draw(given);
    expect(places.filter((place) => !Number.isFinite(Number(place)))).toEqual([]);
  });
});
