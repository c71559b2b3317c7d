import { lengthOf, negate, type Length } from '../../length/length.ts';
import { threadNamed } from '../../thread/threads.ts';
import type { Fields, NamesOf } from '../fields.ts';
import type { Given } from '../given.ts';
import { OWN_LIMITS } from '../own-limits.ts';
import { alignmentFields, type AlignmentFields } from './fields.ts';
import type { AlignmentQuestion, OutfitQuestion, TrailerQuestion } from './alignment.ts';
import type { LeanAsked } from './lean.ts';
import type { AxleAsked } from './square-axle.ts';
import {
  PRACTICE,
  usualDiagonal,
  usualLead,
  usualLeanDegrees,
  USUAL_LEAN_WITHIN_DEGREES,
  usualToe,
  usualTrailerToe,
} from './tables/alignment-practice.ts';
import type { Band } from './toe.ts';

export type AlignmentGiven = Given<AlignmentFields>;
type Name = keyof AlignmentFields;
type SizeName = NamesOf<AlignmentFields, 'size'>;

const TOE = ['toeFront', 'toeRear', 'apart'] as const satisfies readonly Name[];
const NEEDS = {
  outfit: [...TOE, 'fittings'],
  trailer: ['left', 'right', 'track'],
} as const satisfies Record<string, readonly Name[]>;

const BESIDE: Readonly<Record<'outfit' | 'trailer', readonly Name[]>> = {
  outfit: [
    ...(['moves', 'adjuster', 'thread', 'toeLeast', 'toeMost', 'lead', 'leadLeast', 'leadMost'] as const),
    ...(['lean', 'leanWithin', 'leanLeast', 'leanMost', 'strutUp', 'strutAcross'] as const),
    ...(['wheelTrack', 'trackWanted'] as const),
  ],
  trailer: [
    ...(['seats', 'diagonalWithin', 'sideLeft', 'sideRight', 'axlesLeft', 'axlesRight'] as const),
    ...([...TOE, 'toeLeast', 'toeMost', 'flange'] as const),
  ],
};

export function linedUp(given: Pick<AlignmentGiven, 'choice'>): 'outfit' | 'trailer' {
  return given.choice('of') === 'trailer' ? 'trailer' : 'outfit';
}

export function alignmentNeeds(given: AlignmentGiven): readonly Name[] {
  return ['of', ...NEEDS[linedUp(given)]];
}

/** What is listed: what goes with an outfit or with a trailer. */
export function alignmentFieldsFor(given: AlignmentGiven): Fields {
  const of = linedUp(given);
  const here: readonly string[] = ['of', ...NEEDS[of], ...BESIDE[of]];
  return Object.fromEntries(Object.entries(alignmentFields).filter(([name]) => here.includes(name)));
}

/** The question of an alignment, once what it needs is given. */
export function alignmentQuestion(given: AlignmentGiven): AlignmentQuestion | undefined {
  return linedUp(given) === 'trailer' ? trailerQuestion(given) : outfitQuestion(given);
}

function outfitQuestion(given: AlignmentGiven): OutfitQuestion | undefined {
  const size = (name: SizeName) => given.size(name)?.tightest;
  const toe = toeAsked(given, usualToe[given.unit]);
  const fittings = size('fittings');
  if (!toe || !fittings) return undefined;
  const [lead, wheelTrack] = [size('lead'), size('wheelTrack')];
  const thread = given.choice('thread');
  return {
    of: 'outfit',
    toe,
    fittings,
    moves: given.choice('moves') === 'rear' ? 'rear' : 'front',
    adjuster: adjusterOf(given.choice('adjuster')),
    pitch: thread === undefined ? undefined : threadNamed(thread)?.pitch,
    ...(lead && {
      lead: {
        now: lead,
        want: bandFor(usualLead[given.unit], given.exact('leadLeast'), given.exact('leadMost')),
      },
    }),
    lean: leanAsked(given),
    ...(wheelTrack && { track: { now: wheelTrack, wanted: given.exact('trackWanted') } }),
  };
}

