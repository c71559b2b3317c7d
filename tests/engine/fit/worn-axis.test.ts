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
    // At .615 the wear (.500 + .120 = .620) would lead the reamer yet: bored until it touches metal all round.
    expect(inInches(way?.offers[0]?.target)).toBe('0.62');
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

describe('a bore of 1/2 worn to .540', () => {
  const q: BushingQuestion = {
    bore: part('.5400'),
    pin: part('.5000'),
    insideClass: 'RC4',
    pressClass: 'FN1',
    part: metal('alloy-steel'),
    bushing: metal('alloy-steel'),
    wall: inch('.400'),
    finish: 'usual',
    condition: 'plain',
    cold: 'freezer',
    shopCelsius: 20,
    step: inch('.001'),
  };
  const dial = { reads: 'diameter', graduation: inch('.001') } as const;
  const solved = (more: Partial<BushingQuestion>) => bushing({ ...q, ...more });
  const wallLeft = (more: Partial<BushingQuestion>) => {
    const answer = solved(more);
    return answer.ok ? inInches(answer.value.partWall) : answer.refusal.code;
  };

  // Worn to one side its far edge is .290 from the old middle, the other .250. Reamed 5/8 on the old axis the side that
  // is not worn loses .3125 − .250 = .0625; a reamer that follows the wear takes .3125 − .270 = .0425 from either.
  test('on its old axis loses .0625 of wall where it is not worn, .0425 where a reamer follows', () => {
    expect(wallLeft({})).toBe('0.3575');
    expect(wallLeft({ keepsAxis: true })).toBe('0.3375');
  });

  test('with a wall of .060 breaks through on its old axis, and not where the wear is', () => {
    expect(wallLeft({ wall: inch('.060') })).toBe('0.0175');
    expect(wallLeft({ wall: inch('.060'), keepsAxis: true })).toBe('breaks-through');
  });

  test('has the same wall left on every way to cure it', () => {
    const asked: HoleAndPinQuestion = {
      bore: part('.5400'),
      pin: part('.5000'),
      joint: 'turns',
      wall: inch('.400'),
      pinCaseHardened: false,
      partMetal: metal('alloy-steel'),
      bushingMetal: metal('bearing-bronze'),
    };
    const left = (keepsAxis: boolean) =>
      holeAndPin({ ...asked, keepsAxis }).routes.find(({ kind }) => kind === 'bushing')?.wallLeft;
    expect(inInches(left(false))).toBe('0.3575');
    expect(inInches(left(true))).toBe('0.3375');
  });

  test('has a cut that says which it is, and a reamer is named by its size also where that was typed', () => {
    const named = (more: Partial<BushingQuestion>) => {
      const answer = solved(more);
      if (!answer.ok) throw new Error(answer.refusal.code);
      return cutsOfBushing({ ...q, ...more }, answer.value, dial)[0]?.offers.map(({ name }) => name);
    };
    expect(named({})?.slice(0, 2)).toEqual([
      'Bore, opened for the reamer, follows the wear',
      'Bore, reamed 5/8 in',
    ]);
    expect(named({ keepsAxis: true })?.slice(0, 2)).toEqual([
      'Bore, opened for the reamer, on its old axis',
      'Bore, reamed 5/8 in',
    ]);
    expect(named({ reamTo: inch('.640'), keepsAxis: true })?.[0]).toBe(
      'Bore, bored for the bushing, on its old axis',
    );
    expect(named({ reamTo: inch('.640') })?.[0]).toBe('Bore, bored for the bushing, follows the wear');
    // 41/64
    expect(named({ reamTo: inch('.640625') })?.[1]).toBe('Bore, reamed 41/64 in');
    // Not worn: nothing to say.
    expect(named({ bore: part('.5010') })?.[0]).toBe('Bore, opened for the reamer');
  });

  test('is bored far enough that the wear leads no reamer after it', () => {
    // Worn to .561: .500 + 2 · .061 = .622 touches all round, .624 with metal to clean up: 5/8, which .615 would not lead.
    const answer = solved({ bore: part('.5610'), keepsAxis: true });
    if (!answer.ok) throw new Error(answer.refusal.code);
    const first = cutsOfBushing({ ...q, bore: part('.5610'), keepsAxis: true }, answer.value, dial)[0]
      ?.offers[0];
    expect(inInches(answer.value.ream.size)).toBe('0.625');
    expect([inInches(first?.target), inInches(first?.lower), inInches(first?.upper)]).toEqual([
      '0.622',
      '0.622',
      '0.623',
    ]);
  });
});

describe('a pin of 16 mm that turns in a bore worn to 16.7', () => {
  const mm = (size: string) => ({
    tightest: typedEstimate(lengthOf(`${size} mm`)),
    loosest: typedEstimate(lengthOf(`${size} mm`)),
  });
  const q: HoleAndPinQuestion = {
    bore: mm('16.7'),
    pin: mm('16'),
    joint: 'turns',
    wall: lengthOf('20 mm'),
    pinCaseHardened: false,
    shop: 'metric',
    partMetal: metal('alloy-steel'),
    bushingMetal: metal('bearing-bronze'),
  };
  const first = (keepsAxis: boolean | undefined, route: string) => {
    const asked = { ...q, ...(keepsAxis !== undefined && { keepsAxis }) };
    const dial = { reads: 'diameter', graduation: lengthOf('0.02 mm') } as const;
    return cutsOfRoutes(asked, holeAndPin(asked), dial).find(({ id }) => id === route)?.offers[0]?.name;
  };

  test.each(['bushing', 'larger-pin'])('has the first cut of a %s say where it goes', (route) => {
    expect(first(undefined, route)).toMatch(/, follows the wear$/);
    expect(first(true, route)).toBe('Bore, on its old axis');
  });
});
