import { refuse } from '../../engine/length/refusal.ts';
import { isPlainObject } from '../base/paths.ts';
import type { HomeCalls, HomeResult } from './home-calls.ts';
import type { AskedOfWorker, AskWorker, FromPage } from './worker-messages.ts';

/** The page's side of home's worker: made when it is first needed, told when the page is seen, asked what only it can do. */

const ADDRESS = './home-worker.js';
const IN_DEVELOPMENT = '/src/home-worker.ts';

/** Where the service worker reads which one origin home's worker may reach, beside the app's own. The same words stand in sw.ts. */
const allowed = { cache: 'slipfit-home', origin: 'home-origin' } as const;

type Listening = {
  readonly worker: Worker;
  readonly waiting: Map<number, (result: HomeResult<unknown>) => void>;
};

let listening: Listening | undefined;
let asked = 0;

/** Whether this page is one in which home can be: served by our own service worker, which holds home's worker to one origin. */
export function canHaveHome(): boolean {
  if (import.meta.env.DEV) return true;
  const browser: { readonly serviceWorker?: ServiceWorkerContainer; readonly locks?: LockManager } =
    navigator;
  const isServed = Boolean(browser.serviceWorker?.controller);
  return isSecureContext && isServed && browser.locks !== undefined;
}

/** From now on home's worker may reach this origin and no other. One that runs already was held to another. */
export async function allowOrigin(address: string): Promise<void> {
  const cache = await caches.open(allowed.cache);
  await cache.put(new URL(allowed.origin, location.href), new Response(new URL(address).origin));
  endWorker();
}

export async function allowNoOrigin(): Promise<void> {
  endWorker();
  await caches.delete(allowed.cache);
}

export function endWorker(): void {
  listening?.worker.terminate();
  for (const done of listening?.waiting.values() ?? []) done(refuse({ code: 'not-reached' }));
  listening = undefined;
}

export function tellWorker(message: Exclude<FromPage, { ask: unknown }>): void {
  say(startWorker().worker, message);
}

function say(worker: Worker, message: FromPage): void {
  // A worker of our own has no other origin.
  // oxlint-disable-next-line unicorn/require-post-message-target-origin
  worker.postMessage(message);
}

/** Asks the worker for one call, and waits for what it comes to. */
export async function askWorker<Name extends AskedOfWorker>(
  ask: Name,
  wanted: Parameters<HomeCalls[Name]>[0],
): Promise<Awaited<ReturnType<HomeCalls[Name]>>> {
  const { worker, waiting } = startWorker();
  asked += 1;
  const number = asked;
  const result = await new Promise<HomeResult<unknown>>((done) => {
    waiting.set(number, done);
    // The call and what it wants belong together by the types of this function.
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion
    say(worker, { ask, number, wanted } as AskWorker);
  });
  waiting.delete(number);
  // What comes back is what this very call gives: the worker answers by the call's own function.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return result as Awaited<ReturnType<HomeCalls[Name]>>;
}

export function startWorker(): Listening {
  if (listening) return listening;
  const worker = import.meta.env.DEV
    ? new Worker(IN_DEVELOPMENT, { type: 'module' })
    : new Worker(trustedAddress());
  const started: Listening = { worker, waiting: new Map() };
  listening = started;
  worker.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
    if (!isPlainObject(data) || typeof data['ask'] !== 'number') return;
    const { result } = data;
    // The worker's own answer.
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion
    started.waiting.get(data['ask'])?.(result as HomeResult<unknown>);
  });
  worker.addEventListener('error', () => {
    for (const done of started.waiting.values()) done(refuse({ code: 'own-fault' }));
  });
  const tell = () => say(worker, { say: 'seen', isVisible: document.visibilityState === 'visible' });
  document.addEventListener('visibilitychange', tell);
  return started;
}

type AddressPolicy = { createScriptURL(address: string): string };

/** A worker's address is a thing that runs code: our content security policy takes it from this policy only, which knows one. */
function trustedAddress(): string {
  const makeOnly = (address: string) => {
    if (address !== ADDRESS) throw new TypeError('not the address of home’s worker');
    return address;
  };
  const trusted: { createPolicy(name: string, rules: AddressPolicy): AddressPolicy } | undefined =
    Reflect.get(window, 'trustedTypes');
  policy ??= trusted?.createPolicy('slipfit-home', { createScriptURL: makeOnly });
  return policy?.createScriptURL(ADDRESS) ?? ADDRESS;
}

let policy: AddressPolicy | undefined;
