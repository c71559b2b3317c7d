import './old-browser.ts';
import './store/opening/open-early.ts';
import { render } from 'preact';
import { writeDecimalsWith } from './engine/length/decimal-mark.ts';
import { hrefOf } from './screens/address.ts';
import { App } from './screens/app.tsx';
import { COMING_UP, mayComeUp, watchComingUp } from './screens/coming-up.ts';
import { keptMark } from './store/opening/kept-mark.ts';
import { announceQuietly } from './screens/common/announce.ts';
import { watchMissingParts } from './screens/common/missing-part.ts';
import { watchRefused } from './screens/common/said-if-refused.ts';
import { draftsWritten, watchUnwritten } from './screens/common/drafts-unwritten.ts';
import { Notices, type Notice } from './screens/notices.tsx';
import { readFirstList, takeFirstList } from './screens/jobs/first-list.ts';
import { dropPainted } from './screens/jobs/painted-mark.ts';
import { CannotOpen } from './screens/cannot-open.tsx';
import { canBeNow } from './store/base/clock.ts';
import { closeStore, openStore, type Store } from './store/opening/open-store.ts';
import { askAtStart } from './store/opening/persistence.ts';
import { recordsLostSince } from './store/opening/records-lost.ts';
import { sayStore } from './store/base/say-store.ts';
import { knownSettings } from './store/kept/known-settings.ts';
import { decimalMarkOf } from './screens/common/use-settings.ts';
import { StoreUnreadable } from './store/opening/read.ts';
import { refusalOf, type StoreRefusal } from './store/base/store-refusal.ts';
import { watchForUpdates } from './update.ts';
import { dayWords } from './screens/common/day-words.ts';

// Chosen, not published.
const LONGEST_FOR_SETTINGS_MS = 1000;

const NOT_OFFLINE = {
  'not-here':
    'This browser can’t keep the app for work without signal. Open it over https, in another browser.',
  'cut-off':
    'The app is not kept for work without signal yet. The signal broke off, the network sent something else, or the phone is full. It is tried again by itself.',
  slow: 'The app is not kept for work without signal yet. A part of it does not come: stay near the signal, or try another network.',
  'parts-gone':
    'A part of the app is gone from this phone. Bring it up once with signal: it is fetched by itself.',
} as const;

const place = document.getElementById('app');
let notices: readonly Notice[] = [];
let draw = () => undefined as void;

/** One line above every screen: at most one of each kind, put away by a press. */
function notify(notice: Notice): void {
  notices = [...notices.filter(({ id }) => id !== notice.id), notice];
  announceQuietly(notice.sentence);
  draw();
}

function putAway(id: string): void {
  notices = notices.filter((notice) => notice.id !== id);
  draw();
}

let tries = 0;

async function start(into: HTMLElement): Promise<void> {
  tries += 1;
  const thisTry = tries;
  const opened = await openStore({
    onClosing: () =>
      notify({
        id: 'closing',
        sentence:
          'A newer Slipfit took over in another window, so this one has stopped writing. Nothing is lost. Reload it, or close it.',
        action: { text: 'Reload', onPress: reloadNow },
      }),
    onThrownAway: () =>
      notify({
        id: 'closing',
        sentence: 'The browser has thrown Slipfit’s data away while it was open. Nothing is kept now.',
        staying: true,
        action: { text: 'Open again', onPress: reloadNow },
      }),
  });
  // Two tries that wait for the same opening come back together: the later one goes on.
  if (thisTry !== tries) return opened.ok ? opened.value.channel.close() : undefined;
  if (!opened.ok) return cannotOpen(into, opened.refusal);
  const store = opened.value;
  // Asked before the first write, which makes a new database look like one that is in use.
  const lost = recordsLostSince(store);
  const known = knownSettings(store);
  const marked = keptMark(store, COMING_UP);
  const list = readFirstList(store);
  // Before anything is drawn: a shop in millimetres never sees an inch. A disk that is slow isn't waited for long.
  const late = new Promise((done) => setTimeout(done, LONGEST_FOR_SETTINGS_MS));
  await Promise.race([Promise.all([known.ready(), list]), late]);
  const fault = known.fault();
  if (fault !== undefined) {
    closeStore(store);
    return cannotOpen(into, fault instanceof StoreUnreadable ? fault.refusal : refusalOf(fault));
  }
  if (location.hash === '') returnTo(known.get('lastPlace'));
  const mark = await marked;
  const cameUp = mayComeUp(location.hash, mark);
  if (!cameUp) history.replaceState(null, '', hrefOf({ at: 'jobs' }));
  watchComingUp(() => location.hash, mark);
  draw = () => render(<App store={store} notice={<Notices notices={notices} onPutAway={putAway} />} />, into);
  // Figures are written as the shop writes them, from the first drawing on, and all are drawn anew where that changes.
  const drawDecimals = () => {
    writeDecimalsWith(decimalMarkOf(known));
    draw();
  };
  known.follow('shownUnit', drawDecimals);
  known.follow('decimalMark', drawDecimals);
  drawDecimals();
  takeFirstList(); // where another place was drawn
  void lost.then((since) => since !== undefined && tellOfLoss(since));
  tellOfClock();
  if (!cameUp)
    notify({ id: 'place', sentence: 'The last place did not come up twice, so here are the jobs.' });
  void askAtStart();
  goOn(store).catch(() => undefined);
  takeHanded(store);
}

