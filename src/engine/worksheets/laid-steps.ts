import type { StepOffer } from './worksheet.ts';

/** A part as it is laid in a row, with its size where that is known. */
export type Laid = { readonly name: string; readonly size?: string | undefined };

/** The whole order with its drawing first, then a step for each part with its neighbours; `where`: "on the sleeve". */
export function laidSteps(inOrder: readonly Laid[], where: string): readonly StepOffer[] {
  const names = inOrder.map(({ name }) => name);
  const first: StepOffer = {
    text: `Stack in this order, from the left ${where}: ${names.join(', ')}`,
    drawn: true,
  };
  const each = inOrder.map(({ name, size }, index) => ({
    text: `Fit ${withArticle(name)}${size === undefined ? '' : `, ${size}`}`,
    orientation: neighbours(names, index),
  }));
  return [first, ...each];
}

function neighbours(names: readonly string[], index: number): string {
  const before = names[index - 1];
  const after = names[index + 1];
  if (before === undefined)
    return after === undefined ? 'alone' : `first from the left, before ${withArticle(after)}`;
  return after === undefined
    ? `last, after ${withArticle(before)}`
    : `between ${withArticle(before)} and ${withArticle(after)}`;
}

/** "the washer", but "part 1" and "spacer A". */
function withArticle(name: string): string {
  return /^(part|spacer) [\dA-Z]+\b/.test(name) ? name : `the ${name}`;
}
