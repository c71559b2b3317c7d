import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';

/** The kinds of reading in the order a fitter meets them, with what each is. */
export const FEATURE_KINDS: readonly {
  readonly kind: FeatureKind;
  readonly name: string;
  readonly means: string;
}[] = [
  { kind: 'bore', name: 'Bore', means: 'a hole, across' },
  { kind: 'pin', name: 'Pin', means: 'a bolt, shaft or sleeve, across' },
  { kind: 'length', name: 'Length', means: 'a spacer, washer or hub' },
  { kind: 'depth', name: 'Depth', means: 'a recess or a blind hole' },
  { kind: 'gap', name: 'Gap', means: 'float or side play, by feeler' },
  { kind: 'runout', name: 'Runout', means: 'total, by indicator' },
];

export function kindName(kind: FeatureKind): string {
  return FEATURE_KINDS.find((one) => one.kind === kind)?.name ?? kind;
}

/** Whether readings of this kind are taken at places: along a bore or pin, round the faces of a length or gap. */
export function hasPlaces(kind: FeatureKind): boolean {
  return kind !== 'runout';
}

/** Whether each place is read in two directions. */
export function hasDirections(kind: FeatureKind): boolean {
  return kind === 'bore' || kind === 'pin';
}
