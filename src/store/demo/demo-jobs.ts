import type { Unit } from '../../engine/length/length.ts';
import { usualTools, type FeatureKind, type ToolInForce } from '../../engine/reading/measuring-tool.ts';
import type { Direction, Place } from '../../engine/reading/reading.ts';
import { demoRechecks, demoSteps } from './demo-assembly.ts';
import { demoChecks } from './demo-checks.ts';
import { demoCuts, withBasis } from './demo-cuts.ts';
import { demoJobIds } from './demo-job-ids.ts';
import { demoWorksheets } from './demo-worksheets.ts';
import { inForce } from '../kept/readings.ts';
import type {
  AssemblyStep,
  Check,
  Cut,
  Feature,
  Job,
  MoneyLine,
  Part,
  PartOrigin,
  Recheck,
  System,
  Worksheet,
} from '../base/records.ts';

export type DemoReading = {
  readonly id: string;
  readonly feature: Feature;
  readonly typed: string;
  readonly unit: Unit;
  readonly tool: ToolInForce;
  readonly place?: Place;
  readonly direction?: Direction;
  readonly struckOutWhy?: string;
};

/** The invented demo: two jobs with everything in them. */
export type Demo = {
  readonly jobs: readonly Job[];
  readonly parts: readonly Part[];
  readonly features: readonly Feature[];
  readonly readings: readonly DemoReading[];
  readonly worksheets: readonly Worksheet[];
  readonly cuts?: readonly Cut[];
  readonly checks?: readonly Check[];
  readonly steps?: readonly AssemblyStep[];
  readonly rechecks?: readonly Recheck[];
  readonly money?: readonly MoneyLine[];
};

type Reads = readonly (readonly [typed: string, place?: Place, direction?: Direction])[];

type DemoFeature = {
  readonly id: string;
  readonly part: string;
  readonly kind: FeatureKind;
  readonly name: string;
  readonly unit: Unit;
  readonly tool: string;
  readonly reads: Reads;
  readonly struckOut?: readonly [typed: string, why: string];
};

const outfitFeatures: readonly DemoFeature[] = [
  {
    id: 'demo-link-bore',
    part: 'demo-swing-arm',
    kind: 'bore',
    name: 'Shock-link bore, left',
    unit: 'in',
    tool: 'telescoping-gauge',
    reads: [
      ['.4487', 'middle', '0'],
      ['.4490', 'middle', '0'],
      ['.4485', 'middle', '0'],
    ],
    struckOut: ['.4950', 'read on the burr'],
  },
  {
    id: 'demo-link-bolt',
    part: 'demo-link-bolts',
    kind: 'pin',
    name: 'Link bolt, shank',
    unit: 'in',
    tool: 'micrometer-0-1',
    reads: [
      ['.4370', 'middle', '0'],
      ['.4369', 'middle', '0'],
      ['.4370', 'middle', '0'],
    ],
    struckOut: ['4.370', 'point slipped'],
  },
  {
    id: 'demo-sleeve',
    part: 'demo-sleeve-part',
    kind: 'length',
    name: 'Bracket sleeve',
    unit: 'in',
    tool: 'micrometer-1-2',
    reads: [
      ['1.9982', 'middle'],
      ['1.9983', 'middle'],
      ['1.9981', 'middle'],
    ],
    struckOut: ['1.9870', 'anvils not square'],
  },
  {
    id: 'demo-bracket',
    part: 'demo-bracket-part',
    kind: 'length',
    name: 'Bracket over its boss',
    unit: 'in',
    tool: 'micrometer-0-1',
    reads: [
      ['.7502', 'middle'],
      ['.7501', 'middle'],
      ['.7503', 'middle'],
    ],
    struckOut: ['.7620', 'paint on the face'],
  },
  {
    id: 'demo-spacer',
    part: 'demo-spacer-part',
    kind: 'length',
    name: 'Outer spacer',
    unit: 'in',
    tool: 'micrometer-1-2',
    reads: [
      ['1.1452', 'middle'],
      ['1.1451', 'middle'],
      ['1.1453', 'middle'],
    ],
    struckOut: ['1.1540', 'figures swapped'],
  },
  {
    id: 'demo-hub',
    part: 'demo-rear-wheel',
    kind: 'length',
    name: 'Hub over the bearings',
    unit: 'in',
    tool: 'digital-caliper',
    reads: [
      ['4.4120', 'middle'],
      ['4.4125', 'middle'],
      ['4.4115', 'middle'],
    ],
    struckOut: ['4.4300', 'bearing not down'],
  },
];

