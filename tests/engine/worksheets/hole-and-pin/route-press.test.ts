import { expect, test } from 'vitest';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import type { RouteReason } from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin-routes.ts';
import { exactDecimalText, lengthOf, type Length } from '../../../../src/engine/length/length.ts';
import { materialNamed, type MaterialId } from '../../../../src/engine/material/tables/materials.ts';

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
  partMetal: metal('low-carbon-steel'),
  bushingMetal: metal('bearing-bronze'),
};

function reasonOf<Code extends RouteReason['code']>(code: Code, more: Partial<HoleAndPinQuestion> = {}) {
  const route = holeAndPin({ ...bolt, ...more }).routes.find(({ kind }) => kind === 'bushing');
  return route?.why.find((reason): reason is Extract<RouteReason, { code: Code }> => reason.code === code);
}

// By hand, Lamé: d = 9/16, outside 9/16 + 2 · .34295, inside .4392; steel 207 GPa, ν (.29 + .32)/2; bronze 100 GPa, ν .345.
// Interference .0007 less 0.8 · (4 + 6.3 µm) of bedding in gives 14.34 MPa by the thin wall. .0020 gives 76.38 MPa by it,
// and 80.643 MPa where the part is solid: (1.305/207 + (4.12359 − .345)/100) / 1000 = 4.40903e-5; .0035556 / 4.40903e-5.
test('a bronze bushing in steel is gripped by .0007 to .0020 and closes by .00032 to .00181', () => {
  const grip = reasonOf('press-grip');
  expect(grip && [inches(grip.least), inches(grip.greatest)]).toEqual([0.0007, 0.002]);
  expect(grip?.source).toBe('common practice, no source');
  const closes = reasonOf('bushing-closes');
  // 2 p d² Di / (E (d² − Di²))
  expect(closes && inches(closes.lower)).toBeCloseTo(0.00032277, 6);
  expect(closes && inches(closes.upper)).toBeCloseTo(0.00181469, 6);
});

test('it presses in with 13,791 N at the most and holds 981 N at the least: μ p π d L, μ .20 and .08', () => {
  const force = reasonOf('press-force');
  expect(force?.pressN).toBeCloseTo(13791.0, 0);
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

test('a metal nobody named is asked for, and no figure stands that hangs on it', () => {
  const { partMetal, bushingMetal, ...bare } = bolt;
  const found = (more: Partial<HoleAndPinQuestion>) => {
    const route = holeAndPin({ ...bare, ...more }).routes.find(({ kind }) => kind === 'bushing');
    const asked = route?.why.find((reason) => reason.code === 'ask-press-metals');
    return [route?.state, asked && 'missing' in asked ? asked.missing : undefined];
  };
  expect(found({})).toEqual(['ask', 'both']);
  expect(found(partMetal ? { partMetal } : {})).toEqual(['ask', 'bushing']);
  expect(found(bushingMetal ? { bushingMetal } : {})).toEqual(['ask', 'part']);
  const codes = holeAndPin(bare)
    .routes.find(({ kind }) => kind === 'bushing')
    ?.why.map(({ code }) => code);
  expect(codes).toEqual(['ask-press-metals', 'wall-left', 'bushing-wall', 'press-grip']);
  expect(reasonOf('press-metals')).toMatchObject({
    part: 'Low carbon steel (1018, 1020)',
    bushing: 'Bearing bronze SAE 660 (C93200)',
  });
});

test('the bushing at 413 MPa is past twice the 125 MPa that cast bronze yields at: not possible before that is answered', () => {
  // 2 · 80.643 / (1 − (.4392/.5625)²) = 413.2 MPa; the part, by its thin wall, 167 MPa of 210
  const route = holeAndPin(bolt).routes.find(({ kind }) => kind === 'bushing');
  expect(route?.state).toBe('ask');
  const warnings = route?.why.flatMap((reason) => (reason.code === 'press-warning' ? [reason.warning] : []));
  expect(warnings?.map((one) => ('what' in one ? `${one.what} ${one.code}` : one.code))).toEqual([
    'bushing yields',
    'part near-yield',
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
