import { describe, expect, test } from 'vitest';
import { worksheetKinds, worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import { fieldNamed, fieldsOf, nextNeed } from '../../../src/screens/worksheets/kind-fields.ts';
import { typedSize } from './worksheet-for-test.ts';

function needs(kind: string, sizes: readonly string[], choices: readonly string[] = []): string | undefined {
  return nextNeed({
    kind,
    sizes: Object.fromEntries(sizes.map((name) => [name, typedSize('.4487')])),
    choices: Object.fromEntries(choices.map((name) => [name, 'located'])),
  });
}

describe('what a worksheet asks for next', () => {
  test.each([
    { given: [], choices: [], next: 'bore' },
    { given: ['bore'], choices: [], next: 'pin' },
    { given: ['pin'], choices: [], next: 'bore' },
    { given: ['bore', 'pin'], choices: [], next: 'joint' },
    { given: ['bore', 'pin'], choices: ['joint'], next: undefined },
    { given: ['bore'], choices: ['joint'], next: 'pin' },
  ])('a hole and pin with $given $choices needs $next', ({ given, choices, next }) => {
    expect(needs('hole-and-pin', given, choices)).toBe(next);
  });

  test('a stack needs its sleeve, and nothing more before its parts', () => {
    expect(needs('spacer-stack', [])).toBe('fixed');
    expect(needs('spacer-stack', ['fixed'])).toBeUndefined();
  });

  test('an insert needs its thread, then the hole, then the metal it is to hold in', () => {
    expect(needs('thread-insert', [])).toBe('thread');
    expect(needs('thread-insert', [], ['thread'])).toBe('hole');
    expect(needs('thread-insert', ['hole'], ['thread'])).toBe('thickness');
    expect(needs('thread-insert', ['hole', 'thickness'], ['thread'])).toBeUndefined();
  });

  test('what is not needed is never asked for by itself', () => {
    expect(needs('hole-and-pin', ['bore', 'pin', 'reach'], ['joint'])).toBeUndefined();
  });
});

describe('every kind of worksheet', () => {
  test.each(worksheetKinds)('%s starts with choices that it offers', (kind) => {
    const choices = worksheets[kind].starts;
    const offered = (name: string, value: string) => {
      const field = fieldNamed({ kind, choices }, name);
      return field?.enter === 'choice' && field.options.some((option) => option.value === value);
    };
    expect(Object.entries(choices).filter(([name, value]) => !offered(name, value))).toEqual([]);
  });

  test('one of a newer Slipfit has no fields here and needs nothing', () => {
    expect(fieldsOf({ kind: 'taper-turning', choices: {} })).toEqual({});
    expect(nextNeed({ kind: 'taper-turning', choices: {}, sizes: {} })).toBeUndefined();
  });

  test('a name of the language itself is no field', () => {
    expect(fieldNamed({ kind: 'fit', choices: {} }, 'constructor')).toBeUndefined();
  });
});
