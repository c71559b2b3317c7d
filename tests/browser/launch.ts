import { execFile } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { chromium, type BrowserContext, type BrowserContextOptions, type Page } from 'playwright-core';
import { findBrowser, launchFlags } from './find-browser.mjs';
import type { Page as PageOfAnyEngine } from './hands/hands.ts';
import { countTransactions } from './on-a-screen.ts';

export { startServer } from './serve-dist.mjs';

/** What went wrong in a phone since it was opened. A whole run leaves all three empty. */
export type Trouble = {
  /** Console errors and warnings, uncaught errors, in the order they came. */
  readonly said: string[];
  /** What the content security policy stopped: the directive and what it was about. */
  readonly refused: string[];
  /** Requests that left the app's own origin. */
  readonly strayed: string[];
};

export type Phone = {
  readonly page: Page;
  readonly context: BrowserContext;
  /** The profile: hand it to `openPhone` again and it is the same phone, switched on later. */
  readonly userDataDir: string;
  readonly trouble: Trouble;
  /** Every address that was asked for, those of the service worker included. */
  readonly asked: readonly string[];
  /** Closes the browser as a person does. */
  readonly close: () => Promise<void>;
  /** SIGKILL to every process of the browser at once, as an empty battery or a full memory does. */
  readonly kill: () => Promise<void>;
};

export type PhoneOptions = {
  width?: number;
  height?: number;
  /** A camera that shows a moving test picture, one the fitter refused, or none; it works unless told otherwise. */
  camera?: keyof typeof cameras;
  /** A profile to go on with; without it a new one, removed after the run. */
  userDataDir?: string;
  /** A name that leads to this machine and that no browser trusts, as a phone in a shop's own network has it. */
  host?: string;
  /** Pages that are left are kept as they stood, for the way back; otherwise the tests' driver switches that off. */
  keepsLeftPages?: boolean;
  /** For times: nothing of `settled` runs in the page, which then can't see that a write is still on its way. */
  timed?: boolean;
  /** Anything else playwright can set: colorScheme, forcedColors, reducedMotion, hasTouch ... */
  context?: BrowserContextOptions;
};

const cameras = {
  works: ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'],
  refused: ['--use-fake-device-for-media-stream', '--deny-permission-prompts'],
  none: [],
} as const;

const profiles: string[] = [];

/** A phone with an empty page open, 390 × 844 unless told otherwise. It knows no origin yet: the first one it visits is its own. */
export async function openPhone({
  width = 390,
  height = 844,
  camera = 'works',
  userDataDir = temporaryFolder('phone'),
  timed = false,
  host,
  keepsLeftPages = false,
  context: more = {},
}: PhoneOptions = {}): Promise<Phone> {
  const context = await chromium.launchPersistentContext(userDataDir, {
    executablePath: findBrowser(),
    args: [
      ...launchFlags,
      ...cameras[camera],
      ...(host === undefined ? [] : [`--host-resolver-rules=MAP ${host} 127.0.0.1`]),
    ],
    ...(keepsLeftPages && { ignoreDefaultArgs: ['--disable-back-forward-cache'] }),
    viewport: { width, height },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
    locale: 'en-US',
    ...more,
  });
  const watched = await watch(context);
  if (!timed) await context.addInitScript(countTransactions);
  const leader = await browserProcess(context);
  const page = context.pages()[0] ?? (await context.newPage());
  return {
    page,
    context,
    userDataDir,
    ...watched,
    close: () => context.close(),
    kill: async () => {
      const closed = new Promise((done) => context.once('close', done));
      process.kill(-leader, 'SIGKILL');
      await closed;
    },
  };
}

async function watch(context: BrowserContext): Promise<{ trouble: Trouble; asked: string[] }> {
  const trouble: Trouble = { said: [], refused: [], strayed: [] };
  const asked: string[] = [];
  let home: string | undefined;
  context.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') trouble.said.push(message.text());
  });
  context.on('weberror', (failure) => trouble.said.push(String(failure.error())));
  context.on('request', (request) => {
    const { origin, protocol, href } = new URL(request.url());
    asked.push(href);
    if (!protocol.startsWith('http')) return; // blob: and data: never leave the phone
    home ??= origin;
    if (origin !== home) trouble.strayed.push(href);
  });
  await context.exposeBinding('noteRefused', (_source, what: string) => trouble.refused.push(what));
  await context.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) => {
      const note = Reflect.get(globalThis, 'noteRefused');
      if (typeof note === 'function') note(`${event.effectiveDirective} ${event.blockedURI}`);
    });
  });
  return { trouble, asked };
}

