import { expect, test } from 'vitest';
import { decimalText, lengthOf, minus, toText } from '../../src/engine/length.ts';
import { sizeAt20 } from '../../src/engine/temperature.ts';

const steelPerCelsius = 11.7e-6; // 6.5e-6 a degree Fahrenheit

test('6061 of 100 mm read at 30 °C with a tool at 20 °C had grown .0236 (Callister table B.6: 23.6e-6)', () => {
  const measured = lengthOf('100.0236 mm');
  const size = sizeAt20({
    measured,
    part: { celsius: 30, expansionPerCelsius: 23.6e-6 },
    tool: { celsius: 20, expansionPerCelsius: steelPerCelsius },
  });
  expect(decimalText(size, 'mm', 4)).toBe('100.0000');
});

test('4 in of 6061 and a steel micrometer both at 95 °F read .000713 large (Callister: 13.1e-6 and 6.5e-6 a °F)', () => {
  const measured = lengthOf('4 in');
  const warm = (perFahrenheit: number) => ({ celsius: 35, expansionPerCelsius: perFahrenheit * 1.8 });
  const size = sizeAt20({ measured, part: warm(13.1e-6), tool: warm(6.5e-6) });
  expect(decimalText(minus(measured, size), 'in', 6)).toBe('0.000713');
});

test('a part and a tool of one metal, equally warm, need no correction', () => {
  const warm = { celsius: 33, expansionPerCelsius: steelPerCelsius };
  const size = sizeAt20({ measured: lengthOf('.4487 in'), part: warm, tool: warm });
  expect(toText(size)).toBe(toText(lengthOf('.4487 in')));
});
