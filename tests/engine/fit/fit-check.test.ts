import { describe, expect, test } from 'vitest';
import { toleranceEstimate, typedEstimate } from '../../../src/engine/reading/estimate.ts';
import {
  boreForPin,
  checkBore,
  checkClearance,
  checkPin,
  pinForBore,
  type MeasuredPart,
} from '../../../src/engine/fit/fit-check.ts';
import { fitLimits, type FitLimits } from '../../../src/engine/fit/fits.ts';
import { lengthOf, minus, plus, sameLength, type Length } from '../../../src/engine/length/length.ts';
import type { ToolInForce } from '../../../src/engine/reading/measuring-tool.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { figure } from '../../../src/engine/length/show.ts';

function fitOf(fitClass: string, nominal: string): FitLimits {
  const fit = fitLimits({ fitClass, nominal: lengthOf(nominal) });
  if (!fit.ok) throw new Error(fit.refusal.code);
  return fit.value;
}

const is = (length: Length | undefined, text: string) =>
  length !== undefined && sameLength(length, lengthOf(text));

const show = (length: Length | undefined) => length && figure(length, 'in');

function part(tightest: string, loosest = tightest, tool?: ToolInForce): MeasuredPart {
  return {
    tightest: typedEstimate(lengthOf(tightest), tool),
    loosest: typedEstimate(lengthOf(loosest), tool),
  };
}

function caliper(): ToolInForce {
  const found = usualTools.find(({ id }) => id === 'digital-caliper');
  if (!found) throw new Error('no caliper');
  return found;
}

// RC5 at 1/2 in: hole .5000 to .5010, pin .4981 to .4988, clearance .0012 to .0029 (ANSI B4.1, row .40 to .71)
const rc5 = fitOf('RC5', '1/2 in');

describe('two measured parts against RC5 at 1/2 in', () => {
  test.each([
    { bore: '.5005 in', pin: '.4985 in', kind: 'good' }, // .0020
    { bore: '.5000 in', pin: '.4988 in', kind: 'good' }, // .0012, at the limit and known exactly
    { bore: '.5010 in', pin: '.4981 in', kind: 'good' }, // .0029
    { bore: '.5000 in', pin: '.4989 in', kind: 'no-good' }, // .0011
    { bore: '.5011 in', pin: '.4981 in', kind: 'no-good' }, // .0030
    { bore: '.5100 in', pin: '.5080 in', kind: 'good' }, // .0020: both are large, and they run as the class wants
  ])('bore $bore with pin $pin is $kind', ({ bore, pin, kind }) => {
    expect(checkClearance(rc5, { bore: part(bore), pin: part(pin) }).verdict.kind).toBe(kind);
  });

  test('too tight and too loose say which way and by how much', () => {
    expect(checkClearance(rc5, { bore: part('.5000 in'), pin: part('.4990 in') }).verdict).toMatchObject({
      kind: 'no-good',
      way: 'under',
    });
    const loose = checkClearance(rc5, { bore: part('.5015 in'), pin: part('.4981 in') });
    // .0034 − .0029
    expect(loose.verdict).toMatchObject({ kind: 'no-good', way: 'over' });
    expect(loose.verdict.kind === 'no-good' && is(loose.verdict.by, '.0005 in')).toBe(true);
    expect(is(loose.value, '.0034 in')).toBe(true);
  });

  test('the tightest places rule the lower limit, the loosest the upper', () => {
    const answer = checkClearance(rc5, {
      bore: part('.4998 in', '.5008 in'),
      pin: part('.4988 in', '.4983 in'),
    });
    expect(is(answer.tightest, '.0010 in')).toBe(true);
    expect(is(answer.loosest, '.0025 in')).toBe(true);
    expect(answer.verdict).toMatchObject({ kind: 'no-good', way: 'under' });
    expect(is(answer.value, '.0010 in')).toBe(true);
  });

  test('read with a caliper it is too close to call, and near the lower limit the tightest place is shown', () => {
    const answer = checkClearance(rc5, {
      bore: part('.5000 in', '.5000 in', caliper()),
      pin: part('.4986 in', '.4986 in'),
    });
    expect(answer.verdict.kind).toBe('too-close');
  });
});

describe('each part against its own limits', () => {
  test.each([
    { size: '.5000 in', kind: 'good' },
    { size: '.5010 in', kind: 'good' },
    { size: '.4999 in', kind: 'no-good' },
    { size: '.5011 in', kind: 'no-good' },
  ])('a bore of $size is $kind for RC5', ({ size, kind }) => {
    expect(checkBore(rc5, part(size)).verdict.kind).toBe(kind);
  });

  test.each([
    { size: '.4981 in', kind: 'good' },
    { size: '.4988 in', kind: 'good' },
    { size: '.4980 in', kind: 'no-good' },
    { size: '.4989 in', kind: 'no-good' },
  ])('a pin of $size is $kind for RC5', ({ size, kind }) => {
    expect(checkPin(rc5, part(size)).verdict.kind).toBe(kind);
  });

  test('a tapered pin is too large at its large end, whatever its small end is', () => {
    const answer = checkPin(rc5, part('.4990 in', '.4985 in'));
    expect(answer.verdict).toMatchObject({ kind: 'no-good', way: 'over' });
    expect(is(answer.value, '.4990 in')).toBe(true);
  });

  test('a bell-mouthed bore is too large at its large end', () => {
    const answer = checkBore(rc5, part('.5005 in', '.5015 in'));
    expect(answer.verdict).toMatchObject({ kind: 'no-good', way: 'over' });
    expect(is(answer.value, '.5015 in')).toBe(true);
  });

  test('near its lower limit a bore read with a caliper is too close to call', () => {
    // The caliper knows it to more than half the class: both limits are in its band.
    const answer = checkBore(fitOf('RC9', '1/2 in'), part('.5001 in', '.5025 in', caliper()));
    expect(answer.verdict).toMatchObject({ kind: 'too-close', near: 'lower' });
    expect(is(answer.value, '.5001 in')).toBe(true);
  });
});

