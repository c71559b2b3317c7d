import type { AxleLayout, AxleSide } from './axle-layout.ts';
import { absolute, isNegative, isZero } from '../../length/length.ts';
import type { LineUpAnswer, LineUpRefusal, ReadAgain, Spacer } from './line-up.ts';
import type { LineUpCheck } from './line-up-checks.ts';
import { deedVerdict, unprovedOf } from './line-up-spacer.ts';
import { readName, sizeName, spacerName } from './say-line-up-names.ts';
import { sayCentreRead, sayDisc, saySidePlay } from './say-line-up-read.ts';
import { sayShared, sideOf } from './say-line-up-shared.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import { withUnit, figure, show, showBand, type ShownUnit } from '../../length/show.ts';
import { showAgainst } from '../../length/show-limits.ts';
import type { Verdict } from '../../reading/verdict.ts';
import { capital } from '../../length/say-words.ts';
import { sayDeed, sayCantProve } from './say-deeds.ts';
import { sayNotJudged } from './say-gives.ts';

type Said = { readonly layout: AxleLayout; readonly side: AxleSide; readonly unit: ShownUnit };

/** The worst that can be said of the whole axle. */
export function lineUpVerdict(answer: LineUpAnswer): Verdict['kind'] {
  const { spacers, checks, shared, readAgain } = answer;
  const kinds = [
    ...spacers.flatMap(({ room, deed }) => [
      room.kind,
      ...(isCutByNow(deed, answer) ? [] : [deedVerdict(deed)]),
    ]),
    ...[...checks, ...shared].map(({ verdict }) => verdict.kind),
    ...[...sayNotJudged(answer), ...readAgain].map(() => 'too-close' as const),
  ];
  if (kinds.includes('no-good')) return 'no-good';
  return kinds.includes('too-close') ? 'too-close' : 'good';
}

/** What was left for last was cut once every bracket's side play has been read: that reading stands in for its length. */
function isCutByNow({ kind }: Spacer['deed'], { spacers, checks }: LineUpAnswer): boolean {
  const left = spacers.filter(({ deed }) => deed.kind === 'last').length;
  return kind === 'last' && checks.filter((check) => check.kind === 'side-play').length >= left;
}

/** The whole axle in one sentence, the worst first: `No room: hub to bracket comes out .063 short.` */
export function sayLineUp(answer: LineUpAnswer, said: Said): string {
  const kind = lineUpVerdict(answer);
  if (kind === 'good') return sayGood(answer);
  const [again] = answer.readAgain;
  if (again && kind === 'too-close') return sayReadAgain(again);
  const spacer = answer.spacers.find(({ room }) => room.kind === kind);
  if (spacer) return sayRoom(spacer, said);
  const check = answer.checks.find(({ verdict }) => verdict.kind === kind);
  if (check) return sayCheck(check, said.unit);
  const unproved = answer.spacers.find(({ deed }) => deedVerdict(deed) === kind && deed.kind !== 'last');
  if (unproved) return sayUnproved(unproved, said);
  const shared = answer.shared.find(({ verdict }) => verdict.kind === kind);
  if (shared) return sayCheck(shared, said.unit);
  const [open] = sayNotJudged(answer);
  if (open !== undefined) return open;
  const last = answer.spacers.find(({ deed }) => deed.kind === 'last');
  return last ? sayLast(last, said) : '';
}

/** The sum doesn't stand in for a reading that had shown it to be wrong: `Not finished: side play was read before this: …` */
export function sayReadAgain({ name, why }: ReadAgain): string {
  return `Not finished: ${readName(name)} was read before this: ${why}. Read it again.`;
}

/** A spacer that nothing proves right yet: `Too close to call: left spacer. The one on hand is .005 longer, ±.012.` */
function sayUnproved(spacer: Spacer, said: Said): string {
  const what = spacerName(spacer.name, said);
  const { deed } = spacer;
  if (deed.kind === 'too-short')
    return `${what} comes out ${show(deed.by, said.unit)}; ${show(deed.least, said.unit)} is the least that can be faced.`;
  const lead = deedVerdict(spacer.deed) === 'no-good' ? what : `Too close to call: ${what.toLowerCase()}`;
  const unproved = unprovedOf(deed);
  if (unproved) return `${lead}. ${sayCantProve(unproved, said.unit)}`;
  return `${lead}. ${sayDeed(spacer, said.unit).more}`;
}

