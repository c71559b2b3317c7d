import { refuse, worked } from '../../engine/length/refusal.ts';
import type { BackupResult } from './backup-refusal.ts';
import { isPlainObject } from '../base/paths.ts';

/** Names that reach into an object's making when they are copied carelessly. No record of ours has them. */
const forbiddenNames: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

// Our own records are 6 deep, a signed sheet's drawings 50; room for what a newer Slipfit adds.
const MOST_DEEP = 60;
// Chosen, not published: ten times what the longest signed sheet has. A megabyte of them takes fifty in memory.
const MOST_VALUES = 1_000_000;

/**
 * One line of JSON as an object that holds nothing dangerous: not too deep, not too many values, no name that reaches into
 * prototypes, no number that is out of bounds.
 */
export function plainJson(line: string, number: number): BackupResult<Readonly<Record<string, unknown>>> {
  let value: unknown;
  if (hasTooMany(line)) return refuse({ code: 'too-deep', line: number });
  try {
    value = JSON.parse(line);
  } catch {
    return refuse({ code: 'not-json', line: number });
  }
  if (!isPlainObject(value)) return refuse({ code: 'unknown-line', line: number });
  const fault = faultIn(value);
  if (fault === 'too-deep') return refuse({ code: 'too-deep', line: number });
  if (fault === 'out-of-bounds') return refuse({ code: 'not-json', line: number });
  return fault ? refuse({ code: 'forbidden-name', line: number, name: fault.name }) : worked(value);
}

// Level by level instead of recursively, so that no depth can exhaust the stack.
function faultIn(value: unknown): 'too-deep' | 'out-of-bounds' | { readonly name: string } | undefined {
  let level: unknown[] = [value];
  for (let deep = 0; level.length > 0; deep += 1) {
    if (deep > MOST_DEEP) return 'too-deep';
    const next: unknown[] = [];
    for (const one of level) {
      if (typeof one !== 'object' || one === null) continue;
      const name = Array.isArray(one) ? undefined : Object.keys(one).find((key) => forbiddenNames.has(key));
      if (name !== undefined) return { name };
      // A list has no names of its own: made into entries, a long one would fill the memory.
      for (const inner of Array.isArray(one) ? one : Object.values(one)) {
        // 1e999, which no backup could hold again.
        if (typeof inner === 'number' && !Number.isFinite(inner)) return 'out-of-bounds';
        if (typeof inner === 'object' && inner !== null) next.push(inner);
      }
    }
    level = next;
  }
  return undefined;
}

// Every value but the first stands behind one of these. Those in words count too, which only makes it stricter.
function hasTooMany(line: string): boolean {
  if (line.length <= MOST_VALUES) return false;
  let values = 0;
  for (let at = 0; at < line.length; at += 1) {
    const character = line[at];
    if (character === ',' || character === '[' || character === '{') values += 1;
  }
  return values > MOST_VALUES;
}
