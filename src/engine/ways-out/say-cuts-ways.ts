import { sayBushingRefusal, sayBushingWarning } from '../press/say-bushing.ts';
import { sayClearance, sayFitClass } from '../fit/say-fit.ts';
import { sayUnderLeast } from '../length/say-least.ts';
import { sayStrengthOfWay } from '../cut/say-strength.ts';
import { sayPickUnproved, sayPieces, sayShimRefusal } from '../shim/say-shims.ts';
import { saySettler } from '../reading/say-verdict.ts';
import { withUnit, figure, show, showBand, showBetween, type ShownUnit } from '../length/show.ts';
import { absolute, isNegative } from '../length/length.ts';
import type { CutKind } from '../length/metal-on.ts';
import type { ShimPick } from '../shim/shims.ts';
import type { WayOut, WayOutKind, WayOutReason } from './ways-out-kinds.ts';

export type SaidWay = {
  readonly title: string;
  /** What to do, with its figures; why it can't be done where it is ruled out. */
  readonly what: string;
  /** What it does not give back. */
  readonly caution?: string;
  /** That metal comes off a part that carries load for it. */
  readonly strength?: string;
};

const NAMES: Readonly<Record<WayOutKind, string>> = {
  'measure-again': 'Measure again',
  'next-class': 'Keep it, in another class',
  'new-mate': 'Make the other part to suit',
  bush: 'Bush it',
  sleeve: 'Sleeve on the shaft',
  shim: 'Shim it',
  'new-part': 'Make a new part',
};

const CAUTIONS: Readonly<Partial<Record<WayOutKind, string>>> = {
  'next-class': 'It runs looser than was meant: see that the joint may have it.',
  bush: 'A bushing gives the size back, not the metal that was round the hole.',
  sleeve: 'A bonded sleeve gives the size back, not the strength; heat lets it go.',
};

const BLANKS: Readonly<Record<CutKind, string>> = {
  outside: 'with an outside of at least',
  length: 'with a length of at least',
  bore: 'with a hole of at most',
  'tap-drill': 'with a hole of at most',
  'recess-depth': 'with a recess no deeper than',
  'slot-depth': 'with a slot no deeper than',
  'slot-width': 'with a slot no wider than',
};

/** A way out of a cut gone past its limit, in the fitter's words. */
export function sayWayOut(way: WayOut, unit: ShownUnit): SaidWay {
  const title = NAMES[way.kind];
  if (way.state === 'out') return { title, what: sayWhyNot(way.why, unit) };
  const isAsMeant = way.kind === 'next-class' && way.stillMet;
  const caution = isAsMeant ? undefined : CAUTIONS[way.kind];
  const strength = sayStrengthOfWay(takesOff(way));
  return {
    title: titleOf(way, title),
    what: whatToDo(way, unit),
    ...(caution !== undefined && { caution }),
    ...(strength !== '' && { strength }),
  };
}

/** A sleeve that goes on the shaft as it is takes nothing off it. */
function takesOff(way: OpenWay): 'hole' | 'pin' | undefined {
  if (way.kind === 'bush') return 'hole';
  return way.kind === 'sleeve' && way.turnTo ? 'pin' : undefined;
}

type OpenWay = Extract<WayOut, { state: 'open' }>;

function titleOf(way: OpenWay, title: string): string {
  if (way.kind === 'next-class')
    return way.stillMet
      ? `Keep it: still ${way.fit.fitClass} with its mate`
      : `Keep it, as ${way.fit.fitClass}`;
  if (way.kind === 'new-mate') return way.make === 'pin' ? 'Make a larger pin' : 'Make a smaller bore for it';
  return title;
}

