import { describe, expect, test } from 'vitest';
import { bandOf, mean } from '../../../src/engine/reading/estimate.ts';
import { featureForm } from '../../../src/engine/reading/feature-form.ts';
import { decimalText, floatMm, lengthOf, minus, plus } from '../../../src/engine/length/length.ts';
import {
  usualTools,
  type FeatureKind,
  type ToolInForce,
} from '../../../src/engine/reading/measuring-tool.ts';
import type { Direction, Place, Reading } from '../../../src/engine/reading/reading.ts';

const caliper: ToolInForce = {
  id: 'caliper',
  name: 'caliper',
  kind: 'caliper',
  mpe: lengthOf('.001 in'),
  resolution: lengthOf('.0005 in'),
  resolutionInMpe: true,
  repeatability: lengthOf('.0002 in'),
};
const boreGauge: ToolInForce = {
  ...caliper,
  id: 'bore-gauge',
  kind: 'bore-gauge',
  mpe: lengthOf('.0002 in'),
  repeatability: lengthOf('.0001 in'),
};
const plug: ToolInForce = { ...caliper, id: 'plug', kind: 'plug-gauge' };

function at(size: string, place?: Place, direction?: Direction, tool = caliper): Reading {
  return {
    exact: lengthOf(`${size} in`),
    tool,
    zeroChecked: false,
    ...(place && { place }),
    ...(direction && { direction }),
  };
}

function form(kind: FeatureKind, first: Reading, ...rest: Reading[]) {
  return featureForm(kind, [first, ...rest]);
}

const inches = (length: Parameters<typeof decimalText>[0]) => decimalText(length, 'in', 5);

describe('a bore read in several places', () => {
  const bore = form('bore', at('.4490', 'top', '0'), at('.4484', 'middle', '0'), at('.4487', 'bottom', '0'));

  test('is ruled by its tightest place for a fit and its loosest for slop', () => {
    expect(bore.tightest.place).toBe('middle');
    expect(bore.loosest.place).toBe('top');
  });

  test('of .4490 on top and .4484 in the middle has .0006 taper, tightest in the middle', () => {
    expect(bore.taper?.tightestPlace).toBe('middle');
    expect(bore.taper && inches(bore.taper.by)).toBe('0.00060');
  });

  test('has no scatter from its taper: each place is a group of its own', () => {
    expect(bore.groups).toHaveLength(3);
    expect(bore.groups.every(({ estimate }) => estimate.count === 1)).toBe(true);
  });

  test('uses each group’s mean, not its single readings', () => {
    // top: (.4485 + .4487)/2 = .4486 ± 1.96·√(.0002²/2 + .001²/3) = .00116; middle: .4485 ± 1.96·√(.0002² + .001²/3) = .0012.
    const twice = form('bore', at('.4485', 'top'), at('.4487', 'top'), at('.4485', 'middle'));
    expect(twice.tightest.place).toBe('middle');
    // .4486 + .00116 is more than .4485 + .0012
    expect(inches(mean(twice.loosest.estimate))).toBe('0.44860');
  });

  test('is held against a limit where it may be furthest past it: a coarse reading of a place is not outruled by its mean', () => {
    // top: .5010 by bore gauge; bottom: .5012 by a caliper that may be far out: .5012 − U is less than .5010 − U.
    const mixed = form('bore', at('.5010', 'top', '0', boreGauge), at('.5012', 'bottom', '0', caliper));
    expect(mixed.least.place).toBe('bottom');
    expect(mixed.most.place).toBe('bottom');
    expect(mixed.tightest).toBe(mixed.least);
  });
});

describe('a pin', () => {
  test('is tightest where it is thickest', () => {
    const pin = form('pin', at('.4370', 'top'), at('.4376', 'bottom'));
    expect(pin.tightest.place).toBe('bottom');
    expect(pin.taper?.tightestPlace).toBe('bottom');
  });

  test('read once is its own tightest and loosest, and shows no taper and no out-of-round', () => {
    const pin = form('pin', at('.4372'));
    expect(pin.tightest).toEqual(pin.loosest);
    expect(pin.taper).toBeUndefined();
    expect(pin.outOfRound).toBeUndefined();
  });
});

test('a length has its shortest and its longest place', () => {
  const sleeve = form('length', at('.9700', 'top'), at('.9670', 'bottom'));
  expect([sleeve.least.place, sleeve.most.place]).toEqual(['bottom', 'top']);
});

test('a spacer binds at its thickest place', () => {
  expect(form('length', at('.3850', 'top'), at('.3858', 'bottom')).tightest.place).toBe('bottom');
});

