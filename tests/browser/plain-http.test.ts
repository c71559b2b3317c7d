import { readFileSync } from 'node:fs';
import { afterAll, expect, test } from 'vitest';
import { openPhone, removeTemporaryFolders, startServer } from './launch.ts';
import { goTo } from './on-a-screen.ts';
import { logFeature, thumbOn } from './thumb.ts';

afterAll(removeTemporaryFolders);

test('over plain http records are made, saved and read in again, and that the app is not kept is said', async () => {
  const server = await startServer();
  const phone = await openPhone({ host: 'slipfit.test' });
  const { page, context } = phone;
  // "Save as" and the share sheet wait for a person; without them files go to the downloads.
  await context.addInitScript(() => {
    Reflect.deleteProperty(globalThis, 'showSaveFilePicker');
    Reflect.deleteProperty(Navigator.prototype, 'canShare');
  });
  await page.goto(`${server.url.replace('127.0.0.1', 'slipfit.test')}#/new-job`);
  // What this test is about: none of it is there on such a page.
  expect(await page.evaluate(() => [isSecureContext, 'subtle' in crypto, 'randomUUID' in crypto])).toEqual([
    false,
    false,
    false,
  ]);
  await page.getByText('This browser can’t keep the app for work without signal.').first().waitFor();
  const thumb = thumbOn(page);
  await thumb.press('none of these');
  await thumb.press('Make the job');
  await logFeature(page, thumb, 'Length', ['1.1381']);
  await goTo(page, '/shop');
  const saving = page.waitForEvent('download');
  await thumb.press('Save a backup');
  const path = await (await saving).path();
  expect(readFileSync(path, 'utf8')).toContain('"typed":"1.1381"');

  // The same file, and one in which a single figure was changed.
  const choose = async (text: string) =>
    page.getByLabel('Backup or job file').setInputFiles({
      name: 'backup.txt',
      mimeType: 'text/plain',
      buffer: Buffer.from(text),
    });
  await choose(readFileSync(path, 'utf8'));
  await page.getByRole('heading', { name: 'Add a file' }).waitFor();
  await page
    .getByText(/nothing new|nothing would change|all of it is here/i)
    .first()
    .waitFor();
  await goTo(page, '/shop');
  // 1.1381 × 25.4 = 28.90774 and 1.1391 × 25.4 = 28.93314: text and size agree, and only the checksum tells.
  const whole = readFileSync(path, 'utf8');
  const changed = whole
    .replace('"typed":"1.1381"', '"typed":"1.1391"')
    .replace('"exact":"28.90774"', '"exact":"28.93314"');
  expect(changed).not.toContain('28.90774');
  await choose(changed);
  await page.getByText('This backup was changed or damaged after it was written.').first().waitFor();
  expect(phone.trouble).toEqual({ said: [], refused: [], strayed: [] });
  await phone.close();
  await server.stop();
});
