import { allReamers } from '../../src/engine/fit/tables/reamer-sizes.ts';
import { materials } from '../../src/engine/material/tables/materials.ts';
import { drillsOf } from '../../src/engine/thread/drill-series.ts';
import { boltGrades } from '../../src/engine/thread/tables/bolt-grades.ts';

/** Every text in a record, at any depth, save the names that choices are kept by. */
export function textsIn(told: unknown): readonly string[] {
  if (typeof told === 'string') return [told];
  if (typeof told !== 'object' || told === null) return [];
  return Object.entries(told).flatMap(([name, one]) => (name === 'value' ? [] : textsIn(one)));
}

/** Drills, reamers, materials and bolt grades keep the name they have in their list. */
const NAMES = [
  ...drillsOf('metric').map(({ name }) => name),
  ...allReamers.map(({ name }) => name),
  ...materials.map(({ name }) => name),
  ...boltGrades.flatMap(({ name, marks }) => [name, marks]),
]
  .filter((name) => name.includes('.'))
  .toSorted((a, b) => b.length - a.length)
  .map((name) => new RegExp(`(?<![\\d.])${name.replace(/[.()]/g, '\\$&')}(?![\\d.])`, 'g'));

/** Threads, inserts by their diameters, standards with their clauses, a book's equations and tables. */
const PUBLISHED = [
  /\bM\d+(?:\.\d+)?(?: ?[x×] ?\d*\.?\d+)?/g,
  /\b\d\.\dD\b/g,
  /\b(?:ANSI|ASME|ISO|DIN|EN|JCGM|GUM)\b[^;,]*/g,
  /\bB18\.29\.2M\b/g,
  /\b(?:Eq\.|Table) [A-Z]?\.?\d[\d.-]*/gi,
];

/** A text in which a figure still has a point: `.4487`, `11.4`. */
export function pointsLeft(text: string): readonly string[] {
  const bare = [...NAMES, ...PUBLISHED].reduce((left, name) => left.replace(name, '#'), text);
  return /\d*\.\d/.test(bare) ? [text] : [];
}

/** A text with thousands set apart by a comma, which would be read as a decimal one. */
export function thousandsLeft(text: string): readonly string[] {
  return /\d,\d{3},\d|\b[1-9]\d{0,2},\d{3} (?:psi|lbf)\b/.test(text) ? [text] : [];
}
