import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cutProgress,
  featureKindOf,
  type CutProgress,
  type CutQuestion,
} from '../../../src/engine/cut/cut-progress.ts';
import { firstLimit, lastLimit, metalBetween, sizeAfterTaking } from '../../../src/engine/cut/cut.ts';
import { decimalText, lengthOf, toText, type Length } from '../../../src/engine/length/length.ts';
import { usualTools, type MeasuringTool } from '../../../src/engine/reading/measuring-tool.ts';
import type { CutKind } from '../../../src/engine/length/metal-on.ts';
import type { MeasuredPass } from '../../../src/engine/cut/spring.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const shown = (length: Length | undefined) => length && decimalText(length, 'in', 4);
const caliper = toolNamed('digital-caliper');
const micrometer: MeasuringTool = {
  ...caliper,
  id: 'tenths-micrometer',
  name: '1–2 in micrometer',
  mpe: inch('.0001'),
  resolution: inch('.0001'),
  repeatability: inch('.00005'),
};

function toolNamed(id: string): MeasuringTool {
  const tool = usualTools.find((one) => one.id === id);
  if (!tool) throw new Error(`no ${id}`);
  return tool;
}

/** A ring's outside, 1.625 to 1.498, limits 1.4975 to 1.4985. */
const ring: CutQuestion = {
  of: 'outside',
  operation: 'ring',
  cuttingTool: 'hss',
  material: 'stainless-303',
  target: inch('1.498'),
  lower: inch('1.4975'),
  upper: inch('1.4985'),
  limitsFrom: 'recess less clearance',
  blank: inch('1.625'),
  largestTake: inch('.060'),
  passes: [],
  dial: { reads: 'diameter', graduation: inch('.001') },
  tools: [caliper, micrometer],
};

function pass(measured: string, asked?: string, more: Partial<MeasuredPass> = {}): MeasuredPass {
  return {
    measured: inch(measured),
    struckOut: false,
    tool: micrometer,
    ...(asked !== undefined && { asked: inch(asked) }),
    ...more,
  };
}

function after(...passes: readonly MeasuredPass[]): CutProgress {
  return cutProgress({ ...ring, passes });
}

