import { lengthOf, type Unit } from '../engine/length/length.ts';
import type { SizeInput, TypedSize, Worksheet } from './records.ts';

/** The demo's worksheets, one of each kind, with sizes from its features. */
export function demoWorksheets(outfit: string, trailer: string, nowMs: number): Worksheet[] {
  const sheet = (
    worksheet: Pick<Worksheet, 'id' | 'jobId' | 'kind' | 'title'> & Partial<Worksheet>,
  ): Worksheet => ({ sizes: {}, choices: {}, parts: {}, createdAt: nowMs, touchedAt: nowMs, ...worksheet });
  const inOrder = [
    sheet({
      id: 'demo-bracket-float',
      jobId: outfit,
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
    }),
    sheet({
      id: 'demo-link-slop',
      jobId: outfit,
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
    }),
    sheet({
      id: 'demo-link-insert',
      jobId: outfit,
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
    }),
    sheet({
      id: 'demo-bearing-fit',
      jobId: trailer,
      kind: 'hole-and-pin',
      title: 'Bearing on the spindle',
      sizes: { bore: measured('demo-bearing-bore'), pin: measured('demo-spindle-seat') },
      choices: { joint: 'slides' },
    }),
    ...moreWorksheets(outfit, trailer).map(sheet),
  ];
  return inOrder.map((one, index) => ({ ...one, createdAt: nowMs + index }));
}

/** One of each further kind, so that every question of the trade can be looked at. */
function moreWorksheets(
  outfit: string,
  trailer: string,
): (Pick<Worksheet, 'id' | 'jobId' | 'kind' | 'title'> & Partial<Worksheet>)[] {
  return [
    {
      id: 'demo-rear-axle',
      jobId: outfit,
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
      jobId: outfit,
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
      id: 'demo-link-fit',
      jobId: outfit,
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
      jobId: outfit,
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
      jobId: outfit,
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
      jobId: trailer,
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
      jobId: trailer,
      kind: 'bearing-seat',
      title: 'Sleeve between the bearings',
      sizes: { between: typed('62.40', 'mm'), sleeve: typed('62.45', 'mm') },
      choices: { bearing: 'ball' },
    },
  ];
}

function measured(featureId: string): SizeInput {
  return { from: 'feature', featureId };
}

function typed(text: string, unit: Unit): TypedSize {
  return { from: 'typed', typed: text, unit, exact: lengthOf(`${text} ${unit}`) };
}
