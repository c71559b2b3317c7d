import { readdirSync, readFileSync } from 'node:fs';
import { firefox } from 'playwright-core';
import { temporaryFolder } from '../launch.ts';
import { countTransactions } from '../on-a-screen.ts';
import { findFirefox } from './find-engines.mjs';
import type { Phone, Size } from './hands.ts';
import { savedInto } from './webkit.ts';

/** Firefox's extended support release by playwright over WebDriver BiDi: the same Page as Chromium's. No touch, no request events. */

const usual: Size = { width: 390, height: 844 };
// What playwright itself puts into the page for a picture of it.
const MEANS_NOTHING = /style-src/;

export async function openFirefox(userDataDir: string, size: Size = usual): Promise<Phone> {
  const executablePath = findFirefox();
  if (executablePath === undefined) throw new Error('Firefox is not there.');
  const downloads = temporaryFolder('downloads');
  const context = await firefox.launchPersistentContext(userDataDir, {
    channel: 'moz-firefox', // without it playwright looks for a Firefox of its own
    executablePath,
    viewport: size,
    deviceScaleFactor: 2,
    locale: 'en-US',
    downloadsPath: downloads,
    firefoxUserPrefs: {
      'ui.useOverlayScrollbars': 1, // as on a phone; a desktop's take 12 px of the width
      'general.smoothScroll': false,
      'permissions.default.persistent-storage': 1, // left out, nobody is there to answer
      'media.navigator.streams.fake': true,
      'permissions.default.camera': 1,
    },
  });
  const said: string[] = [];
  context.on('console', (message) => {
    const isTrouble = message.type() === 'error' || message.type() === 'warning';
    if (isTrouble && !MEANS_NOTHING.test(message.text())) said.push(message.text());
  });
  context.on('weberror', (failure) => said.push(String(failure.error())));
  await context.addInitScript(countTransactions);
  const leader = browserProcess(userDataDir);
  const page = context.pages()[0] ?? (await context.newPage());
  return {
    page,
    userDataDir,
    said,
    newTab: () => context.newPage(),
    savedBy: (press) => savedInto(downloads, press),
    // Its driver takes the inches that playwright sends for centimetres.
    printed: async () => new Uint8Array(await page.pdf({ width: '21in', height: '29.7in' })),
    close: () => context.close(),
    kill: async () => {
      const closed = new Promise((done) => context.once('close', done));
      process.kill(-leader, 'SIGKILL');
      await closed;
    },
  };
}

/** The browser's own process leads a process group; playwright doesn't say which it is. */
function browserProcess(profile: string): number {
  const found = readdirSync('/proc').filter((name) => {
    if (!/^\d+$/.test(name)) return false;
    try {
      const words = readFileSync(`/proc/${name}/cmdline`, 'utf8').split('\0');
      return words.includes(profile) && !words.includes('-contentproc');
    } catch {
      return false;
    }
  });
  if (found.length !== 1) throw new Error(`not one browser has this profile but ${found.length}`);
  return Number(found[0]);
}
