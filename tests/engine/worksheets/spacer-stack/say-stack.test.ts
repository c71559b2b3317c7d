import { describe, expect, test } from 'vitest';
import { toleranceEstimate } from '../../../../src/engine/reading/estimate.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import {
  sayLeftOut,
  sayLongerPart,
  sayNeeded,
  sayOnePart,
  sayShim,
  sayStack,
  sayStackBand,
  sayTrim,
  sayUnproved,
} from '../../../../src/engine/worksheets/spacer-stack/say-stack.ts';
import {
  spacerStack,
  stackWantPreset,
  type StackPart,
  type StackWant,
} from '../../../../src/engine/worksheets/spacer-stack/spacer-stack.ts';

const inch = (text: string) => lengthOf(`${text} in`);

function answered(sleeve: string, more: { band?: string; want?: StackWant; leastLength?: string } = {}) {
  const want = more.want ?? stackWantPreset('float');
  const spacer: StackPart = {
    name: 'spacer',
    thickness: toleranceEstimate(inch('.385'), inch('0')),
    count: 1,
    adjustable: true,
    ...(more.leastLength !== undefined && { leastLength: inch(more.leastLength) }),
  };
  const others: StackPart = {
    name: 'bracket',
    thickness: toleranceEstimate(inch('.583'), inch('0')),
    count: 1,
    adjustable: false,
  };
  const fixed = { name: 'sleeve', length: toleranceEstimate(inch(sleeve), inch(more.band ?? '0')) };
  return { want, answer: spacerStack({ fixed, parts: [spacer, others], want, step: inch('.001') }) };
}

describe('a stack is said', () => {
  test('with what it does, what is wanted and which way it fails', () => {
    const { answer, want } = answered('.970');
    expect(sayStack(answer, want, 'in')).toBe('Too tight: float .002, want .008 to .012.');
  });

  test('with how far the parts stand proud when there is no float at all', () => {
    const { answer, want } = answered('.965');
    expect(sayStack(answer, want, 'in')).toBe('Too tight: .003 proud, want .008 to .012 free.');
  });

  test('with the gap that is left when it should clamp', () => {
    const { answer, want } = answered('.970', { want: stackWantPreset('clamp') });
    expect(sayStack(answer, want, 'in')).toBe(
      "Too loose: clamp −.002, want .002 to .008. The parts don't stand proud: .002 in is left.",
    );
  });

  test('with how far the sum can be trusted', () => {
    expect(sayStackBand(answered('.970', { band: '.001' }).answer, 'in')).toBe(
      'Worked out from the sizes, to ±.0010; ±.0010 at the very worst.',
    );
  });
});

describe('what has to give is said', () => {
  const firstTrim = (...q: Parameters<typeof answered>) => {
    const [offer] = answered(...q).answer.trims;
    return offer ? sayTrim(offer, 'in') : 'no trim';
  };

  test('as what to face off, from what to what, and what still does', () => {
    expect(firstTrim('.970')).toBe('Face .008 in off spacer: .385 to .377; good from .375 to .379.');
  });

  test('as what is missing when the part is too short for it', () => {
    expect(firstTrim('.970', { leastLength: '.380' })).toMatch(/spacer .* \.003 in is missing\. .* \.380 in/);
  });

  test('as the same figure when it can’t be proved, with how far it is and what settles it', () => {
    expect(firstTrim('.970', { band: '.003' })).toBe(
      'Face .008 in off spacer: .385 to .377; by the sizes alone from .375 to .379.',
    );
    const { answer, want } = answered('.970', { band: '.003' });
    expect(sayUnproved(answer.needed, want, false, 'in')).toBe(
      'These sizes prove this to ±.0030. Feeler the float once it is together.',
    );
    expect(sayUnproved(answer.needed, stackWantPreset('clamp'), true, 'in')).toBe(
      'This reading proves it to ±.0030 only. Read it again once that is done, with a finer tool.',
    );
  });

  test('as a part that is left out, or gives way to a shim, when it would get too short', () => {
    const instead = {
      pieces: 1,
      leaves: inch('.010'),
      kind: 'float',
      halfWidth: inch('0'),
      proved: true,
    } as const;
    expect(sayLeftOut('washer', instead, 'in')).toBe('Leave washer out: float .010.');
    const put = { aim: inch('.009'), lower: inch('.007'), upper: inch('.011') };
    expect(sayLeftOut('washer', { ...instead, pieces: 2, put }, 'in')).toBe(
      'Leave 2 of washer out, and put a shim of .009 in its place.',
    );
    expect(sayLeftOut('washer', { ...instead, still: inch('.015') }, 'in')).toBe(
      'Leave washer out; .015 more has to come off another part.',
    );
  });

  test('as what has to go in or come off in all, where nobody said which part may give', () => {
    expect(sayNeeded(answered('.970').answer, 'in')).toBe('In all .008 has to come off the parts.');
    // .993 − .968 = .025, less .010
    expect(sayNeeded(answered('.993').answer, 'in')).toBe(
      'In all .015 has to go in, or one part be longer by it.',
    );
  });

  test('as a shim or a new part when the stack is too loose', () => {
    const { answer } = answered('.993');
    expect(answer.shim && sayShim(answer.shim, 'in')).toBe('Add a shim of .015 in; good from .013 to .017.');
    expect(answer.longerParts.map((part) => sayLongerPart(part, 'in'))).toEqual([
      'Or make spacer new: .400 in in place of .385; good from .398 to .402.',
    ]);
  });

  test('as a shim that lies in the range beside it, where it is the thinnest that can be proved', () => {
    const inch = (text: string) => lengthOf(`${text} in`);
    const shim = { thickness: inch('.00023'), lower: inch('.00023'), upper: inch('.0014') };
    expect(sayShim(shim, 'in')).toBe('Add a shim of .0003 in; good from .0003 to .0014.');
    const thickest = { ...shim, thickness: inch('.00139'), upper: inch('.00139') };
    expect(sayShim(thickest, 'in')).toBe('Add a shim of .0013 in; good from .0003 to .0013.');
  });

  test('as one part in place of several', () => {
    const washer: StackPart = {
      name: 'washer',
      thickness: toleranceEstimate(inch('.062'), inch('0')),
      count: 2,
      adjustable: false,
    };
    expect(sayOnePart([washer, { ...washer, name: 'spacer', count: 1 }], inch('.447'), 'in')).toBe(
      'One part of .447 in does for 2 × washer and spacer, and leaves the same gap.',
    );
  });
});
