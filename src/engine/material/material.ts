import type { Material } from './tables/materials.ts';

/** The lowest and the highest figure the books give; the same where they agree. */
export type Spread = { readonly low: number; readonly high: number };

/** 1 Msi is 6.894757 GPa (NIST SP 811, B.8). */
export const GPA_PER_MSI = 6.894757;
/** 1 MPa is 145.0377 psi (NIST SP 811, B.8). */
export const PSI_PER_MPA = 145.0377;
/** 1 lbf is 4.448222 N (NIST SP 811, B.8). */
export const NEWTON_PER_LBF = 4.448222;

/**
 * Young's modulus of a material, floating point.
 *
 * Units:   GPa; from the Msi figure where no book gives GPa.
 * Source:  tables/materials.ts.
 */
export function modulusGpa({ modulusGpa: given, modulusMsi }: Material): Spread {
  return given
    ? { low: given.low, high: given.high }
    : { low: modulusMsi.low * GPA_PER_MSI, high: modulusMsi.high * GPA_PER_MSI };
}

/**
 * Linear expansion of a material, floating point.
 *
 * Units:   per degree Celsius: 0.0000236 for aluminium 6061, say.
 * Source:  tables/materials.ts.
 */
export function expansionPerCelsius({ expansionPerMillionCelsius: given }: Material): Spread {
  return { low: given.low / 1e6, high: given.high / 1e6 };
}
