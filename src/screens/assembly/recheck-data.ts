import { odometerIn, recheckDue, type DistanceUnit, type RecheckDue } from '../../engine/job/recheck-due.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { markRechecked } from '../../store/kept/rechecks.ts';
import type { Job, Recheck } from '../../store/base/records.ts';
import type { StoreResult } from '../../store/base/store-refusal.ts';
import { calendarDate, dayWords } from '../common/day-words.ts';

/** What a re-check's distance counts in. */
export function unitOf(recheck: Pick<Recheck, 'unit'>, job: Pick<Job, 'odometer'>): DistanceUnit {
  return recheck.unit ?? job.odometer?.unit ?? 'mi';
}

/** Whether a re-check is due, as of now and the last odometer reading. */
export function dueNow(recheck: Recheck, job: Pick<Job, 'odometer'>, now: number): RecheckDue {
  const { afterDays, afterDistance, fromOdometer } = recheck;
  const unit = unitOf(recheck, job);
  return recheckDue({
    today: calendarDate(now),
    from: calendarDate(recheck.from),
    ...(afterDays !== undefined && { afterDays }),
    ...(afterDistance !== undefined && {
      distance: {
        after: afterDistance,
        unit,
        ...(fromOdometer !== undefined && { from: { reading: fromOdometer, unit } }),
        ...(job.odometer && { now: job.odometer }),
      },
    }),
  });
}

export function isDue(due: RecheckDue): boolean {
  return due.state === 'due' || due.state === 'overdue';
}

/** Marks it done, with the odometer where it was read today and counts in the same unit: nobody read an older figure now. */
export async function recheckedNow(
  store: Store,
  job: Job,
  recheck: Recheck,
  by: string,
): Promise<StoreResult<Recheck>> {
  const { odometer } = job;
  return markRechecked(store, recheck.id, {
    by,
    ...(odometer &&
      odometer.unit === unitOf(recheck, job) &&
      isToday(odometer.at) && { odometer: odometer.reading }),
  });
}

function isToday(at: number): boolean {
  return dayWords(at) === dayWords(timeToKeep());
}

/** The start of a re-check whose distance now counts in this unit; without one, the odometer as it stands. */
export function startIn(
  unit: DistanceUnit,
  recheck: Recheck,
  job: Pick<Job, 'odometer'>,
): Pick<Recheck, 'unit' | 'fromOdometer'> {
  const { fromOdometer } = recheck;
  const start =
    fromOdometer === undefined ? job.odometer : { reading: fromOdometer, unit: unitOf(recheck, job) };
  return { unit, ...(start && { fromOdometer: odometerIn(start, unit) }) };
}
