import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

/**
 * Finds a Chromium, Chrome or Edge for the browser tests, and on a Debian-like machine installs one when run as root.
 * Run by itself it prints the path, or one sentence about what is missing.
 */

const namesOnPath = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
];

const usualPlaces = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ...['ProgramFiles', 'ProgramFiles(x86)', 'LOCALAPPDATA'].flatMap((name) => {
    const folder = process.env[name];
    if (!folder) return [];
    return [
      join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe'),
      join(folder, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
    ];
  }),
];

const isRoot = process.getuid?.() === 0;

/** @returns {string} the path of a browser that is there; throws an Error with one sentence for a person otherwise */
export function findBrowser() {
  const found = askedFor() ?? playwrightsOwn() ?? onPath() ?? usualPlaces.find((path) => existsSync(path));
  if (found) return found;
  if (isRoot && existsSync('/etc/debian_version')) {
    installOnDebian();
    const installed = onPath();
    if (installed) return installed;
  }
  throw new Error(
    'The browser tests need Chromium, Chrome or Edge, and none was found: install one, or give its path in CHROMIUM_PATH.',
  );
}

/** Started each time with a profile of its own; no connection but the ones a test makes. */
export const launchFlags = [
  '--headless=new',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  ...(isRoot ? ['--no-sandbox'] : []),
];

function askedFor() {
  for (const name of ['CHROMIUM_PATH', 'CHROME_PATH']) {
    const path = process.env[name];
    if (!path) continue;
    if (existsSync(path)) return path;
    throw new Error(`${name} says the browser is ${path}, but there is no such file.`);
  }
  return undefined;
}

function playwrightsOwn() {
  const path = chromium.executablePath();
  return path && existsSync(path) ? path : undefined;
}

function onPath() {
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter(Boolean);
  return namesOnPath
    .flatMap((name) => folders.map((folder) => join(folder, name)))
    .find((path) => existsSync(path) && starts(path));
}

/** Ubuntu has a `chromium-browser` that only says how to install the real one. */
function starts(path) {
  return spawnSync(path, ['--version', ...launchFlags], { timeout: 20_000, stdio: 'ignore' }).status === 0;
}

function installOnDebian() {
  console.error('No browser found: installing chromium with apt-get.');
  const options = {
    stdio: ['ignore', process.stderr, process.stderr],
    timeout: 300_000,
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  };
  spawnSync('apt-get', ['update'], options);
  spawnSync('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], options);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  try {
    console.log(findBrowser());
  } catch (failure) {
    console.error(failure instanceof Error ? failure.message : failure);
    process.exitCode = 1;
  }
}
