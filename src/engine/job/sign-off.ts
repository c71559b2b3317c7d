import type { CheckFound } from '../reading/check.ts';
import { isSafetyCritical, isTouchSaid, type Touched } from './safety.ts';

export type SignOffStep = {
  readonly id: string;
  readonly text: string;
  /** When it was done, milliseconds since 1970. */
  readonly doneAt?: number;
  /** What it was done by has changed since, so that it has to be done again. */
  readonly changed?: boolean;
  readonly locker?: string;
  /** Hours until the locker has cured, as decimal text. */
  readonly cureHours?: string;
  /** A step that is torqued: the manual's figure and where it stands; empty text is not given yet. */
  readonly torque?: { readonly typed: string; readonly source: string };
};

/** What stands in a record now, as short text: a reason holds for a blocker only as long as this stays the same. */
type AsItStands = { readonly as?: string };

/** What a worksheet's answer comes to, checks of it counted; `not-judged` asks for no verdict. */
export type WorksheetFound = 'good' | 'no-good' | 'too-close' | 'no-answer' | 'not-judged';

/** Why something that stops the signing may stand, as it was written, and what it was written about. */
export type WrittenReason = { readonly why: string; readonly as: string };

export type SignOffQuestion = Touched & {
  /** Milliseconds since 1970. */
  readonly now: number;
  /** In their order. */
  readonly steps: readonly (SignOffStep & AsItStands)[];
  readonly parts: readonly ({
    readonly id: string;
    readonly name: string;
    readonly isMockUp: boolean;
  } & AsItStands)[];
  readonly worksheets?: readonly ({
    readonly id: string;
    readonly title: string;
    readonly found: WorksheetFound;
    /** Its answer in one sentence, in the fitter's unit. */
    readonly said: string;
    /** A cut, a check or a step came from it. */
    readonly used: boolean;
  } & AsItStands)[];
  readonly checks: readonly ({
    readonly id: string;
    readonly name: string;
    readonly found: CheckFound;
    /** Its limits were worked out from readings that no longer count, or that newer ones stand beside. */
    readonly older: boolean;
    /** It was read before a size behind it changed. */
    readonly readBefore?: boolean;
  } & AsItStands)[];
  /** Worksheets that offer checks of which none was made; used where a cut or a step came from their answer. */
  readonly unchecked: readonly ({
    readonly id?: string;
    readonly title: string;
    readonly used: boolean;
  } & AsItStands)[];
  readonly cuts: readonly ({
    readonly id: string;
    readonly name: string;
    readonly state: 'to-cut' | 'cutting' | 'to-size' | 'over' | 'scrapped' | 'made-again';
    readonly older: boolean;
  } & AsItStands)[];
  /** What the fitter wrote, by the key of the finding it is about. */
  readonly reasons?: Readonly<Record<string, WrittenReason>>;
  /** A re-check waits for a distance, and no odometer reading was typed to count it from. */
  readonly lacksOdometer: boolean;
  /** Records of the job that this version can't read: nobody knows what they say. */
  readonly unreadable?: number;
};

export type FindingCode =
  | 'worksheet-no-good'
  | 'worksheet-too-close'
  | 'worksheet-no-answer'
  | 'worksheet-unused'
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
  /** A worksheet's answer in one sentence. */
  readonly said?: string;
  /** Which step, counted from 1. */
  readonly number?: number;
  readonly hoursLeft?: number;
  /** How many records it is about. */
  readonly count?: number;
};

/** What stops the signing. */
export type Blocker = Finding & {
  /** A reason that was written about it when it stood otherwise: it is asked for again. */
  readonly wroteBefore?: string;
};

export type SignOffAnswer = {
  readonly safetyCritical: boolean;
  /** Nothing may be signed while one of these stands. */
  readonly blockers: readonly Blocker[];
  /** They would stop it, and the fitter wrote down why they may stand. */
  readonly standing: readonly (Finding & { readonly why: string })[];
  readonly warnings: readonly Finding[];
};

// What stops any job; the rest stops a safety-critical one and is a warning on others.
const STOPS_ANY: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'step-not-done',
  'step-changed',
  'no-torque-figure',
  'no-torque-source',
  'locker-curing',
  'mock-up-in',
  'touch-not-said',
]);
const STOPS_NONE: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'worksheet-unused',
  'check-offered',
  'no-odometer',
]);
// Nobody knows what such a record says, so nobody can say why it may stand; what a job touches is said by one press.
const NO_REASON: ReadonlySet<FindingCode> = new Set<FindingCode>(['unreadable', 'touch-not-said']);

