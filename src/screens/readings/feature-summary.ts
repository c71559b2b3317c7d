import { bandOf, mean } from '../../engine/estimate.ts';
import { featureForm, type FeatureForm } from '../../engine/feature-form.ts';
import type { FeatureKind } from '../../engine/measuring-tool.ts';
import { hasDirections } from './feature-kinds.ts';
import type { Place } from '../../engine/reading.ts';
import { sizeFigure } from '../../engine/say-readings.ts';
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

/** "Taper .0006, tightest in the middle. Out of round .0004." Of a length: "From .9670 to .9700, thickest at the top." */
export function formSentence({ kind, least, most, taper, outOfRound }: FeatureForm, unit: ShownUnit): string {
  if (taper && !hasDirections(kind)) {
    const [from, to] = [least, most].map(({ estimate }) => sizeFigure(estimate, unit));
    const binds = kind === 'length' ? 'thickest' : kind === 'depth' ? 'shallowest' : 'narrowest';
    return `From ${from} to ${withUnit(to ?? '', unit)}, ${binds} ${atPlace(taper.tightestPlace)}.`;
  }
  const parts = [
    taper && `Taper ${withUnit(figure(taper.by, unit), unit)}, tightest ${atPlace(taper.tightestPlace)}.`,
    outOfRound &&
      `Out of round ${withUnit(figure(outOfRound.by, unit), unit)}${outOfRound.place ? ` at the ${outOfRound.place}` : ''}.`,
  ];
  return parts.filter((part) => part !== undefined).join(' ');
}

function atPlace(place: Place): string {
  return place === 'middle' ? 'in the middle' : `at the ${place}`;
}
