import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../src/engine/worksheets/account.ts';
import { isWorksheetKind, worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import { openPageOf } from '../../../src/engine/worksheets/open-page.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { worksheetVerdict } from '../../../src/screens/worksheets/worksheet-verdict.ts';
import { partOf, typedSize, worksheetOf } from './worksheet-for-test.ts';

function page(data: WorksheetData) {
  const { kind } = data.worksheet;
  if (!isWorksheetKind(kind)) throw new Error(`${kind} is no kind of worksheet`);
  const account = worksheets[kind].account(givenOf(data));
  const open = openPageOf(account);
  return {
    verdict: worksheetVerdict(data).found,
    headline: open.headline,
    said: [...open.said, ...open.further],
    asks: blocksOf(account, 'ask').map(({ field }) => field),
  };
}

const acetalPin = { boreMetal: 'low-carbon-steel', pinMetal: 'acetal', joint: 'turns' };

describe('a joint of two metals, hot and cold', () => {
  // 12.720 − 12.700 = .020; at 60 °C less 12.7 · 98.3e-6 · 40 = .050 (.045 to .055: acetal is a range).
  const fit = (choices: Record<string, string>) =>
    worksheetOf('fit', {
      unit: 'mm',
      sizes: { nominal: typedSize('12.7 mm'), bore: typedSize('12.732 mm'), pin: typedSize('12.7 mm') },
      choices: { isoClass: 'H8/f7', ...acetalPin, ...choices },
    });

  test('is good while nobody said how hot it gets', () => {
    expect(page(fit({})).verdict).toBe('good');
  });

  test('that seizes at 60 °C is no good, and says what it needs in the shop', () => {
    const { verdict, headline, said } = page(fit({ hotTemperature: '60' }));
    expect(verdict).toBe('no-good');
    expect(headline).toBe('At 60 °C (140 °F) it seizes.');
    // .032 − (.0550 to .0448)
    expect(said).toContain('Clearance −0.023 to −0.013 at 60 °C (140 °F).');
    expect(said).toContain('In the shop it needs more clearance than 0.056 mm.');
  });

  test('that has more room in the cold stays good, and says how much', () => {
    const { verdict, said } = page(fit({ coldTemperature: '-20' }));
    expect(verdict).toBe('good');
    expect(said).toContain('Clearance 0.077 to 0.087 at −20 °C (−4 °F).');
  });

  test('asks for the metal first where a temperature was said', () => {
    const { asks, verdict } = page(fit({ hotTemperature: '60', pinMetal: '' }));
    expect(asks).toEqual(['pinMetal']);
    expect(verdict).toBe('good');
  });

  test('pressed together comes loose where the outer part grows more', () => {
    // A bearing ring of 47 mm, .030 over its bore of aluminium: at 100 °C 47 · 11.3e-6 · 80 = .042 is gone.
    const ring = worksheetOf('fit', {
      unit: 'mm',
      sizes: { nominal: typedSize('47 mm'), bore: typedSize('46.965 mm'), pin: typedSize('47 mm') },
      choices: {
        joint: 'pressed',
        isoClass: 'P7/h6',
        boreMetal: 'aluminium-6061',
        pinMetal: 'alloy-steel',
        hotTemperature: '100',
      },
    });
    const { headline, said } = page(ring);
    expect(headline).toBe('At 100 °C (212 °F) it comes loose.');
    expect(said).toContain('In the shop it needs more grip than 0.043 mm.');
  });
});

describe('a stack, hot and cold', () => {
  // A steel bracket of 1.000 in on an aluminium sleeve of 1.010 in: at −40 °C the sleeve loses
  // (1.010 · 23.6e-6 − 1.000 · 11.7e-6) · 60 = .00073 in of float.
  const stack = (float: string, choices: Record<string, string>) =>
    worksheetOf('spacer-stack', {
      sizes: { fixed: typedSize(float), lower: typedSize('.0002'), upper: typedSize('.012') },
      choices: { want: 'float', fixedMetal: 'aluminium-6061', partsMetal: 'low-carbon-steel', ...choices },
      parts: { a: partOf(1, typedSize('1.000')) },
    });

  test('keeps its float where there is enough of it', () => {
    const { verdict, said } = page(stack('1.010', { coldTemperature: '-40' }));
    expect(verdict).toBe('good');
    expect(said).toContain('Float .0093 at −40 °F (−40 °C).');
  });

  test('that would seize in the cold is no good', () => {
    const { verdict, headline, said } = page(stack('1.0005', { coldTemperature: '-40' }));
    expect(verdict).toBe('no-good');
    expect(headline).toBe('At −40 °F (−40 °C) it seizes.');
    expect(said).toContain('In the shop it needs more float than .0008.');
  });

  test('of one metal all through keeps its gap', () => {
    const one = { fixedMetal: 'low-carbon-steel', hotTemperature: '60' };
    expect(page(stack('1.0005', one)).verdict).toBe('good');
  });
});

describe('a sleeve between ball bearings, hot', () => {
  // A hub of aluminium, 100 mm between the faces, and a sleeve .03 mm longer of steel: at 60 °C the hub has
  // 100 · 23.6e-6 · 40 − 100.03 · 12.3e-6 · 40 = .0452 mm more, and the nut pulls the inner races together.
  test('of steel in an aluminium hub ends too short', () => {
    const data = worksheetOf('bearing-seat', {
      unit: 'mm',
      sizes: { between: typedSize('100 mm'), sleeve: typedSize('100.03 mm') },
      choices: {
        bearing: 'ball',
        hubMetal: 'aluminium-6061',
        sleeveMetal: 'alloy-steel',
        hotTemperature: '60',
      },
    });
    const { headline, said } = page(data);
    expect(headline).toBe('At 60 °C (140 °F) the nut side-loads the balls.');
    expect(said).toContain('In the shop it needs more excess length than 0.046 mm.');
  });
});
