import { inUseAt, type GrowingLeg, type InUse, type LeastAndMost } from '../material/hot-and-cold.ts';
import type { Material } from '../material/tables/materials.ts';
import { isMore, lengthOf, negate, roundToStep, zero } from '../length/length.ts';
import { capital } from '../length/say-words.ts';
import { figure, withUnit, type ShownUnit } from '../length/show.ts';
import { sayTemperature } from '../press/say-bushing.ts';
import type { AskBlock, Block, VerdictBlock } from './account.ts';
import type { ChoiceField, NumberField } from './fields.ts';
import { metalOptions } from './worn-hole-fields.ts';

const temperature = (field: Pick<NumberField, 'label' | 'ask' | 'least' | 'most'>) =>
  ({ enter: 'number', unit: '°C', ...field }) as const satisfies NumberField;

/** The hottest and the coldest that a joint sees; never taken for granted. */
export const inUseFields = {
  hotTemperature: temperature({
    label: 'Hottest in use',
    ask: 'How hot does the joint get when it runs?',
    least: 0,
    most: 500,
  }),
  coldTemperature: temperature({
    label: 'Coldest in use',
    ask: 'How cold does the joint get, outside in winter say?',
    least: -60,
    most: 50,
  }),
} as const;

export const metalField = (label: string, ask: string) =>
  ({ enter: 'choice', label, ask, options: metalOptions }) as const satisfies ChoiceField;

/** What stands in for them on the list of sizes. */
export const inUseUsual = {
  hotTemperature: 'not said; then nothing is judged hot',
  coldTemperature: 'not said; then nothing is judged cold',
} as const;

/** A size of the sum with its metal, or the field that asks for it. */
export type LegOfMetal = Omit<GrowingLeg, 'metal'> & {
  readonly metal: Material | undefined;
  readonly asks: string;
};

/** What is judged hot and cold: its range at 20 °C, what it is, and what happens when it has gone through zero. */
export type Warmed = {
  readonly range: LeastAndMost;
  readonly legs: readonly LegOfMetal[];
  readonly stays: 'above' | 'below';
  /** `clearance`, `grip`, `float`. */
  readonly quantity: string;
  /** What becomes of it without: `it seizes`, `it may seize`. */
  readonly fails: { readonly surely: string; readonly perhaps: string };
};

/** What moves no more, as its room is gone. */
export const IT_SEIZES = { surely: 'it seizes', perhaps: 'it may seize' } as const;

/** Of whatever kind: how hot and how cold it gets. */
type GivenWarm = {
  readonly number: (name: 'hotTemperature' | 'coldTemperature') => number | undefined;
  readonly unit: ShownUnit;
};

/** What of it is left hot and cold, or the metal that has to be said first; nothing where no temperature was given. */
function inUseOf(
  given: GivenWarm,
  { range, legs, stays }: Warmed,
): { readonly found: readonly InUse[]; readonly asks?: string | undefined } {
  const celsius = [given.number('hotTemperature'), given.number('coldTemperature')].filter(
    (asked) => asked !== undefined,
  );
  const known = legs.flatMap(({ metal, ...leg }): readonly GrowingLeg[] =>
    metal ? [{ ...leg, metal }] : [],
  );
  if (celsius.length === 0) return { found: [] };
  if (known.length < legs.length) return { found: [], asks: legs.find(({ metal }) => !metal)?.asks };
  return { found: celsius.map((asked) => inUseAt(asked, { range, legs: known, stays })) };
}

/**
 * The account of a joint with what heat and cold leave of it: one line more, and a verdict that is no longer good where
 * the joint doesn't keep what it needs.
 */
export function withInUse(
  blocks: readonly (Block | undefined)[],
  given: GivenWarm,
  warmed: Warmed,
): readonly (Block | undefined)[] {
  const { found, asks } = inUseOf(given, warmed);
  if (asks !== undefined) return [...blocks, askForMetal(asks)];
  if (found.length === 0) return blocks;
  const worst = found.find(({ keeps }) => keeps === 'not') ?? found.find(({ keeps }) => keeps === 'perhaps');
  const [first, ...rest] = blocks;
  const said: Block = { is: 'said', sentence: sayAllInUse(found, warmed, given.unit) };
  if (!worst) return first?.is === 'verdict' ? [first, said, ...rest] : [said, ...blocks];
  const needs = sayNeeds(worst, warmed, given.unit);
  const instead =
    first?.is === 'verdict' && first.kind !== 'good' ? first : lostInUse(worst, warmed, given.unit);
  return [instead, needs, said, ...(first?.is === 'verdict' ? rest : blocks)];
}

function askForMetal(field: string): AskBlock {
  return { is: 'ask', sentence: 'With its metals it is judged hot and cold.', field, key: 'Give the metal' };
}

function lostInUse({ celsius, keeps }: InUse, { fails }: Warmed, unit: ShownUnit): VerdictBlock {
  const at = sayTemperature(celsius, unit);
  return keeps === 'not'
    ? { is: 'verdict', kind: 'no-good', headline: `At ${at} ${fails.surely}.` }
    : { is: 'verdict', kind: 'too-close', headline: `At ${at} ${fails.perhaps}.` };
}

/** `Clearance −.0014 to −.0010 at 140 °F (60 °C).` */
function sayAllInUse(found: readonly InUse[], { quantity, stays }: Warmed, unit: ShownUnit): string {
  const each = found.map((one) => `${sayRange(one, stays, unit)} at ${sayTemperature(one.celsius, unit)}`);
  return `${capital(quantity)} ${each.join(', ')}.`;
}

/** A grip is told as such: what it holds by, not a clearance below zero. */
function sayRange({ least, most }: LeastAndMost, stays: Warmed['stays'], unit: ShownUnit): string {
  const [from, to] = stays === 'above' ? [least, most] : [negate(most), negate(least)];
  const [low, high] = [figure(from, unit), figure(to, unit)];
  return low === high ? low : `${low} to ${high}`;
}

/** What makes up for it at the bench; nothing where heat or cold does it good. */
function sayNeeds({ needs }: InUse, { quantity, stays }: Warmed, unit: ShownUnit): Block | undefined {
  const size = stays === 'above' ? needs : negate(needs);
  if (!isMore(size, zero)) return undefined;
  // Never shown below what it takes.
  const least = roundToStep(size, lengthOf(unit === 'in' ? '.0001 in' : '.001 mm'), 'up');
  return {
    is: 'said',
    sentence: `In the shop it needs more ${quantity} than ${withUnit(figure(least, unit), unit)}.`,
  };
}