describe('where a cut stands', () => {
  test('before the first cut everything is left: .127', () => {
    const start = after();
    expect(start.stage).toBe('to-cut');
    expect([shown(start.left), start.share, start.made]).toEqual(['0.1270', 0, 0]);
    expect(start.proof).toBeUndefined();
  });

  test('with no size known it has to be measured first, and nothing is planned', () => {
    const { blank: _, ...unknown } = ring;
    const start = cutProgress(unknown);
    expect(start.stage).toBe('to-measure');
    expect([start.present, start.left, start.plan, start.next]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    expect(cutProgress({ ...unknown, passes: [pass('1.625')] }).stage).toBe('to-cut');
  });

  test('between blank and target it is cutting: .046 left of .127', () => {
    const half = after(pass('1.544', '.081'));
    expect(half.stage).toBe('cutting');
    expect(shown(half.left)).toBe('0.0460');
    expect(half.share).toBeCloseTo(81 / 127, 12);
    expect(half.made).toBe(1);
  });

  test('what is left is not rounded: 1.5443 less 1.498 is .0463', () => {
    expect(shown(after(pass('1.5443', '.081')).left)).toBe('0.0463');
  });

  test('the next pass is the first of the plan that is not dialled in yet', () => {
    // .0460 left: finish .016 is .008 twice, .030 before it, in one of .060 at most.
    const at = (dialled: string) =>
      cutProgress({ ...ring, passes: [pass('1.544', '.081')], dialledSince: inch(dialled) });
    expect(shown(at('0').next?.dial.total)).toBe('0.0300');
    expect(shown(at('.030').next?.dial.total)).toBe('0.0380');
    expect(shown(at('.0301').next?.dial.total)).toBe('0.0380');
    expect(at('.038').stage).toBe('last-pass');
    expect(at('.046').next).toBeUndefined();
    expect(at('.046').nextIsLast).toBe(false);
  });

  test('cut without measuring, it is cutting and no longer to cut', () => {
    expect(cutProgress({ ...ring, dialledSince: inch('.030') }).stage).toBe('cutting');
    expect(cutProgress({ ...ring, dialledSince: inch('0') }).stage).toBe('to-cut');
  });

  test('before the last pass it warns', () => {
    // .0030 left, less than two of the least .004: one pass.
    const last = after(pass('1.501', '.124'));
    expect([last.stage, last.nextIsLast]).toEqual(['last-pass', true]);
    expect(shown(last.next?.sizeAfter)).toBe('1.4980');
    expect(after(pass('1.506', '.119')).nextIsLast).toBe(false);
  });

  test('inside the limits it is to size, however proud of the target', () => {
    const proud = after(pass('1.4985', '.1265'));
    expect(proud.stage).toBe('to-size');
    expect(shown(proud.left)).toBe('0.0005');
    expect(after(pass('1.4975', '.1275')).stage).toBe('to-size');
    expect(shown(after(pass('1.4975', '.1275')).left)).toBe('-0.0005');
  });

  test('inside wide limits the plan to the target stays on offer', () => {
    const wide = cutProgress({ ...ring, upper: inch('1.510'), passes: [pass('1.508', '.117')] });
    expect(wide.stage).toBe('to-size');
    expect(shown(wide.next?.asked)).toBe('0.0050');
  });

  test('a blank inside the limits is not called to size before it is measured', () => {
    expect(cutProgress({ ...ring, blank: inch('1.498') }).stage).toBe('to-cut');
  });

  test('past the limit it is over at once, by how much, and there is no plan', () => {
    const over = after(pass('1.4968', '.1282'));
    expect(over.stage).toBe('over');
    expect(shown(over.past)).toBe('0.0007');
    expect([over.plan, over.next]).toEqual([undefined, undefined]);
  });

  test('a measurement that is struck out counts for nothing', () => {
    const struck = after(pass('1.544', '.081'), pass('1.4968', '.0282', { struckOut: true }));
    expect([struck.stage, shown(struck.left), struck.made]).toEqual(['cutting', '0.0460', 1]);
  });

  test('a bore left small is cutting, one too big is over', () => {
    const bore: CutQuestion = {
      ...ring,
      of: 'bore',
      operation: 'bore',
      blank: inch('.4375'),
      target: inch('.5000'),
      lower: inch('.4998'),
      upper: inch('.5004'),
    };
    expect(cutProgress({ ...bore, passes: [pass('.490', '.0525')] }).stage).toBe('cutting');
    expect(cutProgress({ ...bore, passes: [pass('.5004', '.0625')] }).stage).toBe('to-size');
    const over = cutProgress({ ...bore, passes: [pass('.5009', '.0625')] });
    expect([over.stage, shown(over.past)]).toEqual(['over', '0.0005']);
  });

  test('a plan that can’t be made is told with its reason, and the cut goes on', () => {
    const coarse = cutProgress({
      ...ring,
      blank: inch('1.5433'),
      lower: inch('1.4976'),
      upper: inch('1.4984'),
      dial: { reads: 'radius', graduation: inch('.001') },
    });
    expect(coarse.plan).toMatchObject({ ok: false, refusal: { code: 'no-mark-lands' } });
    expect([coarse.stage, coarse.next, coarse.nextIsLast]).toEqual(['to-cut', undefined, false]);
  });

  test('the share done stays between none and all, and a blank at its target is all', () => {
    expect(after(pass('1.630')).share).toBe(0);
    expect(after(pass('1.4978', '.1272')).share).toBe(1);
    expect(cutProgress({ ...ring, blank: inch('1.498') }).share).toBe(1);
    const { blank: _, ...unknown } = ring;
    const half = cutProgress({ ...unknown, passes: [pass('1.598'), pass('1.548', '.050')] });
    expect(half.share).toBeCloseTo(0.5, 12);
  });
});

describe('what a measurement proves', () => {
  test('a size just inside, read with a caliper of ±.001, is too close to call; the micrometer would settle it', () => {
    const close = after(pass('1.4978', '.1272', { tool: caliper })).proof;
    expect(close?.verdict).toMatchObject({ kind: 'too-close' });
    expect(close?.settler?.tools.map(({ tool }) => tool.name)).toEqual(['1–2 in micrometer']);
  });

  test('one in the middle, read with a micrometer, is good, and needs no other tool', () => {
    const good = after(pass('1.4980', '.127')).proof;
    expect(good?.verdict).toEqual({ kind: 'good' });
    expect(good).not.toHaveProperty('settler');
    expect(good?.toolKnown).toBe(true);
  });

  test('one too close that no tool in Shop settles names none', () => {
    const close = cutProgress({
      ...ring,
      tools: [],
      passes: [pass('1.4976', '.1274', { tool: caliper })],
    }).proof;
    expect(close).not.toHaveProperty('settler');
  });

  test('one past the limit by less than the band is over, yet too close to call', () => {
    const over = after(pass('1.4974', '.1276', { tool: caliper }));
    expect(over.stage).toBe('over');
    expect(over.proof?.verdict).toMatchObject({ kind: 'too-close', near: 'both' });
  });

  test('one past it by more is no good', () => {
    expect(after(pass('1.4968', '.1282')).proof?.verdict).toMatchObject({ kind: 'no-good', way: 'under' });
  });

  test('without a named tool it is taken as exact, and says that no tool is known', () => {
    const { tool: _, ...bare } = pass('1.4976', '.1274');
    const exact = after(bare).proof;
    expect([exact?.verdict.kind, exact?.toolKnown]).toEqual(['good', false]);
  });

  test('with metal left over the limits nothing is proved yet', () => {
    expect(after(pass('1.4986', '.1264')).proof).toBeUndefined();
  });
});

describe('what is learnt on the way', () => {
  // Light passes of .008 asked, .0072 gone each; the dial's marks are .0002.
  const fine: CutQuestion = {
    ...ring,
    lower: inch('1.4960'),
    upper: inch('1.5000'),
    dial: { reads: 'diameter', graduation: inch('.0002') },
    finishTake: inch('.016'),
  };
  const equal = [pass('1.5200'), pass('1.5128', '.008'), pass('1.5056', '.008')];

  test('two equal light passes teach the spring, and the next plan asks for it: .0076 + .0008', () => {
    const learnt = cutProgress({ ...fine, passes: equal });
    expect(learnt.spring.kind).toBe('learnt');
    if (!learnt.plan?.ok) throw new Error('no plan');
    expect(shown(learnt.plan.value.correction)).toBe('0.0008');
    expect(shown(learnt.plan.value.lands)).toBe('1.4980');
  });

  test('the passes that count as light are half the finish, or the least that cuts where that is more', () => {
    expect(cutProgress({ ...fine, finishTake: inch('.0158'), passes: equal }).spring.kind).toBe('not-learnt');
    // 303 with an insert wants .008 at the least on the diameter.
    const heavier = { ...fine, finishTake: inch('.010'), cuttingTool: 'carbide' } as const;
    expect(cutProgress({ ...heavier, passes: equal }).spring.kind).toBe('learnt');
  });

  test('a spring inside the caliper’s band changes no plan', () => {
    const withCaliper = equal.map((one) => ({ ...one, tool: caliper }));
    const same = cutProgress({ ...fine, passes: withCaliper });
    expect(same.spring.kind).toBe('inside-band');
    expect(same.plan?.ok && toText(same.plan.value.correction)).toBe('0');
  });
});

describe('a drilled, reamed or tapped hole', () => {
  const drilled: CutQuestion = {
    ...ring,
    of: 'tap-drill',
    operation: 'drill',
    drill: '29/64',
    blank: inch('.4375'),
    target: inch('29/64'),
    lower: inch('.4500'),
    upper: inch('.4560'),
  };

  test('has tools to run through instead of passes', () => {
    const at = cutProgress(drilled);
    expect(at.plan).toBeUndefined();
    expect(at.hole?.ok && at.hole.value.steps.map((step) => step.do)).toEqual(['drill']);
    expect([at.stage, at.nextIsLast]).toEqual(['to-cut', false]);
  });

  test('needs no size before it, and is to size once it is measured inside', () => {
    const { blank: _, ...fresh } = drilled;
    const start = cutProgress(fresh);
    expect(start.hole?.ok && start.hole.value.steps.map((step) => step.do)).toEqual([
      'centre-drill',
      'drill',
    ]);
    expect(cutProgress({ ...fresh, passes: [pass('.4535')] }).stage).toBe('to-size');
  });

  test('gone too large is over, and there is nothing to run through it', () => {
    const over = cutProgress({ ...drilled, passes: [pass('.4570')] });
    expect([over.stage, shown(over.past)]).toEqual(['over', '0.0010']);
    expect(over.hole).toMatchObject({ ok: false, refusal: { code: 'metal-gone' } });
  });
});

test.each([
  ['outside', 'pin'],
  ['bore', 'bore'],
  ['tap-drill', 'bore'],
  ['length', 'length'],
  ['recess-depth', 'depth'],
  ['slot-depth', 'depth'],
  ['slot-width', 'gap'],
] as const)('%s is read as a %s', (of, kind) => {
  expect(featureKindOf(of)).toBe(kind);
});

describe('metal', () => {
  const kinds: readonly CutKind[] = [
    'outside',
    'length',
    'bore',
    'recess-depth',
    'slot-depth',
    'slot-width',
    'tap-drill',
  ];

  test('stands above an outside and a length, and below everything that is cut into the part', () => {
    const large = kinds.filter((of) => toText(metalBetween(of, inch('2'), inch('1'))) === '25.4');
    expect(large).toEqual(['outside', 'length']);
  });

  test('is gone past the small limit of an outside and the large one of a bore', () => {
    const limits = { target: inch('1'), lower: inch('.9'), upper: inch('1.1') };
    expect(shown(lastLimit({ of: 'outside', ...limits }))).toBe('0.9000');
    expect(shown(firstLimit({ of: 'outside', ...limits }))).toBe('1.1000');
    expect(shown(lastLimit({ of: 'bore', ...limits }))).toBe('1.1000');
    expect(shown(firstLimit({ of: 'bore', ...limits }))).toBe('0.9000');
  });

  test('between a size and what is left of it is what was taken, whatever is cut', () => {
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.integer({ min: 0, max: 9999 }), (of, tenths) => {
        const take = inch((tenths / 10_000).toFixed(4));
        expect(toText(metalBetween(of, inch('2'), sizeAfterTaking(of, inch('2'), take)))).toBe(toText(take));
      }),
    );
  });
});

test('cut after cut on a lathe that does what it is asked, the plan ends to size and never over', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 15_000, max: 20_000 }),
      fc.constantFrom('turn' as const, 'ring' as const),
      fc.constantFrom('hss' as const, 'carbide' as const),
      (blank, operation, cuttingTool) => {
        let q: CutQuestion = { ...ring, operation, cuttingTool, blank: inch((blank / 10_000).toFixed(4)) };
        for (let round = 0; round < 30; round += 1) {
          const { next, stage } = cutProgress(q);
          expect(stage).not.toBe('over');
          if (!next) break;
          const { asked, sizeAfter } = next;
          q = {
            ...q,
            passes: [...q.passes, { measured: sizeAfter, asked, struckOut: false, tool: micrometer }],
          };
        }
        expect(cutProgress(q).stage).toBe('to-size');
      },
    ),
    { numRuns: 25 }, // each is a whole cut
  );
});