/** A part that has no length before the others are there: `Not finished: bracket to leg is cut last, to the others as measured.` */
function sayLast(spacer: Spacer, said: Said): string {
  return `Not finished: ${spacerName(spacer.name, said).toLowerCase()} is cut last, to the others as measured.`;
}

function sayGood({ spacers, checks }: LineUpAnswer): string {
  const lines = checks.filter(({ kind }) => kind === 'line');
  const changes = spacers.filter(({ deed: { kind } }) => !UNCHANGED.has(kind)).length;
  const both = lines.length > 0 ? 'Wheel centre and sprocket line both hold. ' : '';
  if (changes === 0) return `${both}It lines up with the parts on hand.`;
  return `${both}It lines up with ${changes === 1 ? 'one length' : `${changes} lengths`} made right.`;
}

const UNCHANGED: ReadonlySet<Spacer['deed']['kind']> = new Set(['keep', 'none', 'leave-out']);

/** Whether a spacer has any room: `No room: hub to bracket comes out .063 short.` */
export function sayRoom({ name, value, band, room }: Spacer, said: Said): string {
  const { unit } = said;
  const what = spacerName(name, said).toLowerCase();
  const size = withUnit(figure(absolute(value), unit), unit);
  if (room.kind === 'no-good') return `No room: ${what} comes out ${size} short.`;
  if (room.kind === 'good') return `${capital(what)} has room.`;
  const left = isNegative(value) ? `${size} short` : size;
  return `Too close to call: ${what} comes out ${left}, ${withUnit(showBand(band.halfWidth, unit), unit)}.`;
}

/** A check in one sentence. */
export function sayCheck(check: LineUpCheck, unit: ShownUnit): string {
  const { value, band, limits, verdict } = check;
  switch (check.kind) {
    case 'line':
      return sayLine(check, unit);
    case 'pad-wear':
      return sayVerdict(verdict, {
        quantity: `${sideOf(check.name)}float beyond the pads’ wear`,
        unit,
        limits,
        value,
        halfWidth: band.halfWidth,
      });
    case 'disc-in-slot':
      return sayDisc(check, unit);
    case 'side-play':
      return saySidePlay(check, unit);
    case 'wheel-centre':
      return sayCentreRead(check, unit);
    case 'opening':
    case 'float':
    case 'wheel-place':
    case 'slot-middle':
      return sayShared({ ...check, kind: check.kind }, unit);
    default:
      return check.kind satisfies never;
  }
}

function sayLine({ name, value, band, limits, verdict, against }: LineUpCheck, unit: ShownUnit): string {
  const rival = against.join(' and ');
  const shown = showAgainst([absolute(value)], { ...(limits.upper && { upper: limits.upper }) }, unit);
  const off = isZero(value)
    ? 'comes out where it is wanted'
    : `comes out ${withUnit(shown.values[0] ?? '', unit)} too far ${isNegative(value) ? 'left' : 'right'}`;
  const allowed = limits.upper ? `; ${withUnit(shown.upper ?? '', unit)} is allowed` : '';
  if (verdict.kind === 'good') return `Good: the ${name} ${off}${allowed}.`;
  if (verdict.kind === 'no-good') return `The ${name} can’t hold beside the ${rival}. It ${off}${allowed}.`;
  return `Too close to call: the ${name}. It ${off}, ${withUnit(showBand(band.halfWidth, unit), unit)}${allowed}.`;
}

/** Why no line-up can be worked out. */
export function sayLineUpRefusal(refusal: LineUpRefusal): string {
  switch (refusal.code) {
    case 'sizes-missing':
      return `Still without a size: ${refusal.names.map(sizeName).join(', ')}.`;
    case 'lengths-free':
      return `Nothing fixes ${refusal.names.join(', ')}. Give one of them, or one more thing that has to hold.`;
    default:
      return refusal satisfies never;
  }
}
