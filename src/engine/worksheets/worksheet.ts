import type { CheckOffer } from '../reading/check-offer.ts';
import type { Operation } from '../cut/cut.ts';
import type { CutWay } from '../cut/cuts-of-way.ts';
import type { FeatureKind } from '../reading/measuring-tool.ts';
import type { Leg } from '../reading/settle.ts';
import type { Result } from '../length/refusal.ts';
import { inShopWords, recordInShopWords } from '../length/american-words.ts';
import type { ShownUnit } from '../length/show.ts';
import type { Limits } from '../reading/verdict.ts';
import type { CutKind } from '../length/metal-on.ts';
import type { RunsWith } from './runs-with.ts';
import type { GetOffer } from '../job/get-list.ts';
import type { Account, Block } from './account.ts';
import type { Fields } from './fields.ts';
import { fieldsInShop, usualInShop } from './fields-in-shop.ts';
import { asSureAs, foundIn, type Found, type Standing } from './found.ts';
import type { RoundPart } from './round-part.ts';
import { withStrength } from './strength.ts';
import type { AnyGiven, Given } from './given.ts';
import { impossibleSize, sayImpossible, type ImpossibleSize } from './impossible-size.ts';

/** A question with its answer, worked out once and handed to all that show it. */
export type Answered<F extends Fields, Q, A> = {
  readonly given: Given<F>;
  readonly question: Q;
  readonly answer: A;
  readonly unit: ShownUnit;
};

export type Worked<F extends Fields, Q, A, R> =
  | { readonly is: 'lacking' }
  | { readonly is: 'impossible'; readonly size: ImpossibleSize }
  | { readonly is: 'refused'; readonly question: Q; readonly refusal: R }
  | ({ readonly is: 'answered' } & Answered<F, Q, A>);

/** What a worksheet wants of a sum of sizes, known or not yet. */
export type Wanted = {
  readonly limits: Limits;
  readonly legs: readonly Leg[];
  /** The legs are so many times the sum, where it holds halves; limits are of the sum itself. */
  readonly times?: number;
};

/** A step as a worksheet's answer puts it into an order. */
export type StepOffer = {
  readonly text: string;
  readonly orientation?: string | undefined;
  /** The manual's figure is asked for in this unit. */
  readonly torqueIn?: 'Nm' | 'lbf-ft' | undefined;
  /** Its worksheet's drawing stands beside it. */
  readonly drawn?: true | undefined;
};

/** A kind of worksheet: what it is called and asks for, how it is worked out, and what is said and done with the answer. */
export type Definition<F extends Fields, Q, A, R> = {
  readonly name: string;
  readonly asks: string;
  /** Every field that a worksheet of this kind may have, whatever was chosen. */
  readonly fields: F;
  /** The fields that are asked and listed as things stand, where first choices decide that; without it all of them. */
  readonly fieldsFor?: (given: Given<F>) => Fields;
  /** Asked one after the other when the worksheet is new; as things stand, where first choices decide that. */
  readonly needs: readonly (keyof F & string)[] | ((given: Given<F>) => readonly (keyof F & string)[]);
  /** What it starts with. */
  readonly starts: Readonly<Record<string, string>>;
  /** Said while a need is missing. */
  readonly lacks: string;
  /** About a wheel, its axle, its brake or its steering, whatever was ticked on the job. */
  readonly canKill?: true;
  readonly question: (given: Given<F>) => Q | undefined;
  readonly answer: (question: Q) => Result<A, R>;
  readonly sayRefusal: (refusal: R, unit: ShownUnit) => string;
  readonly whyRefused?: (refusal: R) => readonly Block[];
  /** What the answer takes for granted as nobody chose it, in the order in which it matters. */
  readonly assumed?: (given: Given<F>) => readonly Assumed<keyof F & string>[];
  /** What else follows where a field is given: a bolt's thread gives the pin its nominal size. */
  readonly besides?: (given: Given<F>, field: keyof F & string, value: string | undefined) => Besides;
  /** What stands in for a field that isn't given, in words. */
  readonly usual?: (given: Given<F>) => Readonly<Partial<Record<keyof F & string, string>>>;
  readonly account: (worked: Answered<F, Q, A>) => readonly (Block | undefined)[];
  /** A verdict that is too close to call leaves all of them unsure. */
  readonly cuts?: (worked: Answered<F, Q, A>) => readonly CutWay[];
  /** Where the cuts hold whichever way a close call turns out, or say of themselves which of them are unsure. */
  readonly cutsHoldAnyway?: (worked: Answered<F, Q, A>) => boolean;
  readonly checks?: (worked: Answered<F, Q, A>) => readonly CheckOffer[];
  readonly makes?: (worked: Answered<F, Q, A>) => readonly RoundPart[];
  readonly steps?: (worked: Answered<F, Q, A>) => readonly StepOffer[];
  /** What has to be bought or found to do what the answer says; `way` is the way that its cuts in the job go, if they do. */
  readonly gets?: (worked: Answered<F, Q, A>, way: string | undefined) => readonly GetOffer[];
  /** What a part that is cut runs with and how: the ways out of a cut gone past its limit go by it. */
  readonly runsWith?: (given: Given<F>, of: CutKind) => RunsWith;
  /** Fields that hold a part which is cut, by the names its cuts give that part: once it is to size they take its size. */
  readonly cutPlaces?: (given: Given<F>) => readonly CutPlace<keyof F & string>[];
  /** What a cut that is to size says for good, as nobody can read it again: the drilled hole under an insert. */
  readonly provedByCut?: Readonly<Partial<Record<Operation, keyof F & string>>>;
  /** The usual limits that one's own aim is held against. */
  readonly usualLimits?: (given: Given<F>) => Limits | undefined;
  /** Before the first reading: what a size of this kind has to be proved to. */
  readonly wanted?: (given: Given<F>, kind: FeatureKind, field?: string) => Wanted | undefined;
  /** One of it that answers, invented: what the demo shows and the laws over all kinds are tried on. */
  readonly demo: Demo<keyof F & string>;
};

