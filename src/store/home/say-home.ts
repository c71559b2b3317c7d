import { sayStore } from '../base/say-store.ts';
import type { HomeRefusal } from './home-calls.ts';
import type { HomeNote, HomeState, HomeTrouble, PairedState, PicturesState } from './home-state.ts';

/** How the screen says a time: "10:42" of today, "Tuesday" of this week, else the day. */
export type When = (at: number) => string;

/** The one line of Shop: whether all is at home, and if not, how much waits and since when. */
export function sayHome(state: HomeState, when: When): string {
  if (!state.isPaired) return 'No copy at home. What is logged is on this phone only.';
  const { trouble, progress, waiting, wholeAt } = state;
  if (trouble) return saySince(state, trouble, when);
  if (progress) return sayProgress(progress);
  if (waiting > 0) return `${things(waiting)} not yet at home.`;
  return wholeAt === undefined
    ? 'Paired. Home has not been reached yet.'
    : `Everything is at home. Last there ${when(wholeAt)}.`;
}

function saySince(
  { waiting }: PairedState,
  trouble: NonNullable<PairedState['trouble']>,
  when: When,
): string {
  const waits =
    waiting > 0 ? ` ${things(waiting)} ${waiting === 1 ? 'waits' : 'wait'} here; none is lost.` : '';
  if (trouble.code === 'not-reached') return `Home not reached since ${when(trouble.since)}.${waits}`;
  return `${sayHomeTrouble(trouble)}${waits}`;
}

function sayProgress({ way, done, of }: NonNullable<PairedState['progress']>): string {
  const [soMany, all] = [count(done), count(of)];
  const doing = way === 'home' ? 'Taking everything home' : 'Bringing everything from home';
  return `${doing}: ${soMany} of ${all}. It goes on by itself, also after a break.`;
}

/** What is in the way, and what can be done. Nothing logged is lost by any of it. */
export function sayHomeTrouble(trouble: HomeTrouble): string {
  switch (trouble.code) {
    case 'not-reached':
      return 'Home can’t be reached from here.';
    case 'origin-not-allowed':
      return `Home is there, and doesn’t let this app in: ${trouble.origin} is missing from the origins it allows (CORS). Whoever looks after home can add it.`;
    case 'sign-in-page':
      return 'Something else answered in home’s place: this network wants a sign-in page first, perhaps.';
    case 'busy':
      return 'Home is there and has no time just now. It is tried again by itself.';
    case 'home-full':
      return 'Home is full. Whoever looks after it has to make room there; what is logged stays here until then.';
    case 'phone-full':
      return `This phone is full: ${things(trouble.waiting)} from home ${trouble.waiting === 1 ? 'waits' : 'wait'}. What was logged here has gone home.`;
    case 'wrong-password':
      return 'Home doesn’t know this phone any more. Pair it again, or ask whoever looks after home.';
    case 'locked-for-minutes':
      return 'Home has locked itself for five minutes after wrong passwords.';
    case 'not-allowed':
      return 'Home knows this phone and doesn’t let it into this shop. Pair it again, or ask whoever looks after home.';
    case 'wrong-words':
      return 'These are not the words that this home is sealed with. Nothing was sent. Is it the right home?';
    case 'nothing-there':
      return 'There is nothing at home. Is it the right one?';
    case 'newer-home':
      return 'This home was set up by a newer Slipfit: take the update here first.';
    case 'own-fault':
      return 'Something went wrong in Slipfit itself on the way home. Nothing logged is lost. It is tried again by itself; a new version may help.';
    case 'store':
      return sayStore(trouble.refusal);
    default:
      return trouble satisfies never;
  }
}

