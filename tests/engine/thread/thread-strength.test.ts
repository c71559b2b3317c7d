import { describe, expect, test } from 'vitest';
import {
  boltStress,
  clampNewtons,
  preloadScatter,
  preloadsAtOneTorqueKn,
  torqueNewtonMetres,
  nutFactors,
} from '../../../src/engine/thread/bolt-torque.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { NEWTON_PER_LBF, PSI_PER_MPA } from '../../../src/engine/material/material.ts';
import { boltGrades } from '../../../src/engine/thread/tables/bolt-grades.ts';
import {
  boltStrength,
  shearAreas,
  stressAreaSquareInches,
  stressAreaSquareMm,
} from '../../../src/engine/thread/thread-strength.ts';
import { allThreads, hasInserts, threadNamed, type Thread } from '../../../src/engine/thread/threads.ts';
import { torqueIn } from '../../../src/engine/thread/torque.ts';
import { readReference } from '../../reference/read-csv.ts';

function named(designation: string): Thread {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

const placesOf = (printed: string) => printed.split('.')[1]?.length ?? 0;

const inchAreas = readReference('threads_un.csv').map((row) => ({
  thread: row.cell('designation'),
  area: row.cell('tensile_stress_area_in2'),
}));
const metricAreas = readReference('threads_metric.csv').map((row) => ({
  thread: row.cell('designation'),
  area: row.cell('tensile_stress_area_mm2'),
}));

describe('the tensile stress area', () => {
  // Printed areas may be one off in their last digit: #8-36 gives .785398 (.164 − .9743/36)² = .01473, printed .01474.
  test.each(inchAreas)('of $thread is $area in² (ASME B1.1 and handbook tables)', ({ thread, area }) => {
    const off = Math.abs(stressAreaSquareInches(named(thread)) - Number(area));
    expect(off).toBeLessThan(1.5 * 10 ** -placesOf(area));
  });

  test.each(metricAreas)('of $thread is $area mm² (ISO 898-1)', ({ thread, area }) => {
    const off = Math.abs(stressAreaSquareMm(named(thread)) - Number(area));
    expect(off).toBeLessThanOrEqual(0.5001 * 10 ** -placesOf(area));
  });

  test('WE23: 3/4-16 has 0.37296 in²; WE24: 1/2-13 has 0.14190 in²; WE25: M10 has 57.990 mm²', () => {
    expect(stressAreaSquareInches(named('3/4-16'))).toBeCloseTo(0.37296, 5);
    expect(stressAreaSquareInches(named('1/2-13'))).toBeCloseTo(0.1419, 5);
    expect(stressAreaSquareMm(named('M10'))).toBeCloseTo(57.99, 3);
  });
});

describe('what a thread shears over', () => {
  test('WE29: 1/4-20 of one strength throughout needs .1728 in, 2 At / (π Kn (1/2 + 0.57735 n (Es − Kn)))', () => {
    const thread = named('1/4-20');
    const leastMm = (2 * stressAreaSquareMm(thread)) / shearAreas(thread, false).boltSquareMmPerMm;
    // The example puts At in rounded to .0318.
    expect((leastMm / 25.4) * (0.0318 / stressAreaSquareInches(thread))).toBeCloseTo(0.1728, 4);
  });

  test('the part’s thread of 1/2-13: π · .4876 · (1/2 + .57735 · 13 · (.4876 − .4565)) in² an inch, from printed limits', () => {
    // ASME B1.1: 2A major .4876 at least; 2B pitch diameter .4565 at most (from memory). 1.1236 in²/in by hand.
    const byHand = Math.PI * 0.4876 * (0.5 + 0.57735 * 13 * (0.4876 - 0.4565));
    expect(shearAreas(named('1/2-13'), false).parentSquareMmPerMm / 25.4).toBeCloseTo(byHand, 3);
  });

  test('with an insert the part shears over the insert’s larger hole: M8 over Ø 9.624', () => {
    // Major 8 + 1.299038 · 1.25 = 9.6238; pitch diameter 8 + 0.649519 · 1.25 + 0.160 (TD2, ISO 965-1, from memory) = 8.9719.
    const byHand = Math.PI * 9.6238 * (0.5 + (0.57735 * (9.6238 - 8.9719)) / 1.25);
    expect(shearAreas(named('M8'), true).parentSquareMmPerMm).toBeCloseTo(byHand, 2);
  });

  test('an insert never leaves the part less to hold on to', () => {
    for (const thread of allThreads.filter(hasInserts))
      expect(shearAreas(thread, true).parentSquareMmPerMm).toBeGreaterThan(
        shearAreas(thread, false).parentSquareMmPerMm,
      );
  });
});

describe('the strength of a bolt', () => {
  test.each([
    {
      grade: 'sae-5',
      size: '3/4 in',
      proof: 85,
      least: 120,
      source: 'Shigley 9th ed., example 8-3: SAE 5, 85 kpsi',
    },
    { grade: 'sae-5', size: '1-1/8 in', proof: 74, least: 105, source: 'SAE J429 over 1 in, from memory' },
    { grade: 'sae-8', size: '1/2 in', proof: 120, least: 150, source: 'SAE J429, from memory' },
    { grade: 'sae-2', size: '3/4 in', proof: 55, least: 74, source: 'SAE J429 to 3/4 in, from memory' },
    { grade: 'sae-2', size: '7/8 in', proof: 33, least: 60, source: 'SAE J429 over 3/4 in, from memory' },
  ] as const)('$grade at $size: proof $proof ksi, tensile $least ksi at least ($source)', (row) => {
    const strength = boltStrength(row.grade, lengthOf(row.size));
    expect((strength.proofMpa * PSI_PER_MPA) / 1000).toBeCloseTo(row.proof, 6);
    expect((strength.tensileLeastMpa * PSI_PER_MPA) / 1000).toBeCloseTo(row.least, 6);
  });

  test.each([
    { size: '16 mm', proof: 580, least: 800 },
    { size: '18 mm', proof: 600, least: 830 },
  ])('class 8.8 at $size: proof $proof MPa, tensile $least MPa (ISO 898-1, from memory)', (row) => {
    const { proofMpa, tensileLeastMpa } = boltStrength('8.8', lengthOf(row.size));
    expect([proofMpa, tensileLeastMpa]).toEqual([row.proof, row.least]);
  });

  test('at its greatest is above its least, and its least above its proof load', () => {
    for (const { rows } of boltGrades)
      for (const { proof, tensileLeast, tensileMost } of rows)
        expect(proof < tensileLeast && tensileLeast < tensileMost).toBe(true);
  });
});

describe('torque and preload', () => {
  const threeQuarters = lengthOf('3/4 in');
  const newtons = (poundForce: number) => poundForce * NEWTON_PER_LBF;

  test('WE39: K .20, 25 000 lbf on 3/4 in takes 3750 lbf in, 312.5 lbf ft', () => {
    const torque = torqueNewtonMetres({ clampN: newtons(25000), major: threeQuarters, nutFactor: 0.2 });
    expect(torqueIn(torque, 'Nm', 'lbf-ft')).toBeCloseTo(312.5, 3);
  });

  test('WE40: M10, 58.0 mm², 75 % of 580 MPa, K .20: 25 230 N takes 50.46 N m', () => {
    const clampN = 0.75 * 580 * 58;
    expect(clampN).toBeCloseTo(25230, 6);
    expect(torqueNewtonMetres({ clampN, major: lengthOf('10 mm'), nutFactor: 0.2 })).toBeCloseTo(50.46, 6);
  });

  test('a torque gives back the clamp load it was worked out for', () => {
    // Shigley table 8-15, nonplated, black finish: 50 / (.30 · 10 mm) = 16.67 kN
    const [dry] = nutFactors;
    expect(dry).toMatchObject({ id: 'dry', factor: 0.3 });
    expect(
      clampNewtons({ torqueNewtonMetres: 50, major: lengthOf('10 mm'), nutFactor: dry.factor }),
    ).toBeCloseTo(16_666.7, 1);
    expect(clampNewtons({ torqueNewtonMetres: 50.46, major: lengthOf('10 mm'), nutFactor: 0.2 })).toBeCloseTo(
      25230,
      3,
    );
  });

  test('WE38: 25 kip of preload on 0.373 in² and 6 kip more: 67.02 kpsi, C .320, 72.17 kpsi', () => {
    const stress = boltStress({
      preloadN: newtons(25000),
      pullN: newtons(6000),
      areaSquareMm: 0.373 * 645.16,
      boltStiffness: 6.5,
      jointStiffness: 13.8,
    });
    expect((stress.preloadMpa * PSI_PER_MPA) / 1000).toBeCloseTo(67.02, 2);
    expect(stress.jointConstant).toBeCloseTo(0.32, 3);
    expect((stress.serviceMpa * PSI_PER_MPA) / 1000).toBeCloseTo(72.17, 2);
  });

  test('WE42: ten bolts at one torque: mean 34.18 kN, standard deviation 2.88 kN (Shigley table 8-14)', () => {
    const { mean, deviation } = preloadScatter(preloadsAtOneTorqueKn);
    expect(mean).toBeCloseTo(34.18, 2);
    expect(deviation).toBeCloseTo(2.88, 2);
  });
});
