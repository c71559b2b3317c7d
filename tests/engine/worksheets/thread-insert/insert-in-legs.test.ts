import { describe, expect, test } from 'vitest';
import { exactDecimalText, lengthOf, type Length } from '../../../../src/engine/length/length.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { threadNamed } from '../../../../src/engine/thread/threads.ts';
import {
  insertInLegs,
  isSpoiltInALeg,
  type InsertLegQuestion,
} from '../../../../src/engine/worksheets/thread-insert/insert-in-legs.ts';

// 7/16-20: D = .4375, P = .05. 1D .4375, 1.5D .65625, 2D .875, 2.5D 1.09375, 3D 1.3125 (ASME B18.29.1).
function legs(...asked: readonly InsertLegQuestion[]) {
  const thread = threadNamed('7/16-20 UNF');
  if (!thread) throw new Error('no such thread');
  const hole = typedEstimate(lengthOf('.4500 in'));
  return insertInLegs({ thread, metal: 'steel', hole: { tightest: hole, loosest: hole }, legs: asked });
}

const thick = (size: string): InsertLegQuestion => ({ thickness: lengthOf(size) });
const inches = (length: Length | undefined) => length && exactDecimalText(length, 'in');

function answered(...asked: readonly InsertLegQuestion[]) {
  const result = legs(...asked);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

describe('an insert in several legs', () => {
  test('has a length of its own in each: 1.5D in .750, 2D in 1.000', () => {
    const [first, second] = answered(thick('.750 in'), thick('1.000 in')).legs;
    expect([first?.chosen.times, second?.chosen.times]).toEqual(['1.5D', '2D']);
    expect([inches(first?.chosen.nominal), inches(second?.chosen.nominal)]).toEqual(['0.65625', '0.875']);
    // wound in .5 to .75 of .05 shorter: .875 − .025 = .850, .875 − .0375 = .8375
    expect(inches(second?.chosen.installedMost)).toBe('0.85');
    expect(inches(second?.chosen.installedLeast)).toBe('0.8375');
  });

  test('goes the same .75 to 1.5 pitches below the face of each', () => {
    const { setDown } = answered(thick('.750 in'), thick('1.000 in'));
    // .75 · .05 and 1.5 · .05
    expect([inches(setDown.least), inches(setDown.most)]).toEqual(['0.0375', '0.075']);
  });

  test('is trimmed only in the leg that is thinner than 1D', () => {
    const [first, second] = answered(thick('.750 in'), thick('.375 in')).legs;
    expect(first?.chosen.trimOff).toBeUndefined();
    // .4375 − .375
    expect([second?.chosen.times, inches(second?.chosen.trimOff)]).toEqual(['1D', '0.0625']);
  });

  test('of which one has no thickness is refused in that leg, by name', () => {
    const result = legs(thick('.750 in'), thick('0 in'));
    expect(!result.ok && result.refusal).toMatchObject({ code: 'no-metal-for-insert', leg: 2 });
    const alone = legs(thick('0 in'));
    expect(!alone.ok && alone.refusal).not.toHaveProperty('leg');
  });

  test('has a floor of its own under each blind hole, and one that is too thin spoils the whole', () => {
    // 1D in a blind hole: .4375 + 4 · .05 = .6375 deep, the point of 29/64 .3004 · .453125 = .136 deeper: .774 in all.
    const blind = (size: string) => ({ ...thick(size), blind: { tap: 'bottoming' as const } });
    expect(isSpoiltInALeg(answered(blind('1.500 in'), blind('.900 in')))).toBe(false);
    const spoilt = answered(blind('1.500 in'), blind('.750 in'));
    expect(spoilt.legs.map(({ blindDepth }) => blindDepth?.floorMissing !== undefined)).toEqual([
      false,
      true,
    ]);
    expect(isSpoiltInALeg(spoilt)).toBe(true);
  });

  test('has the drill and the hole of one insert, whichever leg is asked first', () => {
    const one = answered(thick('.750 in'));
    const two = answered(thick('1.000 in'), thick('.750 in'));
    expect(two.hole).toEqual(one.hole);
    expect(two.drill).toEqual(one.drill);
  });
});
