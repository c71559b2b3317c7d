import { describe, expect, test } from 'vitest';
import {
  floatMm,
  isLess,
  isMore,
  lengthOf,
  sameLength,
  toText,
} from '../../../../src/engine/length/length.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import { checksOfTaper } from '../../../../src/engine/worksheets/taper/checks-of-taper.ts';
import { cutsOfTaper } from '../../../../src/engine/worksheets/taper/cuts-of-taper.ts';
import { blockSets } from '../../../../src/engine/worksheets/taper/tables/gauge-block-sets.ts';
import { standardTaper } from '../../../../src/engine/worksheets/taper/tables/standard-tapers.ts';
import { sayBeside, sayTaperRefusal } from '../../../../src/engine/worksheets/taper/say-taper.ts';
import { taper, type TaperQuestion } from '../../../../src/engine/worksheets/taper/taper.ts';

const exactly = (text: string) => typedEstimate(lengthOf(text));

const question = (more: Partial<TaperQuestion> = {}): TaperQuestion => ({
  known: { by: 'diameters', large: exactly('.750 in'), small: exactly('.650 in') },
  length: exactly('1.200 in'),
  side: 'outside',
  within: lengthOf('.001 in'),
  withinFrom: 'common practice, no source',
  mateWithin: lengthOf('.0005 in'),
  mateWithinFrom: 'common practice, no source',
  sineBar: lengthOf('5 in'),
  onHand: blockSets['inch-81'],
  travel: lengthOf('1 in'),
  ...more,
});

function answer(more: Partial<TaperQuestion> = {}) {
  const found = taper(question(more));
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
}

const dial = { reads: 'diameter', graduation: lengthOf('.001 in') } as const;

describe('set-over of the tailstock', () => {
  const aFoot = {
    known: {
      by: 'slope',
      large: exactly('4 in'),
      slope: { rise: lengthOf('1 in'), over: lengthOf('12 in') },
    },
    length: exactly('30 in'),
    between: lengthOf('36 in'),
  } as const;

  test('1 in a foot on work three feet long is half of three inches (Rose, Modern Machine-Shop Practice, 1888)', () => {
    const { whole } = answer(aFoot).setOver;
    // By the sine, as the work turns about its centres: 36 / √(24² + 1) = 1.4987; the book's tangent is .09 % more.
    expect(floatMm(whole?.by ?? lengthOf('0 in')) / 25.4).toBeCloseTo(36 / Math.sqrt(577), 7);
    expect(floatMm(whole?.by ?? lengthOf('0 in')) / 25.4 / 1.5).toBeGreaterThan(0.999);
  });

  test('goes by the whole work, not by the taper’s own length', () => {
    const short = answer({ between: lengthOf('1.2 in') }).setOver.whole;
    const long = answer({ between: lengthOf('12 in') }).setOver.whole;
    if (!short || !long) throw new Error('both are between centres');
    expect(floatMm(long.by) / floatMm(short.by)).toBeCloseTo(10, 6);
  });

  test('is not offered where the centres would bear on an edge', () => {
    expect(answer().setOver.isTooSteep).toBe(false);
    const steep = { by: 'angle', large: exactly('1 in'), includedDegrees: 20 } as const;
    expect(answer({ known: steep }).setOver.isTooSteep).toBe(true);
  });
});

test('an indicator over an inch of the compound reads the sine: .100/1.200 stands at atan 1/24, sine 1/√577', () => {
  expect(floatMm(answer().indicator.reads)).toBeCloseTo(25.4 / Math.sqrt(577), 6);
  // The slant of the taper: 1.2 · √577 / 24.
  expect(floatMm(answer().slant)).toBeCloseTo((1.2 * 25.4 * Math.sqrt(577)) / 24, 6);
});

