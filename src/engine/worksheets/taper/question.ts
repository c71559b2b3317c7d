import { lengthOf, toText, type Length } from '../../length/length.ts';
import type { ShownUnit } from '../../length/show.ts';
import type { Fields, NamesOf } from '../fields.ts';
import type { Given } from '../given.ts';
import { OWN_LIMITS } from '../own-limits.ts';
import type { TaperKnown } from './cone.ts';
import { taperFields, type TaperFields } from './fields.ts';
import type { BlocksOnHand } from './sine-bar.ts';
import { blockSets, without, type BlockSetName } from './tables/gauge-block-sets.ts';
import { standardTaper } from './tables/standard-tapers.ts';
import type { TaperQuestion } from './taper.ts';

export type TaperGiven = Given<TaperFields>;
type Name = keyof TaperFields;
type By = 'diameters' | 'named' | 'per-foot' | 'one-in' | 'angle' | 'rollers' | 'balls';

/** What it takes, by what is known of the taper. */
const WHAT = {
  diameters: ['large', 'small'],
  named: ['named', 'large'],
  'per-foot': ['perFoot', 'large'],
  'one-in': ['oneIn', 'large'],
  angle: ['angle', 'large'],
  rollers: ['roller', 'block', 'overLow', 'overHigh'],
  balls: ['ballLarge', 'ballSmall', 'toLarge', 'toSmall'],
} as const satisfies Record<By, readonly Name[]>;

const ofAnyWay = new Set<string>(Object.values(WHAT).flat());
/** Rollers go over a taper, balls into one: nothing else has to say which it is. */
const SIDED: readonly By[] = ['rollers', 'balls'];

export function knownBy(given: Pick<TaperGiven, 'choice'>): By {
  const by = given.choice('by');
  return Object.keys(WHAT).find((one): one is By => one === by) ?? 'diameters';
}

export function taperNeeds(given: TaperGiven): readonly Name[] {
  return ['by', ...WHAT[knownBy(given)], 'length'];
}

/** What is listed: what goes with how the taper is known, and what a stack of blocks can lack. */
export function taperFieldsFor(given: TaperGiven): Fields {
  const by = knownBy(given);
  const here: readonly string[] = WHAT[by];
  return Object.fromEntries(
    Object.entries(taperFields).filter(([name]) => {
      if (ofAnyWay.has(name)) return here.includes(name);
      if (name === 'side') return !SIDED.includes(by);
      if (name === 'mateWithin') return given.has('mate');
      return !name.startsWith('lacks') || given.choice('blocks') !== 'drawer';
    }),
  );
}

/** Common practice, no source: a size that is gone by, and a self-holding taper's whole length. */
export const USUAL_WITHIN: Readonly<Record<ShownUnit, Length>> = {
  in: lengthOf('.001 in'),
  mm: lengthOf('0.02 mm'),
};
export const USUAL_MATE_WITHIN: Readonly<Record<ShownUnit, Length>> = {
  in: lengthOf('.0005 in'),
  mm: lengthOf('0.010 mm'),
};
export const USUAL_SINE_BAR: Readonly<Record<ShownUnit, Length>> = {
  in: lengthOf('5 in'),
  mm: lengthOf('100 mm'),
};
/** An indicator reads over so much travel of the compound, and the set-over stands for so much work. */
const TRAVEL: Readonly<Record<ShownUnit, Length>> = { in: lengthOf('1 in'), mm: lengthOf('10 mm') };

const PRACTICE = 'common practice, no source';

/** The question of a taper, once what is known of it and its length are given. */
export function taperQuestion(given: TaperGiven): TaperQuestion | undefined {
  const known = knownOf(given);
  const length = given.size('length')?.loosest;
  if (!known || !length) return undefined;
  const by = knownBy(given);
  const within = given.exact('within');
  const mateWithin = given.exact('mateWithin');
  return {
    known,
    length,
    side: by === 'balls' || (by !== 'rollers' && given.choice('side') === 'bore') ? 'bore' : 'outside',
    at: given.exact('at'),
    blank: given.size('blank')?.tightest,
    within: within ?? USUAL_WITHIN[given.unit],
    withinFrom: within ? OWN_LIMITS : PRACTICE,
    mate: standardTaper(given.choice('mate')),
    mateWithin: mateWithin ?? USUAL_MATE_WITHIN[given.unit],
    mateWithinFrom: mateWithin ? OWN_LIMITS : PRACTICE,
    between: given.exact('between'),
    sineBar: given.exact('sineBar') ?? USUAL_SINE_BAR[given.unit],
    onHand: blocksOnHand(given),
    travel: TRAVEL[given.unit],
  };
}

function knownOf(given: TaperGiven): TaperKnown | undefined {
  const size = (name: NamesOf<TaperFields, 'size'>) => given.size(name)?.tightest;
  const by = knownBy(given);
  if (by === 'rollers') {
    const [roller, block, low, high] = [size('roller'), size('block'), size('overLow'), size('overHigh')];
    return roller && block && low && high && { by, roller, block, low, high };
  }
  if (by === 'balls') {
    const [large, small] = [size('ballLarge'), size('ballSmall')];
    const [toLarge, toSmall] = [size('toLarge'), size('toSmall')];
    return large && small && toLarge && toSmall && { by, large, small, toLarge, toSmall };
  }
  const large = size('large');
  if (!large) return undefined;
  if (by === 'diameters') {
    const small = size('small');
    return small && { by, large, small };
  }
  if (by === 'angle') {
    const includedDegrees = given.number('angle');
    return includedDegrees === undefined ? undefined : { by, large, includedDegrees };
  }
  const slope = slopeOf(given, by);
  return slope && { by: 'slope', large, slope };
}

function slopeOf(given: TaperGiven, by: 'named' | 'per-foot' | 'one-in') {
  if (by === 'named') return standardTaper(given.choice('named'))?.slope;
  if (by === 'per-foot') {
    const rise = given.exact('perFoot');
    return rise && { rise, over: lengthOf('12 in') };
  }
  const text = given.choice('oneIn')?.replace('+', '');
  return text === undefined ? undefined : { rise: lengthOf('1 mm'), over: lengthOf(`${text} mm`) };
}

export function setChosen(given: Pick<TaperGiven, 'choice' | 'unit'>): BlockSetName | 'drawer' {
  const chosen = given.choice('blocks');
  if (chosen === 'drawer' || chosen === 'inch-81' || chosen === 'metric-88' || chosen === 'metric-47')
    return chosen;
  return given.unit === 'in' ? 'inch-81' : 'metric-88';
}

function blocksOnHand(given: TaperGiven): BlocksOnHand {
  const chosen = setChosen(given);
  if (chosen === 'drawer')
    return {
      blocks: given.drawer.flatMap(({ kind, thickness, count }) =>
        kind === 'gauge-block' && thickness ? Array.from({ length: count }, () => thickness) : [],
      ),
      finest: given.unit === 'in' ? lengthOf('.0001 in') : lengthOf('0.001 mm'),
    };
  const { blocks, finest } = blockSets[chosen];
  const lacking = (['lacksOne', 'lacksTwo', 'lacksThree'] as const).flatMap(
    (name) => given.exact(name) ?? [],
  );
  return { blocks: without(blocks, lacking), finest };
}

/** A taper that is known by its name is at its gauge line as large as the standard says. */
export function besidesOf(field: string, value: string | undefined) {
  if (field !== 'named') return {};
  const gauge = standardTaper(value)?.gauge;
  return gauge ? { sizes: { large: `${toText(gauge)} mm` } } : {};
}
