import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { extractText, getDocumentProxy } from 'unpdf';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { backupLines } from '../../src/store/file/backup.ts';
import { closeStore, openStore } from '../../src/store/opening/open-store.ts';
import { makeSmallJob } from '../screens/sheet/small-job.ts';
import { makeWholeJob, wholeJobId } from '../screens/sheet/whole-job.ts';
import { goTo, settled, withoutPassingLines } from './on-a-screen.ts';
import { someOf } from '../trials/seeded.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';

/** A whole job's sheet on a phone without signal: printed on both papers, and given away as files. */

/** Between the keys of a person; faster ones are a gauge's. */
const HAND_MS = 150;

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;
let smallJobId = '';
const pages: Record<'A4' | 'Letter', string[]> = { A4: [], Letter: [] };

beforeAll(async () => {
  server = await startServer();
  phone = await openPhone();
  const { page, context } = phone;
  // "Save as" waits for a person; without it files go to the downloads.
  await context.addInitScript(() => void Reflect.deleteProperty(globalThis, 'showSaveFilePicker'));
  await page.goto(server.url);
  await withoutPassingLines(page);
  await server.stop();
  await restoreWholeJob();
  await openSheet(wholeJobId, 'Outfit 7');
  for (const paper of ['A4', 'Letter'] as const) {
    // oxlint-disable-next-line no-await-in-loop
    pages[paper] = await printed(paper);
  }
});
afterAll(async () => {
  await phone.close();
  await server.stop();
  await removeTemporaryFolders();
});

describe.each(['A4', 'Letter'] as const)('the sheet printed on %s', (paper) => {
  test.each([
    ['the job', ['Outfit 7', 'brake, axle and wheel', 'A mistake here can kill.', '12480 mi']],
    ['the parts', ['Stand-in axle bar', 'mock-up', 'still in']],
    [
      'the readings',
      ['.4487 in', '.4490 in', '.4485 in', '.4950 in', 'read on the burr', '4.4125 in', '±.0005 in'],
    ],
    // 1.9982 − .7502 − 1.1452 − 2 × .0625 = −.0222; 1.1452 − (.010 + .0222) = 1.1130
    ['the worksheets', ['.0222', '1.113', '7/16-20 UNF in steel', 'Trail: 4.19 in']],
    ['the cuts', ['1.1452 in', '1.1380 in', '1.1366 in to 1.1394 in', '1.1404 in', '.0024 in', '1.1381 in']],
    ['what was struck out at the machine', ['1.1254 in', 'chip under the anvil']],
    ['the checks', ['.0035', '.0102', '.008 to .012', 'Too tight', 'Good: float', '12 mm clear of the tyre']],
    [
      'the assembly',
      ['85 lbf·ft', 'service manual, section 9, page 4', 'cures 24 h', 'Cotter pin', 'R. Marsh'],
    ],
    ['what is checked again', ['Bracket bolts, their torque', '7 days or 50 mi']],
    // 41.90 + 2.5 × 65 = 204.40
    ['money and time', ['$41.90', '2.5 h', '$162.50', 'Total $204.40']],
    ['the lines to sign', ['Put together by', 'Checked by', 'Licence or stamp', 'Date', 'Notes']],
  ])('holds %s', (_what, figures) => {
    const text = pages[paper].join(' ').replace(/\s+/g, ' ');
    expect(figures.filter((figure) => !text.includes(figure))).toEqual([]);
  });

  test('has the job and the page at the foot of each page', () => {
    const count = pages[paper].length;
    expect(count).toBeGreaterThan(1);
    const without = pages[paper].filter(
      (text, index) => !new RegExp(`^page ${index + 1} of ${count}\\s*Outfit 7\\s`).test(text),
    );
    expect(without).toEqual([]);
  });

  test.each([
    ['Lathe spacer, face to length', 'Blank: 1.1452 in', '1.1381 in'],
    ['Nut of the axle', '85 lbf·ft', 'Done by, when'],
    ['Sign-off', 'Put together by', 'Notes'],
    ['.4950 in', 'read on the burr', '.4487 in'],
    ['Front wheel in the fork', '4.412', '6.750'],
  ])('keeps %s on one page', (...words) => {
    expect(pages[paper].some((text) => words.every((word) => text.includes(word)))).toBe(true);
  });

  test('no heading stands alone at the end of a page', () => {
    const last = pages[paper].map((text) => text.trim().split('\n').at(-1) ?? '');
    const headings = ['Parts', 'Readings', 'Worksheets', 'Cuts', 'Fit-up checks', 'Assembly', 'Sign-off'];
    expect(last.filter((line) => headings.includes(line.trim()))).toEqual([]);
  });
});

