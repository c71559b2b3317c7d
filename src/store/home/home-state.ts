import type { StoreRefusal } from '../base/store-refusal.ts';

/**
 * Home as Shop › At home shows it. It is read from this phone's own database and never asked over the network, so it comes
 * at once, also without signal. Times are milliseconds since 1970 by this phone's clock.
 */
export type HomeState = { readonly isPaired: false } | PairedState;

export type PairedState = {
  readonly isPaired: true;
  /** Where home is, as a fitter reads it: `home.shop.example`. */
  readonly host: string;
  /** What this phone is called at home. */
  readonly phone: string;
  /** Records logged or changed here that home has not confirmed yet, pictures left out; 0 when all are at home. */
  readonly waiting: number;
  /** When all of this phone's records were last at home, and all of home's here. Missing until that was so once. */
  readonly wholeAt?: number;
  /** What stands in the way since when, and whether it is tried again by itself. Missing when the last try went well. */
  readonly trouble?: HomeTrouble & { readonly since: number; readonly triesAgain: boolean };
  /** While much goes one way, the first time mostly: so many of so many. It goes on by itself, also after a break. */
  readonly progress?: { readonly way: 'home' | 'here'; readonly done: number; readonly of: number };
  readonly pictures: PicturesState;
  /** What is worth a line beside that, none of it in the way. */
  readonly notes: readonly HomeNote[];
  /** Every phone that ever sent something home and is not locked out, this one too, the latest first. */
  readonly phones: readonly PhoneAtHome[];
  /** Whether a mark beside Shop is due: something has been wrong for days, or waits for a word of the fitter's. */
  readonly isMarkDue: boolean;
};

/**
 * What keeps the phone from home, or home from the phone. Nothing is lost by any of them: what was logged is here, and
 * goes when it can. `say-home.ts` has the sentences.
 */
export type HomeTrouble =
  /** No signal, no answer, an answer cut off. */
  | { readonly code: 'not-reached' }
  /** Home answers, and does not let this app in: its list of origins lacks the app's. */
  | { readonly code: 'origin-not-allowed'; readonly origin: string }
  /** Something else answers in home's place: a network's own sign-in page mostly. */
  | { readonly code: 'sign-in-page' }
  /** Home is there and has no time: 429, 500, 503. */
  | { readonly code: 'busy' }
  /** Home's disk is full. */
  | { readonly code: 'home-full' }
  /** This phone is full; so many things from home wait. What was logged here goes home all the same. */
  | { readonly code: 'phone-full'; readonly waiting: number }
  /** Home does not know this phone's name and password (any more): locked out, or wrong. */
  | { readonly code: 'wrong-password' }
  /** Home has locked the name for some minutes after wrong passwords. */
  | { readonly code: 'locked-for-minutes' }
  /** Home knows the phone, and it may not into this shop. */
  | { readonly code: 'not-allowed' }
  /** The shop's words are not those that home is sealed with. */
  | { readonly code: 'wrong-words' }
  /** There is nothing at home, where there was something: emptied, or not the right one. Asks: send everything again, or not now. */
  | { readonly code: 'nothing-there' }
  /** Home was set up by a newer Slipfit: take the update. */
  | { readonly code: 'newer-home' }
  /** Something in Slipfit itself that nobody foresaw. */
  | { readonly code: 'own-fault' }
  /** Something in the phone's own database. */
  | { readonly code: 'store'; readonly refusal: StoreRefusal };

export type HomeNote =
  /** Home was put back to an older state at `at`: what it lacks is sent again. Shown until all is at home again. */
  | { readonly code: 'home-put-back'; readonly at: number }
  /** This phone was put back to an older state: it goes on as a new one; what can't be told apart is asked. */
  | { readonly code: 'phone-put-back'; readonly at: number }
  /** The clocks of this phone and of another are so many milliseconds apart, more than a few minutes. */
  | { readonly code: 'clocks-apart'; readonly phone: string; readonly apartMs: number }
  /** So many things at home are from a newer Slipfit: take the update. They are read again after it. */
  | { readonly code: 'from-newer'; readonly count: number }
  /** So many things at home can't be opened: damaged there, or put there by something else. */
  | { readonly code: 'cannot-be-opened'; readonly count: number }
  /** So many of this phone's own records can't be read by this Slipfit, and are not sent. */
  | { readonly code: 'unreadable-here'; readonly count: number }
  /** So many things are too big for home, the largest of so many bytes. They stay on this phone. */
  | { readonly code: 'too-big'; readonly count: number; readonly largestBytes: number };

/** When pictures go and come by themselves: on Wi-Fi, always, or only those that are looked at. Previews come in any case. */
export type PictureChoice = 'wifi' | 'always' | 'looked-at';

export type PicturesState = {
  readonly choice: PictureChoice;
  /** Pictures that are here and not at home yet. */
  readonly toSend: number;
  /** Pictures whose preview is here and whose bytes are not. */
  readonly toFetch: number;
  /** Waiting for Wi-Fi, or for a word. */
  readonly isWaiting: boolean;
};

export type PhoneAtHome = {
  /** Its name as a user of the server: what `lockOut` takes. */
  readonly user: string;
  /** What the fitter called it: "bench phone". */
  readonly name: string;
  /** When it last sent something, by its own clock. */
  readonly lastAt: number;
  readonly isThis: boolean;
};
