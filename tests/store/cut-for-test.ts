import { readEntry, type Entry } from '../../src/engine/length/entry.ts';
import type { NewCut } from '../../src/store/kept/cuts.ts';
import { worked } from './open-for-test.ts';

/** A size as a fitter types it, in inches. */
export function inches(typed: string): Entry {
  return worked(readEntry(typed, { unit: 'in' }));
}

/** A spacer to be faced to 1.480 in. */
export function facing(jobId: string, more: Partial<NewCut> = {}): NewCut {
  return {
    jobId,
    name: 'Spacer, face to length',
    part: 'Spacer',
    operation: 'face',
    of: 'length',
    target: inches('1.480'),
    lower: inches('1.478'),
    upper: inches('1.481'),
    limitsFrom: 'the worksheet',
    cuttingTool: 'hss',
    machine: 'lathe',
    ...more,
  };
}
