import { describe, expect, test } from 'vitest';
import { celsiusForShrink, coldShrinkOf, shrinkBetween } from '../../../src/engine/material/cold-shrink.ts';
import { materialNamed, materials, type MaterialId } from '../../../src/engine/material/tables/materials.ts';

function shrinkOf(id: MaterialId) {
  const found = materialNamed(id);
  if (!found) throw new Error(id);
  return coldShrinkOf(found);
}

const percent = (id: MaterialId, to: number) => shrinkBetween(shrinkOf(id), 20, to) * 100;

describe('published contraction from 293 K to 80 K', () => {
  // The room temperature figures would give .249, .503 and .367 %.
  test.each([
    { id: 'low-carbon-steel', percentLost: 0.187 }, // 1075 steel
    { id: 'aluminium-6061', percentLost: 0.393 },
    { id: 'stainless-303', percentLost: 0.282 },
  ] as const)('$id loses $percentLost %', ({ id, percentLost }) => {
    expect(percent(id, -193.15)).toBeCloseTo(percentLost, 4);
  });

  test('steel loses about .19 % from 20 to −190 °C, not .24', () => {
    expect(Math.abs(percent('low-carbon-steel', -190) - 0.19)).toBeLessThan(0.005);
  });

  test('nitrogen at −196 °C promises no more than 80 K does', () => {
    expect(percent('aluminium-6061', -196)).toBeCloseTo(0.393, 4);
  });
});

describe('between room and deep cold', () => {
  // A published fit for 6061, from memory: .212 % at −78 °C, .0855 % at −18 °C; for 304 .146 % and .0579 %.
  test.each([
    { id: 'aluminium-6061', to: -78, published: 0.212 },
    { id: 'aluminium-6061', to: -18, published: 0.0855 },
    { id: 'stainless-304', to: -78, published: 0.146 },
    { id: 'stainless-304', to: -18, published: 0.0579 },
  ] as const)('$id at $to °C is within a twentieth of .published %', ({ id, to, published }) => {
    expect(Math.abs(percent(id, to) / published - 1)).toBeLessThan(0.05);
  });

  test('every material shrinks the more the colder it is, and never by more than its room temperature figure', () => {
    for (const material of materials) {
      const shrink = coldShrinkOf(material);
      const steps = Array.from({ length: 214 }, (_, at) => 20 - at);
      for (const at of steps) {
        const lost = shrinkBetween(shrink, 20, at);
        expect(lost).toBeGreaterThanOrEqual(shrinkBetween(shrink, 20, at + 1));
        expect(lost).toBeLessThanOrEqual((material.expansionPerMillionCelsius.low / 1e6) * (20 - at) + 1e-12);
      }
    }
  });

  test('cooled from a cold shop it loses the difference', () => {
    const steel = shrinkOf('low-carbon-steel');
    expect(shrinkBetween(steel, 5, -78)).toBeCloseTo(
      shrinkBetween(steel, 20, -78) - shrinkBetween(steel, 20, 5),
      12,
    );
    // above 20 °C by the room figure: 10 · 11.7e-6
    expect(shrinkBetween(steel, 30, 20)).toBeCloseTo(11.7e-5, 12);
  });
});

describe('how cold it has to be', () => {
  test.each([-10, -18, -78, -150, -190])('what %s °C shrinks takes %s °C', (celsius) => {
    for (const material of materials) {
      const shrink = coldShrinkOf(material);
      expect(celsiusForShrink(shrink, 25, shrinkBetween(shrink, 25, celsius))).toBeCloseTo(celsius, 6);
    }
  });

  test('nothing to lose takes no cold, and more than all of it no cold does', () => {
    const steel = shrinkOf('low-carbon-steel');
    expect(celsiusForShrink(steel, 23, 0)).toBeCloseTo(23, 9);
    expect(celsiusForShrink(steel, 20, 0.00188)).toBe(undefined);
    expect(celsiusForShrink(steel, 20, 0.00186)).toBeGreaterThan(-193.15);
  });
});
