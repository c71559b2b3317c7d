import { describe, expect, test } from 'vitest';
import { lengthOf, toText } from '../../../src/engine/length/length.ts';
import { growthTo, inUseAt, type GrowingLeg } from '../../../src/engine/material/hot-and-cold.ts';
import { materialNamed } from '../../../src/engine/material/tables/materials.ts';

const mm = (text: string) => lengthOf(`${text} mm`);

function leg(size: string, coefficient: number, name: string): GrowingLeg {
  const metal = materialNamed(name);
  if (!metal) throw new Error(`${name} is no material of the table`);
  return { size: mm(size), coefficient, metal };
}

const inMm = ({ least, most }: ReturnType<typeof growthTo>) => [Number(toText(least)), Number(toText(most))];

describe('a sum of sizes, hot and cold', () => {
  // Expansions a °C: steel 1020 11.7e-6, 4140 12.3e-6, aluminium 6061 23.6e-6, bronze 18.0e-6 (Callister, table B.6);
  // acetal 100e-6 to 120e-6 (resin data sheets, from memory). Each sum is worked by hand.
  test.each([
    {
      what: 'an acetal pin of 1/2 in loses .050 mm in a steel bore by 60 °C, give or take what acetal is',
      celsius: 60,
      legs: [leg('12.7', 1, 'low-carbon-steel'), leg('12.7', -1, 'acetal')],
      // 12.7 · (11.7 − 120)e-6 · 40, 12.7 · (11.7 − 100)e-6 · 40
      comes: [-0.0550164, -0.0448564],
    },
    {
      what: 'and gains as much at −20 °C',
      celsius: -20,
      legs: [leg('12.7', 1, 'low-carbon-steel'), leg('12.7', -1, 'acetal')],
      comes: [0.0448564, 0.0550164],
    },
    {
      what: 'a steel ring of 47 mm in an aluminium hub loses .042 mm of its grip by 100 °C',
      celsius: 100,
      legs: [leg('47', 1, 'aluminium-6061'), leg('47', -1, 'alloy-steel')],
      comes: [0.042488, 0.042488], // 47 · (23.6 − 12.3)e-6 · 80
    },
    {
      what: 'parts of one metal between faces of the same grow with their gap alone',
      celsius: 120,
      legs: [leg('25', 1, 'aluminium-6061'), leg('12', -2, 'aluminium-6061')],
      comes: [0.00236, 0.00236], // 1 · 23.6e-6 · 100
    },
    { what: 'nothing changes at 20 °C', celsius: 20, legs: [leg('12.7', 1, 'acetal')], comes: [0, 0] },
  ])('$what', ({ celsius, legs, comes }) => {
    const [least = 0, most = 0] = inMm(growthTo(celsius, legs));
    expect(least).toBeCloseTo(comes[0] ?? Number.NaN, 9);
    expect(most).toBeCloseTo(comes[1] ?? Number.NaN, 9);
  });

  const acetal = [leg('12.7', 1, 'low-carbon-steel'), leg('12.7', -1, 'acetal')];
  test.each([
    { clearance: '.020', keeps: 'not' }, // −.035 to −.025
    { clearance: '.050', keeps: 'perhaps' }, // −.005 to .005
    { clearance: '.0550164', keeps: 'perhaps' }, // nothing at all is no clearance
    { clearance: '.056', keeps: 'surely' }, // .001 to .011
  ])('a clearance of $clearance mm round an acetal pin is kept at 60 °C: $keeps', ({ clearance, keeps }) => {
    const range = { least: mm(clearance), most: mm(clearance) };
    const found = inUseAt(60, { range, legs: acetal, stays: 'above' });
    expect(found.keeps).toBe(keeps);
    expect(Number(toText(found.needs))).toBeCloseTo(0.0550164, 9);
  });

  const ring = [leg('47', 1, 'aluminium-6061'), leg('47', -1, 'alloy-steel')];
  test.each([
    { grip: '-.030', keeps: 'not' },
    { grip: '-.042488', keeps: 'not' }, // to size is no grip
    { grip: '-.043', keeps: 'surely' },
  ])('a grip of $grip mm on a ring in aluminium is kept at 100 °C: $keeps', ({ grip, keeps }) => {
    const range = { least: mm(grip), most: mm(grip) };
    expect(inUseAt(100, { range, legs: ring, stays: 'below' }).keeps).toBe(keeps);
  });
});
