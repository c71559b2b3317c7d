import type { DistanceUnit } from '../recheck-due.ts';

export type UsualRecheck = {
  readonly what: string;
  readonly days?: number;
  readonly distance?: Readonly<Record<DistanceUnit, number>>;
  readonly source: string;
};

const practice = 'common practice, no source; the manual’s own interval rules';

/** What is usually looked at again after a job, round figures of each unit. */
export const usualRechecks: readonly UsualRecheck[] = [
  { what: 'Nuts, torque, runout', distance: { mi: 50, km: 80 }, source: practice },
  { what: 'Cotter pins, paint marks, leaks', days: 7, source: practice },
  {
    what: 'Play of bearings and pivots, brake bracket free',
    distance: { mi: 500, km: 800 },
    source: practice,
  },
];
