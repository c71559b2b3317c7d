import { PSI_PER_MPA } from '../material/material.ts';
import { floatMm, isMore, lengthOf, plus, times, type Length } from '../length/length.ts';
import { insertLimits } from './insert-limits.ts';
import { boltGrades, type BoltGradeId } from './tables/bolt-grades.ts';
import { externalLimits, internalLimits, type ThreadForm } from './thread-limits.ts';
import type { Thread } from './threads.ts';

export type BoltStrength = {
  readonly proofMpa: number;
  readonly tensileLeastMpa: number;
  readonly tensileMostMpa: number;
  readonly source: string;
};

const SQUARE_MM_PER_SQUARE_INCH = 645.16;
// 1/√3: how far a 60° flank reaches for each unit of height.
const FLANK = 0.57735;

/**
 * Strength of a bolt of this grade and thread size.
 *
 * Units:  MPa, floating point; 1 ksi is 6.894757 MPa.
 * Source: tables/bolt-grades.ts, each grade with its own.
 */
export function boltStrength(grade: BoltGradeId, major: Length): BoltStrength {
  const found = boltGrades.find(({ id }) => id === grade);
  const row = found?.rows.find(({ upTo }) => upTo === undefined || !isMore(major, lengthOf(upTo)));
  if (!found || !row) throw new Error(`no strength for ${grade}`);
  const mpaPer = row.unit === 'MPa' ? 1 : 1000 / PSI_PER_MPA;
  return {
    proofMpa: row.proof * mpaPer,
    tensileLeastMpa: row.tensileLeast * mpaPer,
    tensileMostMpa: row.tensileMost * mpaPer,
    source: found.source,
  };
}

/**
 * Tensile stress area of a bolt's thread.
 *
 * Units:  mm², floating point.
 * Source: inch: 0.785398 (D − 0.9743/n)² (ASME B1.1); metric: 0.785398 (D − 0.938194P)² (ISO 898-1).
 */
export function stressAreaSquareMm({ major, pitch, threadsPerInch }: ThreadForm): number {
  const depth = threadsPerInch === undefined ? 0.938194 : 0.9743;
  return 0.785398 * (floatMm(major) - depth * floatMm(pitch)) ** 2;
}

/** The same in square inches, for saying it; floating point. */
export function stressAreaSquareInches(thread: ThreadForm): number {
  return stressAreaSquareMm(thread) / SQUARE_MM_PER_SQUARE_INCH;
}

/** Shear areas for each millimetre of engagement, at the worst of the thread limits. */
export type ShearAreas = {
  /** The bolt's threads, sheared by the smallest of bolts in the widest of holes. */
  readonly boltSquareMmPerMm: number;
  /** The part's threads; with an insert those it is wound into. */
  readonly parentSquareMmPerMm: number;
};

/**
 * Shear areas of a bolt's threads and of the part's.
 *
 * Units:  mm² for each mm of engagement, floating point.
 * Range:  with an insert the part is taken at the insert's tapped hole: its major and its pitch diameter, with the
 *         pitch tolerance of the bolt's own thread, inferred.
 * Source: FED-STD-H28/2B: bolt π Kn (1/2 + 0.57735 n (Es − Kn)), part π Ds (1/2 + 0.57735 n (Ds − En)); Kn greatest minor
 *         and En greatest pitch diameter of the hole, Es least pitch diameter and Ds least major of the bolt.
 */
export function shearAreas(thread: Thread, withInsert: boolean): ShearAreas {
  const bolt = externalLimits(thread);
  const hole = internalLimits(thread);
  const tapped = withInsert ? insertShear(thread) : { inner: hole.pitchMost, outer: bolt.majorLeast };
  const area = (at: Length, larger: Length, smaller: Length): number =>
    Math.PI * floatMm(at) * (0.5 + (FLANK * (floatMm(larger) - floatMm(smaller))) / floatMm(thread.pitch));
  return {
    boltSquareMmPerMm: area(hole.minorMost, bolt.pitchLeast, hole.minorMost),
    parentSquareMmPerMm: area(tapped.outer, tapped.outer, tapped.inner),
  };
}

function insertShear(thread: Thread): { readonly inner: Length; readonly outer: Length } {
  const own = internalLimits(thread);
  const { pitchLeast, majorLeast } = insertLimits(thread);
  return { inner: plus(pitchLeast, plus(own.pitchMost, times(own.pitchLeast, -1))), outer: majorLeast };
}