test.each(['A4', 'Letter'] as const)(
  'a job of one worksheet, a few readings and one cut is printed on one page of %s',
  async (paper) => {
    await openSheet(smallJobId, 'Idler pulley');
    const text = await printed(paper);
    await openSheet(wholeJobId, 'Outfit 7');
    const words = text.join(' ').replace(/\s+/g, ' ');
    // What it came to, what was cut, what it was read from, and where to sign: all of it is there.
    const wanted = ['Too tight', '1.123', '1.1262 in', '2.4115 in', 'Old washer', 'Put together by'];
    expect(wanted.filter((figure) => !words.includes(figure))).toEqual([]);
    expect(text).toHaveLength(1);
  },
);

test('on paper every drawing is black on white', async () => {
  const { page } = phone;
  await page.emulateMedia({ media: 'print' });
  const colours = await page.evaluate(() => {
    const elements = [...document.querySelectorAll('article.sheet svg.drawing, article.sheet svg.drawing *')];
    return [
      ...new Set(
        elements.flatMap((one) => {
          const { fill, stroke, backgroundColor } = getComputedStyle(one);
          return one.localName === 'svg' ? [stroke, backgroundColor] : [fill, stroke];
        }),
      ),
    ];
  });
  await page.emulateMedia({ media: 'screen' });
  expect(colours.filter((colour) => !isGrey(colour))).toEqual([]);
  expect(colours).toContain('rgb(255, 255, 255)');
});

describe('the files of the sheet', () => {
  beforeAll(async () => {
    await goTo(phone.page, `/job/${wholeJobId}/sheet/files`);
    await phone.page.getByRole('button', { name: /^Front wheel in the fork/ }).waitFor();
  });

  test('readings go out for a spreadsheet: UTF-8 with its mark, a line for each', async () => {
    const { name, text } = await given(/^Readings/);
    expect(name).toBe('outfit-7-readings.csv');
    expect(text.charCodeAt(0)).toBe(0xfeff);
    // three readings and the one struck out; one go of one reading and one of three
    expect(linesWith(text, 'Shock-link bore, left')).toBe(4);
    expect(linesWith(text, 'Bracket float, far side')).toBe(4);
  });

  test('cuts go out with every measurement', async () => {
    const { name, text } = await given(/^Cuts/);
    expect(name).toBe('outfit-7-cuts.csv');
    expect(linesWith(text, 'Lathe spacer, face to length')).toBe(4);
    // not begun
    expect(linesWith(text, 'Lathe bushing, turn outside')).toBe(1);
  });

  test('each drawing goes out as an SVG that stands alone, black on white, with its title', async () => {
    const { page, context } = phone;
    const rows = page.getByRole('button', { name: /black on white$/ });
    const names = await rows.allTextContents();
    expect(names.length).toBeGreaterThan(5);
    const blank = await context.newPage();
    for (const index of someOf([...names.keys()], 3)) {
      // oxlint-disable-next-line no-await-in-loop
      const { name, text } = await download(() => rows.nth(index).click());
      expect(name).toMatch(/^outfit-7-[a-z-]+\.svg$/);
      // oxlint-disable-next-line no-await-in-loop
      const read = await blank.evaluate(readSvg, text);
      expect(read.fault).toBe('');
      expect(read.title).toMatch(/, Outfit 7$/);
      expect(read.said).not.toBe('');
      expect(read.needsApp).toEqual([]);
      expect(read.colours.filter((colour) => !isGrey(colour))).toEqual([]);
      expect(read.drawnWidth).toBeGreaterThan(0);
    }
    await blank.close();
  });

  test('a bushing goes out as DXF, in the inches of this phone', async () => {
    const { name, text } = await given(/^Bushing ?outside/);
    expect(name).toBe('outfit-7-bushing.dxf');
    expect(text).toMatch(/\$INSUNITS\s+70\s+1\s/);
    expect(text.match(/\bCIRCLE\b/g)).toHaveLength(2);
  });

  test('a spacer is asked for its diameters, and then goes out', async () => {
    const { page } = phone;
    await page.getByRole('link', { name: /^Outer spacer/ }).click();
    await page.getByRole('button', { name: 'Give it as DXF' }).click();
    await page.getByText('It needs its outside and inside first.').first().waitFor();
    for (const [side, size] of [
      ['Outside', '1.250'],
      ['Inside', '.7505'],
    ] as const) {
      // oxlint-disable-next-line no-await-in-loop
      await page.getByRole('link', { name: new RegExp(`^${side}`) }).click();
      // oxlint-disable-next-line no-await-in-loop
      await page.locator('#size').pressSequentially(size, { delay: HAND_MS });
      // oxlint-disable-next-line no-await-in-loop
      await page.keyboard.press('Enter');
      // oxlint-disable-next-line no-await-in-loop
      await page.getByRole('heading', { name: 'Outer spacer', level: 1, exact: true }).waitFor();
    }
    const { name, text } = await download(() => page.getByRole('button', { name: 'Give it as DXF' }).click());
    expect(name).toBe('outfit-7-outer-spacer.dxf');
    // half of 1.250 and of .7505
    expect([...text.matchAll(/\b40\s+([\d.]+)\s/g)].map((match) => match[1])).toEqual(
      expect.arrayContaining(['0.625', '0.37525']),
    );
  });

  test('nothing was refused by the policy, and nothing left the phone', () => {
    expect(phone.trouble).toEqual({ said: [], refused: [], strayed: [] });
  });
});

