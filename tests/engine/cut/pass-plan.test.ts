import { describe, expect, test } from 'vitest';
import type { LatheDial } from '../../../src/engine/cut/dial.ts';
import { decimalText, lengthOf, sum, toText, type Length } from '../../../src/engine/length/length.ts';
import type { CutKind } from '../../../src/engine/length/metal-on.ts';
import { passPlan, type PassPlan, type Takes } from '../../../src/engine/cut/pass-plan.ts';
import { sayPlanNote } from '../../../src/engine/cut/say-cuts.ts';

/** Plans worked by hand; the sum stands beside each. Takes are off the size. */

type Unit = 'in' | 'mm';
const places = { in: 4, mm: 2 } as const;

type Sizes = {
  readonly of: CutKind;
  readonly unit: Unit;
  readonly dial: readonly ['radius' | 'diameter', string];
  readonly present: string;
  readonly target: string;
  readonly limits: readonly [string, string];
  readonly takes: readonly [largest: string, least: string, finish: string];
  readonly spring?: string;
  readonly marksPerTurn?: number;
};

function planned(q: Sizes) {
  const size = (text: string) => lengthOf(`${text} ${q.unit}`);
  const [largest, least, finish] = q.takes;
  const takes: Takes = { largest: size(largest), least: size(least), finish: size(finish) };
  const dial: LatheDial = {
    reads: q.dial[0],
    graduation: size(q.dial[1]),
    ...(q.marksPerTurn !== undefined && { marksPerTurn: q.marksPerTurn }),
  };
  return passPlan({
    of: q.of,
    present: size(q.present),
    target: size(q.target),
    lower: size(q.limits[0]),
    upper: size(q.limits[1]),
    dial,
    takes,
    ...(q.spring !== undefined && { spring: size(q.spring) }),
  });
}

