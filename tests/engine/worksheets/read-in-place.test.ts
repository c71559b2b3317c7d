import { describe, expect, test } from 'vitest';
import { bearingInSeat } from '../../../src/engine/worksheets/bearing-seat/bearing-seat.ts';
import { innerSleeve } from '../../../src/engine/worksheets/bearing-seat/inner-sleeve.ts';
import {
  bandOf,
  estimateOf,
  toleranceEstimate,
  typedEstimate,
  type Estimate,
} from '../../../src/engine/reading/estimate.ts';
import { checkReadClearance } from '../../../src/engine/fit/fit-check.ts';
import { fitLimits } from '../../../src/engine/fit/fits.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import {
  absolute,
  exactDecimalText,
  isLess,
  lengthOf,
  minus,
  type Length,
} from '../../../src/engine/length/length.ts';
import { lineUp, type LineUpAnswer } from '../../../src/engine/worksheets/axle-line-up/line-up.ts';
import { sidePlayMiss } from '../../../src/engine/worksheets/axle-line-up/line-up-read.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { sayCheck } from '../../../src/engine/worksheets/axle-line-up/say-line-up.ts';
import { axleLayouts } from '../../../src/engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { usualLineUpLimits } from '../../../src/engine/worksheets/axle-line-up/tables/line-up-limits.ts';

// A direct reading of the assembled thing beats any sum of parts and replaces it.

const inch = (text: string) => lengthOf(`${text} in`);
const known = (text: string) => typedEstimate(inch(text));
const shown = (length: Length | undefined) => length && exactDecimalText(length, 'in');

function byIndicator(...sizes: readonly [string, ...string[]]): Estimate {
  const tool = usualTools.find(({ id }) => id === 'test-indicator');
  if (!tool) throw new Error('a shop has a test indicator');
  const [first, ...rest] = sizes.map((size) => ({ exact: inch(size), tool, zeroChecked: false }));
  if (!first) throw new Error('one reading at least');
  return estimateOf([first, ...rest]);
}

describe('a pin that was rocked on the machine', () => {
  const part = (size: string) => ({ tightest: known(size), loosest: known(size) });
  // By sizes the slop is .4487 − .4372 = .0115, far past .002.
  const question: HoleAndPinQuestion = {
    bore: part('.4487'),
    pin: part('.4372'),
    joint: 'located',
    ownLimits: { lower: inch('0'), upper: inch('.002'), source: 'test' },
    arm: { boreLength: inch('1.5'), reach: inch('9') },
  };

  test('has the slop of its rock, not of its sizes: rock · length / (2 · reach)', () => {
    const answer = holeAndPin({ ...question, direct: { kind: 'rock', read: known('.012') } });
    // .012 · 1.5 / 18 = .001
    expect(shown(answer.loosest)).toBe('0.001');
    expect(shown(answer.tightest)).toBe('0.001');
    expect(answer).toMatchObject({ verdict: { kind: 'good' }, direct: 'rock' });
    expect(shown(answer.rock?.inAll)).toBe('0.012');
    expect(holeAndPin(question)).toMatchObject({ verdict: { kind: 'no-good', way: 'over' } });
    expect(holeAndPin(question)).not.toHaveProperty('direct');
  });

  test('is known closer at the bore than at the arm’s end, by the same ratio', () => {
    const read = toleranceEstimate(inch('.012'), inch('.0006'));
    const answer = holeAndPin({ ...question, direct: { kind: 'rock', read } });
    // .0006 · 1.5 / 18 = .00005; the tolerance comes back through statistics, so to a hair
    expect(isLess(absolute(minus(answer.band.halfWidth, inch('.00005'))), inch('.0000001'))).toBe(true);
  });

  test('that can be moved by hand does not grip: its least play is not held against a least of zero', () => {
    // .0001 ±.0003 can’t be told from nothing, but it is less than .002.
    const direct = { kind: 'slop', read: byIndicator('.0001') } as const;
    expect(holeAndPin({ ...question, direct })).toMatchObject({ verdict: { kind: 'good' }, direct: 'slop' });
    const least = { lower: inch('.001'), upper: inch('.003'), source: 'test' };
    expect(holeAndPin({ ...question, ownLimits: least, direct })).toMatchObject({
      verdict: { kind: 'no-good', way: 'under' },
    });
  });

  test.each([
    { what: 'the arm isn’t known', arm: undefined },
    {
      what: 'the bell-mouth takes all of the bore',
      arm: { boreLength: inch('1'), reach: inch('9'), bellMouth: inch('1') },
    },
  ])('counts with its sizes where $what: a rock says nothing then', ({ arm }) => {
    const { arm: _arm, ...rest } = question;
    const answer = holeAndPin({
      ...rest,
      ...(arm && { arm }),
      direct: { kind: 'rock', read: known('.012') },
    });
    expect(shown(answer.loosest)).toBe('0.0115');
    expect(answer).not.toHaveProperty('direct');
  });
});

