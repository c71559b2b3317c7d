import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import type { StackPartInput, Worksheet, WorksheetKind } from '../../store/records.ts';

type Option = { readonly value: string; readonly words: string; readonly more?: string };

/** One thing a worksheet is told: a size by pad or from readings, one of a few plain choices, or a thread. */
export type FieldPlan = {
  readonly name: string;
  readonly label: string;
  /** What the screen asks, in the fitter's words. */
  readonly ask: string;
} & (
  | {
      readonly enter: 'size';
      /** A size that is measured: readings of this kind are offered, and a typed one counts as a reading. */
      readonly measures?: FeatureKind;
      readonly signed?: boolean;
      /** Read on the assembled thing in place of a sum: what a fit-up check read is offered here too. */
      readonly direct?: true;
    }
  | { readonly enter: 'choice'; readonly options: readonly Option[] }
  | { readonly enter: 'thread' }
  /** A number that is no length, kept as text among the choices: degrees, a temperature, a strength. */
  | { readonly enter: 'number'; readonly unit: string; readonly least: number; readonly most: number }
);

/** A kind of worksheet as data: what it is called, what it asks for, and what it starts with. */
export type WorksheetPlan = {
  readonly kind: WorksheetKind;
  readonly name: string;
  readonly asks: string;
  /** Asked one after the other when the worksheet is new. */
  readonly needs: readonly string[];
  readonly fields: readonly FieldPlan[];
  readonly choices: Readonly<Record<string, string>>;
  readonly parts: readonly StackPartInput[];
  /** For a kind whose first choices decide what it asks for: its needs and fields as things stand. */
  readonly forChoices?: (choices: Worksheet['choices']) => Pick<WorksheetPlan, 'needs' | 'fields'>;
};

/** The plan as it stands with what was chosen so far. */
export function planFor(plan: WorksheetPlan, choices: Worksheet['choices']): WorksheetPlan {
  return plan.forChoices ? { ...plan, ...plan.forChoices(choices) } : plan;
}

export function fieldNamed(plan: WorksheetPlan, name: string): FieldPlan | undefined {
  return plan.fields.find((field) => field.name === name);
}

/** The next thing a worksheet can't do without. */
export function nextNeed(
  plan: WorksheetPlan,
  { sizes, choices }: Pick<Worksheet, 'sizes' | 'choices'>,
): string | undefined {
  return planFor(plan, choices).needs.find(
    (name) => sizes[name] === undefined && choices[name] === undefined,
  );
}

/**
 * Where a foot switch steps on to from a field that is left as it is: the next thing the worksheet can't do without, else
 * its answer. Nowhere while this field itself is all that is missing.
 */
export function nextAfter(
  plan: WorksheetPlan,
  { sizes, choices }: Pick<Worksheet, 'sizes' | 'choices'>,
  field: string,
): string | undefined {
  const missing = planFor(plan, choices).needs.filter(
    (name) => sizes[name] === undefined && choices[name] === undefined,
  );
  return missing.find((name) => name !== field) ?? (missing.includes(field) ? undefined : 'answer');
}
