import { indexesOf, storeNames, type StoreName } from '../base/stores.ts';
import { openDB, type IDBPDatabase, type IDBPTransaction } from 'idb';
import { refuse, worked } from '../../engine/length/refusal.ts';
import { allSteps } from './steps/all-steps.ts';
import type { Step } from './steps/step.ts';
import type { StoreRefusal, StoreResult } from '../base/store-refusal.ts';

export type DatabaseOptions = {
  readonly name: string;
  readonly steps: readonly Step[];
  /** How long to wait before saying that the opening hangs or that another tab holds the database. */
  readonly timeoutMs: number;
  /** Another tab wants to upgrade or delete the database: the draft is written here, and it closes right after. */
  readonly onBlocking: (wanted: 'newer' | 'deleted') => void;
  /** There was no database of this name, so an empty one was made. */
  readonly onCreated: () => void;
  readonly onTerminated: () => void;
};

export const USUAL_NAME = 'slipfit';

type Opening = {
  opened: Promise<StoreResult<IDBPDatabase>>;
  held: boolean;
  onHeld: () => void;
  options: DatabaseOptions;
};

// An opening that was given up on goes on by itself: asking again joins it, since only the first of several open
// requests of a tab is told that it is blocked.
const openings = new Map<string, Opening>();

/** Starts an opening that whoever asks for the database next takes over. */
export function beginOpening({ name, steps }: Pick<DatabaseOptions, 'name' | 'steps'>): void {
  if (!hasDatabases() || openings.has(name)) return;
  const nobody = () => undefined;
  startOpening({ name, steps, timeoutMs: 0, onBlocking: nobody, onCreated: nobody, onTerminated: nobody });
}

/** The only place that opens the database. Nothing is thrown: what goes wrong comes back as a refusal. */
export async function openDatabase(options: DatabaseOptions): Promise<StoreResult<IDBPDatabase>> {
  if (!hasDatabases()) return refuse({ code: 'no-storage' });
  const opening = openings.get(options.name) ?? startOpening(options);
  opening.options = options;
  const outcome = await firstOf(opening, options.timeoutMs);
  if (outcome === 'waited') return refuse({ code: opening.held ? 'held-by-another-tab' : 'opening-hung' });
  openings.delete(options.name);
  return outcome;
}

// Where storage is switched off, a browser may throw at the very word.
function hasDatabases(): boolean {
  try {
    return typeof indexedDB !== 'undefined' && indexedDB !== null;
  } catch {
    return false;
  }
}

// Chosen, not published: a tab that lets go does so within a write or two.
const LETS_GO_MS = 1500;

/** What the opening comes to, or that it was waited for long enough; less long once another tab is known to be in the way. */
async function firstOf(opening: Opening, timeoutMs: number): Promise<StoreResult<IDBPDatabase> | 'waited'> {
  const timers: ReturnType<typeof setTimeout>[] = [];
  const waited = new Promise<'waited'>((resolve) => {
    const after = (ms: number) => timers.push(setTimeout(() => resolve('waited'), ms));
    after(timeoutMs);
    opening.onHeld = () => after(LETS_GO_MS);
    // It is known already when it is asked again: then the whole wait is for the other tab to be closed.
  });
  const outcome = await Promise.race([opening.opened, waited]);
  timers.forEach(clearTimeout);
  return outcome;
}

function startOpening(options: DatabaseOptions): Opening {
  const opening: Opening = { opened: never, held: false, onHeld: () => undefined, options };
  opening.opened = openOnce(opening);
  openings.set(options.name, opening);
  return opening;
}

const never = new Promise<never>(() => undefined);

