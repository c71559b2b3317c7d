import { marked } from '../../length/decimal-text.ts';
import type { Drill } from '../../thread/drill-series.ts';
import type { InsertDrillChoice } from '../../thread/insert-drill.ts';
import type { BlindDepth } from '../../thread/insert-lengths.ts';
import type { InsertHole } from '../../thread/insert-hole.ts';
import type { InsertLimits } from '../../thread/insert-limits.ts';
import { decimalText, isLess, isMore, minus, zero, type Length } from '../../length/length.ts';
import { showBeside } from '../../length/show-limits.ts';
import { figure, show, showBand, type ShownUnit } from '../../length/show.ts';
import type { InsertAnswer, InsertWall } from './thread-insert.ts';

/** What every leg shares: the hole, its limits, its drill. */
type Shared = Pick<InsertAnswer, 'limits' | 'drill' | 'hole'>;

/** A drill with its decimal and its millimetres: `29/64 (.4531 in, 11.509 mm)`, `13.2 mm (.5197 in)`. */
export function sayDrillSize({ name, series, size }: Drill): string {
  if (series === 'metric') return `${name} (${show(size, 'in')})`;
  return `${name}${series === 'fraction' ? ' in' : ''} (${show(size, 'in')}, ${marked(decimalText(size, 'mm', 3))} mm)`;
}

/** The thread a hole leaves, one decimal: `75.9 %`. */
export function sayPercent(percent: number): string {
  return `${marked(percent.toFixed(1))} %`;
}

/** Which drill, where it comes from, and what to know about it. */
export function sayInsertDrill(
  { drill: choice, limits }: Pick<InsertAnswer, 'drill' | 'limits'>,
  unit: ShownUnit,
): string {
  const { drill, percent, basis } = choice;
  const sentences = [`Drill ${sayDrillSize(drill)}: ${sayPercent(percent)} of thread.`];
  if (!choice.insideLimits)
    sentences.push(
      `That is ${show(minus(drill.size, limits.minorMost), unit)} over the greatest hole, ${show(limits.minorMost, unit)}; it may still be used, for less thread.`,
    );
  if (choice.leftOut) sentences.push(sayLeftOut(choice.leftOut, limits, unit));
  return [...sentences, `Drill: ${basis}. Greatest hole: ${limits.minorMostSource}.`].join(' ');
}

function sayLeftOut({ name, size }: Drill, { minorLeast, minorMost }: InsertLimits, unit: ShownUnit): string {
  return isLess(size, minorLeast)
    ? `${name} is listed too, but lies ${show(minus(minorLeast, size), unit)} under the least hole: the tap would have to cut that.`
    : `${name} is listed too, but lies ${show(minus(size, minorMost), unit)} over the greatest hole: it leaves less thread.`;
}

/** The drills on hand next to the chosen one, with the thread each gives; empty where there is none. */
export function sayDrillNeighbours({ below, above }: InsertDrillChoice): string {
  const next = [below, above].flatMap((neighbour) =>
    neighbour ? [`${sayDrillSize(neighbour.drill)} gives ${sayPercent(neighbour.percent)}`] : [],
  );
  return next.length === 0 ? '' : `Next to it: ${next.join('; ')}.`;
}

/** What the hole needs before the insert's STI tap. */
export function sayInsertHole(answer: Shared, unit: ShownUnit): string {
  const { hole, drill } = answer;
  switch (hole.state) {
    case 'solid':
      return `Solid metal: drill ${sayDrillSize(drill.drill)}, then the STI tap. That gives ${sayPercent(drill.percent)} of thread.`;
    case 'drill':
      return `The hole is too small for the STI tap: ${sayTightest(answer, unit)}. Drill ${sayDrillSize(drill.drill)}${sayAfterDrill(hole)}`;
    case 'run-drill-through-anyway':
      return `Run ${sayDrillSize(drill.drill)} through anyway: ${sayTightest(answer, unit)}, too close to call. With the drill through${sayAfterDrill(hole)}`;
    case 'straight-to-tap':
      return `The hole is already to size: straight to the STI tap.${sayPercentNow(hole)}${sayCloseToMost(answer, unit)}`;
    case 'over':
      return `${sayOver(answer, unit)}${sayPercentNow(hole)} Accept that, or bush the hole first.`;
    default:
      return hole.state satisfies never;
  }
}

