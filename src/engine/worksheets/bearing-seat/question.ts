import type { SeatQuestion, SettingWant } from './bearing-seat.ts';
import type { SleeveQuestion } from './inner-sleeve.ts';
import type { RingSeatQuestion } from './ring-seat.ts';
import type { TaperQuestion } from './taper-setting.ts';
import type { Estimate } from '../../reading/estimate.ts';
import { largest, minus, negate, plus, smallest, zero, type Length } from '../../length/length.ts';
import { sizeStep } from '../../length/metal-on.ts';
import { legOf, type Leg } from '../../reading/settle.ts';
import { usualSleeveExcess } from './tables/bearing-practice.ts';
import { isRingLoad } from '../../fit/tables/iso492-rings.ts';
import { middleOf } from '../../reading/verdict.ts';
import { threadNamed } from '../../thread/threads.ts';
import type { Given } from '../given.ts';
import type { BearingFields } from './fields.ts';

type BearingGiven = Given<BearingFields>;

/** What was read in place and set aside as a part was changed since: until it is read again nothing is called by the sum. */
export type ReadAside = {
  readonly name: 'direct' | 'directProud' | 'directBelow';
  readonly why: string;
};

/** What a bearing worksheet asks, by what was chosen. */
export type BearingQuestion =
  | { readonly kind: 'ball'; readonly ask: SleeveQuestion; readonly aside?: ReadAside | undefined }
  | {
      readonly kind: 'taper';
      readonly ask: TaperQuestion;
      /** Of the dial, for lengths. */
      readonly step: Length;
      readonly aside?: undefined;
    }
  | { readonly kind: 'seat'; readonly ask: SeatQuestion; readonly aside?: ReadAside | undefined }
  | { readonly kind: 'ring'; readonly ask: RingSeatQuestion; readonly aside?: undefined };

/** The question a bearing worksheet asks; undefined while something is missing. */
export function bearingQuestion(given: BearingGiven): BearingQuestion | undefined {
  switch (given.choice('bearing')) {
    case 'ball':
      return sleeveQuestion(given);
    case 'taper':
      return taperQuestion(given);
    case 'seat':
      return seatQuestion(given);
    case 'ring':
      return ringQuestion(given);
    default:
      return undefined;
  }
}

/** By how much the sleeve should be longer: the usual, or one's own. */
export function sleeveWant(given: BearingGiven): SettingWant {
  const usual = usualSleeveExcess[given.unit];
  const { lower, upper, aim } = limitsGiven(given);
  if (!lower && !upper) return aim ? { ...usual, aim } : usual;
  const room = minus(usual.limits.upper, usual.limits.lower);
  const limits = {
    lower: lower ?? smallest(usual.limits.lower, upper ?? zero),
    upper: upper ?? largest(usual.limits.upper, plus(lower ?? zero, room)),
    source: 'your own limits',
  };
  return { limits, aim: aim ?? middleOf(limits) };
}

/** The sizes an answer is made of, for asking which tools would settle it. */
export function bearingLegs(question: BearingQuestion): readonly Leg[] {
  switch (question.kind) {
    case 'ball': {
      const { sleeve, between, direct } = question.ask;
      if (direct) return [legOf('depth', direct, 1)];
      return [...(sleeve ? [legOf('length', sleeve, 1)] : []), legOf('length', between, -1)];
    }
    case 'taper':
      return [legOf('gap', question.ask.endPlay, 1)];
    case 'seat':
      if (question.ask.direct) return [legOf('depth', question.ask.direct, 1)];
      return [
        ...question.ask.goesIn.map(({ size, count }) => legOf('length', size, count)),
        legOf('depth', question.ask.depth, -1),
      ];
    case 'ring': {
      const { seat, ring } = question.ask;
      return seat ? [legOf(ring === 'inner' ? 'pin' : 'bore', seat.loosest, 1)] : [];
    }
    default:
      return question satisfies never;
  }
}

/** The limits that were typed, both of them. */
export function ownWant(given: BearingGiven, source: string): SettingWant | undefined {
  const { lower, upper, aim } = limitsGiven(given);
  return lower && upper
    ? { limits: { lower, upper, source }, aim: aim ?? middleOf({ lower, upper }) }
    : undefined;
}

