import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openStorePage } from '../trials/store-in-browser.ts';
import { hostileWords } from '../trials/hostile-words.ts';
import { chapters } from './every-screen.ts';
import { goTo, withoutPassingLines } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';

/** A file that is right, with markup, formulas and turning characters for every word in it, and files that are wrong. */

const quiet = { said: [], refused: [], strayed: [] };
let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;
let file = '';

beforeAll(async () => {
  const { phone: maker, close } = await openStorePage();
  file = await maker.page.evaluate(async () => (await window.slipfitStore.startFuzz()).wordsFile());
  await close();
  server = await startServer();
  phone = await openPhone();
  await phone.context.addInitScript(() => {
    globalThis.alert = () => void Reflect.set(globalThis, 'ran', true);
  });
  await phone.page.goto(server.url);
  await withoutPassingLines(phone.page);
});
afterAll(async () => {
  await phone.close();
  await server.stop();
  await removeTemporaryFolders();
});

const end = (text: string) => text.trimEnd().split('\n').at(-1) ?? '';

test.each([
  [
    'a picture',
    () => Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 1, 2]),
    /can't be read as text/,
  ],
  ['nothing', () => Buffer.alloc(0), /not a Slipfit backup/],
  [
    'its end missing',
    () => file.slice(0, -200),
    /breaks off after line \d+|Line \d+ of this backup can't be read/,
  ],
  [
    'one letter changed',
    () => file.replace('"jobId"', '"jobiD"'),
    /does not hold what it should|changed or damaged/,
  ],
  [
    'another checksum',
    () => file.replace(end(file), end(file).replace(/[0-9a-f]{64}/, '0'.repeat(64))),
    /changed or damaged/,
  ],
  ['a newer form', () => file.replace(/"version":\d+/, '"version":99'), /newer Slipfit \(form 99\)/],
  [
    'a name of 13 MB',
    () => file.replace('"name":"', `"name":"${'x'.repeat(13_000_000)}`),
    /Line 2 of this file is longer/,
  ],
  [
    'a name that reaches into objects',
    () => file.replace('"record":{', '"record":{"__proto__":{"a":1},'),
    /“__proto__”/,
  ],
] as const)(
  'a file with %s is refused on the screen in a sentence, and nothing comes of it',
  async (_what, spoilt, says) => {
    const { page } = phone;
    await choose(page, spoilt());
    const said = await page.getByRole('alert').textContent();
    expect(said).toMatch(says);
    expect(said).toContain('Nothing was changed here.');
    expect(await page.locator('body').innerText()).not.toMatch(/undefined|NaN|\[object/);
    await goTo(page, '/jobs');
    expect(await page.locator('main li a').count()).toBe(0);
    expect(phone.trouble).toEqual(quiet);
  },
);

test('put in, every word of such a file is plain text on every screen, and turns nothing behind it', async () => {
  const { page } = phone;
  await choose(page, file);
  await page.getByRole('button', { name: 'Put it in' }).click();
  await page.getByText('The file is in:').waitFor();
  const seen = new Set<string>();
  const made: string[] = [];
  const turning: string[] = [];
  let walked = 0;
  for (const place of places()) {
    await goTo(page, place);
    const found = await lookedAt(page);
    made.push(...found.made.map((what) => `${place}: ${what}`));
    turning.push(...found.turning.map((what) => `${place}: ${what}`));
    for (const word of found.seen) seen.add(word);
    walked += 1;
  }
  expect(made).toEqual([]);
  expect(turning).toEqual([]);
  expect(phone.trouble).toEqual(quiet);
  expect(await page.evaluate(() => Reflect.get(globalThis, 'ran'))).toBeUndefined();
  // Otherwise the walk would prove nothing: markup was there to be seen, as the text that it is.
  expect([...seen].toSorted()).toEqual(hostileWords.filter((word) => word.includes('<')).toSorted());
  expect(walked).toBeGreaterThan(40);
});

async function choose(page: Page, content: string | Buffer): Promise<void> {
  await goTo(page, '/shop');
  const buffer = Buffer.from(content);
  const input = page.getByLabel('Backup or job file');
  await input.setInputFiles({ name: 'backup.txt', mimeType: 'text/plain', buffer });
  await page
    .getByRole('alert')
    .or(page.getByRole('button', { name: 'Put it in' }))
    .first()
    .waitFor({ timeout: 60_000 });
}

/** Every address of the walks through the screens; what is pressed there doesn't matter here. */
function places(): readonly string[] {
  const all = Object.values(chapters).flatMap(({ screens }) => screens.map(({ place }) => place));
  return [...new Set(all)].filter((place) => place !== undefined);
}

async function lookedAt(page: Page) {
  return page.evaluate(
    (words) => {
      const texts: string[] = [document.title];
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node; node = walker.nextNode()) texts.push(node.nodeValue ?? '');
      for (const element of document.querySelectorAll('[aria-label], [placeholder], [title]'))
        for (const name of ['aria-label', 'placeholder', 'title'])
          texts.push(element.getAttribute(name) ?? '');
      const strangers = [
        ...document.querySelectorAll(
          'body script:not([src^="./"]), iframe, object, embed, b, img, a, [srcdoc]',
        ),
      ]
        .filter((one) => one.tagName !== 'IMG' || !one.getAttribute('src')?.startsWith('blob:'))
        .filter(
          (one) => one.tagName.toUpperCase() !== 'A' || !/^(?:#|blob:)/.test(one.getAttribute('href') ?? ''),
        );
      const handlers = [...document.querySelectorAll('body *')].filter((one) =>
        one.getAttributeNames().some((name) => name.startsWith('on')),
      );
      return {
        made: [...strangers, ...handlers].map((one) => one.outerHTML.slice(0, 120)),
        // What is closed off by an isolate turns nothing; what isn't, turns all that stands behind it.
        turning: texts
          .filter((text) =>
            /[\u202a-\u202e\u2066-\u2069]/.test(text.replace(/\u2068[^\u2066-\u2069]*\u2069/g, '')),
          )
          .map((text) => JSON.stringify(text.slice(0, 80))),
        seen: words.filter((word) => texts.some((text) => text.includes(word))),
      };
    },
    hostileWords.filter((word) => word.includes('<')),
  );
}
