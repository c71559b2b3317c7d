import { describe, expect, test } from 'vitest';
import { foundNow, knownCheck, type FitUpData } from '../../../src/screens/fit-up/check-data.ts';
import { provedVerdict } from '../../../src/screens/worksheets/proved-verdict.ts';
import { basisNow } from '../../../src/screens/worksheets/new-cuts.ts';
import type { Check } from '../../../src/store/base/records.ts';
import { featureOf, readingOf, tool, typedSize, worksheetOf } from '../worksheets/worksheet-for-test.ts';

// Checks as an earlier version kept them: of the wheel's centre without its side, of a float or a disc without a least.

type Limits = Readonly<Partial<Record<'lower' | 'upper', string>>>;

function kept(sizeName: string, limits: Limits, read: string, sizes: Readonly<Record<string, string>> = {}) {
  const data = worksheetOf('axle-line-up', {
    sizes: Object.fromEntries(
      Object.entries({
        width: '6.750',
        hub: '4.412',
        centre: '2.300',
        disc: '.312',
        slot: '.187',
        bracket: '.500',
        float: '.010',
        slotWidth: '.300',
        discThickness: '.160',
        ...sizes,
      }).map(([name, size]) => [name, typedSize(size)]),
    ),
    choices: { layout: 'front-one-disc', side: 'right' },
    features: [featureOf('gap', 'gap')],
    readings: [read, read, read].map((typed) =>
      readingOf('gap', typed, { tool: tool('digital-caliper-inside') }),
    ),
  });
  const { job, features, readings, worksheet } = data;
  const check: Check = {
    id: 'check',
    jobId: 'job',
    worksheetId: 'sheet',
    sizeName,
    name: 'Wheel centre, difference of the two sides',
    by: 'gap',
    ...(limits.lower !== undefined && { lower: typedSize(limits.lower) }),
    ...(limits.upper !== undefined && { upper: typedSize(limits.upper) }),
    limitsFrom: 'common practice, no source',
    how: '',
    takes: { t: { at: 1, featureId: 'gap' } },
    createdAt: 0,
    // Worked out from the very sizes that still stand.
    basis: basisNow(data),
  };
  const fitUp: FitUpData = { job, checks: [], features, readings, worksheets: [worksheet] };
  return { known: knownCheck(fitUp, check), data };
}

describe('the wheel’s centre, kept without its side', () => {
  test('is older than its worksheet where the wheel is wanted off the middle: .200 is read on either side', () => {
    // 2 · .100 ± 2 · .030, as it was worked out then
    const { known } = kept('centreRead', { lower: '.140', upper: '.260' }, '.200', { offset: '.100' });
    expect(known.state.found).toBe('good');
    expect(known.older).toBe(true);
    expect(foundNow(known)).toBe('not-done');
    expect(known.instead?.name).toBe('Wheel center, left side wider by');
    const { known: right } = kept('centreRead', { lower: '.140', upper: '.260' }, '.200', {
      offset: '-.100',
    });
    expect(right.instead?.name).toBe('Wheel center, right side wider by');
  });

  test('proves nothing of its worksheet', () => {
    const { known, data } = kept('centreRead', { lower: '.140', upper: '.260' }, '.200', { offset: '.100' });
    // A vague hub leaves the axle open; the check must not close it.
    const vague = {
      ...data,
      worksheet: {
        ...data.worksheet,
        sizes: { ...data.worksheet.sizes, hub: typedSize('4.412', tool('steel-rule')) },
      },
    };
    expect(provedVerdict(vague, { checks: [known], cuts: [] }).found).toBe('too-close');
  });

  test.each([
    // 2 · (.030 − |o|) is what holds on either side: .060 at the middle, .040 at .010
    { offset: '0', limits: { upper: '.060' }, older: false },
    { offset: '.010', limits: { upper: '.040' }, older: false },
    { offset: '-.010', limits: { upper: '.040' }, older: false },
    { offset: '.010', limits: { upper: '.0401' }, older: true },
    { offset: '.010', limits: { upper: '.080' }, older: true },
    { offset: '.015', limits: { upper: '.030' }, older: false },
    // From .015 on the side is named.
    { offset: '.016', limits: { upper: '.028' }, older: true },
    { offset: '0', limits: { lower: '.001', upper: '.060' }, older: true },
    { offset: '0', limits: { lower: '-.060', upper: '.060' }, older: false },
    { offset: '0', limits: { lower: '-.010', upper: '.060' }, older: true },
    { offset: '0', limits: {}, older: true },
  ])('with $limits and $offset wanted is older: $older', ({ offset, limits, older }) => {
    expect(kept('centreRead', limits, '.010', { offset }).known.older).toBe(older);
  });

  test('is as good as ever where its side is named', () => {
    const { known } = kept('centreLeftRead', { lower: '.140', upper: '.260' }, '.200', { offset: '.100' });
    expect(known.older).toBe(false);
    expect(foundNow(known)).toBe('good');
  });

  test('without its worksheet isn’t good either, once it has a least', () => {
    const { known } = kept('centreRead', { lower: '.140', upper: '.260' }, '.200', { offset: '.100' });
    const alone: FitUpData = {
      job: kept('centreRead', {}, '.1').data.job,
      checks: [],
      features: [featureOf('gap', 'gap')],
      readings: ['.200'].map((typed) => readingOf('gap', typed, { tool: tool('digital-caliper-inside') })),
      worksheets: [],
    };
    expect(knownCheck(alone, known.check).older).toBe(true);
  });
});

describe('what was kept without a least', () => {
  test.each([
    { what: 'floatRead', limits: { upper: '.015' }, older: true }, // a seized bracket
    { what: 'floatRead', limits: { lower: '0', upper: '.015' }, older: true },
    { what: 'floatRead', limits: { lower: '.005', upper: '.015' }, older: false },
    { what: 'discInsideRead', limits: { lower: '0' }, older: true }, // rubs
    { what: 'discOutsideRead', limits: {}, older: true },
    { what: 'discOutsideRead', limits: { lower: '.005' }, older: false },
    // A least of the fitter's own, closer than the usual one, is his.
    { what: 'discOutsideRead', limits: { lower: '.002' }, older: false },
  ])('$what with $limits is older than its worksheet: $older', ({ what, limits, older }) => {
    const { known } = kept(what, limits, '.010');
    expect(known.older).toBe(older);
    expect(known.newLimits !== undefined).toBe(older);
  });
});
