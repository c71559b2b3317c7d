import { describe, expect, test } from 'vitest';
import { cutsOfRing } from '../../../../src/engine/worksheets/ring/cuts-of-ring.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { ring, type RingQuestion } from '../../../../src/engine/worksheets/ring/ring.ts';
import type { RingBlank } from '../../../../src/engine/worksheets/ring/ring-blank.ts';
import { keepsItsLimits, waysSaid } from '../../cut/cut-said.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const places = (size: string) => ({
  tightest: typedEstimate(inch(size)),
  loosest: typedEstimate(inch(size)),
});
const clearance = (lower: string, aim: string, upper: string) => ({
  lower: inch(lower),
  aim: inch(aim),
  upper: inch(upper),
  source: 'test',
});

/** Recess 1.500 bore, .093 deep, .020 to stay free; stem .750. */
const shield: RingQuestion = {
  recess: places('1.500'),
  stem: places('.750'),
  outsideClearance: clearance('.001', '.003', '.005'),
  insideClearance: clearance('.010', '.020', '.030'),
  depth: typedEstimate(inch('.093')),
  stayFree: inch('.020'),
  blanks: [],
  steps: { diameter: inch('.001'), length: inch('.001') },
};

const blank = (name: string, outside: string, inside: string, thickness: string): RingBlank => ({
  id: name,
  name,
  outside: inch(outside),
  inside: inch(inside),
  thickness: inch(thickness),
});

function ways(blanks: readonly RingBlank[], more: Partial<RingQuestion> = {}) {
  const q = { ...shield, blanks, ...more };
  const answer = ring(q);
  if (!answer.ok) throw new Error(answer.refusal.code);
  const found = cutsOfRing(q, answer.value);
  expect(found.flatMap((way) => way.offers).every(keepsItsLimits)).toBe(true);
  return found;
}

describe('a shield for a 1.500 recess round a .750 stem', () => {
  test('from a washer 1.625 by .688 by .100 is bored, turned on a mandrel, then faced', () => {
    // .750 + .020; 1.500 − .003; .093 − .020, and never under .020
    expect(waysSaid(ways([blank('washer', '1.625', '.688', '.100')]))).toEqual({
      washer: [
        'Ring, inside: .6880 → .7700 (.7600 to .7800)',
        'Ring, outside: 1.6250 → 1.4970 (1.4950 to 1.4990)',
        'Ring, to thickness: .1000 → .0730 (.0200 to .0730)',
      ],
    });
  });

  test('names its outside a ring, as thin metal on a mandrel is turned like one', () => {
    const [way] = ways([blank('washer', '1.625', '.688', '.100')]);
    expect(way?.offers.map(({ operation, of }) => [operation, of])).toEqual([
      ['bore', 'bore'],
      ['ring', 'outside'],
      ['face', 'length'],
    ]);
  });

  test('leaves a side of the washer that is good already', () => {
    expect(waysSaid(ways([blank('washer', '1.625', '.770', '.070')]))).toEqual({
      washer: ['Ring, outside: 1.6250 → 1.4970 (1.4950 to 1.4990)'],
    });
  });

  test('has one way for each washer that would do, the least work first', () => {
    const two = ways([blank('rough', '1.750', '.500', '.125'), blank('near', '1.500', '.770', '.070')]);
    expect(two.map(({ id, name }) => [id, name])).toEqual([
      ['near', 'From near'],
      ['rough', 'From rough'],
    ]);
  });

  test('is not cut where a washer goes in as it is', () => {
    expect(ways([blank('right', '1.497', '.770', '.070'), blank('rough', '1.750', '.500', '.125')])).toEqual(
      [],
    );
  });

  test('without a washer has its sizes and nothing to start from', () => {
    expect(waysSaid(ways([]))).toEqual({
      new: [
        'Ring, inside: .7700 (.7600 to .7800)',
        'Ring, outside: 1.4970 (1.4950 to 1.4990)',
        'Ring, to thickness: .0730 (.0200 to .0730)',
      ],
    });
  });

  test('in a recess nobody has measured the depth of is not faced', () => {
    const { depth: _unknown, ...open } = shield;
    const answer = ring(open);
    expect(answer.ok && cutsOfRing(open, answer.value)[0]?.offers).toHaveLength(2);
  });

  test('says what its limits come from', () => {
    expect(ways([])[0]?.offers.map(({ limitsFrom }) => limitsFrom)).toEqual([
      'stem and clearance (test)',
      'recess less clearance (test)',
      'depth of the recess less what must stay free',
    ]);
    expect(ways([], { stayFree: inch('0') })[0]?.offers[2]?.limitsFrom).toBe('depth of the recess');
  });
});
