import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthOf, minus, plus, toText, type Length } from '../../../src/engine/length/length.ts';
import { verdictOf, type Limits } from '../../../src/engine/reading/verdict.ts';

const mm = (text: string) => lengthOf(`${text} mm`);
const limitsOf = (lower: string | undefined, upper: string | undefined): Limits => ({
  ...(lower !== undefined && { lower: mm(lower) }),
  ...(upper !== undefined && { upper: mm(upper) }),
  source: 'test',
});
const verdict = (value: string, halfWidth: string, limits = limitsOf('9.9', '10.1')) =>
  verdictOf({ value: mm(value), halfWidth: mm(halfWidth), limits });

describe('a shaft of 10.0 ± 0.1 read to ± 0.02', () => {
  // ISO 14253-1 default rule: proved good from 9.92 to 10.08, proved bad below 9.88 or above 10.12.
  test.each(['9.92', '10', '10.08'])('is good at %s', (value) => {
    expect(verdict(value, '0.02')).toEqual({ kind: 'good' });
  });

  test.each([
    ['9.919999', 'lower'],
    ['9.9', 'lower'],
    ['9.88', 'lower'],
    ['10.080001', 'upper'],
    ['10.12', 'upper'],
  ])('is too close to call at %s, near the %s limit', (value, near) => {
    expect(verdict(value, '0.02')).toMatchObject({ kind: 'too-close', near });
  });

  test.each([
    ['9.879999', 'under', '0.020001'],
    ['9.8', 'under', '0.1'],
    ['10.120001', 'over', '0.020001'],
  ])('is no good at %s: %s by %s', (value, way, by) => {
    const result = verdict(value, '0.02');
    expect(result).toMatchObject({ kind: 'no-good', way });
    expect(result.kind === 'no-good' && toText(result.by)).toBe(by);
  });
});

describe('a verdict', () => {
  test('is good exactly at a limit when the size is known exactly, and no good a hair past it', () => {
    expect(verdict('9.9', '0').kind).toBe('good');
    expect(verdict('10.1', '0').kind).toBe('good');
    expect(verdict('10.100000000001', '0').kind).toBe('no-good');
  });

  test('says how far off the limit lies, to either side of it', () => {
    const inside = verdict('9.91', '0.02');
    const outside = verdict('9.89', '0.02');
    expect(inside.kind === 'too-close' && toText(inside.short)).toBe('0.01');
    expect(outside.kind === 'too-close' && toText(outside.short)).toBe('0.01');
  });

  test('is too close at both ends when the band is wider than the limits', () => {
    const wide = verdict('10.03', '0.2');
    expect(wide).toMatchObject({ kind: 'too-close', near: 'both' });
    expect(wide.kind === 'too-close' && toText(wide.short)).toBe('0.07');
  });

  test('with one limit is never spoilt by the side that is free', () => {
    expect(verdict('1000', '0.02', limitsOf('9.9', undefined)).kind).toBe('good');
    expect(verdict('0', '0.02', limitsOf(undefined, '10.1')).kind).toBe('good');
    expect(verdict('1000', '0.02', limitsOf(undefined, '10.1')).kind).toBe('no-good');
  });

  test('on interference works below zero', () => {
    expect(verdict('-0.02', '0.005', limitsOf('-0.03', '-0.01')).kind).toBe('good');
    expect(verdict('0', '0.005', limitsOf('-0.03', '-0.01'))).toMatchObject({ kind: 'no-good', way: 'over' });
  });
});

describe('laws of the verdict', () => {
  const micrometres = (least: number, most: number) =>
    fc.integer({ min: least, max: most }).map((n): Length => mm(`${n < 0 ? '-' : ''}${Math.abs(n)}/1000`));
  const drawn = fc.record({
    value: micrometres(-200, 200),
    halfWidth: micrometres(0, 100),
    lower: micrometres(-150, 0),
    upper: micrometres(1, 150),
    widen: fc.integer({ min: 0, max: 100 }),
  });

  test('wider limits never turn good into anything else, nor too close into no good', () => {
    fc.assert(
      fc.property(drawn, ({ value, halfWidth, lower, upper, widen }) => {
        const narrow = verdictOf({ value, halfWidth, limits: { lower, upper, source: 'narrow' } });
        const wider = {
          lower: minus(lower, mm(`${widen}/1000`)),
          upper: plus(upper, mm(`${widen}/1000`)),
          source: 'wider',
        };
        const wide = verdictOf({ value, halfWidth, limits: wider });
        const rank = { good: 2, 'too-close': 1, 'no-good': 0 };
        expect(rank[wide.kind]).toBeGreaterThanOrEqual(rank[narrow.kind]);
      }),
    );
  });

  test('a narrower band never overturns a verdict that was proved', () => {
    fc.assert(
      fc.property(drawn, ({ value, halfWidth, lower, upper }) => {
        const limits = { lower, upper, source: 'test' };
        const proved = verdictOf({ value, halfWidth, limits });
        const exact = verdictOf({ value, halfWidth: mm('0'), limits });
        expect(['too-close', exact.kind]).toContain(proved.kind);
      }),
    );
  });

  test('a size known exactly is never too close to call', () => {
    fc.assert(
      fc.property(drawn, ({ value, lower, upper }) => {
        const limits = { lower, upper, source: 'test' };
        expect(verdictOf({ value, halfWidth: mm('0'), limits }).kind).not.toBe('too-close');
      }),
    );
  });
});
