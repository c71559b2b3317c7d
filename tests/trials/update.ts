import type { Page } from 'playwright-core';
import {
  buildApp,
  openPhone,
  startServer,
  untilNewVersionWaits,
  untilReadyOffline,
  type Phone,
} from '../browser/launch.ts';
import { thumbOn } from '../browser/thumb.ts';
import { keptIn, lostSince } from './kept-in.ts';
import { chanceFrom } from './seeded.ts';

export type UpdateCounts = {
  /** How many releases lie between the first and the last. */
  readonly versions: number;
  readonly updates: number;
  /** Of the versions, those that went by while the phone was switched off from the net. */
  readonly skipped: number;
  readonly draftsLost: number;
  readonly recordsLost: number;
};

// Measured elsewhere: gauges that act as keyboards send a key every 5 to 60 ms, 20 on average.
const KEY_MS = 20;

type Tab = { page: Page; readonly address: string; readonly label: string; readings: number };

/** How a version comes: pressed for in one of the two tabs, or taken up when the phone is switched on the next time. */
type Way = 'first tab' | 'second tab' | 'next start';

/**
 * Release after release from one place, each with a database step more than the one before, onto a phone with two tabs
 * open and a half-typed size in each. Every second time the phone was offline for several of them.
 */
export async function updateInARow({
  updates,
  seed,
  say = () => undefined,
}: {
  updates: number;
  seed: number;
  say?: (line: string) => void;
}): Promise<UpdateCounts> {
  const chance = chanceFrom(seed);
  const counts = { versions: 0, updates: 0, skipped: 0, draftsLost: 0, recordsLost: 0 };
  const server = await startServer(); // today's build
  let phone = await openPhone();
  const tabs = await twoTabs(phone, server.url);
  let number = 0;
  while (counts.updates < updates) {
    const typed: string[] = [];
    for (const tab of tabs) typed.push(await logAndHalfType(tab, chance));
    const before = await keptIn(tabs[0].page);
    const missed = counts.updates % 2 === 1 ? 3 : 0;
    number += missed + 1;
    const next = await release(number);
    if (missed > 0) await server.stop();
    server.serve(next);
    if (missed > 0) await server.start();
    const way = wayOf(chance());
    await untilNewVersionWaits(tabs[0].page);
    if (way === 'next start') phone = await switchedOffAndOn(phone, tabs, number);
    else await take(tabs[way === 'first tab' ? 0 : 1].page);
    for (const tab of tabs) await untilRelease(tab.page, number);
    const fields: string[] = [];
    for (const tab of tabs) fields.push(await fieldOf(tab));
    const lost = lostSince(before, await keptIn(tabs[0].page));
    counts.updates += 1;
    counts.versions += missed + 1;
    counts.skipped += missed;
    counts.recordsLost += lost.length;
    counts.draftsLost += typed.filter((draft, index) => fields[index] !== draft).length;
    if (lost.length > 0 || typed.join(' ') !== fields.join(' '))
      say(
        `release ${number}, ${way}: lost ${lost.join(' ')}; typed ${typed.join(' ')} → ${fields.join(' ')}`,
      );
    for (const tab of tabs) await emptied(tab);
  }
  await phone.close();
  await server.stop();
  say(sentence(counts, seed));
  return counts;
}

function sentence(
  { versions, updates, skipped, draftsLost, recordsLost }: UpdateCounts,
  seed: number,
): string {
  return `seed ${seed}: ${updates} updates over ${versions} versions, ${skipped} of them skipped offline, two tabs each; drafts lost: ${draftsLost}, records lost: ${recordsLost}`;
}

const built = new Map<number, Promise<string>>();

/** A release with that many steps of the database more than today's, in a folder; built once. */
export async function release(number: number): Promise<string> {
  const steps = Array.from({ length: number }, () => 'moves');
  const folder = built.get(number) ?? buildApp(nameOf(number), steps);
  built.set(number, folder);
  return folder;
}

