import { describe, expect, test } from 'vitest';
import { mean } from '../../../../src/engine/reading/estimate.ts';
import { holeAndPin } from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import * as engine from '../../../../src/engine/worksheets/hole-and-pin/question.ts';
import { holeAndPinWorksheet } from '../../../../src/engine/worksheets/hole-and-pin/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { setAside, type WorksheetData } from '../../../../src/screens/worksheets/worksheet-data.ts';
import {
  featureOf,
  is,
  ofFeature,
  readingOf,
  struckOut,
  tool,
  typedSize,
  worksheetOf,
} from '../worksheet-for-test.ts';

const holeAndPinQuestion = (data: WorksheetData) => engine.holeAndPinQuestion(givenOf(data));
const wantedClearance = (data: WorksheetData) => engine.wantedClearance(givenOf(data));

const sizes = { bore: typedSize('.4487'), pin: typedSize('.4375') };
const choices = { joint: 'located' };

describe('what a hole-and-pin worksheet asks', () => {
  test('is bore, pin and how they run', () => {
    const question = holeAndPinQuestion(worksheetOf('hole-and-pin', { sizes, choices }));
    expect(question?.joint).toBe('located');
    expect(question && is(mean(question.bore.loosest), '.4487 in')).toBe(true);
    expect(question && is(mean(question.pin.loosest), '.4375 in')).toBe(true);
    expect(question).not.toHaveProperty('ownLimits');
    expect(question).not.toHaveProperty('arm');
    expect(question).not.toHaveProperty('pinThread');
  });

  test.each([
    { without: 'the bore', given: { sizes: { pin: sizes.pin }, choices } },
    { without: 'the pin', given: { sizes: { bore: sizes.bore }, choices } },
    { without: 'how it runs', given: { sizes, choices: {} } },
    { without: 'a way to run that is known', given: { sizes, choices: { joint: 'wobbles' } } },
  ])('can’t be asked without $without', ({ given }) => {
    expect(holeAndPinQuestion(worksheetOf('hole-and-pin', given))).toBeUndefined();
  });

  test('can’t be asked once every reading of the bore is struck out', () => {
    const data = worksheetOf('hole-and-pin', {
      sizes: { bore: ofFeature('bore'), pin: sizes.pin },
      choices,
      features: [featureOf('bore', 'bore')],
      readings: [readingOf('bore', '.4487', struckOut)],
    });
    expect(holeAndPinQuestion(data)).toBeUndefined();
  });

  test('takes the readings that are left when one is struck out', () => {
    const data = worksheetOf('hole-and-pin', {
      sizes: { bore: ofFeature('bore'), pin: sizes.pin },
      choices,
      features: [featureOf('bore', 'bore')],
      readings: [readingOf('bore', '.4950', struckOut), readingOf('bore', '.4487')],
    });
    const question = holeAndPinQuestion(data);
    expect(question && is(mean(question.bore.tightest), '.4487 in')).toBe(true);
  });

  test('takes the true diameter of a bore read across jaw flats', () => {
    // √(.48² + .14²) = √(.2304 + .0196) = √.25 = .5
    const jaws = { ...tool('digital-caliper-inside'), jawWidth: lengthOf('.140 in') };
    const data = worksheetOf('hole-and-pin', {
      sizes: { bore: ofFeature('bore'), pin: sizes.pin },
      choices,
      features: [featureOf('bore', 'bore')],
      readings: [readingOf('bore', '.4800', { tool: jaws })],
    });
    const question = holeAndPinQuestion(data);
    expect(question && is(mean(question.bore.tightest), '.5 in')).toBe(true);
  });

  // Own limits .0010 to .0030: a slop that is inside at one place says nothing of the other.
  test.each([
    { places: ['.0001', '.0020'], is: 'no-good' },
    { places: ['.0020', '.0055'], is: 'no-good' },
    { places: ['.0018', '.0022'], is: 'good' },
  ])('holds slop read as $places against both limits: $is', ({ places, is: kind }) => {
    const data = worksheetOf('hole-and-pin', {
      sizes: { ...sizes, slop: ofFeature('slop'), lower: typedSize('.0010'), upper: typedSize('.0030') },
      choices: { joint: 'turns' },
      features: [featureOf('slop', 'gap')],
      readings: places.map((typed, at) =>
        readingOf('slop', typed, { place: at === 0 ? 'top' : 'bottom', tool: tool('test-indicator') }),
      ),
    });
    const question = holeAndPinQuestion(data);
    expect(question && holeAndPin(question).verdict.kind).toBe(kind);
  });

  test('sets slop aside that was read before the pin was another one', () => {
    const slop = { ...typedSize('.0005'), at: 5 };
    const given = { sizes: { ...sizes, slop }, choices };
    const before = worksheetOf('hole-and-pin', given);
    expect(holeAndPinQuestion(before)?.direct?.kind).toBe('slop');
    const partsChanged = { at: 6, why: 'pin of another size' };
    const after = { ...before, worksheet: { ...before.worksheet, partsChanged } };
    expect(holeAndPinQuestion(after)).not.toHaveProperty('direct');
    expect(setAside(after, ['rockInAll', 'slop'])).toMatchObject({
      name: 'slop',
      why: 'pin of another size',
    });
  });

  test('names the bolt, its faces, its shank and the metal around it', () => {
    const data = worksheetOf('hole-and-pin', {
      sizes: {
        ...sizes,
        wall: typedSize('.200'),
        leastWall: typedSize('.100'),
        thickness: typedSize('1/2'),
      },
      choices: {
        ...choices,
        thread: '7/16-20 UNF',
        facesCarry: 'yes',
        shankPasses: 'no',
        partMetal: 'low-carbon-steel',
      },
    });
    const question = holeAndPinQuestion(data);
    expect(question).toMatchObject({
      pinThread: '7/16-20 UNF',
      clampedFacesCarry: true,
      shankPasses: false,
      metal: 'steel',
    });
    expect(is(question?.wall, '.2 in') && is(question?.thickness, '.5 in')).toBe(true);
    expect(is(question?.leastWall, '.1 in')).toBe(true);
  });
});

