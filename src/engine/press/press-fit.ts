import { floatMm, lengthFromFloat, lengthOf, ratioOf, zero, type Length } from '../length/length.ts';

/** Stiffness of one of the two parts. Floating point. */
export type Elastic = { readonly modulusGpa: number; readonly poisson: number };

/** Two rings pressed together, or a ring on a solid pin. Diameters. */
export type PressedPair = {
  /** Where they touch. */
  readonly at: Length;
  /** Outside of the outer part, left out where there is metal all round it; inside of the inner one, zero where it is solid. */
  readonly outside?: Length;
  readonly inside: Length;
  readonly outer: Elastic;
  readonly inner: Elastic;
};

/** Stress of a part at its worst place: along the circumference (pull above zero) and equivalent by von Mises. */
export type RingStress = { readonly hoopMpa: number; readonly equivalentMpa: number };

const MPA_PER_GPA = 1000;
// Diameters from elasticity: a hundredth of a micrometre is far finer than the formula is true.
const ELASTIC_STEP = lengthOf('0.00001 mm');

/**
 * Contact pressure of an interference fit, floating point.
 *
 * Units:   MPa; interference on the diameter, at or below zero there is no pressure.
 *          p = δ / (d · [ (1/Eo)((Do²+d²)/(Do²−d²) + νo) + (1/Ei)((d²+Di²)/(d²−Di²) − νi) ]).
 * Range:   inside < at < outside; both parts as long as each other and unstressed along the axis.
 * Source:  Lamé; Shigley 9th ed. Eq. 3-56.
 */
export function contactPressureMpa(pair: PressedPair, interference: Length): number {
  const ratio = Math.max(0, ratioOf(interference, pair.at));
  return ratio / (outerCompliance(pair) + innerCompliance(pair));
}

/**
 * Pressure that opens a sleeve's bore by a known amount on the diameter, whatever does it. Floating point.
 *
 * Units:   MPa; p = E·u / (d·[(Do²+d²)/(Do²−d²) + ν]).
 * Source:  Lamé.
 */
export function pressureOfGrowthMpa(
  ring: { readonly bore: Length; readonly outside: Length; readonly elastic: Elastic },
  growth: Length,
): number {
  const { modulusGpa, poisson } = ring.elastic;
  const stiffness = (modulusGpa * MPA_PER_GPA) / (thickWall(ring.outside, ring.bore) + poisson);
  return stiffness * ratioOf(growth, ring.bore);
}

/**
 * How much the inner part's bore closes on the diameter when it is pressed in; zero where it is solid.
 *
 * Units:   Length, worked in floating point and rounded to a hundredth of a micrometre: 2·p·d²·Di / (E·(d²−Di²)).
 * Source:  Lamé, ring under outer pressure.
 */
export function closingIn({ at, inside, inner }: PressedPair, pressureMpa: number): Length {
  const bore = floatMm(inside);
  const ratio = bore / floatMm(at);
  const closesMm = (2 * pressureMpa * bore) / (inner.modulusGpa * MPA_PER_GPA * (1 - ratio ** 2));
  return lengthFromFloat(closesMm, ELASTIC_STEP);
}

/**
 * How much the outer part's outside grows on the diameter.
 *
 * Units:   Length, to a hundredth of a micrometre: 2·p·d²·Do / (E·(Do²−d²)).
 * Source:  Lamé, ring under inner pressure.
 */
export function outsideGrowth({ at, outside, outer }: PressedPair, pressureMpa: number): Length {
  if (!outside) return zero;
  const ratio = ratioOf(at, outside) ** 2;
  const growsMm =
    (2 * pressureMpa * ratio * floatMm(outside)) / (outer.modulusGpa * MPA_PER_GPA * (1 - ratio));
  return lengthFromFloat(growsMm, ELASTIC_STEP);
}

/**
 * The outer part at its bore, where it is pulled hardest. Floating point.
 *
 * Units:   MPa; hoop = p(Do²+d²)/(Do²−d²), radial = −p.
 * Source:  Lamé; von Mises, plane stress.
 */
export function outerStress({ at, outside }: PressedPair, pressureMpa: number): RingStress {
  const hoopMpa = pressureMpa * thickWall(outside, at);
  return { hoopMpa, equivalentMpa: vonMises(hoopMpa, -pressureMpa) };
}

/**
 * The inner part where it is squeezed hardest: its bore, or all of it where it is solid. Floating point.
 *
 * Units:   MPa; hoop = −2p·d²/(d²−Di²) at a bore; −p in a solid pin.
 * Source:  Lamé; von Mises, plane stress.
 */
export function innerStress({ at, inside }: PressedPair, pressureMpa: number): RingStress {
  const ratio = ratioOf(inside, at);
  if (ratio === 0) return { hoopMpa: -pressureMpa, equivalentMpa: vonMises(-pressureMpa, -pressureMpa) };
  const hoopMpa = (-2 * pressureMpa) / (1 - ratio ** 2);
  return { hoopMpa, equivalentMpa: Math.abs(hoopMpa) };
}

/**
 * Force along the axis that a press must give, or that a fit holds. Floating point.
 *
 * Units:   newtons; μ·p·π·d·L.
 * Source:  Coulomb friction over the contact area.
 */
export function axialForceN({
  pressureMpa,
  friction,
  at,
  length,
}: {
  readonly pressureMpa: number;
  readonly friction: number;
  readonly at: Length;
  readonly length: Length;
}): number {
  return friction * pressureMpa * Math.PI * floatMm(at) * floatMm(length);
}

/**
 * The old shop rule for the press: area in square inches × allowance in inches × pressure factor / 2. Floating point.
 *
 * Units:   short tons. Factor 500 at 1.00 in, 395 at 1.25, 325 at 1.50; it assumes a hub twice the shaft's diameter.
 * Source:  force-fit pressure factor rule, handbook.
 */
export function forcingPressureTons({
  at,
  length,
  allowance,
  factor,
}: {
  readonly at: Length;
  readonly length: Length;
  readonly allowance: Length;
  readonly factor: number;
}): number {
  const inch = lengthOf('1 in');
  return (Math.PI * ratioOf(at, inch) * ratioOf(length, inch) * ratioOf(allowance, inch) * factor) / 2;
}

function outerCompliance({ at, outside, outer }: PressedPair): number {
  return (thickWall(outside, at) + outer.poisson) / (outer.modulusGpa * MPA_PER_GPA);
}

function innerCompliance({ at, inside, inner }: PressedPair): number {
  const ratio = ratioOf(inside, at) ** 2;
  return ((1 + ratio) / (1 - ratio) - inner.poisson) / (inner.modulusGpa * MPA_PER_GPA);
}

/** (D² + d²) / (D² − d²) of a ring; 1 where metal goes on all round. */
function thickWall(outside: Length | undefined, inside: Length): number {
  const ratio = outside ? ratioOf(inside, outside) ** 2 : 0;
  return (1 + ratio) / (1 - ratio);
}

function vonMises(a: number, b: number): number {
  return Math.sqrt(a ** 2 - a * b + b ** 2);
}
