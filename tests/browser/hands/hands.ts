/**
 * What a test does to a phone, whatever engine is in it: open, tap, type, read the text, turn, kill. A `Page` is the part
 * of playwright's own that every engine can do, so that one walk serves all three: Chromium and Firefox bring it, for
 * WebKit it is made in `webkit-page.ts`. Offline is none of it: the server is stopped.
 */

export type EngineName = 'chromium' | 'firefox' | 'webkit';

/** One tab, and what is in it. */
export type Page = {
  /** Opens an address. */
  goto(address: string): Promise<unknown>;
  reload(): Promise<unknown>;
  /** The whole window as a phone turned to that size has it. */
  setViewportSize(size: Size): Promise<void>;
  getByRole(role: Role, called?: Called): Found;
  getByText(words: string | RegExp, how?: { exact?: boolean }): Found;
  getByLabel(words: string | RegExp, how?: { exact?: boolean }): Found;
  locator(css: string, holding?: { hasText?: string | RegExp }): Found;
  keyboard: {
    type(text: string, how?: { delay?: number }): Promise<void>;
    press(key: string): Promise<void>;
  };
  /** A function sent into the page as text: nothing outside of it may be used in it. */
  evaluate<R, A>(inPage: (given: A) => R | Promise<R>, given: A): Promise<R>;
  evaluate<R>(inPage: () => R | Promise<R>): Promise<R>;
  evaluate(script: string): Promise<unknown>;
  waitForTimeout(ms: number): Promise<void>;
};

/** What is meant by some words or a selector; asked anew each time, and waited for. */
export type Found = {
  first(): Found;
  nth(index: number): Found;
  or(other: Found): Found;
  filter(which: { visible?: boolean; hasText?: string | RegExp }): Found;
  getByRole(role: Role, called?: Called): Found;
  /** Taps it where it is seen, stands still, and nothing covers it. With `trial` only waits for that. */
  click(how?: { trial?: boolean }): Promise<void>;
  /** In place of what stands there. */
  fill(text: string): Promise<void>;
  pressSequentially(text: string): Promise<void>;
  setInputFiles(file: string | GivenFile): Promise<void>;
  waitFor(how?: { state?: 'attached' | 'detached' | 'visible' | 'hidden'; timeout?: number }): Promise<void>;
  count(): Promise<number>;
  isVisible(): Promise<boolean>;
  textContent(): Promise<string | null>;
  innerText(): Promise<string>;
  allTextContents(): Promise<string[]>;
  inputValue(): Promise<string>;
};

export type Size = { width: number; height: number };
export type Role = 'alert' | 'button' | 'group' | 'heading' | 'link';
export type Called = { name?: string | RegExp; exact?: boolean };
export type GivenFile = { name: string; mimeType: string; buffer: Buffer };

export type Phone = {
  readonly page: Page;
  /** The profile: opened again with it, it is the same phone, switched on later. */
  readonly userDataDir: string;
  /** Console errors and warnings, what the policy refused among them. */
  readonly said: readonly string[];
  readonly newTab: () => Promise<Page>;
  /** Where the file is that a press lets the browser save. */
  readonly savedBy: (press: () => Promise<void>) => Promise<string>;
  /** The page on A4, as the print dialog's "save as a file" has it. */
  readonly printed: () => Promise<Uint8Array>;
  /** Closes the browser as a person does. */
  readonly close: () => Promise<void>;
  /** SIGKILL to every process of the browser at once, as an empty battery does. */
  readonly kill: () => Promise<void>;
};

export type PhoneOptions = { size?: Size; userDataDir?: string };
