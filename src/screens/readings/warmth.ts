import { bandOf, mean } from '../../engine/reading/estimate.ts';
import type { FeatureForm } from '../../engine/reading/feature-form.ts';
import { minus } from '../../engine/length/length.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { sayUnaskedWarmth, sayWarmth } from '../../engine/reading/say-warmth.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import { readWarm, unaskedWarmth } from '../../engine/reading/temperature.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import { warmOf } from '../../store/kept/read-at-20.ts';
import type { Cut, CutPass, Feature, Job, ReadingRecord, ReadWarmth } from '../../store/base/records.ts';

// Chosen, not published: one working day. Tomorrow the shop is as warm as it is then.
const HOLDS_FOR_MS = 12 * 60 * 60 * 1000;

/** The warmth that was said in this job today; none where it was said on another day. */
export function warmthOfToday({ warmth }: Job, now: number): Job['warmth'] {
  return warmth && Math.abs(now - warmth.at) < HOLDS_FOR_MS ? warmth : undefined;
}

/** What is kept of it with a reading logged now; nothing until both the warmth and the metal are said. */
export function warmthToKeep(job: Job, feature: Feature, now: number): Pick<ReadingRecord, 'warmth'> {
  const warmth = warmthOfToday(job, now);
  if (!warmth || feature.material === undefined || !growsWithWarmth(feature.kind)) return {};
  const { degrees, unit } = warmth;
  return { warmth: { degrees, unit, material: feature.material } };
}

/** The same of a size measured at the machine, of the metal that the cut names. */
export function warmthOfCut(
  job: Job,
  { material }: Pick<Cut, 'material'>,
  now: number,
): Pick<CutPass, 'warmth'> {
  return warmthOfMetal(job, material, now);
}

/** How warm a size of that metal is read now; nothing until both the warmth and the metal are said. */
export function warmthOfMetal(
  job: Job,
  material: string | undefined,
  now: number,
): { readonly warmth?: ReadWarmth } {
  const said = warmthOfToday(job, now);
  if (!said || material === undefined || !materialNamed(material)) return {};
  return { warmth: { degrees: said.degrees, unit: said.unit, material } };
}

/** A runout is a difference at one place: what warms grows on both sides. */
export function growsWithWarmth(kind: FeatureKind): boolean {
  return kind !== 'runout';
}

/**
 * The warmth a reading was taken at: its own, else that of the reading of the same part nearest to it on that day. Where
 * it is said after the first reading, that one was as warm.
 */
export function warmthOfDay(
  { at, warmth }: Pick<ReadingRecord, 'at' | 'warmth'>,
  records: readonly ReadingRecord[],
): Pick<ReadingRecord, 'warmth'> {
  if (warmth) return { warmth };
  const [nearest] = records
    .filter((one) => one.warmth !== undefined && Math.abs(one.at - at) < HOLDS_FOR_MS)
    .toSorted((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at));
  return nearest?.warmth ? { warmth: nearest.warmth } : {};
}

/** What the last reading's warmth changed, in a line; empty where none was said. */
export function warmthLine(readings: readonly ReadingRecord[], unit: ShownUnit): string {
  const last = readings.findLast(({ struckOut, warmth }) => !struckOut && warmth !== undefined);
  const warm = last && warmOf(last);
  if (!last?.warmth || !warm) return '';
  const changed = minus(readWarm(last.exact, warm).at20, last.exact);
  return sayWarmth({ ...last.warmth, material: warm.material.name }, { changed, unit });
}

/** The question where readings were taken without saying how warm, and it could matter; empty where not. */
export function warmthAsked(
  form: FeatureForm,
  readings: readonly ReadingRecord[],
  { job, unit }: { readonly job: Job; readonly unit: ShownUnit },
): string {
  const counting = readings.filter(({ struckOut }) => !struckOut);
  if (!growsWithWarmth(form.kind) || counting.every((one) => warmthOfDay(one, readings).warmth)) return '';
  const { estimate } = form.tightest;
  const off = unaskedWarmth(mean(estimate), bandOf(estimate).halfWidth);
  const asks = warmthOfToday(job, timeToKeep()) ? 'metal' : 'warmth';
  return off ? sayUnaskedWarmth(off, asks, unit) : '';
}