function whatToDo(way: OpenWay, unit: ShownUnit): string {
  switch (way.kind) {
    case 'measure-again':
      return sayMeasureAgain(way, unit);
    case 'next-class':
      return `${figure(way.clearance, unit)} ${showBand(way.halfWidth, unit)} between them; ${way.fit.fitClass} wants ${sayClearance(way.fit, unit)}: ${sayFitClass(way.fit)}.${way.verdict.kind === 'good' ? '' : ' Too close to call: measure both again.'}`;
    case 'new-mate':
      return `${way.make === 'pin' ? 'Pin' : 'Bore'} ${showBetween(way.limits.lower, way.limits.upper, unit)} ${unit} for ${way.fit.fitClass}${way.limits.sure ? '' : '; no size in it can be proved with these readings'}.`;
    case 'bush':
      return sayBush(way, unit);
    case 'sleeve':
      return `${way.turnTo ? `Turn the shaft to ${show(way.turnTo, unit)}${way.turn ? ` (${showBetween(way.turn.lower, way.turn.upper, unit)})` : ''}. ` : ''}Sleeve: inside ${showBetween(way.inside.lower, way.inside.upper, unit)}, outside ${showBetween(way.outside.lower, way.outside.upper, unit)} ${unit} once it is bonded, wall ${show(way.wall, unit)}.`;
    case 'shim':
      return sayShim(way, unit);
    case 'new-part':
      return `Start from a blank ${BLANKS[way.of]} ${show(way.blank, unit)}, which leaves ${show(way.finish, unit)} for the finishing passes.`;
    default:
      return way satisfies never;
  }
}

function sayMeasureAgain(
  { halfWidth, settler }: Extract<OpenWay, { kind: 'measure-again' }>,
  unit: ShownUnit,
) {
  if (!halfWidth)
    return 'No measuring tool is named: measure it with one that is known before anything is cut.';
  return `The tool knows it only to ${withUnit(showBand(halfWidth, unit), unit)}, so it may be inside yet. ${settler ? saySettler(settler, unit) : 'No tool in Shop can settle it.'}`;
}

function sayBush(way: Extract<OpenWay, { kind: 'bush' }>, unit: ShownUnit): string {
  const left = way.partWall ? `, ${show(way.partWall, unit)} left round it` : '';
  const minds = way.warnings.map((warning) => ` ${sayBushingWarning(warning, unit)}`).join('');
  const assumed = way.metalAssumed
    ? ' The part’s metal is not known: stress, force and heat are not judged. Say it before pressing.'
    : ' Judged for a bushing of bearing bronze.';
  return `Open the bore to ${show(way.openTo, unit)} (${figure(way.takes, unit)} more${left}); bushing outside ${showBetween(way.outside.lower, way.outside.upper, unit)} ${unit} for ${way.pressFit.fitClass}, inside ${showBetween(way.inside.lower, way.inside.upper, unit)} ${unit} for ${way.fit.fitClass}, wall ${show(way.wall, unit)}.${assumed}${minds}`;
}

function sayShim(way: Extract<OpenWay, { kind: 'shim' }>, unit: ShownUnit): string {
  const wants = `${show(way.missing, unit)} is missing: shim ${showBetween(way.lower, way.upper, unit)} ${unit}.`;
  if (way.pick) return `${wants} ${sayFromDrawer(way.pick, unit)}`;
  return way.whyNoPick ? `${wants} ${sayShimRefusal(way.whyNoPick)}` : wants;
}

function sayFromDrawer(pick: ShimPick, unit: ShownUnit): string {
  const together = `${sayPieces(pick, unit)}, together ${show(pick.total, unit)}`;
  if (pick.fits) return `From the drawer: ${together}. ${sayPickUnproved(pick)}`.trimEnd();
  return `Nothing in the drawer fits; nearest ${together}, ${show(absolute(pick.offAim), unit)} ${isNegative(pick.offAim) ? 'too thin' : 'too thick'}.`;
}

function sayWhyNot(why: WayOutReason, unit: ShownUnit): string {
  switch (why.code) {
    case 'proved-past':
      return `It is past by ${show(why.past, unit)} and the tool knows it to ${withUnit(showBand(why.halfWidth, unit), unit)}: measuring again won't bring it back.`;
    case 'mate-not-known':
      return 'The size of the part it runs with is not known. Measure that first.';
    case 'no-class-met':
      return `${show(why.clearance, unit)} between them is in no class of ${why.system === 'iso' ? 'ISO 286' : 'ANSI B4.1'} of this kind.`;
    case 'bushing-warned':
      return why.warnings.map((warning) => sayBushingWarning(warning, unit)).join(' ');
    case 'no-sleeve-on-ring':
      return 'A ring is made new sooner than it is sleeved.';
    case 'core-too-thin':
      return `The shaft would have to be turned to ${sayUnderLeast(why.turnTo, why, unit)}.`;
    default:
      return sayBushingRefusal(why, unit);
  }
}
