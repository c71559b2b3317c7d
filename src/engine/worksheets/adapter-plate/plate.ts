import {
  dividedBy,
  floatMm,
  isLess,
  isMore,
  minus,
  negate,
  plus,
  zero,
  type Length,
} from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { mean } from '../../reading/estimate.ts';
import { bestTurn } from './best-turn.ts';
import {
  laidPlate,
  roughlyToEdge,
  setTo,
  toEdge,
  type LaidHole,
  type LaidPlate,
  type PlateHole,
} from './laid-plate.ts';
import type { PatternName, PatternRefusal } from './pattern.ts';
import type { PlateQuestion } from './plate-question.ts';
import { apart, floatSpot, type Spot } from './spots.ts';
import { judgedPlate, type JudgedPlace } from './webs.ts';

export type PlateRefusal =
  | PatternRefusal
  | {
      readonly code: 'overlap';
      readonly holes: readonly [string, string];
      readonly by: Length;
      readonly turn?: number | undefined;
    }
  | { readonly code: 'off-plate'; readonly hole: string; readonly by: Length }
  | { readonly code: 'into-bore'; readonly hole: string; readonly by: Length }
  | {
      readonly code: 'head-too-small';
      readonly pattern: PatternName;
      readonly head: Length;
      readonly hole: Length;
    }
  | {
      readonly code: 'head-through';
      readonly pattern: PatternName;
      readonly deep: Length;
      readonly thick: Length;
    }
  | { readonly code: 'no-edges' };

export type PlateAnswer = Omit<LaidPlate, 'holes'> & {
  readonly holes: readonly PlateHole[];
  /** Nobody said the turn: it is none where that leaves enough between the holes, else the one that leaves most. */
  readonly turnIsWorkedOut: boolean;
  /** The turn that leaves most between the holes, where the one that is asked for leaves too little. */
  readonly betterTurn?: number | undefined;
  readonly judged: readonly JudgedPlace[];
};

/**
 * An adapter plate: where every hole of both patterns stands from the chosen zero, and what is left between them and beside them.
 *
 * Units:   pattern B is turned counterclockwise round its own middle, then moved. Coordinates exact for points and whole
 *          quarters; else trigonometry in floating point, back in 0.0000001 mm, and rounded to the finest figure to be set.
 *          Webs = middle to middle less half of each hole, judged with the bands of the sizes and with what each hole may
 *          stand off its place; least webs by tables/least-webs.ts.
 * Range:   two holes and more a pattern; one pattern or two.
 * Refuses: what a pattern refuses; overlap (with the turn that would part them), off-plate, into-bore, head-too-small,
 *          head-through, no-edges (a zero at edges of no plate).
 * Source:  geometry; EN 1993-1-8 table 3.3 for least webs, from memory.
 */
export function adapterPlate(q: PlateQuestion): Result<PlateAnswer, PlateRefusal> {
  const heads = headFault(q);
  if (heads) return refuse(heads);
  if (q.zero === 'edges' && q.outline.is === 'none') return refuse({ code: 'no-edges' });
  const turned = withTurn(q);
  const laid = laidPlate(turned, mean);
  if (!laid.ok) return laid;
  const { holes } = laid.value;
  const fault = overlapFault(q, laid.value) ?? edgeFault(q, holes);
  if (fault) return refuse(fault);
  const judged = judgedPlate(turned, laid.value);
  const isTight = judged.some(({ of, judged: { verdict } }) => of === 'web' && verdict.kind !== 'good');
  const better = isTight ? bestTurn(q, { keepsNone: false }) : undefined;
  return worked({
    ...laid.value,
    holes: holes.map((hole) => ({ ...hole, set: setTo(hole.spot, laid.value, q.finest) })),
    turnIsWorkedOut: q.b !== undefined && q.b.turnDegrees === undefined,
    ...(better !== undefined && better !== laid.value.b?.turnDegrees && { betterTurn: better }),
    judged,
  });
}

