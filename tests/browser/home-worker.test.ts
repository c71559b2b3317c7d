import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startCouch, type Couch } from '../couch/couch.ts';
import { serveCouch, type CouchServer } from '../couch/couch-http.ts';
import { openPhone, removeTemporaryFolders, startServer, untilReadyOffline, type Phone } from './launch.ts';

let server: Awaited<ReturnType<typeof startServer>>;
let couch: Couch;
let home: CouchServer;

beforeAll(async () => {
  server = await startServer();
  couch = startCouch();
  home = await serveCouch(couch, { origins: () => [new URL(server.url).origin] });
});
afterAll(async () => {
  await home.stop();
  await server.stop();
  await removeTemporaryFolders();
});

const admin = { name: 'admin', password: 'admin' };

async function phoneReady(): Promise<Phone> {
  const phone = await openPhone();
  await phone.page.goto(`${server.url}#/shop`);
  await untilReadyOffline(phone.page);
  return phone;
}

type Answer = { ok: boolean; refusal?: { code: string }; value?: { words?: string; forQr?: string } };

/** Home's worker as the page has it, told that it may reach one origin; nothing of the screens is in between. */
async function ask(
  page: Page,
  asking: { readonly allowed?: string; readonly ask: string; readonly wanted: unknown },
): Promise<Answer> {
  const answer: unknown = await page.evaluate(async ({ allowed, ask, wanted }) => {
    await caches.delete('slipfit-home');
    const cache = await caches.open('slipfit-home');
    if (allowed !== undefined) await cache.put(new URL('home-origin', location.href), new Response(allowed));
    const kept = Object(window);
    const { trustedTypes } = Object(window);
    const rules = { createScriptURL: (address: string) => address };
    kept.policy ??= trustedTypes.createPolicy('slipfit-home', rules);
    kept.worker?.terminate();
    kept.worker = new Worker(kept.policy.createScriptURL('./home-worker.js'));
    const answered = new Promise((done) => {
      kept.worker.addEventListener('message', ({ data }: MessageEvent) => done(data.result));
    });
    // oxlint-disable-next-line unicorn/require-post-message-target-origin
    kept.worker.postMessage({ ask, number: 1, wanted });
    return answered;
  }, asking);
  return Object(answer);
}

async function reaches(page: Page, url: string): Promise<boolean> {
  return page.evaluate(
    (address) =>
      fetch(address).then(
        () => true,
        () => false,
      ),
    url,
  );
}

test('home’s worker reaches the one origin it was paired with, the page never, and what it sends comes to another phone', async () => {
  const first = await phoneReady();
  const wanted = { address: home.address, admin, phone: 'bench phone' };
  // Not allowed: the worker's own policy stops it.
  const shut = await ask(first.page, { ask: 'setUp', wanted });
  expect(shut).toMatchObject({ ok: false, refusal: { code: 'not-reached' } });
  const elsewhere = await ask(first.page, { allowed: 'http://127.0.0.1:9', ask: 'setUp', wanted });
  expect(elsewhere).toMatchObject({ ok: false, refusal: { code: 'not-reached' } });
  expect(couch.counted.requests).toBe(0);

  await first.page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await first.page.goto(`${server.url}#/new-job`);
  await first.page.getByRole('button', { name: 'none of these' }).click();
  await first.page.getByRole('button', { name: 'Make the job' }).click();
  await first.page.waitForURL(/#\/job\/[^/]+/);
  const name = (await first.page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  const allowed = new URL(home.address).origin;
  const made = await ask(first.page, { allowed, ask: 'setUp', wanted });
  expect(made).toMatchObject({ ok: true });
  expect(await reaches(first.page, home.address)).toBe(false);
  const [shop] = couch.databases.values();
  await expect.poll(() => [...(shop?.docs.keys() ?? [])].filter((id) => id.startsWith('m')).length).toBe(1);

  const code = await ask(first.page, { allowed, ask: 'addPhone', wanted: { admin, phone: 'lathe' } });
  const second = await phoneReady();
  const joined = await ask(second.page, {
    allowed,
    ask: 'join',
    wanted: { code: code.value?.forQr, words: made.value?.words, phone: 'lathe' },
  });
  expect(joined).toMatchObject({ ok: true });
  await second.page.goto(`${server.url}#/jobs`);
  await second.page.getByText(name).first().waitFor();
  expect(await second.page.getByText('Outfit 7').count()).toBe(0); // the demo stays where it is
  await Promise.all([first.close(), second.close()]);
});