describe('out-of-round', () => {
  test('is 0° beside 90° at one place, the worst place named', () => {
    const bore = form(
      'bore',
      at('.4490', 'top', '0'),
      at('.4492', 'top', '90'),
      at('.4484', 'bottom', '0'),
      at('.4489', 'bottom', '90'),
    );
    expect(bore.outOfRound?.place).toBe('bottom');
    expect(bore.outOfRound && inches(bore.outOfRound.by)).toBe('0.00050');
  });

  test('is not told from 0° on top and 90° below, nor is that told as taper', () => {
    const bore = form('bore', at('.4490', 'top', '0'), at('.4484', 'bottom', '90'));
    expect(bore.outOfRound).toBeUndefined();
    expect(bore.taper).toBeUndefined();
  });

  test('of an even oval is not taper: the directions that both places share are averaged', () => {
    // 0°: −.0004, 90°: +.0002 → taper .0001
    const bore = form(
      'bore',
      at('.4486', 'top', '0'),
      at('.4490', 'top', '90'),
      at('.4490', 'bottom', '0'),
      at('.4488', 'bottom', '90'),
    );
    expect(bore.taper && inches(bore.taper.by)).toBe('0.00010');
    expect(bore.taper?.tightestPlace).toBe('top');
  });
});

describe('a bore read with two tools', () => {
  test('doesn’t show the difference between the tools as taper', () => {
    const bore = form(
      'bore',
      at('.4480', 'top', '0', caliper),
      at('.4487', 'bottom', '0', boreGauge),
      at('.4488', 'top', '0', boreGauge),
    );
    expect(bore.taper && inches(bore.taper.by)).toBe('0.00010');
  });

  test('at one place is ruled by the tool that knows it closer', () => {
    const bore = form('bore', at('.4480', 'top', '0', caliper), at('.4487', 'top', '0', boreGauge));
    expect(bore.groups).toHaveLength(2);
    expect(bore.tightest.estimate.tool?.id).toBe('bore-gauge');
    expect(bore.loosest.estimate.tool?.id).toBe('bore-gauge');
  });

  test('keeps a coarser reading from a place that the finer tool has not been to', () => {
    const bore = form('bore', at('.4480', 'bottom', '0', caliper), at('.4487', 'top', '0', boreGauge));
    expect(bore.tightest.place).toBe('bottom');
  });

  test('lets a coarse reading without a place give way', () => {
    const bore = form('bore', at('.4480'), at('.4487', 'top', '0', boreGauge));
    expect(bore.tightest.place).toBe('top');
  });
});

describe('readings of one place by two tools', () => {
  test('that differ by more than both bands contradict each other: neither gives way, all is in doubt', () => {
    // caliper ±1.96·√(.0002² + .001²/3) = ±.0012, gauge ±1.96·√(.0001² + .0002²/3) = ±.0003; .0035 apart
    const bore = form('bore', at('.4980', 'top', '0', caliper), at('.5015', 'top', '0', boreGauge));
    expect(
      bore.contradictions.map(({ one, other }) => [one, other].map(({ estimate }) => estimate.tool?.id)),
    ).toEqual([['caliper', 'bore-gauge']]);
    expect(bore.places).toHaveLength(2);
    expect(bore.places.every(({ estimate }) => estimate.doubt)).toBe(true);
    expect(inches(mean(bore.least.estimate))).toBe('0.49800');
    expect(inches(mean(bore.most.estimate))).toBe('0.50150');
  });

  test.each([
    { apart: 'as far as both bands reach', gauge: '.4994', contradict: false }, // .0014 < .0012 + .0003
    { apart: 'a little further', gauge: '.4996', contradict: true }, // .0016 > .0015
    { apart: 'a little further below', gauge: '.4964', contradict: true },
  ])('$apart', ({ gauge, contradict }) => {
    const bore = form('bore', at('.4980', 'top', '0', caliper), at(gauge, 'top', '0', boreGauge));
    expect(bore.contradictions).toHaveLength(contradict ? 1 : 0);
    expect(bore.places.some(({ estimate }) => estimate.doubt)).toBe(contradict);
  });

  test('in mm just the same', () => {
    const metric = (size: string, tool: ToolInForce): Reading => ({
      ...at('0', 'top', '0', tool),
      exact: lengthOf(size),
    });
    // .09 mm is .0035 in
    expect(
      form('bore', metric('12.65 mm', caliper), metric('12.74 mm', boreGauge)).contradictions,
    ).toHaveLength(1);
    expect(
      form('bore', metric('12.65 mm', caliper), metric('12.68 mm', boreGauge)).contradictions,
    ).toHaveLength(0);
  });

  test('an old reading without a place contradicts what agrees with it nowhere', () => {
    const nowhere = form(
      'bore',
      at('.4980'),
      at('.5015', 'top', '0', boreGauge),
      at('.5010', 'bottom', '0', boreGauge),
    );
    expect(nowhere.contradictions).toHaveLength(2);
    // At the bottom it may have been read.
    const somewhere = form(
      'bore',
      at('.4980'),
      at('.5015', 'top', '0', boreGauge),
      at('.4983', 'bottom', '0', boreGauge),
    );
    expect(somewhere.contradictions).toHaveLength(0);
    expect(somewhere.places).toHaveLength(2);
  });

  test('at different places differ by form, and no one is asked', () => {
    const bore = form('bore', at('.4980', 'top', '0', caliper), at('.5015', 'bottom', '0', boreGauge));
    expect(bore.contradictions).toEqual([]);
    expect(bore.least.estimate.doubt).toBeUndefined();
  });
});

