import * as fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, test } from 'vitest';
import { estimateOf, typedEstimate, type Estimate } from '../../../src/engine/reading/estimate.ts';
import {
  decimalText,
  lengthOf,
  sameLength,
  times,
  toText,
  type Length,
} from '../../../src/engine/length/length.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import {
  shimsFromDrawer,
  type ShimPick,
  type ShimPiece,
  type ShimQuestion,
} from '../../../src/engine/shim/shims.ts';

type Row = { thickness: string; count: number; name?: string };

function drawerOf(rows: readonly Row[]): readonly ShimPiece[] {
  return rows.map(({ thickness, count, name }, index) => ({
    id: `p${index}`,
    name: name ?? thickness,
    thickness: typedEstimate(lengthOf(thickness)),
    count,
  }));
}

function ask(rows: readonly Row[], [lower, aim, upper]: readonly [string, string, string]): ShimQuestion {
  return {
    drawer: drawerOf(rows),
    lower: lengthOf(lower),
    aim: lengthOf(aim),
    upper: lengthOf(upper),
  };
}

function picked(question: ShimQuestion): ShimPick {
  const result = shimsFromDrawer(question);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const words = ({ picked: list }: ShimPick) =>
  list.map(({ piece, count }) => `${count} × ${piece.name}`).join(' + ');

const inches = [
  { thickness: '.010 in', count: 3 },
  { thickness: '.005 in', count: 4 },
  { thickness: '.002 in', count: 9 },
];

describe('shims for .025, good from .024 to .026', () => {
  test('are 2 × .010 and one .005: three pieces, right on the aim', () => {
    const pick = picked(ask(inches, ['.024 in', '.025 in', '.026 in']));
    expect(words(pick)).toBe('2 × .010 in + 1 × .005 in');
    expect(pick.fits).toBe(true);
    expect(sameLength(pick.total, lengthOf('.025 in'))).toBe(true);
    expect(toText(pick.offAim)).toBe('0');
  });

  test('are one piece of .024 where there is one, though it is not on the aim: fewest pieces come first', () => {
    const rows = [...inches, { thickness: '.024 in', count: 1 }];
    expect(words(picked(ask(rows, ['.024 in', '.025 in', '.026 in'])))).toBe('1 × .024 in');
  });

  test('are not one piece of .0239, a limit is a limit: a .002 has to go with it', () => {
    const rows = [...inches, { thickness: '.0239 in', count: 1 }];
    // .0239 + .002 = .0259
    expect(words(picked(ask(rows, ['.024 in', '.025 in', '.026 in'])))).toBe('1 × .0239 in + 1 × .002 in');
  });

  test('with a .0245 and a .0256 on hand are the .0245: .0005 off beats .0006', () => {
    const rows = [
      { thickness: '.0256 in', count: 1 },
      { thickness: '.0245 in', count: 1 },
    ];
    expect(words(picked(ask(rows, ['.024 in', '.025 in', '.026 in'])))).toBe('1 × .0245 in');
  });

  test('out of a single .010 can’t be made with two of them', () => {
    const rows = [
      { thickness: '.010 in', count: 1 },
      { thickness: '.005 in', count: 4 },
    ];
    // .010 + 3 × .005 = .025
    expect(words(picked(ask(rows, ['.024 in', '.025 in', '.026 in'])))).toBe('1 × .010 in + 3 × .005 in');
  });
});

test('four pieces with two thin ones beat five thick ones that also come to .088', () => {
  const rows = [
    { thickness: '.047 in', count: 2 },
    { thickness: '.026 in', count: 3 },
    { thickness: '.012 in', count: 3 },
    { thickness: '.009 in', count: 2 },
    { thickness: '.006 in', count: 1 },
  ];
  // 2 × .026 + 3 × .012 = .088 leaves the thin ones, but .047 + .026 + .009 + .006 = .088 is one piece less.
  // Three pieces come to .085 (.047 + .026 + .012) or .099 (.047 + 2 × .026), nothing between.
  expect(words(picked(ask(rows, ['.088 in', '.088 in', '.089 in'])))).toBe(
    '1 × .047 in + 1 × .026 in + 1 × .009 in + 1 × .006 in',
  );
});

describe('of picks with as many pieces and as near', () => {
  test('the one that leaves the thinnest pieces in the drawer is taken', () => {
    const rows = [
      { thickness: '.005 in', count: 1 },
      { thickness: '.015 in', count: 1 },
      { thickness: '.010 in', count: 2 },
    ];
    // .015 + .005 = .010 + .010: the second leaves the .005.
    expect(words(picked(ask(rows, ['.019 in', '.020 in', '.021 in'])))).toBe('2 × .010 in');
  });

  test('one as far above the aim as another is below: the thin piece stays', () => {
    const rows = [
      { thickness: '.024 in', count: 1 },
      { thickness: '.026 in', count: 1 },
    ];
    expect(words(picked(ask(rows, ['.024 in', '.025 in', '.026 in'])))).toBe('1 × .026 in');
  });

  test('and the thinnest used is alike, the next thinnest decides', () => {
    const rows = [
      { thickness: '.001 in', count: 1 },
      { thickness: '.005 in', count: 1 },
      { thickness: '.010 in', count: 2 },
      { thickness: '.015 in', count: 1 },
    ];
    // .001 + .005 + .015 = .001 + .010 + .010
    expect(words(picked(ask(rows, ['.021 in', '.021 in', '.021 in'])))).toBe('2 × .010 in + 1 × .001 in');
  });

  test('pieces alike are taken in the order they are listed, the first till it is used up', () => {
    const rows = [
      { thickness: '.010 in', count: 1, name: 'first tin' },
      { thickness: '0.254 mm', count: 5, name: 'second tin' },
    ];
    expect(words(picked(ask(rows, ['.030 in', '.030 in', '.030 in'])))).toBe(
      '1 × first tin + 2 × second tin',
    );
  });
});

describe('inches and millimetres in one drawer', () => {
  test('are added exactly: .031 in + 0.05 mm are 0.8374 mm', () => {
    const rows = [
      { thickness: '.031 in', count: 2 },
      { thickness: '0.05 mm', count: 2 },
      { thickness: '1/64 in', count: 1 },
    ];
    const pick = picked(ask(rows, ['0.8374 mm', '0.8374 mm', '0.8374 mm']));
    expect(words(pick)).toBe('1 × .031 in + 1 × 0.05 mm');
  });

  test('of an aim that no step of them falls on take the nearer side', () => {
    const rows = [
      { thickness: '0.1 mm', count: 1 },
      { thickness: '0.2 mm', count: 1 },
    ];
    expect(words(picked(ask(rows, ['0.1 mm', '0.1499 mm', '0.2 mm'])))).toBe('1 × 0.1 mm');
    expect(words(picked(ask(rows, ['0.1 mm', '0.1501 mm', '0.2 mm'])))).toBe('1 × 0.2 mm');
    // Half-way: the thin one stays in the drawer.
    expect(words(picked(ask(rows, ['0.1 mm', '0.15 mm', '0.2 mm'])))).toBe('1 × 0.2 mm');
  });
});

describe('a drawer in which nothing fits', () => {
  test('gives the nearest possible, and says that it does not fit', () => {
    const pick = picked(ask(inches, ['.0003 in', '.0005 in', '.0015 in']));
    // Nothing at all is .0005 off, one .002 is .0015 off.
    expect(pick.fits).toBe(false);
    expect(pick.pieces).toBe(0);
    expect(sameLength(pick.offAim, lengthOf('-.0005 in'))).toBe(true);
  });

  test('whose pieces are too thin together gives all of them', () => {
    const pick = picked(ask(inches, ['.099 in', '.100 in', '.101 in']));
    // 3 × .010 + 4 × .005 + 9 × .002 = .068
    expect(words(pick)).toBe('3 × .010 in + 4 × .005 in + 9 × .002 in');
    expect(sameLength(pick.offAim, lengthOf('-.032 in'))).toBe(true);
  });

  test('of sums as near takes the fewest pieces', () => {
    const rows = [
      { thickness: '.009 in', count: 1 },
      { thickness: '.0055 in', count: 2 },
    ];
    // .010 is wanted: .009 is .001 under, 2 × .0055 = .011 is .001 over.
    expect(words(picked(ask(rows, ['.0099 in', '.010 in', '.0101 in'])))).toBe('1 × .009 in');
  });

  test('with a piece exactly as far over as no piece is under takes none', () => {
    const pick = picked(ask([{ thickness: '.020 in', count: 3 }], ['.009 in', '.010 in', '.011 in']));
    expect(pick.pieces).toBe(0);
  });

  test('with limits the wrong way round gives what is nearest the aim', () => {
    const pick = picked(ask(inches, ['.026 in', '.025 in', '.024 in']));
    expect(pick.fits).toBe(false);
    expect(words(pick)).toBe('2 × .010 in + 1 × .005 in');
  });

  test('asked for less than nothing takes nothing', () => {
    expect(picked(ask(inches, ['-.003 in', '-.002 in', '-.001 in']))).toMatchObject({
      fits: false,
      pieces: 0,
    });
  });

  test('and limits that allow no shim at all take none', () => {
    expect(picked(ask(inches, ['-.001 in', '.001 in', '.003 in']))).toMatchObject({ fits: true, pieces: 0 });
  });
});

describe('pieces that can’t be picked', () => {
  test('are passed over: none left, no thickness', () => {
    const rows = [
      { thickness: '.010 in', count: 0 },
      { thickness: '.010 in', count: -2 },
      { thickness: '0 in', count: 5 },
      { thickness: '.005 in', count: 2 },
    ];
    expect(words(picked(ask(rows, ['.010 in', '.010 in', '.010 in'])))).toBe('2 × .005 in');
  });

  test('are all there is: it says there are no shims', () => {
    expect(shimsFromDrawer(ask([], ['.010 in', '.010 in', '.010 in']))).toEqual({
      ok: false,
      refusal: { code: 'no-shims' },
    });
  });

  test('given to thirty places are refused: they could not be added exactly', () => {
    const rows = [
      { thickness: '0.100000000000000000000000000001 mm', count: 2 },
      { thickness: '0.1 mm', count: 2 },
    ];
    expect(shimsFromDrawer(ask(rows, ['0.1 mm', '0.2 mm', '0.3 mm']))).toEqual({
      ok: false,
      refusal: { code: 'shims-too-fine' },
    });
  });
});

describe('how closely a pick is known', () => {
  const micrometer = usualTools.find((tool) => tool.measures.includes('length'));
  if (!micrometer) throw new Error('a tool for lengths');
  const read = (sizes: readonly [string, ...string[]]): Estimate => {
    const [first, ...more] = sizes.map((size) => ({
      exact: lengthOf(size),
      tool: micrometer,
      zeroChecked: false,
    }));
    if (!first) throw new Error('a reading');
    return estimateOf([first, ...more]);
  };
  const pickOf = (count: number, aim: string) =>
    picked({
      drawer: [{ id: 'a', name: 'a', thickness: read(['.010 in', '.010 in', '.010 in']), count }],
      lower: lengthOf(aim),
      aim: lengthOf(aim),
      upper: lengthOf(aim),
    });

  test('three pieces of one tool are known three times as badly as one: its error is in each', () => {
    const one = pickOf(1, '.010 in').band.halfWidth;
    const three = pickOf(3, '.030 in').band.halfWidth;
    expect(decimalText(three, 'in', 5)).toBe(decimalText(times(one, 3), 'in', 5));
  });

  test('a mean of three readings that ends in a third is exact all the same', () => {
    // (.0100 + .0100 + .0101) / 3 = .010033...; three of them are .0301.
    const pick = picked({
      drawer: [
        { id: 'a', name: 'a', thickness: read(['.0100 in', '.0100 in', '.0101 in']), count: 3 },
        { id: 'b', name: 'b', thickness: read(['.0050 in']), count: 9 },
      ],
      lower: lengthOf('.0301 in'),
      aim: lengthOf('.0301 in'),
      upper: lengthOf('.0301 in'),
    });
    expect(pick).toMatchObject({ fits: true, pieces: 3 });
  });
});

type Steps = { readonly size: number; readonly count: number };
type Wanted = { readonly lower: number; readonly aim: number; readonly upper: number };

/** In steps of 0.0002 mm: fine enough for thousandths of an inch and hundredths of a millimetre in one drawer. */
const STEP = '0.0002 mm';
const steps = (count: number): Length => times(lengthOf(STEP), count);

function askInSteps(rows: readonly Steps[], { lower, aim, upper }: Wanted): ShimQuestion {
  const drawer = rows.map(({ size, count }, index) => ({
    id: `p${index}`,
    name: String(size),
    thickness: typedEstimate(steps(size)),
    count,
  }));
  return { drawer, lower: steps(lower), aim: steps(aim), upper: steps(upper) };
}

/** Pieces and how far off the aim, in steps. */
function answerInSteps(question: ShimQuestion, aim: number) {
  const pick = picked(question);
  const total = pick.picked.reduce((so, { piece, count }) => so + count * Number(piece.name), 0);
  return { fits: pick.fits, pieces: pick.pieces, off: Math.abs(total - aim) };
}

const thousandths = fc.integer({ min: 1, max: 62 }).map((thou) => thou * 127);
const hundredths = fc.integer({ min: 2, max: 150 }).map((size) => size * 50);
const drawers = fc.array(
  fc.record({ size: fc.oneof(thousandths, hundredths), count: fc.integer({ min: 1, max: 12 }) }),
  { minLength: 1, maxLength: 40 },
);
const wanted = fc
  .record({
    aim: fc.integer({ min: 0, max: 20_000 }),
    below: fc.integer({ min: 0, max: 150 }),
    above: fc.integer({ min: 0, max: 150 }),
  })
  .map(({ aim, below, above }) => ({ lower: aim - below, aim, upper: aim + above }));

describe('against an integer-programming solver (HiGHS)', async () => {
  const highs = await loadHighs();

  /** One integer variable a size. Limits are widened by less than half a step, so that rounding can't push a whole sum out. */
  function solved(rows: readonly Steps[], objective: string, subject: readonly string[], free = false) {
    const model = [
      'Minimize',
      ` cost: ${objective}`,
      'Subject To',
      ...subject.map((line, index) => ` c${index}: ${line}`),
      'Bounds',
      ...rows.map(({ count }, index) => ` 0 <= x${index} <= ${count}`),
      ...(free ? [' off >= 0'] : []),
      'General',
      ` ${rows.map((_, index) => `x${index}`).join(' ')}`,
      'End',
    ].join('\n');
    const { Status, Columns } = highs.solve(model, { mip_rel_gap: 0, mip_abs_gap: 0.01 });
    if (Status === 'Infeasible') return undefined;
    if (Status !== 'Optimal') throw new Error(Status);
    const counts = rows.map((_, index) => {
      const column = Columns[`x${index}`];
      return column && 'Primal' in column ? Math.round(column.Primal) : 0;
    });
    const total = counts.reduce((so, count, index) => so + count * (rows[index]?.size ?? 0), 0);
    return { pieces: counts.reduce((so, count) => so + count, 0), total };
  }

  function bySolver(rows: readonly Steps[], { lower, aim, upper }: Wanted) {
    const total = rows.map(({ size }, index) => `${size} x${index}`).join(' + ');
    const pieces = rows.map((_, index) => `x${index}`).join(' + ');
    const inside = [`${total} >= ${lower - 0.4}`, `${total} <= ${upper + 0.4}`];
    const near = [`${total} - off <= ${aim}`, `${total} + off >= ${aim}`];
    const fewest = solved(rows, pieces, inside);
    if (fewest) {
      const nearest = solved(rows, 'off', [...inside, ...near, `${pieces} <= ${fewest.pieces + 0.4}`], true);
      if (!nearest) throw new Error('what could be done can’t be done');
      return { fits: true, pieces: fewest.pieces, off: Math.abs(nearest.total - aim) };
    }
    const nearest = solved(rows, 'off', near, true);
    if (!nearest) throw new Error('no piece at all is always possible');
    const off = Math.abs(nearest.total - aim);
    const least = solved(rows, pieces, [`${total} >= ${aim - off - 0.4}`, `${total} <= ${aim + off + 0.4}`]);
    return { fits: false, pieces: least?.pieces ?? Number.NaN, off };
  }

  test('200 drawers of inch and metric pieces give the same count of pieces and the same closeness', () => {
    fc.assert(
      fc.property(drawers, wanted, (rows, want) => {
        expect(answerInSteps(askInSteps(rows, want), want.aim)).toEqual(bySolver(rows, want));
      }),
      { numRuns: 200, seed: 20_261_103 },
    );
  }, 120_000);

  test('24 drawers of 200 pieces and more, too', () => {
    const large = fc.array(
      fc.record({ size: fc.oneof(thousandths, hundredths), count: fc.integer({ min: 5, max: 60 }) }),
      { minLength: 25, maxLength: 30 },
    );
    const far = fc
      .record({ aim: fc.integer({ min: 2000, max: 60_000 }), room: fc.integer({ min: 0, max: 60 }) })
      .map(({ aim, room }) => ({ lower: aim - room, aim, upper: aim + room }));
    fc.assert(
      fc.property(large, far, (rows, want) => {
        expect(answerInSteps(askInSteps(rows, want), want.aim)).toEqual(bySolver(rows, want));
      }),
      { numRuns: 24, seed: 7 },
    );
  }, 120_000);
});

test('1,000 pieces, no two alike, give each of these gaps exactly, with no more pieces than the thickest would take', () => {
  // 0.02 to 1.02 mm, each within its own thousandth.
  const rows = Array.from({ length: 1000 }, (_, index) => ({
    size: 100 + 5 * index + ((index * index) % 5),
    count: 1,
  }));
  const thickest = rows.map(({ size }) => size).toSorted((a, b) => b - a);
  for (const aim of [12_500, 50_000, 125_000, 300_000]) {
    let reached = 0;
    const fewest = thickest.findIndex((size) => (reached += size) >= aim) + 1;
    const asked = askInSteps(rows, { lower: aim, aim, upper: aim + 5 });
    expect(answerInSteps(asked, aim)).toEqual({ fits: true, pieces: fewest, off: 0 });
  }
});

describe('against every pick there is, in small drawers', () => {
  const small = fc.uniqueArray(
    fc.record({ size: fc.integer({ min: 1, max: 12 }), count: fc.integer({ min: 1, max: 3 }) }),
    { minLength: 1, maxLength: 5, selector: ({ size }) => size },
  );
  const near = fc
    .record({
      lower: fc.integer({ min: -3, max: 40 }),
      room: fc.integer({ min: -1, max: 6 }),
      halves: fc.integer({ min: -4, max: 90 }),
    })
    .map(({ lower, room, halves }) => ({ lower, upper: lower + room, halves }));

  /** The rule as a comparison of two picks, thinnest size last: fewest, nearest, then the least of the thinnest. */
  function everyPick(rows: readonly Steps[]): readonly (readonly number[])[] {
    return rows.reduce<readonly (readonly number[])[]>(
      (so, { count }) =>
        so.flatMap((pick) => Array.from({ length: count + 1 }, (_, taken) => [...pick, taken])),
      [[]],
    );
  }

  test('the pick is the one the rule names, thinnest pieces left and all', () => {
    fc.assert(
      fc.property(small, near, (unsorted, { lower, upper, halves }) => {
        const rows = unsorted.toSorted((a, b) => b.size - a.size);
        const told = everyPick(rows).map((counts) => {
          const total = counts.reduce((so, count, index) => so + count * (rows[index]?.size ?? 0), 0);
          const pieces = counts.reduce((so, count) => so + count, 0);
          return { counts, total, pieces, off: Math.abs(2 * total - halves) };
        });
        const inside = told.filter(({ total }) => total >= lower && total <= upper);
        const thinner = (a: readonly number[], b: readonly number[]) => {
          const place = a.findLastIndex((count, index) => count !== b[index]);
          return (a[place] ?? 0) - (b[place] ?? 0);
        };
        const [best] =
          inside.length > 0
            ? inside.toSorted((a, b) => a.pieces - b.pieces || a.off - b.off || thinner(a.counts, b.counts))
            : told.toSorted((a, b) => a.off - b.off || a.pieces - b.pieces || thinner(a.counts, b.counts));
        const pick = picked({
          drawer: askInSteps(rows, { lower, aim: 0, upper }).drawer,
          lower: steps(lower),
          upper: steps(upper),
          aim: times(lengthOf('0.0001 mm'), halves),
        });
        const counts = rows.map(
          ({ size }) => pick.picked.find(({ piece }) => piece.name === String(size))?.count ?? 0,
        );
        expect(counts).toEqual(best?.counts);
        expect(pick.fits).toBe(inside.length > 0);
      }),
      { numRuns: 2000, seed: 11 },
    );
  });
});

describe('laws', () => {
  test('the order of a drawer changes neither the count of pieces nor the sum', () => {
    fc.assert(
      fc.property(drawers, wanted, (rows, want) => {
        const forward = picked(askInSteps(rows, want));
        const backward = picked(askInSteps(rows.toReversed(), want));
        expect(backward.pieces).toBe(forward.pieces);
        expect(toText(backward.total)).toBe(toText(forward.total));
      }),
      { numRuns: 100, seed: 3 },
    );
  });

  test('wider limits never need more pieces, and never make a fit into none', () => {
    fc.assert(
      fc.property(drawers, wanted, (rows, want) => {
        const narrow = picked(askInSteps(rows, want));
        const wide = picked(askInSteps(rows, { ...want, lower: want.lower - 40, upper: want.upper + 40 }));
        fc.pre(narrow.fits);
        expect(wide.fits).toBe(true);
        expect(wide.pieces).toBeLessThanOrEqual(narrow.pieces);
      }),
      { numRuns: 100, seed: 4 },
    );
  });

  test('no more of a piece is taken than there are', () => {
    fc.assert(
      fc.property(drawers, wanted, (rows, want) => {
        const { picked: list } = picked(askInSteps(rows, want));
        expect(list.every(({ piece, count }) => count >= 1 && count <= piece.count)).toBe(true);
      }),
      { numRuns: 100, seed: 5 },
    );
  });
});
