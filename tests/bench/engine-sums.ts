import loadHighs from 'highs';
import { typedEstimate, type Estimate } from '../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../src/engine/length/length.ts';
import { lineUp } from '../../src/engine/worksheets/axle-line-up/line-up.ts';
import { shimsFromDrawer } from '../../src/engine/shim/shims.ts';
import { spacerStack, stackWantPreset } from '../../src/engine/worksheets/spacer-stack/spacer-stack.ts';
import { axleLayouts } from '../../src/engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { usualLineUpLimits } from '../../src/engine/worksheets/axle-line-up/tables/line-up-limits.ts';
import { chanceFrom } from '../trials/seeded.ts';
import { median, type Figure, type Part } from './figures.ts';

const RUNS = 9;
const DRAWERS = 15;

/** Sums of the engine in Node on this machine, and shims beside an integer-programming solver on the same drawers. */
export async function engineSums(): Promise<Part> {
  const stack = timed('a stack of five parts', () => void spacerStack(fiveParts()));
  const axle = timed('an axle with one disc, all spacers', () => {
    const { ok } = lineUp(oneDisc());
    if (!ok) throw new Error('the axle was not lined up');
  });
  const shims: Figure[] = [];
  for (const pieces of [20, 200, 1000]) shims.push(...(await shimFigures(pieces)));
  return { title: 'Engine, at full speed', figures: [stack, axle, ...shims] };
}

function timed(name: string, sum: () => void): Figure {
  const times = Array.from({ length: RUNS * 5 }, () => msOf(sum));
  return { name, unit: 'ms', value: median(times.slice(RUNS)), runs: RUNS * 4 };
}

function msOf(work: () => void): number {
  const began = performance.now();
  work();
  return performance.now() - began;
}

const size = (text: string): Estimate => typedEstimate(lengthOf(text));

function fiveParts() {
  const part = (name: string, thickness: string, adjustable = false) => ({
    name,
    thickness: size(thickness),
    count: 1,
    adjustable,
  });
  return {
    fixed: { name: 'sleeve', length: size('.970 in') },
    parts: [
      part('washer', '.062 in'),
      part('spacer', '.385 in', true),
      part('bracket', '.3125 in'),
      part('collar', '.1465 in'),
      part('shim', '1/16 in'),
    ],
    want: stackWantPreset('float'),
    step: lengthOf('.001 in'),
  };
}

function oneDisc() {
  const sizes = {
    width: '6.750 in',
    hub: '4.412 in',
    centre: '2.300 in',
    disc: '.312 in',
    slot: '.187 in',
    bracket: '.500 in',
    float: '.010 in',
  };
  return {
    layout: axleLayouts['front-one-disc'],
    side: 'right' as const,
    sizes: Object.fromEntries(Object.entries(sizes).map(([name, text]) => [name, size(text)])),
    onHand: {},
    limits: usualLineUpLimits.in,
    step: lengthOf('.001 in'),
  };
}

type Drawer = {
  readonly sizes: readonly number[];
  readonly counts: readonly number[];
  readonly lower: number;
  readonly aim: number;
  readonly upper: number;
};

/** Sizes in ten-thousandths of an inch: rolled shim stock by the thousandth and hardened ones by the half. */
function drawersOf(pieces: number): readonly Drawer[] {
  const chance = chanceFrom(pieces);
  const kinds = Math.max(4, Math.round(Math.sqrt(pieces) * 1.6));
  return Array.from({ length: DRAWERS }, () => {
    const sizes = Array.from({ length: kinds }, () => 10 + Math.floor(chance() * 120) * 5);
    const counts = sizes.map(() => Math.max(1, Math.round(pieces / kinds)));
    const aim = 400 + Math.floor(chance() * 3000);
    return { sizes, counts, lower: aim - 5, aim, upper: aim + 5 };
  });
}

async function shimFigures(pieces: number): Promise<readonly Figure[]> {
  const highs = await loadHighs();
  const ours: number[] = [];
  const solver: number[] = [];
  for (const drawer of drawersOf(pieces)) {
    const asked = questionOf(drawer);
    shimsFromDrawer(asked);
    let picked = -1;
    ours.push(
      msOf(() => {
        const answer = shimsFromDrawer(asked);
        picked = answer.ok ? answer.value.pieces : -1;
      }),
    );
    const model = modelOf(drawer);
    let fewest = -1;
    solver.push(
      msOf(() => {
        const { Status, ObjectiveValue } = highs.solve(model, { mip_rel_gap: 0, mip_abs_gap: 0.01 });
        fewest = Status === 'Optimal' ? Math.round(ObjectiveValue) : picked;
      }),
    );
    if (picked !== fewest) throw new Error(`${pieces} pieces: ${picked} against the solver's ${fewest}`);
  }
  const name = `shims out of ${pieces.toLocaleString('en')} pieces`;
  return [
    { name, unit: 'ms', value: median(ours), runs: DRAWERS },
    { name: `${name}: the solver, its start-up left out`, unit: 'ms', value: median(solver), runs: DRAWERS },
    {
      name: `${name}: how much quicker`,
      unit: '×',
      value: median(solver) / median(ours),
      runs: DRAWERS,
      aim: 20,
      atLeast: true,
    },
  ];
}

function questionOf({ sizes, counts, lower, aim, upper }: Drawer) {
  const length = (tenths: number) => lengthOf(`${(tenths / 10_000).toFixed(4)} in`);
  return {
    drawer: sizes.map((tenths, index) => ({
      id: String(index),
      name: String(tenths),
      thickness: typedEstimate(length(tenths)),
      count: counts[index] ?? 1,
    })),
    lower: length(lower),
    aim: length(aim),
    upper: length(upper),
  };
}

/** Fewest pieces inside the limits: the first half of what the engine answers, which alone the solver is timed with. */
function modelOf({ sizes, counts, lower, upper }: Drawer): string {
  const total = sizes.map((tenths, index) => `${tenths} x${index}`).join(' + ');
  return [
    'Minimize',
    ` cost: ${sizes.map((_, index) => `x${index}`).join(' + ')}`,
    'Subject To',
    ` least: ${total} >= ${lower}`,
    ` most: ${total} <= ${upper}`,
    'Bounds',
    ...counts.map((count, index) => ` 0 <= x${index} <= ${count}`),
    'General',
    ` ${sizes.map((_, index) => `x${index}`).join(' ')}`,
    'End',
  ].join('\n');
}
