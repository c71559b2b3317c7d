import { byLength, lengthOf, roundForShow, sameLength, type Length, type Unit } from '../length/length.ts';
import { canMeasure, type FeatureKind, type MeasuringTool } from './measuring-tool.ts';

type Asked = {
  readonly tools: readonly MeasuringTool[];
  readonly kind: FeatureKind;
  /** Where it is known: a tool is used only inside its range. */
  readonly size?: Length | undefined;
  /** What the shop counts in: its caliper reads in that. */
  readonly unit: Unit;
};

/**
 * The tool that a size counts as read by while nobody has said which did: the shop's caliper, in the shop's own unit
 * first. Where none reaches, a rule, then a tape; last the coarsest tool that reads such a size, so that an assumption
 * never proves more than a measurement would.
 *
 * Range:   undefined where no tool of the shop reads such a size.
 * Source:  common practice, no source.
 */
export function usualToolFor({ tools, kind, size, unit }: Asked): MeasuringTool | undefined {
  const able = tools.filter((tool) => canMeasure(tool, kind, size));
  const calipers = able.filter((tool) => tool.kind === 'caliper');
  return (
    calipers.find((tool) => readsMillimetres(tool) === (unit === 'mm')) ??
    calipers[0] ??
    able.find((tool) => tool.kind === 'rule') ??
    able.toSorted((a, b) => byLength(b.mpe, a.mpe))[0]
  );
}

const MICROMETRE = lengthOf('0.001 mm');

/** A metric tool's last digit is whole micrometres; .0005 in is 12.7 of them. */
export function readsMillimetres({ resolution }: MeasuringTool): boolean {
  return sameLength(roundForShow(resolution, MICROMETRE), resolution);
}
