import { bench, describe } from 'vitest';
import { typedEstimate } from '../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../src/engine/length/length.ts';
import { shimsFromDrawer, type ShimQuestion } from '../../src/engine/shim/shims.ts';

/** Run by hand: npx vitest bench --project engine. Not a test: how long a phone may take is judged by a person. */

const INCH = [1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 25, 31, 47, 62].map((thou) => `${thou} thou`);
const METRIC = ['0.05', '0.1', '0.15', '0.2', '0.25', '0.3', '0.4', '0.5', '0.6', '0.8', '1.0', '1.5'];
const MIXED = [...INCH, ...METRIC.map((size) => `${size} mm`), '1/64 in', '1/32 in'];
/** A thousand pieces, hardly two alike: 500 to a thousandth of a millimetre, 500 to a ten-thousandth of an inch. */
const ODD = Array.from({ length: 500 }, (_, index) => [
  `0.${String(20 + ((index * 389) % 950)).padStart(3, '0')} mm`,
  `0.0${String(10 + ((index * 149) % 380)).padStart(3, '0')} in`,
]).flat();

function question(sizes: readonly string[], each: number, aim: string, plusMinus: string): ShimQuestion {
  const drawer = sizes.map((size, index) => ({
    id: String(index),
    name: size,
    thickness: typedEstimate(lengthOf(size)),
    count: each,
  }));
  const [at, room] = [Number(aim), Number(plusMinus)];
  const mm = (size: number) => lengthOf(`${size.toFixed(9)} mm`);
  return { drawer, lower: mm(at - room), aim: mm(at), upper: mm(at + room) };
}

const CASES: readonly (readonly [string, ShimQuestion])[] = [
  ['208 inch shims, .134 in ± .0005', question(INCH, 13, '3.4036', '0.0127')],
  ['390 pieces of 30 sizes, 3.138 mm ± 0.001', question(MIXED, 13, '3.138', '0.001')],
  ['390 pieces, 25.138 mm ± 0.001', question(MIXED, 13, '25.138', '0.001')],
  ['390 pieces, none fits', question(MIXED, 13, '2.137773', '0')],
  ['1,000 pieces hardly two alike, 2.5 mm ± 0.00001', question(ODD, 1, '2.5', '0.00001')],
  ['1,000 pieces hardly two alike, 10 mm ± 0.005', question(ODD, 1, '10', '0.005')],
  ['1,000 pieces hardly two alike, 25 mm ± 0.005', question(ODD, 1, '25', '0.005')],
  ['1,000 pieces hardly two alike, none fits', question(ODD, 1, '2.4999999', '0')],
];

describe('shims from the drawer', () => {
  for (const [name, asked] of CASES)
    bench(name, () => void shimsFromDrawer(asked), { iterations: 3, time: 200 });
});