describe('readings without a place', () => {
  test.each([
    // s = .001/√2 = .0007; usual .0002 by caliper, .0001 by gauge
    { of: 'a bore', kind: 'bore', tool: caliper, small: 'tightest' },
    { of: 'a bore by gauge', kind: 'bore', tool: boreGauge, small: 'tightest' },
    { of: 'a pin', kind: 'pin', tool: caliper, small: 'loosest' },
    { of: 'a length', kind: 'length', tool: caliper, small: 'loosest' },
  ] as const)('.517 and .518 of $of are kept apart, never averaged to .5175', ({ kind, tool, small }) => {
    const found = featureForm(kind, [
      at('.517', undefined, undefined, tool),
      at('.518', undefined, undefined, tool),
    ]);
    expect(inches(mean(found.least.estimate))).toBe('0.51700');
    expect(inches(mean(found.most.estimate))).toBe('0.51800');
    expect(found[small]).toBe(found.least);
    expect(found.apart && [inches(mean(found.apart.least)), inches(mean(found.apart.most))]).toEqual([
      '0.51700',
      '0.51800',
    ]);
    expect(found.taper).toBeUndefined();
  });

  test('that scatter no more than the tool usually does are one size', () => {
    // s = .0002/√2 = .00014, usual .0002
    const bore = form('bore', at('.5170'), at('.5172'));
    expect(bore.apart).toBeUndefined();
    expect(inches(mean(bore.tightest.estimate))).toBe('0.51710');
  });

  test('one last digit apart are one size: the digit is rounded', () => {
    // The micrometer's usual scatter of .00005 is less than s = .0001/√2 of these, and nobody could read them closer.
    const fine = { ...boreGauge, repeatability: lengthOf('.00005 in'), resolution: lengthOf('.0001 in') };
    const one = form('pin', at('.4369', undefined, undefined, fine), at('.4370', undefined, undefined, fine));
    expect(one.apart).toBeUndefined();
    const two = form('pin', at('.4368', undefined, undefined, fine), at('.4370', undefined, undefined, fine));
    expect(two.apart).toBeDefined();
  });

  test('of plugs are never averaged: the steps are what is apart', () => {
    const plugs = {
      ...plug,
      resolution: lengthOf('.001 in'),
      resolutionInMpe: false,
      repeatability: lengthOf('0 in'),
    };
    const bore = form(
      'bore',
      at('.517', undefined, undefined, plugs),
      at('.518', undefined, undefined, plugs),
    );
    expect(inches(mean(bore.loosest.estimate))).toBe('0.51850');
  });

  test('prove no more by being further apart', () => {
    // Half of what lies between the ends of both bands, for pairs about the same middle.
    const known = [0, 1, 2, 3, 4, 6, 10, 20].map((by) => {
      const pair = form('bore', at(`.${5200 - by}`), at(`.${5200 + by}`));
      const low = minus(mean(pair.least.estimate), bandOf(pair.least.estimate).halfWidth);
      const high = plus(mean(pair.most.estimate), bandOf(pair.most.estimate).halfWidth);
      return floatMm(minus(high, low)) / 2;
    });
    expect(known).toEqual(known.toSorted((a, b) => a - b));
  });

  test('at one place are one group however they scatter: there it is scatter', () => {
    const bore = form('bore', at('.517', 'top', '0'), at('.518', 'top', '0'));
    expect(bore.apart).toBeUndefined();
    expect(bore.groups).toHaveLength(1);
  });
});

describe('cautions', () => {
  test('a bore read with two-point tools may hide three lobes; a plug doesn’t miss them', () => {
    expect(form('bore', at('1.5')).cautions).toEqual(['three-lobed-unseen']);
    expect(form('bore', at('1.5', 'top', '0', plug)).cautions).toEqual([]);
    expect(form('pin', at('1.5')).cautions).toEqual([]);
  });

  test('a three-point micrometer sees three lobes', () => {
    const threePoint = usualTools.find(({ id }) => id === 'three-point-micrometer');
    expect(threePoint && form('bore', at('1.5', 'top', '0', threePoint)).cautions).toEqual([]);
  });

  test('caliper jaws in a bore under 1/2 in are cautioned about until their flats are known', () => {
    const known = { ...caliper, jawWidth: lengthOf('.020 in') };
    expect(form('bore', at('.4999')).cautions).toContain('jaw-flats');
    expect(form('bore', at('.5')).cautions).not.toContain('jaw-flats');
    expect(form('bore', at('.4999', 'top', '0', known)).cautions).not.toContain('jaw-flats');
    expect(form('bore', at('.4999', 'top', '0', boreGauge)).cautions).not.toContain('jaw-flats');
  });
});
