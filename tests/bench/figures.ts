/** One measured figure: the median of its runs, and the aim it is held against. */
export type Figure = {
  readonly name: string;
  readonly unit: 'ms' | 'kB' | '×' | 'MB';
  readonly value: number;
  readonly runs: number;
  /** At most, or at least where `atLeast`. */
  readonly aim?: number;
  readonly atLeast?: true;
};

export type Part = { readonly title: string; readonly figures: readonly Figure[] };

export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

/** The value that so large a share of the runs stays at or under. */
export function quantile(values: readonly number[], share: number): number {
  const rising = values.toSorted((a, b) => a - b);
  return rising[Math.min(rising.length - 1, Math.ceil(share * rising.length) - 1)] ?? Number.NaN;
}

export function isMet({ value, aim, atLeast }: Figure): boolean {
  if (aim === undefined) return true;
  return atLeast ? value >= aim : value <= aim;
}

/** A table a person reads, as Markdown, with the figures of an earlier run beside them where there are some. */
export function tableOf(parts: readonly Part[], before?: readonly Part[]): string {
  const head = ['figure', 'median', 'aim', 'met', ...(before ? ['before'] : [])];
  const rows = parts.flatMap((part) => [
    [`**${part.title}**`, '', '', '', ...(before ? [''] : [])],
    ...part.figures.map((one) => [
      one.name,
      said(one, one.value),
      one.aim === undefined ? '' : `${one.atLeast ? '≥' : '≤'} ${said(one, one.aim)}`,
      one.aim === undefined ? '' : isMet(one) ? 'yes' : 'NO',
      ...(before ? [saidBefore(before, part.title, one)] : []),
    ]),
  ]);
  return [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}

function saidBefore(before: readonly Part[], title: string, { name }: Figure): string {
  const then = before.find((part) => part.title === title)?.figures.find((one) => one.name === name);
  return then ? said(then, then.value) : '';
}

function said({ unit }: Figure, value: number): string {
  const digits = value >= 100 ? 0 : value >= 10 ? 1 : 2;
  return `${value.toFixed(digits)} ${unit}`;
}
