import type { MeasuredPart } from '../../fit/fit-check.ts';
import { jointClass, type FitSystem } from '../../fit/fits.ts';
import { isJoint } from '../../fit/joint-limits.ts';
import { nominalNear, nominalTyped, preferredNear, preferredNearBore } from '../../fit/nominal.ts';
import { bandOf, mean } from '../../reading/estimate.ts';
import { isZero, type Length } from '../../length/length.ts';
import { OWN_ZONES, systemOfSize } from '../class-fields.ts';
import type { Given, GivenSize } from '../given.ts';
import type { FitFields } from './fields.ts';

export type FitGiven = Given<FitFields>;

export type FitQuestion = {
  /** The size the class is taken at, and where it comes from; as it was given, or the part it was snapped from. */
  readonly nominal: Length;
  readonly nominalFrom: 'given' | 'pin' | 'bore';
  readonly asGiven: Length;
  readonly system: FitSystem;
  readonly fitClass: string;
  readonly bore?: MeasuredPart;
  readonly pin?: MeasuredPart;
  /** The clearance itself, read with an indicator: replaces bore less pin. */
  readonly slop?: MeasuredPart;
};

/** What a fit worksheet asks, once a nominal size and how the joint runs (or its class) are known. */
export function fitQuestion(given: FitGiven): FitQuestion | undefined {
  const nominal = nominalOf(given);
  const system = fitSystem(given);
  const fitClass = fitClassOf(given, system);
  if (!nominal || fitClass === undefined) return undefined;
  const bore = given.size('bore');
  const pin = given.size('pin');
  const slop = given.size('slop');
  return {
    nominal: nominal.size,
    nominalFrom: nominal.from,
    asGiven: nominal.asGiven,
    system,
    fitClass,
    ...(bore && { bore }),
    ...(pin && { pin }),
    ...(slop && { slop }),
  };
}

/** One measured part or a nominal size; the nominal itself where no preferred size lies near; how it runs, or its class. */
export function fitNeeds(given: FitGiven): readonly FitNeed[] {
  const part = measuredPart(given);
  const isFar = part !== undefined && given.size(part) !== undefined && nominalOf(given) === undefined;
  const sizes: readonly FitNeed[] = part === undefined ? ['nominal'] : isFar ? [part, 'nominal'] : [part];
  return hasClass(given) ? sizes : [...sizes, 'joint'];
}

type FitNeed = 'bore' | 'pin' | 'nominal' | 'joint';

/** The part that is asked for; none where only a nominal size was given, whose limits are the answer. */
function measuredPart(given: FitGiven): 'bore' | 'pin' | undefined {
  if (given.has('pin')) return 'pin';
  return given.has('bore') || !given.has('nominal') ? 'bore' : undefined;
}

/** The system chosen, else that of the unit its first size was entered in. */
export function fitSystem(given: FitGiven): FitSystem {
  const names = ['nominal', 'pin', 'bore'] as const;
  return systemOfSize(given, names.find((name) => given.has(name)) ?? 'nominal');
}

type Nominal = Pick<FitQuestion, 'asGiven'> & {
  readonly size: Length;
  readonly from: FitQuestion['nominalFrom'];
};

/** The nominal that was given, else the preferred size nearest the pin, else nearest the bore: never a measured size. */
function nominalOf(given: FitGiven): Nominal | undefined {
  const system = fitSystem(given);
  const asGiven = given.exact('nominal');
  if (asGiven) {
    // A size with a band was measured, and is a pin of its nominal; a typed one has none, and is the nominal itself.
    const size = isMeasured(given.size('nominal')) ? nominalNear(asGiven, system) : nominalTyped(asGiven);
    return { size, asGiven, from: 'given' };
  }
  const pin = given.size('pin');
  const bore = given.size('bore');
  return (
    snapped(pin && mean(pin.tightest), 'pin', (size) => preferredNear(size, system)) ??
    snapped(bore && mean(bore.tightest), 'bore', (size) => preferredNearBore(size, system))
  );
}

function isMeasured(size: GivenSize | undefined): boolean {
  return size !== undefined && !isZero(bandOf(size.tightest).halfWidth);
}

function snapped(
  size: Length | undefined,
  from: 'pin' | 'bore',
  near: (size: Length) => Length | undefined,
): Nominal | undefined {
  const nominal = size && near(size);
  return size && nominal && { size: nominal, asGiven: size, from };
}

function hasClass(given: FitGiven): boolean {
  return given.has(fitSystem(given) === 'ansi' ? 'ansiClass' : 'isoClass');
}

/** The class picked, the pair put together, or the usual one for how the joint runs; none while neither is known. */
function fitClassOf(given: FitGiven, system: FitSystem): string | undefined {
  const joint = given.choice('joint');
  const usual = isJoint(joint) ? jointClass(joint, system) : undefined;
  if (system === 'ansi') return given.choice('ansiClass') ?? usual;
  const picked = given.choice('isoClass');
  return picked === OWN_ZONES ? ownPair(given, usual ?? jointClass('located', 'iso')) : (picked ?? usual);
}

/** Where one of the four isn't picked the usual class stands for it. */
function ownPair(given: FitGiven, usual: string): string {
  const [hole = '', pin = ''] = usual.split('/');
  const zone = (letter: string | undefined, grade: string | undefined, stands: string) =>
    `${letter ?? stands.replace(/\d+$/, '')}${grade ?? stands.replace(/^\D+/, '')}`;
  return `${zone(given.choice('holeLetter'), given.choice('holeGrade'), hole)}/${zone(given.choice('pinLetter'), given.choice('pinGrade'), pin)}`;
}
