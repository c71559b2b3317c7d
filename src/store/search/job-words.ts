import { typedWithUnit } from '../../engine/length/entry.ts';
import { isGone, type Kept } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import { shownWords } from '../base/plain-words.ts';
import type { StoreName } from '../base/stores.ts';
import { sizeWord, wordsIn } from './words-in.ts';

/** A figure as it was typed, and exactly, in millimetres. */
export type FoundFigure = readonly [typed: string, exactMm: string];

/** Something of a job that it can be found by, and where it stands: pieces of an address behind the job's own. */
export type FoundLine = {
  readonly at: readonly string[];
  readonly text: string;
  readonly figures?: readonly FoundFigure[];
};

/** What a job is found by. Worked out from its records; no backup has it. */
export type JobWords = {
  readonly id: string;
  /** Made as today's Slipfit makes them; others are made anew. */
  readonly form: typeof WORDS_FORM;
  readonly name: string;
  readonly touchedAt: number;
  /** Each word once, a blank between. */
  readonly words: string;
  readonly lines: readonly FoundLine[];
};

export const WORDS_FORM = 1;

/** The stores that a job's words come from, beside the job itself. */
export const wordStores = [
  'parts',
  'features',
  'readings',
  'worksheets',
  'cuts',
  'checks',
  'steps',
  'rechecks',
  'photos',
  'money',
] as const satisfies readonly StoreName[];

export type WordStore = (typeof wordStores)[number];
export type OfAJob = ReadonlyMap<WordStore, readonly Kept[]>;

/** Records as they are kept: one that can't be read is found by what can be read of it. */
export function jobWords(job: Kept, all: OfAJob): JobWords {
  const of = (store: WordStore) => (all.get(store) ?? []).filter((record) => !isGone(record));
  const lines = [
    ...jobLines(job),
    ...of('parts').map((part) => lineOf(['assembly'], [part['name']])),
    ...measuredLines(of('features'), of('readings'), of('parts')),
    ...of('worksheets').map(worksheetLine),
    ...of('cuts').map(cutLine),
    ...of('checks').map((check) => lineOf(['fit-up', check.id], [check['name']], entriesIn(check))),
    ...of('steps').map(stepLine),
    ...of('rechecks').map(({ id, what }) => lineOf(['assembly', 'rechecks', id], [what])),
    ...of('photos').map(photoLine),
    ...of('money').map(({ id, what }) => lineOf(['money', id], [what])),
  ].filter(({ text, figures = [] }) => text !== '' || figures.length > 0);
  return {
    id: job.id,
    form: WORDS_FORM,
    name: textOf(job['name']),
    touchedAt: Number(job['touchedAt']) || 0,
    words: [...new Set(lines.flatMap(wordsOfLine))].join(' '),
    lines,
  };
}

function wordsOfLine({ text, figures = [] }: FoundLine): string[] {
  return [...wordsIn(text), ...figures.flatMap(([typed, exact]) => [...wordsIn(typed), sizeWord(exact)])];
}

function jobLines(job: Kept): FoundLine[] {
  const { name, what, customer, machine, customerNote, toGet } = job;
  const about = [customer, machine, what, customerNote].map((words) => lineOf(['about'], [words]));
  const own = isPlainObject(toGet) ? Object.values(toGet) : [];
  return [lineOf([], [name]), ...about, ...own.map((words) => lineOf(['get'], [words]))];
}

/** Each size with its readings; those that were struck out on a line of their own, which says so. */
function measuredLines(
  features: readonly Kept[],
  readings: readonly Kept[],
  parts: readonly Kept[],
): FoundLine[] {
  const byFeature = new Map<unknown, Kept[]>();
  for (const reading of readings) {
    const those = byFeature.get(reading['featureId']);
    if (those) those.push(reading);
    else byFeature.set(reading['featureId'], [reading]);
  }
  const partNames = new Map<unknown, unknown>(parts.map(({ id, name }) => [id, name]));
  return features.flatMap((feature) => {
    const { id, checkId, partId, name } = feature;
    const at = typeof checkId === 'string' ? ['fit-up', checkId] : ['readings', id];
    const read = byFeature.get(id) ?? [];
    const struck = read.filter(({ struckOut }) => struckOut !== undefined);
    const counted = read.filter(({ struckOut }) => struckOut === undefined);
    const words = [partNames.get(partId), name];
    const elsewhere = elsewhereIn(feature);
    return [
      lineOf(at, words, counted.flatMap(figureOf)),
      ...(elsewhere.length === 0 ? [] : [lineOf(at, [...words, 'of another one'], elsewhere)]),
      ...(struck.length === 0 ? [] : [lineOf(at, [...words, 'struck out'], struck.flatMap(figureOf))]),
    ];
  });
}

/** What was read of another one, for a size that has none of its own. */
function elsewhereIn({ elsewhere }: Kept): FoundFigure[] {
  const { readings } = isPlainObject(elsewhere) ? elsewhere : {};
  return Array.isArray(readings) ? readings.flatMap((one: unknown) => entriesIn(one)) : [];
}

function worksheetLine(worksheet: Kept): FoundLine {
  const { id, title, choices, parts } = worksheet;
  // A thread, a class or a metal has its figures in its name; the other choices are words of ours.
  const chosen = valuesOf(choices).filter((choice) => /\d/.test(textOf(choice)));
  const names = valuesOf(parts).map((part) => (isPlainObject(part) ? part['name'] : ''));
  return lineOf(['worksheets', id], [title, ...names, ...chosen], entriesIn(worksheet));
}

function cutLine(cut: Kept): FoundLine {
  const { id, name, part, thread, drill } = cut;
  const isNamed = textOf(name).toLowerCase().includes(textOf(part).toLowerCase());
  return lineOf(['cuts', id], [isNamed ? '' : part, name, thread, drill], entriesIn(cut));
}

function stepLine(step: Kept): FoundLine {
  const { id, text, orientation, grease, locker, torque } = step;
  const { typed, unit, source } = isPlainObject(torque) ? torque : {};
  return lineOf(['assembly', id], [text, orientation, grease, locker, typed, unit, source]);
}

function photoLine(photo: Kept): FoundLine {
  const { id, owner, note } = photo;
  const { store, id: ownerId } = isPlainObject(owner) ? owner : {};
  return lineOf(['photos', textOf(store), textOf(ownerId), id], [note]);
}

function lineOf(
  at: readonly string[],
  words: readonly unknown[],
  figures: readonly FoundFigure[] = [],
): FoundLine {
  const text = words
    .map(textOf)
    .filter((one) => one !== '')
    .join(' · ');
  const once = [...new Map(figures.map((figure) => [figure[0], figure])).values()];
  return { at, text, ...(once.length > 0 && { figures: once }) };
}

/** Every size as typed that stands anywhere in a record; not in what it was worked out from, which is text. */
function entriesIn(value: unknown): FoundFigure[] {
  if (!isPlainObject(value)) return [];
  return [...figureOf(value), ...Object.values(value).flatMap(entriesIn)];
}

function figureOf(value: Readonly<Record<string, unknown>>): FoundFigure[] {
  const { typed, unit, exact } = value;
  if (typeof typed !== 'string' || typeof exact !== 'string') return [];
  if (unit !== 'in' && unit !== 'mm' && unit !== 'thou') return [];
  return [[shownWords(typedWithUnit({ typed, unit })), exact]];
}

function valuesOf(map: unknown): readonly unknown[] {
  return isPlainObject(map) ? Object.values(map) : [];
}

function textOf(value: unknown): string {
  return typeof value === 'string' ? shownWords(value.trim()) : '';
}
