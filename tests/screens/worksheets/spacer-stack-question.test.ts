import { describe, expect, test } from 'vitest';
import { mean, typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { decimalText, isNegative, lengthOf } from '../../../src/engine/length/length.ts';
import { stackWithShims } from '../../../src/engine/worksheets/spacer-stack/shims-in-stack.ts';
import { spacerStack } from '../../../src/engine/worksheets/spacer-stack/spacer-stack.ts';
import { stackQuestion, stackWant } from '../../../src/engine/worksheets/spacer-stack/question.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import {
  featureOf,
  is,
  ofFeature,
  partOf,
  readingOf,
  struckOut,
  tool,
  typedSize,
  worksheetOf,
} from './worksheet-for-test.ts';

const questionOf = (data: WorksheetData) => stackQuestion(givenOf(data));

const sizes = { fixed: typedSize('.970') };
const parts = { a: partOf(1, typedSize('.480')), b: partOf(2, typedSize('.478')) };

describe('what a stack worksheet asks', () => {
  test('is the sleeve and its parts from left to right, however they were added', () => {
    const swapped = { b: partOf(2, typedSize('.478')), a: partOf(1, typedSize('.480')) };
    const question = questionOf(worksheetOf('spacer-stack', { sizes, parts: swapped }));
    expect(question?.parts.map((part) => part.name)).toEqual(['part 1', 'part 2']);
    expect(question && is(mean(question.fixed.length), '.97 in')).toBe(true);
    // .970 − (.480 + .478) = .012
    expect(question && is(spacerStack(question).gap, '.012 in')).toBe(true);
  });

  test.each([
    { without: 'the sleeve', given: { parts } },
    { without: 'a part', given: { sizes } },
    { without: 'the size of every part', given: { sizes, parts: { ...parts, c: partOf(3) } } },
  ])('can’t be asked without $without', ({ given }) => {
    expect(questionOf(worksheetOf('spacer-stack', given))).toBeUndefined();
  });

  test('can’t be asked once every reading of a part is struck out; the part is still listed', () => {
    const data = worksheetOf('spacer-stack', {
      sizes,
      parts: { a: partOf(1, ofFeature('spacer')) },
      features: [featureOf('spacer', 'length')],
      readings: [readingOf('spacer', '.480', { tool: tool('digital-caliper'), ...struckOut })],
    });
    expect(questionOf(data)).toBeUndefined();
    expect(givenOf(data).parts.map(({ name, size }) => [name, size])).toEqual([['part 1', undefined]]);
  });

  test('takes a spacer at its thickest place: that is where it binds', () => {
    const data = worksheetOf('spacer-stack', {
      sizes,
      parts: { a: partOf(1, ofFeature('spacer')) },
      features: [featureOf('spacer', 'length')],
      readings: [
        readingOf('spacer', '.4800', { tool: tool('digital-caliper'), place: 'top' }),
        readingOf('spacer', '.4810', { tool: tool('digital-caliper'), place: 'bottom' }),
      ],
    });
    const [part] = questionOf(data)?.parts ?? [];
    expect(part && is(mean(part.thickness), '.481 in')).toBe(true);
  });

  describe('of a sleeve of .970 at one end and .967 at the other', () => {
    const micrometer = tool('micrometer-0-1');
    const asked = (want: string) =>
      questionOf(
        worksheetOf('spacer-stack', {
          sizes: { fixed: ofFeature('sleeve') },
          choices: { want },
          parts: { a: partOf(1, typedSize('.960', micrometer)) },
          features: [featureOf('sleeve', 'length')],
          readings: [
            readingOf('sleeve', '.970', { tool: micrometer, place: 'top' }),
            readingOf('sleeve', '.967', { tool: micrometer, place: 'bottom' }),
          ],
        }),
      );

    test.each(['float', 'end-play'])('%s goes by the short end: .967 − .960 is .007', (want) => {
      const question = asked(want);
      expect(question && is(spacerStack(question).gap, '.007 in')).toBe(true);
    });

    test('.007 is under a wanted .008: no good, where the long end would have said good', () => {
      const question = asked('float');
      expect(question?.want.limits.lower && is(question.want.limits.lower, '.008 in')).toBe(true);
      expect(question && spacerStack(question).verdict).toMatchObject({ kind: 'no-good', way: 'under' });
    });

    test('a clamp goes by what its parts hold where they are thin, if that may be too little', () => {
      const clamp = (fixed: string) =>
        questionOf(
          worksheetOf('spacer-stack', {
            sizes: { fixed: typedSize(fixed, micrometer) },
            choices: { want: 'clamp' },
            parts: { a: partOf(1, ofFeature('tapered')) },
            features: [featureOf('tapered', 'length')],
            readings: [
              readingOf('tapered', '.960', { tool: micrometer, place: 'top' }),
              readingOf('tapered', '.956', { tool: micrometer, place: 'bottom' }),
            ],
          }),
        );
      // .956 − .955 = .001 of clamp, wanted .002 at least; the thick side alone would have said .005, good
      const loose = clamp('.955');
      expect(loose && spacerStack(loose).verdict).toMatchObject({ kind: 'no-good', way: 'under' });
      // .956 − .953 = .003: it holds there too, and the thick side's .007 is what is judged
      const tight = clamp('.953');
      expect(tight && is(spacerStack(tight).gap, '-.007 in')).toBe(true);
    });

    test('a shim for a clamp that is thin at one side leaves its thick side under the most too', () => {
      const question = questionOf(
        worksheetOf('spacer-stack', {
          sizes: { fixed: typedSize('.9200', micrometer) },
          choices: { want: 'clamp' },
          parts: { a: partOf(1, ofFeature('tapered')), b: partOf(2, typedSize('.300', micrometer)) },
          features: [featureOf('tapered', 'length')],
          readings: [
            readingOf('tapered', '.6250', { tool: micrometer, place: 'top' }),
            readingOf('tapered', '.6212', { tool: micrometer, place: 'bottom' }),
          ],
        }),
      );
      // Thin .9212 − .920 = .0012, thick .005, each ±.00026: .002 to .008 leaves .0008 + .00026 to .003 − .00026.
      const shim = question && spacerStack(question).shim;
      expect(shim && [shim.lower, shim.upper].map((one) => decimalText(one, 'in', 4))).toEqual([
        '0.0011',
        '0.0027',
      ]);
      // .006 in the drawer: .0072 where it is thin, .011 where it is thick.
      const thickness = typedEstimate(lengthOf('.006 in'));
      const picked = [{ piece: { id: 'a', name: 'a', thickness, count: 1 }, count: 1 }];
      expect(question && stackWithShims(question, { picked }).verdict).toMatchObject({
        kind: 'no-good',
        way: 'over',
      });
    });

    test('a clamp goes by the long end: .970 − .960 leaves .010 to close', () => {
      const question = asked('clamp');
      expect(question && is(spacerStack(question).gap, '.010 in')).toBe(true);
    });
  });

  test('takes the feeler’s reading of the gap where there is one', () => {
    const question = questionOf(
      worksheetOf('spacer-stack', { sizes: { ...sizes, direct: typedSize('.011') }, parts }),
    );
    expect(question?.direct && is(mean(question.direct), '.011 in')).toBe(true);
  });

  test('needs no sleeve where the gap was read: the spacer is faced by that', () => {
    // .004 read, .010 wanted: .006 off .480
    const question = questionOf(
      worksheetOf('spacer-stack', { sizes: { direct: typedSize('.004') }, parts: { a: parts.a } }),
    );
    expect(question && is(mean(question.fixed.length), '.484 in')).toBe(true);
    const trim = question && spacerStack(question).trims[0]?.result;
    expect(trim?.ok && is(trim.value.to, '.474 in')).toBe(true);
  });

  test.each([
    // .008 to .012 is wanted; the indicator is known to less than .0005
    { places: ['.0090', '.0110'], rules: '.009 in', kind: 'good' },
    { places: ['.0090', '.0135'], rules: '.0135 in', kind: 'no-good' },
    { places: ['.0060', '.0135'], rules: '.006 in', kind: 'no-good' },
  ])('judges a gap read at $places by $rules', ({ places, rules, kind }) => {
    const question = questionOf(
      worksheetOf('spacer-stack', {
        sizes: { ...sizes, direct: ofFeature('gap') },
        parts,
        features: [featureOf('gap', 'gap')],
        readings: places.map((size, index) =>
          readingOf('gap', size, { tool: tool('test-indicator'), place: index === 0 ? 'top' : 'bottom' }),
        ),
      }),
    );
    expect(question?.direct && is(mean(question.direct), rules)).toBe(true);
    expect(question && spacerStack(question).verdict.kind).toBe(kind);
  });

  test.each([
    // .002 to .008 proud is wanted
    { places: ['.0030', '.0070'], rules: '-.003 in', kind: 'good' },
    { places: ['.0040', '.0100'], rules: '-.010 in', kind: 'no-good' },
  ])('judges parts that stand $places proud by $rules', ({ places, rules, kind }) => {
    const question = questionOf(
      worksheetOf('spacer-stack', {
        sizes: { ...sizes, directProud: ofFeature('proud') },
        choices: { want: 'clamp' },
        parts,
        features: [featureOf('proud', 'depth')],
        readings: places.map((size, index) =>
          readingOf('proud', size, { tool: tool('micrometer-0-1'), place: index === 0 ? 'top' : 'bottom' }),
        ),
      }),
    );
    expect(question?.direct && is(mean(question.direct), rules)).toBe(true);
    expect(question && spacerStack(question).verdict.kind).toBe(kind);
  });

  test('steps a length by one graduation of the dial, whether it reads radius or diameter', () => {
    expect(is(questionOf(worksheetOf('spacer-stack', { sizes, parts }))?.step, '.001 in')).toBe(true);
  });
});

