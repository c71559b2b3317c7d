import { describe, expect, test } from 'vitest';
import type { AxleLayoutName } from '../../../src/engine/worksheets/axle-line-up/axle-layout.ts';
import { bushing } from '../../../src/engine/press/bushing.ts';
import type { CheckOffer } from '../../../src/engine/reading/check-offer.ts';
import {
  checksOfSeat,
  checksOfSleeve,
  checksOfTaper,
} from '../../../src/engine/worksheets/bearing-seat/checks-of-bearing.ts';
import { checksOfFit } from '../../../src/engine/worksheets/fit/checks-of-fits.ts';
import { checksOfHoleAndPin } from '../../../src/engine/worksheets/hole-and-pin/checks-of-hole-and-pin.ts';
import { checksOfLineUp } from '../../../src/engine/worksheets/axle-line-up/checks-of-line-up.ts';
import { checksOfBushing } from '../../../src/engine/worksheets/bushing/checks-of-bushing.ts';
import { checksOfRing } from '../../../src/engine/worksheets/ring/checks-of-ring.ts';
import { checksOfStack } from '../../../src/engine/worksheets/spacer-stack/checks-of-stack.ts';
import { checksOfEngagement } from '../../../src/engine/worksheets/thread-engagement/checks-of-threads.ts';
import { checksOfInsert } from '../../../src/engine/worksheets/thread-insert/checks-of-insert.ts';
import { bandOf, estimateOf, typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { fitLimits } from '../../../src/engine/fit/fits.ts';
import { exactDecimalText, lengthOf, zero } from '../../../src/engine/length/length.ts';
import type { LineUpQuestion } from '../../../src/engine/worksheets/axle-line-up/line-up.ts';
import { stackWantPreset } from '../../../src/engine/worksheets/spacer-stack/spacer-stack.ts';
import { axleLayouts } from '../../../src/engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { usualLineUpLimits } from '../../../src/engine/worksheets/axle-line-up/tables/line-up-limits.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { materialNamed } from '../../../src/engine/material/tables/materials.ts';
import { verdictOf, type Limits } from '../../../src/engine/reading/verdict.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const known = (text: string) => typedEstimate(inch(text));
const limits = (lower: string | undefined, upper: string | undefined): Limits => ({
  source: 'the worksheet',
  ...(lower !== undefined && { lower: inch(lower) }),
  ...(upper !== undefined && { upper: inch(upper) }),
});
const want = (lower: string, upper: string) => ({
  limits: { lower: inch(lower), upper: inch(upper), source: 'the worksheet' },
  aim: inch(lower),
});

/** An offer as `name: least to most, by, size`. */
function told({ name, by, limits: { lower, upper }, sizeName }: CheckOffer): string {
  const size = (length: typeof lower) => (length ? exactDecimalText(length, 'in') : '');
  return `${name}: ${size(lower)} to ${size(upper)}, ${by}${sizeName === undefined ? '' : `, ${sizeName}`}`;
}

const measured = (offers: readonly CheckOffer[]) => offers.filter(({ by }) => by !== 'by-eye').map(told);
const byEye = (offers: readonly CheckOffer[]) =>
  offers.filter(({ by }) => by === 'by-eye').map(({ name }) => name);

describe('a stack is checked with its own limits', () => {
  test.each([
    { kind: 'float', told: 'Float: 0.008 to 0.012, gap, direct' },
    { kind: 'end-play', told: 'End play: 0.002 to 0.006, gap, direct' },
    // A clamp speaks of how far the parts stand proud, which is a depth gauge's work.
    { kind: 'clamp', told: 'Stands proud: 0.002 to 0.008, depth, directProud' },
  ] as const)('$told', ({ kind, told: expected }) => {
    const offers = checksOfStack(stackWantPreset(kind, 'in'));
    expect(measured(offers)).toEqual([expected]);
    expect(byEye(offers)).toHaveLength(1);
    expect(offers[0]?.limits.source).toBe('common practice, no source');
  });
});

describe('a stack’s least', () => {
  const wanting = (kind: 'float' | 'end-play' | 'clamp') => {
    const { limits: usual, ...preset } = stackWantPreset(kind, 'in');
    return checksOfStack({ ...preset, limits: { ...usual, lower: zero, upper: inch('.003') } });
  };
  const byIndicator = usualTools.find(({ id }) => id === 'test-indicator');
  const read = (kind: 'float' | 'end-play' | 'clamp') => {
    if (!byIndicator) throw new Error('an indicator');
    const reading = { exact: zero, tool: byIndicator, zeroChecked: false };
    const offer = wanting(kind)[0];
    const { halfWidth } = bandOf(estimateOf([reading]));
    return offer && verdictOf({ value: zero, halfWidth, limits: offer.limits }).kind;
  };

  test('of nothing is still proved of a float and a clamp: .000 read is never good', () => {
    expect(read('float')).toBe('too-close');
    expect(read('clamp')).toBe('too-close');
  });

  test('of nothing says nothing of end play: that is never below it', () => {
    expect(read('end-play')).toBe('good');
  });
});

describe('a pin in its bore', () => {
  const arm = { boreLength: inch('1.5'), reach: inch('9') };

  test('with an arm is checked by its rock in all, each limit of the clearance · 2 · reach / length', () => {
    // .001 · 2 · 9 / 1.5 = .012; .002 · 2 · 9 / 1.5 = .024
    const offers = checksOfHoleAndPin({ joint: 'located', arm }, limits('.001', '.002'), 'in');
    expect(measured(offers)).toEqual(['Rock at the end of the arm: 0.012 to 0.024, gap, rockInAll']);
    expect(offers[0]?.how).toContain('9.000 in from the middle of the bore');
    expect(offers[0]?.how).toContain('±.012 in each way');
  });

  test('counts a bell-mouth off the length: the pin is held in less, and may rock more', () => {
    // .002 · 2 · 9 / (1.5 − .3) = .030
    const offers = checksOfHoleAndPin(
      { joint: 'located', arm: { ...arm, bellMouth: inch('.3') } },
      limits('0', '.002'),
      'in',
    );
    expect(measured(offers)).toEqual(['Rock at the end of the arm:  to 0.03, gap, rockInAll']);
  });

  test.each([
    { what: 'no arm is known', given: undefined },
    { what: 'the bell-mouth takes all of the bore', given: { ...arm, bellMouth: inch('1.5') } },
    { what: 'the arm has no length', given: { ...arm, reach: zero } },
  ])('is checked by its slop at the bore where $what', ({ given }) => {
    const question = { joint: 'turns', ...(given && { arm: given }) } as const;
    const offers = checksOfHoleAndPin(question, limits('.001', '.003'), 'in');
    expect(measured(offers)).toEqual(['Slop: 0.001 to 0.003, gap, slop']);
    expect(byEye(offers)).toEqual(['Turns free']);
  });

  test('with a least alone has a rock with a least alone', () => {
    const [rock] = checksOfHoleAndPin({ joint: 'turns-under-load', arm }, limits('.001', undefined), 'in');
    expect(rock && told(rock)).toBe('Rock at the end of the arm: 0.012 to , gap, rockInAll');
    expect(rock?.how).not.toContain('each way');
  });

  test('against a least of nothing and no most there is no figure to read', () => {
    const offers = checksOfHoleAndPin({ joint: 'turns' }, limits('0', undefined), 'in');
    expect(offers.map(({ name }) => name)).toEqual(['Turns free']);
  });

  test('that always grips can only be looked at', () => {
    const offers = checksOfHoleAndPin({ joint: 'pressed', arm }, limits('-.003', '-.001'), 'in');
    expect(measured(offers)).toEqual([]);
    expect(byEye(offers)).toEqual(['Holds by its grip']);
  });

  test('that is pushed in by hand is felt too', () => {
    expect(byEye(checksOfHoleAndPin({ joint: 'slides' }, limits('0', '.002'), 'in'))).toEqual([
      'Slides by hand',
    ]);
  });
});

describe('a fit', () => {
  test('RC5 at 7/16 is checked by its clearance, .0012 to .0029 (ANSI B4.1-1967 table 1, .40 to .71 in)', () => {
    const fit = fitLimits({ fitClass: 'RC5', nominal: inch('.4375') });
    expect(fit.ok && measured(checksOfFit(fit.value))).toEqual([
      'Clearance of the pair: 0.0012 to 0.0029, gap, slop',
    ]);
  });

  test('that grips or may grip has no clearance to read', () => {
    for (const fitClass of ['FN2', 'LT3']) {
      const fit = fitLimits({ fitClass, nominal: inch('.4375') });
      expect(fit.ok && checksOfFit(fit.value)).toEqual([]);
    }
  });

  test('a bushing is checked by its bore after pressing, held to what its pin wants of it', () => {
    const metal = materialNamed('low-carbon-steel');
    const bronze = materialNamed('bearing-bronze');
    if (!metal || !bronze) throw new Error('two metals of the chart');
    const part = (size: string) => ({ tightest: known(size), loosest: known(size) });
    const answer = bushing({
      bore: part('.5100'),
      pin: part('.4375'),
      insideClass: 'RC5',
      pressClass: 'FN2',
      part: metal,
      bushing: bronze,
      finish: 'usual',
      condition: 'plain',
      cold: 'freezer',
      shopCelsius: 20,
      step: inch('.001'),
    });
    // .4375 + .0012 and .4375 + .0029
    expect(answer.ok && measured(checksOfBushing(answer.value))).toEqual([
      'Bore of the bushing, pressed in: 0.4387 to 0.4404, bore',
    ]);
  });
});

describe('bearings', () => {
  test('a sleeve is read where it stands proud of the shoulder', () => {
    expect(measured(checksOfSleeve(want('0', '.002')))).toEqual([
      'Sleeve longer than the distance: 0 to 0.002, depth, direct',
    ]);
  });

  test('taper rollers are checked for end play by the maker’s figure', () => {
    expect(measured(checksOfTaper(want('.001', '.005')))).toEqual([
      'End play of the bearings: 0.001 to 0.005, gap, endPlay',
    ]);
  });

  test('a preload can’t be read as play', () => {
    const offers = checksOfTaper(want('-.003', '-.001'));
    expect(measured(offers)).toEqual([]);
    expect(byEye(offers)).toEqual(['Preload by the maker’s way']);
  });

  test.each([
    { lower: '.002', upper: '.006', told: ['Stands proud of the face: 0.002 to 0.006, depth, directProud'] },
    { lower: '-.006', upper: '-.002', told: ['Lies below the face: 0.002 to 0.006, depth, directBelow'] },
    {
      lower: '-.003',
      upper: '.001',
      told: [
        'Proud of the face at most:  to 0.001, depth, directProud',
        'Below the face at most:  to 0.003, depth, directBelow',
      ],
    },
    { lower: '0', upper: '.004', told: ['Stands proud of the face:  to 0.004, depth, directProud'] },
    { lower: '-.004', upper: '0', told: ['Lies below the face:  to 0.004, depth, directBelow'] },
  ])(
    'a bearing wanted from $lower to $upper is read on the side of the face it lies on',
    ({ lower, upper, told: expected }) => {
      expect(measured(checksOfSeat(want(lower, upper)))).toEqual(expected);
    },
  );
});

describe('a ring in its recess', () => {
  test('is read for what stays free above it, or for what it may stand proud', () => {
    expect(measured(checksOfRing({ stayFree: inch('.020') }))).toEqual([
      'Free above the ring: 0.02 to , depth',
    ]);
    expect(measured(checksOfRing({ stayFree: inch('-.010') }))).toEqual([
      'Ring proud of the face:  to 0.01, depth',
    ]);
    // Free by nothing: no tool can prove zero or more, so it is looked at
    expect(measured(checksOfRing({ stayFree: zero }))).toEqual([]);
    expect(byEye(checksOfRing({ stayFree: zero }))).toEqual([
      'Ring not proud of the face',
      'Ring clear all round',
    ]);
    expect(measured(checksOfRing({}))).toEqual([]);
    expect(byEye(checksOfRing({}))).toEqual(['Ring clear all round']);
  });
});

describe('threads', () => {
  test('are looked at: past the nut, or not on the bottom of a tapped hole', () => {
    expect(byEye(checksOfEngagement('nut'))).toEqual(['Threads past the nut']);
    expect(byEye(checksOfEngagement('stud'))).toEqual(['Threads past the nut']);
    expect(byEye(checksOfEngagement('tapped'))).toEqual(['The bolt doesn’t bottom']);
    expect(byEye(checksOfInsert())).toEqual(['Insert set down, tang out', 'The bolt goes in by hand']);
  });
});

describe('an axle', () => {
  const ask = (
    layout: AxleLayoutName,
    sizes: Readonly<Record<string, string>>,
    more: Partial<LineUpQuestion> = {},
  ) =>
    checksOfLineUp({
      layout: axleLayouts[layout],
      sizes: Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, known(size)])),
      limits: usualLineUpLimits.in,
      ...more,
    });

  test('with one disc: the two sides, the bracket’s side play, and the disc clear at both ends of the float', () => {
    // Off centre ±.030 is .060 from side to side; a float of .010 with a spacer that may be .005 off is .005 to .015.
    expect(measured(ask('front-one-disc', { float: '.010' }))).toEqual([
      'Wheel centre, difference of the two sides:  to 0.06, gap, centreRead',
      'Bracket’s side play: 0.005 to 0.015, gap, floatRead',
      'Disc’s inner face to its slot: 0.005 to , gap, discInsideRead',
      'Disc’s outer face to its slot: 0.005 to , gap, discOutsideRead',
    ]);
    expect(byEye(ask('front-one-disc', { float: '.010' }))).toEqual([
      'Bracket held from turning',
      'Wheel turns free',
    ]);
  });

  test.each([
    { offset: '.100', wider: 'left', size: 'centreLeftRead' },
    { offset: '-.100', wider: 'right', size: 'centreRightRead' },
  ])('off the middle by $offset has the $wider side wider by .140 to .260', ({ offset, wider, size }) => {
    // 2 · .100 ± 2 · .030
    const [centre] = ask('front-one-disc', { offset });
    expect(centre && told(centre)).toBe(`Wheel centre, ${wider} side wider by: 0.14 to 0.26, gap, ${size}`);
    expect(centre?.how).toContain('the wheel sits on the wrong side: enter 0.');
  });

  test('off the middle by less than half of what it may be off has a difference that is right on either side', () => {
    // 2 · .030 − 2 · .010: .020 of offset on the one side, −.020 on the other, .010 and .030 from where it is wanted
    const [centre] = ask('front-one-disc', { offset: '.010' });
    expect(centre && told(centre)).toBe(
      'Wheel centre, difference of the two sides:  to 0.04, gap, centreRead',
    );
    // .016 · 2 = .032 is more than .030: the side is named, and half of what is wanted has to be there at least
    const [named] = ask('front-one-disc', { offset: '.016' });
    expect(named && told(named)).toBe(
      'Wheel centre, left side wider by: 0.016 to 0.092, gap, centreLeftRead',
    );
  });

  test('whose bracket follows its pads needs side play for their whole wear and the margin', () => {
    // .150 of wear + .010 of margin; .200 + .005 at most
    const play = ask('front-one-disc', { float: '.200', padWear: '.150' }, { slides: 'bracket' })[1];
    expect(play && told(play)).toBe('Bracket’s side play: 0.195 to 0.205, gap, floatRead');
    const tight = ask('front-one-disc', { float: '.162', padWear: '.155' }, { slides: 'bracket' })[1];
    // .155 + .010 = .165 is the least, and as much room above it as a spacer may be off to both sides: .175
    expect(tight && told(tight)).toBe('Bracket’s side play: 0.165 to 0.175, gap, floatRead');
    const caliper = ask('front-one-disc', { float: '.162', padWear: '.155' }, { slides: 'caliper' })[1];
    expect(caliper && told(caliper)).toBe('Bracket’s side play: 0.157 to 0.167, gap, floatRead');
  });

  test('with two discs has each bracket and each disc by its side; the right float stands as the left one', () => {
    const offers = measured(ask('front-two-discs', { leftFloat: '.010' }));
    expect(offers).toContain('Left bracket’s side play: 0.005 to 0.015, gap, leftFloatRead');
    expect(offers).toContain('Right bracket’s side play: 0.005 to 0.015, gap, rightFloatRead');
    expect(offers).toContain('Right disc’s outer face to its slot: 0.005 to , gap, rightDiscOutsideRead');
  });

  test('with a sprocket has its line; a drum has no disc, a trailer hub no two sides', () => {
    expect(measured(ask('rear-sprocket', { float: '.010', sprocket: '1' })).at(-1)).toBe(
      'Sprocket line:  to 0.03, gap',
    );
    expect(measured(ask('drum', {}))).toEqual([
      'Wheel centre, difference of the two sides:  to 0.06, gap, centreRead',
    ]);
    expect(measured(ask('trailer-hub', {}))).toEqual([]);
  });
});
