import { axleLineUpPlan } from './axle-line-up-plan.ts';
import { bearingSeatPlan } from './bearing-seat-plan.ts';
import { bushingPlan } from './bushing-plan.ts';
import { fitPlan } from './fit-plan.ts';
import { holeAndPinPlan } from './hole-and-pin-plan.ts';
import { ringPlan } from './ring-plan.ts';
import { spacerStackPlan } from './spacer-stack-plan.ts';
import { threadInsertPlan } from './thread-insert-plan.ts';
import { steeringGeometryPlan } from './steering-geometry-plan.ts';
import { threadEngagementPlan } from './thread-engagement-plan.ts';
import type { WorksheetPlan } from './worksheet-plan.ts';

/** Every kind of worksheet, in the order a job meets them. A new kind is added here and in worksheet-views.tsx. */
export const worksheetPlans: readonly WorksheetPlan[] = [
  spacerStackPlan,
  holeAndPinPlan,
  fitPlan,
  bushingPlan,
  threadInsertPlan,
  ringPlan,
  bearingSeatPlan,
  axleLineUpPlan,
  threadEngagementPlan,
  steeringGeometryPlan,
];

export function planOf(kind: string): WorksheetPlan | undefined {
  return worksheetPlans.find((plan) => plan.kind === kind);
}
