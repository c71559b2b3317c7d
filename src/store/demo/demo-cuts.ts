import { lengthOf, type Unit } from '../../engine/length/length.ts';
import { usualTools } from '../../engine/reading/measuring-tool.ts';
import type { Entry } from '../../engine/length/entry.ts';
import { basisOf } from '../kept/basis.ts';
import type { DemoReading } from './demo-jobs.ts';
import { inForce } from '../kept/readings.ts';
import type { Cut, CutPass, Worksheet } from '../base/records.ts';
import { featuresIn } from '../kept/worksheets.ts';

/** The demo's cuts: one to begin, one on the lathe, one whose blank nobody has measured. Invented, as all of the demo. */
export function demoCuts(outfit: string, nowMs: number): Cut[] {
  const cut = (own: OwnCut, index: number): Cut => ({
    jobId: outfit,
    cuttingTool: 'hss',
    machine: 'lathe',
    state: 'to-cut',
    passes: {},
    createdAt: nowMs + index,
    touchedAt: nowMs + index,
    ...own,
  });
  return [
    {
      id: 'demo-cut-spacer',
      worksheetId: 'demo-bracket-float',
      name: 'Outer spacer, faced to length',
      part: 'outer spacer',
      operation: 'face' as const,
      of: 'length' as const,
      blank: inches('1.1452'),
      target: inches('1.113'),
      lower: inches('1.1113'),
      upper: inches('1.1147'),
      limitsFrom: 'float .008 to .012 less what the readings leave unsure',
      material: 'stainless-303',
    },
    {
      id: 'demo-cut-ring',
      name: 'Dust ring, outside',
      part: 'dust ring',
      operation: 'ring' as const,
      of: 'outside' as const,
      blank: inches('1.625'),
      target: inches('1.498'),
      lower: inches('1.4975'),
      upper: inches('1.4985'),
      limitsFrom: 'recess 1.500 less clearance',
      material: 'stainless-303',
      largestTake: inches('.036'),
      state: 'cutting' as const,
      passes: {
        'demo-pass-1': micrometer(nowMs - 120_000, '1.5895', '.036'),
        'demo-pass-2': micrometer(nowMs - 60_000, '1.5540', '.036'),
      },
    },
    {
      id: 'demo-cut-bushing',
      worksheetId: 'demo-link-bushing',
      name: 'Link bushing, outside',
      part: 'link bushing',
      operation: 'turn' as const,
      of: 'outside' as const,
      target: inches('.5633'),
      lower: inches('.5631'),
      upper: inches('.5634'),
      limitsFrom: 'FN1 in the reamed bore',
      material: 'bearing-bronze',
    },
  ].map(cut);
}

type Ground = { readonly worksheets: readonly Worksheet[]; readonly readings: readonly DemoReading[] };

/** A cut with what its worksheet stood on when it was put down, so that a later change is noticed. */
export function withBasis(cut: Cut, { worksheets, readings }: Ground): Cut {
  const worksheet = worksheets.find(({ id }) => id === cut.worksheetId);
  if (!worksheet) return cut;
  const features = featuresIn(worksheet);
  const counting = readings.filter(
    ({ feature, struckOutWhy }) => features.has(feature.id) && struckOutWhy === undefined,
  );
  return { ...cut, basis: basisOf(worksheet, counting) };
}

type OwnCut = Pick<
  Cut,
  'id' | 'name' | 'part' | 'operation' | 'of' | 'target' | 'lower' | 'upper' | 'limitsFrom'
> &
  Partial<Cut>;

function inches(typed: string): Entry {
  const unit: Unit = 'in';
  return { typed, unit, exact: lengthOf(`${typed} ${unit}`) };
}

function micrometer(at: number, measured: string, asked: string): CutPass {
  const tool = usualTools.find(({ id }) => id === 'micrometer-1-2');
  return { at, measured: inches(measured), asked: inches(asked), ...(tool && { tool: inForce(tool) }) };
}
