import { expect, test } from 'vitest';
import { readBy, typedSizeOf } from '../../src/store/kept/pass-tool.ts';
import { usualTools } from '../../src/engine/reading/measuring-tool.ts';
import { inches } from './cut-for-test.ts';

/** A figure at the machine counts with a tool, as one typed on a worksheet does: never as exact for want of a name. */

const micrometer = usualTools.find(({ id }) => id === 'micrometer-1-2');

test('a length that nobody named a tool for counts as read by the usual caliper, assumed', () => {
  const { tool, toolAssumed } = readBy({ of: 'length' }, { measured: inches('1.480') });
  expect([tool?.kind, toolAssumed]).toEqual(['caliper', true]);
});

test('a tool that was named is no assumption', () => {
  if (!micrometer) throw new Error('it is in the table');
  const read = readBy({ of: 'outside' }, { measured: inches('1.480'), tool: micrometer });
  expect([read.tool?.id, read.toolAssumed]).toEqual(['micrometer-1-2', undefined]);
});

test('past a caliper’s reach a coarser tool is assumed, never a finer one', () => {
  const { tool } = readBy({ of: 'length' }, { measured: inches('30') });
  expect(tool?.kind).toBe('rule');
});

test('given to a worksheet it keeps that its tool is assumed', () => {
  expect(typedSizeOf({ of: 'bore' }, { at: 1, measured: inches('.500') })).toMatchObject({
    from: 'typed',
    typed: '.500',
    toolAssumed: true,
  });
});
