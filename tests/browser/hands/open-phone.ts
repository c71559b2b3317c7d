import { join } from 'node:path';
import { openPhone as openChromium, temporaryFolder } from '../launch.ts';
import { openFirefox } from './firefox.ts';
import type { EngineName, Phone, PhoneOptions } from './hands.ts';
import { openWebKit } from './webkit.ts';

/** Which engine these tests run in: each test project names its own. */
export const engine = engineNamed(process.env['ENGINE']);

const open: Phone[] = [];

/** A phone with an empty page open, 390 × 844 unless told otherwise. */
export async function openPhone({
  size,
  userDataDir = temporaryFolder(engine),
}: PhoneOptions = {}): Promise<Phone> {
  const phone = await opened(userDataDir, size);
  open.push(phone);
  return phone;
}

/** For `afterEach`: also those that a failed test left open. */
export async function closeAllPhones(): Promise<void> {
  await Promise.all(open.splice(0).map((phone) => phone.close().catch(() => undefined)));
}

function opened(userDataDir: string, size: PhoneOptions['size']): Promise<Phone> {
  if (engine === 'webkit') return openWebKit(userDataDir, size);
  return engine === 'firefox' ? openFirefox(userDataDir, size) : inChromium(userDataDir, size);
}

async function inChromium(userDataDir: string, size: PhoneOptions['size']): Promise<Phone> {
  const { page, context, trouble, close, kill } = await openChromium({ userDataDir, ...size });
  return {
    page,
    userDataDir,
    said: trouble.said,
    newTab: () => context.newPage(),
    savedBy: async (press) => {
      const [download] = await Promise.all([page.waitForEvent('download'), press()]);
      const path = join(temporaryFolder('file'), download.suggestedFilename());
      await download.saveAs(path);
      return path;
    },
    printed: async () => new Uint8Array(await page.pdf({ format: 'A4', preferCSSPageSize: true })),
    close,
    kill,
  };
}

function engineNamed(name: string | undefined): EngineName {
  if (name === undefined) return 'chromium';
  if (name === 'chromium' || name === 'firefox' || name === 'webkit') return name;
  throw new Error(`there is no engine called ${name}`);
}
