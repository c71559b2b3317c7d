import { cleanup, render } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { sayCompound } from '../../../../src/engine/cut/say-compound.ts';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { taperWorksheet } from '../../../../src/engine/worksheets/taper/worksheet.ts';
import { roundPartsOf } from '../../../../src/screens/sheet/round-parts.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { newCuts } from '../../../../src/screens/worksheets/new-cuts.ts';
import { drawTaper } from '../../../../src/screens/worksheets/taper/taper-drawing.tsx';
import { is, tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

afterEach(cleanup);

type Given = NonNullable<Parameters<typeof worksheetOf>[1]>;

const ends = { large: typedSize('.750'), small: typedSize('.650'), length: typedSize('1.200') };
const dataOf = (more: Given = {}) =>
  worksheetOf('taper', {
    ...more,
    sizes: { ...ends, ...more.sizes },
    choices: { by: 'diameters', ...more.choices },
  });
const accountOf = (more: Given = {}) => taperWorksheet.account(givenOf(dataOf(more)));
const rowsOf = (more: Given, title: string) =>
  Object.fromEntries(
    blocksOf(accountOf(more), 'rows')
      .filter((block) => block.title === title)
      .flatMap(({ rows }) => rows.map(({ what, figure, more: beside }) => [what, [figure, beside]])),
  );

describe('what is asked', () => {
  test.each([
    ['diameters', ['large', 'small', 'length']],
    ['named', ['named', 'large', 'length']],
    ['per-foot', ['perFoot', 'large', 'length']],
    ['one-in', ['oneIn', 'large', 'length']],
    ['angle', ['angle', 'large', 'length']],
    ['rollers', ['roller', 'block', 'overLow', 'overHigh', 'length']],
    ['balls', ['ballLarge', 'ballSmall', 'toLarge', 'toSmall', 'length']],
  ])('known by %s: %j', (by, asked) => {
    const given = givenOf(worksheetOf('taper', { choices: { by } }));
    expect(taperWorksheet.needs(given)).toEqual(['by', ...asked]);
  });

  test('a taper that is named brings the size at its gauge line along', () => {
    const given = givenOf(worksheetOf('taper'));
    // ISO 296, Morse 3: 23.825 mm
    expect(taperWorksheet.besides(given, 'named', 'morse-3')).toEqual({ sizes: { large: '23.825 mm' } });
    expect(taperWorksheet.besides(given, 'named', 'one-in-50')).toEqual({});
  });
});

describe('what is said', () => {
  test('the compound leads, then indicator, tailstock and sine bar', () => {
    expect(blocksOf(accountOf(), 'lead')[0]?.figure).toBe('2.386°');
    // 1/√577 = .0416 over an inch, and as much for each inch between centres; 5 · 48/577 = .4159
    const rows = rowsOf({}, 'Set it by');
    expect(rows['Indicator']?.[0]).toBe('.0416');
    expect(rows['Tailstock over']?.[1]).toBe('for each 1 in between centers');
    expect(rows['Sine bar']?.[0]).toBe('.4159');
  });

  test('what is read says to what it is known, what is drawn doesn’t', () => {
    expect(blocksOf(accountOf(), 'proof')).toEqual([]);
    const large = typedSize('.750', tool('digital-caliper'));
    const small = typedSize('.650', tool('digital-caliper'));
    expect(blocksOf(accountOf({ sizes: { large, small } }), 'proof')[0]?.sentence).toMatch(
      /^Known to ±\.00\d+ over its length, ±\d\.\d′\.$/,
    );
  });

  test('blocks of the shop’s own, from the drawer', () => {
    const block = (id: string, size: string) => ({
      piece: {
        id,
        kind: 'gauge-block' as const,
        name: 'block',
        material: 'steel',
        createdAt: 0,
        thickness: typedSize(size),
      },
      count: 1,
    });
    const data = {
      ...dataOf({ choices: { blocks: 'drawer' } }),
      drawer: [block('a', '.4'), block('b', '.0159')],
    };
    const rows = blocksOf(taperWorksheet.account(givenOf(data)), 'rows').flatMap((one) => one.rows);
    expect(rows.find(({ what }) => what === 'Sine bar')?.more).toBe('.0159 + .400');
  });
});

test('its tapered cut keeps the angle of the compound, and its words say it at the machine', () => {
  const data = dataOf();
  const [way] = taperWorksheet.cuts(givenOf(data));
  const cuts = way ? newCuts(data, way, []) : [];
  // atan(1/24) = 2.38594°
  expect(cuts.map(({ compoundDegrees }) => compoundDegrees)).toEqual([undefined, '2.38594']);
  expect(sayCompound(2.38594, 'in')[0]?.replaceAll('\u00a0', ' ')).toBe(
    'Compound over 2° 23′ 9″ from the axis.',
  );
});

test('as a round part it is tapered: solid outside, or a bore whose outside is the fitter’s to give', () => {
  const [outside] = roundPartsOf(dataOf());
  expect(is(outside?.outside, '.750 in') && is(outside?.outsideFar, '.650 in')).toBe(true);
  expect(outside?.solid).toBe(true);
  const [bore] = roundPartsOf(dataOf({ choices: { side: 'bore' } }));
  expect(is(bore?.inside, '.750 in') && is(bore?.insideFar, '.650 in')).toBe(true);
  expect(bore?.outside).toBeUndefined();
});

describe('the drawing', () => {
  test.each(['diameters', 'rollers', 'balls'])('%s: stays in its room, whatever is given', (by) => {
    for (const box of [
      { width: 320, height: 114 },
      { width: 390, height: 184 },
    ])
      for (const small of ['.749', '.650', '.1']) {
        const given = givenOf(
          worksheetOf('taper', { sizes: { ...ends, small: typedSize(small) }, choices: { by } }),
        );
        const { container } = render(<svg>{drawTaper(given, box).shapes}</svg>);
        const numbers = [...container.querySelectorAll('path')].flatMap((path) =>
          (path.getAttribute('d') ?? '').match(/-?[\d.]+/g)?.map(Number),
        );
        expect(numbers.length).toBeGreaterThan(0);
        expect(numbers.every((one) => one !== undefined && one >= 0 && one <= box.width)).toBe(true);
        for (const circle of container.querySelectorAll('circle')) {
          const [x, y, radius] = ['cx', 'cy', 'r'].map((name) => Number(circle.getAttribute(name)));
          expect(Number(radius)).toBeGreaterThan(0);
          expect(Number(x) + Number(radius)).toBeLessThanOrEqual(box.width);
          expect(Number(y) + Number(radius)).toBeLessThanOrEqual(box.height);
        }
        cleanup();
      }
  });
});
