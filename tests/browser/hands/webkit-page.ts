import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Called, Found, GivenFile, Page, Role, Size } from './hands.ts';
import { filledIn, meantBy, placeToTap, stateOf, type Step, type Words } from './in-webkit-page.ts';

/** One tab of WebKit, by plain WebDriver: what `Page` asks for and no more. */

/** Asks the driver about this tab: method, path behind the session, body. */
export type Ask = (method: 'GET' | 'POST', path: string, body?: object) => Promise<unknown>;

const PATIENCE_MS = 30_000;
const LOOK_AGAIN_MS = 30;
const KEYS: Readonly<Record<string, string>> = {
  Backspace: '\uE003',
  Tab: '\uE004',
  Enter: '\uE007',
  Shift: '\uE008',
  Escape: '\uE00C',
  ArrowDown: '\uE015',
};

type Js = { toString(): string };

export function pageOfWebKit(ask: Ask): Page {
  const runScript = async (expression: string): Promise<unknown> => {
    const script = `const done = arguments[arguments.length - 1];
      Promise.resolve().then(() => ${expression}).then((value) => done({ value }), (error) => done({ error: String(error) }));`;
    const answer = await ask('POST', 'execute/async', { script, args: [] });
    if (isRecord(answer) && typeof answer['error'] === 'string') throw new Error(answer['error']);
    return isRecord(answer) ? (answer['value'] ?? undefined) : undefined;
  };
  const run = (inPage: Js, ...given: readonly unknown[]) =>
    runScript(`(${inPage.toString()})(${given.map((one) => JSON.stringify(one) ?? 'undefined').join(', ')})`);
  const evaluate = (inPage: Js | string, given?: unknown): Promise<unknown> =>
    typeof inPage === 'string'
      ? ask('POST', 'execute/sync', { script: inPage, args: [] })
      : run(inPage, given);
  const keyboard = keyboardBy(ask);
  const tab: Tab = { ask, runScript, keyboard };
  const from = (...chain: readonly Step[]) => foundIn(tab, chain);
  return {
    goto: (url) => ask('POST', 'url', { url }),
    reload: () => ask('POST', 'refresh', {}),
    setViewportSize: (size) => turnedTo(ask, runScript, size),
    getByRole: (role, called) => from(roleStep(role, called)),
    getByText: (words, { exact } = {}) => from({ text: sent(words), exact }),
    getByLabel: (words, { exact } = {}) => from({ label: sent(words), exact }),
    locator: (css, { hasText } = {}) => from({ css, hasText: hasText && sent(hasText) }),
    keyboard,
    evaluate,
    waitForTimeout: pause,
  };
}

type Tab = {
  readonly ask: Ask;
  readonly runScript: (expression: string) => Promise<unknown>;
  readonly keyboard: Page['keyboard'];
};

/** What each of them means, for those that are joined. */
const chains = new WeakMap<Found, readonly Step[]>();

