import type { AxleLayout } from './axle-layout.ts';
import { solveChain, type SolvedLength } from './chain.ts';
import { mean, typedEstimate, type Estimate } from '../../reading/estimate.ts';
import { dividedBy, isMore, minus, plus, times, zero, type Length } from '../../length/length.ts';
import { shareOut, type Leeway } from './line-up-budget.ts';
import { checkOfEnd, endsOf, sidesOf, type End, type Fitted, type Places } from './line-up-ends.ts';
import {
  deedVerdict,
  halfWidthOnceCut,
  mostLeeway,
  spacerChoice,
  spacerDeed,
  type SpacerChoice,
  type SpacerDeed,
  type SpacerQuestion,
} from './line-up-spacer.ts';
import type { ToolInForce } from '../../reading/measuring-tool.ts';
import type { LineUpLimit, LineUpLimits } from './tables/line-up-limits.ts';

type Known = Readonly<Record<string, Estimate>>;

export type FittingQuestion = {
  /** With the disc on the right, its conditions in their order. */
  readonly layout: AxleLayout;
  readonly known: Known;
  readonly onHand: Known;
  /** Smallest and largest place of sizes and of parts on hand that have more than one. */
  readonly places: Readonly<Record<string, Places>>;
  readonly slides: 'bracket' | 'caliper' | undefined;
  readonly limits: LineUpLimits;
  readonly usualLeast: Length;
  readonly cutReadWith: ToolInForce | undefined;
  readonly step: Length;
};

export type FittedSpacer = {
  readonly wanted: SolvedLength;
  readonly deed: SpacerDeed;
  /** As it will lie on the axle: as it was measured, or as it is cut. */
  readonly fitted: Length;
};

export type Fitting = {
  readonly spacers: readonly FittedSpacer[];
  readonly ends: readonly End[];
  readonly leeways: Readonly<Record<string, Leeway>>;
};

type Chosen = {
  readonly wanted: SolvedLength;
  readonly choice: SpacerChoice;
  readonly question: SpacerQuestion;
};

/**
 * What to do for every spacer so that all that has to hold holds at the worst of what all of them may be at once.
 *
 * Units:   in the order of work each wanted length is solved with the parts before it as they were measured, where they
 *          stay; so the last one makes up for what the others are off. What the limits of the conditions have left, after the
 *          readings' bands, is shared out among the parts still to be cut.
 * Range:   where a share is finer than the dial can be set to, what sets the float is left for last: it has no length before
 *          the others are measured.
 * Source:  worst-case tolerance stack; sharing alike is common practice, no source.
 */
export function fittingOf(q: FittingQuestion): Fitting {
  const asMeasured = withoutTheThin(q, 'as-measured');
  if (isSettled(asMeasured)) return asMeasured;
  // What was cut out of its order can't be made up for by a part before it; at its own length that one may still fit.
  const bySizes = withoutTheThin(q, 'by-sizes');
  return isSettled(bySizes) ? bySizes : asMeasured;
}

type Others = 'as-measured' | 'by-sizes';

/** What is too thin to be faced is left out, where without it all holds that it is in. */
function withoutTheThin(q: FittingQuestion, others: Others): Fitting {
  const plain = fitted(q, chooseAll(q, others, NONE));
  const thin = new Set(
    plain.spacers.flatMap(({ wanted, deed }) => (deed.kind === 'too-short' ? wanted.name : [])),
  );
  if (thin.size === 0) return plain;
  const without = fitted(q, chooseAll(q, others, thin));
  const holds = without.ends
    .filter(({ end }) => end.is.some(({ of }) => thin.has(of)))
    .every((end) => checkOfEnd(end, without.leeways, false).verdict.kind === 'good');
  return holds && without.spacers.every(({ deed }) => deed.kind !== 'too-short') ? without : plain;
}

const NONE: ReadonlySet<string> = new Set();

function fitted(q: FittingQuestion, chosen: readonly Chosen[]): Fitting {
  const shared = shareFor(q, chosen, []);
  const later = laterParts(q, shared);
  return later.length > 0 ? shareFor(q, chosen, later) : shared;
}

