import { describe, expect, test } from 'vitest';
import { bushing, type BushingQuestion } from '../../../../src/engine/press/bushing.ts';
import { cutsOfBushing } from '../../../../src/engine/worksheets/bushing/cuts-of-bushing.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { materialNamed, type MaterialId } from '../../../../src/engine/material/tables/materials.ts';
import { keepsItsLimits, waysSaid } from '../../cut/cut-said.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const part = (size: string) => ({ tightest: typedEstimate(inch(size)), loosest: typedEstimate(inch(size)) });
const dial = { reads: 'diameter', graduation: inch('.0005') } as const;

function metal(id: MaterialId) {
  const found = materialNamed(id);
  if (!found) throw new Error(id);
  return found;
}

/*
 * A 1/2 in pin as RC4 in a bore worn to .505: reamer 5/8 (.505 + .002, two walls of .060 beside .5023).
 * RC4 at .40 to .71: clearance .0006 to .0023. FN2 at .56 to .71: hole 0 to +.0007, pin +.0012 to +.0016.
 */
const pivot: BushingQuestion = {
  bore: part('.5050'),
  pin: part('.5000'),
  insideClass: 'RC4',
  pressClass: 'FN2',
  part: metal('low-carbon-steel'),
  bushing: metal('bearing-bronze'),
  wall: inch('.400'),
  length: inch('1'),
  // A harder bronze than the chart's: the press alone would stop the work otherwise.
  bushingYieldMpa: 300,
  finish: 'usual',
  condition: 'plain',
  cold: 'freezer',
  shopCelsius: 20,
  step: inch('.0005'),
};

function ways(more: Partial<BushingQuestion> = {}) {
  const q = { ...pivot, ...more };
  const answer = bushing(q);
  if (!answer.ok) throw new Error(answer.refusal.code);
  const found = cutsOfBushing(q, answer.value, dial);
  expect(found.flatMap((way) => way.offers).every(keepsItsLimits)).toBe(true);
  return found;
}

const opened = 'Bore, opened for the reamer, follows the wear: .5050 → .6150 (.6050 to .6230)';
const reamed = 'Bore, reamed 5/8 in: .6250 (.6250 to .6257)';
// middle of .6262 and .6266 is .6264, left full to the next half thou: .6265
const turned = 'Bushing, outside turned: .6265 (.6262 to .6266)';
// middle of .5006 and .5023 is .50145, cut shy to the half thou below: .5010
const bored = 'Bushing, bored once it is in: .5010 (.5006 to .5023)';

describe('a bushing for a bore worn to .505', () => {
  test('is four cuts in this order: open, ream 5/8, turn, bore', () => {
    // .120 to take is more than a reamer takes (.020): opened to .625 − .010, within .625 − .020 and .625 − .002
    expect(waysSaid(ways())).toEqual({ bushing: [opened, reamed, turned, bored] });
  });

  test('names what each is cut from', () => {
    expect(ways()[0]?.offers.map(({ material }) => material)).toEqual([
      'low-carbon-steel',
      'low-carbon-steel',
      'bearing-bronze',
      'bearing-bronze',
    ]);
  });

  test('bored to a size no reamer has is bored, not reamed, with nothing left for a reamer', () => {
    const [way] = ways({ reamTo: inch('.630') });
    expect(way?.offers.map(({ operation }) => operation)).toEqual(['bore', 'turn', 'bore']);
    expect(way?.offers[0]?.name).toBe('Bore, bored for the bushing, follows the wear');
  });

  test('with .015 to come off is reamed at once', () => {
    // 5/8 out of .610, in a part with the wall for it
    expect(waysSaid(ways({ bore: part('.6100') }))['bushing']?.[0]).toBe(
      'Bore, reamed 5/8 in, follows the wear: .6100 → .6250 (.6250 to .6257)',
    );
  });

  test('once the bore is reamed is turned to it and bored', () => {
    // Bore .6252: FN2 wants .0005 to .0016 over it; the bushing's own tolerance of .0004 about the middle of that
    const [way] = ways({ reamed: part('.6252') });
    expect(way?.offers.map(({ operation }) => operation)).toEqual(['turn', 'bore']);
    expect(way?.offers[0]?.limitsFrom).toContain('to the bore as reamed');
  });

  test('once it is turned right is only bored after pressing', () => {
    // .6265 − .6252 = .0013, within .0005 to .0016
    expect(waysSaid(ways({ reamed: part('.6252'), outside: part('.6265') }))).toEqual({ bushing: [bored] });
  });

  test('turned too large is turned down from what it is', () => {
    // .6275 − .6252 = .0023, over .0016
    expect(waysSaid(ways({ reamed: part('.6252'), outside: part('.6275') }))['bushing']?.[0]).toMatch(
      /^Bushing, outside turned: \.6275 → \.62[56]\d/,
    );
  });

  test('turned too small is made new', () => {
    // .6254 − .6252 = .0002, under .0005
    expect(waysSaid(ways({ reamed: part('.6252'), outside: part('.6254') }))['bushing']?.[0]).toMatch(
      /^Bushing, outside turned: \.62[56]\d \(/,
    );
  });

  test('that is plated after is turned smaller by the coat on both sides, and says so', () => {
    // .0002 of coat: .6258 to .6262
    const [way] = ways({ plating: inch('.0002') });
    const turn = way?.offers.find(({ operation }) => operation === 'turn');
    expect(waysSaid(ways({ plating: inch('.0002') }))['bushing']?.[2]).toContain('(.6258 to .6262)');
    expect(turn?.limitsFrom).toContain('before plating');
  });

  test('that the press would squeeze past its yield takes no cut at all', () => {
    const { bushingYieldMpa: _harder, ...soft } = pivot;
    const answer = bushing(soft);
    expect(answer.ok && cutsOfBushing(soft, answer.value, dial)).toEqual([]);
  });

  test('in a part with too thin a wall takes no cut at all', () => {
    expect(ways({ wall: inch('.080') })).toEqual([]);
  });
});
