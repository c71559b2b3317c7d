import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { goTo, withoutPassingLines } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, temporaryFolder } from './launch.ts';
import { thumbOn } from './thumb.ts';

/** What reaches the app from outside it: its icon's shortcuts, a file opened with it, a file shared to it. */

let server: Awaited<ReturnType<typeof startServer>>;
let jobFile = '';

beforeAll(async () => {
  server = await startServer();
  const { page, context, close } = await openPhone();
  await context.addInitScript(() => {
    Reflect.deleteProperty(globalThis, 'showSaveFilePicker');
    Reflect.deleteProperty(Navigator.prototype, 'canShare');
  });
  await page.goto(server.url);
  await withoutPassingLines(page);
  await thumbOn(page).press('Show me with the demo job');
  await page.getByText('Outfit 7').first().waitFor();
  await goTo(page, '/job/demo-outfit-7/about');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    thumbOn(page).press('Hand this job over as a file'),
  ]);
  const path = join(temporaryFolder('file'), download.suggestedFilename());
  await download.saveAs(path);
  jobFile = readFileSync(path, 'utf8');
  await close();
});
afterAll(async () => {
  await server.stop();
  await removeTemporaryFolders();
});

type Manifest = {
  readonly icons: readonly { readonly src: string }[];
  readonly screenshots: readonly { readonly src: string; readonly sizes: string }[];
  readonly shortcuts: readonly {
    readonly name: string;
    readonly url: string;
    readonly icons: readonly { readonly src: string }[];
  }[];
};

test('every picture the manifest names is there, and as large as it says', () => {
  const manifest: Manifest = JSON.parse(readFileSync('dist/manifest.webmanifest', 'utf8'));
  const pictures = [
    ...manifest.icons,
    ...manifest.screenshots,
    ...manifest.shortcuts.flatMap(({ icons }) => icons),
  ].map(({ src }) => src);
  expect(pictures.filter((src) => !existsSync(join('dist', src)))).toEqual([]);
  for (const { src, sizes } of manifest.screenshots) {
    const png = readFileSync(join('dist', src));
    // PNG, third edition: width and height stand in the header chunk, at bytes 16 and 20.
    expect([src, `${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`]).toEqual([src, sizes]);
  }
});

test('the icon’s “New reading” asks what is measured in the job last worked on, and for a job on a new phone', async () => {
  const { page, trouble, close } = await openPhone();
  await page.goto(`${server.url}#/new-reading`);
  await page.getByRole('heading', { name: 'New job' }).waitFor();
  await withoutPassingLines(page);
  await goTo(page, '/jobs');
  await thumbOn(page).press('Show me with the demo job');
  await page.getByText('Outfit 7').first().waitFor();
  await goTo(page, '/new-reading');
  await page.getByRole('heading', { name: 'What is measured?' }).waitFor();
  expect(page.url()).toContain('#/job/demo-outfit-7/readings/new');
  expect(trouble).toEqual({ said: [], refused: [], strayed: [] });
  await close();
});

test('a job file shared to the app is shown before it is put in, without signal and only once', async () => {
  const { page, trouble, close } = await openPhone();
  await page.goto(server.url);
  await withoutPassingLines(page);
  await server.stop();
  const led = await page.evaluate(async (text) => {
    const form = new FormData();
    form.set('file', new File([text], 'job.txt', { type: 'text/plain' }));
    // The phone itself goes where the answer leads; a fetch has only the answer.
    const { type } = await fetch('./share', { method: 'POST', body: form, redirect: 'manual' });
    return type;
  }, jobFile);
  expect(led).toBe('opaqueredirect');
  await page.goto(`${server.url}?shared#/shop`);
  await page.getByRole('heading', { name: 'Add a file' }).waitFor();
  await page.getByText('It is one job, handed over.').waitFor();
  expect(new URL(page.url()).search).toBe('');
  await page.goto(`${server.url}?shared#/shop`);
  await page.getByRole('heading', { name: 'Shop' }).waitFor();
  await server.start();
  expect(trouble).toEqual({ said: [], refused: [], strayed: [] });
  await close();
});

test('a file opened with the app on a desk is shown before it is put in', async () => {
  const { page, context, trouble, close } = await openPhone();
  await context.addInitScript((text) => {
    const handle = { getFile: async () => new File([text], 'job.txt', { type: 'text/plain' }) };
    Object.defineProperty(globalThis, 'launchQueue', {
      value: { setConsumer: (take: (launch: unknown) => void) => take({ files: [handle] }) },
    });
  }, jobFile);
  await page.goto(server.url);
  await page.getByRole('heading', { name: 'Add a file' }).waitFor();
  await page.getByText('It is one job, handed over.').waitFor();
  expect(await page.locator('.restore-jobs .row-title').allTextContents()).toEqual(['Outfit 7']);
  expect(trouble).toEqual({ said: [], refused: [], strayed: [] });
  await close();
});