// Chosen, not published: "ok", a dash and one letter held down are no reasons; "proof-loaded" is one.
const LEAST_LETTERS = 6;
const LEAST_KINDS = 3;

/** Whether what was written says anything: so many letters or digits, and not one key held down. */
export function isReason(text: string): boolean {
  const letters = text.toLowerCase().match(/[\p{L}\p{N}]/gu) ?? [];
  return letters.length >= LEAST_LETTERS && new Set(letters).size >= LEAST_KINDS;
}

/** Whether a written reason can let it pass. */
export function mayBeReasoned({ code }: Pick<Finding, 'code'>): boolean {
  return !NO_REASON.has(code);
}

const HOUR_MS = 3_600_000;

/**
 * What stands in the way of signing a job off, and what should be known before.
 *
 * Units:  times in milliseconds since 1970, cure times in hours; floating point.
 * Range:  a job of which nobody said what it touches is stopped, and is held to what a brake is held to.
 *         Brake, steering, axle and wheel jobs are stopped by a worksheet that is no good, too close to call or, where
 *         something came from it, without an answer; by a check that is missing, not done, failed, too close to call, with
 *         limits or a reading from before a size changed, by no check at all; by a cut that is not made, over, scrapped or
 *         older than its sizes; by no step, no torque on any step, a locker without cure time. On others these are
 *         warnings. Missing is the check of a worksheet whose answer was cut from or assembled by; one that was only tried
 *         out is a warning. A reason lets one blocker pass, as long as it stands as it stood when that was written; a
 *         record that can't be read has none: a failed check may be in it.
 * Source: common practice, no source; the order of the findings is the order of the work.
 */
export function signOff(question: SignOffQuestion): SignOffAnswer {
  const safetyCritical = isSafetyCritical(question);
  const findings = [
    ...(isTouchSaid(question) ? [] : [finding('touch-not-said', '', { at: 'job' })]),
    ...unreadableFindings(question),
    ...worksheetFindings(question),
    ...cutFindings(question),
    ...checkFindings(question, safetyCritical),
    ...partFindings(question),
    ...stepFindings(question, safetyCritical),
    ...(question.lacksOdometer ? [finding('no-odometer', '', { at: 'odometer' })] : []),
  ];
  const stops = ({ code }: Finding) => STOPS_ANY.has(code) || (safetyCritical && !STOPS_NONE.has(code));
  const stopping = findings.filter(stops);
  const reasonOf = (one: Finding) => reasonFor(one, question.reasons);
  return {
    safetyCritical,
    blockers: stopping
      .filter((one) => reasonOf(one)?.holds !== true)
      .map((one) => withBefore(one, reasonOf(one))),
    standing: stopping.flatMap((one) => {
      const reason = reasonOf(one);
      return reason?.holds === true ? [{ ...one, why: reason.why }] : [];
    }),
    warnings: findings.filter((one) => !stops(one)),
  };
}

type Reason = { readonly why: string; readonly holds: boolean };

function reasonFor(one: Finding, reasons: SignOffQuestion['reasons'] = {}): Reason | undefined {
  const written = Object.hasOwn(reasons, one.key) ? reasons[one.key] : undefined;
  if (!written || !mayBeReasoned(one) || !isReason(written.why)) return undefined;
  return { why: written.why, holds: written.as === one.as };
}

function withBefore(one: Finding, reason: Reason | undefined): Blocker {
  return reason ? { ...one, wroteBefore: reason.why } : one;
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
  // Nothing holds at once: a cure time of nothing is none.
  return Number.isFinite(hours) && hours > 0 ? hours : undefined;
}

function unreadableFindings({ unreadable = 0 }: SignOffQuestion): readonly Finding[] {
  return unreadable === 0 ? [] : [{ ...finding('unreadable', '', { at: 'job' }), count: unreadable }];
}

function worksheetFindings({ worksheets = [] }: SignOffQuestion): readonly Finding[] {
  return worksheets.flatMap(({ id, title, found, said, used, as }) => {
    const code = codeOfWorksheet(found, used);
    return code === undefined ? [] : [{ ...finding(code, title, { at: 'worksheet', id }, as), said }];
  });
}