function plan(q: Sizes): PassPlan {
  const result = planned(q);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const text = (unit: Unit) => (length: Length) => decimalText(length, unit, places[unit]);

/** Each pass as what is asked off the size, the dial from its zero, and the size after. */
function lines(q: Sizes) {
  const shown = text(q.unit);
  return plan(q).passes.map(
    ({ kind, asked, dial, sizeAfter }) =>
      `${kind} ${shown(asked)}, dial ${dial.turns > 0 ? `${dial.turns} × ` : ''}${shown(dial.figure)}, ${shown(sizeAfter)}`,
  );
}

const shaft = {
  of: 'outside',
  unit: 'in',
  dial: ['diameter', '.001'],
  present: '1.625',
  target: '1.498',
  limits: ['1.4975', '1.4985'],
  takes: ['.100', '.001', '.012'],
} as const satisfies Sizes;

describe('a plan worked by hand', () => {
  test('turns 1.625 to 1.498 on a diameter dial: .058 + .057 + .006 + .006 = .127', () => {
    // .127 less 2 × .006 is .115: more than .100, so two passes, .058 and .057.
    expect(lines(shaft)).toEqual([
      'rough 0.0580, dial 0.0580, 1.5670',
      'rough 0.0570, dial 0.1150, 1.5100',
      'light 0.0060, dial 0.1210, 1.5040',
      'light 0.0060, dial 0.1270, 1.4980',
    ]);
  });

  test('turns a ring of .046 to go on a radius dial: .015 + .004 + .004 = .023 on the dial', () => {
    // A mark of .001 takes .002: 23 marks. The finish of .016 is 4 marks a pass, 23 − 8 = 15 marks is .030 off.
    expect(
      lines({ ...shaft, dial: ['radius', '.001'], present: '1.544', takes: ['.036', '.004', '.016'] }),
    ).toEqual([
      'rough 0.0300, dial 0.0150, 1.5140',
      'light 0.0080, dial 0.0190, 1.5060',
      'light 0.0080, dial 0.0230, 1.4980',
    ]);
  });

  test('bores 24.60 to 25.00 mm on a radius dial of 0.02: 0.06 + 0.06 + 0.04 + 0.04 = 0.20 on the dial', () => {
    // A mark takes 0.04: 10 marks. Finish 0.16 is 2 marks a pass; 6 marks are left, 0.24, over 0.20: two of 3.
    expect(
      lines({
        of: 'bore',
        unit: 'mm',
        dial: ['radius', '0.02'],
        present: '24.60',
        target: '25.00',
        limits: ['25.00', '25.02'],
        takes: ['0.20', '0.02', '0.16'],
      }),
    ).toEqual([
      'rough 0.12, dial 0.06, 24.72',
      'rough 0.12, dial 0.12, 24.84',
      'light 0.08, dial 0.16, 24.92',
      'light 0.08, dial 0.20, 25.00',
    ]);
  });

  test('faces 12.30 to 9.60 mm with a dial that goes round at 1 mm: 5 × 0.50 + 2 × 0.10 = 2.70', () => {
    // The length comes off whole, whatever the dial reads. 54 marks of 0.05, 2 × 2 for the finish, 50 in five of 10.
    expect(
      lines({
        of: 'length',
        unit: 'mm',
        dial: ['radius', '0.05'],
        marksPerTurn: 20,
        present: '12.30',
        target: '9.60',
        limits: ['9.55', '9.65'],
        takes: ['0.50', '0.05', '0.20'],
      }),
    ).toEqual([
      'rough 0.50, dial 0.50, 11.80',
      'rough 0.50, dial 1 × 0.00, 11.30',
      'rough 0.50, dial 1 × 0.50, 10.80',
      'rough 0.50, dial 2 × 0.00, 10.30',
      'rough 0.50, dial 2 × 0.50, 9.80',
      'light 0.10, dial 2 × 0.60, 9.70',
      'light 0.10, dial 2 × 0.70, 9.60',
    ]);
  });

  const stainless = {
    ...shaft,
    target: '.750',
    limits: ['.7495', '.7505'],
    takes: ['.050', '.006', '.020'],
  } as const satisfies Sizes;

  test('keeps stainless above its least: .026 is .010 + .008 + .008, not .006 behind two of .010', () => {
    // Two of .010 leave .006 for the first, lighter than they are; two of .009 leave .008; two of .008 leave .010.
    expect(lines({ ...stainless, present: '.776' })).toEqual([
      'rough 0.0100, dial 0.0100, 0.7660',
      'light 0.0080, dial 0.0180, 0.7580',
      'light 0.0080, dial 0.0260, 0.7500',
    ]);
  });

  test('takes .015 of stainless in two, as near alike as marks allow: .008 + .007', () => {
    // Equal ones of .007 leave .001 to rub, of .006 leave .003.
    expect(lines({ ...stainless, present: '.765' })).toEqual([
      'last 0.0080, dial 0.0080, 0.7570',
      'last 0.0070, dial 0.0150, 0.7500',
    ]);
  });

  test('takes .011 of stainless at once, as half of it would rub', () => {
    expect(lines({ ...stainless, present: '.761' })).toEqual(['last 0.0110, dial 0.0110, 0.7500']);
  });

  test('says that .005 of stainless rubs, and .006 does not', () => {
    expect(plan({ ...stainless, present: '.755' }).passes.map(({ rubs }) => rubs)).toEqual([true]);
    expect(plan({ ...stainless, present: '.756' }).passes.map(({ rubs }) => rubs)).toEqual([false]);
  });

  test('splits a blank that is smaller than two finishing passes: .006 is .003 + .003', () => {
    expect(lines({ ...shaft, present: '1.504' })).toEqual([
      'light 0.0030, dial 0.0030, 1.5010',
      'light 0.0030, dial 0.0060, 1.4980',
    ]);
  });

  test('lightens the last two until the first is no lighter than they are: .013 is .005 + .004 + .004', () => {
    // Two of .006 leave .001, two of .005 leave .003.
    expect(lines({ ...shaft, present: '1.511' })).toEqual([
      'rough 0.0050, dial 0.0050, 1.5060',
      'light 0.0040, dial 0.0090, 1.5020',
      'light 0.0040, dial 0.0130, 1.4980',
    ]);
  });

  test('takes nothing where the target is reached, or passed inside the limits', () => {
    expect(plan({ ...shaft, present: '1.498' }).passes).toEqual([]);
    const passed = plan({ ...shaft, present: '1.4976' });
    expect(passed.passes).toEqual([]);
    expect(text('in')(passed.proud)).toBe('-0.0004');
  });

  test('takes nothing where less than a mark is left and the size is inside', () => {
    const near = plan({ ...shaft, present: '1.4985' });
    expect(near.passes).toEqual([]);
    expect(text('in')(near.proud)).toBe('0.0005');
  });

  test('lands proud where no mark meets the target: 1.6234 less 125 marks is 1.4984', () => {
    const off = plan({ ...shaft, present: '1.6234' });
    expect(text('in')(off.lands)).toBe('1.4984');
    expect(text('in')(off.proud)).toBe('0.0004');
  });

  test('lands on the first mark inside where the one short of the target is outside', () => {
    // 1.4984 is over 1.4982; the next mark is 1.4974.
    const off = plan({ ...shaft, present: '1.6234', limits: ['1.4970', '1.4982'] });
    expect(text('in')(off.lands)).toBe('1.4974');
    expect(text('in')(off.proud)).toBe('-0.0006');
  });

  test('makes a bore no larger than its upper limit by the same rule', () => {
    // From .4375 marks of .002 land on .4995, .5015: .4995 is short of .4998, .5015 is over .5010.
    const bore = {
      of: 'bore',
      unit: 'in',
      dial: ['radius', '.001'],
      present: '.4375',
      target: '.5000',
      limits: ['.4998', '.5010'],
      takes: ['.040', '.001', '.012'],
    } as const satisfies Sizes;
    expect(planned(bore)).toMatchObject({ ok: false, refusal: { code: 'no-mark-lands' } });
    expect(text('in')(plan({ ...bore, limits: ['.4998', '.5015'] }).lands)).toBe('0.5015');
  });
});

describe('a plan is refused', () => {
  test('where the limits are narrower than a step and no mark falls between them, with where the dial does land', () => {
    const result = planned({
      ...shaft,
      dial: ['radius', '.001'],
      present: '1.5433',
      limits: ['1.4976', '1.4984'],
    });
    if (result.ok || result.refusal.code !== 'no-mark-lands') throw new Error('it lands');
    const shown = text('in');
    expect([result.refusal.before, result.refusal.past].map(shown)).toEqual(['1.4993', '1.4973']);
    expect(shown(result.refusal.step)).toBe('0.0020');
  });

  test('where the metal is gone, with by how much', () => {
    const result = planned({ ...shaft, present: '1.4970' });
    expect(result).toEqual({
      ok: false,
      refusal: {
        code: 'metal-gone',
        present: lengthOf('1.4970 in'),
        limit: lengthOf('1.4975 in'),
        past: lengthOf('.0005 in'),
      },
    });
  });

  test('where one mark takes more than a pass may', () => {
    const result = planned({ ...shaft, dial: ['radius', '.001'], takes: ['.0019', '.001', '.002'] });
    expect(result).toMatchObject({ ok: false, refusal: { code: 'take-below-mark' } });
  });

  test('where it would be more than 200 passes, and not at 200', () => {
    const many = { ...shaft, takes: ['.001', '.001', '.002'] } as const;
    expect(plan({ ...many, present: '1.698' }).passes).toHaveLength(200);
    expect(planned({ ...many, present: '1.699' })).toMatchObject({
      ok: false,
      refusal: { code: 'too-many-passes', passes: 201 },
    });
  });
});

describe('with a spring learnt', () => {
  const fine = {
    ...shaft,
    dial: ['diameter', '.0005'],
    present: '1.5020',
    limits: ['1.4960', '1.5000'],
    takes: ['.100', '.0005', '.004'],
  } as const satisfies Sizes;

  test('the last pass asks for it on top, and lands on the target: .0040 + .0015 asked is .0040 taken', () => {
    const corrected = plan({ ...fine, spring: '.0015' });
    expect(corrected.passes.map(({ asked }) => text('in')(asked))).toEqual(['0.0020', '0.0035']);
    expect(corrected.passes.map(({ takes }) => text('in')(takes))).toEqual(['0.0020', '0.0020']);
    expect(text('in')(corrected.lands)).toBe('1.4980');
    expect(text('in')(corrected.correction)).toBe('0.0015');
  });

  test('the last pass never asks for more than is left to the limit: .0045, not .0055', () => {
    // 1.5020 − 1.4975 is .0045; if the tool doesn't spring after all, it ends on the limit.
    const held = plan({ ...fine, limits: ['1.4975', '1.5000'], spring: '.0015' });
    expect(held.passes.map(({ asked }) => text('in')(asked))).toEqual(['0.0020', '0.0025']);
    expect(text('in')(held.lands)).toBe('1.4990');
  });

  test('the last pass is still no deeper than allowed', () => {
    const held = plan({ ...fine, takes: ['.002', '.0005', '.004'], spring: '.0015' });
    expect(held.passes.map(({ asked }) => text('in')(asked))).toEqual(['0.0020', '0.0020']);
  });

  test('a tool that takes more than it is asked is asked for less: .0030 asked is .0040 taken', () => {
    const less = plan({ ...fine, spring: '-0.0010' });
    expect(less.passes.map(({ asked }) => text('in')(asked))).toEqual(['0.0015', '0.0015']);
    expect(text('in')(less.lands)).toBe('1.4980');
    expect(text('in')(less.correction)).toBe('-0.0010');
  });

  test('a tool that takes more than it is asked is asked for one mark, where that leaves it inside', () => {
    // .0005 to the target; one mark of .0005 takes .0015: 1.4985 − .0015 is 1.4970, inside.
    const one = plan({ ...fine, present: '1.4985', limits: ['1.4960', '1.4984'], spring: '-0.0010' });
    expect(one.passes.map(({ asked }) => text('in')(asked))).toEqual(['0.0005']);
    expect(text('in')(one.lands)).toBe('1.4970');
  });

  test('a tool that takes more in one mark than is left to the limit is refused', () => {
    // .0010 left to the limit; one mark of .0005 would take .0015.
    const greedy = planned({
      ...fine,
      present: '1.4985',
      limits: ['1.4975', '1.4984'],
      spring: '-0.0010',
    });
    if (greedy.ok || greedy.refusal.code !== 'no-mark-lands') throw new Error('it lands');
    // Left as it is it is over; one mark and .0010 more end under: 1.4985 − .0015.
    expect([greedy.refusal.before, greedy.refusal.past].map(text('in'))).toEqual(['1.4985', '1.4970']);
  });

  test.each([
    // .0009 is left to the limit: no more than that is asked, and a tool that springs .001 takes none of it.
    { dial: '.0005', present: '.7504', asked: '0.0005', short: '0.0002' }, // .7504 − .7502
    { dial: '.0001', present: '.7504', asked: '0.0009', short: '0.0002' },
    { dial: '.001', present: '.7508', asked: '0.0010', short: '0.0006' }, // .7508 − .7502
  ])(
    'what springs as much as it is asked takes nothing, never less than nothing, and is short of the limits: $dial at $present',
    ({ dial, present, asked, short }) => {
      const stuck = plan({
        of: 'outside',
        unit: 'in',
        dial: ['diameter', dial],
        present,
        target: '.7500',
        limits: ['.7495', '.7502'],
        takes: ['.060', '.002', '.008'],
        spring: '.001',
      });
      const shown = text('in');
      expect(shown(sum(stuck.passes.map((pass) => pass.asked)))).toBe(asked);
      expect(stuck.passes.map(({ takes }) => shown(takes))).toEqual(stuck.passes.map(() => '0.0000'));
      expect(shown(stuck.lands)).toBe(`0${present}`);
      expect(stuck.short && shown(stuck.short)).toBe(short);
      expect(sayPlanNote(stuck, 'in')).toContain(
        `As the tool cuts it ends ${short.slice(1)} in short of the limits, and no more can be asked for. Go over it again without feed, then measure.`,
      );
      expect(sayPlanNote(stuck, 'in')).not.toContain('as near as the dial comes');
    },
  );

  test('a tool that takes more than it is asked lands inside where no mark by itself does', () => {
    // One mark: 42.04589 + 0.0254 is 42.07129, under; two are 42.09669, over. One and 0.00762 more: 42.07891.
    const bore = {
      of: 'bore',
      unit: 'mm',
      dial: ['diameter', '0.0254'],
      present: '42.04589',
      target: '42.0878',
      limits: ['42.07764', '42.09288'],
      takes: ['0.5', '0.02', '0.1'],
    } as const satisfies Sizes;
    const one = plan({ ...bore, spring: '-0.00762' });
    expect(one.passes.map(({ asked }) => toText(asked))).toEqual(['0.0254']);
    expect(toText(one.lands)).toBe('42.07891');
    expect(one.short).toBeUndefined();
    expect(planned(bore)).toMatchObject({ ok: false, refusal: { code: 'no-mark-lands' } });
  });

  test('a tool that would take more in one mark than is left leaves a size that is inside as it is', () => {
    // 1.4980 is inside; one mark of .0005 would take .0015, and .0010 is left to the limit.
    const inside = { ...fine, present: '1.4980', target: '1.4975', limits: ['1.4970', '1.4984'] } as const;
    expect(plan({ ...inside, spring: '-0.0010' }).passes).toEqual([]);
    expect(text('in')(plan({ ...inside, spring: '-0.0010' }).correction)).toBe('0.0000');
  });

  test('where nothing is left to take nothing is asked', () => {
    expect(plan({ ...fine, present: '1.4982', spring: '.0015' }).passes).toEqual([]);
  });

  test('it lands on the first mark inside, spring and all, where the one short of the target is outside', () => {
    // 1.5012 less 8 marks of .0005, and .0011 left by the spring, is 1.4983, over 1.4982; 9 marks make it 1.4978.
    const short = plan({
      ...fine,
      present: '1.5012',
      target: '1.4980',
      limits: ['1.4960', '1.4982'],
      spring: '.0011',
    });
    expect(text('in')(short.lands)).toBe('1.4978');
  });
});
