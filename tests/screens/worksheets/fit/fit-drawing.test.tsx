import { describe, expect, test } from 'vitest';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { deviationText } from '../../../../src/screens/worksheets/fit/fit-drawing.tsx';

describe('deviations as the tables print them', () => {
  test.each([
    { deviation: '-.00055 in', unit: 'in', text: '−.55' },
    { deviation: '.0016 in', unit: 'in', text: '+1.6' },
    { deviation: '.002 in', unit: 'in', text: '+2' },
    { deviation: '.010 in', unit: 'in', text: '+10' },
    { deviation: '0 in', unit: 'in', text: '0' },
    { deviation: '.021 mm', unit: 'mm', text: '+21' },
    { deviation: '-.0075 mm', unit: 'mm', text: '−7.5' },
    { deviation: '-.020 mm', unit: 'mm', text: '−20' },
    // 21 µm are .83 thou
    { deviation: '.021 mm', unit: 'in', text: '+.83' },
  ] as const)('$deviation is $text in the $unit table', ({ deviation, unit, text }) => {
    expect(deviationText(lengthOf(deviation), unit)).toBe(text);
  });
});