function sleeveQuestion(given: BearingGiven): BearingQuestion | undefined {
  const between = given.size('between');
  const sleeve = given.size('sleeve');
  const direct = given.size('direct');
  if (!between) return undefined;
  const ask = {
    want: sleeveWant(given),
    step: sizeStep('length', given.dialFor('length')),
    // The shortest of several places lets the races come closest together; of the distance the longest does.
    between: between.most,
    ...(sleeve && { sleeve: sleeve.least }),
    ...(direct && { direct: direct.least }),
    longest: {
      between: between.least,
      ...(sleeve && { sleeve: sleeve.most }),
      ...(direct && { direct: direct.most }),
    },
  };
  return { kind: 'ball', ask, aside: asideOf(given, ['direct']) };
}

function taperQuestion(given: BearingGiven): BearingQuestion | undefined {
  const endPlay = given.size('endPlay');
  const want = ownWant(given, 'the maker’s figure, as you typed it');
  const setBy = given.choice('setBy');
  if (!endPlay || !want || (setBy !== 'nut' && setBy !== 'shim-between' && setBy !== 'shim-behind'))
    return undefined;
  const shim = given.size('shim')?.tightest;
  const thread = given.choice('thread');
  const pitch = thread === undefined ? undefined : threadNamed(thread)?.pitch;
  const read = { endPlay: endPlay.least, endPlayMost: endPlay.most };
  return {
    kind: 'taper',
    ask: { ...read, want, setBy, ...(shim && { shim }), ...(pitch && { pitch }) },
    step: sizeStep('length', given.dialFor('length')),
  };
}

function seatQuestion(given: BearingGiven): BearingQuestion | undefined {
  const depth = given.size('depth');
  const width = given.size('width');
  const alsoIn = given.size('alsoIn');
  if (!depth || !width) return undefined;
  const want = ownWant(given, 'your own limits');
  const direct = readProud(given);
  const inIt = (place: 'least' | 'most') =>
    [width, alsoIn].flatMap((known) => (known ? [{ size: known[place], count: 1 }] : []));
  return {
    kind: 'seat',
    ask: {
      // Where the recess is shallowest and what goes in is thickest it stands proudest.
      depth: depth.least,
      goesIn: inIt('most'),
      ...(direct && { direct: direct.most }),
      leastProud: {
        depth: depth.most,
        goesIn: inIt('least'),
        ...(direct && { direct: direct.least }),
      },
      step: sizeStep('recess-depth', given.dialFor('recess-depth')),
      ...(want && { want }),
    },
    aside: direct ? undefined : asideOf(given, ['directProud', 'directBelow']),
  };
}

function ringQuestion(given: BearingGiven): BearingQuestion | undefined {
  const nominal = given.exact('ringNominal');
  const ring = given.choice('ring');
  const load = given.choice('load');
  if (!nominal || (ring !== 'inner' && ring !== 'outer') || !isRingLoad(load)) return undefined;
  const isShaft = ring === 'inner';
  const ask = {
    ring,
    load,
    nominal,
    seat: given.size(isShaft ? 'shaft' : 'housing'),
    own: given.size(isShaft ? 'ringBore' : 'ringOutside'),
    step: sizeStep(isShaft ? 'outside' : 'bore', given.dial),
  } as const;
  return { kind: 'ring', ask };
}

/** How far it stands proud, as read, least and most; what was read below the face is less than none. */
function readProud(given: BearingGiven): { readonly least: Estimate; readonly most: Estimate } | undefined {
  const proud = given.size('directProud');
  const below = given.size('directBelow');
  if (proud) return proud;
  const under = (read: Estimate): Estimate => ({ ...read, sum: negate(read.sum) });
  return below && { least: under(below.most), most: under(below.least) };
}

function asideOf(given: BearingGiven, names: readonly ReadAside['name'][]): ReadAside | undefined {
  return names.flatMap((name) => {
    const before = given.readBefore(name);
    return before ? [{ name, why: before.why }] : [];
  })[0];
}

function limitsGiven(given: BearingGiven) {
  return { lower: given.exact('lower'), upper: given.exact('upper'), aim: given.exact('aim') };
}
