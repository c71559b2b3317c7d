import type { Result } from '../../engine/length/refusal.ts';
import type { HomeState, HomeTrouble, PictureChoice } from './home-state.ts';

/** Why pairing or a press at home did not work: a trouble of the way there, or what was typed. */
export type HomeRefusal =
  | HomeTrouble
  /** No address of a server: `https://home.shop.example` is one. */
  | { readonly code: 'not-an-address' }
  /** An address without https: what goes there could be read on the way. Plain http is taken for this machine only. */
  | { readonly code: 'not-https' }
  /** What was scanned or typed is no pairing code, or one character of it is wrong. */
  | { readonly code: 'not-a-code' }
  /** No shop's words: five groups of five letters and figures. */
  | { readonly code: 'not-the-words' }
  /** This browser can't: a page over plain http, or no service worker (a private window, mostly). */
  | { readonly code: 'not-in-this-browser' }
  /** The server is one, and its admin's name or password is wrong. */
  | { readonly code: 'wrong-admin' }
  /** What answers is no server of the kind that home needs. */
  | { readonly code: 'not-a-server' }
  /** There is a shop at this place already: it wants its words. */
  | { readonly code: 'words-wanted' }
  /** It is this phone itself that was to be locked out: leave home instead. */
  | { readonly code: 'is-this-phone' };

export type HomeResult<T> = Result<T, HomeRefusal>;

/** Name and password of the server's admin: typed each time they are needed, kept nowhere. */
export type Admin = { readonly name: string; readonly password: string };

/** What a further phone needs to find home; the words are not in it. */
export type PairingCode = {
  /** Capital letters, figures and `$%*+-./:` only, so that its QR code stays small. */
  readonly forQr: string;
  /** The same as groups of five to be typed, where nothing can be scanned; the address is typed beside it. */
  readonly groups: readonly string[];
  readonly address: string;
};

/**
 * What a screen can ask for. `home.ts` gives them for a store: `homeCalls(store)`. Whatever goes over the network is done in
 * home's own worker; each call comes back with a refusal and throws nothing.
 */
export type HomeCalls = {
  /** How things stand, from this phone's database alone. */
  readonly state: () => Promise<HomeState>;

  /** Calls back with each new state, at once with the first, at most twice a second. Returns its undo. */
  readonly watch: (onState: (state: HomeState) => void) => () => void;

  /**
   * The first phone of a shop, with the server's admin at hand: makes database, user and words, pairs, and sends everything.
   * `words` are shown once and kept nowhere: without them no other phone can read what is at home.
   */
  readonly setUp: (wanted: {
    readonly address: string;
    readonly admin: Admin;
    /** What this phone is called at home. */
    readonly phone: string;
  }) => Promise<HomeResult<{ readonly words: string }>>;

  /**
   * A further phone: what was scanned, or the address and the groups typed, and the shop's words. The records come newest
   * first and can be used while the rest comes. What is on this phone already goes home and meets what is there.
   */
  readonly join: (wanted: {
    readonly code: string | { readonly address: string; readonly groups: string };
    readonly words: string;
    readonly phone: string;
  }) => Promise<HomeResult<void>>;

  /**
   * A place that was made by hand: address with the database behind it (`https://home.shop.example/shop`), user and password.
   * Without `words` it must have no shop yet: then they are made and come back.
   */
  readonly joinByHand: (wanted: {
    readonly address: string;
    readonly user: string;
    readonly password: string;
    readonly words?: string;
    readonly phone: string;
  }) => Promise<HomeResult<{ readonly words?: string }>>;

  /** Makes a user for one more phone and gives its code. On a phone that is paired, with the admin at hand. */
  readonly addPhone: (wanted: {
    readonly admin: Admin;
    readonly phone: string;
  }) => Promise<HomeResult<PairingCode>>;

  /** A lost phone: takes its user away. Its next request is refused; what it holds it keeps. */
  readonly lockOut: (wanted: { readonly admin: Admin; readonly user: string }) => Promise<HomeResult<void>>;

  /** This phone forgets home: keys, password, place. Every record stays here, and what is at home stays there. */
  readonly leave: () => Promise<HomeResult<void>>;

  /** Tries again now, also where it had stopped until somebody presses. Comes back when it was asked, not when it is done. */
  readonly tryNow: () => Promise<HomeResult<void>>;

  /** The fitter's word on `nothing-there`: it is the right home, send everything again. */
  readonly sendAllAgain: () => Promise<HomeResult<void>>;

  readonly choosePictures: (choice: PictureChoice) => Promise<HomeResult<void>>;

  /** Pictures go and come now, whatever was chosen and whatever the network is, until none is left. */
  readonly picturesNow: () => Promise<HomeResult<void>>;

  /** One picture that is looked at: brought from home where it is not here. `undefined`: home has not got it yet. */
  readonly picture: (id: string) => Promise<HomeResult<ArrayBuffer | undefined>>;
};