describe('the other part', () => {
  test('the pin for a bore of .5023: .5023 − .0029 = .4994 to .5023 − .0012 = .5011', () => {
    const made = pinForBore(rc5, part('.5023 in'));
    if (!made.ok) throw new Error(made.refusal.code);
    expect(is(made.value.lower, '.4994 in') && is(made.value.upper, '.5011 in')).toBe(true);
    expect(is(made.value.halfWidth, '0 in')).toBe(true);
    expect(is(made.value.sure?.lower, '.4994 in') && is(made.value.sure?.upper, '.5011 in')).toBe(true);
  });

  test('the bore for a pin of .4950: .4950 + .0012 = .4962 to .4950 + .0029 = .4979', () => {
    const made = boreForPin(rc5, part('.4950 in'));
    if (!made.ok) throw new Error(made.refusal.code);
    expect(is(made.value.lower, '.4962 in') && is(made.value.upper, '.4979 in')).toBe(true);
  });

  test('a bore that differs from place to place leaves less: .5000 to .5008 gives a pin of .4979 to .4988', () => {
    // smallest pin .5008 − .0029, largest .5000 − .0012
    const made = pinForBore(rc5, part('.5000 in', '.5008 in'));
    if (!made.ok) throw new Error(made.refusal.code);
    expect(is(made.value.lower, '.4979 in') && is(made.value.upper, '.4988 in')).toBe(true);
  });

  test('a bore that differs by all the class leaves has one pin; by more, none', () => {
    const just = pinForBore(rc5, part('.5000 in', '.5017 in'));
    expect(just.ok && sameLength(just.value.lower, just.value.upper)).toBe(true);
    const none = pinForBore(rc5, part('.5000 in', '.5018 in'));
    expect(none).toMatchObject({ ok: false, refusal: { code: 'form-eats-class', part: 'bore' } });
    expect(!none.ok && is(none.refusal.form, '.0018 in') && is(none.refusal.room, '.0017 in')).toBe(true);
  });

  test('a pin that differs by more than the class has no bore', () => {
    const none = boreForPin(rc5, part('.5000 in', '.4982 in'));
    expect(none).toMatchObject({ ok: false, refusal: { code: 'form-eats-class', part: 'pin' } });
    expect(!none.ok && is(none.refusal.form, '.0018 in')).toBe(true);
  });

  test('a press fit wants a pin larger than the bore: FN2 at 1 in, bore 1.0004: pin 1.0010 to 1.0023', () => {
    // 1.0004 + .0006 and 1.0004 + .0019
    const made = pinForBore(fitOf('FN2', '1 in'), part('1.0004 in'));
    if (!made.ok) throw new Error(made.refusal.code);
    expect(is(made.value.lower, '1.0010 in') && is(made.value.upper, '1.0023 in')).toBe(true);
  });

  /*
   * RC5 at 7/16: clearance .0012 to .0029 (ANSI B4.1, row .40 to .71). Each limit loses the band of its own place:
   * pin .4371 known to .0003 and .4369 known to .0001: .4371 + .0012 + .0003 = .4386 to .4369 + .0029 − .0001 = .4397;
   * bore .4390 known to .0003 and .4392 known to .0001: .4392 − .0029 + .0001 = .4364 to .4390 − .0012 − .0003 = .4375.
   */
  test('each limit loses the band of the place it was worked out from', () => {
    const rc5Small = fitOf('RC5', '7/16 in');
    const known = (size: string, plusMinus: string) => toleranceEstimate(lengthOf(size), lengthOf(plusMinus));
    const bore = boreForPin(rc5Small, {
      tightest: known('.4371 in', '.0003 in'),
      loosest: known('.4369 in', '.0001 in'),
    });
    const pin = pinForBore(rc5Small, {
      tightest: known('.4390 in', '.0003 in'),
      loosest: known('.4392 in', '.0001 in'),
    });
    if (!bore.ok || !pin.ok) throw new Error('form is within the class');
    expect(show(bore.value.sure?.lower)).toBe('.4386');
    expect(show(bore.value.sure?.upper)).toBe('.4397');
    expect(show(pin.value.sure?.lower)).toBe('.4364');
    expect(show(pin.value.sure?.upper)).toBe('.4375');
  });

  test('a bore known only to a caliper takes its band off both ends, and may leave nothing sure', () => {
    const read = part('.5023 in', '.5023 in', caliper());
    const narrow = pinForBore(rc5, read);
    expect(narrow.ok && narrow.value.sure).toBe(undefined);
    const wide = pinForBore(fitOf('RC9', '1/2 in'), read);
    if (!wide.ok || !wide.value.sure) throw new Error('RC9 is wide enough');
    // RC9 at 1/2: clearance .006 to .0128
    expect(is(wide.value.lower, '.4895 in') && is(wide.value.upper, '.4963 in')).toBe(true);
    const { lower, upper, sure, halfWidth } = wide.value;
    expect(sameLength(sure.lower, plus(lower, halfWidth))).toBe(true);
    expect(sameLength(sure.upper, minus(upper, halfWidth))).toBe(true);
  });
});
