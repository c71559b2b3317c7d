export type FindingCode =
  | 'worksheet-no-good'
  | 'worksheet-too-close'
  | 'worksheet-no-answer'
  | 'worksheet-unused'
  | 'worksheet-not-judged'
  | 'worksheet-assumed'
  | 'worksheet-of-another'
  | 'step-not-done'
  | 'step-changed'
  | 'no-torque-step'
  | 'no-torque-figure'
  | 'no-torque-source'
  | 'locker-curing'
  | 'no-cure-time'
  | 'mock-up-in'
  | 'no-steps'
  | 'no-check'
  | 'check-missing'
  | 'check-offered'
  | 'check-not-done'
  | 'check-failed'
  | 'check-too-close'
  | 'check-older'
  | 'check-read-before'
  | 'cut-open'
  | 'cut-over'
  | 'cut-scrapped'
  | 'cut-older'
  | 'cut-unproved'
  | 'no-odometer'
  | 'touch-not-said'
  | 'unreadable';

/** Where it is cured: one record, or a whole place of the job. */
export type FindingPlace =
  | { readonly at: 'step' | 'part' | 'check' | 'cut' | 'worksheet'; readonly id: string }
  | { readonly at: 'assembly' | 'fit-up' | 'odometer' | 'job' };

export type Finding = {
  readonly code: FindingCode;
  /** Names it among all of a job's findings; the same as long as it is about the same thing. */
  readonly key: string;
  /** How that thing stands. */
  readonly as: string;
  /** The step, part, check, cut or worksheet it is about, in the fitter's words; empty for the job itself. */
  readonly name: string;
  readonly place: FindingPlace;
  /** A worksheet's answer in one sentence; of a cut the tool it was measured with. */
  readonly said?: string;
  /** Nobody named that tool. */
  readonly isAssumed?: true;
  /** Where on that thing it is put right. */
  readonly field?: string;
  /** Which step, counted from 1. */
  readonly number?: number;
  readonly hoursLeft?: number;
  /** How many records it is about. */
  readonly count?: number;
};

/** A finding about one record, or about a whole place of the job. */
export function finding(code: FindingCode, name: string, place: FindingPlace, as = ''): Finding {
  const key = 'id' in place ? `${code} ${place.id}` : code;
  return { code, key, as, name, place };
}