describe('the clearance of a class, read with an indicator', () => {
  const atOnePlace = (read: Estimate) => ({ tightest: read, loosest: read });
  // RC5, 7/16: .0012 to .0029 of clearance (ANSI B4.1-1967, table 1).
  const rc5 = fitLimits({ fitClass: 'RC5', nominal: inch('.4375') });
  test.each([
    { read: '.0020', kind: 'good' },
    { read: '.0008', kind: 'no-good' },
    { read: '.0035', kind: 'no-good' },
    { read: '.0013', kind: 'too-close' },
  ])('$read is $kind', ({ read, kind }) => {
    expect(rc5.ok && checkReadClearance(rc5.value, atOnePlace(byIndicator(read))).verdict.kind).toBe(kind);
  });

  // Least .0012 at the tightest place, most .0029 at the loosest; one that is inside says nothing of the other.
  test.each([
    { tightest: '.0008', loosest: '.0020', kind: 'no-good' },
    { tightest: '.0020', loosest: '.0035', kind: 'no-good' },
    { tightest: '.0017', loosest: '.0022', kind: 'good' },
  ])('at two places, $tightest and $loosest, is $kind', ({ tightest, loosest, kind }) => {
    const read = { tightest: byIndicator(tightest), loosest: byIndicator(loosest) };
    expect(rc5.ok && checkReadClearance(rc5.value, read).verdict.kind).toBe(kind);
  });

  test('of LC2, 0 to .0011, is good at next to nothing: it was moved by hand', () => {
    const lc2 = fitLimits({ fitClass: 'LC2', nominal: inch('.4375') });
    const checked = lc2.ok ? checkReadClearance(lc2.value, atOnePlace(byIndicator('.0001'))) : undefined;
    expect(checked?.verdict.kind).toBe('good');
    expect(shown(checked?.limits.lower)).toBe('0');
  });
});

describe('a bearing in its recess, read by depth gauge', () => {
  const want = { limits: { lower: inch('.002'), upper: inch('.006'), source: 'test' }, aim: inch('.004') };
  const seat = {
    depth: known('.500'),
    goesIn: [{ size: known('.500'), count: 1 }],
    want,
    step: inch('.001'),
  };

  test('stands as it was read, not as its width less the depth says', () => {
    // .500 − .500 = 0 by sizes: too little. Read: .004.
    expect(bearingInSeat(seat)).toMatchObject({ verdict: { kind: 'no-good', way: 'under' }, direct: false });
    const answer = bearingInSeat({ ...seat, direct: known('.004') });
    expect(answer).toMatchObject({ verdict: { kind: 'good' }, direct: true });
    expect(shown(answer.proud)).toBe('0.004');
  });

  test('lies below the face where it was read so, and gets its shim by that', () => {
    const below = typedEstimate(inch('-.003'));
    // aim .004 − (−.003) = .007
    expect(shown(bearingInSeat({ ...seat, direct: below }).shim?.aim)).toBe('0.007');
  });
});

