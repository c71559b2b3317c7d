import { lengthOf, type Unit } from '../../engine/length/length.ts';
import { worksheetKinds, worksheets, type WorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import type { Demo } from '../../engine/worksheets/worksheet.ts';
import type { SizeInput, TypedSize, Worksheet } from '../base/records.ts';

type DemoWorksheet = Pick<Worksheet, 'id' | 'kind' | 'title'> &
  Partial<Worksheet> & { readonly of: 'outfit' | 'trailer' };

/** Those with sizes from the demo's features. Every other kind comes as its own `demo` says. */
const WORKSHEETS: readonly DemoWorksheet[] = [
  {
    id: 'demo-bracket-float',
    of: 'outfit',
    kind: 'spacer-stack',
    title: 'Bracket float on its sleeve',
    sizes: {
      fixed: measured('demo-sleeve'),
      lower: typed('.008', 'in'),
      upper: typed('.012', 'in'),
      aim: typed('.010', 'in'),
    },
    choices: { want: 'float', fixedName: 'sleeve', cutPart: 'demo-stack-spacer' },
    parts: {
      'demo-stack-inner': {
        name: 'inner washer',
        order: 1,
        size: typed('1/16', 'in'),
        count: 1,
        adjustable: false,
      },
      'demo-stack-bracket': {
        name: 'bracket',
        order: 2,
        size: measured('demo-bracket'),
        count: 1,
        adjustable: false,
      },
      'demo-stack-spacer': {
        name: 'outer spacer',
        order: 3,
        size: measured('demo-spacer'),
        count: 1,
        adjustable: true,
        leastLength: typed('1.000', 'in'),
      },
      'demo-stack-outer': {
        name: 'outer washer',
        order: 4,
        size: typed('1/16', 'in'),
        count: 1,
        adjustable: false,
      },
    },
  },
  {
    id: 'demo-link-slop',
    of: 'outfit',
    kind: 'hole-and-pin',
    title: 'Shock link on its bolt',
    sizes: {
      bore: measured('demo-link-bore'),
      pin: measured('demo-link-bolt'),
      boreLength: typed('1-1/2', 'in'),
      reach: typed('9', 'in'),
      wall: typed('.310', 'in'),
      thickness: typed('.750', 'in'),
    },
    choices: { joint: 'located', thread: '7/16-20 UNF', shankPasses: 'no', facesCarry: 'yes' },
  },
  {
    id: 'demo-link-insert',
    of: 'outfit',
    kind: 'thread-insert',
    title: 'Insert for the link bolt',
    sizes: { hole: measured('demo-link-bore'), wall: typed('.310', 'in'), thickness: typed('.750', 'in') },
    choices: {
      thread: '7/16-20 UNF',
      metal: 'steel',
      wallKind: 'present',
      bottom: 'through',
      tap: 'plug',
    },
  },
  {
    id: 'demo-bearing-fit',
    of: 'trailer',
    kind: 'hole-and-pin',
    title: 'Bearing on the spindle',
    sizes: { bore: measured('demo-bearing-bore'), pin: measured('demo-spindle-seat') },
    choices: { joint: 'slides' },
  },
  {
    id: 'demo-rear-axle',
    of: 'outfit',
    kind: 'axle-line-up',
    title: 'Front wheel in the fork',
    sizes: {
      width: typed('6.750', 'in'),
      hub: measured('demo-hub'),
      centre: typed('2.300', 'in'),
      disc: typed('.312', 'in'),
      slot: typed('.187', 'in'),
      bracket: typed('1/2', 'in'),
      float: typed('.010', 'in'),
      slotWidth: typed('.300', 'in'),
      discThickness: typed('.160', 'in'),
    },
    choices: { layout: 'front-one-disc', side: 'right' },
  },
  {
    id: 'demo-link-bushing',
    of: 'outfit',
    kind: 'bushing',
    title: 'Bushing for the link',
    sizes: {
      bore: measured('demo-link-bore'),
      pin: measured('demo-link-bolt'),
      wall: typed('.400', 'in'),
      length: typed('1-1/2', 'in'),
    },
    choices: { joint: 'turns-under-load', partMetal: 'low-carbon-steel', bushingMetal: 'bearing-bronze' },
  },
  {
    id: 'demo-arm-pivot',
    of: 'outfit',
    kind: 'misplaced-hole',
    title: 'Arm pivot drilled off',
    sizes: {
      offBy: typed('.062', 'in'),
      apart: typed('6.000', 'in'),
      bore: typed('.501', 'in'),
      pin: typed('.499', 'in'),
      wall: typed('.750', 'in'),
      length: typed('1-1/2', 'in'),
    },
    choices: {
      found: 'offset',
      toward: '30',
      joint: 'turns',
      partMetal: 'low-carbon-steel',
      bushingMetal: 'bearing-bronze',
    },
  },
  {
    id: 'demo-link-fit',
    of: 'outfit',
    kind: 'fit',
    title: 'Fit of the link',
    sizes: {
      nominal: typed('7/16', 'in'),
      bore: measured('demo-link-bore'),
      pin: measured('demo-link-bolt'),
    },
    choices: { joint: 'turns' },
  },
  {
    id: 'demo-link-thread',
    of: 'outfit',
    kind: 'thread-engagement',
    title: 'Link bolt in the arm',
    sizes: { engaged: typed('.750', 'in'), leg1: typed('3/8', 'in'), boltLength: typed('1-1/2', 'in') },
    choices: {
      thread: '7/16-20 UNF',
      grade: 'sae-5',
      parent: 'low-carbon-steel',
      insert: 'no',
      held: 'tapped',
      hole: 'through',
      nutFactor: 'dry',
    },
  },
  {
    id: 'demo-steering',
    of: 'outfit',
    kind: 'steering-geometry',
    title: 'Longer fork',
    sizes: {
      frontRadius: typed('12.2', 'in'),
      clampOffset: typed('2', 'in'),
      rearRadius: typed('12', 'in'),
      wheelbase: typed('57', 'in'),
      forkLonger: typed('1', 'in'),
    },
    choices: { rake: '27' },
  },
  {
    id: 'demo-dust-ring',
    of: 'trailer',
    kind: 'ring',
    title: 'Dust ring',
    sizes: {
      recess: typed('47.00', 'mm'),
      stem: typed('25.00', 'mm'),
      depth: typed('4.0', 'mm'),
      stayFree: typed('0.5', 'mm'),
    },
    choices: { locates: 'recess' },
  },
  {
    id: 'demo-hub-bearings',
    of: 'trailer',
    kind: 'bearing-seat',
    title: 'Sleeve between the bearings',
    sizes: { between: typed('62.40', 'mm'), sleeve: typed('62.45', 'mm') },
    choices: {
      bearing: 'ball',
      hubMetal: 'cast-iron',
      sleeveMetal: 'low-carbon-steel',
      hotTemperature: '60',
      coldTemperature: '-10',
    },
  },
  {
    id: 'demo-hub-seat',
    of: 'trailer',
    kind: 'bearing-seat',
    title: 'Seat of the outer ring',
    sizes: { ringNominal: typed('47', 'mm'), housing: typed('46.95', 'mm') },
    choices: { bearing: 'ring', ring: 'outer', load: 'normal' },
  },
];

/** The demo's worksheets, in the order in which they were begun: every question of the trade can be looked at. */
export function demoWorksheets(outfit: string, trailer: string, nowMs: number): Worksheet[] {
  const further = worksheetKinds.filter((name) => WORKSHEETS.every(({ kind }) => kind !== name));
  return [...WORKSHEETS, ...further.map(asItsKindSays)].map(({ of, ...worksheet }, index) => ({
    sizes: {},
    choices: {},
    parts: {},
    jobId: of === 'outfit' ? outfit : trailer,
    touchedAt: nowMs,
    ...worksheet,
    createdAt: nowMs + index,
  }));
}

function asItsKindSays(kind: WorksheetKind): DemoWorksheet {
  const { title, sizes, choices, parts = [] }: Demo = worksheets[kind].demo;
  return {
    id: `demo-${kind}`,
    of: 'outfit',
    kind,
    title,
    sizes: Object.fromEntries(given(sizes).map(([name, size]) => [name, typedAs(size)])),
    choices: Object.fromEntries(given(choices)),
    parts: Object.fromEntries(
      parts.map(({ name, size, count = 1, adjustable = false }, order) => [
        `demo-${kind}-part-${order}`,
        { name, order, size: typedAs(size), count, adjustable },
      ]),
    ),
  };
}

function given(values: Readonly<Record<string, string | undefined>> = {}) {
  return Object.entries(values).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, value] as const],
  );
}

/** '1-1/2 in': as typed, and the unit. */
function typedAs(size: string): TypedSize {
  const [, text = '', unit] = /^(.*) (in|thou|mm)$/.exec(size) ?? [];
  if (unit !== 'in' && unit !== 'thou' && unit !== 'mm')
    throw new Error(`the demo has a size without a unit: ${size}`);
  return typed(text, unit);
}

function measured(featureId: string): SizeInput {
  return { from: 'feature', featureId };
}

function typed(text: string, unit: Unit): TypedSize {
  return { from: 'typed', typed: text, unit, exact: lengthOf(`${text} ${unit}`) };
}
