import { isPlainObject } from '../../src/store/base/paths.ts';
import { sealed, sealedTexts, type Line, type Lines } from '../store/sealed-backup.ts';
import type { Hostile, Pick, Whole } from './hostile-files.ts';

export type Made = Promise<Omit<Hostile, 'what'>>;
export type Place = { readonly owner: Line | unknown[]; readonly name: string; readonly value: unknown };

/** The place of a line that holds a record of this store. */
export function lineIn(whole: Whole, store: string, pick: Pick): number {
  return pick.oneOf(whole.flatMap((line, at) => (line.startsWith(`{"store":"${store}"`) ? [at] : [])));
}

export function placesIn(value: unknown): Place[] {
  if (typeof value !== 'object' || value === null) return [];
  const owner: Line | unknown[] = Array.isArray(value) ? value : isPlainObject(value) ? value : [];
  return Object.entries(owner).flatMap(([name, inner]) => [
    { owner, name, value: inner },
    ...placesIn(inner),
  ]);
}

export async function fileOfLines(lines: Lines): Promise<Blob> {
  return new Blob([await sealed(lines)]);
}

/** These lines with their checksum made right, and some of them put in as text. */
export async function resealed(
  whole: Whole,
  texts: ReadonlyMap<number, string>,
  expects: Hostile['expects'],
): Made {
  const body = whole.slice(0, -1).map((line, at) => texts.get(at) ?? line);
  return { file: new Blob([await sealedTexts(body)]), expects };
}

export function parsed(whole: Whole): Lines {
  return whole.map((line) => JSON.parse(line));
}