async function openSheet(jobId: string, name: string): Promise<void> {
  await goTo(phone.page, `/job/${jobId}/sheet`);
  await phone.page.locator('article.sheet .sheet-name', { hasText: name }).waitFor();
  await settled(phone.page);
}

/** Into the phone through its own door for backups. */
async function restoreWholeJob(): Promise<void> {
  const { page } = phone;
  await goTo(page, '/shop');
  await page
    .getByLabel('Backup or job file')
    .setInputFiles({ name: 'whole-job.txt', mimeType: 'text/plain', buffer: await backupOfWholeJob() });
  await page.getByRole('button', { name: 'Put it in' }).click();
  await page.getByText('The file is in:').waitFor();
}

async function backupOfWholeJob(): Promise<Buffer> {
  const opened = await openStore({ name: 'whole-job' });
  if (!opened.ok) throw new Error(opened.refusal.code);
  await makeWholeJob(opened.value);
  smallJobId = await makeSmallJob(opened.value);
  const lines: string[] = [];
  for await (const line of backupLines(opened.value)) lines.push(line);
  closeStore(opened.value);
  return Buffer.from(lines.join(''));
}

/** The text of each page, as another reader finds it in the PDF. */
async function printed(paper: 'A4' | 'Letter'): Promise<string[]> {
  const pdf = await phone.page.pdf({ format: paper });
  const { text } = await extractText(await getDocumentProxy(new Uint8Array(pdf)), { mergePages: false });
  return text;
}

async function given(row: RegExp): Promise<{ readonly name: string; readonly text: string }> {
  return download(() => phone.page.getByRole('button', { name: row }).first().click());
}

async function download(
  press: () => Promise<void>,
): Promise<{ readonly name: string; readonly text: string }> {
  const [file] = await Promise.all([phone.page.waitForEvent('download'), press()]);
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), 'utf8') };
}

/** As a program that knows nothing of the app reads it. Runs in an empty page. */
async function readSvg(text: string) {
  const read = new DOMParser().parseFromString(text, 'image/svg+xml');
  const all = [...read.querySelectorAll('*')];
  const picture = new Image();
  picture.src = `data:image/svg+xml,${encodeURIComponent(text)}`;
  await picture.decode();
  return {
    fault: read.querySelector('parsererror')?.textContent ?? '',
    title: read.querySelector('svg > title')?.textContent ?? '',
    said: read.querySelector('svg > desc')?.textContent ?? '',
    needsApp: all
      .filter((one) => one.hasAttribute('class') || one.hasAttribute('style'))
      .map((one) => one.localName),
    colours: [
      ...new Set(all.flatMap((one) => ['fill', 'stroke'].flatMap((name) => one.getAttribute(name) ?? []))),
    ],
    drawnWidth: picture.naturalWidth,
  };
}

function linesWith(text: string, words: string): number {
  return text.split('\r\n').filter((line) => line.includes(words)).length;
}

function isGrey(colour: string): boolean {
  if (colour === 'none' || colour === '#fff') return true;
  const [red, green, blue, alpha = '1'] = colour.match(/[\d.]+/g) ?? [];
  return red !== undefined && red === green && green === blue && (alpha === '1' || alpha === '0');
}
