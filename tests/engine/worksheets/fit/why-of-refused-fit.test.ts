import { expect, test } from 'vitest';
import { fitLimits } from '../../../../src/engine/fit/fits.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { whyOfRefusedFit } from '../../../../src/engine/worksheets/fit/why-of-fit.ts';

test.each([
  // ANSI B4.1-1967 has RC5 up to 4.73 in here, and FN3 from .95 in on; ISO 286-1 ends at 500 mm in these tables.
  ['RC5', '5 in', 'ANSI B4.1'],
  ['FN3', '1/2 in', 'ANSI B4.1'],
  ['H7/g6', '600 mm', 'ISO 286-1'],
  ['RC44', '1 in', 'ISO 286-1'],
])('a refused %s at %s names under Why whose table it is: %s', (fitClass, nominal, standard) => {
  const fit = fitLimits({ fitClass, nominal: lengthOf(nominal) });
  if (fit.ok) throw new Error('not refused');
  expect(whyOfRefusedFit(fit.refusal).flatMap(({ lines }) => lines.map(({ source }) => source))).toEqual([
    standard,
  ]);
});

test('a part out of true is refused by no table', () => {
  const refusal = {
    code: 'form-eats-class',
    part: 'bore',
    form: lengthOf('.002 in'),
    room: lengthOf('.001 in'),
  } as const;
  expect(whyOfRefusedFit(refusal)).toEqual([]);
});
