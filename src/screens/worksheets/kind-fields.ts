import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { Field, Fields } from '../../engine/worksheets/fields.ts';
import type { Worksheet } from '../../store/base/records.ts';
import { givenChoices } from './given-choices.ts';

type Chosen = { readonly kind: string; readonly choices: Worksheet['choices'] };

/** What a worksheet is told, as things stand with what was chosen so far; nothing of a kind newer than this Slipfit. */
export function fieldsOf({ kind, choices }: Chosen): Fields {
  return worksheetOf(kind)?.fieldsFor(givenChoices(choices)) ?? {};
}

export function fieldNamed(of: Chosen, name: string): Field | undefined {
  const fields = fieldsOf(of);
  return Object.hasOwn(fields, name) ? fields[name] : undefined;
}

/** The next thing a worksheet can't do without. The parts of a stack are put in on its own page. */
export function nextNeed({ kind, sizes, choices }: Chosen & Pick<Worksheet, 'sizes'>): string | undefined {
  const needs = worksheetOf(kind)?.needs(givenChoices(choices)) ?? [];
  return needs.find((name) => name !== 'parts' && sizes[name] === undefined && choices[name] === undefined);
}
