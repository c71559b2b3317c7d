import { describe, expect, test } from 'vitest';
import type { Operation } from '../../../src/engine/cut/cut.ts';
import type { CutKind } from '../../../src/engine/length/metal-on.ts';
import { carriesLoad, sayStrength, sayStrengthOfCut } from '../../../src/engine/cut/say-strength.ts';

describe('a part that something hangs on', () => {
  test.each([
    'bracket',
    'Left bracket',
    'brake bracket',
    'leg',
    'left leg',
    'fork leg',
    'swing arm',
    'swingarm',
    'calliper lug',
    'caliper',
    'boss',
    'hub',
    'brake plate',
    'axle',
    'sprocket carrier',
    'links',
    'Dropout',
    'drop-out',
    'kingpin',
    'Steering knuckle',
    'torque rod',
    'brake lever',
    'Drawbar eye',
    'bushing carrier',
    'Spacer bracket',
    'seal plate',
    'bracket, left',
    'wheel flange',
    'bosses',
    'subframe',
    'handlebar',
    'crankcase',
    'gearbox housing',
    'axle nut',
  ])('is known by its name: %s', (part) => {
    expect(carriesLoad(part)).toBe(true);
    expect(sayStrength(part)).toBe(
      `Metal off the ${part} makes it weaker: have its strength judged before you cut.`,
    );
  });

  test.each([
    'spacer',
    'part 1',
    'washer under the arm',
    'spacer at the left leg',
    'sleeve of the bracket',
    'Hub to bracket',
    'Bracket to leg',
    'Brake plate to leg',
    'axle shim',
    'warmer',
    'left leg spacer',
    'arm bushing',
    'washer, bracket side',
    'ring (on the hub)',
  ])('is not what lies between such parts: %s', (part) => {
    expect(carriesLoad(part)).toBe(false);
    expect(sayStrength(part)).toBe('');
  });
});

describe('a cut', () => {
  const said = (name: string, part: string, operation: Operation, of?: CutKind) =>
    sayStrengthOfCut({ name, part, operation, ...(of && { of }) });

  test.each([
    { name: 'Bracket, faced to length', part: 'bracket', operation: 'face', word: 'Metal off the bracket' },
    { name: 'Left leg, faced', part: 'left leg', operation: 'face', word: 'Metal off the left leg' },
    { name: 'Pin, turned down', part: 'pin', operation: 'turn', word: 'Metal off the pin' },
    { name: 'Hole, drilled 29/64', part: 'hole', operation: 'drill', word: 'A larger hole' },
    { name: 'Hole, STI tap 7/16-20 UNF', part: 'hole', operation: 'tap', word: 'A larger hole' },
    { name: 'Recess, made deeper', part: 'recess', operation: 'bore', word: 'A deeper recess' },
    { name: 'Bore, reamed 9/16', part: 'bore', operation: 'ream', word: 'A larger hole' },
    { name: 'Through the boss', part: 'boss', operation: 'drill', word: 'A larger hole' },
    // A hole weakens whatever it is in, also what no list names; a part that nobody named may be anything.
    { name: 'Oil hole', part: 'rocker', operation: 'drill', word: 'A larger hole' },
    { name: 'Drill', part: 'part', operation: 'drill', word: 'A larger hole' },
    { name: 'Drill', part: '', operation: 'tap', word: 'A larger hole' },
    { name: 'Face to length', part: 'part', operation: 'face', word: 'Metal off the part' },
    { name: 'Recess', part: 'hub', operation: 'bore', of: 'recess-depth', word: 'A deeper recess' },
    { name: 'Slot, wider', part: 'Lever', operation: 'face', of: 'slot-width', word: 'Metal off the Lever' },
  ] as const)('$name of $part has its strength said', ({ name, part, operation, word, ...more }) => {
    const sentence = said(name, part, operation, 'of' in more ? more.of : undefined);
    expect(sentence).toContain(word);
    expect(sentence).toMatch(/strength judged before you cut\.$/);
  });

  test.each([
    { name: 'Spacer, faced to length', part: 'spacer', operation: 'face' },
    { name: 'Hub to bracket, made new', part: 'hub to bracket', operation: 'face' },
    { name: 'Hub to bracket, faced to length', part: 'hub to bracket', operation: 'face' },
    { name: 'Pin, made new', part: 'pin', operation: 'turn' },
    { name: 'Bushing, bored once it is in', part: 'bushing', operation: 'bore' },
    { name: 'Shield, inside', part: 'ring', operation: 'bore' },
    { name: 'Peg hole', part: 'bushing of the arm', operation: 'drill' },
    { name: 'Bore', part: 'hub to bracket', operation: 'bore' },
  ] as const)('$name takes nothing away that carries', ({ name, part, operation }) => {
    expect(said(name, part, operation)).toBe('');
  });
});
