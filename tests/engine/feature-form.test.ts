import { describe, expect, test } from 'vitest';
import { mean } from '../../src/engine/estimate.ts';
import { featureForm } from '../../src/engine/feature-form.ts';
import { decimalText, lengthOf } from '../../src/engine/length.ts';
import type { FeatureKind, ToolInForce } from '../../src/engine/measuring-tool.ts';
import type { Direction, Place, Reading } from '../../src/engine/reading.ts';

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

describe('cautions', () => {
  test('a bore read with two-point tools may hide three lobes; a plug doesn’t miss them', () => {
    expect(form('bore', at('1.5')).cautions).toEqual(['three-lobed-unseen']);
    expect(form('bore', at('1.5', 'top', '0', plug)).cautions).toEqual([]);
    expect(form('pin', at('1.5')).cautions).toEqual([]);
  });

  test('caliper jaws in a bore under 1/2 in are cautioned about until their flats are known', () => {
    const known = { ...caliper, jawWidth: lengthOf('.020 in') };
    expect(form('bore', at('.4999')).cautions).toContain('jaw-flats');
    expect(form('bore', at('.5')).cautions).not.toContain('jaw-flats');
    expect(form('bore', at('.4999', 'top', '0', known)).cautions).not.toContain('jaw-flats');
    expect(form('bore', at('.4999', 'top', '0', boreGauge)).cautions).not.toContain('jaw-flats');
  });
});