/** What wall is left beside the tapped hole. */
export function sayInsertWall({ wall, least, enough, source }: InsertWall, unit: ShownUnit): string {
  const from = `(${source}).`;
  const shown = showBeside(wall, { limit: least, is: 'least' }, unit);
  if (enough) return `Wall left after tapping: ${shown.value}, and ${shown.limit} is enough ${from}`;
  if (!isMore(wall, zero)) return `The tap would cut through the wall. Don't fit an insert here.`;
  return `Wall left after tapping: ${shown.value}, ${shown.by} too thin for the ${shown.limit} wanted ${from}`;
}

/** Which length of insert for this metal, and what has to come off. */
export function sayInsertLength(
  { lengths, setDown, blindDepth }: Pick<InsertAnswer, 'lengths' | 'setDown' | 'blindDepth'>,
  unit: ShownUnit,
): string {
  const chosen = lengths.find((length) => length.chosen);
  if (!chosen) return '';
  const trim = chosen.trimOff
    ? ` It is ${show(chosen.trimOff, unit)} longer than the metal: trim it or grind it flush.`
    : '';
  const depth = blindDepth ? ` ${sayBlindDepth(blindDepth, unit)}` : '';
  return `Insert ${chosen.times} (${show(chosen.nominal, unit)}), ${span(chosen.installedLeast, chosen.installedMost, unit)} long when it is in. Wind it ${span(setDown.least, setDown.most, unit)} below the face.${trim}${depth}`;
}

/** How deep a blind hole is drilled and tapped, and what stays under it. */
export function sayBlindDepth(depth: NonNullable<InsertAnswer['blindDepth']>, unit: ShownUnit): string {
  return `Blind hole: drill ${show(depth.drilling, unit)} deep to the full diameter (the point goes ${show(depth.point, unit)} deeper), full thread ${show(depth.fullThread, unit)} deep. ${sayFloor(depth, unit)}`;
}

export const FLOOR_UNKNOWN = 'Give how thick the metal is: the drill may come through.';

/** What stays under the drill's point. */
export function sayFloor({ floor, leastFloor, floorMissing }: BlindDepth, unit: ShownUnit): string {
  if (!floor) return FLOOR_UNKNOWN;
  const missing = floorMissing ? ` ${show(floorMissing, unit)} of metal is missing.` : '';
  if (!isMore(floor, zero)) return `The drill's point may come through:${missing}`;
  return `At least ${show(floor, unit)} stays under its point, ${show(leastFloor, unit)} wanted.${missing}`;
}

function sayTightest({ hole, limits }: Shared, unit: ShownUnit): string {
  const { tightest, band } = hole;
  if (!tightest || !band) return '';
  const side = isLess(tightest, limits.minorLeast)
    ? `${show(minus(limits.minorLeast, tightest), unit)} under`
    : `${show(minus(tightest, limits.minorLeast), unit)} over`;
  return `it is ${show(tightest, unit)} (${showBand(band.halfWidth, unit)}) at its tightest, ${side} the least`;
}

function sayAfterDrill({ percentAfterDrill }: InsertHole): string {
  return percentAfterDrill === undefined ? '.' : `: ${sayPercent(percentAfterDrill)} of thread is left.`;
}

function sayPercentNow({ percent }: InsertHole): string {
  return percent === undefined ? '' : ` ${sayPercent(percent)} of thread is left at the loosest place.`;
}

function sayCloseToMost({ hole, limits }: Shared, unit: ShownUnit): string {
  return hole.closeToMost
    ? ` The loosest place may be a little over the greatest of ${show(limits.minorMost, unit)}.`
    : '';
}

function sayOver({ hole, limits, drill }: Shared, unit: ShownUnit): string {
  const over = `The hole is ${hole.overBy ? `${show(hole.overBy, unit)} ` : ''}over the greatest of ${show(limits.minorMost, unit)} at its loosest${hole.closeToMost ? ', too close to call' : ''}.`;
  return hole.drillTightest
    ? `${over} At its tightest it still needs ${sayDrillSize(drill.drill)} run through.`
    : over;
}

function span(least: Length, most: Length, unit: ShownUnit): string {
  return `${figure(least, unit)} to ${show(most, unit)}`;
}
