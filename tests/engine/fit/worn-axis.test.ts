import { describe, expect, test } from 'vitest';
import { bushing, type BushingQuestion } from '../../../src/engine/press/bushing.ts';
import { cutsOfBushing } from '../../../src/engine/worksheets/bushing/cuts-of-bushing.ts';
import { cutsOfRoutes } from '../../../src/engine/worksheets/hole-and-pin/cuts-of-routes.ts';
import { toleranceEstimate, typedEstimate } from '../../../src/engine/reading/estimate.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { exactDecimalText, lengthOf, zero, type Length } from '../../../src/engine/length/length.ts';
import { materialNamed, type MaterialId } from '../../../src/engine/material/tables/materials.ts';
import { sayInsertAxis, sayWornAxis, wornAxis } from '../../../src/engine/fit/worn-axis.ts';

const inch = (text: string): Length => lengthOf(`${text} in`);
const part = (size: string) => ({ tightest: typedEstimate(inch(size)), loosest: typedEstimate(inch(size)) });
const inInches = (length: Length | undefined) => length && exactDecimalText(length, 'in');
const metal = (id: MaterialId) => {
  const found = materialNamed(id);
  if (!found) throw new Error(id);
  return found;
};

// Worn to one side by w the far side is N/2 + w from the old middle: clean there at N + 2w, while the largest is N + w.
describe('a bore of 7/16 worn to .4487', () => {
  const axis = wornAxis({
    loosest: typedEstimate(inch('.4487')),
    nominal: inch('.4375'),
    most: inch('.003'),
  });

  test('may have its middle .0056 off: half of .0112', () => {
    expect(inInches(axis?.shift)).toBe('0.0056');
  });

  test('is clean on its old axis at .4375 + 2 · .0112 + .002 = .4619, not at .4507', () => {
    expect(inInches(axis?.onOldAxis)).toBe('0.4619');
  });

  test('the band of its readings comes on top', () => {
    const read = wornAxis({
      loosest: toleranceEstimate(inch('.4487'), inch('.001')),
      nominal: inch('.4375'),
      most: zero,
    });
    expect(Number(inInches(read?.onOldAxis))).toBeCloseTo(0.4629, 6);
  });

  test('which of the two it is, is said', () => {
    if (!axis) throw new Error('worn');
    expect(sayWornAxis(axis, undefined, 'in')).toBe(
      'A reamer follows the wear: the middle may move .0056 in. On the old axis it is clean at .4619 in.',
    );
    expect(sayWornAxis(axis, true, 'in')).toBe(
      'Bored on the old axis it is clean at .4619 in at the most. A reamer alone follows the wear.',
    );
    expect(sayInsertAxis(axis, 'in')).toBe(
      'Drill and tap follow the hole as it is. Worn to one side, it puts the bolt .0056 in off.',
    );
  });
});

test('a bore no larger than the joint may be is not worn', () => {
  const at = (size: string) =>
    wornAxis({ loosest: typedEstimate(inch(size)), nominal: inch('.4375'), most: inch('.003') });
  expect(at('.4405')).toBeUndefined();
  expect(at('.4406')).toBeDefined();
});

describe('routes of a pin that turns in a worn bore', () => {
  const worn: HoleAndPinQuestion = {
    bore: part('.5600'),
    pin: part('.5000'),
    joint: 'turns',
    wall: inch('.900'),
    thickness: inch('.750'),
    pinCaseHardened: false,
    partMetal: metal('alloy-steel'),
    bushingMetal: metal('bearing-bronze'),
  };
  const bushingOf = (q: HoleAndPinQuestion) => holeAndPin(q).routes.find(({ kind }) => kind === 'bushing');
  const reamed = (q: HoleAndPinQuestion) =>
    bushingOf(q)?.steps.flatMap((step) => (step.do === 'ream-for-bushing' ? [step.reamer.name] : []));

  test('a bushing that follows the wear is 5/8; on the old axis it has to clean up .500 + .120 + .002', () => {
    // two walls of .060 beside .503: .623, reamer 5/8 = .625; .622 on the old axis goes into 5/8 too
    expect(reamed(worn)).toEqual(['5/8 in']);
    expect(reamed({ ...worn, keepsAxis: true })).toEqual(['5/8 in']);
    // worn to .565: .500 + .130 + .002 = .632: 41/64 = .640625 on the old axis, 5/8 where the wear is
    const more = { ...worn, bore: part('.5650') };
    expect(reamed(more)).toEqual(['5/8 in']);
    expect(reamed({ ...more, keepsAxis: true })).toEqual(['41/64 in']);
  });

  test('on the old axis it is bored before it is reamed, as a reamer follows the hole', () => {
    const steps = bushingOf({ ...worn, keepsAxis: true })?.steps.map((step) => step.do);
    expect(steps).toEqual(['bore-on-axis', 'ream-for-bushing', 'press-bushing', 'finish-bushing']);
    const q = { ...worn, keepsAxis: true };
    const way = cutsOfRoutes(q, holeAndPin(q), { reads: 'diameter', graduation: inch('.001') }).find(
      ({ id }) => id === 'bushing',
    );
    expect(way?.offers[0]).toMatchObject({ name: 'Bore, on its old axis', operation: 'bore' });
    // .010 left for the reamer
    expect(inInches(way?.offers[0]?.target)).toBe('0.615');
    expect(inInches(way?.offers[0]?.present)).toBe('0.56');
    expect(way?.offers[1]?.present).toBeUndefined();
  });
});

describe('a bushing', () => {
  const q: BushingQuestion = {
    bore: part('.6100'),
    pin: part('.5000'),
    insideClass: 'RC4',
    pressClass: 'FN1',
    part: metal('alloy-steel'),
    bushing: metal('alloy-steel'),
    wall: inch('2'),
    finish: 'usual',
    condition: 'plain',
    cold: 'freezer',
    shopCelsius: 20,
    step: inch('.001'),
  };
  const solved = (more: Partial<BushingQuestion>) => {
    const answer = bushing({ ...q, ...more });
    if (!answer.ok) throw new Error(answer.refusal.code);
    return answer.value;
  };

  test('on the old axis a bore of 1/2 worn to .610 cleans up at .500 + .220 + .002 = .722', () => {
    expect(inInches(solved({}).cleanUp)).toBe('0.612');
    expect(inInches(solved({ keepsAxis: true }).cleanUp)).toBe('0.722');
  });

  test('one with little to ream is still bored first where it keeps its axis', () => {
    const names = (more: Partial<BushingQuestion>) =>
      cutsOfBushing({ ...q, ...more }, solved(more), {
        reads: 'diameter',
        graduation: inch('.001'),
      })[0]?.offers.map(({ operation }) => operation);
    expect(names({})?.slice(0, 2)).toEqual(['ream', 'turn']);
    expect(names({ keepsAxis: true, reamTo: inch('.734375') })?.slice(0, 2)).toEqual(['bore', 'ream']);
  });
});