export type CutPlace<Name extends string = string> = { readonly field: Name; readonly part: string };

/** Something nobody said: the field that changes it, and in few words what stands in for it. */
export type Assumed<Name extends string = string> = {
  readonly field: Name;
  readonly words: string;
  /** What its key asks, where that doesn't follow from the words. */
  readonly asked?: string;
};

/** Sizes as they would be typed, and choices. */
export type Besides = {
  readonly sizes?: Readonly<Record<string, string>>;
  readonly choices?: Readonly<Record<string, string>>;
};

/** Sizes as they are typed ("1.500 in"), choices and numbers by name, and the parts of a stack from left to right. */
export type Demo<Name extends string = string> = {
  readonly title: string;
  readonly sizes?: Readonly<Partial<Record<Name, string>>>;
  readonly choices?: Readonly<Partial<Record<Name, string>>>;
  readonly parts?: readonly {
    readonly name: string;
    readonly size: string;
    readonly count?: number;
    readonly adjustable?: true;
  }[];
};

/** A kind as the registry holds it: everyone asks every kind the same things. */
export type AnyWorksheet = {
  readonly name: string;
  readonly asks: string;
  readonly fields: Fields;
  readonly fieldsFor: (given: AnyGiven) => Fields;
  readonly needs: (given: AnyGiven) => readonly string[];
  /** The first thing it can't do without and hasn't got, or that was read of other parts than are in it now. */
  readonly nextNeed: (given: AnyGiven) => string | undefined;
  readonly starts: Readonly<Record<string, string>>;
  readonly lacks: string;
  readonly canKill: boolean;
  /** Where it stands: whether something it needs is lacking. */
  readonly standing: (given: AnyGiven) => Standing;
  /** What it comes to: the verdict its account leads with; the list, sign-off and the sheet ask here. */
  readonly verdict: (given: AnyGiven) => Found;
  readonly assumed: (given: AnyGiven) => readonly Assumed[];
  readonly besides: (given: AnyGiven, field: string, value: string | undefined) => Besides;
  readonly usual: (given: AnyGiven) => Readonly<Partial<Record<string, string>>>;
  readonly account: (given: AnyGiven) => Account;
  readonly cuts: (given: AnyGiven) => readonly CutWay[];
  readonly checks: (given: AnyGiven) => readonly CheckOffer[];
  readonly makes: (given: AnyGiven) => readonly RoundPart[];
  readonly steps: (given: AnyGiven) => readonly StepOffer[];
  /** Whether it puts parts together, so that its drawing can stand beside a step. */
  readonly givesSteps: boolean;
  readonly gets: (given: AnyGiven, way?: string) => readonly GetOffer[];
  readonly runsWith: (given: AnyGiven, of: CutKind) => RunsWith;
  readonly cutPlaces: (given: AnyGiven) => readonly CutPlace[];
  readonly provedByCut: Readonly<Partial<Record<Operation, string>>>;
  readonly usualLimits: (given: AnyGiven) => Limits | undefined;
  readonly wanted: (given: AnyGiven, kind: FeatureKind, field?: string) => Wanted | undefined;
  readonly demo: Demo;
};

/** The same for its own drawing, which has its question and answer too; each is worked out once for what is given. */
export type Worksheet<F extends Fields, Q, A, R> = AnyWorksheet & {
  readonly work: (given: AnyGiven) => Worked<F, Q, A, R>;
};

