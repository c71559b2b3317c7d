import { isLess, isMore, type Length } from './length.ts';

export { usualTools } from './tables/measuring-tools.ts';

export type FeatureKind = 'bore' | 'pin' | 'length' | 'depth' | 'gap' | 'runout';

export type MeasuringToolKind =
  | 'caliper'
  | 'micrometer'
  | 'bore-gauge'
  | 'telescoping-gauge'
  | 'depth-gauge'
  | 'indicator'
  | 'feeler'
  | 'plug-gauge'
  | 'rule';

export type MeasuringTool = {
  readonly id: string;
  readonly name: string;
  readonly kind: MeasuringToolKind;
  readonly measures: readonly FeatureKind[];
  /** The largest error allowed to one side: ± mpe. */
  readonly mpe: Length;
  readonly resolution: Length;
  /** Whether the error limit already counts the last digit's step. */
  readonly resolutionInMpe: boolean;
  /** Standard deviation of one reading in usual hands; stands in where the readings can't tell it. */
  readonly repeatability: Length;
  readonly least?: Length;
  readonly most?: Length;
  /** Width of the flats on a caliper's inside jaws. */
  readonly jawWidth?: Length;
  /** Where the error limit comes from. */
  readonly source: string;
};

/** What of a tool is kept with a reading, as it was when the reading was taken. */
export type ToolInForce = Pick<
  MeasuringTool,
  'id' | 'name' | 'kind' | 'mpe' | 'resolution' | 'resolutionInMpe' | 'repeatability' | 'jawWidth'
>;

/**
 * Whether a tool can take this kind of reading, at this size where one is known.
 *
 * Range: the ends of the tool's range count as inside.
 */
export function canMeasure(tool: MeasuringTool, kind: FeatureKind, size?: Length): boolean {
  if (!tool.measures.includes(kind)) return false;
  if (size === undefined) return true;
  const tooSmall = tool.least !== undefined && isLess(size, tool.least);
  const tooBig = tool.most !== undefined && isMore(size, tool.most);
  return !tooSmall && !tooBig;
}
