import type { CheckOffer } from '../reading/check-offer.ts';
import type { CutWay } from '../cut/cuts-of-way.ts';
import type { FeatureKind } from '../reading/measuring-tool.ts';
import type { Length } from '../length/length.ts';
import type { Leg } from '../reading/settle.ts';
import type { Result } from '../length/refusal.ts';
import type { ShownUnit } from '../length/show.ts';
import type { Limits } from '../reading/verdict.ts';
import { blocksOf, type Account, type Block } from './account.ts';
import type { Verdict } from '../reading/verdict.ts';
import type { Fields } from './fields.ts';
import type { AnyGiven, Given } from './given.ts';

/** A question with its answer, worked out once and handed to all that show it. */
export type Answered<F extends Fields, Q, A> = {
  readonly given: Given<F>;
  readonly question: Q;
  readonly answer: A;
  readonly unit: ShownUnit;
};

export type Worked<F extends Fields, Q, A, R> =
  | { readonly is: 'lacking' }
  | { readonly is: 'refused'; readonly question: Q; readonly refusal: R }
  | ({ readonly is: 'answered' } & Answered<F, Q, A>);

/** A round part that is to be made; a stack knows only lengths, the diameters are the fitter's to give. */
export type RoundPart = {
  readonly name: string;
  readonly outside?: Length | undefined;
  readonly inside?: Length | undefined;
  readonly length?: Length | undefined;
};

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
  readonly fields: F;
  /** Asked one after the other when the worksheet is new. */
  readonly needs: readonly (keyof F & string)[];
  /** What it starts with. */
  readonly starts: Readonly<Record<string, string>>;
  /** Said while a need is missing. */
  readonly lacks: string;
  /** About a wheel, its axle, its brake or its steering, whatever was ticked on the job. */
  readonly canKill?: true;
  readonly question: (given: Given<F>) => Q | undefined;
  readonly answer: (question: Q) => Result<A, R>;
  readonly sayRefusal: (refusal: R, unit: ShownUnit) => string;
  /** What stands in for a field that isn't given, in words. */
  readonly usual?: (given: Given<F>) => Readonly<Partial<Record<keyof F & string, string>>>;
  readonly account: (worked: Answered<F, Q, A>) => readonly (Block | undefined)[];
  readonly cuts?: (worked: Answered<F, Q, A>) => readonly CutWay[];
  readonly checks?: (worked: Answered<F, Q, A>) => readonly CheckOffer[];
  readonly makes?: (worked: Answered<F, Q, A>) => readonly RoundPart[];
  readonly steps?: (worked: Answered<F, Q, A>) => readonly StepOffer[];
  /** Before the first reading: what a size of this kind has to be proved to. */
  readonly wanted?: (given: Given<F>, kind: FeatureKind, field?: string) => Wanted | undefined;
};

/** A verdict with its sentence; no answer while something is lacking, and none judged where nothing has limits. */
export type Found = {
  readonly found: Verdict['kind'] | 'no-answer' | 'not-judged';
  readonly said: string;
};

/** A kind as the registry holds it: everyone asks every kind the same things. */
export type AnyWorksheet = {
  readonly name: string;
  readonly asks: string;
  readonly fields: Fields;
  readonly needs: readonly string[];
  readonly starts: Readonly<Record<string, string>>;
  readonly lacks: string;
  readonly canKill: boolean;
  /** Where it stands: whether something it needs is lacking. */
  readonly standing: (given: AnyGiven) => 'lacking' | 'refused' | 'answered';
  /** What it comes to: the verdict its account leads with; the list, sign-off and the sheet ask here. */
  readonly verdict: (given: AnyGiven) => Found;
  readonly usual: (given: AnyGiven) => Readonly<Partial<Record<string, string>>>;
  readonly account: (given: AnyGiven) => Account;
  readonly cuts: (given: AnyGiven) => readonly CutWay[];
  readonly checks: (given: AnyGiven) => readonly CheckOffer[];
  readonly makes: (given: AnyGiven) => readonly RoundPart[];
  readonly steps: (given: AnyGiven) => readonly StepOffer[];
  readonly wanted: (given: AnyGiven, kind: FeatureKind, field?: string) => Wanted | undefined;
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
  const work = (given: AnyGiven): Worked<F, Q, A, R> => {
    const before = kept.get(given);
    if (before) return before;
    const now = workedOut(of, given);
    kept.set(given, now);
    return now;
  };
  const ofAnswer =
    <T>(ask: ((worked: Answered<F, Q, A>) => readonly T[]) | undefined) =>
    (given: AnyGiven): readonly T[] => {
      const now = work(given);
      return ask && now.is === 'answered' ? ask(now) : [];
    };
  return {
    name: of.name,
    asks: of.asks,
    fields: of.fields,
    needs: of.needs,
    starts: of.starts,
    lacks: of.lacks,
    canKill: of.canKill === true,
    work,
    standing: (given) => work(given).is,
    usual: (given) => of.usual?.(given) ?? {},
    verdict: (given) => foundIn(accountOf(of, work(given), given.unit), work(given).is),
    account: (given) => accountOf(of, work(given), given.unit),
    cuts: ofAnswer(of.cuts),
    checks: ofAnswer(of.checks),
    makes: ofAnswer(of.makes),
    steps: ofAnswer(of.steps),
    wanted: (given, kind, field) => of.wanted?.(given, kind, field),
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

function accountOf<F extends Fields, Q, A, R>(
  of: Definition<F, Q, A, R>,
  worked: Worked<F, Q, A, R>,
  unit: ShownUnit,
): Account {
  switch (worked.is) {
    case 'lacking':
      return [];
    case 'refused':
      return [{ is: 'verdict', kind: 'no-good', headline: of.sayRefusal(worked.refusal, unit) }];
    case 'answered':
      return of.account(worked).filter((block) => block !== undefined);
    default:
      return worked satisfies never;
  }
}

function foundIn(account: Account, standing: 'lacking' | 'refused' | 'answered'): Found {
  if (standing === 'lacking') return { found: 'no-answer', said: 'A size it needs is missing.' };
  const [verdict] = blocksOf(account, 'verdict');
  return verdict ? { found: verdict.kind, said: verdict.headline } : { found: 'not-judged', said: '' };
}
