import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { axleLineUpWorksheet } from '../../../../src/engine/worksheets/axle-line-up/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import type { WorksheetData } from '../../../../src/screens/worksheets/worksheet-data.ts';
import type { SizeInput } from '../../../../src/store/base/records.ts';
import { featureOf, ofFeature, readingOf, tool, typedSize, worksheetOf } from '../worksheet-for-test.ts';

type Sizes = Readonly<Record<string, string>>;

/**
 * A = 1.075, B = .120, C = .633, sleeve 1.263. Of float and room ±.005 (common practice) sleeve, inner and outer spacer have .0016
 * each, the left one .00333.
 */
const front: Sizes = {
  width: '6.750',
  hub: '4.412',
  centre: '2.300',
  disc: '.312',
  slot: '.187',
  bracket: '.500',
  float: '.010',
};
const discKnown: Sizes = { slotWidth: '.300', discThickness: '.160' };
const allKept: Sizes = {
  'onHand-far': '1.075',
  'onHand-sleeve': '1.263',
  'onHand-inner': '.120',
  'onHand-outer': '.633',
};

type Asked = Parameters<typeof worksheetOf>[1] & { readonly more?: Readonly<Record<string, SizeInput>> };

function axle(sizes: Sizes, { more = {}, ...given }: Asked = {}): WorksheetData {
  return worksheetOf('axle-line-up', {
    choices: { layout: 'front-one-disc', side: 'right' },
    ...given,
    sizes: {
      ...Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedSize(size)])),
      ...more,
    },
  });
}

const accountOf = (data: WorksheetData) => axleLineUpWorksheet.account(givenOf(data));
const verdictOf = (data: WorksheetData) => blocksOf(accountOf(data), 'verdict')[0];
const rowsOf = (data: WorksheetData) =>
  blocksOf(accountOf(data), 'rows')
    .filter(({ leads }) => leads)
    .flatMap(({ rows }) => rows.map(({ what, figure, more }) => [what, figure, more]));
const asks = (data: WorksheetData) => blocksOf(accountOf(data), 'ask').map(({ field, key }) => [field, key]);

describe('the lengths of all spacers', () => {
  test('lead in the order of work, each with what is done to it and between which lengths', () => {
    // Without a tool that the cuts are read with, so that the limits are those of the lengths alone.
    expect(rowsOf(axle({ ...front, ...discKnown }, { tools: [] }))).toEqual([
      ['A Left spacer', '1.075', 'make, 1.0717 to 1.0783 in'],
      ['Sleeve', '1.263', 'make, 1.2614 to 1.2646 in'],
      ['B Hub to bracket', '.120', 'make, .1184 to .1216'],
      ['C Bracket to leg', '.633', 'make, .6314 to .6346'],
    ]);
  });

  test('are as they will lie on the axle: left full to the dial, as measured, faced by so much', () => {
    // W = 6.7484: A = 1.0742, faced to 1.075; inner one .122, kept; C = 1.2622 − .122 − .500 − .010 = .6302, to .631.
    const rows = rowsOf(axle({ ...front, width: '6.7484', 'onHand-inner': '.122', 'onHand-far': '1.110' }));
    expect(rows.map(([what, figure]) => [what, figure])).toEqual([
      ['A Left spacer', '1.075'],
      ['Sleeve', '1.263'],
      ['B Hub to bracket', '.122'],
      ['C Bracket to leg', '.631'],
    ]);
    expect(rows[0]?.[2]).toMatch(/^trim \.035, /);
    expect(rows[2]?.[2]).toBe('keep');
  });

  test('have none for what is cut last, and it stands last', () => {
    // A dial of .005 has no step within .0016 of 1.263.
    const data = axle(front);
    const coarse = { ...data, dial: { ...data.dial, graduation: { ...data.dial.graduation, ...inch005 } } };
    expect(rowsOf(coarse).at(-1)).toEqual(['C Bracket to leg', '—', 'cut last']);
  });
});

const five = typedSize('.005');
const inch005 = { exact: five.exact, typed: five.typed, unit: five.unit };

describe('what an axle asks first', () => {
  test('is whether the disc runs clear of its slot; once it does, it can be cut', () => {
    expect(asks(axle(front))).toEqual([['slotWidth', 'Give the slot’s width']]);
    expect(asks(axle({ ...front, slotWidth: '.300' }))).toEqual([
      ['discThickness', 'Give the disc’s thickness'],
    ]);
    expect(asks(axle({ ...front, ...discKnown }))).toEqual([]);
  });

  test('is nothing while something has no room: that has to give', () => {
    const short = axle({ ...front, slot: '.370' });
    expect(asks(short)).toEqual([]);
    expect(verdictOf(short)).toMatchObject({ kind: 'no-good' });
    const [way] = blocksOf(accountOf(short), 'way');
    // B = .312 − .370 − .005 = −.063
    expect(way).toMatchObject({ title: 'Space the disc out', detail: 'by .063, to .375.', rank: 1 });
  });
});

