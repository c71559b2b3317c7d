import { describe, expect, test } from 'vitest';
import {
  taperSetting,
  type TaperQuestion,
} from '../../../../src/engine/worksheets/bearing-seat/taper-setting.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import {
  MOCK_UP_SENTENCE,
  sayApart,
  sayNotYet,
  sayPlay,
  sayPlayToChange,
  saySeat,
  saySeatCut,
  saySleeveRefusal,
} from '../../../../src/engine/worksheets/bearing-seat/say-bearing-seat.ts';
import { sayVerdict } from '../../../../src/engine/reading/say-verdict.ts';

const inch = (text: string) => lengthOf(`${text} in`);

function taper(endPlay: string, more: Partial<TaperQuestion> = {}) {
  const limits = { lower: inch('.001'), upper: inch('.005'), source: 'test' };
  return taperSetting({
    endPlay: typedEstimate(inch(endPlay)),
    want: { aim: inch('.003'), limits },
    setBy: 'nut',
    ...more,
  });
}

describe('a bearing in its recess is said', () => {
  test('proud of, under or level with the face', () => {
    expect(saySeat({ proud: inch('.0026') }, 'in')).toBe('It stands .0026 in proud of the face.');
    expect(saySeat({ proud: inch('-.0074') }, 'in')).toBe('It lies .0074 in below the face.');
    expect(saySeat({ proud: inch('0') }, 'in')).toBe('It stands level with the face.');
  });

  test('with the cut, or why there is none', () => {
    const cut = {
      ok: true,
      value: {
        aim: inch('.6546'),
        lower: inch('.6536'),
        upper: inch('.6556'),
        from: inch('.650'),
        to: inch('.654'),
        take: inch('.004'),
      },
    } as const;
    expect(saySeatCut(cut, 'deeper', 'in')).toBe('.650 → .654, .004 deeper; good from .6536 to .6556.');
    // .650 · 25.4 = 16.51; .654: 16.6116; .004: 0.1016; .6536: 16.60144; .6556: 16.65224; limits inwards
    expect(saySeatCut(cut, 'deeper', 'mm')).toBe(
      '16.51 → 16.612, 0.102 mm deeper; good from 16.602 to 16.652 mm.',
    );
    const refused = {
      ok: false,
      refusal: { code: 'no-proof', halfWidth: inch('.003'), lower: inch('.001'), upper: inch('.003') },
    } as const;
    expect(saySeatCut(refused, 'off', 'in')).toMatch(/^No cut can be proved/);
  });

  test('with a mock-up in it as not proved', () => {
    expect(MOCK_UP_SENTENCE).toMatch(/mock-up bearing.*fit the real bearing and measure again/);
  });
});

describe('taper rollers are said', () => {
  test('with end play, or preload below zero', () => {
    expect(sayPlay(inch('.009'), 'in')).toBe('end play .009');
    expect(sayPlay(inch('-.001'), 'in')).toBe('preload .001');
    expect(sayPlay(inch('-.010'), 'mm')).toBe('preload 0.254 mm');
  });

  test('with the play to lose or to gain', () => {
    expect(sayPlayToChange(taper('.009'), 'in')).toBe('.006 of end play to lose');
    expect(sayPlayToChange(taper('-.001'), 'in')).toBe('.004 of end play to gain');
    // .006 · 25.4 = 0.1524
    expect(sayPlayToChange(taper('.009'), 'mm')).toBe('0.152 mm of end play to lose');
  });

  test('not to be touched while it is too close to call', () => {
    expect(sayNotYet('nut')).toBe('Read it again before touching the nut.');
    expect(sayNotYet('shim-behind')).toBe('Read it again before touching the shim.');
  });
});

test('places too far from each other are said, with what can’t be done', () => {
  expect(sayApart(inch('.009'), 'shim or cut', 'in')).toBe(
    'Its places are .009 in apart: no one shim or cut suits all. Find out why first.',
  );
});

test('a sleeve too long is called so, and one too short', () => {
  const limits = { lower: inch('0'), upper: inch('.005'), source: 'test' };
  const said = { quantity: 'excess length', unit: 'in', limits } as const;
  expect(
    sayVerdict({ kind: 'no-good', way: 'over', by: inch('.005') }, { ...said, value: inch('.010') }),
  ).toBe('Too long: excess length .010, want 0 to .005.');
  expect(
    sayVerdict({ kind: 'no-good', way: 'under', by: inch('.002') }, { ...said, value: inch('-.002') }),
  ).toBe('Too short: excess length −.002, want 0 to .005.');
});

test('a sleeve wanted too short is refused with what it would do', () => {
  expect(saySleeveRefusal({ code: 'sleeve-would-side-load', lower: inch('-.001') }, 'in')).toBe(
    'A sleeve .001 in too short lets the nut load the balls sideways. It pulls the inner races together. Want zero or more.',
  );
  const step = { code: 'no-step-in-limits', step: inch('.001'), lower: inch('1'), upper: inch('1') } as const;
  expect(saySleeveRefusal(step, 'in')).toMatch(/^No step of the dial/);
});
