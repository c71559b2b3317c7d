import { describe, expect, test } from 'vitest';
import { readEntry, type Entry } from '../../../src/engine/length/entry.ts';
import { stateAt, stateByPasses } from '../../../src/store/kept/cut-state.ts';
import { isLess, lengthOf, minus, sameLength } from '../../../src/engine/length/length.ts';
import { grownSince } from '../../../src/screens/cuts/measured-pass.ts';
import { leftToTake, presentAt20, presentSize } from '../../../src/screens/cuts/cut-now.ts';
import { cutFault, cutSlip } from '../../../src/screens/cuts/cut-size-screen.tsx';
import { usualMachine } from '../../../src/screens/cuts/cut-words.ts';
import { wholeSizes } from '../../../src/screens/cuts/new-cut-screen.tsx';
import { kindsFor } from '../../../src/screens/drawer/spare-screen.tsx';
import type { CutPass } from '../../../src/store/base/records.ts';
import { is, tool } from '../worksheets/worksheet-for-test.ts';

function inch(typed: string): Entry {
  const entry = readEntry(typed, { unit: 'in' });
  if (!entry.ok) throw new Error(typed);
  return entry.value;
}

const spacer = {
  of: 'length',
  target: inch('.377'),
  lower: inch('.375'),
  upper: inch('.379'),
  blank: inch('.385'),
  operation: 'face',
  state: 'to-cut',
  passes: {},
} as const;
const bore = {
  of: 'bore',
  target: inch('.501'),
  lower: inch('.5005'),
  upper: inch('.502'),
  passes: {},
} as const;

function passes(...sizes: readonly (readonly [string, 'struck out'?])[]): Record<string, CutPass> {
  return Object.fromEntries(
    sizes.map(([size, struck], at) => [
      `p${at}`,
      { at, measured: inch(size), ...(struck && { struckOut: { why: 'burr', at } }) },
    ]),
  );
}

describe('a spacer of .385 to be faced to .377, good from .375 to .379', () => {
  test('has .008 to take before anything was cut', () => {
    expect(is(leftToTake(spacer), '.008 in')).toBe(true);
  });

  test('measured .381 has .004 to take', () => {
    expect(is(leftToTake({ ...spacer, passes: passes(['.381']) }), '.004 in')).toBe(true);
  });

  test('stands as it was measured before a figure that was struck out', () => {
    const cut = { ...spacer, passes: passes(['.381'], ['.371', 'struck out']) };
    expect(presentSize(cut)?.typed).toBe('.381');
    expect(stateByPasses({ ...cut, state: 'cutting' })).toBe('cutting');
  });

  test('with its only figure struck out is to cut again, from its blank', () => {
    const cut = { ...spacer, passes: passes(['.371', 'struck out']) };
    expect([stateByPasses(cut), presentSize(cut)?.typed]).toEqual(['to-cut', '.385']);
  });

  test.each([
    { size: '.3791', state: 'cutting' },
    { size: '.379', state: 'to-size' },
    { size: '.377', state: 'to-size' },
    { size: '.375', state: 'to-size' },
    { size: '.3749', state: 'over' },
  ])('measured $size is $state', ({ size, state }) => {
    expect(stateAt(spacer, inch(size).exact)).toBe(state);
  });
});

describe('a bore good from .5005 to .502', () => {
  test.each([
    { size: '.5004', state: 'cutting' },
    { size: '.5005', state: 'to-size' },
    { size: '.502', state: 'to-size' },
    { size: '.5021', state: 'over' },
  ])('measured $size is $state', ({ size, state }) => {
    expect(stateAt(bore, inch(size).exact)).toBe(state);
  });

  test('that nobody has measured has no figure left to take', () => {
    expect(leftToTake(bore)).toBeUndefined();
  });
});

describe('a size typed for a cut', () => {
  test.each([
    { name: 'target', size: '.380', says: 'The limits are .375 to .379 in' },
    { name: 'target', size: '.374', says: 'The limits are' },
    { name: 'lower', size: '.378', says: 'The target is .377 in' },
    { name: 'upper', size: '.376', says: 'The target is .377 in' },
  ] as const)('$name $size can’t stand beside the others', ({ name, size, says }) => {
    expect(cutFault(spacer, name, inch(size), 'in')).toContain(says);
  });

  test('may be the limit itself', () => {
    expect(cutFault(spacer, 'target', inch('.379'), 'in')).toBeUndefined();
    expect(cutFault(spacer, 'lower', inch('.377'), 'in')).toBeUndefined();
    expect(cutFault(spacer, 'upper', inch('.377'), 'in')).toBeUndefined();
    expect(cutFault(spacer, 'blank', inch('.100'), 'in')).toBeUndefined();
  });
});

describe('a cut of one’s own', () => {
  test('needs a target, and limits it lies between', () => {
    expect(wholeSizes({ target: undefined, lower: undefined, upper: undefined })).toContain(
      'which size to cut to',
    );
    expect(wholeSizes({ target: inch('.5'), lower: inch('.4'), upper: undefined })).toContain(
      'without limits',
    );
    expect(wholeSizes({ target: inch('.5'), lower: inch('.51'), upper: inch('.52') })).toContain('between');
    expect(wholeSizes({ target: inch('.5'), lower: inch('.5'), upper: inch('.5') })).toMatchObject({
      target: { typed: '.5' },
    });
  });
});

