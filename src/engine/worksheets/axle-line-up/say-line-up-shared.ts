import { absolute, isNegative, isZero, type Length } from '../../length/length.ts';
import type { LineUpCheck } from './line-up-checks.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import { withUnit, figure, showBand, signedFigure, type ShownUnit } from '../../length/show.ts';
import { showAgainst } from '../../length/show-limits.ts';
import { capital } from '../../length/say-words.ts';

/** What the limits of several parts share. */
export type SharedKind = 'opening' | 'float' | 'wheel-place' | 'slot-middle';

type Shared = LineUpCheck & { readonly kind: SharedKind };

export function isShared(check: LineUpCheck): check is Shared {
  switch (check.kind) {
    case 'opening':
    case 'float':
    case 'wheel-place':
    case 'slot-middle':
      return true;
    case 'line':
    case 'pad-wear':
    case 'disc-in-slot':
    case 'side-play':
    case 'wheel-centre':
      return false;
    default:
      return check.kind satisfies never;
  }
}

/** `left ` or `right ` where an axle has two discs. */
export function sideOf(name: string): string {
  return /^(?:left|right) /.exec(name)?.[0] ?? '';
}

/** Whether all parts together keep a condition: `No good: the parts come out .009 longer than their room, .005 is allowed.` */
export function sayShared(check: Shared, unit: ShownUnit): string {
  const { value, band, limits, verdict } = check;
  if (check.kind === 'float') {
    const quantity = `${sideOf(check.name)}float`.trim();
    return sayVerdict(verdict, { quantity, unit, limits, value, halfWidth: band.halfWidth });
  }
  const shown = showAgainst([absolute(value)], { ...(limits.upper && { upper: limits.upper }) }, unit);
  const size = withUnit(shown.values[0] ?? '', unit);
  const off = isZero(value) ? JUST_RIGHT[check.kind] : `${size} ${offWords(check, value)}`;
  const is = `the ${subjectOf(check)} ${isZero(value) ? off : `${COMES_OUT[check.kind]} ${off}`}`;
  const allowed = `${withUnit(shown.upper ?? '', unit)} is allowed`;
  if (verdict.kind === 'good') return `Good: ${is}; ${allowed}.`;
  if (verdict.kind === 'no-good') return `${capital(is)}; ${allowed}.`;
  return `Too close to call. ${capital(is)}, ${withUnit(showBand(band.halfWidth, unit), unit)}; ${allowed}.`;
}

type Plain = Exclude<SharedKind, 'float'>;

const JUST_RIGHT: Readonly<Record<Plain, string>> = {
  opening: 'just fill their room',
  'wheel-place': 'comes out where it is wanted',
  'slot-middle': 'lies in the middle of its slot',
};

const COMES_OUT: Readonly<Record<Plain, string>> = {
  opening: 'come out',
  'wheel-place': 'comes out',
  'slot-middle': 'lies',
};

function subjectOf({ kind, name }: Shared): string {
  if (kind === 'opening') return 'parts';
  return kind === 'slot-middle' ? name.replace(' in slot', '') : name;
}

function offWords({ kind }: Shared, value: Length): string {
  if (kind === 'opening') return isNegative(value) ? 'longer than their room' : 'shorter than their room';
  if (kind === 'wheel-place') return `too far ${isNegative(value) ? 'left' : 'right'}`;
  return 'off its slot’s middle';
}

/**
 * What a condition comes out between when all that is allowed is off the worst way at once: `Float`, `.0052 to .0148`, `want
 * .0050 to .0150`.
 */
export function sayWorst(
  check: Shared,
  unit: ShownUnit,
): { readonly what: string; readonly figure: string; readonly more?: string | undefined } | undefined {
  const { least, most, limits } = check;
  const name = WORST_NAMES[check.kind] ?? check.name;
  const side = check.kind === 'float' || check.kind === 'slot-middle' ? sideOf(check.name) : '';
  if (!least || !most) return undefined;
  const size = (length: Length) =>
    check.kind === 'float' ? figure(length, unit) : signedFigure(length, unit);
  const between = (a: Length, b: Length) => `${size(a)} to ${withUnit(size(b), unit)}`;
  return {
    what: capital(`${side}${name}`),
    figure: between(least, most),
    ...(limits.lower && limits.upper && { more: `want ${between(limits.lower, limits.upper)}` }),
  };
}

const WORST_NAMES: Readonly<Record<SharedKind, string | undefined>> = {
  opening: 'room left by the parts',
  float: 'float',
  'slot-middle': 'slot off the disc',
  'wheel-place': undefined,
};
