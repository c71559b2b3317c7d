import type { AxleLayoutName, AxleSide } from '../../engine/worksheets/axle-line-up/axle-layout.ts';
import { axleLayouts } from '../../engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { axleFields, layoutField } from './axle-line-up-fields.ts';
import type { WorksheetPlan } from './worksheet-plan.ts';

type Choices = Readonly<Record<string, string>>;

export function isAxleLayout(name: string | undefined): name is AxleLayoutName {
  return name !== undefined && Object.hasOwn(axleLayouts, name);
}

export function axleSide(choices: Choices): AxleSide {
  return choices['side'] === 'left' ? 'left' : 'right';
}

/** What this axle needs and is asked, once it is known what sits on it. */
function forChoices(choices: Choices): Pick<WorksheetPlan, 'needs' | 'fields'> {
  const name = choices['layout'];
  if (!isAxleLayout(name)) return { needs: ['layout'], fields: [layoutField] };
  const { hasSide, needs } = axleLayouts[name];
  return {
    needs: ['layout', ...(hasSide ? ['side'] : []), ...needs],
    fields: axleFields(name, axleSide(choices)),
  };
}

export const axleLineUpPlan: WorksheetPlan = {
  kind: 'axle-line-up',
  name: 'Axle line-up',
  asks: 'Which spacers put the wheel on centre, and the brake over its disc?',
  ...forChoices({}),
  forChoices,
  choices: {},
  parts: [],
};
