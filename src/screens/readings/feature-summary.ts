import { bandOf, mean } from '../../engine/reading/estimate.ts';
import { featureForm, type FeatureForm } from '../../engine/reading/feature-form.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { hasDirections } from './feature-kinds.ts';
import type { Place } from '../../engine/reading/reading.ts';
import { sayApart, sayContradiction, sizeFigure } from '../../engine/reading/say-readings.ts';
import { withUnit, figure, knownFigure, showBand, type ShownUnit } from '../../engine/length/show.ts';
import type { ReadingRecord } from '../../store/base/records.ts';
import { engineReadings } from './engine-readings.ts';

export function formOfReadings(
  kind: FeatureKind,
  readings: readonly ReadingRecord[],
  material?: string,
): FeatureForm | undefined {
  const counted = engineReadings(kind, readings, material);
  return counted && featureForm(kind, counted);
}

/** One line about a feature: `.4487 in ±.0012`, and its form where places differ. */
export function summaryOf(
  form: FeatureForm,
  unit: ShownUnit,
): { readonly size: string; readonly band: string; readonly form: string } {
  const { estimate } = form.tightest;
  const { halfWidth } = bandOf(estimate);
  return {
    size: `${knownFigure(mean(estimate), halfWidth, unit)} ${unit}`,
    band: showBand(halfWidth, unit),
    form: formSentence(form, unit),
  };
}

/**
 * What to ask of the readings, then their form: "Taper .0006, tightest in the middle. Out of round .0004." Of a length: "From
 * .9670 to .9700, thickest at the top."
 */
export function formSentence(form: FeatureForm, unit: ShownUnit): string {
  const { taper, outOfRound, apart, contradictions } = form;
  const parts = [
    ...contradictions.map((contradiction) => sayContradiction(contradiction, unit)),
    apart && sayApart(apart, unit),
    taper && !hasDirections(form.kind) && lengthSentence(form, taper.tightestPlace, unit),
    taper &&
      hasDirections(form.kind) &&
      `Taper ${withUnit(figure(taper.by, unit), unit)}, tightest ${atPlace(taper.tightestPlace)}.`,
    outOfRound &&
      `Out of round ${withUnit(figure(outOfRound.by, unit), unit)}${outOfRound.place ? ` at the ${outOfRound.place}` : ''}.`,
  ];
  return parts.filter((part) => part !== undefined && part !== false).join(' ');
}

function lengthSentence({ kind, least, most }: FeatureForm, tightest: Place, unit: ShownUnit): string {
  const [from, to] = [least, most].map(({ estimate }) => sizeFigure(estimate, unit));
  const binds = kind === 'length' ? 'thickest' : kind === 'depth' ? 'shallowest' : 'narrowest';
  return `From ${from} to ${withUnit(to ?? '', unit)}, ${binds} ${atPlace(tightest)}.`;
}

function atPlace(place: Place): string {
  return place === 'middle' ? 'in the middle' : `at the ${place}`;
}