function nameOf(number: number): string {
  return `release ${number}`;
}

function wayOf(chance: number): Way {
  if (chance < 0.4) return 'first tab';
  return chance < 0.8 ? 'second tab' : 'next start';
}

/** A job with two lengths to be measured, each with its pad in a tab of its own. */
async function twoTabs(phone: Phone, url: string): Promise<[Tab, Tab]> {
  const { page, context } = phone;
  await page.goto(`${url}#/new-job`);
  await untilReadyOffline(page);
  const thumb = thumbOn(page);
  await thumb.press('none of these');
  await thumb.press('Make the job');
  await page.waitForURL(/#\/job\/[^/]+/);
  const job = page.url();
  const addresses: string[] = [];
  for (const label of ['Length 1', 'Length 2']) {
    await page.goto(job);
    await thumb.press('New size');
    await thumb.press(/^Length/);
    await page.getByLabel(`${label}, reading 1`).waitFor();
    addresses.push(page.url());
  }
  const other = await context.newPage();
  await other.goto(addresses[0] ?? '');
  return [
    { page: other, address: addresses[0] ?? '', label: 'Length 1', readings: 0 },
    { page, address: addresses[1] ?? '', label: 'Length 2', readings: 0 },
  ];
}

/** Logs a size and leaves another one half typed, which comes back. */
async function logAndHalfType(tab: Tab, chance: () => number): Promise<string> {
  const { page } = tab;
  await page.getByLabel(`${tab.label}, reading ${tab.readings + 1}`).waitFor();
  await page.bringToFront();
  await page.keyboard.type(`.4${Math.floor(1000 + chance() * 9000)}`, { delay: KEY_MS });
  await page.keyboard.press('Enter');
  tab.readings += 1;
  await page.getByText(new RegExp(`^logged, reading ${tab.readings}\\b`)).waitFor();
  const half = `.4${String(Math.floor(chance() * 1000)).slice(0, 1 + Math.floor(chance() * 3))}`;
  await page.keyboard.type(half);
  return half;
}

async function take(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Take it now' }).click();
}

/** Switched off with the new version waiting, and on again: both tabs are opened as they were. */
async function switchedOffAndOn(phone: Phone, tabs: [Tab, Tab], number: number): Promise<Phone> {
  await phone.close();
  const again = await openPhone({ userDataDir: phone.userDataDir });
  const pages = [again.page, await again.context.newPage()];
  for (const [index, tab] of tabs.entries()) {
    tab.page = pages[index] ?? again.page;
    await tab.page.goto(tab.address);
  }
  // The browser may start the version of before once more: it offers the new one again.
  const offer = again.page.getByRole('button', { name: 'Take it now' });
  const running = again.page.locator(`meta[name=version][content="${nameOf(number)}"]`);
  await offer.or(running).first().waitFor({ state: 'attached', timeout: 30_000 });
  if (await offer.isVisible()) await offer.click();
  return again;
}

async function untilRelease(page: Page, number: number): Promise<void> {
  await page
    .locator(`meta[name=version][content="${nameOf(number)}"]`)
    .waitFor({ state: 'attached', timeout: 30_000 });
}

/** What is typed on the pad, when all its readings are back. */
async function fieldOf({ page, label, readings }: Tab): Promise<string> {
  const field = page.getByLabel(`${label}, reading ${readings + 1}`);
  await field.waitFor();
  // The draft comes a moment after the pad: waited for, and an empty field is taken for lost only after that.
  await page
    .waitForFunction(() => document.querySelector<HTMLInputElement>('#size')?.value !== '', undefined, {
      timeout: 5000,
    })
    .catch(() => undefined);
  return field.inputValue();
}

async function emptied({ page }: Tab): Promise<void> {
  while ((await page.locator('#size').inputValue()) !== '') await page.locator('#size').press('Backspace');
}
