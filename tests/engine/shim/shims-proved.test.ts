import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  combine,
  estimateOf,
  toleranceEstimate,
  typedEstimate,
  type Estimate,
  type Term,
} from '../../../src/engine/reading/estimate.ts';
import {
  isLess,
  isMore,
  lengthOf,
  minus,
  plus,
  times,
  type Length,
} from '../../../src/engine/length/length.ts';
import type { ToolInForce } from '../../../src/engine/reading/measuring-tool.ts';
import { shimsFromDrawer, type ShimPick, type ShimPiece } from '../../../src/engine/shim/shims.ts';

const inch = (text: string) => lengthOf(`${text} in`);

function toolOf(id: string, mpe: string, repeatability = '0'): ToolInForce {
  return {
    id,
    name: id,
    kind: 'micrometer',
    mpe: inch(mpe),
    resolution: inch('.0001'),
    resolutionInMpe: true,
    repeatability: inch(repeatability),
  };
}

const known = (size: string, plusMinus = '0') => toleranceEstimate(inch(size), inch(plusMinus));
const piece = (id: string, thickness: Estimate, count = 1): ShimPiece => ({ id, name: id, thickness, count });

function picked(
  drawer: readonly ShimPiece[],
  [lower, aim, upper]: readonly string[],
  beside?: readonly Term[],
) {
  const result = shimsFromDrawer({
    drawer,
    lower: inch(lower ?? ''),
    aim: inch(aim ?? ''),
    upper: inch(upper ?? ''),
    ...(beside && { beside }),
  });
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const words = ({ picked: list }: ShimPick) => list.map((one) => `${one.count} × ${one.piece.id}`).join(' + ');

describe('a gap of .022 that should become .008 to .012, with .0138 × 1 and .006 × 4 in the drawer', () => {
  // .022 − .012 = .010 to .022 − .008 = .014, best .012
  const want = ['.010', '.012', '.014'];

  test('takes two of .006, which prove: one of .0138 lies .0002 inside and is known to ± .0003', () => {
    const drawer = [piece('.0138', known('.0138', '.0003')), piece('.006', known('.006', '.0003'), 4)];
    const pick = picked(drawer, want);
    expect(words(pick)).toBe('2 × .006');
    expect(pick).toMatchObject({ fits: true, proves: true });
  });

  test('takes the one of .0138 where it proves: ± .0001 is less than the .0002', () => {
    const drawer = [piece('.0138', known('.0138', '.0001')), piece('.006', known('.006', '.0001'), 4)];
    expect(picked(drawer, want)).toMatchObject({ pieces: 1, proves: true });
  });

  test('counts the band of the gap itself with that of the pieces', () => {
    // ± .0003 in the gap alone: the .0138 can't prove whatever it is known to
    const drawer = [piece('.0138', known('.0138')), piece('.006', known('.006'), 4)];
    const beside = [{ estimate: known('.022', '.0003'), coefficient: 1 }];
    expect(words(picked(drawer, want, beside))).toBe('2 × .006');
    expect(picked(drawer, want)).toMatchObject({ pieces: 1 });
  });

  test('takes the fewest inside where none proves, and says that it doesn’t', () => {
    const drawer = [piece('.0138', known('.0138', '.005')), piece('.006', known('.006', '.005'), 4)];
    const pick = picked(drawer, want);
    expect(words(pick)).toBe('1 × .0138');
    expect(pick).toMatchObject({ fits: true, proves: false });
  });

  test('takes of two pieces alike the one that the finer tool measured, though it is listed last', () => {
    const rough = piece('rough', typedEstimate(inch('.012'), toolOf('caliper', '.0030')));
    const fine = piece('fine', typedEstimate(inch('.012'), toolOf('micrometer', '.0002')));
    expect(words(picked([rough, fine], want))).toBe('1 × fine');
  });

  test('in millimetres: 0.345 is .005 inside and known to 0.01, two of 0.15 prove', () => {
    const mm = (text: string, plusMinus: string) =>
      toleranceEstimate(lengthOf(`${text} mm`), lengthOf(`${plusMinus} mm`));
    const result = shimsFromDrawer({
      drawer: [piece('0.345', mm('0.345', '0.01')), piece('0.15', mm('0.15', '0.01'), 4)],
      lower: lengthOf('0.25 mm'),
      aim: lengthOf('0.30 mm'),
      upper: lengthOf('0.35 mm'),
    });
    expect(result.ok && words(result.value)).toBe('2 × 0.15');
  });
});

// One step is .0001 in; a piece is 5 to 14 of them.
const steps = (count: number): Length => times(inch('.0001'), count);
const tools = [toolOf('a', '.00008', '.00003'), toolOf('b', '.00016')];
const ways: readonly ((size: Length) => Estimate)[] = [
  (size) => typedEstimate(size),
  (size) => toleranceEstimate(size, inch('.0001')),
  ...tools.map((tool) => (size: Length) => typedEstimate(size, tool)),
  // read twice, .0002 apart: few degrees of freedom
  (size) =>
    estimateOf([
      { exact: plus(size, inch('.0001')), tool: toolOf('a', '.00008'), zeroChecked: false },
      { exact: minus(size, inch('.0001')), tool: toolOf('a', '.00008'), zeroChecked: false },
    ]),
  (size) => estimateOf([{ exact: size, tool: toolOf('c', '.0001'), zeroChecked: true }]),
];

const row = fc.record({
  size: fc.integer({ min: 5, max: 14 }),
  count: fc.integer({ min: 1, max: 3 }),
  way: fc.nat({ max: ways.length - 1 }),
});
const rows = fc.array(row, { minLength: 1, maxLength: 4 });
const wanted = fc.record({
  aim: fc.integer({ min: 5, max: 45 }),
  below: fc.integer({ min: 0, max: 7 }),
  above: fc.integer({ min: 0, max: 7 }),
  beside: fc.option(fc.nat({ max: ways.length - 1 })),
});

type Told = {
  readonly counts: readonly number[];
  readonly bySize: readonly number[];
  readonly pieces: number;
  readonly off: number;
  readonly proves: boolean;
  readonly fits: boolean;
};

describe('against every pick there is', () => {
  test('the pick is the one the rule names: proves, fewest, nearest, thinnest left, first listed', () => {
    fc.assert(
      fc.property(rows, wanted, (list, { aim, below, above, beside: way }) => {
        const drawer = list.map((one, index) =>
          piece(`p${index}`, ways[one.way]?.(steps(one.size)) ?? known('.001'), one.count),
        );
        const [lower, upper] = [steps(aim - below), steps(aim + above)];
        // What is beside is 100 less the shims, known in one of the ways.
        const beside: readonly Term[] =
          way === null ? [] : [{ estimate: ways[way]?.(steps(100)) ?? known('.010'), coefficient: 1 }];
        const sizes = [...new Set(list.map(({ size }) => size))].toSorted((a, b) => a - b);
        const every = list.reduce<readonly (readonly number[])[]>(
          (so, { count }) =>
            so.flatMap((pick) => Array.from({ length: count + 1 }, (_, taken) => [...pick, taken])),
          [[]],
        );
        const told = every.map((counts): Told => {
          const total = counts.reduce((so, count, index) => so + count * (list[index]?.size ?? 0), 0);
          const terms = counts.flatMap((count, index) =>
            count > 0 && drawer[index] ? [{ estimate: drawer[index].thickness, coefficient: -count }] : [],
          );
          const { halfWidth } = combine([...beside, ...terms]).band;
          const fits = total >= aim - below && total <= aim + above;
          return {
            counts,
            bySize: sizes.map((size) =>
              counts.reduce((so, count, index) => so + (list[index]?.size === size ? count : 0), 0),
            ),
            pieces: counts.reduce((so, count) => so + count, 0),
            off: Math.abs(total - aim),
            fits,
            proves:
              !isLess(minus(steps(total), halfWidth), lower) && !isMore(plus(steps(total), halfWidth), upper),
          };
        });
        const first = (a: readonly number[], b: readonly number[]) => {
          const place = a.findIndex((count, index) => count !== b[index]);
          return place === -1 ? 0 : (a[place] ?? 0) - (b[place] ?? 0);
        };
        // Thinnest size first: less of it, and of the same size the first listed.
        const listed = (counts: readonly number[]) =>
          sizes.flatMap((size) =>
            counts.filter((_, index) => list[index]?.size === size).map((count) => -count),
          );
        const last = (a: Told, b: Told) =>
          first(a.bySize, b.bySize) || first(listed(a.counts), listed(b.counts));
        const inside = (a: Told, b: Told) => a.pieces - b.pieces || a.off - b.off || last(a, b);
        const nearest = (a: Told, b: Told) => a.off - b.off || a.pieces - b.pieces || last(a, b);
        const proving = told.filter((one) => one.proves);
        const fitting = told.filter((one) => one.fits);
        const [best] =
          proving.length > 0
            ? proving.toSorted(inside)
            : fitting.length > 0
              ? fitting.toSorted(inside)
              : told.toSorted(nearest);
        const result = shimsFromDrawer({ drawer, lower, upper, aim: steps(aim), beside });
        if (!result.ok) throw new Error(result.refusal.code);
        const counts = drawer.map(
          ({ id }) => result.value.picked.find((one) => one.piece.id === id)?.count ?? 0,
        );
        expect(counts).toEqual(best?.counts);
        expect(result.value).toMatchObject({ proves: proving.length > 0, fits: fitting.length > 0 });
        expect(result.value.untried).toBeUndefined();
      }),
      { numRuns: 1200, seed: 22 },
    );
  }, 120_000);
});

test('a drawer of forty sizes by one micrometer is searched to the end where nothing proves', () => {
  const micrometer = toolOf('micrometer', '.0001', '.00005');
  const drawer = Array.from({ length: 40 }, (_, index) =>
    piece(`p${index}`, typedEstimate(steps(20 + index * 7), micrometer), 5),
  );
  const before = performance.now();
  // ± .0001 leaves nothing of so little: .0400 ± .00005
  const pick = picked(drawer, ['.03995', '.0400', '.04005']);
  expect(pick.proves).toBe(false);
  expect(pick.untried).toBeUndefined();
  // .0400 ± .0008 is proved by a few
  const wide = picked(drawer, ['.0392', '.0400', '.0408']);
  expect(wide.proves).toBe(true);
  expect(performance.now() - before).toBeLessThan(3000);
});
