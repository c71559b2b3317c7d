import { shortened } from './backup-names.ts';

/**
 * What a field of a record is called by a fitter, for a file that was refused: `tool.mpe` is no word of the trade. A field
 * that has none is named as it stands in the file.
 */
export function fieldWords(field: string): string {
  const words = WORDS.get(field) ?? WORDS.get(field.split('.').at(-1) ?? '');
  return words ?? `“${shortened(field)}”`;
}

const WORDS: ReadonlyMap<string, string> = new Map([
  ['at', 'its date'],
  ['createdAt', 'its date'],
  ['touchedAt', 'its date'],
  ['signedAt', 'its date'],
  ['lastChecked', 'the date of the last check'],
  ['mpe', 'the tool’s error limit'],
  ['resolution', 'the tool’s smallest step'],
  ['repeatability', 'how well the tool repeats'],
  ['jawWidth', 'the width of the tool’s jaws'],
  ['tool.least', 'the least the tool can measure'],
  ['tool.most', 'the most the tool can measure'],
  ['exact', 'its size'],
  ['typed', 'what was typed'],
  ['content', 'what is drawn on it'],
  ['preview', 'its picture'],
  ['bytes', 'its picture'],
  ['name', 'its name'],
  ['title', 'its name'],
  ['value', 'what it is set to'],
]);
