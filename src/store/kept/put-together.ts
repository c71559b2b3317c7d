import type { StoreName } from '../base/stores.ts';
import { isSeenOtherwise, lastTake } from './checks.ts';
import { withStamps } from '../opening/act-changes.ts';
import type { Stamp } from '../base/clock.ts';
import { withStateByPasses } from './cut-state.ts';
import { inShort, isDoneAs, isSeenAs, isToDoAgain } from './done-again.ts';
import { isStamped, type Kept, type KeptStamped } from '../base/kept.ts';
import { stampAt } from '../base/merge.ts';
import { newId } from '../base/new-id.ts';
import { isPlainObject } from '../base/paths.ts';
import { checkKind } from './check-schema.ts';
import { parseKept } from '../base/schema-common.ts';

/**
 * A record whose fields were put together, from two phones or by an undo, so that nothing stands as done or seen that was
 * done or seen of something else. It follows from the fields and their stamps alone, and can be worked out again from its
 * own result: whatever order files come in, every phone ends with the same.
 */
export function putTogether<T extends Kept>(store: StoreName, record: T): T | KeptStamped {
  if (!isStamped(record)) return record;
  if (store === 'steps' || store === 'rechecks') return withDoneAsItSays(store, record);
  return store === 'checks' ? withWhatIsToSee(record) : withStateByPasses(store, record);
}

/**
 * `done` and `wasDone` are one: what was written of them later than `done` counts. What stands apart from what it was done
 * as is marked so, for the day on which the words are those again.
 */
function withDoneAsItSays(store: 'steps' | 'rechecks', record: KeptStamped): KeptStamped {
  const { done, wasDone, ...rest } = record;
  const { wasDone: _stamp, ...stamps } = record.stamps;
  const stamp = stampAt(record, 'done');
  const was = stampAt(record, 'wasDone') < stamp ? undefined : wasDone;
  const given = done ?? togetherAgain(was);
  const isStanding = given !== undefined && isDoneAs(store, record, given);
  const own = { ...rest, id: record.id, stamps: { ...stamps, '*': record.stamps['*'] } };
  if (isStanding) return { ...own, done: given };
  const kept = isPlainObject(given) ? { ...given, apart: true } : was;
  return kept === undefined ? own : { ...own, wasDone: kept, stamps: { ...own.stamps, wasDone: stamp } };
}

function togetherAgain(was: unknown): unknown {
  if (!isPlainObject(was) || was['apart'] !== true) return undefined;
  const { apart: _apart, ...done } = was;
  return done;
}

/** A check by eye that asks for something else than what was seen gets its next, empty go: the same on every phone. */
function withWhatIsToSee(record: KeptStamped): KeptStamped {
  const check = parseKept(checkKind, record);
  if (!check.ok) return record;
  const added = Object.entries(check.value.takes).filter(
    ([id, { after, seen }]) =>
      after !== undefined &&
      seen === undefined &&
      stampAt(record, `takes.${id}`) === stampAt(record, `takes.${after}`),
  );
  const ids = new Set(added.map(([id]) => id));
  const paths = new Set(added.map(([id]) => `takes.${id}`));
  const takes = without(Object(record['takes']), ids);
  const stamps = { ...without(record.stamps, paths), '*': record.stamps['*'] };
  const last = lastTake({ takes: without(check.value.takes, ids) });
  if (last?.seen === undefined || isSeenAs(record, last.id, last.seenAs)) return { ...record, takes, stamps };
  const next = nextAfter(last.id);
  return {
    ...record,
    takes: { ...takes, [next]: { at: last.at + 1, after: last.id } },
    stamps: { ...stamps, [`takes.${next}`]: stampAt(record, `takes.${last.id}`) },
  };
}

const LONGEST_ENTRY = 100;

/** The name of the go after this one; of one whose name is as long as a name may be, by what it is in short. */
function nextAfter(takeId: string): string {
  const next = `${takeId}-again`;
  return next.length > LONGEST_ENTRY ? `${inShort(takeId)}-again` : next;
}

function without<T>(
  entries: Readonly<Record<string, T>>,
  names: ReadonlySet<string>,
): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(entries).filter(([name]) => !names.has(name)));
}

type Change = { readonly before: Kept; readonly after: Kept; readonly stamp: Stamp };

/** What was done or seen before an act that says otherwise is to be done or looked at again, as when a fitter changes it. */
export function openAgain(store: StoreName, { before, after, stamp }: Change): Kept {
  if (store === 'checks') return toSeeAgain({ before, after, stamp });
  if ((store !== 'steps' && store !== 'rechecks') || !isToDoAgain(store, before, after)) return after;
  const { done, ...rest } = after;
  return withStamps({ ...rest, id: after.id, wasDone: done }, ['done', 'wasDone'], stamp);
}

function toSeeAgain({ before, after, stamp }: Change): Kept {
  const [was, now] = [parseKept(checkKind, before), parseKept(checkKind, after)];
  if (!was.ok || !now.ok || !isSeenOtherwise(was.value, now.value)) return after;
  const last = lastTake(now.value);
  if (last?.seen === undefined) return after;
  const id = newId();
  const takes: unknown = { ...Object(after['takes']), [id]: { at: last.at + 1 } };
  return withStamps({ ...after, takes }, [`takes.${id}`], stamp);
}
