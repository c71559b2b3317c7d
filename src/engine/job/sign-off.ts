import { isSafetyCritical, isTouchSaid } from './safety.ts';
import type { SignOffQuestion } from './sign-off-question.ts';
import { type FindingCode, type Finding, finding } from './finding.ts';
import {
  unreadableFindings,
  worksheetFindings,
  stepFindings,
  partFindings,
  checkFindings,
  cutFindings,
} from './sign-off-findings.ts';

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
  // Listed, with the way to say it; what is proved on the machine stops the signing.
  'worksheet-assumed',
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

/**
 * What stands in the way of signing a job off, and what should be known before.
 *
 * Units:  times in milliseconds since 1970, cure times in hours; floating point.
 * Range:  a job of which nobody said what it touches is stopped, and is held to what a brake is held to.
 *         Brake, steering, axle and wheel jobs are stopped by a worksheet that is no good, too close to call, not judged and not
 *         proved by all of its checks, good only by a size of another part, or, where something came from it, without an
 *         answer; by a check that is missing, not done, failed, too close to call, with
 *         limits or a reading from before a size changed, by no check at all; by a cut that is not made, over, scrapped,
 *         older than its sizes or measured last with a tool too coarse to prove its limits; by no step, no torque on any step, a locker without cure time. On others these are
 *         warnings. What a good worksheet takes for granted is listed on any job. Missing is the check of a worksheet whose answer was cut from or assembled by; one that was only tried
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
    ...cutFindings(question, safetyCritical),
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
