import { sayHours } from '../../engine/job/say-sign-off.ts';
import { curedAt } from '../../engine/job/locker-cure.ts';
import type { SignOffStep } from '../../engine/job/sign-off-question.ts';
import type { AssemblyStep } from '../../store/base/records.ts';
import { timeWords } from '../common/day-words.ts';

/** A step as the engine asks for it. */
export function engineStep(step: AssemblyStep): SignOffStep {
  return {
    id: step.id,
    text: step.text,
    ...(step.done && { doneAt: step.done.at }),
    ...(step.locker !== undefined && { locker: step.locker }),
    ...(step.cureHours !== undefined && { cureHours: step.cureHours }),
    ...(step.torque && { torque: step.torque }),
  };
}

/** Why what was done once is not done any more. */
export function againWords({ wasDone }: Pick<AssemblyStep, 'wasDone'>): string | undefined {
  return wasDone && `Done by ${wasDone.by}, ${timeWords(wasDone.at)}, and changed since: do it again.`;
}

/** The thread locker with its cure: how long, until when, or that it has. */
export function lockerWords(step: AssemblyStep, now: number): string | undefined {
  if (step.locker === undefined) return undefined;
  if (step.cureHours === undefined) return `${step.locker}, cure time not given`;
  const at = curedAt(engineStep(step));
  if (at === undefined) return `${step.locker}, cures in ${step.cureHours} h`;
  // A step done just now is later than the time this screen was drawn with.
  const since = Math.max(now, step.done?.at ?? now);
  return at <= since
    ? `${step.locker}, cured since ${timeWords(at)}`
    : `${step.locker}, cures until ${timeWords(at)}, ${sayHours((at - since) / 3_600_000)} to go`;
}
