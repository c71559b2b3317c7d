import { mirrored, type AxleLayout, type AxleSide } from './axle-layout.ts';
import { distanceForm, solveChain, type Chain, type Place, type SolvedLength } from './chain.ts';
import { evaluate, formOf, type Form } from './chain-form.ts';
import { typedEstimate, type Estimate } from '../../reading/estimate.ts';
import { isNegative, isZero, minus, sum, zero, type Length } from '../../length/length.ts';
import { lineCheck, type LineUpCheck } from './line-up-checks.ts';
import { discChecks, openDisc, type OpenDisc } from './line-up-discs.ts';
import { checkOfEnd, type Places } from './line-up-ends.ts';
import { fittingOf, type FittedSpacer, type Fitting } from './line-up-fitting.ts';
import { givesForRoom, type Give } from './line-up-gives.ts';
import { CENTRE_READ, centreReadChecks, hasWheelCentre, readOfDisc } from './line-up-read.ts';
import type { SpacerDeed } from './line-up-spacer.ts';
import type { ToolInForce } from '../../reading/measuring-tool.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { usualLeastLength } from '../../fit/tables/least-part.ts';
import type { LineUpLimits } from './tables/line-up-limits.ts';
import { verdictOf, type Verdict } from '../../reading/verdict.ts';

/** What was read on the machine before a part was cut as it had asked; the sum doesn't stand in for it. */
export type ReadAgain = { readonly name: string; readonly why: string };

export type LineUpQuestion = {
  readonly layout: AxleLayout;
  /** Of the disc, the drum or the outer face; it says nothing where the layout has both. */
  readonly side: AxleSide;
  /** By the layout's names; `padWear`, and a disc's slot width and thickness, where they are known. */
  readonly sizes: Readonly<Record<string, Estimate>>;
  /** Parts on hand, by the spacer's name. */
  readonly onHand: Readonly<Record<string, Estimate>>;
  /** The smallest and largest place of a size or a part on hand, by the same names, where several were read. */
  readonly places?: Readonly<Record<string, Places>>;
  /** Which of two rivals counts first; the other gives way. */
  readonly first?: string;
  /** What follows the pads as they wear: if the bracket does, it needs the float for it. */
  readonly slides?: 'bracket' | 'caliper';
  readonly limits: LineUpLimits;
  /** Shorter than that no spacer is faced; .020 in where it is left out. */
  readonly usualLeast?: Length;
  /** What a part that is still to be cut will be measured with when its size is given back; exactly where it is left out. */
  readonly cutReadWith?: ToolInForce;
  readonly readAgain?: readonly ReadAgain[];
  /** The dial's step for lengths. */
  readonly step: Length;
};

export type Spacer = SolvedLength & {
  /** Whether it has any room at all: its length against zero. */
  readonly room: Verdict;
  readonly deed: SpacerDeed;
  /** As it will lie on the axle: as it was measured, or as it is cut. What is drawn, said and kept is this one. */
  readonly fitted: Length;
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
  /** Discs that may rub for all that is known: as long as there is one nothing is good. */
  readonly openDiscs: readonly OpenDisc[];
  /** Whether a bracket follows its pads and nobody said how far they wear: as long as that is so nothing is good. */
  readonly openWear: boolean;
  /** What has to be read once more: as long as there is one nothing is good. */
  readonly readAgain: readonly ReadAgain[];
  /** What the limits of all parts share, each at the worst of what all may be at once. */
  readonly shared: readonly LineUpCheck[];
  /** The spacers in the order of work: what is cut to the others comes last. */
  readonly workOrder: readonly string[];
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
  const usualLeast = q.usualLeast ?? usualLeastLength.in;
  const fitting = fittingOf({
    ...q,
    layout,
    known,
    places: q.places ?? {},
    slides: q.slides,
    usualLeast,
    cutReadWith: q.cutReadWith,
  });
  const spacers = spacersInOrder(layout, fitting.spacers, isMirrored).map((spacer) =>
    q.onHand[spacer.name]?.doubt ? { ...spacer, band: { ...spacer.band, doubt: true as const } } : spacer,
  );
  const lines = bound.map((miss) =>
    lineCheck(miss, { isMirrored, limit: q.limits.line, givers: layout.rivals?.givers ?? [], known }),
  );
  const { limits, slides } = q;
  const ofDiscs = q.layout.discs.flatMap((disc) => discChecks(disc, { known, limits, slides, fitting }));
  return worked({
    spacers,
    gives: givesOf(spacers, layout, known),
    held: heldBy(
      layout,
      bound.map(({ name }) => name),
    ),
    checks: [...lines, ...centreChecks(q, known), ...ofDiscs],
    openDiscs: q.layout.discs.flatMap((disc) => openDisc(disc, known)),
    openWear: q.layout.discs.length > 0 && slides === 'bracket' && !known['padWear'],
    readAgain: q.readAgain ?? [],
    shared: sharedChecks(q, { known, fitting, lines, isMirrored }),
    workOrder: layout.workOrder,
    ...laidOut(layout, exactSizes(solved, known), isMirrored),
  });
}