function foundIn(tab: Tab, chain: readonly Step[]): Found {
  const { ask, runScript } = tab;
  const all = `(${meantBy.toString()})(${JSON.stringify(chain)})`;
  const of = (inPage: Js, ...given: readonly unknown[]) =>
    runScript(
      `(${inPage.toString()})(${[`${all}[0]`, ...given.map((one) => JSON.stringify(one))].join(', ')})`,
    );
  const then = (step: Step) => foundIn(tab, [...chain, step]);
  const textOf = async (inPage: Js): Promise<string> => {
    const it = await until(
      `${JSON.stringify(chain)} is there`,
      () => of(inPage),
      (text) => typeof text === 'string',
    );
    return String(it);
  };
  const tap = async (isTrial: boolean) => {
    const place = await until(`${JSON.stringify(chain)} can be tapped`, () => of(placeToTap), Array.isArray);
    if (!isTrial && Array.isArray(place))
      await ask('POST', 'actions', tapAt(Number(place[0]), Number(place[1])));
  };
  const found: Found = {
    first: () => then({ nth: 0 }),
    nth: (nth) => then({ nth }),
    or: (other) => then({ or: chains.get(other) ?? [] }),
    filter: ({ visible, hasText }) => then({ visible, hasText: hasText && sent(hasText) }),
    getByRole: (role, called) => then(roleStep(role, called)),
    click: ({ trial = false } = {}) => tap(trial),
    fill: async (text) => {
      await until(
        `${JSON.stringify(chain)} can be filled`,
        () => of(filledIn, text),
        (why) => why === '',
      );
    },
    pressSequentially: async (text) => {
      await textOf((field: HTMLElement | undefined) => (field ? (field.focus(), '') : undefined));
      await tab.keyboard.type(text);
    },
    setInputFiles: async (file) => {
      await textOf((field: Element | undefined) => field && (field.setAttribute('data-given', ''), ''));
      const found = await ask('POST', 'element', { using: 'css selector', value: '[data-given]' });
      await runScript(`document.querySelector('[data-given]').removeAttribute('data-given')`);
      const [id] = isRecord(found) ? Object.values(found) : [];
      await ask('POST', `element/${String(id)}/value`, { text: pathOf(file) });
    },
    waitFor: async ({ state = 'visible', timeout = PATIENCE_MS } = {}) => {
      const holds = (now: unknown) => {
        if (state === 'attached') return now !== 'detached';
        return state === 'hidden' ? now !== 'visible' : now === state;
      };
      await until(`${JSON.stringify(chain)} is ${state}`, () => of(stateOf), holds, timeout);
    },
    count: async () => Number(await runScript(`${all}.length`)),
    isVisible: async () => (await of(stateOf)) === 'visible',
    textContent: () => textOf((one: Element | undefined) => one?.textContent),
    innerText: () => textOf((one: HTMLElement | undefined) => one?.innerText),
    inputValue: () => textOf((one: HTMLInputElement | undefined) => one?.value),
    allTextContents: async () => {
      const texts = await runScript(`${all}.map((one) => one.textContent)`);
      return Array.isArray(texts) ? texts.map(String) : [];
    },
  };
  chains.set(found, chain);
  return found;
}

function roleStep(role: Role, { name, exact }: Called = {}): Step {
  return { role, name: name === undefined ? undefined : sent(name), exact };
}

const sent = (words: string | RegExp): Words =>
  typeof words === 'string' ? words : { source: words.source, flags: words.flags };

function keyboardBy(ask: Ask): Page['keyboard'] {
  const act = (actions: readonly object[]) =>
    ask('POST', 'actions', { actions: [{ type: 'key', id: 'keys', actions }] });
  const stroke = (value: string) => [
    { type: 'keyDown', value },
    { type: 'keyUp', value },
  ];
  return {
    type: async (text, { delay = 0 } = {}) => {
      await act(Array.from(text).flatMap((value) => [...stroke(value), { type: 'pause', duration: delay }]));
    },
    press: async (key) => {
      const values = key.split('+').map((name) => KEYS[name] ?? name);
      const down = values.map((value) => ({ type: 'keyDown', value }));
      const up = values.toReversed().map((value) => ({ type: 'keyUp', value }));
      await act([...down, ...up]);
    },
  };
}

function tapAt(x: number, y: number): object {
  const actions = [
    { type: 'pointerMove', x, y, duration: 0 },
    { type: 'pointerDown', button: 0 },
    { type: 'pointerUp', button: 0 },
  ];
  return { actions: [{ type: 'pointer', id: 'finger', parameters: { pointerType: 'mouse' }, actions }] };
}

async function turnedTo(ask: Ask, runScript: Tab['runScript'], size: Size): Promise<void> {
  await ask('POST', 'window/rect', size);
  const wanted = `${size.width} × ${size.height}`;
  await until(
    `the window is ${wanted}`,
    () => runScript('`${innerWidth} × ${innerHeight}`'),
    (now) => now === wanted,
  );
}

function pathOf(file: string | GivenFile): string {
  if (typeof file === 'string') return file;
  const path = join(mkdtempSync(join(tmpdir(), 'slipfit-given-')), file.name);
  writeFileSync(path, file.buffer);
  return path;
}

/** Asks again until the answer is one that will do. A question that is lost in a reload is asked again. */
export async function until(
  what: string,
  ask: () => Promise<unknown>,
  holds: (answer: unknown) => boolean = Boolean,
  patience = PATIENCE_MS,
): Promise<unknown> {
  const end = Date.now() + patience;
  for (;;) {
    // oxlint-disable-next-line no-await-in-loop
    const answer = await ask().catch((error: unknown) => ({ failed: String(error) }));
    if (holds(answer)) return answer;
    if (Date.now() > end)
      throw new Error(`waited ${patience} ms in vain until ${what}: ${JSON.stringify(answer)}`);
    // oxlint-disable-next-line no-await-in-loop
    await pause(LOOK_AGAIN_MS);
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

async function pause(ms: number): Promise<void> {
  await new Promise((done) => setTimeout(done, ms));
}
