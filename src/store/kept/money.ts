import { act } from '../opening/act.ts';
import { withChanges, type Changes } from '../base/changes.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { readAsMade } from '../opening/read.ts';
import type { Id, MoneyLine } from '../base/records.ts';
import { moneyKind } from './money-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A job's lines of money in the order in which they were put down. */
export async function moneyOf(store: Store, jobId: Id): Promise<MoneyLine[]> {
  return readAsMade(store, moneyKind, { index: 'jobId', key: jobId });
}

export type NewMoneyLine = Omit<MoneyLine, 'id' | 'createdAt'>;

/** Puts down an amount, or hours at a rate: decimal text with a point, exact. */
export async function addMoney(
  store: Store,
  line: NewMoneyLine,
  draftKey?: string,
): Promise<StoreResult<MoneyLine>> {
  const id = newId();
  return act(store, { stores: ['jobs', 'money', 'drafts'] }, async (a) => {
    await touchJob(a, line.jobId);
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    const made = a.make(moneyKind, { ...line, id, createdAt: a.at });
    a.undoable(`Put down ${line.what}`, line.jobId);
    return made;
  });
}

export type MoneyChanges = Changes<MoneyLine, 'what' | 'amount' | 'hours' | 'rate'>;

export async function changeMoney(
  store: Store,
  id: Id,
  changes: MoneyChanges,
  draftKey?: string,
): Promise<StoreResult<MoneyLine>> {
  return act(store, { stores: ['jobs', 'money', 'drafts'] }, async (a) => {
    const before = await a.get(moneyKind, id);
    await touchJob(a, before.jobId);
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    const after = await a.change(moneyKind, id, (line) => withChanges(line, changes));
    a.undoable(`Changed ${before.what}`, before.jobId);
    return after;
  });
}

export async function removeMoney(store: Store, id: Id): Promise<StoreResult<void>> {
  return act(store, { stores: ['jobs', 'money'] }, async (a) => {
    const line = await a.get(moneyKind, id);
    await touchJob(a, line.jobId);
    await a.remove('money', id);
    a.undoable(`Removed ${line.what}`, line.jobId);
  });
}
