import { isLess, isMore, minus, type Length } from '../length/length.ts';
import type { Estimate } from './estimate.ts';
import type { FeatureKind } from './measuring-tool.ts';
import type { Settler } from './settle.ts';
import { showAgainst, type ShownAgainst } from '../length/show-limits.ts';
import { figure, showBand, type ShownUnit, withUnit } from '../length/show.ts';
import type { Limits, Verdict } from './verdict.ts';
import { capital, listed } from '../length/say-words.ts';

type Said = {
  /** What the value is: float, clearance, bore ... */
  readonly quantity: string;
  readonly unit: ShownUnit;
  readonly limits: Limits;
  readonly value: Length;
  /** Named beside the value where it is too close to call. */
  readonly halfWidth?: Length;
};

type Ways = { readonly under: string; readonly over: string };

const ROOM: Ways = { under: 'Too tight', over: 'Too loose' };
const GRIP: Ways = { under: 'Too loose', over: 'Too tight' };
const AMOUNT: Ways = { under: 'Too little', over: 'Too much' };
const EXCESS: Ways = { under: 'Too short', over: 'Too long' };
const SIZE: Ways = { under: 'Too small', over: 'Too big' };
const WAYS: ReadonlyMap<string, Ways> = new Map([
  ...['float', 'end play', 'side play', 'clearance', 'slop', 'gap'].map((name) => [name, ROOM] as const),
  ...['interference', 'clamp'].map((name) => [name, GRIP] as const),
  ['excess length', EXCESS],
  ...['runout', 'rock', 'projection', 'toe-in', 'wheel lead'].map((name) => [name, AMOUNT] as const),
]);

const FEATURES: Readonly<Record<FeatureKind, string>> = {
  bore: 'bore',
  pin: 'pin',
  length: 'lengths',
  depth: 'depth',
  gap: 'gap',
  runout: 'runout',
};

/** A verdict in a word or two: `Too tight`. */
export function sayVerdictWord(verdict: Verdict, quantity: string): string {
  switch (verdict.kind) {
    case 'good':
      return 'Good';
    case 'no-good':
      return (WAYS.get(quantity) ?? SIZE)[verdict.way];
    case 'too-close':
      return 'Too close to call';
    default:
      return verdict satisfies never;
  }
}

/** A verdict as one sentence, for the screen and for a screen reader: `Too tight: float .002, want .008 to .012.` */
export function sayVerdict(verdict: Verdict, said: Said): string {
  const shown = showAgainst([said.value], said.limits, said.unit);
  const value = `${said.quantity} ${withUnit(shown.values[0] ?? '', said.unit)}`;
  const want = sayWant(shown, said.unit);
  return verdict.kind === 'too-close'
    ? tooClose(verdict, said, { value, want })
    : `${sayVerdictWord(verdict, said.quantity)}: ${value}, ${want}.`;
}

/** A band beside limits that it is too wide for says so itself; else how near it is says why. */
function tooClose(
  verdict: Extract<Verdict, { kind: 'too-close' }>,
  said: Said,
  { value, want }: { readonly value: string; readonly want: string },
): string {
  const band = said.halfWidth ? ` ${showBand(said.halfWidth, said.unit)}` : '';
  const first = `${sayVerdictWord(verdict, said.quantity)}: ${value}${band}, ${want}.`;
  const isSaid = band !== '' && verdict.near === 'both' && !verdict.doubt;
  return isSaid ? first : `${first} ${capital(sayNear(verdict, said))}.`;
}

/** Which tools and how many readings would call it, or that none can. */
export function saySettler(settler: Settler | undefined, unit: ShownUnit): string {
  if (!settler) return 'No tool in Shop can settle it. Read the joint itself, or move off the limit.';
  return toolsSettle(settler, 'would settle it', unit);
}

function toolsSettle(settler: Settler, what: string, unit: ShownUnit): string {
  return `${capital(toolsWithReadings(settler))} ${what}, to ${withUnit(showBand(settler.halfWidth, unit), unit)}.`;
}

/** The same at a glance, where it takes several tools: which, but not for what and how often. */
export function saySettlerShort({ tools, halfWidth }: Settler, unit: ShownUnit): string {
  const names = [...new Set(tools.map(({ tool }) => tool.name.replace(/ in steps of .*$/, '')))];
  const to = withUnit(showBand(halfWidth, unit), unit);
  const said = `The ${listed(names)} ${names.length === 1 ? 'settles' : 'settle'} it, to ${to}.`;
  return isGlance(said) ? said : `A finer tool for each size settles it, to ${to}.`;
}

