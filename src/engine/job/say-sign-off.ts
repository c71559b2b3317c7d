import type { Finding, SignOffAnswer } from './sign-off.ts';

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

/** What was found, and what to do about it. */
export function sayFinding(finding: Finding): { readonly what: string; readonly todo: string } {
  const { code } = finding;
  // A step is a sentence of the fitter's own; others go on behind it.
  const name = finding.name.replace(/\.+$/, '');
  const step = finding.number === undefined ? 'This step' : `Step ${finding.number}`;
  switch (code) {
    case 'worksheet-no-good':
      return { what: `${name}: no good`, todo: finding.said ?? 'Its worksheet says so.' };
    case 'worksheet-too-close':
      return { what: `${name}: too close to call`, todo: finding.said ?? 'Its worksheet says so.' };
    case 'worksheet-no-answer':
      return {
        what: `${name}: no answer`,
        todo: 'Parts were made or put together by it. Give what it lacks.',
      };
    case 'worksheet-unused':
      return { what: `${name}: no answer`, todo: 'Nothing came from it. Give what it lacks, or remove it.' };
    case 'step-not-done':
      return { what: `${step} is not done`, todo: name };
    case 'step-changed':
      return { what: `${step}: sizes changed since it was done`, todo: `${name}. Do it again.` };
    case 'no-torque-step':
      return {
        what: 'No step has a torque',
        todo: 'Give the step that tightens it the service manual’s figure.',
      };
    case 'no-torque-figure':
      return { what: `${step} has no torque yet`, todo: `${name}. Type the service manual’s figure.` };
    case 'no-torque-source':
      return {
        what: `${step}: where is its torque stated?`,
        todo: `${name}. Name the manual and the page.`,
      };
    case 'locker-curing':
      return {
        what: `${step}: the thread locker is still curing`,
        todo: `${sayHours(finding.hoursLeft ?? 0)} to go. ${name}`,
      };
    case 'no-cure-time':
      return {
        what: `${step}: no cure time for its thread locker`,
        todo: 'Its maker states one; without it nobody can tell when it holds.',
      };
    case 'mock-up-in':
      return { what: `${name} is still a mock-up`, todo: 'Fit the real part, then say that it is swapped.' };
    case 'no-steps':
      return {
        what: 'No assembly step is written down',
        todo: 'The sheet will not say in which order it goes together.',
      };
    case 'no-check':
      return {
        what: 'No fit-up check at all',
        todo: 'A job that touches a brake, the steering, an axle or a wheel needs at least one.',
      };
    case 'check-missing':
      return {
        what: `Nothing checks ${name}`,
        todo: 'Parts were made or put together by it. Add the check it offers.',
      };
    case 'check-offered':
      return {
        what: `Nothing checks ${name}`,
        todo: 'Nothing was cut or assembled by it. If it counts, add its check.',
      };
    case 'check-not-done':
      return { what: `${name}: not checked yet`, todo: 'Take its readings.' };
    case 'check-failed':
      return { what: `${name}: no good`, todo: 'Put it right, then check again.' };
    case 'check-too-close':
      return { what: `${name}: too close to call`, todo: 'More readings or a finer tool can settle it.' };
    case 'check-older':
      return {
        what: `${name}: limits older than their sizes`,
        todo: 'A size behind them changed since. Take over the new limits.',
      };
    case 'check-read-before':
      return {
        what: `${name}: read before a size changed`,
        todo: 'Check it again on what is there now.',
      };
    case 'cut-open':
      return { what: `${name}: still to cut`, todo: 'Cut it to size, or take it off the list.' };
    case 'cut-over':
      return { what: `${name}: cut past its limit`, todo: 'Make it again, or let another part give.' };
    case 'cut-scrapped':
      return { what: `${name}: scrapped`, todo: 'Make it again, or take it off the list.' };
    case 'cut-older':
      return {
        what: `${name}: older than its sizes`,
        todo: 'A size behind it changed since. Take over the new figures.',
      };
    case 'no-odometer':
      return {
        what: 'No odometer reading to count from',
        todo: 'A re-check waits for a distance. Type what the odometer reads now.',
      };
    case 'touch-not-said':
      return {
        what: 'Not said what this job touches',
        todo: 'Brake, steering, axle, wheel, engine, or none of these: say it under About.',
      };
    case 'unreadable':
      return {
        what: `Can’t be read by this version: ${finding.count === 1 ? 'one record' : `${finding.count} records`}`,
        todo: 'What it says counts in nothing here, and may be a failed check. A newer Slipfit may read it, an earlier backup mend it.',
      };
    default:
      return code satisfies never;
  }
}

/** Hours as a fitter says them: "6 h", "1 h 30 min", "20 min"; begun minutes count. */
export function sayHours(hours: number): string {
  const minutes = Math.ceil(hours * 60 - 1e-6);
  const whole = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (whole === 0) return `${rest} min`;
  return rest === 0 ? `${whole} h` : `${whole} h ${rest} min`;
}
