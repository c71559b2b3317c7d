import { describe, expect, test } from 'vitest';
import {
  bearingInSeat,
  type SettingWant,
} from '../../../../src/engine/worksheets/bearing-seat/bearing-seat.ts';
import {
  innerSleeve,
  type SleeveQuestion,
} from '../../../../src/engine/worksheets/bearing-seat/inner-sleeve.ts';
import {
  taperSetting,
  type TaperQuestion,
} from '../../../../src/engine/worksheets/bearing-seat/taper-setting.ts';
import {
  cutsOfSeat,
  cutsOfSleeve,
  cutsOfTaper,
} from '../../../../src/engine/worksheets/bearing-seat/cuts-of-bearing-seat.ts';
import { toleranceEstimate } from '../../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { waysSaid } from '../../cut/cut-said.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const known = (size: string, plusMinus = '0') => toleranceEstimate(inch(size), inch(plusMinus));
const want = (lower: string, aim: string, upper: string): SettingWant => ({
  aim: inch(aim),
  limits: { lower: inch(lower), upper: inch(upper), source: 'test' },
});
const step = inch('.001');

describe('a sleeve that should be .001 to .003 longer than the 2.000 between the faces', () => {
  const ask: SleeveQuestion = { between: known('2.000'), want: want('.001', '.002', '.003'), step };
  const offered = (more: Partial<SleeveQuestion>) => {
    const answer = innerSleeve({ ...ask, ...more });
    return answer.ok ? waysSaid(cutsOfSleeve({ ...ask, ...more }, answer.value)) : answer.refusal.code;
  };

  test('is made 2.002 where there is none', () => {
    expect(offered({})).toEqual({ make: ['Sleeve, made new: 2.0020 (2.0010 to 2.0030)'] });
  });

  test('is faced from 2.010 to 2.002, or made new', () => {
    expect(offered({ sleeve: known('2.010') })).toEqual({
      trim: ['Sleeve, faced to length: 2.0100 → 2.0020 (2.0010 to 2.0030)'],
      make: ['Sleeve, made new: 2.0020 (2.0010 to 2.0030)'],
    });
  });

  test('that is too short can only be made new', () => {
    expect(Object.keys(offered({ sleeve: known('1.998') }))).toEqual(['make']);
  });

  test('that is good is left alone', () => {
    expect(offered({ sleeve: known('2.002') })).toEqual({});
  });

  test('that is too close to call may be cut, and is marked as not sure', () => {
    const answer = innerSleeve({ ...ask, sleeve: known('2.0032', '.0004') });
    const ways = answer.ok ? cutsOfSleeve(ask, answer.value) : [];
    expect(ways.map(({ id, unsure }) => [id, unsure])).toContainEqual(['make', true]);
  });
});

describe('a bearing .5906 wide in a recess .580 deep', () => {
  const offered = (limits?: SettingWant, depth = '.580') => {
    const q = {
      depth: known(depth),
      goesIn: [{ size: known('.5906'), count: 1 }],
      step,
      ...(limits && { want: limits }),
    };
    return waysSaid(cutsOfSeat(q, bearingInSeat(q)));
  };

  test('that should stand .001 to .003 proud has its recess made .588 deep', () => {
    // .5906 − .580 = .0106 proud; .580 + .0106 − .002 = .5886, cut shy: .588; .580 + .0076 = .5876 to .5896
    expect(offered(want('.001', '.002', '.003'))).toEqual({
      deepen: ['Recess, made deeper: .5800 → .5880 (.5876 to .5896)'],
    });
  });

  test('with nothing wanted, or good as it is, or too deep already, takes no cut', () => {
    expect(offered()).toEqual({});
    expect(offered(want('.010', '.011', '.012'))).toEqual({});
    expect(offered(want('.001', '.002', '.003'), '.600')).toEqual({});
  });
});

describe('taper rollers with .008 end play where .002 to .004 is wanted', () => {
  const ask: TaperQuestion = {
    endPlay: known('.008'),
    want: want('.002', '.003', '.004'),
    setBy: 'shim-between',
    shim: known('.060'),
  };
  const offered = (more: Partial<TaperQuestion>) => {
    const q = { ...ask, ...more };
    return waysSaid(cutsOfTaper(q, taperSetting(q), step));
  };

  test('set by a shim between the cones have it faced from .060 to .055', () => {
    // .060 − (.008 − .003); .060 − .006; .060 − .004
    expect(offered({})).toEqual({ shim: ['Shim, faced to thickness: .0600 → .0550 (.0540 to .0560)'] });
  });

  test('set by a shim behind a cup need a thicker one, which no cut makes', () => {
    expect(offered({ setBy: 'shim-behind' })).toEqual({});
  });

  test('set by a nut, good as they are, or with a shim nobody has measured, take no cut', () => {
    const { shim: _unknown, ...without } = ask;
    expect(offered({ setBy: 'nut' })).toEqual({});
    expect(offered({ endPlay: known('.003') })).toEqual({});
    expect(waysSaid(cutsOfTaper(without, taperSetting(without), step))).toEqual({});
  });

  test('with a shim thinner than what has to come off take no cut', () => {
    expect(offered({ shim: known('.004') })).toEqual({});
  });
});
