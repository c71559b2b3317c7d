import { marked, markWord } from '../length/decimal-text.ts';
import type { Entry } from '../length/entry.ts';
import type { Contradiction, FeatureForm, FormCaution } from './feature-form.ts';
import type { SlipQuestion } from './reading.ts';
import { bandOf, mean, type Estimate } from './estimate.ts';
import { isZero, type Length } from '../length/length.ts';
import { canHaveRead, toolThatCounts, type MeasuringTool, type ToolInForce } from './measuring-tool.ts';
import { asTyped, figure, knownFigure, show, type ShownUnit } from '../length/show.ts';

/** What readings come to, as far as it is known: `.4370` where the band is ±.00014. */
export function sizeFigure(estimate: Estimate, unit: ShownUnit): string {
  return knownFigure(mean(estimate), bandOf(estimate).halfWidth, unit);
}

/** `sizeFigure` with its unit behind it: `.4370 in`. */
export function showSize(estimate: Estimate, unit: ShownUnit): string {
  return `${sizeFigure(estimate, unit)} ${unit}`;
}

/** The question about a reading that stands apart from the others as if the unit or the point had slipped. */
export function saySlipQuestion({ kind, usual }: SlipQuestion, entry: Entry): string {
  const unit = entry.unit === 'thou' ? 'in' : entry.unit;
  const others = `the others, near ${show(usual, unit)}`;
  switch (kind) {
    case 'inch-for-mm':
      return `${asTyped(entry)} is ${marked('25.4')} times ${others}: millimetres typed as inches?`;
    case 'mm-for-inch':
      return `${asTyped(entry)} is 1/${marked('25.4')} of ${others}: inches typed as millimetres?`;
    case 'point-slipped':
      return `${asTyped(entry)} stands beside ${others}: has the ${markWord()} slipped?`;
    default:
      return kind satisfies never;
  }
}

/** The tool beside a size in a list or on paper: the one it counts as read by, and which one can't have read it. */
export function toolBeside({ tool, exact }: { readonly tool: ToolInForce; readonly exact: Length }): string {
  if (canHaveRead(tool, exact)) return tool.name;
  return `${toolThatCounts(tool, exact).name} (the ${tool.name} can’t read this)`;
}

/** Why a tool isn't taken for a size: where it begins and ends. */
export function sayOutOfRange({ name, least, most }: MeasuringTool, entry: Entry, unit: ShownUnit): string {
  const from = least && !isZero(least) ? figure(least, unit) : undefined;
  const to = most && show(most, unit);
  const range = from && to ? `${from} to ${to}` : to ? `up to ${to}` : `from ${from ?? '0'} ${unit}`;
  return `The ${name} reads ${range}. Choose the tool that read ${asTyped(entry)}.`;
}

/** What the way of measuring can't see. */
export function sayCaution(caution: FormCaution): string {
  switch (caution) {
    case 'three-lobed-unseen':
      return 'Two points can’t see a three-lobed bore: try the pin in it, turned.';
    case 'jaw-flats':
      return `Caliper jaws have flats: under 1/2 in (${marked('12.7')} mm) they read small. Give their width in Shop.`;
    default:
      return caution satisfies never;
  }
}

/** What settles readings that contradict each other: no tool, only the fitter. */
export const WHICH_STANDS = 'Strike out the reading that is wrong.';

/** Two readings that can't both be right, as a question: `.4980 (caliper) or .5015 (bore gauge): which stands?` */
export function sayContradiction({ one, other }: Contradiction, unit: ShownUnit): string {
  return `${byTool(one.estimate, unit)} or ${byTool(other.estimate, unit)}: which stands?`;
}

function byTool(estimate: Estimate, unit: ShownUnit): string {
  return `${sizeFigure(estimate, unit)}${estimate.tool ? ` (${estimate.tool.name})` : ''}`;
}

/** Readings that lie too far apart to be scatter, with no place given: `.517 to .518: where were they read?` */
export function sayApart({ least, most }: NonNullable<FeatureForm['apart']>, unit: ShownUnit): string {
  return `${sizeFigure(least, unit)} to ${sizeFigure(most, unit)}: where were they read?`;
}
