import type { BackupStore } from '../base/stores.ts';
import { unitOf } from '../base/unit-of.ts';
import type { Stamp } from '../base/clock.ts';
import { isStamped, type Kept, type KeptStamped } from '../base/kept.ts';
import { mergeRecords, stampAt } from '../base/merge.ts';
import { canonicalText, isPlainObject, valuesByPath } from '../base/paths.ts';
import { putTogether } from '../kept/put-together.ts';
import { checkRecord } from '../kept/any-record.ts';
import { hasSeen, type Seen } from './seen.ts';

/** One field as the phone that lost out has it, and as the other has it; a missing value was left empty, or taken out. */
export type LostField = { readonly path: string; readonly value?: unknown; readonly won?: unknown };

/**
 * Fields of one record that two phones wrote, neither having seen what the other wrote: what a merge left out. They go
 * together when each phone wrote them in one act, a cut's target and its limits for one.
 */
export type Differing = {
  readonly lostStamp: Stamp;
  readonly wonStamp: Stamp;
  readonly fields: readonly LostField[];
  /** What belongs to them and is nothing that a fitter would compare. */
  readonly along: readonly LostField[];
};

type Copies = {
  readonly store: BackupStore;
  /** As kept on this phone; nothing where it has none. */
  readonly here: Kept | undefined;
  readonly other: KeptStamped;
  readonly seenHere: Seen;
  readonly seenThere: Seen;
};

// Removals hold, a list's order is anybody's, and the rest follows from what was done.
const neverCompared: ReadonlySet<string> = new Set([
  'deleted',
  'touchedAt',
  'partsChanged',
  'createdAt',
  'order',
  'signedOff',
]);
const goAlong: ReadonlySet<string> = new Set(['basis', 'workedOut', 'limitsFrom', 'assumed', 'wasDone']);

/**
 * What two copies of a record say differently without either phone having seen the other's change. What only one changed
 * since the record was made, or changed knowing the other's, is no such case.
 */
export function differingFields(copies: Copies): Differing[] {
  const { store, here, other } = copies;
  if (!here || !isStamped(here) || store === 'photoBytes' || store === 'settings') return [];
  if (canonicalText(here.stamps) === canonicalText(other.stamps)) return [];
  const inHere = valuesByPath(here);
  const inOther = valuesByPath(other);
  const groups = new Map<string, { lostStamp: Stamp; wonStamp: Stamp; all: LostField[] }>();
  for (const path of new Set([...inHere.keys(), ...inOther.keys()])) {
    const [ours, theirs] = [inHere.get(path), inOther.get(path)];
    if (isNeverCompared(path) || saysTheSame(ours, theirs) || !isConcurrent({ ...copies, here }, path))
      continue;
    const [stampHere, stampThere] = [stampAt(here, path), stampAt(other, path)];
    const isOursLost = stampHere < stampThere;
    const [lostStamp, wonStamp] = isOursLost ? [stampHere, stampThere] : [stampThere, stampHere];
    const [value, won] = isOursLost ? [ours, theirs] : [theirs, ours];
    const group = groups.get(`${lostStamp} ${wonStamp}`) ?? { lostStamp, wonStamp, all: [] };
    groups.set(`${lostStamp} ${wonStamp}`, group);
    group.all.push({ path, ...(value !== undefined && { value }), ...(won !== undefined && { won }) });
  }
  // A record that is here but can't be read is worth less than its copy that can.
  if (groups.size === 0 || !checkRecord(store, here).ok) return [];
  return [...groups.values()].flatMap(({ all, ...stamps }) => {
    const fields = all.filter((field) => !goAlong.has(field.path) && !isOpenedAgain(copies, field));
    return fields.length === 0
      ? []
      : [{ ...stamps, fields, along: all.filter(({ path }) => goAlong.has(path)) }];
  });
}

/** What was done on one phone and stands as to be done again, as the other changed what it says: nobody is asked about that. */
function isOpenedAgain({ store, here, other }: Copies, { path, won }: LostField): boolean {
  if (path !== 'done' || won === undefined || !here || !isStamped(here)) return false;
  return putTogether(store, mergeRecords(here, other))['done'] === undefined;
}

function isNeverCompared(path: string): boolean {
  return neverCompared.has(path) || path.startsWith('settled.');
}

function isConcurrent(
  { store, here, other, seenHere, seenThere }: Copies & { readonly here: KeptStamped },
  path: string,
): boolean {
  const [ours, theirs] = [stampAt(here, path), stampAt(other, path)];
  // As it was made, and the same on every phone that has it; only the demo is made on each.
  if (ours === theirs || ours === here.stamps['*'] || theirs === other.stamps['*']) return false;
  const unit = unitOf(store, here);
  // Whoever wrote last must have seen the other. That the other had seen the later one and holds the earlier can't be: so
  // speaks a file whose changes bear this phone's own name.
  return ours < theirs ? !hasSeen(seenThere, unit, ours) : !hasSeen(seenHere, unit, theirs);
}

/** Two that are struck out are both struck out, whatever the words. */
export function saysTheSame(a: unknown, b: unknown): boolean {
  if (canonicalText(a) === canonicalText(b)) return true;
  if (!isPlainObject(a) || !isPlainObject(b)) return false;
  if (isStrikeOut(a) && isStrikeOut(b)) return true;
  if (!isPlainObject(a['struckOut']) || !isPlainObject(b['struckOut'])) return false;
  return canonicalText({ ...a, struckOut: '' }) === canonicalText({ ...b, struckOut: '' });
}

function isStrikeOut(value: Readonly<Record<string, unknown>>): boolean {
  return typeof value['why'] === 'string' && typeof value['at'] === 'number';
}