function returnTo(last: string | undefined): void {
  if (last?.startsWith('#/')) history.replaceState(null, '', last);
}

/** A phone whose battery was empty may have lost its date: the figures are right all the same, and only the dates are not. */
function tellOfClock(): void {
  const now = Date.now();
  if (canBeNow(now)) return putAway('clock');
  notify({
    id: 'clock',
    sentence: `This phone’s clock says ${dayWords(now)}. Set date and time in the phone’s settings. Logging goes on; only the dates will be wrong.`,
  });
}

/** An empty list after a year's work must never look like a new phone's. */
function tellOfLoss(since: number): void {
  notify({
    id: 'lost',
    sentence: `The browser has lost the records that were here on ${dayWords(since)}. Add the last backup; put Slipfit on the home screen so that they are kept.`,
    action: { text: 'Add it', onPress: async () => void (location.hash = hrefOf({ at: 'restore' })) },
  });
}

/** Says why; a waiting new version is offered here too, as it may be the one that can open the data. */
function cannotOpen(into: HTMLElement, refusal: StoreRefusal): void {
  dropPainted();
  draw = () =>
    render(
      <CannotOpen
        refusal={refusal}
        notice={<Notices notices={notices} onPutAway={putAway} />}
        onRetry={() => void start(into)}
      />,
      into,
    );
  draw();
  // The opening itself goes on, and is done when the other window is closed: nobody has to press for it.
  if (refusal.code === 'held-by-another-tab' || refusal.code === 'opening-hung') void start(into);
}

// What is half typed and not written down would be lost: the words at the button say so.
async function reloadNow(): Promise<void> {
  location.reload();
}

/** Before the page gives way to another version. What can't be written down keeps it from going, and that is said. */
async function writeDrafts(): Promise<void> {
  try {
    await draftsWritten();
  } catch (failure) {
    notify({
      id: 'drafts',
      sentence:
        'What is half typed can’t be written down, so the page was not reloaded. Log it or note it first.',
      action: { text: 'Reload all the same', onPress: reloadNow },
    });
    throw failure;
  }
}

/** What only some phones need, its code only where there is something: a paired one goes on with its copy at home, what one that died over a file has left is taken out. */
async function goOn(store: Store): Promise<void> {
  if (await store.db.count('home')) void (await import('./store/home/home.ts')).startHome(store);
  if (await store.db.count('staging'))
    await (await import('./store/file/backup-staged.ts')).sweepStaged(store);
}

/** A backup or a job file opened with the app, or shared to it, is shown where a chosen one would be; the code for it comes with it. */
function takeHanded(store: Store): void {
  const take = async (handle?: FileSystemFileHandle) => {
    const { handedFile } = await import('./handed-files.ts');
    const file = await handedFile(handle);
    if (!file) return;
    void import('./screens/shop/restore-work.ts').then(({ readFile }) => readFile(store, file));
    location.hash = hrefOf({ at: 'restore' });
  };
  // One is shown and answered at a time.
  window.launchQueue?.setConsumer(({ files }) => void (files?.[0] && take(files[0])));
  if (location.search !== '') void take();
}

/** Read above a pad, whose own message says the rest where a size was to be logged. */
function whyUnwritten(why: StoreRefusal): string {
  return why.code === 'full-disk' ? ': the phone is full.' : `. ${sayStore(why)}`;
}

watchMissingParts();
if (place) void start(place);
watchForUpdates({
  onReadyOffline: () => notify({ id: 'offline', sentence: 'Ready to work without signal.', passing: true }),
  onWaiting: (takeIt) =>
    notify({
      id: 'update',
      sentence: 'A new version is ready.',
      action: { text: 'Take it now', onPress: () => takeIt().catch(() => undefined) },
    }),
  onPartMissing: (reload) =>
    notify({
      id: 'part',
      sentence: 'A part of the app could not be read. Nothing logged is lost.',
      action: { text: 'Reload', onPress: () => reload().catch(() => undefined) },
    }),
  onCannotWorkOffline: (why) => notify({ id: 'offline', sentence: NOT_OFFLINE[why] }),
  beforeReload: writeDrafts,
});
document.addEventListener('visibilitychange', () => document.hidden || tellOfClock());
watchRefused((refusal) =>
  refusal ? notify({ id: 'unkept', sentence: sayStore(refusal) }) : putAway('unkept'),
);
watchUnwritten((why) =>
  why
    ? notify({ id: 'drafts', sentence: `What is typed now stands on this screen only${whyUnwritten(why)}` })
    : putAway('drafts'),
);