test.each([
  { operation: 'turn', of: 'outside', part: 'pin', machine: 'lathe' },
  { operation: 'face', of: 'length', part: 'spacer', machine: 'lathe' },
  { operation: 'bore', of: 'bore', part: 'bushing', machine: 'lathe' },
  { operation: 'bore', of: 'bore', part: 'bore', machine: 'mill' },
  { operation: 'bore', of: 'recess-depth', part: 'recess', machine: 'mill' },
  { operation: 'drill', of: 'tap-drill', part: 'hole', machine: 'drill-press' },
  { operation: 'ream', of: 'bore', part: 'bore', machine: 'drill-press' },
  { operation: 'tap', of: 'tap-drill', part: 'hole', machine: 'bench' },
] as const)('to $operation a $part is usually done on the $machine', ({ machine, ...cut }) => {
  expect(usualMachine(cut)).toBe(machine);
});

test.each([
  { of: 'length', operation: 'face', part: 'spacer', kind: 'spacer' },
  { of: 'outside', operation: 'ring', part: 'ring', kind: 'washer' },
  { of: 'outside', operation: 'turn', part: 'bushing', kind: 'bushing' },
  { of: 'outside', operation: 'turn', part: 'pin', kind: 'bar-end' },
  { of: 'bore', operation: 'bore', part: 'sleeve', kind: 'bushing' },
] as const)('a spare $part goes into the drawer as a $kind first', ({ kind, ...cut }) => {
  expect(kindsFor(cut)[0]).toBe(kind);
});

describe('a size typed into a cut is asked about where it looks like a slip', () => {
  const steel = { target: inch('.750'), lower: inch('.748'), upper: inch('.752'), blank: inch('1.000') };
  const meant = (name: Parameters<typeof cutSlip>[1], typed: string, unit: 'in' | 'mm' = 'in') => {
    const entry = readEntry(typed, { unit });
    return entry.ok ? cutSlip(steel, name, entry.value)?.meant[0]?.typed : undefined;
  };
  test.each([
    { name: 'target', typed: '19.05', meant: '19.05 mm' }, // .750 · 25.4
    { name: 'target', typed: '7.50', meant: '.750 in' },
    { name: 'lower', typed: '.0749', meant: '.749 in' },
    { name: 'upper', typed: '7.52', meant: '.752 in' },
    { name: 'blank', typed: '19.3', meant: '19.3 mm' },
    { name: 'measured', typed: '75.1', meant: '.751 in' },
  ] as const)('$name $typed: $meant is meant', ({ name, typed, meant: one }) => {
    expect(meant(name, typed)).toBe(one);
  });

  test('a size in the other unit is asked about as well', () => {
    expect(meant('target', '.751', 'mm')).toBe('.751 in');
  });

  test.each([
    { name: 'target', typed: '.7505' },
    { name: 'blank', typed: '1.125' },
    { name: 'measured', typed: '.900' },
    // A pass is no size of the part: .0075 off it is.
    { name: 'largestTake', typed: '.0075' },
    { name: 'finishTake', typed: '.010' },
  ] as const)('$name $typed is none', ({ name, typed }) => {
    expect(meant(name, typed)).toBeUndefined();
  });
});

describe('an aluminium spacer 1.900 in long, measured by micrometer on a day of 104 °F', () => {
  const micrometer = tool('micrometer-1-2');
  const warmth = { degrees: '104', unit: 'F', material: 'aluminium-6061' } as const;
  const pass = (typed: string, warm = false) => ({
    measured: inch(typed),
    tool: micrometer,
    ...(warm && { warmth }),
  });

  test('that reads .0004 more than it did in a cold shop has not grown', () => {
    // 40 °C: 1.9 · (23.6 − 11.7)e-6 · 20 = .00045 larger than at 20 °C; both bands of a micrometer are .0003.
    expect(grownSince('length', pass('1.9000'), pass('1.9004', true))).toBeUndefined();
    expect(grownSince('length', pass('1.9000'), pass('1.9004'))).toBeDefined();
  });

  test('that reads .002 more cold than it did warm has, by more than it reads', () => {
    const grown = grownSince('length', pass('1.9000', true), pass('1.9020'));
    expect(grown && is(grown.now, '1.9020 in')).toBe(true);
    // Less than 1.8997 at 20 °C, by the sum above
    expect(grown && isLess(grown.before, lengthOf('1.8997 in'))).toBe(true);
  });

  test('shows beside what is left to take the size that this was worked out from', () => {
    const cut = {
      of: 'length',
      target: inch('1.890'),
      passes: { p: { at: 0, ...pass('1.9000', true) } },
    } as const;
    const [present, left] = [presentAt20(cut), leftToTake(cut)];
    expect(present && left && sameLength(minus(present, left), lengthOf('1.890 in'))).toBe(true);
    expect(present && isLess(present, lengthOf('1.8997 in'))).toBe(true);
  });
});
