import { lengthOf } from '../../../length/length.ts';
import type { StackWant } from '../spacer-stack.ts';

const SOURCE = 'common practice, no source';

function want(kind: StackWant['kind'], aim: string, lower: string, upper: string): StackWant {
  return {
    kind,
    limits: { lower: lengthOf(lower), upper: lengthOf(upper), source: SOURCE },
    aim: lengthOf(aim),
  };
}

/** What a stack is usually wanted to do; every figure is the user's to change. The metric rows are chosen round, not converted. */
export const usualStackWants: Readonly<Record<'in' | 'mm', Readonly<Record<StackWant['kind'], StackWant>>>> =
  {
    in: {
      // A brake bracket that slides on its sleeve: free when hot and dirty, too little to rattle.
      float: want('float', '.010 in', '.008 in', '.012 in'),
      // A wheel or an arm between its thrust faces.
      'end-play': want('end-play', '.004 in', '.002 in', '.006 in'),
      // An inner sleeve that stands proud, so that the nut clamps it and not what turns on it.
      clamp: want('clamp', '.004 in', '.002 in', '.008 in'),
    },
    mm: {
      float: want('float', '0.25 mm', '0.20 mm', '0.30 mm'),
      'end-play': want('end-play', '0.10 mm', '0.05 mm', '0.15 mm'),
      clamp: want('clamp', '0.10 mm', '0.05 mm', '0.20 mm'),
    },
  };