/** With the turn of pattern B: none where that leaves enough, else the one that leaves most, where nobody said it. */
function withTurn(q: PlateQuestion): PlateQuestion {
  if (!q.b || q.b.turnDegrees !== undefined) return q;
  return { ...q, b: { ...q.b, turnDegrees: bestTurn(q, { keepsNone: true }) ?? 0 } };
}

function headFault(q: PlateQuestion): PlateRefusal | undefined {
  const patterns = [['A', q.a] as const, ...(q.b ? [['B', q.b] as const] : [])];
  for (const [pattern, { head, hole }] of patterns) {
    if (!head) continue;
    if (!isMore(head.across, hole)) return { code: 'head-too-small', pattern, head: head.across, hole };
    const thick = q.thick && mean(q.thick);
    if (thick && head.deep && !isLess(head.deep, thick))
      return { code: 'head-through', pattern, deep: head.deep, thick };
  }
  return undefined;
}

/** The two holes that run into each other furthest, looked for in floating point; by how much is exact. */
function overlapFault(q: PlateQuestion, { holes, b }: LaidPlate): PlateRefusal | undefined {
  const worst = furthestInto(holes);
  if (!worst) return undefined;
  const [one, other] = worst;
  const by = minus(dividedBy(plus(one.hole, other.hole), 2), apart(one.spot, other.spot));
  if (isLess(by, zero)) return undefined;
  const turn = one.pattern === other.pattern ? undefined : bestTurn(q, { keepsNone: false });
  return {
    code: 'overlap',
    holes: [one.name, other.name],
    by,
    ...(turn !== undefined && turn !== b?.turnDegrees && { turn }),
  };
}

// Holes that are alike all round differ by rounding only.
const ALIKE_MM = 0.00001;

function furthestInto(holes: readonly LaidHole[]): readonly [LaidHole, LaidHole] | undefined {
  const rough = holes.map((of) => ({ of, ...floatSpot(of.spot), radius: floatMm(of.hole) / 2 }));
  let worst: readonly [LaidHole, LaidHole] | undefined;
  let most = -Infinity;
  for (const [index, one] of rough.entries())
    for (const other of rough.slice(index + 1)) {
      const over = one.radius + other.radius - Math.hypot(one.x - other.x, one.y - other.y);
      if (over <= most + ALIKE_MM) continue;
      most = over;
      worst = [one.of, other.of];
    }
  return worst;
}

const MIDDLE: Spot = { x: zero, y: zero };

/** The hole that runs furthest out, or into the middle one: looked for in floating point; by how much is exact. */
function edgeFault({ outline, bore }: PlateQuestion, holes: readonly LaidHole[]): PlateRefusal | undefined {
  if (outline.is !== 'none') {
    const out = nearest(holes, ({ spot, hole }) => roughlyToEdge(outline, spot, mean) - floatMm(hole) / 2);
    const left = out && minus(toEdge(outline, out.spot, mean), dividedBy(out.hole, 2));
    if (out && left && !isMore(left, zero)) return { code: 'off-plate', hole: out.name, by: negate(left) };
  }
  if (!bore) return undefined;
  const into = nearest(holes, ({ spot, hole }) => {
    const { x, y } = floatSpot(spot);
    return Math.hypot(x, y) - floatMm(hole) / 2;
  });
  const beside = into && minus(apart(into.spot, MIDDLE), dividedBy(plus(into.hole, bore), 2));
  return into && beside && !isMore(beside, zero)
    ? { code: 'into-bore', hole: into.name, by: negate(beside) }
    : undefined;
}

/** The first of those that have least left. */
function nearest(holes: readonly LaidHole[], leftMm: (hole: LaidHole) => number): LaidHole | undefined {
  let found: LaidHole | undefined;
  let least = Infinity;
  for (const hole of holes) {
    const left = leftMm(hole);
    if (left >= least - ALIKE_MM) continue;
    least = left;
    found = hole;
  }
  return found;
}
