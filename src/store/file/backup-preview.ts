import type { BackupStore } from '../base/stores.ts';
import { refuse, worked } from '../../engine/length/refusal.ts';
import type { BackupText } from './backup-lines.ts';
import { shortened } from './backup-names.ts';
import { comparePairs, type Pair } from './backup-compare.ts';
import { mergedWith } from './backup-merged.ts';
import { writtenApart } from './conflicts-ahead.ts';
import type { IdsInFile } from './backup-references.ts';
import type { BackupResult } from './backup-refusal.ts';
import { alone, dropStaged, stagedFile, type StagedFile } from './backup-staged.ts';
import { unitOf } from '../base/unit-of.ts';
import type { OnShare } from './backup-door.ts';
import { markReady, stageBackup } from './backup-staging.ts';
import { lookAtUnreadable, type Unreadable } from './backup-unreadable.ts';
import { isGone } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { canonicalText, valuesByPath } from '../base/paths.ts';

/** What a file would do to one job. */
export type JobPreview = {
  readonly id: string;
  /** Empty where the job itself can't be read. */
  name: string;
  /** Whether the job is on this phone and not removed. */
  isHere: boolean;
  /** Whether it was removed here, and the file doesn't bring it back. */
  staysRemoved: boolean;
  /** Fields of records that are here and would change. */
  fields: number;
  readings: number;
  /** Other records that would come: features, cuts, steps, photos … */
  others: number;
  /** Records that would go: they were removed on the other phone. */
  removed: number;
  /** Things that both phones wrote, neither having seen the other's: they are asked about once the file is in. */
  apart: number;
  same: number;
};

export type Tally = { added: number; changed: number; same: number };

/** What would change here if a file were put in; nothing of it is done yet. */
export type BackupPreview = {
  readonly file: StagedFile;
  /** In the order of the file. */
  readonly jobs: readonly JobPreview[];
  /** What belongs to no job: the drawer, measuring tools. */
  readonly others: Readonly<Partial<Record<BackupStore, Tally>>>;
  /** Settings that this phone hasn't, and those it keeps as they are. */
  readonly settings: {
    readonly added: number;
    readonly kept: number;
    /** Ids of those that come. */
    readonly names: readonly string[];
  };
  readonly total: Readonly<Tally>;
  /** Of everything, jobs and others, what both phones wrote without having seen the other's. */
  readonly apart: number;
  /** Records that no Slipfit so far could read: they would be kept as they are. */
  readonly unreadable: number;
};

export type PreviewProgress = {
  /** How much of the file is read, 0 to 1. */
  readonly onRead?: OnShare;
  /** How much of it is compared with what is here, 0 to 1. */
  readonly onCompared?: OnShare;
};

/**
 * Reads a file aside, checks all of it, and says what it would change; nothing here is touched. The file waits on the disk
 * until it is put in, dropped, or another one is read; also when the app is closed meanwhile.
 */
export async function previewBackup(
  store: Store,
  text: BackupText,
  { onRead = () => undefined, onCompared = () => undefined }: PreviewProgress = {},
): Promise<BackupResult<BackupPreview>> {
  return alone(store, async () => {
    await dropStaged(store);
    const preview = await readAndCompare(store, text, { onRead, onCompared });
    if (!preview.ok) await dropStaged(store);
    return preview;
  });
}

async function readAndCompare(
  store: Store,
  text: BackupText,
  { onRead, onCompared }: Required<PreviewProgress>,
): Promise<BackupResult<BackupPreview>> {
  const aside = await stageBackup(store, text, onRead);
  if (!aside.ok) return aside;
  const preview = await compared(store, aside.value, onCompared);
  if (!preview.ok) return preview;
  const ready = await markReady(store, aside.value.file);
  return ready.ok ? worked({ ...preview.value, file: ready.value }) : ready;
}

/** The preview of the file that waits, as things stand here now; nothing when none does. */
export async function waitingPreview(
  store: Store,
  onShare: OnShare = () => undefined,
): Promise<BackupResult<BackupPreview> | undefined> {
  const file = await stagedFile(store);
  if (file?.state !== 'ready') return undefined;
  const preview = await compared(store, { file }, onShare);
  return preview.ok && !(await isWaiting(store, file)) ? refuse({ code: 'no-file' }) : preview;
}

/** Whether this very file still waits: another window may have put it in or dropped it. */
async function isWaiting(store: Store, { readAt }: StagedFile): Promise<boolean> {
  return (await stagedFile(store))?.readAt === readAt;
}

/** Takes the waiting file away unused. */
export async function leavePreviewed(store: Store): Promise<BackupResult<void>> {
  return alone(store, async () => worked(await dropStaged(store)));
}