function isSettled({ spacers, ends, leeways }: Fitting): boolean {
  return (
    spacers.every(({ deed }) => deedVerdict(deed) === 'good') &&
    ends.every((end) => checkOfEnd(end, leeways, false).verdict.kind === 'good')
  );
}

/** Each wanted length with the parts before it as they were measured, or by the sizes of the machine alone. */
function chooseAll(q: FittingQuestion, others: Others, thin: ReadonlySet<string>): readonly Chosen[] {
  const layout = solvingOrder(q.layout);
  const chosen: Chosen[] = [];
  let stays: Known = {};
  // As all of them will be known once they were cut and measured: what is left for a cut is left after that.
  let cutSizes: Known = q.known;
  for (const name of q.layout.workOrder) {
    const sizes = { ...q.known, ...stays };
    const wanted = solveChain(layout, sizes).solved.find((one) => one.name === name);
    if (!wanted) throw new Error(`the layout leaves ${name} open`);
    const onHand = q.onHand[name];
    const wantedThen = solveChain(layout, cutSizes).solved.find((one) => one.name === name) ?? wanted;
    const question = {
      wanted,
      cutHalfWidth: halfWidthOnceCut({ wanted, wantedThen, cutSizes, tool: q.cutReadWith }),
      sizes,
      onHand,
      limit: partLimit(q, name),
      least: q.usualLeast,
      step: q.step,
    };
    const found = spacerChoice(question);
    const choice = thin.has(name) ? leftOutOr(found, question) : found;
    chosen.push({ wanted, choice, question });
    if (choice.kind === 'leave-out') stays = { ...stays, [name]: typedEstimate(zero) };
    if (CUT.has(choice.kind)) cutSizes = { ...cutSizes, [name]: typedEstimate(wanted.value, q.cutReadWith) };
    if (others === 'as-measured' && onHand && staysAsItIs(choice)) stays = { ...stays, [name]: onHand };
    cutSizes = { ...cutSizes, ...stays };
  }
  return chosen;
}

const CUT: ReadonlySet<SpacerChoice['kind']> = new Set(['make', 'trim', 'shim']);

/** What is surely no more than a part may be off anyway can be left out. */
function leftOutOr(choice: SpacerChoice, { wanted: { value, band }, limit }: SpacerQuestion): SpacerChoice {
  const isNextToNothing = !isMore(plus(value, band.halfWidth), limit.by);
  return choice.kind === 'too-short' && isNextToNothing ? { kind: 'leave-out', by: value } : choice;
}

/** How far a part may be off by itself: one that fills the room, by as much as that may be off where it is more. */
function partLimit({ layout, limits: { spacer, opening } }: FittingQuestion, name: string): LineUpLimit {
  const fills = layout.ends.some(({ kind, is }) => kind === 'opening' && is.some(({ of }) => of === name));
  return fills && isMore(opening.by, spacer.by) ? opening : spacer;
}

function staysAsItIs({ kind }: SpacerChoice): boolean {
  return kind === 'keep' || kind === 'too-close';
}

/**
 * Which conditions come first once some of the parts are there: what a sleeve is, then where the wheel and the sprocket sit;
 * the room that is left to be filled gives way to these.
 */
function solvingOrder(layout: AxleLayout): AxleLayout {
  const rank = ({ name, is }: AxleLayout['conditions'][number]) => {
    if (is.some(({ of }) => layout.spacers.includes(of))) return 0;
    return name === 'fills' ? 2 : 1;
  };
  return { ...layout, conditions: layout.conditions.toSorted((a, b) => rank(a) - rank(b)) };
}