describe('held against a taper of a standard', () => {
  const mate = standardTaper('morse-3');
  const morse = (small: string, tool?: string) =>
    answer({
      mate,
      known: {
        by: 'diameters',
        large: typedEstimate(
          lengthOf('.938 in'),
          usualTools.find(({ id }) => id === tool),
        ),
        small: typedEstimate(
          lengthOf(`${small} in`),
          usualTools.find(({ id }) => id === tool),
        ),
      },
      length: exactly('3-3/16 in'),
    }).mate;

  test('its own ends fit; four thou more over the length don’t', () => {
    expect(morse('.778')?.verdict.kind).toBe('good');
    expect(morse('.774')?.verdict).toMatchObject({ kind: 'no-good', way: 'over' });
    expect(sayBeside({ taper: mate ?? failed(), off: morse('.774')?.off ?? failed() }, 'in')).toBe(
      '.004 steeper than Morse 3',
    );
  });

  test('calipers can’t tell it, a micrometer can', () => {
    expect(morse('.778', 'digital-caliper')?.verdict.kind).toBe('too-close');
    expect(morse('.778', 'micrometer-0-1')?.verdict.kind).toBe('good');
  });

  test('without one the nearest by name is said', () => {
    const { nearest } = answer({
      known: { by: 'diameters', large: exactly('.938 in'), small: exactly('.778 in') },
      length: exactly('3-3/16 in'),
    });
    expect(nearest.taper.name).toBe('Morse 3');
  });
});

describe('cuts', () => {
  test('outside: plain to the big end, then at the small end by the compound, from the one to the other', () => {
    const q = question({ blank: exactly('.875 in') });
    const [way] = cutsOfTaper(q, answer(q), dial);
    expect(
      way?.offers.map(({ of, present, target }) => [of, present && toText(present), toText(target)]),
    ).toEqual([
      ['outside', toText(lengthOf('.875 in')), toText(lengthOf('.750 in'))],
      ['outside', toText(lengthOf('.750 in')), toText(lengthOf('.650 in'))],
    ]);
    const [plain, tapered] = way?.offers ?? [];
    expect(plain?.compoundDegrees).toBeUndefined();
    expect(tapered?.compoundDegrees).toBeCloseTo((Math.atan(1 / 24) * 180) / Math.PI, 9);
  });

  test('a bore: plain to the small end, then out to the mouth', () => {
    const q = question({ side: 'bore' });
    const [way] = cutsOfTaper(q, answer(q), dial);
    expect(way?.offers.map(({ of, target }) => [of, toText(target)])).toEqual([
      ['bore', toText(lengthOf('.650 in'))],
      ['bore', toText(lengthOf('.750 in'))],
    ]);
  });

  test('every target lies inside its limits, on any dial', () => {
    for (const side of ['outside', 'bore'] as const)
      for (const reads of ['diameter', 'radius'] as const)
        for (const graduation of ['.001 in', '0.02 mm']) {
          const q = question({ side });
          for (const { target, lower, upper } of cutsOfTaper(q, answer(q), {
            reads,
            graduation: lengthOf(graduation),
          }).flatMap(({ offers }) => offers))
            expect(isLess(target, lower) || isMore(target, upper)).toBe(false);
        }
  });

  test('one that comes to a point is cut down to it by eye: no size of nothing is offered', () => {
    const q = question({
      known: {
        by: 'slope',
        large: exactly('1 in'),
        slope: { rise: lengthOf('1 in'), over: lengthOf('1 in') },
      },
      length: exactly('1 in'),
    });
    expect(cutsOfTaper(q, answer(q), dial).flatMap(({ offers }) => offers)).toHaveLength(1);
  });
});

test('checks: the size half-way down is half-way between the ends, and the growth is that of the taper it has to fit', () => {
  const q = question({ mate: standardTaper('morse-3') });
  const [size, growth] = checksOfTaper(q, answer(q), 'in');
  // (.750 + .650) / 2 = .700, ±.001
  expect(size?.limits.lower && sameLength(size.limits.lower, lengthOf('.699 in'))).toBe(true);
  // 1.2 / 19.922 = .060235, ±.0005
  expect(floatMm(growth?.limits.upper ?? failed()) / 25.4).toBeCloseTo(1.2 / 19.922 + 0.0005, 6);
});

test('places and lengths that can’t be are said with their figures', () => {
  const refusal = (more: Partial<TaperQuestion>) => {
    const found = taper(question(more));
    return found.ok ? '' : sayTaperRefusal(found.refusal, 'in');
  };
  expect(refusal({ at: lengthOf('1.3 in') })).toBe(
    '1.300 in from the big end is past the taper, 1.200 in long.',
  );
  expect(refusal({ between: lengthOf('1 in') })).toBe(
    'The whole work, 1.000 in, is shorter than its taper, 1.200 in.',
  );
});

function failed(): never {
  throw new Error('not there');
}
