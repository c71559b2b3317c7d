import type { Keeps, KeptClass } from '../../fit/kept-class.ts';
import { listed } from '../../length/say-words.ts';

/** Which class two measured parts keep: the one that is wanted where they keep it, else the closest. */
export function sayKept({ read, proved }: KeptClass, wanted: string): string {
  const keeps = read.find(({ fitClass }) => fitClass === wanted) ?? read[0];
  if (!keeps) return 'They keep no class.';
  const { fitClass, by } = keeps;
  if (!proved.some((one) => one.fitClass === fitClass))
    return `They read as ${fitClass}; these readings can’t prove it.`;
  return by === 'sizes'
    ? `They keep ${fitClass}.`
    : `They run as ${fitClass} as a pair, not each to its own size.`;
}

/** The same of one standard, beside its name: `RC5`, `each to its own size, proved; also RC6 and RC7`. */
export function sayKeptInRow({ read, proved }: KeptClass): {
  readonly figure: string;
  readonly more?: string;
} {
  const [closest, ...others] = read;
  if (!closest) return { figure: 'none' };
  const isProved = proved.some(({ fitClass }) => fitClass === closest.fitClass);
  const how = closest.by === 'sizes' ? 'each to its own size' : 'as a pair only';
  const also = others.filter(({ by }) => by === closest.by).map(({ fitClass }) => fitClass);
  return {
    figure: closest.fitClass,
    more: `${how}, ${isProved ? 'proved' : 'not proved'}${also.length === 0 ? '' : `; also ${listed(also)}`}`,
  };
}

/** Every class that they keep, for whoever wants to know: `RC5, RC6 and LC6 by size; RC4 as a pair`. */
export function sayAllKept({ read }: KeptClass): string {
  const named = (by: Keeps['by'], how: string) => {
    const names = read.filter((one) => one.by === by).map(({ fitClass }) => fitClass);
    return names.length === 0 ? [] : [`${listed(names)} ${how}`];
  };
  const all = [...named('sizes', 'each to its own size'), ...named('pair', 'as a pair')];
  return all.length === 0 ? 'none' : all.join('; ');
}
