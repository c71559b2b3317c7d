import type { Length } from './length.ts';
import { showBeside } from './show-limits.ts';
import type { ShownUnit } from './show.ts';

type Least = { readonly least: Length; readonly source: string };

/** What is there beside the least there may be: `.0616 in, least .060 in (common practice, no source)`. */
export function sayLeast(value: Length, { least, source }: Least, unit: ShownUnit, where = ''): string {
  const shown = showBeside(value, { limit: least, is: 'least' }, unit);
  return `${shown.value}${where}, least ${shown.limit} (${source})`;
}

/** The same where it is too little: `.050 in, and .060 in is the least (common practice, no source)`. */
export function sayUnderLeast(value: Length, { least, source }: Least, unit: ShownUnit, where = ''): string {
  const shown = showBeside(value, { limit: least, is: 'least' }, unit);
  return `${shown.value}${where}, and ${shown.limit} is the least (${source})`;
}
