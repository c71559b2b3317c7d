import { describe, expect, test } from 'vitest';
import { isMore, lengthOf, sameLength, toText, zero } from '../../../src/engine/length/length.ts';
import { canMeasure, usualTools } from '../../../src/engine/reading/measuring-tool.ts';

const toolOf = (id: string) => {
  const tool = usualTools.find((candidate) => candidate.id === id);
  if (!tool) throw new Error(`no ${id} in the starter set`);
  return tool;
};

describe('the starter tools', () => {
  test.each([
    ['digital-caliper', '.001 in', "makers' typical statement for 0-6 in digital calipers, from memory"],
    ['metric-caliper', '0.03 mm', 'DIN 862, over 100 to 600 mm, printed chart'],
    ['metric-caliper-inside', '0.05 mm', 'DIN 862: 30 µm and 20 µm more for inside use'],
    ['micrometer-0-1', '.0001 in', "makers' typical statement, from memory"],
    ['micrometer-1-2', '.00015 in', "makers' typical statement for 1-4 in, from memory"],
    ['micrometer-2-3', '.00015 in', "makers' typical statement for 1-4 in, from memory"],
    ['micrometer-50-75-mm', '0.005 mm', 'DIN 863-1, 50-75 mm, printed chart'],
    ['three-point-micrometer', '0.005 mm', "makers' typical statement, 3 to 5 µm for 6-100 mm, from memory"],
    ['micrometer-0-25-mm', '0.004 mm', 'DIN 863-1, 0-25 mm, printed chart'],
    ['micrometer-25-50-mm', '0.004 mm', 'DIN 863-1, 25-50 mm, printed chart'],
  ])('%s errs by no more than %s (%s)', (id, mpe) => {
    expect(toText(toolOf(id).mpe)).toBe(toText(lengthOf(mpe)));
  });

  test('each says where its error limit comes from, and has a name and an id of its own', () => {
    expect(usualTools.every((tool) => tool.source.length > 10)).toBe(true);
    expect(new Set(usualTools.map((tool) => tool.id)).size).toBe(usualTools.length);
    expect(new Set(usualTools.map((tool) => tool.name)).size).toBe(usualTools.length);
  });

  test('none claims an error limit that holds a step coarser than itself', () => {
    const inside = usualTools.filter((tool) => tool.resolutionInMpe);
    expect(inside.every((tool) => !isMore(tool.resolution, tool.mpe))).toBe(true);
    expect(usualTools.every((tool) => isMore(tool.mpe, zero))).toBe(true);
  });

  test('every kind of feature can be read with one of them', () => {
    const kinds = ['bore', 'pin', 'length', 'depth', 'gap', 'runout'] as const;
    expect(kinds.filter((kind) => !usualTools.some((tool) => canMeasure(tool, kind)))).toEqual([]);
  });
});

describe('a tool', () => {
  const micrometer = toolOf('micrometer-1-2');

  test('reads from one end of its range to the other, ends counted', () => {
    expect(canMeasure(micrometer, 'pin', lengthOf('1 in'))).toBe(true);
    expect(canMeasure(micrometer, 'pin', lengthOf('2 in'))).toBe(true);
    expect(canMeasure(micrometer, 'pin', lengthOf('.9999 in'))).toBe(false);
    expect(canMeasure(micrometer, 'pin', lengthOf('2.0001 in'))).toBe(false);
  });

  test('reads only what it is made for: no bore with an outside micrometer', () => {
    expect(canMeasure(micrometer, 'bore', lengthOf('1.5 in'))).toBe(false);
    expect(canMeasure(micrometer, 'pin')).toBe(true);
  });

  test('inside jaws err more than the outside jaws of the same caliper', () => {
    // .001 and the 20 µm of DIN 862, .0008 to a tenth of a thou
    const [outside, inside] = [toolOf('digital-caliper'), toolOf('digital-caliper-inside')];
    expect(sameLength(inside.mpe, lengthOf('.0018 in'))).toBe(true);
    expect(isMore(inside.mpe, outside.mpe)).toBe(true);
  });
});
