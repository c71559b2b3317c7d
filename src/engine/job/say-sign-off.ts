import type { Finding, FindingCode } from './finding.ts';
import type { SignOffAnswer } from './sign-off.ts';

/** Whether it can be signed, in one sentence. */
export function saySignOff({ blockers, standing }: Pick<SignOffAnswer, 'blockers' | 'standing'>): string {
  if (blockers.length === 0)
    return standing.length === 0
      ? 'Nothing stands in the way of signing.'
      : `Can be signed: ${standing.length === 1 ? 'one thing stands' : `${standing.length} things stand`} by your reason.`;
  return blockers.length === 1
    ? 'One thing stands in the way of signing.'
    : `${blockers.length} things stand in the way of signing.`;
}

type Found = Finding & {
  /** What carries it, `Step 3`. */
  readonly step: string;
};
type SaidFinding = { readonly what: string; readonly todo: string };

const SAID: Readonly<Record<FindingCode, (found: Found) => SaidFinding>> = {
  'worksheet-no-good': ({ name, said }) => ({
    what: `${name}: no good`,
    todo: said ?? 'Its worksheet says so.',
  }),
  'worksheet-too-close': ({ name, said }) => ({
    what: `${name}: too close to call`,
    todo: said ?? 'Its worksheet says so.',
  }),
  'worksheet-no-answer': ({ name }) => ({
    what: `${name}: no answer`,
    todo: 'Parts were made or put together by it. Give what it lacks.',
  }),
  'worksheet-unused': ({ name }) => ({
    what: `${name}: no answer`,
    todo: 'Nothing came from it. Give what it lacks, or remove it.',
  }),
  'worksheet-not-judged': ({ name }) => ({
    what: `${name}: not judged`,
    todo: 'Nothing that was measured is held against its limits yet. Give what was measured, or check it.',
  }),
  'worksheet-assumed': ({ name, said }) => ({
    what: `${name}: good only as assumed`,
    todo: `Assumed: ${said ?? 'a choice nobody made'}. Say what it is.`,
  }),
  'worksheet-of-another': ({ name, said }) => ({
    what: `${name}: good only with another part’s size`,
    todo: `Read it on this one: ${said ?? 'its size'}.`,
  }),
  'step-not-done': ({ name, step }) => ({ what: `${step} is not done`, todo: name }),
  'step-changed': ({ name, step }) => ({
    what: `${step}: sizes changed since it was done`,
    todo: `${name}. Do it again.`,
  }),
  'no-torque-step': () => ({
    what: 'No step has a torque',
    todo: 'Give the step that tightens it the service manual’s figure.',
  }),
  'no-torque-figure': ({ name, step }) => ({
    what: `${step} has no torque yet`,
    todo: `${name}. Type the service manual’s figure.`,
  }),
  'no-torque-source': ({ name, step }) => ({
    what: `${step}: where is its torque stated?`,
    todo: `${name}. Name the manual and the page.`,
  }),
  'locker-curing': ({ name, step, hoursLeft }) => ({
    what: `${step}: the thread locker is still curing`,
    todo: `${sayHours(hoursLeft ?? 0)} to go. ${name}`,
  }),
  'no-cure-time': ({ step }) => ({
    what: `${step}: no cure time for its thread locker`,
    todo: 'Its maker states one; without it nobody can tell when it holds.',
  }),
  'mock-up-in': ({ name }) => ({
    what: `${name} is still a mock-up`,
    todo: 'Fit the real part, then say that it is swapped.',
  }),
  'no-steps': () => ({
    what: 'No assembly step is written down',
    todo: 'The sheet will not say in which order it goes together.',
  }),
  'no-check': () => ({
    what: 'No fit-up check at all',
    todo: 'A job that touches a brake, the steering, an axle or a wheel needs at least one.',
  }),
  'check-missing': ({ name }) => ({
    what: `Nothing checks ${name}`,
    todo: 'Parts were made or put together by it. Add the check it offers.',
  }),
  'check-offered': ({ name }) => ({
    what: `Nothing checks ${name}`,
    todo: 'Nothing was cut or assembled by it. If it counts, add its check.',
  }),
  'check-not-done': ({ name }) => ({ what: `${name}: not checked yet`, todo: 'Take its readings.' }),
  'check-failed': ({ name }) => ({ what: `${name}: no good`, todo: 'Put it right, then check again.' }),
  'check-too-close': ({ name }) => ({
    what: `${name}: too close to call`,
    todo: 'More readings or a finer tool can settle it.',
  }),
  'check-older': ({ name }) => ({
    what: `${name}: limits older than their sizes`,
    todo: 'A size behind them changed since. Take over the new limits.',
  }),
  'check-read-before': ({ name }) => ({
    what: `${name}: read before a size changed`,
    todo: 'Check it again on what is there now.',
  }),
  'cut-open': ({ name }) => ({
    what: `${name}: still to cut`,
    todo: 'Cut it to size, or take it off the list.',
  }),
  'cut-over': ({ name }) => ({
    what: `${name}: cut past its limit`,
    todo: 'Make it again, or let another part give.',
  }),
  'cut-scrapped': ({ name }) => ({
    what: `${name}: scrapped`,
    todo: 'Make it again, or take it off the list.',
  }),
  'cut-older': ({ name }) => ({
    what: `${name}: older than its sizes`,
    todo: 'A size behind it changed since. Take over the new figures.',
  }),
  'cut-unproved': ({ name, said, isAssumed }) => ({
    what: isAssumed ? `${name}: nobody said what it was measured with` : `${name}: measured too coarsely`,
    todo: isAssumed
      ? `Assumed: ${said ?? 'the usual tool'}, which can’t prove its limits. Measure it again and name the tool.`
      : `${said === undefined ? 'Its tool' : `The ${said}`} can’t prove its limits. Measure it with a finer one.`,
  }),
  'no-odometer': () => ({
    what: 'No odometer reading to count from',
    todo: 'A re-check waits for a distance. Type what the odometer reads now.',
  }),
  'touch-not-said': () => ({
    what: 'Not said what this job touches',
    todo: 'Brake, steering, axle, wheel, engine, or none of these: say it under About.',
  }),
  unreadable: ({ count }) => ({
    what: `Can’t be read by this version: ${count === 1 ? 'one record' : `${count} records`}`,
    todo: 'What it says counts in nothing here, and may be a failed check. A newer Slipfit may read it, an earlier backup mend it.',
  }),
};

/** What was found, and what to do about it. */
export function sayFinding(finding: Finding): SaidFinding {
  return SAID[finding.code]({
    ...finding,
    // A step is a sentence of the fitter's own; others go on behind it.
    name: finding.name.replace(/\.+$/, ''),
    step: finding.number === undefined ? 'This step' : `Step ${finding.number}`,
  });
}

/** Hours as a fitter says them: "6 h", "1 h 30 min", "20 min"; begun minutes count. */
export function sayHours(hours: number): string {
  const minutes = Math.ceil(hours * 60 - 1e-6);
  const whole = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (whole === 0) return `${rest} min`;
  return rest === 0 ? `${whole} h` : `${whole} h ${rest} min`;
}