test.each([
  { unit: 'in', least: '.020 in' },
  { unit: 'mm', least: '0.5 mm' },
] as const)('a part is faced no shorter than $least in a shop that works in $unit', ({ unit, least }) => {
  const question = questionOf(worksheetOf('spacer-stack', { sizes, parts, unit }));
  expect(is(question?.usualLeast, least)).toBe(true);
});

describe('what the stack is wanted to do', () => {
  const wantWith = (given: Parameters<typeof worksheetOf>[1]) =>
    stackWant(givenOf(worksheetOf('spacer-stack', given)));

  test.each([
    // Common practice, no source.
    { want: 'float', lower: '.008 in', upper: '.012 in', aim: '.010 in' },
    { want: 'end-play', lower: '.002 in', upper: '.006 in', aim: '.004 in' },
    { want: 'clamp', lower: '.002 in', upper: '.008 in', aim: '.004 in' },
  ])('usually: $want of $lower to $upper, best $aim', ({ want, lower, upper, aim }) => {
    const { kind, limits, aim: best } = wantWith({ choices: { want } });
    expect(kind).toBe(want);
    expect(is(limits.lower, lower) && is(limits.upper, upper) && is(best, aim)).toBe(true);
  });

  test('is a float where nothing was said', () => {
    expect(wantWith({}).kind).toBe('float');
  });

  test('in a metric shop is round in millimetres', () => {
    const { limits, aim } = wantWith({ unit: 'mm' });
    expect(is(limits.lower, '0.20 mm') && is(limits.upper, '0.30 mm') && is(aim, '0.25 mm')).toBe(true);
  });

  test('with both limits one’s own aims half-way between them', () => {
    const { limits, aim } = wantWith({ sizes: { lower: typedSize('.010'), upper: typedSize('.016') } });
    // (.010 + .016) / 2
    expect(is(aim, '.013 in')).toBe(true);
    expect(limits.source).toBe('your own limits');
  });

  test('with only a least of one’s own keeps as much room above it as is usual', () => {
    const { limits, aim } = wantWith({ sizes: { lower: typedSize('.010') } });
    // .010 + (.012 − .008) = .014, which is more than the usual .012; half-way .012
    expect(is(limits.lower, '.010 in') && is(limits.upper, '.014 in') && is(aim, '.012 in')).toBe(true);
  });

  test('with only a most of one’s own keeps as much room below it as is usual', () => {
    const { limits, aim } = wantWith({ sizes: { upper: typedSize('.006') } });
    // .006 − .004 = .002, which is less than the usual .008; half-way .004
    expect(is(limits.lower, '.002 in') && is(limits.upper, '.006 in') && is(aim, '.004 in')).toBe(true);
  });

  test('with a most of .003 and no least never counts parts that stand proud as a float', () => {
    const { limits } = wantWith({ sizes: { upper: typedSize('.003') } });
    // .003 − .004 would be .001 of interference.
    expect(isNegative(limits.lower)).toBe(false);
    // .9585 − (.480 + .478 + .001) = −.0005: the bracket is clamped, and that is not what was wanted.
    const question = questionOf(
      worksheetOf('spacer-stack', {
        sizes: { fixed: typedSize('.9585'), upper: typedSize('.003') },
        parts: { ...parts, c: partOf(3, typedSize('.001')) },
      }),
    );
    expect(question && spacerStack(question).verdict.kind).toBe('no-good');
  });

  test.each([
    { want: 'float', lower: '.001 in' }, // a third of .003: never down to nothing
    { want: 'clamp', lower: '.001 in' },
    { want: 'end-play', lower: '0 in' }, // end play may be nothing
  ])('a $want of .003 at the most is at least $lower', ({ want, lower }) => {
    const { limits } = wantWith({ choices: { want }, sizes: { upper: typedSize('.003') } });
    expect(is(limits.lower, lower)).toBe(true);
  });

  test('with an aim of one’s own aims there', () => {
    expect(is(wantWith({ sizes: { aim: typedSize('.009') } }).aim, '.009 in')).toBe(true);
  });
});
