import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { temporaryFolder } from '../launch.ts';
import { countTransactions } from '../on-a-screen.ts';
import type { Page, Phone, Size } from './hands.ts';
import { pageOfWebKit, until, type Ask } from './webkit-page.ts';

/** WebKitGTK by WebKitWebDriver and a window of our own: layout, script, database and worker code of Safari's engine. */

const ANSWER_MS = 60_000;
// Said at each load, and about nothing: this engine takes the policy but for one line of it.
const MEANS_NOTHING = /Unrecognized Content-Security-Policy directive 'manifest-src'/;
const usual: Size = { width: 390, height: 844 };

type Driver = {
  readonly process: ChildProcess;
  readonly ask: (method: string, path: string, body?: object) => Promise<unknown>;
  readonly said: string[];
};

export async function openWebKit(userDataDir: string, size: Size = usual): Promise<Phone> {
  const downloads = temporaryFolder('downloads');
  const driver = await startDriver({ PROFILE: userDataDir, DOWNLOADS: downloads });
  const binary = join(import.meta.dirname, 'window-of-webkit.py');
  const wanted = {
    browserName: 'MiniBrowser', // the only name that the driver takes; the window says the same of itself
    'webkitgtk:browserOptions': { binary, args: ['--automation'] },
  };
  const session = await driver.ask('POST', '/session', { capabilities: { alwaysMatch: wanted } });
  const id = String(Reflect.get(Object(session), 'sessionId'));
  const at: Ask = (method, path, body) => driver.ask(method, `/session/${id}/${path}`, body);
  const tabs = tabsOf(at);
  const page = await tabs.first();
  await page.setViewportSize(size);
  return {
    page,
    userDataDir,
    said: driver.said,
    newTab: tabs.another,
    savedBy: (press) => savedInto(downloads, press),
    printed: async () => {
      process.kill(windowOf(driver.process), 'SIGUSR1');
      const path = join(downloads, 'printed.pdf');
      await until('the page is printed', () => Promise.resolve(existsSync(path)));
      return new Uint8Array(readFileSync(path));
    },
    close: async () => {
      await driver.ask('DELETE', `/session/${id}`).catch(() => undefined);
      await ended(driver.process, 'SIGTERM');
    },
    kill: () => ended(driver.process, 'SIGKILL'),
  };
}

/** Its own process group, so that one signal ends window, network process and pages; and it dies with the tests. */
async function startDriver(folders: Readonly<Record<string, string>>): Promise<Driver> {
  const port = await freePort();
  const said: string[] = [];
  const command = ['--pdeathsig', 'KILL', 'WebKitWebDriver', `--port=${port}`];
  const child = spawn('setpriv', command, {
    detached: true,
    stdio: ['ignore', 'pipe', 'ignore'],
    env: {
      ...process.env,
      ...folders,
      GDK_BACKEND: 'x11',
      FIRST_SCRIPT: `(${countTransactions.toString()})()`,
    },
  });
  child.stdout.on('data', (text) => {
    const lines = String(text).split('\n');
    said.push(...lines.filter((line) => /^CONSOLE .*(?:ERROR|WARN)/.test(line) && !MEANS_NOTHING.test(line)));
  });
  const ask = async (method: string, path: string, body?: object): Promise<unknown> => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      ...(body && { body: JSON.stringify(body) }),
      signal: AbortSignal.timeout(ANSWER_MS),
    });
    const { value } = await answer.json();
    if (!answer.ok) throw new Error(`${path}: ${value.error} ${value.message}`);
    return value;
  };
  await until('WebKitWebDriver answers', () => ask('GET', '/status').catch(() => false));
  return { process: child, ask, said };
}

/** Each question goes to the tab it is about; the driver itself is always at one of them. */
function tabsOf(at: Ask): { first: () => Promise<Page>; another: () => Promise<Page> } {
  let isAt = '';
  let last: Promise<unknown> = Promise.resolve();
  const pageIn = (handle: string) =>
    pageOfWebKit((method, path, body) => {
      const turn = last.then(async () => {
        if (isAt !== handle) await at('POST', 'window', { handle });
        isAt = handle;
        return at(method, path, body);
      });
      last = turn.catch(() => undefined);
      return turn;
    });
  return {
    first: async () => {
      isAt = String(await at('GET', 'window'));
      return pageIn(isAt);
    },
    another: async () => pageIn(String(Reflect.get(Object(await at('POST', 'window/new', {})), 'handle'))),
  };
}

async function ended(child: ChildProcess, signal: 'SIGTERM' | 'SIGKILL'): Promise<void> {
  if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) return;
  const gone = new Promise((done) => child.once('exit', done));
  process.kill(-child.pid, signal);
  await gone;
}

/** The window program, a child of the driver. */
function windowOf(driver: ChildProcess): number {
  const found = readdirSync('/proc').find((name) => {
    if (!/^\d+$/.test(name)) return false;
    try {
      const [, parent] = /\) \S (\d+)/.exec(readFileSync(`/proc/${name}/stat`, 'utf8')) ?? [];
      return parent === String(driver.pid);
    } catch {
      return false;
    }
  });
  if (found === undefined) throw new Error('the window of WebKit was not found');
  return Number(found);
}

/** Waits for a file that was not there before the press, whole. */
export async function savedInto(folder: string, press: () => Promise<void>): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const before = new Set(readdirSync(folder));
  await press();
  const isNew = (name: string) =>
    !before.has(name) && !name.endsWith('.part') && !name.endsWith('.wkdownload');
  const name = await until('a file is saved', () => Promise.resolve(readdirSync(folder).find(isNew)));
  return join(folder, String(name));
}

function freePort(): Promise<number> {
  return new Promise((done, failed) => {
    const server = createServer().once('error', failed);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => done(typeof address === 'object' ? (address?.port ?? 0) : 0));
    });
  });
}
