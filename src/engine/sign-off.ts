import type { CheckFound } from './check.ts';
import { isSafetyCritical, type System } from './safety.ts';

export type SignOffStep = {
  readonly id: string;
  readonly text: string;
  /** When it was done, milliseconds since 1970. */
  readonly doneAt?: number;
  readonly locker?: string;
  /** Hours until the locker has cured, as decimal text. */
  readonly cureHours?: string;
  /** A step that is torqued: the manual's figure and where it stands; empty text is not given yet. */
  readonly torque?: { readonly typed: string; readonly source: string };
};

export type SignOffQuestion = {
  readonly systems: readonly System[];
  /** Milliseconds since 1970. */
  readonly now: number;
  /** In their order. */
  readonly steps: readonly SignOffStep[];
  readonly parts: readonly { readonly id: string; readonly name: string; readonly isMockUp: boolean }[];
  readonly checks: readonly {
    readonly id: string;
    readonly name: string;
    readonly found: CheckFound;
    /** Its limits were worked out from readings that no longer count, or that newer ones stand beside. */
    readonly older: boolean;
  }[];
  /** Worksheets that offer checks of which none was made; used where a cut or a step came from their answer. */
  readonly unchecked: readonly { readonly title: string; readonly used: boolean }[];
  readonly cuts: readonly {
    readonly id: string;
    readonly name: string;
    readonly state: 'to-cut' | 'cutting' | 'to-size' | 'over' | 'scrapped' | 'made-again';
    readonly older: boolean;
  }[];
  /** A re-check waits for a distance, and no odometer reading was typed to count it from. */
  readonly lacksOdometer: boolean;
  /** Records of the job that this version can't read: nobody knows what they say. */
  readonly unreadable?: number;
};

export type FindingCode =
  | 'step-not-done'
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
  | 'cut-open'
  | 'cut-over'
  | 'cut-scrapped'
  | 'cut-older'
  | 'no-odometer'
  | 'unreadable';

/** Where it is cured: one record, or a whole place of the job. */
export type FindingPlace =
  | { readonly at: 'step' | 'part' | 'check' | 'cut'; readonly id: string }
  | { readonly at: 'assembly' | 'fit-up' | 'odometer' | 'job' };

export type Finding = {
  readonly code: FindingCode;
  /** The step, part, check, cut or worksheet it is about, in the fitter's words; empty for the job itself. */
  readonly name: string;
  readonly place: FindingPlace;
  /** Which step, counted from 1. */
  readonly number?: number;
  readonly hoursLeft?: number;
  /** How many records it is about. */
  readonly count?: number;
};

export type SignOffAnswer = {
  readonly safetyCritical: boolean;
  /** Nothing may be signed while one of these stands. */
  readonly blockers: readonly Finding[];
  readonly warnings: readonly Finding[];
};

// What stops any job; the rest stops a safety-critical one and is a warning on others.
const STOPS_ANY: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'step-not-done',
  'no-torque-figure',
  'no-torque-source',
  'locker-curing',
  'mock-up-in',
]);
const STOPS_NONE: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'no-cure-time',
  'no-steps',
  'check-offered',
  'check-older',
  'cut-scrapped',
  'cut-older',
  'no-odometer',
]);

const HOUR_MS = 3_600_000;

/**
 * What stands in the way of signing a job off, and what should be known before.
 *
 * Units:  times in milliseconds since 1970, cure times in hours; floating point.
 * Range:  brake, steering, axle and wheel jobs are stopped also by a check that is missing, not done, failed or too close
 *         to call, by no check at all, and by a cut that is over or not to size yet. Missing is the check of a worksheet whose
 *         answer was cut from or assembled by; one that was only tried out is a warning. So are they by a record that can't
 *         be read: a failed check may be in it.
 * Source: common practice, no source; the order of the findings is the order of the work.
 */
export function signOff(question: SignOffQuestion): SignOffAnswer {
  const safetyCritical = isSafetyCritical(question);
  const findings = [
    ...unreadableFindings(question),
    ...cutFindings(question),
    ...checkFindings(question, safetyCritical),
    ...partFindings(question),
    ...stepFindings(question),
    ...(question.lacksOdometer ? [finding('no-odometer', '', { at: 'odometer' })] : []),
  ];
  const stops = ({ code }: Finding) => STOPS_ANY.has(code) || (safetyCritical && !STOPS_NONE.has(code));
  return {
    safetyCritical,
    blockers: findings.filter(stops),
    warnings: findings.filter((one) => !stops(one)),
  };
}

/**
 * When a step's locker has cured, milliseconds since 1970; nothing while it isn't done or no cure time is given.
 *
 * Units:  hours as decimal text.
 */
