import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { findBrowser } from '../find-browser.mjs';

/**
 * The two engines beside Chromium: what each of them needs, whether it is there, and on a Debian-like machine the
 * installing of it when run as root. Run by itself it installs what is missing and says what still is.
 */

/** @typedef {'firefox' | 'webkit'} OtherEngine */

const LONGEST_MS = 240_000;
const WINDOW = "import gi; gi.require_version('Gtk', '3.0'); gi.require_version('WebKit2', '4.1')";

/** @type {Record<OtherEngine, { title: string, packages: string[], isThere: () => boolean }>} */
const engines = {
  firefox: {
    title: 'Firefox',
    packages: ['firefox-esr'],
    isThere: () => findFirefox() !== undefined,
  },
  webkit: {
    title: 'WebKitGTK',
    packages: ['webkit2gtk-driver', 'xvfb', 'python3-gi', 'gir1.2-webkit2-4.1'],
    isThere: () =>
      onPath('WebKitWebDriver') !== undefined &&
      onPath('Xvfb') !== undefined &&
      spawnSync('/usr/bin/python3', ['-c', `${WINDOW}; from gi.repository import Gtk, WebKit2`]).status === 0,
  },
};

/** @type {readonly OtherEngine[]} */
export const otherEngines = ['firefox', 'webkit'];

/** @returns {string | undefined} the path of Firefox's extended support release, which the tests' driver knows */
export function findFirefox() {
  const asked = process.env['FIREFOX_PATH'];
  return asked && existsSync(asked) ? asked : onPath('firefox-esr');
}

/** @returns {string | undefined} one sentence about what is missing, for a person; nothing where the engine can be driven */
export function whatIsMissing(/** @type {OtherEngine} */ name) {
  const { title, packages, isThere } = engines[name];
  if (isThere()) return undefined;
  return `${title} is not tried: Debian's ${packages.join(', ')} would be needed.`;
}

function onPath(name) {
  return (process.env['PATH'] ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((path) => existsSync(path));
}

/** All that is missing, in one go, at most for some minutes; what can't be had is said by name later. */
async function installWhatIsMissing() {
  const missing = otherEngines.filter((name) => !engines[name].isThere());
  if (missing.length === 0 || process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return;
  const end = Date.now() + LONGEST_MS;
  await aptGet(['update'], end);
  // One by one: a system that has only one of them gets that.
  for (const name of missing) {
    // oxlint-disable-next-line no-await-in-loop
    await aptGet(['install', '-y', '--no-install-recommends', ...engines[name].packages], end);
  }
}

function aptGet(words, end) {
  const child = spawn('apt-get', ['-q', '-o', 'DPkg::Lock::Timeout=120', ...words], {
    stdio: ['ignore', 'ignore', 'pipe'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    timeout: Math.max(1000, end - Date.now()),
  });
  let said = '';
  child.stderr.on('data', (text) => (said += text));
  return new Promise((done) => {
    child.once('error', done);
    child.once('exit', (code) => {
      if (code !== 0) console.error(`apt-get ${words.join(' ')}: ${said.trim()}`);
      done(undefined);
    });
  });
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  try {
    findBrowser(); // it is missed most, and apt-get does one thing at a time
  } catch {
    // said where the browser tests begin
  }
  await installWhatIsMissing();
  for (const name of otherEngines) console.log(whatIsMissing(name) ?? `${engines[name].title} is there`);
}