describe('a bolt of which nobody said how it runs', () => {
  const bolt = worksheetOf('hole-and-pin', { sizes, choices: { thread: '7/16-20 UNF' } });

  test('is taken to be held by its nut, and that is said', () => {
    expect(holeAndPinQuestion(bolt)?.joint).toBe('located');
    expect(holeAndPinWorksheet.assumed(givenOf(bolt))).toEqual([
      { field: 'joint', words: 'held by its nut' },
    ]);
    expect(holeAndPinWorksheet.nextNeed(givenOf(bolt))).toBeUndefined();
  });

  test('runs as it was said to, once it was', () => {
    const turns = worksheetOf('hole-and-pin', { sizes, choices: { thread: '7/16-20 UNF', joint: 'turns' } });
    expect(holeAndPinQuestion(turns)?.joint).toBe('turns');
    expect(holeAndPinWorksheet.assumed(givenOf(turns))).toEqual([]);
  });

  test('a plain pin is asked about', () => {
    const plain = worksheetOf('hole-and-pin', { sizes });
    expect(holeAndPinQuestion(plain)).toBeUndefined();
    expect(holeAndPinWorksheet.nextNeed(givenOf(plain))).toBe('joint');
  });
});

describe('where the limits come from', () => {
  const systemOf = (fitSystem: string) =>
    holeAndPinQuestion(worksheetOf('hole-and-pin', { sizes, choices: { ...choices, fitSystem } }))?.fitSystem;

  test('is common practice, the metric class or the inch class', () => {
    expect(systemOf('usual')).toBeUndefined();
    expect(systemOf('ISO 286')).toBe('iso');
    expect(systemOf('ANSI B4.1')).toBe('ansi');
  });

  test('is named by the wanted clearance: 7/16 = 11.1 mm by H8/h7, 0 to 27 + 18 µm', () => {
    const limits = wantedClearance(
      worksheetOf('hole-and-pin', { sizes, choices: { ...choices, fitSystem: 'ISO 286' } }),
    );
    expect(limits?.source).toBe('ISO 286-1, H8/h7');
    expect(is(limits?.upper, '.045 mm')).toBe(true);
  });
});

