import { lengthOf, roundToStep } from '../../length/length.ts';
import { figure, withUnit, type ShownUnit } from '../../length/show.ts';
import { capital, listed } from '../../length/say-words.ts';
import type { AskBlock } from '../account.ts';
import type { HoleAndPinFields } from './fields.ts';
import type { HoleAndPinAnswer } from './hole-and-pin.ts';
import type { Route, RouteReason } from './hole-and-pin-routes.ts';

type Asked = {
  readonly field: keyof HoleAndPinFields;
  /** What is said before the figures. */
  readonly sentence: string;
  readonly key: string;
  /** As it is named in a row of them. */
  readonly short: string;
};

/** What a way waits for, in the order to ask it: the wall first, as most ways hang on it. */
export function asksOf({ state, why }: Route): readonly Asked[] {
  if (state !== 'ask') return [];
  const asked = why.flatMap((reason) => askedBy(reason) ?? []);
  return asked.toSorted((a, b) => Number(b.field === 'wall') - Number(a.field === 'wall'));
}

/**
 * The one thing to give first: what the best way hangs on, or a closer measurement where nobody can call it yet. Nothing where
 * the best way can be gone as it is.
 */
export function askFirst(
  { verdict, direct }: Pick<HoleAndPinAnswer, 'verdict' | 'direct'>,
  ranked: readonly Route[],
  unit: ShownUnit,
): AskBlock | undefined {
  if (verdict.kind === 'too-close') {
    const field = direct === undefined ? 'bore' : ({ slop: 'slop', rock: 'rockInAll' } as const)[direct];
    return { is: 'ask', field, sentence: 'measure closer before you cut.', key: 'Measure closer' };
  }
  const [best] = ranked;
  const [first] = best ? asksOf(best) : [];
  if (!first) return undefined;
  const { field, sentence, key } = first;
  const needed = field === 'wall' ? wallsNeeded(ranked, unit) : '';
  return { is: 'ask', field, key, sentence: needed === '' ? sentence : `${sentence} ${needed}` };
}

// Least walls are shown to the thou or the tenth of a millimetre, never less than they are.
const WALL_STEP = { in: lengthOf('.001 in'), mm: lengthOf('0.1 mm') } as const;

/** `1 needs .219, 3 needs .282 left.` */
function wallsNeeded(ranked: readonly Route[], unit: ShownUnit): string {
  const needs = ranked.flatMap(({ why }, index) =>
    why.flatMap((reason) =>
      reason.code === 'ask-wall'
        ? [
            `${index + 1} needs ${withUnit(figure(roundToStep(reason.least, WALL_STEP[unit], 'up'), unit), unit)}`,
          ]
        : [],
    ),
  );
  return needs.length === 0 ? '' : `${needs.join(', ')} left.`;
}

/** What else a way waits for, beside what the page asks first. */
export function sayStillAsked(route: Route, asked: AskBlock | undefined): string {
  const rest = asksOf(route).filter(({ field }) => field !== asked?.field);
  return rest.length === 0 ? '' : `${capital(listed(rest.map(({ short }) => short)))} still to say.`;
}

/** What each reason waits for; the others wait for nothing. */
const ASKED: Partial<Readonly<Record<RouteReason['code'], Asked>>> = {
  'ask-wall': {
    field: 'wall',
    sentence: 'how much wall at the thinnest side?',
    key: 'Give the wall',
    short: 'wall',
  },
  'ask-shank-passes': {
    field: 'shankPasses',
    sentence: 'must the bolt’s plain shank pass this hole?',
    key: 'Say if it passes',
    short: 'shank',
  },
  'ask-clamped-faces': {
    field: 'facesCarry',
    sentence: 'which faces does the nut clamp?',
    key: 'Name the faces',
    short: 'faces',
  },
  'ask-metal': {
    field: 'partMetal',
    sentence: 'what is the part made of?',
    key: 'Name the metal',
    short: 'metal',
  },
  'ask-press-metals': {
    field: 'partMetal',
    sentence: 'what is the part made of?',
    key: 'Name the metal',
    short: 'metals',
  },
  'ask-case-hardened': {
    field: 'pinSkin',
    sentence: 'does a file skid on the pin?',
    key: 'Say if it skids',
    short: 'skin of the pin',
  },
  'ask-off-by': {
    field: 'offBy',
    sentence: 'how far is the hole off its place?',
    key: 'Give how far',
    short: 'how far off',
  },
  'thread-not-known': {
    field: 'thread',
    sentence: 'which thread is it?',
    key: 'Pick its thread',
    short: 'thread',
  },
};

const BUSHING_METAL: Asked = {
  field: 'bushingMetal',
  sentence: 'what will the bushing be made of?',
  key: 'Name its metal',
  short: 'bushing’s metal',
};

function askedBy(reason: RouteReason): Asked | undefined {
  const isBushing = reason.code === 'ask-press-metals' && reason.missing === 'bushing';
  return isBushing ? BUSHING_METAL : ASKED[reason.code];
}
