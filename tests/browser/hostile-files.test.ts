import { Buffer } from 'node:buffer';
import { readFileSync } from 'node:fs';
import { extractText, getDocumentProxy } from 'unpdf';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readEntry } from '../../src/engine/length/entry.ts';
import { withBase64 } from '../../src/store/file/backup-bytes.ts';
import { isPlainObject } from '../../src/store/base/paths.ts';
import { putSetting } from '../../src/store/kept/settings.ts';
import { measuringTools } from '../../src/store/kept/tools.ts';
import { closeAll, openForTest, worked } from '../store/open-for-test.ts';
import { jpeg, png } from '../store/pictures-for-test.ts';
import { linesOf, recordsOf, sealed, type Line, type Lines } from '../store/sealed-backup.ts';
import { fillWithEveryKind } from '../trials/every-kind.ts';
import { placesIn } from '../trials/hostile-lines.ts';
import { someOf } from '../trials/seeded.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';
import { measureScreen } from './measure-screen.ts';
import { goTo, settled } from './on-a-screen.ts';
import { thumbOn } from './thumb.ts';

/** Files with right checksums and hostile content, clocks that are wrong, calendars of elsewhere, through the real screens. */

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;
let whole: Lines;

beforeAll(async () => {
  server = await startServer();
  const store = await openForTest({ now: Date.now });
  await fillWithEveryKind(store, jpeg(24, 16));
  await measuringTools(store);
  const graduation = worked(readEntry('.001', { unit: 'in' }));
  worked(await putSetting(store, 'dial', { reads: 'diameter', graduation }));
  whole = await linesOf(store);
  closeAll();
  phone = await phoneAt();
});
afterAll(async () => {
  await phone.close();
  await server.stop();
  await removeTemporaryFolders();
});

async function phoneAt(options: Parameters<typeof openPhone>[0] = {}): Promise<Phone> {
  const opened = await openPhone(options);
  await opened.context.addInitScript(() => void Reflect.deleteProperty(globalThis, 'showSaveFilePicker'));
  await opened.page.goto(server.url);
  await settled(opened.page);
  return opened;
}

async function choose(page: Page, lines: Lines): Promise<string> {
  await goTo(page, '/shop');
  const buffer = Buffer.from(await sealed(lines));
  await page
    .getByLabel('Backup or job file')
    .setInputFiles({ name: 'backup.txt', mimeType: 'text/plain', buffer });
  await page.locator('.restore [role=alert], .restore-jobs').first().waitFor({ state: 'attached' });
  await settled(page);
  return (await page.locator('.restore').innerText()).replace(/\s+/g, ' ');
}

const recordIn = (lines: Lines, store: string): Line => recordsOf(lines, store)[0] ?? {};
const drawn = (tag: string, attributes: Line = {}, children: readonly unknown[] = []) => ({
  tag,
  attributes,
  children,
});
const onSheet = (node: unknown) => (lines: Lines) => {
  recordIn(lines, 'sheets')['content'] = [node];
};
const nested = drawn('svg', {}, [
  drawn('g', { id: 'l0' }, [drawn('use', { href: '#l1' })]),
  drawn('g', { id: 'l1' }, [drawn('use', { href: '#l2' })]),
]);
const dashes = { r: '70000', 'stroke-dasharray': '1 1' };
const typedOtherwise = (store: string) => (lines: Lines) => {
  const sizes = recordsOf(lines, store)
    .flatMap((value) => placesIn({ value }))
    .flatMap(({ value }) => (isPlainObject(value) && typeof value['typed'] === 'string' ? [value] : []));
  Object.assign(sizes[0] ?? {}, { typed: '10 mm', unit: 'mm', exact: '25.4' });
};
const far = '007999999999999-ffff-zzzz';
const farAhead = (lines: Lines) => {
  const job = recordsOf(lines, 'jobs').find(({ id }) => id === 'demo-outfit-7') ?? {};
  Object.assign(job, { name: 'Taken over', stamps: { ...Object(job['stamps']), name: far } });
};