describe('the place of the hole', () => {
  const offBy = (holeOff: string | undefined, by: string | undefined) =>
    holeAndPinQuestion(
      worksheetOf('hole-and-pin', {
        sizes: { ...sizes, ...(by !== undefined && { offBy: typedSize(by) }) },
        choices: { ...choices, ...(holeOff !== undefined && { holeOff }) },
      }),
    )?.offBy;

  test('is right while nobody says otherwise', () => {
    expect(offBy(undefined, undefined)).toBeUndefined();
    expect(offBy(undefined, '0')).toBeUndefined();
    expect(offBy('no', '.015')).toBeUndefined();
  });

  test('is off by what was measured, or by nobody knows what', () => {
    expect(is(offBy('yes', '.015'), '.015 in')).toBe(true);
    expect(is(offBy(undefined, '.015'), '.015 in')).toBe(true);
    expect(is(offBy('yes', undefined), '0 in')).toBe(true);
  });
});

describe('the metals', () => {
  const withMetal = (partMetal: string) =>
    holeAndPinQuestion(
      worksheetOf('hole-and-pin', {
        sizes,
        choices: { ...choices, partMetal, bushingMetal: 'bearing-bronze' },
      }),
    );

  test('are the part’s and the bushing’s', () => {
    expect(withMetal('alloy-steel')).toMatchObject({
      partMetal: { id: 'alloy-steel' },
      bushingMetal: { id: 'bearing-bronze' },
    });
  });

  test.each([
    { part: 'aluminium-7075', insert: 'aluminium' },
    { part: 'alloy-steel', insert: 'steel' },
    { part: 'stainless-303', insert: 'steel' },
    { part: 'bearing-bronze', insert: undefined },
  ])('of $part give an insert’s drill for $insert', ({ part, insert }) => {
    expect(withMetal(part)?.metal).toBe(insert);
  });
});

describe('the arm', () => {
  const arm = { boreLength: typedSize('2.5'), reach: typedSize('12') };

  test('needs the bore’s length and the reach', () => {
    const question = holeAndPinQuestion(
      worksheetOf('hole-and-pin', { sizes: { ...sizes, ...arm }, choices }),
    );
    expect(is(question?.arm?.boreLength, '2.5 in') && is(question?.arm?.reach, '12 in')).toBe(true);
    expect(question?.arm).not.toHaveProperty('bellMouth');
  });

  test.each(['boreLength', 'reach'] as const)('is left out with only its %s', (name) => {
    const data = worksheetOf('hole-and-pin', { sizes: { ...sizes, [name]: arm[name] }, choices });
    expect(holeAndPinQuestion(data)?.arm).toBeUndefined();
  });
});

describe('the clearance that is wanted', () => {
  test('is the usual one of the joint and the pin’s size', () => {
    // A bolt that doesn't turn, over 1/4 to 1/2 in: 0 to .0020 (common practice, no source).
    const limits = wantedClearance(worksheetOf('hole-and-pin', { sizes, choices }));
    expect(is(limits?.lower, '0 in') && is(limits?.upper, '.0020 in')).toBe(true);
  });

  test('is known from the bore alone, before the pin is read', () => {
    const limits = wantedClearance(worksheetOf('hole-and-pin', { sizes: { bore: sizes.bore }, choices }));
    expect(is(limits?.upper, '.0020 in')).toBe(true);
  });

  test.each(['lower', 'upper'] as const)('is one’s own where only the %s limit is given', (side) => {
    const data = worksheetOf('hole-and-pin', {
      sizes: { ...sizes, [side]: typedSize('.0010') },
      choices,
    });
    const limits = wantedClearance(data);
    expect(is(limits?.[side], '.001 in')).toBe(true);
    expect(limits).not.toHaveProperty(side === 'lower' ? 'upper' : 'lower');
    expect(limits?.source).toBe('your own limits');
    expect(holeAndPinQuestion(data)?.ownLimits).toEqual(limits);
  });

  test('below zero is a press', () => {
    const data = worksheetOf('hole-and-pin', {
      sizes: { ...sizes, lower: typedSize('-.0010'), upper: typedSize('-.0003') },
      choices,
    });
    const limits = wantedClearance(data);
    expect(is(limits?.lower, '-.001 in') && is(limits?.upper, '-.0003 in')).toBe(true);
  });

  test('is not known without how it runs', () => {
    expect(wantedClearance(worksheetOf('hole-and-pin', { sizes }))).toBeUndefined();
  });
});
