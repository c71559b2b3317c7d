import { describe, expect, test } from 'vitest';
import { cutsOfLineUp } from '../../../../src/engine/worksheets/axle-line-up/cuts-of-line-up.ts';
import { toleranceEstimate, typedEstimate, type Estimate } from '../../../../src/engine/reading/estimate.ts';
import { exactDecimalText, isZero, lengthOf, type Length } from '../../../../src/engine/length/length.ts';
import { lineUp, type LineUpQuestion } from '../../../../src/engine/worksheets/axle-line-up/line-up.ts';
import { lineUpVerdict, sayLineUp } from '../../../../src/engine/worksheets/axle-line-up/say-line-up.ts';
import { sayDeed } from '../../../../src/engine/worksheets/axle-line-up/say-deeds.ts';
import { axleLayouts } from '../../../../src/engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { usualLeastLength } from '../../../../src/engine/fit/tables/least-part.ts';
import { usualLineUpLimits } from '../../../../src/engine/worksheets/axle-line-up/tables/line-up-limits.ts';

// No spacer is faced thinner than it can be held: .020 in or 0.5 mm (common practice, no source).
// Hub to bracket: B = d − p − f/2 = .312 − p − .005.

type Sizes = Readonly<Record<string, string>>;
const shown = (length: Length) => exactDecimalText(length, 'in');
const known = (sizes: Sizes, unit = 'in'): Readonly<Record<string, Estimate>> =>
  Object.fromEntries(
    Object.entries(sizes).map(([name, size]) => [name, typedEstimate(lengthOf(`${size} ${unit}`))]),
  );

function questionOf(more: Partial<LineUpQuestion>): LineUpQuestion {
  return {
    layout: axleLayouts['front-one-disc'],
    side: 'right',
    onHand: {},
    limits: usualLineUpLimits.in,
    usualLeast: usualLeastLength.in,
    step: lengthOf('.001 in'),
    ...more,
    sizes: {
      ...known({
        width: '6.750',
        hub: '4.412',
        centre: '2.300',
        disc: '.312',
        slot: '.187',
        bracket: '.500',
        float: '.010',
        // (.300 − .160 − .010) / 2 = .065 beside the disc
        slotWidth: '.300',
        discThickness: '.160',
      }),
      ...more.sizes,
    },
  };
}

function asked(more: Partial<LineUpQuestion>) {
  const question = questionOf(more);
  const result = lineUp(question);
  if (!result.ok) throw new Error(result.refusal.code);
  const answer = result.value;
  const inner = answer.spacers.find(({ name }) => name === 'inner');
  if (!inner) throw new Error('there is a spacer between hub and bracket');
  const cuts = cutsOfLineUp(question, answer).flatMap(({ offers }) => offers.map(({ part }) => part));
  return {
    answer,
    inner,
    cuts,
    verdict: lineUpVerdict(answer),
    said: sayLineUp(answer, { ...question, unit: 'in' }),
  };
}

