import { featureKindOf } from '../cut/cut-progress.ts';
import { firstLimit, lastLimit, metalBetween, sizeAfterTaking } from '../cut/cut.ts';
import { bandOf, typedEstimate } from '../reading/estimate.ts';
import { absolute, isMore, minus, negate } from '../length/length.ts';
import { leavesMoreWhenLarge } from '../length/metal-on.ts';
import { whatWouldSettle } from '../reading/settle.ts';
import { shimsFromDrawer } from '../shim/shims.ts';
import { ruledOut, type WayOut } from './ways-out-kinds.ts';
import type { WaysOutQuestion } from './ways-out.ts';

/**
 * Measure again before anything else, as long as the tool could have erred by as much as it is past.
 *
 * Units:   past and half width off the size.
 * Refuses: (as out) proved-past.
 */
export function measureAgainWay(q: WaysOutQuestion): WayOut {
  const past = negate(metalBetween(q.of, q.present, lastLimit(q)));
  const open = { kind: 'measure-again', state: 'open', irreversibleSteps: 0, past } as const;
  if (!q.tool) return open;
  const { halfWidth } = bandOf(typedEstimate(q.present, q.tool));
  if (isMore(past, halfWidth)) return ruledOut('measure-again', { code: 'proved-past', past, halfWidth });
  const settler = whatWouldSettle({
    value: q.present,
    limits: { lower: q.lower, upper: q.upper, source: q.limitsFrom },
    legs: [{ kind: featureKindOf(q.of), size: q.present, coefficient: 1 }],
    tools: q.tools,
  });
  return { ...open, halfWidth, ...(settler && { settler }) };
}

/**
 * A shim of what is missing: beside a part cut too short, under one in a recess or slot cut too deep or too wide.
 *
 * Units:   missing to the target; from where to where the limits hold with it. The pick is the drawer's best.
 * Source:  shims.ts.
 */
export function shimWay(q: WaysOutQuestion): WayOut {
  // The last limit is the nearer one: the metal is gone past it.
  const aim = absolute(minus(q.present, q.target));
  const lower = absolute(minus(q.present, lastLimit(q)));
  const upper = absolute(minus(q.present, firstLimit(q)));
  // A shim beside a part adds to its error, one in a recess takes from it.
  const coefficient = leavesMoreWhenLarge(q.of) ? -1 : 1;
  const beside = q.tool ? [{ estimate: typedEstimate(q.present, q.tool), coefficient }] : [];
  const picked = q.drawer && shimsFromDrawer({ drawer: q.drawer, aim, lower, upper, beside });
  return {
    kind: 'shim',
    state: 'open',
    irreversibleSteps: 0,
    missing: aim,
    lower,
    upper,
    ...(picked?.ok && { pick: picked.value }),
    ...(picked && !picked.ok && { whyNoPick: picked.refusal }),
  };
}

/**
 * A new part, from a blank with metal enough for the finishing passes.
 *
 * Units:   blank = target with the finishing allowance still on it: at least so large outside or long, at most so wide
 *          or deep where metal stands around it.
 */
export function newPartWay(q: WaysOutQuestion): WayOut {
  return {
    kind: 'new-part',
    state: 'open',
    irreversibleSteps: 1,
    of: q.of,
    blank: sizeAfterTaking(q.of, q.target, negate(q.finish)),
    finish: q.finish,
  };
}
