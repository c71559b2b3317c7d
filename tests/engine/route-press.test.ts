import { expect, test } from 'vitest';
import { typedEstimate } from '../../src/engine/estimate.ts';
import { holeAndPin, type HoleAndPinQuestion } from '../../src/engine/hole-and-pin.ts';
import type { RouteReason } from '../../src/engine/hole-and-pin-routes.ts';
import { exactDecimalText, lengthOf, type Length } from '../../src/engine/length.ts';
import { materialNamed, type MaterialId } from '../../src/engine/tables/materials.ts';

const inch = (text: string): Length => lengthOf(`${text} in`);
const spanOf = (tightest: string, loosest = tightest) => ({
  tightest: typedEstimate(inch(tightest)),
  loosest: typedEstimate(inch(loosest)),
});
const inches = (length: Length): number => Number(exactDecimalText(length, 'in'));
function metal(id: MaterialId) {
  const found = materialNamed(id);
  if (!found) throw new Error(id);
  return found;
}

const bolt: HoleAndPinQuestion = {
  bore: spanOf('.4484', '.4490'),
  pin: spanOf('.4372'),
  joint: 'located',
  wall: inch('.400'),
  thickness: inch('.750'),
};

function reasonOf<Code extends RouteReason['code']>(code: Code, more: Partial<HoleAndPinQuestion> = {}) {
  const route = holeAndPin({ ...bolt, ...more }).routes.find(({ kind }) => kind === 'bushing');
  return route?.why.find((reason): reason is Extract<RouteReason, { code: Code }> => reason.code === code);
}

// By hand, Lamé: d = 9/16, outside 9/16 + 2 · .34295, inside .4392; steel 207 GPa, ν (.29 + .32)/2; bronze 100 GPa, ν .345.
// Interference .0007 less 0.8 · (4 + 6.3 µm) of bedding in gives 14.34 MPa; .0020 gives 76.38 MPa.
test('the usual bronze bushing in steel is gripped by .0007 to .0020 and closes by .00032 to .00172', () => {
  const grip = reasonOf('press-grip');
  expect(grip && [inches(grip.least), inches(grip.greatest)]).toEqual([0.0007, 0.002]);
  expect(grip?.source).toBe('common practice, no source');
  const closes = reasonOf('bushing-closes');
  // 2 p d² Di / (E (d² − Di²))
  expect(closes && inches(closes.lower)).toBeCloseTo(0.00032277, 6);
  expect(closes && inches(closes.upper)).toBeCloseTo(0.00171874, 6);
});

test('it presses in with 13,060 N at the most and holds 981 N at the least: μ p π d L, μ .20 and .08', () => {
  const force = reasonOf('press-force');
  expect(force?.pressN).toBeCloseTo(13061.9, 0);
  expect(force?.holdN).toBeCloseTo(981.18, 1);
});

test('without the hole’s length there is no force, and without the wall only the grip', () => {
  const { thickness: _t, ...short } = bolt;
  const codesOf = (question: HoleAndPinQuestion) =>
    holeAndPin(question)
      .routes.find(({ kind }) => kind === 'bushing')
      ?.why.map(({ code }) => code);
  expect(codesOf(short)).toContain('bushing-closes');
  expect(codesOf(short)).not.toContain('press-force');
  const { wall: _w, ...bare } = bolt;
  expect(codesOf(bare)).toEqual(['ask-wall', 'bushing-wall', 'press-grip']);
});

test('a metal nobody named is said to be taken as the usual one', () => {
  expect(reasonOf('press-metals')?.taken).toBe('both');
  const partMetal = metal('aluminium-6061');
  const bushingMetal = metal('low-carbon-steel');
  expect(reasonOf('press-metals', { partMetal })).toMatchObject({ taken: 'bushing', part: 'Aluminium 6061' });
  expect(reasonOf('press-metals', { bushingMetal })?.taken).toBe('part');
  expect(reasonOf('press-metals', { partMetal, bushingMetal })?.taken).toBe('neither');
});

test('the bushing at 391 MPa is past twice the 125 MPa that cast bronze yields at', () => {
  // 2 · 76.38 / (1 − (.4392/.5625)²) = 391.3 MPa
  const warning = reasonOf('press-warning')?.warning;
  expect(warning?.code).toBe('near-yield'); // the part first: 167 MPa of 210
  const route = holeAndPin(bolt).routes.find(({ kind }) => kind === 'bushing');
  const warnings = route?.why.flatMap((reason) => (reason.code === 'press-warning' ? [reason.warning] : []));
  expect(warnings?.map((one) => ('what' in one ? `${one.what} ${one.code}` : one.code))).toEqual([
    'part near-yield',
    'bushing yields',
  ]);
});

test('a brittle part may crack: cast iron', () => {
  const route = holeAndPin({ ...bolt, partMetal: metal('cast-iron') }).routes.find(
    ({ kind }) => kind === 'bushing',
  );
  const found = route?.why.some(
    (reason) => reason.code === 'press-warning' && reason.warning.code === 'may-crack',
  );
  expect(found).toBe(true);
});

test('a class of the press is the class of a thin bushing, H7/r6', () => {
  // 9/16 = 14.2875 mm, over 14 to 18: H7 0/+18, r6 +34/+23: 5 to 34 µm
  const grip = reasonOf('press-grip', { fitSystem: 'iso' });
  expect(grip && [grip.least, grip.greatest].map((one) => Number(exactDecimalText(one, 'mm')))).toEqual([
    0.005, 0.034,
  ]);
  expect(grip?.source).toBe('ISO 286-1, H7/r6');
});
