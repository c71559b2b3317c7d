import { read } from '../opening/read.ts';
import { isPlainObject } from '../base/paths.ts';
import { FROM_THE_START } from './couch.ts';
import { HomeFault } from './couch-ask.ts';
import type { Home } from './home-context.ts';
import {
  asideRange,
  comingRange,
  EVERYTHING_HERE,
  readPlace,
  type ComingRow,
  type Place,
} from './home-rows.ts';
import { changeState } from './home-state-row.ts';
import { checkLife, goOnAsNew } from './life.ts';
import { keepMarks, putMark, raiseSeen, readMarks, type Mark } from './marks.ts';
import { bringListed, isAllBrought, lookAtAside, pull } from './pull.ts';
import { allSentUpTo, push } from './push.ts';
import { PhonePutBack, storeFault, takeToken, type Round } from './round-parts.ts';
import { sweep } from './sweep.ts';

/** What a round came to: all is at home and here, or something waits for another round at once. */
export type RoundEnd = { readonly isWhole: boolean };

/**
 * One round: what life this is, what is new at home, what home lacks. Three requests when nothing is new. It throws a
 * `HomeFault` where it can't go on; whatever it had done holds, and the next one goes on from there.
 */
export async function goRound(home: Home): Promise<RoundEnd> {
  try {
    return await goOnce(home);
  } catch (error) {
    if (!(error instanceof PhonePutBack)) throw error;
  }
  const place = await readPlace(home.store);
  if (!place) throw storeFault({ code: 'gone', store: 'home' });
  await goOnAsNew(roundOf(home, place));
  return goOnce(home);
}

async function goOnce(home: Home): Promise<RoundEnd> {
  const place = await readPlace(home.store);
  if (!place) throw storeFault({ code: 'gone', store: 'home' });
  await knowOwnMark(home);
  const round = roundOf(home, place);
  await checkLife(round);
  await fromTheStartForAll(round);
  const marks = await readMarks(home.couch, home.keys);
  await keepMarks(round, marks);
  await lookAtAside(round);
  do {
    round.wrote = false;
    // What is there is looked at again after something was sent: meanwhile others were at it too.
    // oxlint-disable-next-line no-await-in-loop
    await pull(round);
    // oxlint-disable-next-line no-await-in-loop
    await bringAndSend(round);
  } while (round.wrote);
  return endRound(round, marks);
}

/** What comes and what goes by turns, so that what is logged here need not wait until everything has come. */
async function bringAndSend(round: Round): Promise<void> {
  for (;;) {
    // oxlint-disable-next-line no-await-in-loop
    const isMore = await bringListed(round);
    // oxlint-disable-next-line no-await-in-loop
    const isSweepDue = await push(round);
    // oxlint-disable-next-line no-await-in-loop
    if (isSweepDue) await sweep(round);
    if (!isMore && !isSweepDue) return;
  }
}

async function endRound(round: Round, marks: readonly Mark[]): Promise<RoundEnd> {
  const { home } = round;
  const [upTo, isBrought, aside] = await Promise.all([
    allSentUpTo(round),
    isAllBrought(round),
    read(home.store, ['home'], (tx) => tx.objectStore('home').count(asideRange())),
  ]);
  const isMarked = marks.some(({ device }) => device === home.device());
  if (upTo !== undefined && (round.hasWritten || !isMarked)) {
    await putMark(round, marks, upTo);
    round.upTo = upTo;
    round.isMoved = true;
  }
  if (isBrought && aside === 0 && !round.isFull) await raiseSeen(round, marks);
  if (round.isMoved || home.sent.size > 0) await takeToken(round);
  if (round.isFull) throw new HomeFault({ code: 'phone-full', waiting: await waitingAtHome(round) });
  const isWhole = upTo !== undefined && isBrought;
  await sayEnd(round, isWhole);
  return { isWhole };
}

async function waitingAtHome({ home }: Round): Promise<number> {
  const rows = await read(home.store, ['home'], (tx) => tx.objectStore('home').getAll(comingRange()));
  return rows.reduce((sum: number, { leaves }: ComingRow) => sum + leaves.length, 0);
}

async function sayEnd({ home, unreadable }: Round, isWhole: boolean): Promise<void> {
  const now = home.store.now();
  await changeState(
    home.store,
    ({ trouble: _over, unreadable: _before, homePutBackAt, phonePutBackAt, ...state }) => ({
      ...state,
      // All that was put back is at home again, so there is nothing left to say of it.
      ...(!isWhole && homePutBackAt !== undefined && { homePutBackAt }),
      ...(!isWhole && phonePutBackAt !== undefined && { phonePutBackAt }),
      ...(isWhole && { wholeAt: now }),
      ...(unreadable > 0 && { unreadable }),
    }),
  );
}

function roundOf(home: Home, place: Place): Round {
  return {
    home,
    place,
    noteRev: undefined,
    since: place.since,
    sweep: place.sweep,
    steps: 0,
    isMoved: false,
    hasWritten: false,
    wrote: false,
    sweepMark: place.sweepMark,
    isFull: false,
    stuck: new Map(),
    unreadable: 0,
    upTo: place.upTo,
  };
}

async function knowOwnMark(home: Home): Promise<void> {
  const clock: unknown = await read(home.store, ['device'], (tx) => tx.objectStore('device').get('clock'));
  const own = isPlainObject(clock) ? String(clock['deviceId']) : '';
  home.device = () => own;
}

/** Everything here is to be held against everything there: from the start of the feed, unless that is on its way already. */
async function fromTheStartForAll(round: Round): Promise<void> {
  const { home } = round;
  const row: unknown = await read(home.store, ['outbox'], (tx) =>
    tx.objectStore('outbox').get(EVERYTHING_HERE),
  );
  const mark = isPlainObject(row) ? String(row['mark']) : undefined;
  if (mark === undefined || round.sweepMark === mark) return;
  round.since = FROM_THE_START;
  round.sweep = undefined;
  round.sweepMark = mark;
}
