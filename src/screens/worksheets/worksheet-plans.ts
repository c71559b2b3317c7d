import { axleLineUpPlan } from './axle-line-up-plan.ts';
import { bearingSeatPlan } from './bearing-seat-plan.ts';
import { bushingPlan } from './bushing-plan.ts';
import { fitPlan } from './fit-plan.ts';
import { holeAndPinPlan } from './hole-and-pin-plan.ts';
import { spacerStackPlan } from './spacer-stack-plan.ts';
import { threadInsertPlan } from './thread-insert-plan.ts';
import { steeringGeometryPlan } from './steering-geometry-plan.ts';
import { threadEngagementPlan } from './thread-engagement-plan.ts';
import { worksheets, type WorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import type { WorksheetPlan } from './worksheet-plan.ts';

/** Every kind of worksheet, in the order a job meets them. A new kind is added here and in worksheet-views.tsx. */
export const worksheetPlans: readonly WorksheetPlan[] = [
  spacerStackPlan,
  holeAndPinPlan,
  fitPlan,
  bushingPlan,
  threadInsertPlan,
  planFromKind('ring'),
  bearingSeatPlan,
  axleLineUpPlan,
  threadEngagementPlan,
  steeringGeometryPlan,
];

export function planOf(kind: string): WorksheetPlan | undefined {
  return worksheetPlans.find((plan) => plan.kind === kind);
}

/** A kind of the registry as those that ask for plans still know it. */
function planFromKind(kind: WorksheetKind): WorksheetPlan {
  const { name, asks, needs, fields, starts } = worksheets[kind];
  return {
    kind,
    name,
    asks,
    needs,
    fields: Object.entries(fields).map(([field, plan]) => ({ name: field, ...plan })),
    choices: starts,
    parts: [],
  };
}
