import { mirrored, type AxleLayout, type AxleSide } from './axle-layout.ts';
import { distanceForm, solveChain, type Chain, type Place, type SolvedLength } from './chain.ts';
import { evaluate, formOf, type Form } from './chain-form.ts';
import { typedEstimate, type Estimate } from './estimate.ts';
import { isNegative, minus, sum, zero, type Length } from './length.ts';
import { discCheck, lineCheck, padWearCheck, type LineUpCheck } from './line-up-checks.ts';
import { givesForRoom, type Give } from './line-up-gives.ts';
import { centreReadCheck, discReadChecks, hasWheelCentre, sidePlayCheck } from './line-up-read.ts';
import { spacerDeed, type SpacerDeed } from './line-up-spacer.ts';
import { refuse, worked, type Result } from './refusal.ts';
import type { LineUpLimits } from './tables/line-up-limits.ts';
import { verdictOf, type Verdict } from './verdict.ts';

export type LineUpQuestion = {
  readonly layout: AxleLayout;
  /** Of the disc, the drum or the outer face; it says nothing where the layout has both. */
  readonly side: AxleSide;
  /** By the layout's names; `padWear`, and a disc's slot width and thickness, where they are known. */
  readonly sizes: Readonly<Record<string, Estimate>>;
  /** Parts on hand, by the spacer's name. */
  readonly onHand: Readonly<Record<string, Estimate>>;
  /** Which of two rivals counts first; the other gives way. */
  readonly first?: string;
  /** What follows the pads as they wear: if the bracket does, it needs the float for it. */
  readonly slides?: 'bracket' | 'caliper';
  readonly limits: LineUpLimits;
  /** The dial's step for lengths. */
  readonly step: Length;
};

export type Spacer = SolvedLength & {
  /** Whether it has any room at all: its length against zero. */
  readonly room: Verdict;
  readonly deed: SpacerDeed;
};

/** A part as it lies on the axle, or a plane, measured from the left leg's inner face. */
export type LaidPart = { readonly name: string; readonly length: Length };
export type LaidPlane = { readonly name: string; readonly at: Length };

export type LineUpAnswer = {
  /** From left to right, sleeves behind them. */
  readonly spacers: readonly Spacer[];
  /** What could give, each alone, where a spacer comes out below zero. */
  readonly gives: readonly Give[];
  /** Conditions the spacers make hold. */
  readonly held: readonly string[];
  readonly checks: readonly LineUpCheck[];
  readonly parts: readonly LaidPart[];
  readonly planes: readonly LaidPlane[];
};

export type LineUpRefusal =
  | { readonly code: 'sizes-missing'; readonly names: readonly string[] }
  | { readonly code: 'lengths-free'; readonly names: readonly string[] };

/**
 * The lengths of all spacers on an axle, what to do for each, and what can't hold.
 *
 * Units:   x grows to the right; the left leg's inner face (a spindle's shoulder) is 0. With the disc on the right
 *          A = W/2 + o − c, B = d − p − f/2, C = W − A − H − B − b − f, sleeve = W − A − H; on the left the whole chain
 *          is mirrored, solved, and mirrored back. Sizes by the names of tables/axle-layouts.ts.
 * Range:   a length below zero has no room, and says which size could give and by how much. What was read on the machine
 *          (line-up-read.ts) stands in place of the sum it checks.
 * Refuses: sizes-missing (which); lengths-free where a layout's conditions leave a length open.
 * Source:  sum of a dimension chain.
 */
export function lineUp(q: LineUpQuestion): Result<LineUpAnswer, LineUpRefusal> {
  const known = knownSizes(q);
  const missing = q.layout.needs.filter((name) => !known[name]);
  if (missing.length > 0) return refuse({ code: 'sizes-missing', names: missing });
  const isMirrored = q.layout.hasSide && q.side === 'left';
  const layout = inOrder(isMirrored ? mirrored(q.layout) : q.layout, q.first);
  const { solved, bound, free } = solveChain(layout, known);
  if (free.length > 0) return refuse({ code: 'lengths-free', names: free.map(({ name }) => name) });
  const spacers = spacersInOrder(layout, solved, isMirrored).map((one) => spacerOf(one, known, q));
  const lines = bound.map((miss) =>
    lineCheck(miss, { isMirrored, limit: q.limits.line, givers: layout.rivals?.givers ?? [], known }),
  );
  return worked({
    spacers,
    gives: spacers.some(({ value }) => isNegative(value)) ? givesForRoom(spacers, layout.givers, known) : [],
    held: heldBy(
      layout,
      bound.map(({ name }) => name),
    ),
    checks: [...lines, ...centreChecks(q, known), ...discChecks(q, known)],
    ...laidOut(layout, exactSizes(solved, known), isMirrored),
  });
}