export function curedAt({
  doneAt,
  cureHours,
}: Pick<SignOffStep, 'doneAt' | 'cureHours'>): number | undefined {
  const hours = hoursOf(cureHours);
  return doneAt === undefined || hours === undefined ? undefined : doneAt + hours * HOUR_MS;
}

function hoursOf(text: string | undefined): number | undefined {
  const hours = text === undefined || text.trim() === '' ? NaN : Number(text);
  return Number.isFinite(hours) ? hours : undefined;
}

function unreadableFindings({ unreadable = 0 }: SignOffQuestion): readonly Finding[] {
  return unreadable === 0 ? [] : [{ ...finding('unreadable', '', { at: 'job' }), count: unreadable }];
}

function stepFindings({ steps, now }: SignOffQuestion): readonly Finding[] {
  if (steps.length === 0) return [finding('no-steps', '', { at: 'assembly' })];
  return steps.flatMap((step, index) =>
    codesOfStep(step, now).map((code) => ({
      ...finding(code, step.text, { at: 'step', id: step.id }),
      number: index + 1,
      ...(code === 'locker-curing' && { hoursLeft: hoursLeft(step, now) }),
    })),
  );
}

function codesOfStep(step: SignOffStep, now: number): readonly FindingCode[] {
  const { locker } = step;
  const torque = lackOfTorque(step);
  return [
    ...(step.doneAt === undefined ? (['step-not-done'] as const) : []),
    ...(torque === undefined ? [] : [torque]),
    ...(hoursLeft(step, now) > 0 ? (['locker-curing'] as const) : []),
    ...(locker !== undefined && hoursOf(step.cureHours) === undefined ? (['no-cure-time'] as const) : []),
  ];
}

// Without the figure there is nothing yet whose source could be named.
function lackOfTorque({ torque }: SignOffStep): FindingCode | undefined {
  if (!torque) return undefined;
  if (torque.typed.trim() === '') return 'no-torque-figure';
  return torque.source.trim() === '' ? 'no-torque-source' : undefined;
}

function hoursLeft(step: SignOffStep, now: number): number {
  return ((curedAt(step) ?? now) - now) / HOUR_MS;
}

function partFindings({ parts }: SignOffQuestion): readonly Finding[] {
  return parts
    .filter(({ isMockUp }) => isMockUp)
    .map(({ id, name }) => finding('mock-up-in', name, { at: 'part', id }));
}

const CHECK_CODES: Readonly<Record<CheckFound, FindingCode | undefined>> = {
  'not-done': 'check-not-done',
  'no-good': 'check-failed',
  'too-close': 'check-too-close',
  good: undefined,
};

function checkFindings({ checks, unchecked }: SignOffQuestion, safetyCritical: boolean): readonly Finding[] {
  const missing = unchecked
    .filter(({ used }) => used || safetyCritical)
    .map(({ title, used }) => finding(used ? 'check-missing' : 'check-offered', title, { at: 'fit-up' }));
  // A job that can't kill needs no check; one that can needs one even where no worksheet asks for it.
  const none =
    safetyCritical && checks.length === 0 && !unchecked.some(({ used }) => used)
      ? [finding('no-check', '', { at: 'fit-up' })]
      : [];
  const found = checks.flatMap(({ id, name, found: state, older }) => {
    const code = CHECK_CODES[state];
    const place = { at: 'check', id } as const;
    return [
      ...(code === undefined ? [] : [finding(code, name, place)]),
      ...(older ? [finding('check-older', name, place)] : []),
    ];
  });
  return [...none, ...missing, ...found];
}

function cutFindings({ cuts }: SignOffQuestion): readonly Finding[] {
  return cuts.flatMap(({ id, name, state, older }) => {
    const code = codeOfCut(state);
    const place = { at: 'cut', id } as const;
    const counts = state !== 'scrapped' && state !== 'made-again';
    return [
      ...(code === undefined ? [] : [finding(code, name, place)]),
      ...(older && counts ? [finding('cut-older', name, place)] : []),
    ];
  });
}

function codeOfCut(state: SignOffQuestion['cuts'][number]['state']): FindingCode | undefined {
  switch (state) {
    case 'to-cut':
    case 'cutting':
      return 'cut-open';
    case 'over':
      return 'cut-over';
    case 'scrapped':
      return 'cut-scrapped';
    case 'to-size':
    case 'made-again':
      return undefined;
    default:
      return state satisfies never;
  }
}

function finding(code: FindingCode, name: string, place: FindingPlace): Finding {
  return { code, name, place };
}
