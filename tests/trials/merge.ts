import { playHistory, type Outcome } from './merge-history.ts';

export type MergeTrial = {
  readonly count: number;
  readonly seed: number;
  readonly say: (line: string) => void;
  /** Where one history is played: here, or in a browser's page. */
  readonly play?: (seed: number) => Promise<Outcome>;
};

export type MergeFigures = Record<
  'histories' | 'acts' | 'merges' | 'asked' | 'settled' | 'readings',
  number
> &
  Record<(typeof faults)[number], number>;

const faults = ['lost', 'differing', 'hidden', 'needless', 'again', 'unsaid'] as const;

/** Plays histories of two and three phones, seed after seed, and says what they came to. */
export async function mergeTrial({
  count,
  seed,
  say,
  play = playHistory,
}: MergeTrial): Promise<MergeFigures> {
  const sum: MergeFigures = {
    histories: 0,
    acts: 0,
    merges: 0,
    asked: 0,
    settled: 0,
    readings: 0,
    lost: 0,
    differing: 0,
    hidden: 0,
    needless: 0,
    again: 0,
    unsaid: 0,
  };
  for (let number = 0; number < count; number += 1) {
    // One after the other: the seed rules the chance of one at a time.
    // oxlint-disable-next-line no-await-in-loop
    const outcome = await play(seed + number);
    sum.histories += 1;
    for (const name of ['acts', 'merges', 'asked', 'settled', 'readings'] as const)
      sum[name] += outcome.count[name];
    for (const fault of faults) {
      sum[fault] += outcome[fault].length;
      for (const line of outcome[fault].slice(0, 3)) say(`seed ${seed + number}, ${fault}: ${line}`);
    }
  }
  const { histories, lost, differing, ...rest } = sum;
  const others = Object.entries(rest).map(([name, figure]) => `${name}: ${figure}`);
  say(
    `merge: seed ${seed}, histories: ${histories}, ${others.join(', ')}, lost: ${lost}, differing: ${differing}`,
  );
  return sum;
}
