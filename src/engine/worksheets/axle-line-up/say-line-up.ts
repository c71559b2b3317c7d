import type { AxleLayout, AxleSide } from './axle-layout.ts';
import type { Share } from './chain.ts';
import { absolute, isNegative, isZero, type Length } from '../../length/length.ts';
import type { LineUpAnswer, LineUpRefusal, Spacer } from './line-up.ts';
import type { LineUpCheck } from './line-up-checks.ts';
import type { Give } from './line-up-gives.ts';
import { deedVerdict, type Reach } from './line-up-spacer.ts';
import type { Refusal, Result } from '../../length/refusal.ts';
import { say } from '../../length/say.ts';
import { parted, sizeName, sizeOrder, spacerName } from './say-line-up-names.ts';
import { sayCentreRead, sayDisc, saySidePlay } from './say-line-up-read.ts';
import { sayShared, sideOf } from './say-line-up-shared.ts';
import { SOMETHING_WEAKER, sayWeaker } from '../../cut/say-strength.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import { withUnit, figure, show, showBand, showBetween, type ShownUnit } from '../../length/show.ts';
import { showAgainst } from '../../length/show-limits.ts';
import type { Verdict } from '../../reading/verdict.ts';
import { capital, listed } from '../../length/say-words.ts';

type Said = { readonly layout: AxleLayout; readonly side: AxleSide; readonly unit: ShownUnit };

