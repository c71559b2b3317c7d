import { inForce } from './readings.ts';
import type { SizeInput, StackPartInput, Worksheet } from '../base/records.ts';

/** A size input with no more of its tool than a size keeps: a whole measuring tool fits its type, and holds lengths that aren't text. */
export function plainSize(input: SizeInput): SizeInput {
  if (input.from === 'feature') return input;
  const { tool, ...rest } = input;
  return tool ? { ...rest, tool: inForce(tool) } : rest;
}

export function plainPart({ size, leastLength, ...part }: StackPartInput): StackPartInput {
  return {
    ...part,
    ...(size ? { size: plainSize(size) } : {}),
    ...(leastLength ? { leastLength: plainSize(leastLength) } : {}),
  };
}

export function plainSizes(sizes: Worksheet['sizes']): Worksheet['sizes'] {
  return Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, plainSize(size)]));
}

export function plainParts(parts: Worksheet['parts']): Worksheet['parts'] {
  return Object.fromEntries(Object.entries(parts).map(([id, part]) => [id, plainPart(part)]));
}
