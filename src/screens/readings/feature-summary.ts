import { bandOf, mean } from '../../engine/estimate.ts';
import { featureForm, type FeatureForm } from '../../engine/feature-form.ts';
import type { FeatureKind } from '../../engine/measuring-tool.ts';
import { withUnit } from '../../engine/say-verdict.ts';
import { figure, knownFigure, showBand, type ShownUnit } from '../../engine/show.ts';
import type { ReadingRecord } from '../../store/records.ts';
import { engineReadings } from './engine-readings.ts';

export function formOfReadings(
  kind: FeatureKind,
  readings: readonly ReadingRecord[],
): FeatureForm | undefined {
  const counted = engineReadings(kind, readings);
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

/** "Taper .0006, tightest in the middle. Out of round .0004." */
export function formSentence({ taper, outOfRound }: FeatureForm, unit: ShownUnit): string {
  const parts = [
    taper &&
      `Taper ${withUnit(figure(taper.by, unit), unit)}, tightest ${taper.tightestPlace === 'middle' ? 'in the middle' : `at the ${taper.tightestPlace}`}.`,
    outOfRound &&
      `Out of round ${withUnit(figure(outOfRound.by, unit), unit)}${outOfRound.place ? ` at the ${outOfRound.place}` : ''}.`,
  ];
  return parts.filter((part) => part !== undefined).join(' ');
}
