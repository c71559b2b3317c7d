import type { Stamp } from './clock.ts';
import { isGone, type Kept, type KeptStamped } from './kept.ts';
import { canonicalText, fieldsFromPaths, isPlainObject, mapsOf, valuesByPath } from './paths.ts';

/**
 * Two copies of one record as one: path by path the later stamp wins, and a removal is a path like the others. Of two
 * values with the same stamp the one whose text sorts later stays, so that any order of merging ends in the same record.
 */
export function mergeRecords(a: KeptStamped, b: KeptStamped): KeptStamped {
  const inA = valuesByPath(a);
  const inB = valuesByPath(b);
  const every = laterStamp(a.stamps['*'], b.stamps['*']);
  const stamps = new Map<string, Stamp>();
  const values = new Map<string, unknown>();
  for (const path of pathsOf(a, inA, b, inB)) {
    const ofA = { value: inA.get(path), stamp: stampAt(a, path) };
    const ofB = { value: inB.get(path), stamp: stampAt(b, path) };
    const winner = later(ofA, ofB);
    if (winner.stamp !== every) stamps.set(path, winner.stamp);
    if (winner.value !== undefined) values.set(path, winner.value);
  }
  const maps = [...new Set([...mapsOf(a), ...mapsOf(b)])];
  return {
    ...fieldsFromPaths(values, maps),
    id: a.id,
    stamps: { ...Object.fromEntries(stamps), '*': every },
  };
}

/** Whether two copies hold the same, whatever way their stamps are written down. */
export function sameRecord(a: KeptStamped, b: KeptStamped): boolean {
  return canonicalText(mergeRecords(a, a)) === canonicalText(mergeRecords(b, b));
}

/** Two sets of records as one. A record that only one has stays. */
export function mergeSets(a: readonly KeptStamped[], b: readonly KeptStamped[]): KeptStamped[] {
  const merged = new Map(a.map((record) => [record.id, record]));
  for (const record of b) {
    const known = merged.get(record.id);
    merged.set(record.id, known ? mergeRecords(known, record) : record);
  }
  return [...merged.values()];
}

/**
 * Whether a removed feature comes back: one of its readings isn't marked as removed with it, so the one who removed the
 * feature never saw that reading.
 */
export function bringsFeatureBack(feature: Kept, readings: readonly Kept[]): boolean {
  return feature['deleted'] !== undefined && readings.some((reading) => reading['deleted'] === undefined);
}

/**
 * Whether a removed job comes back: a reading was logged in it, or a pass measured, on another device after the removal.
 */
export function bringsJobBack(
  job: Kept,
  readings: readonly KeptStamped[],
  cuts: readonly KeptStamped[],
): boolean {
  const { deleted } = job;
  if (typeof deleted !== 'string') return false;
  const logged = readings.some(
    (reading) => reading['deleted'] === undefined && stampAt(reading, '*') > deleted,
  );
  return logged || cuts.some((cut) => !isGone(cut) && hasPassAfter(cut, deleted));
}

/** Whether a removed cut comes back: a pass was measured on another device after the removal. */
export function bringsCutBack(cut: KeptStamped): boolean {
  const { deleted } = cut;
  return typeof deleted === 'string' && hasPassAfter(cut, deleted);
}

/** Whether a removed check comes back: one of its features wasn't removed with it, or came back itself. */
export function bringsCheckBack(check: Kept, features: readonly Kept[]): boolean {
  return check['deleted'] !== undefined && features.some((feature) => !isGone(feature));
}

function hasPassAfter(cut: KeptStamped, stamp: Stamp): boolean {
  const passes = isPlainObject(cut['passes']) ? Object.keys(cut['passes']) : [];
  return passes.some((id) => stampAt(cut, `passes.${id}`) > stamp);
}

/** The latest stamp a record carries. */
export function latestStamp(record: KeptStamped): Stamp {
  return Object.values(record.stamps).reduce(laterStamp, '');
}

type Versioned = { readonly value: unknown; readonly stamp: Stamp };

function later(a: Versioned, b: Versioned): Versioned {
  if (a.stamp !== b.stamp) return a.stamp > b.stamp ? a : b;
  // Mostly they are the same, and a picture or a sheet as text would take megabytes.
  if (a.value === b.value) return a;
  return canonicalText(a.value) >= canonicalText(b.value) ? a : b;
}

/** When this path was last written. */
export function stampAt(record: KeptStamped, path: string): Stamp {
  return record.stamps[path] ?? record.stamps['*'];
}

function laterStamp(a: Stamp, b: Stamp): Stamp {
  return a > b ? a : b;
}

function pathsOf(
  a: KeptStamped,
  inA: ReadonlyMap<string, unknown>,
  b: KeptStamped,
  inB: ReadonlyMap<string, unknown>,
): Set<string> {
  const paths = new Set([...inA.keys(), ...inB.keys(), ...Object.keys(a.stamps), ...Object.keys(b.stamps)]);
  paths.delete('*');
  return paths;
}