async function compared(
  store: Store,
  aside: { readonly file: StagedFile; readonly ids?: IdsInFile },
  onShare: OnShare,
): Promise<BackupResult<BackupPreview>> {
  const told: Telling = {
    jobs: new Map(),
    others: {},
    settings: { added: 0, kept: 0, names: [] },
    total: { added: 0, changed: 0, same: 0 },
    apart: 0,
    unreadable: 0,
    gonePhotos: new Set(),
  };
  const apart = writtenApart(store, aside.file);
  const onPair = async (pair: Pair) => tell(told, pair, await apart(pair));
  const done = await comparePairs(store, aside, { onPair, onShare });
  if (!done.ok) return done;
  await lookAtUnreadable(store, (one, isHere) => tellUnreadable(told, one, isHere));
  const { gonePhotos: _told, ...preview } = told;
  return worked({ ...preview, file: aside.file, jobs: [...told.jobs.values()] });
}

type Telling = {
  readonly jobs: Map<string, JobPreview>;
  readonly others: Partial<Record<BackupStore, Tally>>;
  readonly settings: { added: number; kept: number; readonly names: string[] };
  readonly total: Tally;
  apart: number;
  unreadable: number;
  /** Photos that were removed here: the file's bytes of them bring nothing. They come behind their photos. */
  readonly gonePhotos: Set<string>;
};

function tell(told: Telling, pair: Pair, apart: number): void {
  const { store, other, here } = pair;
  const { outcome, merged } = mergedWith(store, here, other.record);
  if (store === 'photos' && isGone(merged)) told.gonePhotos.add(merged.id);
  const isOfGone = store === 'photoBytes' && told.gonePhotos.has(merged.id);
  told.total[isOfGone ? 'same' : outcome] += 1;
  // Of what is removed nobody is asked, unless it comes back by a reading that was logged in it on another phone.
  const asked = isGone(merged) ? 0 : apart;
  told.apart += asked;
  if (store === 'settings') {
    told.settings[outcome === 'added' ? 'added' : 'kept'] += 1;
    if (outcome === 'added') told.settings.names.push(other.record.id);
  }
  // A photo's bytes are told with their photo.
  if (store === 'settings' || store === 'photoBytes') return;
  const unit = unitOf(store, other.record);
  if (!unit.startsWith('jobs/')) {
    (told.others[store] ??= { added: 0, changed: 0, same: 0 })[outcome] += 1;
    return;
  }
  const job = jobIn(told, unit.slice('jobs/'.length));
  if (store === 'jobs') {
    job.isHere = here !== undefined && !isGone(here);
    job.staysRemoved = !job.isHere && isGone(merged);
    job.name = shortened(String(merged['name']));
  }
  job.apart += asked;
  tellJob(job, { store, outcome, here, merged });
}

function tellUnreadable(told: Telling, { store, record }: Unreadable, isHere: boolean): void {
  told.total[isHere ? 'same' : 'added'] += 1;
  if (!isHere) told.unreadable += 1;
  const job = store === 'jobs' ? told.jobs.get(record.id) : undefined;
  if (job) job.isHere = isHere;
}

type Told = Pick<Pair, 'store' | 'here'> & ReturnType<typeof mergedWith>;

function tellJob(job: JobPreview, { store, outcome, here, merged }: Told): void {
  const isRemoved = isGone(merged);
  if (outcome === 'same' || (isRemoved && (!here || isGone(here)))) job.same += 1;
  else if (isRemoved) job.removed += 1;
  else if (outcome === 'changed' && here && !isGone(here)) job.fields += fieldsChanged(here, merged);
  else if (store === 'readings') job.readings += 1;
  else if (store !== 'jobs') job.others += 1;
}

function jobIn({ jobs }: Telling, id: string): JobPreview {
  const known = jobs.get(id);
  if (known) return known;
  const job = {
    id,
    name: '',
    isHere: false,
    staysRemoved: false,
    fields: 0,
    readings: 0,
    others: 0,
    removed: 0,
    apart: 0,
    same: 0,
  };
  jobs.set(id, job);
  return job;
}

// When a job was last touched, or a worksheet's parts last changed, is nothing that a fitter changed by itself.
const FOLLOWS: ReadonlySet<string> = new Set(['touchedAt', 'partsChanged']);

function fieldsChanged(here: Parameters<typeof valuesByPath>[0], merged: typeof here): number {
  const before = valuesByPath(here);
  const after = valuesByPath(merged);
  const paths = [...new Set([...before.keys(), ...after.keys()])].filter((path) => !FOLLOWS.has(path));
  return paths.filter((path) => canonicalText(before.get(path)) !== canonicalText(after.get(path))).length;
}
