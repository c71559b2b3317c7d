import { isMore, lengthOf, plus, times, type Length } from '../length/length.ts';
import { threadLengthRows } from './tables/bolt-threads.ts';
import { isInchThread, type Thread } from './threads.ts';

/** Lengths past which a bolt has more thread, shortest first. */
export function moreThreadPast(
  thread: Thread,
): readonly { readonly border: Length; readonly thread: Length }[] {
  const rows = threadLengthRows[isInchThread(thread) ? 'inch' : 'metric'];
  return rows.flatMap(({ upTo }, index) => {
    const next = rows[index + 1];
    return upTo !== undefined && next
      ? [{ border: lengthOf(upTo), thread: plus(times(thread.major, 2), lengthOf(next.beside)) }]
      : [];
  });
}

/** Thread on a hexagon bolt of a length; on a stud's outer end, by what stands out of the part. */
export function usualThreadLength(thread: Thread, boltLength: Length): Length {
  const rows = threadLengthRows[isInchThread(thread) ? 'inch' : 'metric'];
  const row = rows.find(({ upTo }) => upTo === undefined || !isMore(boltLength, lengthOf(upTo)));
  return plus(times(thread.major, 2), lengthOf(row?.beside ?? '0 mm'));
}
