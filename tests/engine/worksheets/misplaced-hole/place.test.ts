import { Decimal } from 'decimal.js';
import { describe, expect, test } from 'vitest';
import { exactDecimalText, floatMm, lengthOf, type Length } from '../../../../src/engine/length/length.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import {
  placeOf,
  type Place,
  type WhereAsked,
} from '../../../../src/engine/worksheets/misplaced-hole/place.ts';
import { sayToward } from '../../../../src/engine/worksheets/misplaced-hole/say-misplaced-hole.ts';

const mm = (text: string): Length => lengthOf(`${text} mm`);
const known = (text: string) => typedEstimate(mm(text));
type At = readonly [across: string, up: string];
const spot = (...[across, up]: At) => ({ across: known(across), up: known(up) });
// What never breaks between two lines.
const plain = (said: string) => said.replaceAll('\u00a0', ' ');
const inMm = (length: Length) => exactDecimalText(length, 'mm');

/** As a drawing is checked: √ of the squares, in another arithmetic. */
function apartOf(from: At, to: At): Decimal {
  return Decimal.hypot(new Decimal(to[0]).minus(from[0]), new Decimal(to[1]).minus(from[1]));
}

function both({ twoHoles }: Place) {
  if (!twoHoles) throw new Error('no other hole');
  return twoHoles;
}

describe('from two edges', () => {
  test('1.2 across and .9 down is 1.5 off, 36.87° below 3 o’clock: the 3-4-5 triangle', () => {
    const place = placeOf({ by: 'edges', now: spot('40', '25'), wanted: spot('41.2', '24.1') });
    expect(inMm(place.offBy)).toBe('1.5');
    expect(place.towardDegrees).toBeCloseTo(-36.8699, 4);
    expect(plain(sayToward(place.towardDegrees))).toBe('36.9° down from 3 o’clock');
  });

  test.each<{ now: At; wanted: At; other: At; moved?: At }>([
    { now: ['12.70', '30.01'], wanted: ['12.55', '31.4'], other: ['88.9', '30.0'] },
    { now: ['50', '20'], wanted: ['49.2', '19.5'], other: ['10', '70'], moved: ['10.4', '69.1'] },
    { now: ['0', '5'], wanted: ['0', '7.25'], other: ['0', '65'], moved: ['0', '66'] },
  ])('distances before and after are those of the coordinates: $now to $wanted', (q) => {
    const place = placeOf({
      by: 'edges',
      now: spot(...q.now),
      wanted: spot(...q.wanted),
      other: spot(...q.other),
      otherWanted: q.moved && spot(...q.moved),
    });
    const { before, after } = both(place);
    expect(floatMm(place.offBy)).toBeCloseTo(apartOf(q.now, q.wanted).toNumber(), 12);
    expect(floatMm(before.apart)).toBeCloseTo(apartOf(q.now, q.other).toNumber(), 12);
    expect(floatMm(after.apart)).toBeCloseTo(apartOf(q.wanted, q.moved ?? q.other).toNumber(), 12);
  });
});

describe('by how far and which way, with another hole at 3 o’clock', () => {
  // Law of cosines: c² = a² + b² − 2ab·cos C; law of sines for the turn: sin φ = e·sin C / c.
  test.each([
    { off: '1.5', degrees: 30, apart: '152.4' },
    { off: '1.5', degrees: 90, apart: '152.4' },
    { off: '3', degrees: 200, apart: '40' },
    { off: '0.8', degrees: 315, apart: '75.35' },
  ])('$off toward $degrees° leaves of $apart what the law of cosines says', ({ off, degrees, apart }) => {
    const { before, after } = both(
      placeOf({ by: 'offset', offBy: known(off), towardDegrees: degrees, apart: known(apart) }),
    );
    const angle = Decimal.acos(-1).times(degrees).div(180);
    const [e, c] = [new Decimal(off), new Decimal(apart)];
    const left = e.pow(2).plus(c.pow(2)).minus(e.times(c).times(2).times(angle.cos())).sqrt();
    expect(inMm(before.apart)).toBe(apart);
    expect(floatMm(after.apart)).toBeCloseTo(left.toNumber(), 8);
    const turned = Decimal.asin(e.times(angle.sin()).div(left)).times(180).div(Decimal.acos(-1));
    expect(after.degrees - before.degrees).toBeCloseTo(-turned.toNumber(), 8);
  });

  test('nothing is said of it while nobody said which way', () => {
    expect(placeOf({ by: 'offset', offBy: known('1.5'), apart: known('150') }).twoHoles).toBeUndefined();
  });
});

describe('by the distance to another hole', () => {
  const apart = (now: string, wanted: string): WhereAsked => ({
    by: 'apart',
    apart: known(now),
    wanted: known(wanted),
  });

  test('too far apart it goes toward the other hole, too near away from it', () => {
    const [far, near] = [placeOf(apart('154', '152.4')), placeOf(apart('150', '152.4'))];
    expect([inMm(far.offBy), plain(sayToward(far.towardDegrees))]).toEqual(['1.6', '3 o’clock']);
    expect([inMm(near.offBy), plain(sayToward(near.towardDegrees))]).toEqual(['2.4', '9 o’clock']);
    expect([far, near].map((place) => inMm(both(place).after.apart))).toEqual(['152.4', '152.4']);
  });
});

describe('the band', () => {
  const caliper = usualTools.find(({ id }) => id === 'metric-caliper');
  if (!caliper) throw new Error('no caliper');
  const read = (text: string) => typedEstimate(mm(text), caliper);

  test('of both edges is that of one at right angles to that of the other: √2 times as wide', () => {
    const one = placeOf({ by: 'apart', apart: read('40'), wanted: known('41.2') });
    const two = placeOf({
      by: 'edges',
      now: { across: read('40'), up: read('40') },
      wanted: spot('41.2', '41.2'),
    });
    expect(floatMm(one.halfWidth)).toBeGreaterThan(0.01);
    expect(floatMm(two.halfWidth) / floatMm(one.halfWidth)).toBeCloseTo(Math.SQRT2, 6);
  });

  test('of a figure from a drawing is nothing', () => {
    expect(inMm(placeOf({ by: 'apart', apart: known('40'), wanted: known('41') }).halfWidth)).toBe('0');
  });
});

test.each([
  [0, '3 o’clock'],
  [90, '12 o’clock'],
  [180, '9 o’clock'],
  [270, '6 o’clock'],
  [360, '3 o’clock'],
  [-90, '6 o’clock'],
  [40, '40° up from 3 o’clock'],
  [100, '80° up from 9 o’clock'],
  [190, '10° down from 9 o’clock'],
  [300, '60° down from 3 o’clock'],
  [359.97, '3 o’clock'],
])('%s° is said as on a clock’s face: %s', (degrees, said) => {
  expect(plain(sayToward(degrees))).toBe(said);
});