/** Makes a kind for the registry out of its definition. */
export function worksheet<const F extends Fields, Q, A, R>(
  of: Definition<F, Q, A, R>,
): Worksheet<F, Q, A, R> {
  const kept = new WeakMap<AnyGiven, Worked<F, Q, A, R>>();
  const needs = (given: AnyGiven): readonly string[] =>
    typeof of.needs === 'function' ? of.needs(given) : of.needs;
  const work = (given: AnyGiven): Worked<F, Q, A, R> => {
    const before = kept.get(given);
    if (before) return before;
    const size = impossibleSize({ fields: of.fieldsFor?.(given) ?? of.fields, needs: needs(given) }, given);
    const now = size ? ({ is: 'impossible', size } as const) : workedOut(of, given);
    kept.set(given, now);
    return now;
  };
  const ofAnswer =
    <T>(ask: ((worked: Answered<F, Q, A>) => readonly T[]) | undefined) =>
    (given: AnyGiven): readonly T[] => {
      const now = work(given);
      return ask && now.is === 'answered' ? ask(now) : [];
    };
  const offered = ofAnswer(of.cuts);
  const found = (given: AnyGiven) => foundIn(accountOf(of, work(given), given.unit), work(given).is);
  const holdAnyway = (now: Worked<F, Q, A, R>) => now.is === 'answered' && of.cutsHoldAnyway?.(now) === true;
  const cuts = (given: AnyGiven) =>
    holdAnyway(work(given)) ? offered(given) : asSureAs(() => found(given), offered(given));
  const checks = ofAnswer(of.checks);
  return {
    name: of.name,
    asks: of.asks,
    fields: of.fields,
    fieldsFor: (given) => fieldsInShop(of.fieldsFor?.(given) ?? of.fields, given.unit),
    needs,
    nextNeed: (given) =>
      needs(given).find((name) => !given.has(name) || given.readBefore(name) !== undefined),
    starts: of.starts,
    lacks: of.lacks,
    canKill: of.canKill === true,
    work,
    standing: (given) => work(given).is,
    assumed: (given) =>
      recordInShopWords(of.assumed?.(given) ?? [], given.unit).filter(({ field }) => !given.has(field)),
    besides: (given, field, value) =>
      Object.hasOwn(of.fields, field) ? (of.besides?.(given, field, value) ?? {}) : {},
    usual: (given) => usualInShop(of.usual?.(given) ?? {}, given.unit),
    verdict: found,
    account: (given) => accountOf(of, work(given), given.unit, cuts(given)),
    cuts,
    checks: (given) => checks(given).map((offer) => offerInShopWords(offer, given.unit)),
    makes: ofAnswer(of.makes),
    steps: ofAnswer(of.steps),
    gets: (given, way) => getsInShop(of, work(given), way),
    givesSteps: of.steps !== undefined,
    runsWith: (given, cut) => of.runsWith?.(given, cut) ?? {},
    cutPlaces: (given) => of.cutPlaces?.(given) ?? [],
    provedByCut: of.provedByCut ?? {},
    usualLimits: (given) => of.usualLimits?.(given),
    wanted: (given, kind, field) => of.wanted?.(given, kind, field),
    demo: of.demo,
  };
}

function workedOut<F extends Fields, Q, A, R>(
  of: Definition<F, Q, A, R>,
  given: AnyGiven,
): Worked<F, Q, A, R> {
  const question = of.question(given);
  if (question === undefined) return { is: 'lacking' };
  const result = of.answer(question);
  return result.ok
    ? { is: 'answered', given, question, answer: result.value, unit: given.unit }
    : { is: 'refused', question, refusal: result.refusal };
}

/** What has to be got, in the words of the shop. */
function getsInShop<F extends Fields, Q, A, R>(
  of: Definition<F, Q, A, R>,
  now: Worked<F, Q, A, R>,
  way: string | undefined,
): readonly GetOffer[] {
  if (!of.gets || now.is !== 'answered') return [];
  return of.gets(now, way).map((offer) => ({ ...offer, what: inShopWords(offer.what, now.unit) }));
}

/** What is read of it; a check made from it keeps these words as its own. */
export function offerInShopWords(offer: CheckOffer, unit: ShownUnit): CheckOffer {
  return { ...offer, name: inShopWords(offer.name, unit), how: inShopWords(offer.how, unit) };
}

/** All that is said, in the words of the shop, with the strength of whatever its cuts take metal off. */
function accountOf<F extends Fields, Q, A, R>(
  of: Definition<F, Q, A, R>,
  worked: Worked<F, Q, A, R>,
  unit: ShownUnit,
  cuts: readonly CutWay[] = [],
): Account {
  return recordInShopWords(withStrength(accountAsWritten(of, worked, unit), cuts), unit);
}

function accountAsWritten<F extends Fields, Q, A, R>(
  of: Definition<F, Q, A, R>,
  worked: Worked<F, Q, A, R>,
  unit: ShownUnit,
): Account {
  switch (worked.is) {
    case 'lacking':
      return [];
    case 'impossible':
      return [{ is: 'verdict', kind: 'no-good', headline: sayImpossible(worked.size, unit) }];
    case 'refused':
      return [
        { is: 'verdict', kind: 'no-good', headline: of.sayRefusal(worked.refusal, unit) },
        ...(of.whyRefused?.(worked.refusal) ?? []),
      ];
    case 'answered':
      return of.account(worked).filter((block) => block !== undefined);
    default:
      return worked satisfies never;
  }
}
