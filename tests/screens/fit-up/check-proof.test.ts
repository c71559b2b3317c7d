import { expect, test } from 'vitest';
import { goResult } from '../../../src/engine/reading/check.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { proofWords } from '../../../src/screens/fit-up/check-proof.ts';

const inch = (text: string) => lengthOf(`${text} in`);

test('a check that three readings leave too close to call is not sent back to their tool for one reading', () => {
  const tools = usualTools.filter(({ id }) => id === 'micrometer-0-1');
  const readings = ['.4996', '.5000', '.4998'].flatMap((size) =>
    tools.map((tool) => ({ exact: inch(size), tool, place: 'top' as const, zeroChecked: false })),
  );
  const limits = { lower: inch('.4990'), upper: inch('.5000'), source: 'test' };
  const go = goResult({ by: 'pin', limits, go: { readings } });
  if (go.kind !== 'judged') throw new Error(go.kind);
  expect(go.verdict.kind).toBe('too-close');
  // As worked in settle.test.ts: s = .0002; 8 readings know it to ±.00019, .0002 from the limit.
  expect(proofWords({ ...go, by: 'pin', limits, tools, unit: 'in' })).toBe(
    'The 0–1 in micrometer with 8 readings in all would settle it, to ±.00019.',
  );
});
