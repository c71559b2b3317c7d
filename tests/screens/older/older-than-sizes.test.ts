import { describe, expect, test } from 'vitest';
import { isOlderThanSizes, type Figures, type Ground } from '../../../src/screens/older/older-than-sizes.ts';
import { basisOf } from '../../../src/store/kept/basis.ts';
import { featuresIn } from '../../../src/store/kept/worksheets.ts';
import type { Basis, ReadingRecord, Worksheet } from '../../../src/store/base/records.ts';
import {
  featureOf,
  ofFeature,
  partOf,
  readingOf,
  struckOut,
  tool,
  typedSize,
  worksheetOf,
} from '../worksheets/worksheet-for-test.ts';

const hub = readingOf('hub', '4.412', { tool: tool('digital-caliper') });
const features = [featureOf('hub', 'length'), { ...featureOf('gap', 'gap'), checkId: 'float' }];
const { worksheet } = worksheetOf('spacer-stack', {
  sizes: { fixed: ofFeature('hub'), aim: typedSize('.010') },
  choices: { want: 'float' },
  parts: { a: partOf(1, typedSize('.640')), b: partOf(2, typedSize('1.900')) },
});
const then: Ground = { worksheets: [worksheet], features, readings: [hub] };

function basisIn({ readings }: Ground, of: Worksheet = worksheet): Basis {
  const used = featuresIn(of);
  return basisOf(
    of,
    readings.filter(({ featureId }) => used.has(featureId)),
  );
}

const basis = basisIn(then);
const read = (at: number): ReadingRecord => ({ ...readingOf('gap', '.010', { at }), basis });
const check = { worksheetId: 'sheet', sizeName: 'direct' };
const figures: readonly (readonly [string, Figures])[] = [
  ['a cut to be made', { of: 'cut', cut: { basis, state: 'to-cut', worksheetId: 'sheet' } }],
  ['a cut to size', { of: 'cut', cut: { basis, state: 'to-size', worksheetId: 'sheet' } }],
  [
    'a cut from another job',
    { of: 'cut', cut: { basis, state: 'to-cut', workedOutIn: { jobId: 'job', worksheetId: 'sheet' } } },
  ],
  ['limits', { of: 'limits', check: { ...check, basis } }],
  ['a go that was read', { of: 'go', check, take: { readings: [read(5)] } }],
  ['a go that was seen', { of: 'go', check, take: { basis, readings: [] } }],
  ['words', { of: 'words', step: { workedOut: { worksheetId: 'sheet', offer: 'Fit it', basis } } }],
  ['a step done', { of: 'done', step: { worksheetId: 'sheet', done: { at: 5, by: 'Jo', basis } } }],
];

const withWorksheet = (changes: Partial<Worksheet>): Ground => ({
  ...then,
  worksheets: [{ ...worksheet, ...changes }],
});
const changes: readonly (readonly [string, Ground])[] = [
  [
    'a part is another size',
    withWorksheet({ parts: { ...worksheet.parts, a: partOf(1, typedSize('.690')) } }),
  ],
  ['a part is taken out', withWorksheet({ parts: { b: partOf(2, typedSize('1.900')) } })],
  ['it is wanted to clamp', withWorksheet({ choices: { want: 'clamp' } })],
  ['a reading behind it is struck out', { ...then, readings: [{ ...hub, ...struckOut }] }],
  ['a reading behind it is gone', { ...then, readings: [] }],
  [
    'a newer reading counts',
    { ...then, readings: [hub, readingOf('hub', '4.4135', { tool: tool('digital-caliper') })] },
  ],
];

describe.each(figures)('%s', (_name, one) => {
  test('is as old as its sizes while nothing changed', () => {
    expect(isOlderThanSizes(one, then)).toBe(false);
  });

  test.each(changes)('is older when %s', (_what, ground) => {
    expect(isOlderThanSizes(one, ground)).toBe(true);
  });

  test('is not older by another worksheet, nor by a reading of something else', () => {
    const other = { ...worksheet, id: 'other', parts: {} };
    const elsewhere = readingOf('rim', '17.2');
    const ground = { ...then, worksheets: [worksheet, other], readings: [hub, elsewhere] };
    expect(isOlderThanSizes(one, ground)).toBe(false);
  });
});

describe('what is read on the machine', () => {
  const gap = readingOf('gap', '.0099', { at: 9 });
  const proved = {
    ...withWorksheet({ sizes: { ...worksheet.sizes, direct: ofFeature('gap') } }),
    readings: [hub, gap],
  };

  test.each(figures.slice(1).filter(([, { of }]) => of !== 'cut'))('makes %s no older', (_name, one) => {
    expect(isOlderThanSizes(one, proved)).toBe(false);
  });

  test('proves a cut that is to size, and tells of another gap where the cut is still to be made', () => {
    expect(
      isOlderThanSizes({ of: 'cut', cut: { basis, state: 'to-size', worksheetId: 'sheet' } }, proved),
    ).toBe(false);
    expect(
      isOlderThanSizes({ of: 'cut', cut: { basis, state: 'to-cut', worksheetId: 'sheet' } }, proved),
    ).toBe(true);
  });
});

describe('a float that is wanted otherwise', () => {
  const wanted = withWorksheet({ sizes: { ...worksheet.sizes, aim: typedSize('.012') } });

  test('makes figures older, and nothing that was read or done', () => {
    const older = figures.filter(([, one]) => isOlderThanSizes(one, wanted)).map(([name]) => name);
    expect(older).toEqual(['a cut to be made', 'a cut to size', 'a cut from another job', 'limits', 'words']);
  });
});

describe('a figure', () => {
  test('that nobody worked out here is never older', () => {
    expect(isOlderThanSizes({ of: 'cut', cut: { state: 'to-cut', worksheetId: 'sheet' } }, then)).toBe(false);
  });

  test('whose worksheet was removed is older once a reading behind it is struck out', () => {
    const removed = { ...then, worksheets: [] };
    const cut = { of: 'cut', cut: { basis, state: 'to-cut', worksheetId: 'sheet' } } as const;
    expect(isOlderThanSizes(cut, removed)).toBe(false);
    expect(isOlderThanSizes(cut, { ...removed, readings: [{ ...hub, ...struckOut }] })).toBe(true);
  });

  test('from a job that is not on this phone can’t be told', () => {
    const workedOutIn = { jobId: 'away', worksheetId: 'away' };
    const cut = { of: 'cut', cut: { basis, state: 'to-cut', workedOutIn } } as const;
    expect(isOlderThanSizes(cut, { worksheets: [], features: [], readings: [] })).toBe(false);
  });

  test('of a go stands on its last reading that counts', () => {
    const before = { ...read(5), basis: basisIn({ ...then, readings: [] }) };
    const go = (readings: readonly ReadingRecord[]) =>
      isOlderThanSizes({ of: 'go', check, take: { readings } }, then);
    expect(go([before, read(6)])).toBe(false);
    expect(go([read(6), { ...before, at: 7 }])).toBe(true);
    expect(go([before, { ...read(6), ...struckOut }])).toBe(true);
  });
});
