import type { StackPartInput, Worksheet } from '../../../store/base/records.ts';

type Named = Pick<StackPartInput, 'name'>;

const NUMBERED = /^part \d+$/;
const MADE = /^(?:one part for|one more) /;

/** The names to choose from: those that the job's stacks used, the most used first, then those of the trade. */
export function namesToChoose(
  worksheets: readonly Pick<Worksheet, 'parts'>[],
  usual: readonly string[],
): readonly string[] {
  const used = worksheets
    .flatMap(({ parts }) => Object.values(parts))
    .map(({ name }) => name.replace(/ \d+$/, ''))
    .filter((name) => !NUMBERED.test(name) && !MADE.test(name) && !/^part$/.test(name));
  const times = new Map<string, number>();
  for (const name of used) times.set(name, (times.get(name) ?? 0) + 1);
  const byUse = [...times].toSorted(([, a], [, b]) => b - a).map(([name]) => name);
  return [...byUse, ...usual.filter((name) => !times.has(name))];
}

/** What the next part is called: a second washer is `washer 2`, one nobody named `part 3`, so that cuts can be told apart. */
export function nextName(name: string, parts: readonly Named[]): string {
  const taken = new Set(parts.map((part) => part.name));
  if (name !== '' && !taken.has(name)) return name;
  const base = name === '' ? 'part' : name;
  let number = name === '' ? parts.length + 1 : 2;
  while (taken.has(`${base} ${number}`)) number += 1;
  return `${base} ${number}`;
}

const MOST_BY_KEY = 6; // chosen: more of one size are set on the part's own page

/** How many, by the key that goes round: 1, 2 … 6 and 1 again. */
export function nextCount(count: number): number {
  return count >= MOST_BY_KEY ? 1 : count + 1;
}

/** The name and count that were chosen for the part on the pad, as one line of text that is kept with what is half typed. */
export type What = { readonly name: string; readonly count: number };

export function readWhat(text: string): What {
  const [, count = '1', name = ''] = /^(\d{1,2}) × (.*)$/s.exec(text) ?? [];
  return { name, count: Math.max(1, Number(count)) };
}

export function whatText({ name, count }: What): string {
  return `${count} × ${name}`;
}