type Known = Readonly<Record<string, Estimate>>;

/** What was given, and what stands in for what was not. A spacer is never known: it is asked for. */
function knownSizes({ layout, sizes }: LineUpQuestion): Known {
  const given = Object.entries(sizes).filter(([name]) => !layout.spacers.includes(name));
  const usual = Object.entries(layout.usual).flatMap(([name, stands]) => {
    const estimate = stands === 'nothing' ? typedEstimate(zero) : sizes[stands.as];
    return estimate ? [[name, estimate] as const] : [];
  });
  return Object.fromEntries([...usual, ...given]);
}

/** The rival that counts first goes before the other: it takes the other's place in the line, and the other follows. */
function inOrder(layout: AxleLayout, first: string | undefined): AxleLayout {
  const { rivals, conditions } = layout;
  const winner = conditions.find(({ name }) => name === first);
  if (!rivals || !winner || !rivals.conditions.includes(winner.name)) return layout;
  return { ...layout, conditions: [winner, ...conditions.filter((one) => one !== winner)] };
}

function spacersInOrder(
  { parts, spacers }: AxleLayout,
  solved: readonly SolvedLength[],
  isMirrored: boolean,
): readonly SolvedLength[] {
  const inLine = parts.map(({ name }) => name).filter((name) => spacers.includes(name));
  const besides = spacers.filter((name) => !inLine.includes(name));
  const names = [...(isMirrored ? inLine.toReversed() : inLine), ...besides];
  return names.flatMap((name) => solved.find((one) => one.name === name) ?? []);
}

function spacerOf(wanted: SolvedLength, sizes: Known, { onHand, limits, step }: LineUpQuestion): Spacer {
  const room = verdictOf({
    value: wanted.value,
    halfWidth: wanted.band.halfWidth,
    limits: { lower: zero, source: 'a part has no less than no length' },
  });
  const deed = spacerDeed({ wanted, sizes, onHand: onHand[wanted.name], limit: limits.spacer, step });
  return { ...wanted, room, deed };
}

function discChecks({ layout, slides, limits }: LineUpQuestion, known: Known): readonly LineUpCheck[] {
  return layout.discs
    .flatMap((disc) => {
      const read = discReadChecks(disc, known);
      return [
        sidePlayCheck(disc, known, { limits, slides }),
        slides === 'bracket' ? padWearCheck(disc, known, limits.wearMargin) : undefined,
        ...(read.length > 0 ? read : [discCheck(disc, known)]),
      ];
    })
    .filter((check) => check !== undefined);
}

function centreChecks({ layout, limits }: LineUpQuestion, known: Known): readonly LineUpCheck[] {
  const check = hasWheelCentre(layout) ? centreReadCheck(known, limits.line) : undefined;
  return check ? [check] : [];
}

/** Wishes the spacers fulfil: neither those that gave way, nor those that only name a spacer's length. */
function heldBy({ conditions, spacers }: AxleLayout, bound: readonly string[]): readonly string[] {
  return conditions
    .filter(({ name, is }) => !bound.includes(name) && !is.some(({ of }) => spacers.includes(of)))
    .map(({ name }) => name);
}

function exactSizes(solved: readonly SolvedLength[], known: Known): Known {
  return { ...known, ...Object.fromEntries(solved.map(({ name, value }) => [name, typedEstimate(value)])) };
}

function laidOut(layout: Chain, sizes: Known, isMirrored: boolean) {
  const length = (form: Form) => evaluate(form, sizes).value;
  const parts = layout.parts.map(({ name, length: shares }) => ({ name, length: length(formOf(shares)) }));
  const [first] = layout.parts;
  const start: Place = { part: first?.name ?? '', face: 'left' };
  const planes = layout.datums.map(({ name }) => ({
    name,
    at: length(distanceForm(layout, start, { datum: name })),
  }));
  if (!isMirrored) return { parts, planes };
  const whole = sum(parts.map((part) => part.length));
  return {
    parts: parts.toReversed(),
    planes: planes.map(({ name, at }) => ({ name, at: minus(whole, at) })).toReversed(),
  };
}
