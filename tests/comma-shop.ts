import { afterAll, beforeAll } from 'vitest';
import { writeDecimalsWith } from '../src/engine/length/decimal-mark.ts';

/** The tests of this block are held in a shop that types commas; whatever comes after it is in one with points again. */
export function inCommaShop(): void {
  beforeAll(() => writeDecimalsWith(','));
  afterAll(() => writeDecimalsWith('.'));
}