/** The spacers in the order of work, whichever side the disc is on: what is cut to the others never comes first. */
export function inWorkOrder({ spacers, workOrder }: LineUpAnswer): readonly Spacer[] {
  return workOrder.flatMap((name) => spacers.find((one) => one.name === name) ?? []);
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
  fitted: readonly FittedSpacer[],
  isMirrored: boolean,
): readonly Spacer[] {
  const inLine = parts.map(({ name }) => name).filter((name) => spacers.includes(name));
  const besides = spacers.filter((name) => !inLine.includes(name));
  const names = [...(isMirrored ? inLine.toReversed() : inLine), ...besides];
  return names.flatMap((name) => {
    const found = fitted.find(({ wanted }) => wanted.name === name);
    return found ? spacerOf(found) : [];
  });
}

/** Room is made down to nothing; where a spacer only is too short to be faced, up to the least that can be. */
function givesOf(spacers: readonly Spacer[], { givers }: AxleLayout, known: Known): readonly Give[] {
  if (spacers.some(({ value }) => isNegative(value))) return givesForRoom(spacers, givers, known);
  const [least] = spacers.flatMap(({ deed }) => (deed.kind === 'too-short' ? deed.least : []));
  if (!least) return [];
  const above = spacers.map((one) => (isZero(one.value) ? one : { ...one, value: minus(one.value, least) }));
  return givesForRoom(above, givers, known);
}

function spacerOf({ wanted, deed, fitted }: FittedSpacer): Spacer {
  const room = verdictOf({
    value: wanted.value,
    ...wanted.band,
    limits: { lower: zero, source: 'a part has no less than no length' },
  });
  return { ...wanted, room, deed, fitted };
}

/** What was read on the machine stands in place of its sum; a line that gave way has its own verdict. */
function sharedChecks(
  { layout }: LineUpQuestion,
  {
    known,
    fitting: { ends, leeways },
    lines,
    isMirrored,
  }: {
    readonly known: Known;
    readonly fitting: Fitting;
    readonly lines: readonly LineUpCheck[];
    readonly isMirrored: boolean;
  },
): readonly LineUpCheck[] {
  const isRead = ({ kind, name }: LineUpCheck) => {
    const disc = layout.discs.find((one) => one.name === name);
    return (
      (kind === 'float' && disc !== undefined && known[readOfDisc(disc).float] !== undefined) ||
      (name === 'wheel centre' && Object.values(CENTRE_READ).some((one) => known[one]))
    );
  };
  const isSaid = ({ kind, name }: LineUpCheck) =>
    kind === 'wheel-place' && lines.some((line) => line.name === name && line.verdict.kind !== 'good');
  return ends
    .map((end) => checkOfEnd(end, leeways, isMirrored))
    .filter(({ kind }) => SHARED.has(kind))
    .filter((check) => !isRead(check) && !isSaid(check));
}

const SHARED: ReadonlySet<LineUpCheck['kind']> = new Set(['opening', 'float', 'wheel-place', 'slot-middle']);

function centreChecks({ layout, limits }: LineUpQuestion, known: Known): readonly LineUpCheck[] {
  return hasWheelCentre(layout) ? centreReadChecks(known, limits.line) : [];
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