const notDrawn = /^Signed sheet 1 \(line \d+\) .+ look at what is drawn on it\. Nothing was changed here\.$/;
const asked: readonly (readonly [what: string, change: (lines: Lines) => unknown, says: RegExp])[] = [
  ['a sheet that nests use', onSheet(nested), notDrawn],
  ['a sheet with a pattern', onSheet(drawn('pattern', { id: 'a' })), notDrawn],
  ['a sheet with a marker', onSheet(drawn('marker', { id: 'a' })), notDrawn],
  ['a sheet with a clipPath', onSheet(drawn('clipPath', { id: 'a' })), notDrawn],
  ['a sheet with href', onSheet(drawn('g', { href: '#a' })), notDrawn],
  ['a sheet with url()', onSheet(drawn('rect', { fill: 'url(#a)' })), notDrawn],
  [
    'a sheet of endless dashes',
    onSheet(
      drawn(
        'svg',
        {},
        Array.from({ length: 300 }, () => drawn('circle', dashes)),
      ),
    ),
    notDrawn,
  ],
  [
    'a sheet of dashes without end',
    onSheet(drawn('svg', { viewBox: '0 0 1e5 1e5' }, [drawn('circle', { ...dashes, r: '100%' })])),
    notDrawn,
  ],
  [
    'a preview that unfolds',
    (lines) =>
      Object.assign(recordIn(lines, 'photos'), {
        width: 100,
        height: 100,
        preview: withBase64('photoBytes', { bytes: png(12_000, 12_000) })['bytes'],
      }),
    /^Photo “Indicator on the rim” \(line \d+\) is not as large as it says, or too large for a phone\./,
  ],
  ['a reading', typedOtherwise('readings'), /^Reading \d+ of .+ says “10 mm” and holds another size\./],
  ['a cut', typedOtherwise('cuts'), /^Cut “.+” \(line \d+\) says “10 mm” and holds another/],
  [
    'a worksheet',
    typedOtherwise('worksheets'),
    /^Worksheet “.+” \(line \d+\) says “10 mm” and holds another/,
  ],
  [
    'a piece',
    typedOtherwise('drawer'),
    /^Piece in the drawer “.+” \(line \d+\) says “10 mm” and holds another/,
  ],
  [
    'a worksheet below zero',
    (lines) => {
      const bore = Object(recordsOf(lines, 'worksheets').find(({ kind }) => kind === 'bushing')?.['sizes'])[
        'bore'
      ];
      Object.assign(Object(bore), { from: 'typed', typed: '-1', unit: 'mm', exact: '-1' });
    },
    /^Worksheet “.+” \(line \d+\) holds “-1”, and no such size can lie below zero\. Nothing was changed here\.$/,
  ],
  [
    'a reading of another job',
    (lines) => {
      const one = recordIn(lines, 'readings');
      one['jobId'] = one['jobId'] === 'demo-outfit-7' ? 'demo-trailer-hub' : 'demo-outfit-7';
    },
    /^Reading 1 of .+ belongs to a feature of another job\. Nothing was changed here\.$/,
  ],
  [
    'a reading of 2200',
    (lines) => (recordIn(lines, 'readings')['at'] = Date.UTC(2200, 0, 1) - 1),
    /^Reading 1 of .+ look at its date\. Nothing was changed here\.$/,
  ],
  [
    'a dial of zero',
    (lines) => {
      const dial = recordsOf(lines, 'settings').find(({ id }) => id === 'dial') ?? {};
      dial['value'] = { reads: 'diameter', graduation: { typed: '0', unit: 'in', exact: '0' } };
    },
    /^Setting “the dial of the lathe” .+ look at what it is set to\. Nothing was changed here\.$/,
  ],
  [
    'a tool better than good',
    (lines) => Object.assign(Object(recordIn(lines, 'tools')['tool']), { mpe: '-0.02' }),
    /^Measuring tool “.+” .+ look at the tool’s error limit\. Nothing was changed here\.$/,
  ],
  [
    'a date of 2096 and a stamp from the end of all time',
    (lines) => {
      farAhead(lines);
      recordIn(lines, 'readings')['at'] = 4_000_000_000_000;
    },
    /1 change claims a time after tomorrow\. Here it counts as older\. 1 date can’t be right: .+ Taken over new here/,
  ],
];