const MOST_WORDS = 14;

/** Whether a sentence is short enough for the page of an answer. */
export function isGlance(sentence: string): boolean {
  return sentence.split(' ').length <= MOST_WORDS;
}

/** To what readings prove a size, by the tool that read all of it where one did: `Digital caliper proves this to ±.003`. */
export function sayProves(sizes: readonly Estimate[], halfWidth: Length, unit: ShownUnit): string {
  const tools = [...new Set(sizes.map(({ tool }) => tool?.name))];
  const [only] = tools;
  const who = tools.length === 1 && only !== undefined ? `${capital(only)} proves` : 'These sizes prove';
  return `${who} this to ${withUnit(showBand(halfWidth, unit), unit)}`;
}

/** Readings that can't prove these limits however often they are taken, and what could. */
export function sayTooWide(halfWidth: Length, better: Settler | undefined, unit: ShownUnit): string {
  const said = `These readings prove this to ${withUnit(showBand(halfWidth, unit), unit)}, too wide for the limits.`;
  return better ? `${said} ${toolsSettle(better, 'could', unit)}` : said;
}

/** Said before the first reading, where a tool's band is too wide for the limits; `better` is what could, from `whatCouldProve`. */
export function sayCannotProve({
  tool,
  halfWidth,
  limits,
  better,
  unit,
}: {
  readonly tool: { readonly name: string };
  readonly halfWidth: Length;
  readonly limits: Limits;
  readonly better: Settler | undefined;
  readonly unit: ShownUnit;
}): string {
  const width = limits.lower && limits.upper ? minus(limits.upper, limits.lower) : undefined;
  const apart = width ? ` and the limits are only ${withUnit(figure(width, unit), unit)} apart` : '';
  const who = better ? `${capital(toolsWithReadings(better))} can.` : 'No tool in Shop can.';
  return `The ${tool.name} can't prove this: sizes are known to ${withUnit(showBand(halfWidth, unit), unit)}${apart}. ${who}`;
}

/** The wanted limits as words: `want .008 to .012`, `want .008 or more`. */
export function sayWant({ lower, upper }: Pick<ShownAgainst, 'lower' | 'upper'>, unit: ShownUnit): string {
  if (lower !== undefined && upper !== undefined) return `want ${lower} to ${withUnit(upper, unit)}`;
  if (lower !== undefined) return `want ${withUnit(lower, unit)} or more`;
  return upper === undefined ? 'no limits given' : `want ${withUnit(upper, unit)} or less`;
}

function sayNear(verdict: Extract<Verdict, { kind: 'too-close' }>, { limits, value, unit }: Said): string {
  if (verdict.doubt) return 'its readings contradict each other';
  const limit = verdict.near === 'both' ? undefined : limits[verdict.near];
  if (!limit) return 'the band is too wide for these limits';
  const by = figure(verdict.short, unit);
  if (!/[1-9]/.test(by)) return 'right at the limit';
  const isOutside = verdict.near === 'lower' ? isLess(value, limit) : isMore(value, limit);
  return `only ${withUnit(by, unit)} ${isOutside ? 'outside' : 'inside'}`;
}

/** `the dial bore gauge for the bore and the 0–1 in micrometer for the pin, 3 readings each`, said shorter where one tool does it. */
function toolsWithReadings({ tools, readings, inAll }: Settler): string {
  const names = [...new Set(tools.map(({ tool }) => tool.name))];
  const kindsOf = (name: string) => [
    ...new Set(tools.filter(({ tool }) => tool.name === name).map(({ leg }) => leg.kind)),
  ];
  const all = names.flatMap(kindsOf);
  const isShared = names.length === 1 || new Set(all).size < all.length;
  const list = names.map((name) =>
    isShared ? `the ${name}` : `the ${name} for the ${listed(kindsOf(name).map((kind) => FEATURES[kind]))}`,
  );
  const each = tools.length > 1 ? ' of each size' : '';
  return `${listed(list)} with ${readings === 1 ? '1 reading' : `${readings} readings`}${each}${inAll ? ' in all' : ''}`;
}