const trailerFeatures: readonly DemoFeature[] = [
  {
    id: 'demo-spindle-seat',
    part: 'demo-spindle',
    kind: 'pin',
    name: 'Spindle, outer seat',
    unit: 'mm',
    tool: 'micrometer-0-25-mm',
    reads: [
      ['24.985', 'middle', '0'],
      ['24.987', 'middle', '0'],
      ['24.984', 'middle', '0'],
    ],
    struckOut: ['25.485', 'half turn of the thimble missed'],
  },
  {
    id: 'demo-bearing-bore',
    part: 'demo-bearing',
    kind: 'bore',
    name: 'Outer bearing, inside',
    unit: 'mm',
    tool: 'dial-bore-gauge',
    reads: [
      ['25.000', 'middle', '0'],
      ['24.998', 'middle', '0'],
      ['25.001', 'middle', '0'],
    ],
    struckOut: ['25.040', 'grit in the gauge'],
  },
];

/** The whole demo as it stands at a time. Everything happened in the days before. */
export function demoAt(nowMs: number): Demo {
  const [outfit, trailer] = demoJobIds;
  const job = (
    id: string,
    own: { name: string; what: string; customer: string; machine: string; systems: readonly System[] },
    behindMs: number,
  ) => ({
    id,
    ...own,
    state: 'open' as const,
    customerNote: 'Demo data: every name and number here is invented.',
    demo: true,
    createdAt: nowMs - behindMs,
    touchedAt: nowMs - behindMs,
  });
  const sets = [
    ...outfitFeatures.map((one, index) => ({ one, feature: featureOf(one, outfit, nowMs + index) })),
    ...trailerFeatures.map((one, index) => ({ one, feature: featureOf(one, trailer, nowMs + index) })),
  ];
  const worksheets = demoWorksheets(outfit, trailer, nowMs);
  const readings = sets.flatMap(({ one, feature }) => readingsOfDemo(one, feature));
  return {
    jobs: [
      job(
        outfit,
        {
          name: 'Outfit 7',
          what: 'Grass-track sidecar outfit: a swing arm made for another frame, a donor rear wheel and a donor brake on a floating bracket',
          customer: 'The sidecar club (demo)',
          machine: 'Outfit with a swing arm of its own',
          systems: ['brake', 'axle', 'wheel'],
        },
        0,
      ),
      job(
        trailer,
        {
          name: 'Boat-trailer hub',
          what: 'Hub rebuilt with metric bearings',
          customer: 'Harbor yard (demo)',
          machine: 'Boat trailer, one axle',
          systems: ['axle', 'wheel'],
        },
        1,
      ),
    ],
    parts: demoParts(outfit, trailer),
    features: sets.map(({ feature }) => feature),
    readings,
    worksheets,
    cuts: demoCuts(outfit, nowMs).map((cut) => withBasis(cut, { worksheets, readings })),
    checks: demoChecks(outfit, nowMs),
    steps: demoSteps(outfit, nowMs),
    rechecks: demoRechecks(outfit, nowMs),
  };
}

function featureOf({ id, part, kind, name }: DemoFeature, jobId: string, createdAt: number): Feature {
  return { id, jobId, partId: part, kind, name, createdAt };
}

function readingsOfDemo({ id, unit, tool, reads, struckOut }: DemoFeature, feature: Feature): DemoReading[] {
  const common = { feature, unit, tool: toolNamed(tool) };
  const struck = struckOut
    ? [{ ...common, id: `${id}-struck`, typed: struckOut[0], struckOutWhy: struckOut[1] }]
    : [];
  const counted = reads.map(([typed, place, direction], index) => ({
    ...common,
    id: `${id}-${index + 1}`,
    typed,
    ...(place ? { place } : {}),
    ...(direction ? { direction } : {}),
  }));
  return [...struck, ...counted];
}

function toolNamed(id: string): ToolInForce {
  const tool = usualTools.find((one) => one.id === id);
  if (!tool) throw new Error(`the demo names a tool that isn't there: ${id}`);
  return inForce(tool);
}

function demoParts(outfit: string, trailer: string): Part[] {
  const part = (id: string, jobId: string, name: string, origin: PartOrigin): Part => ({
    id,
    jobId,
    name,
    origin,
  });
  return [
    part('demo-swing-arm', outfit, 'Swing arm', 'donor'),
    part('demo-link-bolts', outfit, 'Shock-link bolts 7/16-20', 'bought'),
    part('demo-rear-wheel', outfit, 'Rear wheel', 'donor'),
    part('demo-bracket-part', outfit, 'Brake bracket', 'donor'),
    part('demo-sleeve-part', outfit, 'Bracket sleeve', 'made'),
    part('demo-spacer-part', outfit, 'Outer spacer', 'mock-up'),
    part('demo-spindle', trailer, 'Spindle', 'kit'),
    part('demo-bearing', trailer, 'Outer bearing', 'bought'),
  ];
}