function codeOfWorksheet(found: WorksheetFound, used: boolean): FindingCode | undefined {
  switch (found) {
    case 'no-good':
      return 'worksheet-no-good';
    case 'too-close':
      return 'worksheet-too-close';
    case 'no-answer':
      return used ? 'worksheet-no-answer' : 'worksheet-unused';
    case 'good':
    case 'not-judged':
      return undefined;
    default:
      return found satisfies never;
  }
}

function stepFindings({ steps, now }: SignOffQuestion, safetyCritical: boolean): readonly Finding[] {
  if (steps.length === 0) return [finding('no-steps', '', { at: 'assembly' })];
  const torqued = steps.some(({ torque }) => torque !== undefined);
  return [
    ...(safetyCritical && !torqued
      ? [finding('no-torque-step', '', { at: 'assembly' }, `${steps.length}`)]
      : []),
    ...steps.flatMap((step, index) =>
      codesOfStep(step, now).map((code) => ({
        ...finding(code, step.text, { at: 'step', id: step.id }, step.as),
        number: index + 1,
        ...(code === 'locker-curing' && { hoursLeft: hoursLeft(step, now) }),
      })),
    ),
  ];
}

function codesOfStep(step: SignOffStep, now: number): readonly FindingCode[] {
  const { locker } = step;
  const torque = lackOfTorque(step);
  return [
    ...(step.doneAt === undefined ? (['step-not-done'] as const) : []),
    ...(step.doneAt !== undefined && step.changed === true ? (['step-changed'] as const) : []),
    ...(torque === undefined ? [] : [torque]),
    ...(hoursLeft(step, now) > 0 ? (['locker-curing'] as const) : []),
    ...(locker !== undefined && hoursOf(step.cureHours) === undefined ? (['no-cure-time'] as const) : []),
  ];
}

// Without the figure there is nothing yet whose source could be named.
function lackOfTorque({ torque }: SignOffStep): FindingCode | undefined {
  if (!torque) return undefined;
  // A figure of nothing holds nothing.
  if (!/[1-9]/.test(torque.typed)) return 'no-torque-figure';
  return torque.source.trim() === '' ? 'no-torque-source' : undefined;
}

function hoursLeft(step: SignOffStep, now: number): number {
  return ((curedAt(step) ?? now) - now) / HOUR_MS;
}

function partFindings({ parts }: SignOffQuestion): readonly Finding[] {
  return parts
    .filter(({ isMockUp }) => isMockUp)
    .map(({ id, name, as }) => finding('mock-up-in', name, { at: 'part', id }, as));
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
    .map(({ id, title, used, as }) => {
      const found = finding(used ? 'check-missing' : 'check-offered', title, { at: 'fit-up' }, as);
      return { ...found, key: `${found.key} ${id ?? title}` };
    });
  // A job that can't kill needs no check; one that can needs one even where no worksheet asks for it.
  const none =
    safetyCritical && checks.length === 0 && !unchecked.some(({ used }) => used)
      ? [finding('no-check', '', { at: 'fit-up' })]
      : [];
  const found = checks.flatMap(({ id, name, found: state, older, readBefore, as }) => {
    const code = CHECK_CODES[state];
    const place = { at: 'check', id } as const;
    return [
      ...(code === undefined ? [] : [finding(code, name, place, as)]),
      ...(older ? [finding('check-older', name, place, as)] : []),
      ...(readBefore === true ? [finding('check-read-before', name, place, as)] : []),
    ];
  });
  return [...none, ...missing, ...found];
}

function cutFindings({ cuts }: SignOffQuestion): readonly Finding[] {
  return cuts.flatMap(({ id, name, state, older, as }) => {
    const code = codeOfCut(state);
    const place = { at: 'cut', id } as const;
    const counts = state !== 'scrapped' && state !== 'made-again';
    return [
      ...(code === undefined ? [] : [finding(code, name, place, as)]),
      ...(older && counts ? [finding('cut-older', name, place, as)] : []),
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

function finding(code: FindingCode, name: string, place: FindingPlace, as = ''): Finding {
  const key = 'id' in place ? `${code} ${place.id}` : code;
  return { code, key, as, name, place };
}