test.each(asked)(
  '%s is refused or asked about in words of the trade, none cut off',
  async (_what, change, says) => {
    const { page } = phone;
    const lines = structuredClone(whole);
    change(lines);
    expect(await choose(page, lines)).toMatch(says);
    await page.setViewportSize({ width: 320, height: 640 });
    expect(await measureScreen(page)).toEqual([]);
    await page.setViewportSize({ width: 390, height: 844 });
  },
);

test('of all that nothing came in, and the app goes on', async () => {
  const { page } = phone;
  await thumbOn(page).press('Leave it out');
  await goTo(page, '/jobs');
  await page.getByRole('button', { name: 'Show me with the demo job' }).waitFor();
  expect(phone.trouble).toEqual({ said: [], refused: [], strayed: [] });
});

test('after a file from the end of all time what is done here wins, and a signed table is harmless', async () => {
  const { page } = phone;
  const lines = structuredClone(whole);
  farAhead(lines);
  const sheet = recordIn(lines, 'sheets');
  sheet['readingsCsv'] = '=1+1,+2+2,-x,@a,-0.5\r\n';
  const plate = recordsOf(lines, 'worksheets').find(({ kind }) => kind === 'adapter-plate') ?? {};
  Object.assign(Object(plate['choices']), { aCount: '999999999', bCount: '999999999' });
  await choose(page, lines);
  await thumbOn(page).press('Put it in');
  await page.getByText('The file is in:').waitFor();
  await goTo(page, '/job/demo-outfit-7/about');
  await page.getByLabel('Name', { exact: true }).fill('Mine');
  await page.getByLabel('Name', { exact: true }).blur();
  await settled(page);
  await choose(page, lines);
  await goTo(page, '/jobs');
  await page.getByText('Mine', { exact: true }).first().waitFor();
  expect(await page.getByText('Taken over').count()).toBe(0);

  // A number that no pad takes in is asked for anew, and nothing is drawn of it.
  await goTo(page, `/job/${String(plate['jobId'])}/worksheets/${String(plate['id'])}`);
  await page.getByText('How many holes has pattern A?').first().waitFor();

  await goTo(page, `/job/${String(sheet['jobId'])}/sheet/signed/${String(sheet['id'])}`);
  const [download] = await Promise.all([page.waitForEvent('download'), thumbOn(page).press(/^Readings$/)]);
  // OWASP, "CSV injection": an apostrophe before = + - @; a plain number is none.
  expect(readFileSync(await download.path(), 'utf8').replace(/"/g, '')).toMatch(
    /'=1\+1,'\+2\+2,'-x,'@a,-0\.5/,
  );
});

test('a place that ended the browser twice, at once, is not gone back to', async () => {
  const { userDataDir } = phone;
  const sheet = recordIn(whole, 'sheets');
  const place = `#/job/${String(sheet['jobId'])}/sheet/signed/${String(sheet['id'])}`;
  await goTo(phone.page, '/jobs');
  await phone.page.evaluate(drawForEver);
  await phone.page.evaluate((to) => void setTimeout(() => void (location.hash = to)), place);
  // Sooner than the browser writes what is kept by name and value to the disk (Chromium: five seconds).
  await new Promise((done) => setTimeout(done, 300));
  await phone.kill();
  phone = await openPhone({ userDataDir });
  await phone.context.addInitScript(drawForEver);
  await phone.page.goto(`${server.url}${place}`, { waitUntil: 'commit' });
  await new Promise((done) => setTimeout(done, 2500));
  await phone.kill();
  phone = await openPhone({ userDataDir });
  await phone.context.addInitScript(drawForEver);
  await phone.page.goto(`${server.url}${place}`);
  await phone.page.getByText('The last place did not come up twice, so here are the jobs.').first().waitFor();
  await phone.page.getByText('Mine', { exact: true }).first().waitFor();
  expect(new URL(phone.page.url()).hash).toBe('#/jobs');
});

/** Runs in the page: a signed sheet never gets done. */
function drawForEver(): void {
  Element.prototype.attachShadow = () => {
    for (;;);
  };
}

test.each([
  ['1970', Date.UTC(1970, 0, 2)],
  ['2201', Date.UTC(2201, 3, 1)],
])('a phone that thinks it is %s says so, and everything works', async (year, at) => {
  const { page, context, trouble, close } = await openPhone();
  await context.addInitScript((from) => {
    const Real = Date;
    const off = from - Real.now();
    globalThis.Date = new Proxy(Real, {
      construct: (made, given: unknown[]) =>
        Reflect.construct(made, given.length === 0 ? [made.now() + off] : given),
      get: (made, name) => (name === 'now' ? () => made.now() + off : Reflect.get(made, name)),
    });
  }, at);
  await page.goto(server.url);
  const thumb = thumbOn(page);
  await page
    .getByText(new RegExp(`This phone’s clock says .+${year}\\. Set date and time`))
    .first()
    .waitFor();
  await thumb.press('Show me with the demo job');
  await page.getByText('Outfit 7').first().waitFor();
  await logAReading(page);
  // The note of the last stamp is damaged: it is made anew.
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        indexedDB.open('slipfit').addEventListener('success', (opened) => {
          const db: unknown = Reflect.get(opened.target ?? {}, 'result');
          if (!(db instanceof IDBDatabase)) return;
          const tx = db.transaction('device', 'readwrite');
          tx.objectStore('device').put({ id: 'clock', last: 'none', deviceId: 7 });
          tx.addEventListener('complete', () => {
            db.close();
            done();
          });
        });
      }),
  );
  await logAReading(page);
  expect(trouble).toEqual({ said: [], refused: [], strayed: [] });
  await close();
});

