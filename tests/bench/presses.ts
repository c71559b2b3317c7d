import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { openPhone, startServer, temporaryFolder } from '../browser/launch.ts';
import { thumbOn } from '../browser/thumb.ts';
import { median, quantile, type Part } from './figures.ts';
import { slowed } from './slowed.ts';

const SLOWER = 6;
const PRESSES = 120;
const CHANGES = 15;

/**
 * From the press on a key of the pad until its digit is painted, and from a size taken over until the answer is. Beside it
 * the same press on a page that does nothing but write the digit: what the machine and its browser take for themselves.
 */
export async function presses(folder: string): Promise<Part> {
  const least = await emptyPagePainted();
  const server = await startServer({ folder });
  const phone = await openPhone({ timed: true });
  const { page } = phone;
  await page.goto(server.url);
  const thumb = thumbOn(page);
  await thumb.press('New job');
  await thumb.press('none of these');
  await thumb.press('Make the job');
  await thumb.press('New size');
  await thumb.press(/^Bore/);
  await page.getByLabel('Bore 1, reading 1').waitFor();
  await slowed(page, SLOWER);
  const keys = await keysPainted(page);
  const answers = await answersPainted(page, server.url);
  await phone.close();
  const drawings = await drawingPainted(server.url);
  await server.stop();
  const leastP95 = quantile(least, 0.95);
  const beside = (name: string, times: readonly number[], aim?: number) => ({
    name: `${name}, p95, beside that page`,
    unit: '×' as const,
    value: quantile(times, 0.95) / leastP95,
    runs: times.length,
    ...(aim !== undefined && { aim }),
  });
  const ms = (name: string, value: number, runs: number) => ({ name, unit: 'ms' as const, value, runs });
  return {
    title: `Presses, processor ${SLOWER}× slower`,
    figures: [
      ms('an empty page that writes the digit, p50', median(least), least.length),
      ms('an empty page that writes the digit, p95', quantile(least, 0.95), least.length),
      ms('key to painted digit, p50', median(keys), keys.length),
      ms('key to painted digit, p95', quantile(keys, 0.95), keys.length),
      ms('key to painted digit, worst', quantile(keys, 1), keys.length),
      beside('key to painted digit', keys, 1.5),
      ms(
        'a worksheet’s drawing and running figure painted anew at a key, p50',
        median(drawings),
        drawings.length,
      ),
      ms('a worksheet’s drawing and running figure, p95', quantile(drawings, 0.95), drawings.length),
      beside('a worksheet’s drawing and running figure', drawings),
      ms('drill chart worked out anew at a key, p50', median(answers), answers.length),
      ms('drill chart worked out anew at a key, p95', quantile(answers, 0.95), answers.length),
    ],
  };
}

/** Each press is timed in the page itself, from the event's own time stamp to the frame behind the changed digit. */
async function keysPainted(page: Page): Promise<number[]> {
  await timePresses(page, '#size');
  await tapInTurns(page, PRESSES, 4);
  return pressTimes(page);
}

/** A stack with its sleeve, at its first part: each digit moves the drawing and what is left over. */
async function drawingPainted(url: string): Promise<number[]> {
  const phone = await openPhone({ timed: true });
  const { page } = phone;
  await page.goto(url);
  const thumb = thumbOn(page);
  for (const key of ['New job', 'none of these', 'Make the job', 'Decide', /^Spacer stack/])
    await thumb.press(key);
  await thumb.key('1.998');
  await thumb.press('Use it');
  await page.getByRole('button', { name: 'Next part' }).waitFor();
  await slowed(page, SLOWER);
  await timePresses(page, '.form-drawing');
  await tapInTurns(page, PRESSES / 2, 2);
  const times = await pressTimes(page);
  await phone.close();
  return times;
}

async function emptyPagePainted(): Promise<number[]> {
  const folder = temporaryFolder('empty-pad');
  const keys =
    '<button type="button">4</button><button type="button" aria-label="delete last digit">back</button>';
  writeFileSync(
    join(folder, 'index.html'),
    `<!doctype html><meta charset="utf-8"><title>empty</title><style>button { min-width: 80px; min-height: 60px; }</style>
<body><input id="size" inputmode="none">${keys}<script type="module" src="./page.js"></script>`,
  );
  writeFileSync(
    join(folder, 'page.js'),
    `const size = document.getElementById('size');
size.focus();
const [key, back] = document.querySelectorAll('button');
key.onclick = () => { size.value += '4'; };
back.onclick = () => { size.value = size.value.slice(0, -1); };
`,
  );
  const server = await startServer({ folder, plain: true });
  const phone = await openPhone({ timed: true });
  await phone.page.goto(server.url);
  await slowed(phone.page, SLOWER);
  const times = await keysPainted(phone.page);
  await phone.close();
  await server.stop();
  return times;
}

/** Some digits, then as many deletes. By place, as a finger does: a locator's own tap asks the slowed page questions first. */
async function tapInTurns(page: Page, presses: number, digits: number): Promise<void> {
  const key = await middleOf(page.getByRole('button', { name: '4', exact: true }));
  const back = await middleOf(page.getByRole('button', { name: 'delete last digit' }));
  for (let press = 0; press < presses; press += 1) {
    const { x, y } = press % (2 * digits) < digits ? key : back;
    await page.touchscreen.tap(x, y);
    await page.waitForTimeout(60); // a finger's pace, so that no press waits for the one before
  }
}

async function middleOf(key: Locator): Promise<{ readonly x: number; readonly y: number }> {
  const box = await key.boundingBox();
  if (!box) throw new Error('a key that is not on the screen');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function answersPainted(page: Page, url: string): Promise<number[]> {
  await page.goto(`${url}#/charts/drills`);
  await page.locator('#size').waitFor();
  await timePresses(page, 'main');
  await tapInTurns(page, CHANGES * 4, 2);
  return pressTimes(page);
}

async function timePresses(page: Page, changing: string): Promise<void> {
  await page.evaluate((selector) => {
    const times: number[] = [];
    Reflect.set(globalThis, 'pressTimes', times);
    const look = () => {
      const found = document.querySelector(selector);
      return found instanceof HTMLInputElement ? found.value : found?.textContent;
    };
    let before = look();
    addEventListener(
      'click',
      (event) => {
        const at = event.timeStamp;
        const wait = () =>
          requestAnimationFrame(() => {
            const now = look();
            if (now === before) {
              wait();
              return;
            }
            before = now;
            const { port1, port2 } = new MessageChannel();
            port1.addEventListener('message', () => times.push(performance.now() - at));
            port1.start();
            port2.postMessage('');
          });
        wait();
      },
      { capture: true },
    );
  }, changing);
}

async function pressTimes(page: Page): Promise<number[]> {
  await page.waitForTimeout(500);
  const times: unknown = await page.evaluate(() => Reflect.get(globalThis, 'pressTimes'));
  return Array.isArray(times) ? times.map(Number) : [];
}
