import { describe, expect, test } from 'vitest';
import { fieldNamed, nextNeed } from '../../../src/screens/worksheets/worksheet-plan.ts';
import { planOf, worksheetPlans } from '../../../src/screens/worksheets/worksheet-plans.ts';
import { typedSize } from './worksheet-for-test.ts';

function needs(kind: string, sizes: readonly string[], choices: readonly string[] = []): string | undefined {
  const plan = planOf(kind);
  if (!plan) throw new Error(kind);
  return nextNeed(plan, {
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

  test('an insert needs its thread, then the hole', () => {
    expect(needs('thread-insert', [])).toBe('thread');
    expect(needs('thread-insert', [], ['thread'])).toBe('hole');
    expect(needs('thread-insert', ['hole'], ['thread'])).toBeUndefined();
  });

  test('what is not needed is never asked for by itself', () => {
    expect(needs('hole-and-pin', ['bore', 'pin', 'reach'], ['joint'])).toBeUndefined();
  });
});

describe('every kind of worksheet', () => {
  test.each(worksheetPlans)('$name has a field for everything it needs, and each name once', (plan) => {
    expect(plan.needs.filter((name) => !fieldNamed(plan, name))).toEqual([]);
    const names = plan.fields.map((field) => field.name);
    expect(new Set(names).size).toBe(names.length);
  });

  test.each(worksheetPlans)('$name starts with choices that it offers', (plan) => {
    const offered = (name: string, value: string) => {
      const field = fieldNamed(plan, name);
      return field?.enter === 'choice' && field.options.some((option) => option.value === value);
    };
    expect(Object.entries(plan.choices).filter(([name, value]) => !offered(name, value))).toEqual([]);
  });

  test('one of a newer Slipfit has no plan here', () => {
    expect(planOf('taper-turning')).toBeUndefined();
  });
});
