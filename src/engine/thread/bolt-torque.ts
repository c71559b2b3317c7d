import { floatMm, type Length } from '../length/length.ts';

/** Nut factors K by how the thread is. Shigley 9th ed., table 8-15; each scatters by about a quarter. */
export const nutFactors = [
  { id: 'dry', words: 'Dry, plain black steel', factor: 0.3 },
  { id: 'plated', words: 'Zinc plated, dry', factor: 0.2 },
  { id: 'oiled', words: 'Oiled', factor: 0.18 },
  { id: 'antiseize', words: 'Anti-seize', factor: 0.12 },
] as const;

/** Ten lubricated bolts, each at 90 N m, kN of preload. Source: Shigley 9th ed., table 8-14. */
export const preloadsAtOneTorqueKn: readonly number[] = [
  30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5,
];

/**
 * The torque that gives a clamp load: an estimate, never shown but beside the manual's own figure.
 *
 * Units:  N and N m, floating point.
 * Source: T = K·d·F, Shigley 9th ed., eq. 8-27.
 */
export function torqueNewtonMetres(q: {
  readonly clampN: number;
  readonly major: Length;
  readonly nutFactor: number;
}): number {
  return (q.nutFactor * floatMm(q.major) * q.clampN) / 1000;
}

/** The clamp load that a torque gives, by the same formula. */
export function clampNewtons(q: {
  readonly torqueNewtonMetres: number;
  readonly major: Length;
  readonly nutFactor: number;
}): number {
  return (q.torqueNewtonMetres * 1000) / (q.nutFactor * floatMm(q.major));
}

/**
 * Stress in a tightened bolt that carries a pulling load beside its preload.
 *
 * Units:  N and mm² in, MPa out, floating point; stiffnesses in any one unit.
 * Source: C = kb / (kb + km), stress (C·P + F) / At; Shigley 9th ed., eq. 8-24.
 */
export function boltStress(q: {
  readonly preloadN: number;
  readonly pullN: number;
  readonly areaSquareMm: number;
  readonly boltStiffness: number;
  readonly jointStiffness: number;
}): { readonly preloadMpa: number; readonly serviceMpa: number; readonly jointConstant: number } {
  const jointConstant = q.boltStiffness / (q.boltStiffness + q.jointStiffness);
  return {
    jointConstant,
    preloadMpa: q.preloadN / q.areaSquareMm,
    serviceMpa: (jointConstant * q.pullN + q.preloadN) / q.areaSquareMm,
  };
}

/**
 * How preloads at one torque scatter: their mean and standard deviation (n − 1).
 *
 * Range:  two or more.
 */
export function preloadScatter(preloads: readonly number[]): {
  readonly mean: number;
  readonly deviation: number;
} {
  const mean = preloads.reduce((so, next) => so + next, 0) / preloads.length;
  const squares = preloads.reduce((so, next) => so + (next - mean) ** 2, 0);
  return { mean, deviation: Math.sqrt(squares / (preloads.length - 1)) };
}