function shareFor(q: FittingQuestion, chosen: readonly Chosen[], later: readonly string[]): Fitting {
  const ends = endsOf({
    ...q,
    fitted: Object.fromEntries(
      chosen
        .filter(({ wanted }) => !later.includes(wanted.name))
        .map((one) => [one.wanted.name, fittedAs(one, q)] as const),
    ),
  });
  const { sides, unproved } = sidesOf(ends);
  const cut = chosen.filter((one) => isCut(one) && !later.includes(one.wanted.name));
  const leeways = shareOut({
    sides,
    most: Object.fromEntries(cut.map(({ wanted, question }) => [wanted.name, mostLeeway(question)])),
    // A tenth of the dial's step: finer than it can be read.
    grid: dividedBy(q.step, 10),
  });
  const spacers = chosen.map(({ wanted, choice, question }): FittedSpacer => {
    if (later.includes(wanted.name))
      return { wanted, deed: { kind: 'last', after: othersOf(q.layout, wanted.name) }, fitted: wanted.value };
    const deed = spacerDeed(choice, question, {
      leeway: leeways[wanted.name] ?? NO_LEEWAY,
      unproved: unproved.find(({ parts }) => parts.includes(wanted.name))?.halfWidth,
    });
    return { wanted, deed, fitted: lengthAsFitted(deed, question) };
  });
  return { spacers, ends, leeways };
}

const NO_LEEWAY: Leeway = { down: zero, up: zero };

function isCut({ choice: { kind } }: Chosen): boolean {
  return CUT.has(kind);
}

function fittedAs(
  { wanted, choice, question: { onHand } }: Chosen,
  { places, cutReadWith }: FittingQuestion,
): Fitted {
  const aimed = typedEstimate(wanted.value, CUT.has(choice.kind) ? cutReadWith : undefined);
  if (choice.kind === 'leave-out')
    return { kind: 'as-measured', places: { least: typedEstimate(zero), most: typedEstimate(zero) } };
  const isThere = places[wanted.name] ?? (onHand && { least: onHand, most: onHand });
  if (isThere && staysAsItIs(choice)) return { kind: 'as-measured', places: isThere };
  if (isThere && choice.kind === 'shim') {
    const more = minus(wanted.value, onHand ? mean(onHand) : zero);
    return {
      kind: 'cut',
      places: { least: longerBy(isThere.least, more), most: longerBy(isThere.most, more) },
    };
  }
  const kind = STAYS_OUT.has(choice.kind) ? 'as-measured' : 'cut';
  return { kind, places: { least: aimed, most: aimed } };
}

const STAYS_OUT: ReadonlySet<SpacerChoice['kind']> = new Set(['no-room', 'none', 'too-short']);

function longerBy(estimate: Estimate, more: Length): Estimate {
  return { ...estimate, sum: plus(estimate.sum, times(more, estimate.count)) };
}

/** Parts that set a float and whose share, or that of a part they share with, no step of the dial lies in. */
function laterParts({ layout }: FittingQuestion, { spacers, ends }: Fitting): readonly string[] {
  const tooFine = new Set(spacers.flatMap(({ wanted, deed }) => (isTooFine(deed) ? wanted.name : [])));
  return layout.last.filter((name) =>
    ends.some(
      ({ cuts }) =>
        cuts.some(({ of }) => of === name) && cuts.length > 1 && cuts.some(({ of }) => tooFine.has(of)),
    ),
  );
}

function isTooFine(deed: SpacerDeed): boolean {
  const reach = deed.kind === 'make' ? deed.make : deed.kind === 'trim' ? deed.cut : undefined;
  return reach?.ok === false && reach.refusal.code === 'no-step-in-limits';
}

/** What has to be measured before a part that is left for last. */
function othersOf({ ends, workOrder }: AxleLayout, name: string): readonly string[] {
  const sums = ends.filter(
    ({ kind, is }) => (kind === 'float' || kind === 'opening') && is.some(({ of }) => of === name),
  );
  const named = new Set(sums.flatMap(({ is }) => is.map(({ of }) => of)));
  return workOrder.filter((one) => one !== name && named.has(one));
}

function lengthAsFitted(deed: SpacerDeed, { wanted, onHand }: SpacerQuestion): Length {
  switch (deed.kind) {
    case 'keep':
    case 'too-close':
      return onHand ? mean(onHand) : wanted.value;
    case 'make':
      return deed.make.ok ? deed.make.value.to : wanted.value;
    case 'trim':
      return deed.cut.ok ? deed.cut.value.to : wanted.value;
    case 'leave-out':
      return zero;
    case 'shim':
    case 'last':
    case 'none':
    case 'no-room':
    case 'too-short':
      return wanted.value;
    default:
      return deed satisfies never;
  }
}