async function logAReading(page: Page): Promise<void> {
  const thumb = thumbOn(page);
  await goTo(page, '/jobs');
  await thumb.press('New job');
  await thumb.press('none of these');
  await thumb.press('Make the job');
  await thumb.press('New size');
  await thumb.press(/^Bore/);
  await thumb.key('.4487');
  await thumb.press('Log reading');
  await page.getByText('logged, reading 1').waitFor();
}

// Digits and calendar of the phone's own, each once; then two that differ in one of them.
test.each(someOf(['ar-EG', 'de-DE', 'th-TH-u-ca-buddhist', 'fa-IR'], 2))(
  'in %s the year of sheet, files and sign-off is Gregorian, the digits 0 to 9',
  async (locale) => {
    await phone.close();
    phone = await phoneAt({ userDataDir: phone.userDataDir, context: { locale } });
    const { page } = phone;
    const sheet = recordIn(whole, 'sheets');
    const jobId = String(sheet['jobId']);
    const seen: string[] = [];
    for (const place of ['sheet', 'sheet/files', 'sign-off', `sheet/signed/${String(sheet['id'])}`]) {
      // oxlint-disable-next-line no-await-in-loop
      await goTo(page, `/job/${jobId}/${place}`);
      // oxlint-disable-next-line no-await-in-loop
      seen.push(await page.locator('body').innerText());
    }
    await goTo(page, `/job/${jobId}/sheet`);
    const pdf = await getDocumentProxy(new Uint8Array(await page.pdf({ format: 'A4' })));
    const { text } = await extractText(pdf, { mergePages: true });
    const year = new Date().getFullYear();
    for (const words of [...seen, text]) {
      expect((words.match(/\p{Nd}/gu) ?? []).filter((digit) => !/[0-9]/.test(digit))).toEqual([]);
      // Buddhist 543 on; Persian 621 or 622 back; of the Hijra 1448 in 2026.
      expect(words).not.toMatch(
        new RegExp(`(?:^|[^.\\d])(?:${year + 543}|${year - 621}|${year - 622}|144[789])\\b`),
      );
    }
    expect(seen[0]).toContain(String(year));
    expect(text).toContain(String(year));
  },
);
