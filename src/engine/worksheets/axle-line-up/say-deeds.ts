import { absolute, isNegative, isZero, type Length } from '../../length/length.ts';
import type { Spacer } from './line-up.ts';
import type { Reach } from './line-up-spacer.ts';
import type { Refusal, Result } from '../../length/refusal.ts';
import { say } from '../../length/say.ts';
import {
  withUnit,
  figure,
  show,
  showBand,
  sayFromTo,
  showBetween,
  type ShownUnit,
} from '../../length/show.ts';

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
  return `${verb} ${figure(to, unit)}; good ${sayFromTo(lower, upper, unit)}.`;
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

/** Why a cut or a shim can't be given to its limits. */
export function sayCantProve(halfWidth: Length, unit: ShownUnit): string {
  const band = withUnit(showBand(halfWidth, unit), unit);
  return `These readings know it only to ${band}, more than it may be off.`;
}