function adjusterOf(value: string | undefined): OutfitQuestion['adjuster'] {
  return value === 'screw' || value === 'turnbuckle' ? value : 'shim';
}

function leanAsked(given: AlignmentGiven): LeanAsked | undefined {
  const degrees = given.number('lean');
  if (degrees === undefined) return undefined;
  const [least, most] = [given.number('leanLeast'), given.number('leanMost')];
  const own = least !== undefined || most !== undefined;
  const [up, across] = [given.size('strutUp')?.tightest, given.size('strutAcross')?.tightest];
  return {
    degrees,
    withinDegrees: given.number('leanWithin') ?? USUAL_LEAN_WITHIN_DEGREES,
    want: {
      lower: least ?? usualLeanDegrees.lower,
      upper: most ?? usualLeanDegrees.upper,
      source: own ? OWN_LIMITS : PRACTICE,
    },
    ...(up && across && { strut: { up, across } }),
  };
}

function trailerQuestion(given: AlignmentGiven): TrailerQuestion | undefined {
  const size = (name: SizeName) => given.size(name)?.tightest;
  const [left, right, track] = [size('left'), size('right'), size('track')];
  if (!left || !right || !track) return undefined;
  const [sideLeft, sideRight] = [size('sideLeft'), size('sideRight')];
  const [axlesLeft, axlesRight] = [size('axlesLeft'), size('axlesRight')];
  const own = given.exact('diagonalWithin');
  const toe = toeAsked(given, usualTrailerToe[given.unit]);
  const axle: AxleAsked = {
    left,
    right,
    track,
    seats: size('seats'),
    ...(sideLeft && sideRight && { sides: { left: sideLeft, right: sideRight } }),
    within: own ?? usualDiagonal[given.unit],
    withinFrom: own ? OWN_LIMITS : PRACTICE,
  };
  return {
    of: 'trailer',
    axle,
    ...(toe && { toe: { ...toe, flange: size('flange') } }),
    ...(axlesLeft && axlesRight && { second: { left: axlesLeft, right: axlesRight } }),
  };
}

function toeAsked(given: AlignmentGiven, usual: { readonly lower: Length; readonly upper: Length }) {
  const size = (name: SizeName) => given.size(name)?.tightest;
  const [front, rear, apart] = [size('toeFront'), size('toeRear'), size('apart')];
  if (!front || !rear || !apart) return undefined;
  return {
    front,
    rear,
    apart,
    want: bandFor(usual, given.exact('toeLeast'), given.exact('toeMost')),
  };
}

/** One's own limits; where one of them is left out, the usual one. */
function bandFor(
  usual: { readonly lower: Length; readonly upper: Length },
  lower: Length | undefined,
  upper: Length | undefined,
): Band {
  return {
    lower: lower ?? usual.lower,
    upper: upper ?? usual.upper,
    source: lower || upper ? OWN_LIMITS : PRACTICE,
  };
}

/** Before the first reading: what a size has to be proved to. */
export function alignmentWanted(given: AlignmentGiven, field: string | undefined) {
  const of = linedUp(given);
  const leg = (name: SizeName, coefficient: number) => {
    const known = given.exact(name);
    return { kind: 'length' as const, size: known ?? SOME_SIZE, coefficient };
  };
  if (field === 'toeFront' || field === 'toeRear') {
    const usual = (of === 'outfit' ? usualToe : usualTrailerToe)[given.unit];
    return {
      limits: bandFor(usual, given.exact('toeLeast'), given.exact('toeMost')),
      legs: [leg('toeRear', 1), leg('toeFront', -1)],
    };
  }
  if (field === 'left' || field === 'right') {
    const within = given.exact('diagonalWithin') ?? usualDiagonal[given.unit];
    return {
      limits: { lower: negate(within), upper: within, source: PRACTICE },
      legs: [leg('left', 1), leg('right', -1)],
    };
  }
  return undefined;
}

// Stands in for a size nothing is known of yet; it only decides which tools' range is asked for.
const SOME_SIZE = lengthOf('48 in');
