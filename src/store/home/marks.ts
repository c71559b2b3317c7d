import { deviceOf, isDeviceId, isSoundStamp, type Stamp } from '../base/clock.ts';
import { isPlainObject } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import { readSetting } from '../kept/setting-schema.ts';
import { putSeen } from '../file/conflicts-keep.ts';
import { latestOf } from '../phones/record-seen.ts';
import { keptSeen } from '../phones/seen-here.ts';
import { EVERYTHING, listsOf, seenByBoth } from '../phones/seen.ts';
import { docsWith, putDoc, type Couch } from './couch.ts';
import { homeAct, type Round } from './round-parts.ts';
import { nameAtHome, openText, sealText, type HomeKeys } from './sealing.ts';

/**
 * A phone's word at home: all of its own changes up to this stamp are here. Whoever has read it, and then all of home's feed
 * to its end, has seen all of them.
 */
export type Mark = {
  readonly docId: string;
  readonly rev: string;
  /** The phone's mark in its stamps. */
  readonly device: string;
  readonly upTo: Stamp;
  /** Its user at the server, what it is called, who uses it, and when it wrote this by its own clock. */
  readonly user: string;
  readonly name: string;
  readonly fitter?: string;
  readonly at: number;
  /** Its phone was locked out. What it had sent is at home all the same. */
  readonly isOut?: true;
};

export type MarkRow = Omit<Mark, 'docId'> & { readonly metAt: number };

export async function readMarks(couch: Couch, keys: HomeKeys): Promise<Mark[]> {
  const docs = await docsWith(couch, 'm');
  const marks = await Promise.all(
    docs.map(async ({ _id, _rev, d }): Promise<Mark[]> => {
      const text = typeof d === 'string' ? await openText(keys, _id, d) : undefined;
      const mark = text === undefined ? undefined : markIn(text);
      return mark ? [{ ...mark, docId: _id, rev: _rev }] : [];
    }),
  );
  return marks.flat();
}

function markIn(text: string): Omit<Mark, 'docId' | 'rev'> | undefined {
  const said: unknown = JSON.parse(text);
  if (!isPlainObject(said)) return undefined;
  const { device, upTo, user, name, fitter, at } = said;
  if (!isDeviceId(device) || !isSoundStamp(upTo) || deviceOf(upTo) !== device) return undefined;
  if (typeof user !== 'string' || typeof name !== 'string' || typeof at !== 'number') return undefined;
  return {
    device,
    upTo,
    user,
    name,
    at,
    ...(typeof fitter === 'string' && { fitter }),
    ...(said['isOut'] === true && { isOut: true }),
  };
}

/** Says at home that all of this phone's changes up to there are at home. */
export async function putMark(round: Round, marks: readonly Mark[], upTo: Stamp): Promise<void> {
  const { home, place } = round;
  const { store, couch, keys } = home;
  const device = deviceOf(upTo);
  const docId = await nameAtHome(keys, 'm', `mark/${device}`);
  const fitter = readSetting(
    'fitter',
    await read(store, ['settings'], (tx) => tx.objectStore('settings').get('fitter')),
  );
  const said = {
    device,
    upTo,
    user: place.user,
    name: place.phone,
    at: store.now(),
    ...(fitter !== undefined && fitter !== '' && { fitter }),
  };
  const body = { k: 1, d: await sealText(keys, docId, JSON.stringify(said)) };
  const known = marks.find((mark) => mark.docId === docId);
  if ((await putDoc(couch, docId, body, known?.rev)) === 'kept') return;
  // One of an earlier round came late.
  const again = (await readMarks(couch, keys)).find((mark) => mark.docId === docId);
  await putDoc(couch, docId, body, again?.rev);
}

/** Every mark of a user is marked as locked out, so that no phone lists it any more. */
export async function lockMarksOut(couch: Couch, keys: HomeKeys, user: string): Promise<void> {
  for (const { docId, rev, ...said } of await readMarks(couch, keys)) {
    if (said.user !== user) continue;
    // oxlint-disable-next-line no-await-in-loop
    const body = { k: 1, d: await sealText(keys, docId, JSON.stringify({ ...said, isOut: true })) };
    // oxlint-disable-next-line no-await-in-loop
    await putDoc(couch, docId, body, rev);
  }
}

/** After all of the feed was met, with nothing laid aside: what the marks promised is seen. */
export async function raiseSeen(round: Round, marks: readonly Mark[]): Promise<void> {
  const { home } = round;
  const promised = new Map([[EVERYTHING, latestOf(marks.map(({ upTo }) => upTo))]]);
  await homeAct(home, ['device'], async (a) => {
    const before = (await keptSeen(a.tx)) ?? new Map();
    const after = seenByBoth(before, promised);
    if (JSON.stringify(listsOf(after)) !== JSON.stringify(listsOf(before))) await putSeen(a, after);
  });
}

/** Keeps who is at home, for the screen and for questions: whose phone a stamp is of. */
export async function keepMarks(round: Round, marks: readonly Mark[]): Promise<void> {
  const { home } = round;
  const whose = new Map(marks.map(({ device, fitter }) => [device, fitter]));
  home.whoIs = (stamp) => {
    const phone = deviceOf(stamp);
    const fitter = whose.get(phone);
    return { phone, ...(fitter !== undefined && { fitter }) };
  };
  const known = await read(home.store, ['home'], (tx) => tx.objectStore('home').get('phones'));
  const rows = marks.map(({ docId: _name, ...mark }) => withMeeting(mark, known, home.store.now()));
  if (isPlainObject(known) && JSON.stringify(known['marks']) === JSON.stringify(rows)) return;
  await homeAct(home, ['home'], (a) => a.putKept('home', { id: 'phones', marks: rows }));
}

/** When this state of a mark was first met: what tells two phones' clocks apart. */
function withMeeting(mark: Omit<Mark, 'docId'>, known: unknown, now: number): MarkRow {
  const before = marksIn(known).find(({ device, rev }) => device === mark.device && rev === mark.rev);
  return { ...mark, metAt: before?.metAt ?? now };
}

export function marksIn(row: unknown): readonly MarkRow[] {
  const marks = isPlainObject(row) ? row['marks'] : undefined;
  // Written above.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return Array.isArray(marks) ? (marks as readonly MarkRow[]) : [];
}