describe('a sleeve between ball bearings, read in the hub', () => {
  const want = { limits: { lower: inch('0'), upper: inch('.002'), source: 'test' }, aim: inch('.001') };
  const ask = { between: known('2.000'), sleeve: known('2.010'), want, step: inch('.001') };

  test('is longer by what it stands proud, not by its length less the distance', () => {
    const result = innerSleeve({ ...ask, direct: known('.001') });
    expect(result.ok && result.value.present).toMatchObject({ verdict: { kind: 'good' }, direct: true });
    const bySizes = innerSleeve(ask);
    expect(bySizes.ok && bySizes.value.present).toMatchObject({
      verdict: { kind: 'no-good' },
      direct: false,
    });
  });

  test('is trimmed by what it stands too proud, off the length it has', () => {
    const result = innerSleeve({ ...ask, direct: known('.005') });
    const trim = result.ok ? result.value.present?.trim : undefined;
    // .005 read, .001 wanted: .004 off 2.010
    expect(trim?.ok && shown(trim.value.take)).toBe('0.004');
    expect(trim?.ok && shown(trim.value.to)).toBe('2.006');
  });

  test('tells the distance too: a new one is made to the sleeve less what it stands proud, and the excess', () => {
    const result = innerSleeve({ ...ask, direct: known('.005') });
    // 2.010 − .005 + .001, whatever the distance was measured as
    expect(result.ok && shown(result.value.make.target)).toBe('2.006');
    const bySizes = innerSleeve(ask);
    expect(bySizes.ok && shown(bySizes.value.make.target)).toBe('2.001');
  });

  test('that was read but whose length isn’t known is judged, and not trimmed', () => {
    const { sleeve: _sleeve, ...rest } = ask;
    const result = innerSleeve({ ...rest, direct: known('.005') });
    expect(result.ok && result.value.present).toMatchObject({ verdict: { kind: 'no-good', way: 'over' } });
    expect(result.ok && result.value.present).not.toHaveProperty('trim');
  });

  test('is judged although the distance is known too coarsely to make another by it, and says so', () => {
    const { sleeve: _sleeve, ...rest } = ask;
    const coarse = { ...rest, between: toleranceEstimate(inch('2.000'), inch('.004')) };
    const bySizes = innerSleeve(coarse);
    expect(bySizes.ok ? '' : bySizes.refusal.code).toBe('no-proof');
    const result = innerSleeve({ ...coarse, direct: known('.001') });
    expect(result.ok && result.value.present?.verdict.kind).toBe('good');
    expect(result.ok && result.value.make.provable).toBe(false);
    expect(innerSleeve({ ...ask, direct: known('.001') })).toMatchObject({
      value: { make: { provable: true } },
    });
  });
});

