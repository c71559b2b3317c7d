/** What is known of a store of the database. */
type StoreFacts = {
  /** Its indexes, as the steps of the migration made them. */
  readonly indexes?: readonly string[];
  /** It goes into a backup, in the order of this list. Drafts, undo and the device's own notes stay on the phone. */
  readonly backup?: true;
  /** A finger changes its records: each act on them can be undone. */
  readonly undo?: true;
  /** What a signed sheet is about. Not the money and the photos on it: they say nothing of how the job was built. */
  readonly signed?: true;
  /** A list over all jobs comes from an index that holds nothing else. */
  readonly list?: ListOfStore;
};

export type ListOfStore = {
  readonly field: 'listedAt' | 'openAt';
  readonly sortedBy: string;
  readonly holds: (record: Readonly<Record<string, unknown>>) => boolean;
};

const openCutStates: ReadonlySet<unknown> = new Set(['to-cut', 'cutting', 'over']);
const ofJob = { indexes: ['jobId'], backup: true, undo: true } as const;

/**
 * Every store of the database, one line a kind of thing. A new one is a line here, a step of the migration and its fixture,
 * and its schema in `any-record.ts`: a test fails for each that is missing.
 */
export const stores = {
  jobs: {
    indexes: ['listedAt'],
    backup: true,
    undo: true,
    signed: true,
    list: { field: 'listedAt', sortedBy: 'touchedAt', holds: () => true },
  },
  parts: { ...ofJob, signed: true },
  features: { ...ofJob, signed: true },
  readings: { ...ofJob, signed: true, indexes: ['featureId+at', 'jobId+at'] },
  worksheets: { ...ofJob, signed: true },
  cuts: {
    ...ofJob,
    signed: true,
    indexes: ['jobId', 'openAt'],
    list: { field: 'openAt', sortedBy: 'createdAt', holds: ({ state }) => openCutStates.has(state) },
  },
  checks: { ...ofJob, signed: true },
  steps: { ...ofJob, signed: true },
  rechecks: {
    ...ofJob,
    signed: true,
    indexes: ['jobId', 'openAt'],
    list: { field: 'openAt', sortedBy: 'from', holds: ({ done }) => done === undefined },
  },
  photos: { ...ofJob, indexes: ['jobId', 'owner'] },
  photoBytes: { backup: true },
  money: ofJob,
  sheets: { indexes: ['jobId'], backup: true },
  drawer: { backup: true, undo: true },
  drawerCounts: { indexes: ['pieceId'], backup: true, undo: true },
  tools: { backup: true, undo: true },
  settings: { backup: true, undo: true },
  drafts: {},
  undo: { indexes: ['jobId+id'] },
  device: {},
  staging: {},
  brought: {},
  conflicts: { indexes: ['jobId'] },
  words: {},
  outbox: {},
  home: {},
} as const satisfies Readonly<Record<string, StoreFacts>>;

export type StoreName = keyof typeof stores;

type NamesWith<Fact extends keyof StoreFacts> = {
  [Name in StoreName]: (typeof stores)[Name] extends { readonly [F in Fact]: true } ? Name : never;
}[StoreName];

// The keys of the list above, in its order.
// oxlint-disable-next-line typescript/no-unsafe-type-assertion
export const storeNames = Object.keys(stores) as readonly StoreName[];

export type BackupStore = NamesWith<'backup'>;
/** What goes into a backup, in the order in which it is written. */
export const backupStores: readonly BackupStore[] = storeNames.filter(goesIntoBackup);

export type SignedStore = NamesWith<'signed'>;
export const signedStores: readonly SignedStore[] = storeNames.filter(isSigned);

/** Stores whose records a finger changes. */
export const undoableStores: readonly StoreName[] = storeNames.filter((name) => factsOf(name).undo);

export function indexesOf(name: StoreName): readonly string[] {
  return factsOf(name).indexes ?? [];
}

export function listOf(name: StoreName): ListOfStore | undefined {
  return factsOf(name).list;
}

/** What goes home from a phone that is paired: all that goes into a backup but its settings, and what two phones wrote apart. */
export function goesHome(name: StoreName): boolean {
  return name === 'conflicts' || (name !== 'settings' && goesIntoBackup(name));
}

function factsOf(name: StoreName): StoreFacts {
  return stores[name];
}

function goesIntoBackup(name: StoreName): name is BackupStore {
  return factsOf(name).backup === true;
}

function isSigned(name: StoreName): name is SignedStore {
  return factsOf(name).signed === true;
}