/** The worst that can be said of the whole axle. */
export function lineUpVerdict(answer: LineUpAnswer): Verdict['kind'] {
  const { spacers, checks, shared, openDiscs } = answer;
  const kinds = [
    ...spacers.flatMap(({ room, deed }) => [
      room.kind,
      ...(isCutByNow(deed, answer) ? [] : [deedVerdict(deed)]),
    ]),
    ...[...checks, ...shared].map(({ verdict }) => verdict.kind),
    ...openDiscs.map(() => 'too-close' as const),
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

export type SaidDeed = {
  /** What to do, in a word and a figure: `trim .035`. */
  readonly act: string;
  readonly more: string;
};

/** What to do for a spacer; one that stands on readings that contradict each other asks for that first. */
export function sayDeed(spacer: Spacer, unit: ShownUnit): SaidDeed {
  const said = sayPlainDeed(spacer, unit);
  return spacer.band.doubt ? { ...said, more: `Which of the two readings stands? ${said.more}` } : said;
}

function sayPlainDeed({ deed, value }: Spacer, unit: ShownUnit): SaidDeed {
  const size = (length: Length) => withUnit(figure(absolute(length), unit), unit);
  switch (deed.kind) {
    case 'no-room':
      return { act: `${size(deed.by)} short`, more: 'Something has to give.' };
    case 'none':
      return { act: 'no part', more: 'It comes out at nothing: the faces meet.' };
    case 'leave-out':
      return {
        act: 'leave it out',
        more: `It comes out ${show(deed.by, unit)}, too thin to face. See that the faces beside it don’t rub.`,
      };
    case 'too-short':
      return {
        act: 'too short',
        more: `Something has to give, or a washer of ${show(deed.by, unit)} goes in: enter it as on hand.`,
      };
    case 'make':
      return { act: 'make', more: sayReach('Face it to', deed.make, unit) };
    case 'keep':
      return { act: 'keep', more: `The one on hand is ${sayOff(deed.off, deed.halfWidth, unit)}.` };
    case 'trim':
      return deed.cut.ok
        ? { act: `trim ${size(deed.cut.value.take)}`, more: sayReach('Face it to', deed.cut, unit) }
        : { act: `${size(deed.off)} long`, more: sayCutRefusal(deed.cut.refusal, unit) };
    case 'shim':
      return {
        act: `shim ${size(deed.off)}`,
        more: `${sayShim(deed.shim, unit)}${sayNew(deed.make, value, unit)}`,
      };
    case 'last':
      return {
        act: 'cut last',
        more: 'The limits are too fine to share. Enter the others as measured: it is cut to them.',
      };
    case 'too-close':
      return {
        act: 'too close to call',
        more: `The one on hand is ${sayOff(deed.off, deed.halfWidth, unit)}.`,
      };
    default:
      return deed satisfies never;
  }
}

function sayNew(make: Result<Reach>, value: Length, unit: ShownUnit): string {
  if (!make.ok && make.refusal.code === 'below-least-length') return '';
  return ` Or make it new: ${withUnit(figure(make.ok ? make.value.to : value, unit), unit)}.`;
}

function sayReach(verb: string, reach: Result<Reach>, unit: ShownUnit): string {
  if (!reach.ok) return sayCutRefusal(reach.refusal, unit);
  const { to, lower, upper, unproved } = reach.value;
  if (unproved) return `${verb} ${withUnit(figure(to, unit), unit)}. ${sayCantProve(unproved, unit)}`;
  return `${verb} ${figure(to, unit)}; good from ${withUnit(showBetween(lower, upper, unit), unit)}.`;
}

function sayShim(shim: Result<Reach>, unit: ShownUnit): string {
  if (!shim.ok) return sayCutRefusal(shim.refusal, unit);
  const { to, lower, upper, unproved } = shim.value;
  if (unproved) return `Shims of ${withUnit(figure(to, unit), unit)}. ${sayCantProve(unproved, unit)}`;
  return `Shims of ${withUnit(showBetween(lower, upper, unit), unit)} do.`;
}

function sayOff(off: Length, halfWidth: Length, unit: ShownUnit): string {
  const band = isZero(halfWidth) ? '' : `, ${withUnit(showBand(halfWidth, unit), unit)}`;
  if (isZero(off)) return `just right${band}`;
  const by = withUnit(figure(absolute(off), unit), unit);
  return `${by} ${isNegative(off) ? 'shorter' : 'longer'}${band}`;
}

function sayCutRefusal(refusal: Refusal, unit: ShownUnit): string {
  return say(refusal, unit);
}

/** The band that leaves nothing of the limits of what is to be cut. */
function unprovedOf(deed: Spacer['deed']): Length | undefined {
  const reach =
    deed.kind === 'make'
      ? deed.make
      : deed.kind === 'trim'
        ? deed.cut
        : deed.kind === 'shim'
          ? deed.shim
          : undefined;
  return reach?.ok === true ? reach.value.unproved : undefined;
}

function sayCantProve(halfWidth: Length, unit: ShownUnit): string {
  const band = withUnit(showBand(halfWidth, unit), unit);
  return `The readings know this length only to ${band}, more than it may be off. Use a finer tool, or allow more.`;
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
  const allowed = limits.upper ? `${withUnit(shown.upper ?? '', unit)} is allowed` : '';
  if (verdict.kind === 'good') return `Good: the ${name} ${off}; ${allowed}.`;
  if (verdict.kind === 'no-good')
    return `The ${name} can’t hold beside the ${rival}: it ${off}, and ${allowed}.`;
  return `Too close to call: the ${name} ${off}, ${withUnit(showBand(band.halfWidth, unit), unit)}, and ${allowed}.`;
}

/** What one size would have to do: `Space the disc out by .063, to .375.` */
export function sayGive({ of, by, to }: Give, unit: ShownUnit): string {
  const grows = !isNegative(by);
  const amount = withUnit(figure(absolute(by), unit), unit);
  const goal = withUnit(figure(to, unit), unit);
  const part = sizeName(of);
  switch (parted(of).plain) {
    case 'disc':
    case 'sprocket':
      return `${grows ? 'Space' : 'Set'} the ${part} ${grows ? 'out' : 'in'} by ${amount}, to ${goal}.`;
    case 'slot':
      return `Move the ${part} ${grows ? 'outward' : 'inward'} on its bracket by ${amount}, to ${goal}.`;
    case 'bracket':
      return `Thin the ${part} by ${amount}, to ${goal}. ${sayWeaker(part)}`;
    case 'float':
      return `Give the ${part === 'float' ? 'bracket' : part.replace('float', 'bracket')} ${amount} less float: ${goal}.`;
    case 'offset':
      return `Let the wheel sit ${amount} further ${grows ? 'right' : 'left'} than you asked.`;
    case 'hub':
      return `Take a hub ${amount} narrower over its faces: ${goal}.`;
    case 'plate':
      return `Bring the ${part} in by ${amount}, to ${goal}.`;
    case 'chainLine':
      return `Move the ${part} ${grows ? 'outward' : 'inward'} by ${amount}, to ${goal} from the middle.`;
    case 'wheelPlace':
      return `Let the wheel sit ${amount} further ${grows ? 'out' : 'in'}: its face at ${goal}.`;
    case 'seat':
      return `Set the nut ${amount} further out, ${goal} from the shoulder.`;
    default:
      return `Change ${part} by ${figure(by, unit)}, to ${goal}.`;
  }
}

/** What isn't judged for want of a size: a disc whose slot isn't known may rub, however well all else lines up. */
export function sayNotJudged({ openDiscs }: Pick<LineUpAnswer, 'openDiscs'>): readonly string[] {
  return openDiscs.map(({ disc, missing, face }) => {
    const lead = `Not finished: the ${disc.name.replace(' in slot', '')} may rub.`;
    if (face) return `${lead} Read the gap at its ${face === 'inside' ? 'inner' : 'outer'} face too.`;
    const wanted = missing.map((name) => (name === disc.slotWidth ? 'its slot’s width' : 'its thickness'));
    return `${lead} Give ${listed(wanted)}.`;
  });
}

/** Said beside ways that may take metal off a part: a disc or a sprocket that comes in, a slot that moves, a narrower hub. */
export function sayGivesStrength(gives: readonly Give[]): string {
  const mayTakeMetal = ({ of, by }: Give) => {
    const { plain } = parted(of);
    if (plain === 'disc' || plain === 'sprocket') return isNegative(by);
    return plain === 'slot' || plain === 'plate' || plain === 'hub';
  };
  return gives.some(mayTakeMetal) ? SOMETHING_WEAKER : '';
}

/** Where nothing alone is enough. */
export const NOTHING_GIVES =
  'No single size can give enough alone. Change two of them together, the wheel’s place among them.';

/** A sum of shares as a fitter writes it, what is added before what is taken off: `½ · between the legs − wheel centre`. */
export function sayShares(terms: readonly Share[], write: (name: string) => string = sizeName): string {
  const added = terms.filter(({ top }) => top > 0);
  const takenOff = terms.filter(({ top }) => top < 0);
  return [...added.toSorted(bySize), ...takenOff.toSorted(bySize)]
    .map(({ of, top, bottom }, index) => {
      const sign = top < 0 ? '−' : '+';
      const lead = index === 0 ? (top < 0 ? '−' : '') : ` ${sign} `;
      return `${lead}${times(Math.abs(top), bottom)}${write(of)}`;
    })
    .join('');
}

function bySize(a: Share, b: Share): number {
  return sizeOrder(a.of) - sizeOrder(b.of);
}

function times(top: number, bottom: number): string {
  if (bottom === 1) return top === 1 ? '' : `${top} · `;
  return top === 1 && bottom === 2 ? '½ · ' : `${top}/${bottom} · `;
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
