import { expect, test } from 'vitest';
import { bandOf, combine, typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { decimalText, lengthOf, toText } from '../../../src/engine/length/length.ts';
import type { ToolInForce } from '../../../src/engine/reading/measuring-tool.ts';
import { toolOfSeveral } from '../../../src/engine/reading/tool-of-several.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const micrometer: ToolInForce = {
  id: 'm',
  name: 'micrometer',
  kind: 'micrometer',
  mpe: inch('.0001'),
  resolution: inch('.0001'),
  resolutionInMpe: true,
  repeatability: inch('0'),
};

test('three pieces of .010 by one micrometer, kept as one size of .030, are known as the three are', () => {
  const tool = toolOfSeveral([{ tool: micrometer, count: 3 }]);
  const one = bandOf(typedEstimate(inch('.030'), tool)).halfWidth;
  const three = combine([{ estimate: typedEstimate(inch('.010'), micrometer), coefficient: 3 }]).band
    .halfWidth;
  expect(toText(one)).toBe(toText(three));
  // 3 · 1.95996 · .0001/√3
  expect(decimalText(one, 'in', 6)).toBe('0.000339');
  expect(tool?.name).toBe('micrometer, 3 pieces');
});

test('of two tools both errors go in whole', () => {
  const rough = { ...micrometer, id: 'r', mpe: inch('.001') };
  const tool = toolOfSeveral([
    { tool: micrometer, count: 2 },
    { tool: rough, count: 1 },
  ]);
  // 2 · .0001 + .001
  expect(tool && decimalText(tool.mpe, 'in', 4)).toBe('0.0012');
});

test('nothing measured has no tool', () => {
  expect(toolOfSeveral([])).toBeUndefined();
});
