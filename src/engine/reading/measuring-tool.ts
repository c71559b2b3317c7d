import { absolute, isLess, isMore, largest, type Length } from '../length/length.ts';
import { usualTools } from './tables/measuring-tools.ts';

export { usualTools } from './tables/measuring-tools.ts';

export type FeatureKind = 'bore' | 'pin' | 'length' | 'depth' | 'gap' | 'runout';

export type MeasuringToolKind =
  | 'caliper'
  | 'micrometer'
  | 'bore-gauge'
  | 'three-point'
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
  | 'id'
  | 'name'
  | 'kind'
  | 'mpe'
  | 'resolution'
  | 'resolutionInMpe'
  | 'repeatability'
  | 'jawWidth'
  | 'least'
  | 'most'
>;

type Range = Pick<MeasuringTool, 'least' | 'most'>;

/**
 * Whether a tool can take this kind of reading, at this size where one is known.
 *
 * Range: the ends of the tool's range count as inside. A size below zero is measured as long as it is the other way.
 */
export function canMeasure(tool: MeasuringTool, kind: FeatureKind, size?: Length): boolean {
  return tool.measures.includes(kind) && (size === undefined || isInside(tool, size));
}

/**
 * Whether the tool kept with a size can have read it. A record from before ranges were kept has the range of the usual
 * tool it names; a tool of the shop's own without one is believed.
 */
export function canHaveRead(tool: ToolInForce, size: Length): boolean {
  const kept = tool.least !== undefined || tool.most !== undefined;
  const range = kept ? tool : usualTools.find(({ id }) => id === tool.id);
  return range === undefined || isInside(range, size);
}

/**
 * The tool whose error limits a size counts with: its own, or, where that can't have read it, the usual caliper, rule or
 * tape in its place. A 1–2 in micrometer must never prove a .227 to half a thou.
 *
 * Range:   the one in its place is never closer than the tool that was named, and its name says that it is assumed.
 * Source:  common practice, no source: what a shop reads such a size with.
 */
export function toolThatCounts(tool: ToolInForce, size: Length): ToolInForce {
  if (canHaveRead(tool, size)) return tool;
  const usual = inPlaceOf(tool, size);
  return {
    ...usual,
    name: `${usual.name}, assumed`,
    mpe: largest(usual.mpe, tool.mpe),
    resolution: largest(usual.resolution, tool.resolution),
    resolutionInMpe: usual.resolutionInMpe && tool.resolutionInMpe,
    repeatability: largest(usual.repeatability, tool.repeatability),
  };
}

// In the order in which they are tried; the tape is the last that there is.
const IN_PLACE: readonly string[] = ['steel-rule', 'tape-measure'];

function inPlaceOf(tool: ToolInForce, size: Length): ToolInForce {
  const ids = [caliperLike(tool), ...IN_PLACE];
  const inPlace = ids.flatMap((id) => usualTools.filter((usual) => usual.id === id));
  const found = inPlace.find((usual) => isInside(usual, size)) ?? inPlace.at(-1);
  if (!found) throw new Error('a caliper, a rule and a tape are among the usual tools');
  const { measures: _of, source: _from, ...inForce } = found;
  return inForce;
}

/** The end of the usual caliper that reads what such a tool reads. */
function caliperLike({ id, kind }: ToolInForce): string {
  const usual = usualTools.find((one) => one.id === id);
  if (usual?.kind === 'caliper') return id;
  switch (kind) {
    case 'depth-gauge':
      return 'digital-caliper-depth';
    case 'micrometer':
      return 'digital-caliper';
    case 'caliper':
    case 'bore-gauge':
    case 'three-point':
    case 'telescoping-gauge':
    case 'plug-gauge':
    case 'feeler':
    case 'indicator':
    case 'rule':
      return 'digital-caliper-inside'; // the wider of the caliper's ends
    default:
      return kind satisfies never;
  }
}

function isInside({ least, most }: Range, size: Length): boolean {
  const long = absolute(size);
  return !(least && isLess(long, least)) && !(most && isMore(long, most));
}