describe('a spacer that comes out shorter than can be faced', () => {
  test.each([
    { slot: '.286', kind: 'make', verdict: 'good' }, // .021
    { slot: '.287', kind: 'make', verdict: 'good' }, // .020
    { slot: '.2871', kind: 'too-short', verdict: 'no-good' }, // .0199
    { slot: '.3019', kind: 'too-short', verdict: 'no-good' }, // .0051
    { slot: '.302', kind: 'leave-out', verdict: 'good' }, // .005: as much as a part may be off
    { slot: '.306', kind: 'leave-out', verdict: 'good' }, // .001
    { slot: '.307', kind: 'none', verdict: 'good' }, // 0
  ])('with the slot $slot in: $kind, $verdict', ({ slot, kind, verdict }) => {
    const found = asked({ sizes: known({ slot }) });
    expect(found.inner.deed.kind).toBe(kind);
    expect(found.verdict).toBe(verdict);
    expect(found.cuts.includes('hub to bracket')).toBe(kind === 'make');
  });

  test('is never given limits below that', () => {
    const { inner } = asked({ sizes: known({ slot: '.287' }) });
    expect(inner.deed.kind === 'make' && inner.deed.make.ok && shown(inner.deed.make.value.lower)).toBe(
      '0.02',
    );
  });

  test('says so, and which part must give instead: no cut is offered before', () => {
    // B = .312 − .300 − .005 = .007: .013 short of .020. Disc .325, slot .287; the float would have to give .026.
    const { said, answer, cuts, inner } = asked({ sizes: known({ slot: '.300' }) });
    expect(said).toBe('Hub to bracket comes out .007 in; .020 in is the least that can be faced.');
    expect(cuts).toEqual([]);
    expect(answer.gives.map(({ of, to }) => [of, shown(to)])).toEqual([
      ['disc', '0.325'],
      ['slot', '0.287'],
    ]);
    expect(sayDeed(inner, 'in')).toEqual({
      act: 'too short',
      more: 'Something has to give, or a washer of .007 in goes in: enter it as on hand.',
    });
  });

  test('of next to nothing is left out, and the others make up for it', () => {
    // B = .001; C = sleeve − b − f = 1.263 − .500 − .010 = .753 with nothing on the other side
    const { inner, answer } = asked({ sizes: known({ slot: '.306' }) });
    expect(isZero(inner.fitted)).toBe(true);
    const outer = answer.spacers.find(({ name }) => name === 'outer');
    expect(outer && shown(outer.fitted)).toBe('0.753');
    expect(sayDeed(inner, 'in')).toEqual({
      act: 'leave it out',
      more: 'It comes out .001 in, too thin to face. See that the faces beside it don’t rub.',
    });
  });

  test('is not left out where that alone would not hold: its disc has no more room to give', () => {
    // B = .004; (w − .160 − .010) / 2 − .010 = .005 with w = .200: the disc would sit .004 too far in.
    const { inner, verdict } = asked({ sizes: known({ slot: '.303', slotWidth: '.200' }) });
    expect(inner.deed.kind).toBe('too-short');
    expect(verdict).toBe('no-good');
  });

  test('is not left out where the readings can’t tell that it is next to nothing', () => {
    const slot = toleranceEstimate(lengthOf('.304 in'), lengthOf('.003 in'));
    // .003 ± .003: up to .006
    expect(asked({ sizes: { slot } }).inner.deed.kind).toBe('too-short');
  });

  test.each([
    { inner: '.015', kind: 'keep', verdict: 'good' }, // a washer that is there
    { inner: '.020', kind: 'keep', verdict: 'good' },
    { inner: '.0201', kind: 'too-short', verdict: 'no-good' }, // it would be faced to .015
    { inner: '.100', kind: 'too-short', verdict: 'no-good' },
    { inner: '.005', kind: 'shim', verdict: 'good' },
  ])('with $inner on hand where .015 is wanted: $kind', ({ inner, kind, verdict }) => {
    const found = asked({ sizes: known({ slot: '.292' }), onHand: known({ inner }) });
    expect(found.inner.deed.kind).toBe(kind);
    expect(found.verdict).toBe(verdict);
    // Beside a shim it isn't offered to be made new either.
    expect(found.cuts).not.toContain('hub to bracket');
    const { more } = sayDeed(found.inner, 'in');
    expect(more.includes('make it new')).toBe(false);
  });

  test('is held against 0.5 in millimetres', () => {
    // B = 8 − p − 0.1
    const mm = (slot: string) =>
      asked({
        sizes: known(
          {
            width: '170',
            hub: '110',
            centre: '55',
            disc: '8',
            slot,
            bracket: '12',
            float: '0.2',
            slotWidth: '8',
            discThickness: '4',
          },
          'mm',
        ),
        limits: usualLineUpLimits.mm,
        usualLeast: usualLeastLength.mm,
        step: lengthOf('0.02 mm'),
      }).inner.deed.kind;
    expect([mm('7.40'), mm('7.41'), mm('7.78'), mm('7.77')]).toEqual([
      'make', // 0.50
      'too-short', // 0.49
      'leave-out', // 0.12: as much as a part may be off
      'too-short', // 0.13
    ]);
  });
});