test('a bracket that follows its pads is not finished before somebody said how far they wear', () => {
  const choices = { layout: 'front-one-disc', side: 'right', slides: 'bracket' };
  const sizes = { ...front, ...discKnown, ...allKept };
  const data = axle(sizes, { choices });
  expect(verdictOf(data)).toMatchObject({
    kind: 'too-close',
    headline: 'Not finished: the float may not last the pads’ wear. Give how much they wear in all.',
  });
  expect(asks(data)).toEqual([['padWear', 'Give the wear']]);
  expect(verdictOf(axle(sizes, { choices: { ...choices, slides: 'caliper' } }))?.kind).toBe('good');
  // .010 of float against .002 of wear: .008, wanted .010 more than the wear
  expect(verdictOf(axle({ ...sizes, padWear: '.002' }, { choices }))?.kind).toBe('no-good');
});

describe('a reading on the machine', () => {
  const read = (name: string, typed: string, at: number) => ({ [name]: { ...typedSize(typed), at } });
  const changed = (data: WorksheetData, otherwiseAt?: number): WorksheetData => ({
    ...data,
    worksheet: {
      ...data.worksheet,
      partsChanged: {
        at: 700,
        why: 'a part of another size',
        ...(otherwiseAt !== undefined && { otherwiseAt }),
      },
    },
  });
  const good = { ...front, ...discKnown, ...allKept };

  test.each([
    { name: 'floatRead', typed: '.002', said: 'side play' },
    { name: 'discInsideRead', typed: '.002', said: 'gap at the disc’s inner face' },
    { name: 'discOutsideRead', typed: '.002', said: 'gap at the disc’s outer face' },
    { name: 'centreRead', typed: '.090', said: 'wheel center' },
    { name: 'centreLeftRead', typed: '.090', said: 'wheel center' },
  ])(
    'of the $said, set aside by the cut it asked for, is asked for again: its sum isn’t good in its place',
    ({ name, typed, said }) => {
      const before = axle(good, { more: read(name, typed, 600) });
      expect(verdictOf(before)?.kind).not.toBe('good');
      const after = changed(before, 500);
      expect(verdictOf(after)).toEqual({
        is: 'verdict',
        kind: 'too-close',
        headline: `Not finished: ${said} was read before this: a part of another size. Read it again.`,
      });
      expect(asks(after)).toEqual([[name, 'Read it again']]);
      // Read again since.
      const again = changed(
        axle(good, { more: read(name, name === 'floatRead' ? '.010' : '.020', 800) }),
        500,
      );
      expect(asks(again)).toEqual([]);
    },
  );

  test('set aside as another part was put in by choice leaves the sum to count', () => {
    const after = changed(axle(good, { more: read('floatRead', '.002', 600) }));
    expect(verdictOf(after)).toMatchObject({ kind: 'good' });
    expect(asks(after)).toEqual([]);
  });

  test('waits to be read again until the last spacer is cut', () => {
    const { 'onHand-outer': _outer, ...others } = good;
    const after = changed(axle(others, { more: read('floatRead', '.002', 600) }), 500);
    expect(verdictOf(after)?.headline).toContain('Read it again.');
    expect(asks(after)).toEqual([]);
    expect(axleLineUpWorksheet.cuts(givenOf(after)).length).toBeGreaterThan(0);
  });
});

describe('readings too coarse for what they have to prove', () => {
  const caliper = tool('digital-caliper');
  const depthRod = tool('digital-caliper-depth');
  const hub = (more: Asked = {}) =>
    axle(
      { ...front, ...discKnown, spacerLimit: '.002', openingLimit: '.002' },
      { more: { hub: typedSize('4.412', caliper) }, ...more },
    );

  test('are said with the tool of the shop that would settle it, and how many readings', () => {
    const [proof] = blocksOf(accountOf(hub()), 'proof');
    expect(proof?.sentence).toMatch(
      /with \d+ readings?( of each size)?( in all)? would settle it, to ±\.00\d+\.$/,
    );
    expect(proof?.sentence).not.toContain('finer tool');
  });

  test('are said to be beyond the shop’s tools where they are, with what a fitter does then', () => {
    const [proof] = blocksOf(accountOf(hub({ tools: [caliper, depthRod] })), 'proof');
    expect(proof?.sentence).toBe(
      'No tool in Shop can settle it. Cut the last one to the others, then read it in place.',
    );
  });

  test('leave every figure standing, with how closely it is known', () => {
    const rows = rowsOf(hub());
    expect(rows.map(([, figure]) => figure)).toEqual(['1.075', '1.263', '.120', '.633']);
  });

  test('with nothing to prove have no such line', () => {
    expect(blocksOf(accountOf(axle({ ...front, ...discKnown, ...allKept })), 'proof')).toEqual([]);
  });
});

describe('a hub whose readings contradict each other', () => {
  test('asks which of them stands', () => {
    const readings = [
      readingOf('hub', '4.412', { tool: tool('digital-caliper') }),
      readingOf('hub', '4.420', { tool: tool('digital-caliper') }),
    ];
    const data = axle(
      { ...front, ...discKnown },
      {
        more: { hub: ofFeature('hub') },
        features: [featureOf('hub', 'length')],
        readings,
      },
    );
    expect(verdictOf(data)?.kind).not.toBe('good');
  });
});