describe('a wheel read on the machine', () => {
  const sizes = {
    width: '6.750',
    hub: '4.412',
    centre: '2.300',
    disc: '.312',
    slot: '.187',
    bracket: '.500',
    float: '.010',
    slotWidth: '.300',
    discThickness: '.200',
  };
  const answered = (
    more: Readonly<Record<string, string>> = {},
    slides?: 'bracket',
    layout: 'front-one-disc' | 'trailer-hub' = 'front-one-disc',
    base: Readonly<Record<string, string>> = sizes,
  ): LineUpAnswer => {
    const result = lineUp({
      layout: axleLayouts[layout],
      side: 'right',
      sizes: Object.fromEntries(
        Object.entries({ ...base, ...more }).map(([name, size]) => [name, known(size)]),
      ),
      onHand: {},
      limits: usualLineUpLimits.in,
      step: inch('.001'),
      ...(slides && { slides }),
    });
    if (!result.ok) throw new Error(result.refusal.code);
    return result.value;
  };
  const checkOf = (answer: LineUpAnswer, kind: string) =>
    answer.checks.filter((check) => check.kind === kind);

  test('without a reading has only the sum of slot, disc and float: (.300 − .200 − .010) / 2 = .045', () => {
    const [sum, ...others] = checkOf(answered(), 'disc-in-slot');
    expect(others).toEqual([]);
    expect(shown(sum?.value)).toBe('0.045');
    expect(sum).not.toHaveProperty('direct');
    expect(checkOf(answered(), 'side-play')).toEqual([]);
    expect(checkOf(answered(), 'wheel-centre')).toEqual([]);
  });

  test('has the two gaps that were read beside the disc in place of the sum', () => {
    const read = checkOf(answered({ discInsideRead: '.020', discOutsideRead: '.060' }), 'disc-in-slot');
    expect(read.map(({ value, direct }) => [shown(value), direct])).toEqual([
      ['0.02', true],
      ['0.06', true],
    ]);
    expect(read.map((check) => sayCheck(check, 'in'))).toEqual([
      'Read: good: gap at the disc’s inner face .020, want .005 or more.',
      'Read: good: gap at the disc’s outer face .060, want .005 or more.',
    ]);
  });

  test('with too little side play says what to face off the part that is cut last', () => {
    const [play] = checkOf(answered({ floatRead: '.002' }), 'side-play');
    expect(play?.verdict).toMatchObject({ kind: 'no-good', way: 'under' });
    // wanted .010 (from .005 to .015), read .002: .008 to face off
    expect(play && shown(sidePlayMiss(play))).toBe('0.008');
    expect(play && sayCheck(play, 'in')).toBe(
      'Read: too tight: side play .002, want .005 to .015. Face .008 off the part between bracket and leg.',
    );
  });

  test('with too much side play says how much longer that part has to be', () => {
    const [play] = checkOf(answered({ floatRead: '.020' }), 'side-play');
    expect(play && sayCheck(play, 'in')).toBe(
      'Read: too loose: side play .020, want .005 to .015. Make the part between bracket and leg .010 longer, or shim it.',
    );
    const [good] = checkOf(answered({ floatRead: '.010' }), 'side-play');
    expect(good && sayCheck(good, 'in')).toBe('Read: good: side play .010, want .005 to .015.');
  });

  test('with a float near nothing wanted, says what leaves just that float', () => {
    // wanted .002 (up to .007, and .001 at least, or it is seized), read .012: .010 longer leaves .002
    const [play] = checkOf(answered({ float: '.002', floatRead: '.012' }), 'side-play');
    expect(play && sayCheck(play, 'in')).toBe(
      'Read: too loose: side play .012, want .001 to .007. Make the part between bracket and leg .010 longer, or shim it.',
    );
  });

  test('with pads that need more than the float wanted still has room for a spacer that is off', () => {
    // .090 of wear + .010 of margin = .100 at least, though .050 was wanted; .005 either way of .105
    const pads = { float: '.050', padWear: '.090', slotWidth: '.600' };
    const [good] = checkOf(answered({ ...pads, floatRead: '.105' }, 'bracket'), 'side-play');
    expect(good && sayCheck(good, 'in')).toBe('Read: good: side play .105, want .100 to .110.');
    const [tight] = checkOf(answered({ ...pads, floatRead: '.050' }, 'bracket'), 'side-play');
    expect(tight && shown(sidePlayMiss(tight))).toBe('0.055');
  });

  test('holds the pads’ wear against the float that was read, not the one that was wanted', () => {
    const more = { float: '.200', padWear: '.150', slotWidth: '.600' };
    // .200 − .150 = .050 as wanted; .155 − .150 = .005 as read, and .010 is the margin
    expect(checkOf(answered(more, 'bracket'), 'pad-wear')[0]?.verdict.kind).toBe('good');
    const read = answered({ ...more, floatRead: '.155' }, 'bracket');
    expect(shown(checkOf(read, 'pad-wear')[0]?.value)).toBe('0.005');
    expect(checkOf(read, 'pad-wear')[0]?.verdict.kind).toBe('no-good');
    // and its side play has to be .150 + .010 at least: .160 to .205
    expect(checkOf(read, 'side-play')[0]?.verdict).toMatchObject({ kind: 'no-good', way: 'under' });
  });

  test.each([
    { offset: '0', read: '.050', kind: 'good' }, // .025 off the middle, .030 is allowed
    { offset: '0', read: '.070', kind: 'no-good' },
    // .200 on the left is .100 to the right; on the right it is .100 to the left, .200 away. It isn't said which.
    { offset: '.100', read: '.200', kind: 'too-close' },
    { offset: '-.100', read: '.200', kind: 'too-close' },
    { offset: '.010', read: '.040', kind: 'good' }, // .020 or −.020 off, wanted .010: .010 or .030 away
    { offset: '.010', read: '.041', kind: 'too-close' },
    { offset: '.100', read: '.050', kind: 'no-good' },
  ])('wanted $offset off the middle, its sides differ by $read: $kind', ({ offset, read, kind }) => {
    const [centre] = checkOf(answered({ offset, centreRead: read }), 'wheel-centre');
    expect(centre).toMatchObject({ direct: true, verdict: { kind } });
  });

  test.each([
    // 2 · .100 ± 2 · .030: .140 to .260 wider on the left, and nothing like it on the right
    { offset: '.100', side: 'centreLeftRead', read: '.200', kind: 'good' },
    { offset: '.100', side: 'centreLeftRead', read: '.140', kind: 'good' },
    { offset: '.100', side: 'centreLeftRead', read: '.139', kind: 'no-good' },
    { offset: '.100', side: 'centreRightRead', read: '.200', kind: 'no-good' },
    { offset: '-.100', side: 'centreRightRead', read: '.200', kind: 'good' },
    { offset: '-.100', side: 'centreLeftRead', read: '.200', kind: 'no-good' },
    // .020 wanted: −.020 to .100 on the left; 0 read there may be anything on the right, so half of .040 is the least
    { offset: '.020', side: 'centreLeftRead', read: '.100', kind: 'good' },
    { offset: '.020', side: 'centreLeftRead', read: '0', kind: 'no-good' },
    { offset: '.020', side: 'centreRightRead', read: '.020', kind: 'good' },
    { offset: '.020', side: 'centreRightRead', read: '.021', kind: 'no-good' },
    { offset: '0', side: 'centreRightRead', read: '.060', kind: 'good' },
  ])('wanted $offset off the middle, $side $read: $kind', ({ offset, side, read, kind }) => {
    const [centre] = checkOf(answered({ offset, [side]: read }), 'wheel-centre');
    expect(centre).toMatchObject({ direct: true, verdict: { kind } });
  });

  test('asks which side is the wider one where the difference alone can’t tell', () => {
    const [centre] = checkOf(answered({ offset: '.100', centreRead: '.200' }), 'wheel-centre');
    expect(centre && sayCheck(centre, 'in')).toBe(
      'Too close to call: which side is the wider one isn’t said. Read it by its side.',
    );
    const [left] = checkOf(answered({ offset: '.100', centreLeftRead: '.300' }), 'wheel-centre');
    expect(left && sayCheck(left, 'in')).toBe('Read: too big: left side wider by .300, want .140 to .260.');
  });

  test.each([
    // wanted .005, .005 off allowed: nothing at all would be the lower limit, and that is a seized bracket
    { float: '.005', read: '0', band: '.0012', kind: 'too-close' },
    { float: '.005', read: '0', band: '.0009', kind: 'no-good' },
    { float: '.005', read: '.0022', band: '.0012', kind: 'good' },
    { float: '.005', read: '.0021', band: '.0012', kind: 'too-close' },
    { float: '.002', read: '0', band: '.0002', kind: 'no-good' },
    // .0055 − .005 = .0005 is less than the least float there is
    { float: '.0055', read: '.0006', band: '0', kind: 'no-good' },
    { float: '.010', read: '.0049', band: '0', kind: 'no-good' },
    { float: '.010', read: '.0060', band: '.0010', kind: 'good' },
  ])(
    'wanted to float $float, side play read $read ±$band is $kind: the lower limit is always proved',
    ({ float, read, band, kind }) => {
      const result = lineUp({
        layout: axleLayouts['front-one-disc'],
        side: 'right',
        sizes: {
          ...Object.fromEntries(
            Object.entries({ ...sizes, float }).map(([name, size]) => [name, known(size)]),
          ),
          floatRead: toleranceEstimate(inch(read), inch(band)),
        },
        onHand: {},
        limits: usualLineUpLimits.in,
        step: inch('.001'),
      });
      expect(result.ok && checkOf(result.value, 'side-play')[0]?.verdict.kind).toBe(kind);
    },
  );

  test('says of the two sides what they may differ', () => {
    const [centre] = checkOf(answered({ centreRead: '.070' }), 'wheel-centre');
    expect(centre && sayCheck(centre, 'in')).toBe(
      'Read: too big: two sides differ by .070, want .060 or less.',
    );
  });

  test('a trailer hub has no two sides to read', () => {
    const hub = { seat: '5.000', hub: '4.000', mount: '2.000', wheelPlace: '2.500' };
    expect(checkOf(answered({ centreRead: '.070' }, undefined, 'trailer-hub', hub), 'wheel-centre')).toEqual(
      [],
    );
  });

  test('carries the band of its readings', () => {
    const result = lineUp({
      layout: axleLayouts['front-one-disc'],
      side: 'right',
      sizes: {
        ...Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, known(size)])),
        floatRead: byIndicator('.0100', '.0102'),
      },
      onHand: {},
      limits: usualLineUpLimits.in,
      step: inch('.001'),
    });
    const play = result.ok ? checkOf(result.value, 'side-play')[0] : undefined;
    expect(shown(play?.band.halfWidth)).toBe(shown(bandOf(byIndicator('.0100', '.0102')).halfWidth));
  });
});