async function openOnce(opening: Opening): Promise<StoreResult<IDBPDatabase>> {
  const { name, steps } = opening.options;
  let failedStep = 0;
  try {
    const db = await openDB(name, steps.length, {
      upgrade(database, oldVersion, _newVersion, transaction) {
        failedStep = oldVersion + 1;
        if (oldVersion === 0) opening.options.onCreated();
        transaction.done.catch(() => undefined);
        void runSteps(database, transaction, steps, oldVersion, (step) => (failedStep = step));
      },
      blocked() {
        opening.held = true;
        opening.onHeld();
      },
      blocking(_current, wanted, event) {
        opening.options.onBlocking(wanted === null ? 'deleted' : 'newer');
        // The event's target is the connection that is in the way: this one.
        if (event.target instanceof IDBDatabase) event.target.close();
      },
      terminated: () => opening.options.onTerminated(),
    });
    const lost = isOfToday(steps) ? lostOf(db) : undefined;
    if (lost === undefined) return worked(db);
    db.close();
    return refuse({ code: 'store-lost', store: lost });
  } catch (error) {
    return refuse(openingRefusal(error, failedStep));
  }
}

/**
 * Opens a database in the form it has, older or newer than today's, so that what is in it can be read out. Nothing is
 * made or moved; where there is none, none is made.
 */
export async function openDatabaseAsItIs(name: string): Promise<StoreResult<IDBPDatabase>> {
  if (!hasDatabases()) return refuse({ code: 'no-storage' });
  let isThere = true;
  try {
    const db = await openDB(name, undefined, {
      upgrade: (_database, _oldVersion, _newVersion, transaction) => {
        isThere = false;
        transaction.done.catch(() => undefined);
        abortQuietly(transaction);
      },
      blocking: (_current, _wanted, event) => {
        if (event.target instanceof IDBDatabase) event.target.close();
      },
    });
    return worked(db);
  } catch (error) {
    return refuse(isThere ? openingRefusal(error, 0) : { code: 'nothing-kept' });
  }
}

/**
 * idb doesn't wait for an async `upgrade`, and a step that fails after an `await` would leave a half-moved database at
 * the new version. So the failure is caught here and the whole transaction aborted: the old version stays as it was.
 */
async function runSteps(
  database: IDBPDatabase,
  transaction: IDBPTransaction<unknown, string[], 'versionchange'>,
  steps: readonly Step[],
  oldVersion: number,
  onStep: (step: number) => void,
): Promise<void> {
  try {
    for (const [index, step] of steps.entries()) {
      if (index < oldVersion) continue;
      onStep(index + 1);
      // One after the other: each step starts from what the one before it left.
      // oxlint-disable-next-line no-await-in-loop
      await step(database, transaction);
    }
    onStep(0);
  } catch {
    abortQuietly(transaction);
  }
}

function abortQuietly(transaction: { abort(): void }): void {
  try {
    transaction.abort();
  } catch {
    // Already aborted by the failing request itself.
  }
}

/**
 * A store of today's form that isn't there, or lacks an index, though the database says that it is of today's form: damage
 * of the browser's. Nothing can be added without another version, and going on would fail at every screen in turn.
 */
function lostOf(db: IDBPDatabase): StoreName | undefined {
  const { objectStoreNames: there } = db;
  const lost = storeNames.find((name) => !there.contains(name));
  if (lost !== undefined) return lost;
  const tx = db.transaction(storeNames);
  return storeNames.find((name) => {
    const { indexNames } = tx.objectStore(name);
    return !indexesOf(name).every((index) => indexNames.contains(index));
  });
}

/** Also a later release's, whose first steps are today's. */
function isOfToday(steps: readonly Step[]): boolean {
  return allSteps.every((step, index) => steps[index] === step);
}

function openingRefusal(error: unknown, failedStep: number): StoreRefusal {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'VersionError') return { code: 'newer-database' };
  if (name === 'QuotaExceededError') return { code: 'full-disk' };
  if (name === 'SecurityError') return { code: 'no-storage' };
  return failedStep > 0 ? { code: 'upgrade-failed', step: failedStep } : { code: 'opening-failed' };
}
