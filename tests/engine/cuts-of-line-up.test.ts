import { describe, expect, test } from 'vitest';
import { cutsOfLineUp } from '../../src/engine/cuts-of-line-up.ts';
import { typedEstimate } from '../../src/engine/estimate.ts';
import { lengthOf } from '../../src/engine/length.ts';
import { lineUp, type LineUpQuestion } from '../../src/engine/line-up.ts';
import { axleLayouts } from '../../src/engine/tables/axle-layouts.ts';
import { usualLineUpLimits } from '../../src/engine/tables/line-up-limits.ts';
import { waysSaid } from './cut-said.ts';

type Sizes = Readonly<Record<string, string>>;
const exactly = (sizes: Sizes) =>
  Object.fromEntries(
    Object.entries(sizes).map(([name, size]) => [name, typedEstimate(lengthOf(`${size} in`))]),
  );

/** A = 1.075, B = .120, C = .633, sleeve 1.263; a spacer may be off by .005 (common practice). */
const front: Sizes = {
  width: '6.750',
  hub: '4.412',
  centre: '2.300',
  disc: '.312',
  slot: '.187',
  bracket: '.500',
  float: '.010',
};

function offered(onHand: Sizes = {}, sizes: Sizes = front) {
  const q: LineUpQuestion = {
    layout: axleLayouts['front-one-disc'],
    side: 'right',
    sizes: exactly(sizes),
    onHand: exactly(onHand),
    limits: usualLineUpLimits.in,
    step: lengthOf('.001 in'),
  };
  const answer = lineUp(q);
  if (!answer.ok) throw new Error(answer.refusal.code);
  return waysSaid(cutsOfLineUp(q, answer.value));
}

const made = [
  'Left spacer, made new: 1.0750 (1.0700 to 1.0800)',
  'Hub to bracket, made new: .1200 (.1150 to .1250)',
  'Bracket to leg, made new: .6330 (.6280 to .6380)',
  'Sleeve, made new: 1.2630 (1.2580 to 1.2680)',
];

describe('the spacers of a front axle', () => {
  test('are all made new where none is on hand, from left to right', () => {
    expect(offered()).toEqual({ spacers: made });
  });

  test('that are on hand and too long are faced, those that fit are left', () => {
    // 1.110 is .035 longer than 1.075; .122 is .002 off, inside .005
    expect(offered({ far: '1.110', inner: '.122' })).toEqual({
      spacers: ['Left spacer, faced to length: 1.1100 → 1.0750 (1.0700 to 1.0800)', made[2], made[3]],
    });
  });

  test('that a shim would do for are left, or made new in a second way', () => {
    // 1.050 is .025 short
    expect(offered({ far: '1.050' })).toEqual({ spacers: made.slice(1), 'new-for-shims': made });
  });

  test('are not cut while one of them has no room', () => {
    // B = .312 − .300 − .005 = .007; with a slot .400 in: −.093
    expect(offered({}, { ...front, slot: '.400' })).toEqual({});
  });
});
