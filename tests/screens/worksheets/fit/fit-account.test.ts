import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { fitWorksheet } from '../../../../src/engine/worksheets/fit/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { drawFit } from '../../../../src/screens/worksheets/fit/fit-drawing.tsx';
import { tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

function told(
  sizes: Record<string, ReturnType<typeof typedSize>>,
  choices: Record<string, string> = { joint: 'turns' },
) {
  const given = givenOf(worksheetOf('fit', { sizes, choices }));
  const account = fitWorksheet.account(given);
  return {
    lead: blocksOf(account, 'lead')[0],
    verdict: blocksOf(account, 'verdict')[0]?.headline,
    found: fitWorksheet.verdict(given).found,
    said: blocksOf(account, 'said').map(({ sentence }) => sentence),
    proof: blocksOf(account, 'proof').map(({ sentence }) => sentence),
    why: blocksOf(account, 'why').flatMap(({ lines }) => lines),
    rows: blocksOf(account, 'rows').flatMap(({ rows }) => rows),
    drawn: drawFit(given, { width: 320, height: 130 }).words,
  };
}

const half = { nominal: typedSize('1/2') };

describe('a fit leads with what is asked of it', () => {
  test('its class while nothing is measured', () => {
    const { lead, drawn, rows } = told(half);
    expect(lead).toMatchObject({
      label: 'Medium running',
      figure: 'RC5',
      limits: '.0012 to .0029 of clearance',
    });
    // RC5 at .40 to .71: hole 0 to +1, pin −1.2 to −1.9
    expect(drawn).toBe(
      'RC5 at .500 in: hole .5000 to .5010, pin .4981 to .4988, .0012 to .0029 of clearance.',
    );
    expect(rows.slice(0, 2)).toEqual([
      { what: 'Hole', figure: '.5000 to .5010' },
      { what: 'Pin', figure: '.4981 to .4988' },
    ]);
  });

  test('the pin to make where the bore is there, and the bore where the pin is', () => {
    const bore = told({ ...half, bore: typedSize('.5023') });
    expect(bore.lead).toMatchObject({ label: 'Make the pin', cut: 'Pin, made new' });
    // .4994 to .5011, half way .50025: up to the mark that leaves metal on
    expect(bore.lead?.figure).toBe('.501');
    expect(bore.lead?.limits).toBe('good from .4994 to .5011');
    expect(bore.found).toBe('not-judged');
    expect(told({ ...half, pin: typedSize('.4950') }).lead?.label).toBe('Make the bore');
  });

  test('and says so where these readings leave nothing sure of its limits', () => {
    // RC2 leaves .0003 to .0007 or so; a caliper in a bore knows it to ±.002.
    const coarse = told(
      { ...half, bore: typedSize('.5023', tool('digital-caliper-inside')) },
      { joint: 'slides' },
    );
    expect(coarse.proof.join(' ')).toContain('can’t prove it');
    expect(coarse.lead?.label).toBe('Make the pin');
  });

  test('the verdict where both are there, though neither may keep its own size', () => {
    const { verdict, said } = told({ ...half, bore: typedSize('.5023'), pin: typedSize('.5003') });
    expect(verdict).toBe('Good: clearance .002, want .0012 to .0029.');
    expect(said).toContain('They run as RC5 as a pair, not each to its own size.');
  });

  test('why not, where the class isn’t made at the size', () => {
    const { verdict, found } = told(half, { joint: 'pressed', ansiClass: 'FN3' });
    expect(verdict).toBe('FN3 is not made at .500 in. Pick the class next to it.');
    expect(found).toBe('no-good');
  });

  test('a bore that is further out of true than the class leaves is no good by itself', () => {
    const told = fitWorksheet.verdict(
      givenOf(
        worksheetOf('fit', {
          sizes: { ...half, bore: { from: 'feature', featureId: 'bore' } },
          choices: { joint: 'turns' },
          features: [{ id: 'bore', jobId: 'job', kind: 'bore', name: 'Left bore', createdAt: 0 }],
          readings: (['.5000', '.5040'] as const).map((typed, index) => ({
            id: `taper${index}`,
            featureId: 'bore',
            jobId: 'job',
            exact: typedSize(typed).exact,
            typed,
            unit: 'in',
            tool: tool('dial-bore-gauge'),
            place: index === 0 ? 'top' : 'bottom',
            zeroChecked: false,
            at: index,
          })),
        }),
      ),
    );
    // RC5 leaves .0017 between its least and its greatest clearance; the bore differs by .004.
    expect(told).toEqual({
      found: 'no-good',
      said: 'The bore is .004 in out of true, and the class leaves only .0017 in. True it up first, or take a wider class.',
    });
  });
});

describe('two measured parts', () => {
  test('are told the class they keep, whatever was wanted of them', () => {
    // Wanted RC2, which leaves less; hole +.5 and pin −1.5 lie in RC5 (0 to +1.0, −1.2 to −1.9).
    const { found, said } = told(
      { ...half, bore: typedSize('.5005'), pin: typedSize('.4985') },
      { joint: 'slides' },
    );
    expect(found).toBe('no-good');
    expect(said).toContain('They keep RC5.');
  });

  test('are told their class by either standard, with how far it is proved', () => {
    // 12.010 in H7 (0 to +18 µm) and 11.990 in g6 (−6 to −17), ISO 286-1 over 10 to 18 mm.
    const metric = { nominal: typedSize('12 mm'), bore: typedSize('12.010 mm'), pin: typedSize('11.990 mm') };
    const row = (rows: ReturnType<typeof told>['rows'], what: string) =>
      rows.find((one) => one.what === what);
    const exact = told(metric, { joint: 'slides' }).rows;
    expect(row(exact, 'ISO 286-1')?.figure).toBe('H7/g6');
    expect(row(exact, 'ISO 286-1')?.more).toMatch(/^each to its own size, proved; also .*H7\/h6/);
    // B4.1 over .40 to .71 in, RC2: hole 0 to +.4, shaft −.25 to −.55; these are +.39 and −.39 thou.
    expect(row(exact, 'ANSI B4.1')?.figure).toBe('RC2');
    const coarse = told(
      {
        ...half,
        bore: typedSize('.5005', tool('digital-caliper-inside')),
        pin: typedSize('.4985', tool('digital-caliper')),
      },
      { joint: 'turns' },
    ).rows;
    expect(row(coarse, 'ANSI B4.1')).toMatchObject({ figure: 'RC5' });
    expect(row(coarse, 'ANSI B4.1')?.more).toMatch(/^each to its own size, not proved/);
  });

  test('are told the class wanted where they keep it', () => {
    const sizes = { nominal: typedSize('12 mm'), bore: typedSize('12.010 mm'), pin: typedSize('11.990 mm') };
    expect(told(sizes, { joint: 'slides' }).said).toContain('They keep H7/g6.');
  });

  test('whose readings are too coarse to tell are said to read as it', () => {
    const caliper = tool('digital-caliper');
    const { said } = told(
      { ...half, bore: typedSize('.5005', tool('digital-caliper-inside')), pin: typedSize('.4985', caliper) },
      { joint: 'turns' },
    );
    expect(said).toContain('They read as RC5; these readings can’t prove it.');
  });

  test('that keep none are told so', () => {
    const { said } = told({ ...half, bore: typedSize('.550'), pin: typedSize('.4985') });
    expect(said).toContain('They keep no class.');
  });
});

describe('the nominal', () => {
  test('is never the measured pin, and under Why it says which it is', () => {
    const { why } = told({ pin: typedSize('.4365') });
    expect(why[0]).toMatchObject({
      what: 'Nominal size',
      how: '7/16 in (.4375), the preferred size nearest to the pin, .4365 in',
    });
  });

  test('of a dowel is the size it is sold as', () => {
    const { why } = told({ nominal: typedSize('.5002') });
    expect(why[0]?.how).toBe('The class goes by 1/2 in (.500): .5002 in is such a pin’s own size.');
  });
});
