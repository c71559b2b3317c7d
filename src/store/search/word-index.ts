import { typedWithUnit, type Entry } from '../../engine/length/entry.ts';
import { toText } from '../../engine/length/length.ts';
import type { FoundLine, JobWords } from './job-words.ts';
import { sizeWord, wantedIn, wordsIn, type Wanted, type WantedWord } from './words-in.ts';

/** A job that was found, and where in it: its own name needs no line. */
export type Found = { readonly job: JobWords; readonly line: FoundLine | undefined };

export type Answer = { readonly found: readonly Found[]; readonly count: number };

export type WordIndex = {
  readonly put: (job: JobWords) => void;
  /** The jobs that have all of these words, the one last worked on first. */
  readonly find: (text: string, most: number) => Answer;
};

/**
 * Jobs by their words, in memory: under the first two characters of a word all words that begin so, each with the jobs it
 * stands in. A key looks through those words alone, however many jobs and readings there are.
 */
export function createWordIndex(): WordIndex {
  const jobs: JobWords[] = [];
  const byStart = new Map<string, Map<string, number[]>>();
  const put = (job: JobWords) => {
    const number = jobs.push(job) - 1;
    for (const word of job.words.split(' ')) {
      const start = word.slice(0, 2);
      const words = byStart.get(start) ?? new Map<string, number[]>();
      byStart.set(start, words);
      const those = words.get(word);
      if (those) those.push(number);
      else words.set(word, [number]);
    }
  };
  const exactly = (word: string) => byStart.get(word.slice(0, 2))?.get(word) ?? [];
  const beginningWith = (word: string): readonly number[][] => {
    const starts =
      word.length > 1
        ? [byStart.get(word.slice(0, 2))]
        : [...byStart].flatMap(([start, words]) => (start.startsWith(word) ? [words] : []));
    return starts.flatMap((words) =>
      [...(words ?? [])].flatMap(([one, those]) => (one.startsWith(word) ? [those] : [])),
    );
  };
  const find: WordIndex['find'] = (text, most) => {
    const wanted = wantedIn(text);
    const met = new Uint8Array(jobs.length);
    wanted.words.forEach(({ begins, sizes }, nth) => {
      for (const those of [...beginningWith(begins), ...sizes.map(exactly)])
        for (const number of those) if (met[number] === nth) met[number] = nth + 1;
    });
    for (const size of wanted.whole) for (const number of exactly(size)) met[number] = wanted.words.length;
    const all =
      wanted.words.length === 0 ? [] : jobs.filter((_job, number) => met[number] === wanted.words.length);
    const found = all.toSorted((a, b) => b.touchedAt - a.touchedAt).slice(0, most);
    return { found: found.map((job) => ({ job, line: lineOf(job, wanted) })), count: all.length };
  };
  return { put, find };
}

/** The line of a job that most of what is wanted stands in, with those of its figures that are meant. */
function lineOf(job: JobWords, wanted: Wanted): FoundLine | undefined {
  let best: { readonly line: FoundLine; readonly count: number } | undefined;
  for (const line of job.lines) {
    if (best?.count === wanted.words.length) break;
    const met = metIn(line, wanted);
    if (met.count > (best?.count ?? 0)) best = { line: met.line, count: met.count };
  }
  return best?.line.at.length === 0 && best.line.text === job.name ? undefined : best?.line;
}

function metIn(
  line: FoundLine,
  { words, whole }: Wanted,
): { readonly line: FoundLine; readonly count: number } {
  const own = wordsIn(line.text);
  const ofFigures = (line.figures ?? []).map((figure) => ({
    figure,
    words: [...wordsIn(figure[0]), sizeWord(figure[1])],
  }));
  const meant = ofFigures.filter(
    (one) => words.some((word) => isIn(one.words, word)) || whole.some((size) => one.words.includes(size)),
  );
  const wholes = meant.some((one) => whole.some((size) => one.words.includes(size))) ? words.length : 0;
  const single = words.filter((word) => isIn(own, word) || meant.some((one) => isIn(one.words, word))).length;
  return {
    line: { ...line, figures: meant.map(({ figure }) => figure) },
    count: Math.max(wholes, single),
  };
}

function isIn(words: readonly string[], { begins, sizes }: WantedWord): boolean {
  return words.some((word) => word.startsWith(begins) || sizes.includes(word));
}

/** Whether these words and sizes have all of what is looked for. */
export function hasEveryWord(
  text: string,
  { text: own, read }: { readonly text: string; readonly read: readonly Entry[] },
): boolean {
  const figures = read.map((entry) => [typedWithUnit(entry), toText(entry.exact)] as const);
  const { words } = wantedIn(text);
  return metIn({ at: [], text: own, figures }, wantedIn(text)).count >= words.length;
}
