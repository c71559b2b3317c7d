/** How much of a bolt's thread counts, in pitches. */

/**
 * From the end of the plain shank to the first whole thread, at most.
 * ISO 4014: the shank is at least as long as the greatest grip length less five pitches; ASME B18.2.1 likewise.
 */
export const RUN_OUT_PITCHES = 5;

/** No thread is whole before it has gone round once: common practice, no source. */
export const LEAST_RUN_OUT_PITCHES = 1;

/** Incomplete threads at the point, at most. ISO 4753: u is at most two pitches. */
export const POINT_PITCHES = 2;

/** Whole threads wanted past a nut. Common practice, no source. */
export const PAST_NUT_PITCHES = 2;

export type ThreadLengthRow = {
  /** Up to and with this length of bolt; left out in the last row. */
  readonly upTo?: string;
  readonly beside: string;
};

/**
 * Thread on a hexagon bolt or stud: twice its diameter and so much more.
 * ISO 888 (secondary source); the inch rows are ASME B18.2.1, from memory.
 */
export const threadLengthRows: Readonly<Record<'metric' | 'inch', readonly ThreadLengthRow[]>> = {
  metric: [{ upTo: '125 mm', beside: '6 mm' }, { upTo: '200 mm', beside: '12 mm' }, { beside: '25 mm' }],
  inch: [{ upTo: '6 in', beside: '1/4 in' }, { beside: '1/2 in' }],
};

export const THREAD_LENGTH_SOURCE =
  'thread on a hexagon bolt: ISO 888 (secondary source), ASME B18.2.1 from memory';