/** What is worth a line of its own. */
export function sayHomeNote(note: HomeNote): string {
  switch (note.code) {
    case 'home-put-back':
      return 'Home was put back to an older state. What it lacks is sent again.';
    case 'phone-put-back':
      return 'This phone was put back to an older state. It goes on as a new one; what can’t be told apart is asked.';
    case 'clocks-apart':
      return `The clocks of this phone and “${note.phone}” are ${apart(note.apartMs)} apart.`;
    case 'from-newer':
      return `${things(note.count)} at home ${note.count === 1 ? 'is' : 'are'} from a newer Slipfit: take the update.`;
    case 'cannot-be-opened':
      return `${things(note.count)} at home can’t be opened: damaged there, or put there by something else. Nothing here is changed by ${note.count === 1 ? 'it' : 'them'}.`;
    case 'unreadable-here':
      return `${things(note.count)} on this phone can’t be read by this version and ${note.count === 1 ? 'stays' : 'stay'} here. The backup has ${note.count === 1 ? 'it' : 'them'}.`;
    case 'too-big':
      return `${note.count === 1 ? 'One thing is' : `${count(note.count)} things are`} too big for home (${megabytes(note.largestBytes)}). ${note.count === 1 ? 'It stays' : 'They stay'} on this phone.`;
    default:
      return note satisfies never;
  }
}

export function sayPictures({ toSend, toFetch, isWaiting, choice }: PicturesState): string {
  const parts = [
    toSend > 0 ? `${pictures(toSend)} not yet at home` : '',
    toFetch > 0 ? `${pictures(toFetch)} not yet here` : '',
  ].filter((part) => part !== '');
  if (parts.length === 0) return 'All pictures are here and at home.';
  const why = !isWaiting
    ? ''
    : choice === 'wifi'
      ? '; they wait for Wi-Fi, or for your word'
      : '; they wait for your word';
  return `${parts.join(', ')}${why}.`;
}

/** Why pairing, or something asked for at home, did not work. */
export function sayHomeRefusal(refusal: HomeRefusal): string {
  switch (refusal.code) {
    case 'not-an-address':
      return 'This is no address of a server. One looks like this: https://home.shop.example';
    case 'not-https':
      return 'The address has to begin with https://, so that nobody on the way can listen.';
    case 'not-a-code':
      return 'This is no code of Slipfit’s, or a letter of it is wrong. Scan it again, or look at it group by group.';
    case 'not-the-words':
      return 'The shop’s words are five groups of five letters and figures. Look at them again.';
    case 'not-in-this-browser':
      return 'This browser can’t keep the app for work without signal, so it can’t be paired. Open it over https, in a usual window.';
    case 'wrong-admin':
      return 'The server doesn’t know this name and password. They are those of its admin.';
    case 'not-a-server':
      return 'What answers at this address is no CouchDB. Look at the address again.';
    case 'words-wanted':
      return 'There is a shop at this place already. Type its words to join it.';
    case 'is-this-phone':
      return 'This is the phone in your hand. To take it away from home, leave home on it.';
    case 'not-reached':
      return 'Home can’t be reached from here. Look at the address, and whether there is signal.';
    default:
      return sayHomeTrouble(refusal);
  }
}

function things(number: number): string {
  return number === 1 ? 'One thing' : `${count(number)} things`;
}

function pictures(number: number): string {
  return number === 1 ? 'One picture' : `${count(number)} pictures`;
}

function count(number: number): string {
  return number.toLocaleString('en');
}

const MS_IN_A_MINUTE = 60_000;
const MINUTES_IN_AN_HOUR = 60;
const HOURS_IN_A_DAY = 24;

/** In the largest unit of which it is two at least. */
function apart(ms: number): string {
  const minutes = Math.round(ms / MS_IN_A_MINUTE);
  if (minutes < 2 * MINUTES_IN_AN_HOUR) return `${minutes} minutes`;
  const hours = Math.round(minutes / MINUTES_IN_AN_HOUR);
  return hours < 2 * HOURS_IN_A_DAY ? `${hours} hours` : `${Math.round(hours / HOURS_IN_A_DAY)} days`;
}

const BYTES_IN_A_MEGABYTE = 1_000_000;

function megabytes(bytes: number): string {
  return `${(bytes / BYTES_IN_A_MEGABYTE).toFixed(1)} MB`;
}