/** Waits until the page has its worker and every file is kept: from here on the server may be stopped. */
export async function untilReadyOffline(page: PageOfAnyEngine): Promise<void> {
  await until(page, 'the worker is active and has the page', () =>
    page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      return registration?.active?.state === 'activated' && navigator.serviceWorker.controller !== null;
    }),
  );
}

/**
 * Waits until a second version is kept and stands by. Makes the page look for it, as bringing it to the front does, and
 * again every few seconds: the browser looks by itself too, about two seconds after a page has loaded, and a look that
 * comes while another one is on its way is answered by that one, which may have asked before the release was there.
 */
export async function untilNewVersionWaits(page: PageOfAnyEngine): Promise<void> {
  let lookedAt = 0;
  await until(page, 'a new version waits', async () => {
    if (Date.now() - lookedAt > LOOKED_EVERY_MS) {
      lookedAt = Date.now();
      await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    }
    return page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      return registration?.waiting?.state === 'installed';
    });
  });
}

/**
 * For tests that wait for a new version. Now and then Chromium's own queue of worker jobs stands still: a look gets no
 * answer, for good, until the browser is closed. Tried anew on a fresh phone; a fault of ours fails every time.
 */
export const onAFreshPhone = { retry: 2 } as const;

const LOOKED_EVERY_MS = 3000;
// Never a measure of speed: a machine with two browsers and a build on it takes its time.
const PATIENCE_MS = 40_000;

/** playwright's own waitForFunction takes the promise of an async question for a yes. */
async function until(page: PageOfAnyEngine, what: string, holds: () => Promise<boolean>): Promise<void> {
  const deadline = Date.now() + PATIENCE_MS;
  while (Date.now() < deadline) {
    // The question is lost when the page reloads under it: asked again.
    if (await holds().catch(() => false)) return;
    await page.waitForTimeout(100);
  }
  const seen = await page.evaluate(stateOfWorkers).catch(String);
  throw new Error(`waited ${PATIENCE_MS / 1000} s in vain until ${what}; it is now: ${JSON.stringify(seen)}`);
}

async function stateOfWorkers() {
  const registration = await navigator.serviceWorker.getRegistration();
  return {
    installing: registration?.installing?.state,
    waiting: registration?.waiting?.state,
    active: registration?.active?.state,
    controller: navigator.serviceWorker.controller?.state,
    visible: document.visibilityState,
    onLine: navigator.onLine,
    version: document.querySelector('meta[name=version]')?.getAttribute('content'),
    looked: await Promise.race([
      registration?.update().then(() => 'looked, and found nothing', String),
      new Promise((done) => setTimeout(done, 5000, 'a look gets no answer')),
    ]),
  };
}

/** The version of the build that runs in this page. */
export async function runningVersion(page: Page): Promise<string | null> {
  return page.locator('meta[name=version]').getAttribute('content');
}

/**
 * Builds the app by itself into a folder of its own, as the release with that name; with later steps of the database,
 * as `tests/trials/later-steps.ts` has them, where it is to be a release that isn't written yet.
 */
export async function buildApp(version: string, laterSteps: readonly string[] = []): Promise<string> {
  const outDir = temporaryFolder('build');
  const { NODE_ENV: _test, ...env } = process.env; // a build in test mode would not be the one people get
  const vite = join('node_modules', 'vite', 'bin', 'vite.js');
  const later = ['--config', join('tests', 'trials', 'release.config.ts')];
  const from = laterSteps.length > 0 ? later : [];
  const command = [vite, 'build', ...from, '--outDir', outDir, '--emptyOutDir'];
  const { stderr } = await promisify(execFile)(process.execPath, command, {
    env: { ...env, APP_VERSION: version, LATER_STEPS: laterSteps.join(',') },
  });
  if (stderr !== '') throw new Error(`the build warned: ${stderr}`);
  return outDir;
}

export function temporaryFolder(what: string): string {
  const folder = mkdtempSync(join(tmpdir(), `slipfit-${what}-`));
  profiles.push(folder);
  return folder;
}

/** For `afterAll`: profiles and builds made by this file. */
export async function removeTemporaryFolders(): Promise<void> {
  await Promise.all(
    profiles.splice(0).map((folder) => rm(folder, { recursive: true, force: true, maxRetries: 5 })),
  );
}

/** The browser's own process leads a process group, so all of it dies in the same moment. */
async function browserProcess(context: BrowserContext): Promise<number> {
  const session = await context.browser()?.newBrowserCDPSession();
  const { processInfo } = (await session?.send('SystemInfo.getProcessInfo')) ?? { processInfo: [] };
  const browser = processInfo.find(({ type }) => type === 'browser');
  if (!browser) throw new Error('the process of the browser was not found');
  return browser.id;
}
