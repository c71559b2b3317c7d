import { uncapital } from '../../engine/length/say-words.ts';
import type { Assumed } from '../../engine/worksheets/worksheet.ts';
import type { Id, SizeInput } from '../../store/base/records.ts';
import { isElsewhere } from '../readings/elsewhere.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** With the size that is read to end it. */
export type AssumedSize = Assumed & { readonly featureId?: Id };

/** Sizes that a worksheet stands on and that were read of another one only: each is taken for granted until it is read. */
export function assumedElsewhere({ worksheet, features, readings }: WorksheetData): readonly AssumedSize[] {
  const inputs: readonly (readonly [string, SizeInput | undefined])[] = [
    ...Object.entries(worksheet.sizes),
    ...Object.entries(worksheet.parts).map(([id, { size }]) => [`part/${id}/size`, size] as const),
  ];
  const all = inputs.flatMap(([field, input]): (readonly [Id, AssumedSize])[] => {
    const featureId = input?.from === 'feature' ? input.featureId : undefined;
    const feature = features.find(({ id }) => id === featureId);
    if (!feature) return [];
    const own = readings.filter((one) => one.featureId === feature.id);
    if (!isElsewhere(feature, own)) return [];
    const words = `${uncapital(feature.name)} of another one`;
    return [[feature.id, { field, words, asked: 'Read it here', featureId: feature.id }]];
  });
  return [...new Map(all).values()];
}
