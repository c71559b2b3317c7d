import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { openPhone, startServer, temporaryFolder, type Phone } from '../browser/launch.ts';

/** The app's store in a real browser with a real database, for trials that need thousands of goes and no screens. */
export async function openStorePage(options: Parameters<typeof openPhone>[0] = {}): Promise<{
  readonly phone: Phone;
  /** The phone switched on again after it was killed, at the same place. */
  readonly again: (killed: Phone) => Promise<Phone>;
  readonly close: () => Promise<void>;
}> {
  const folder = temporaryFolder('store-page');
  await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    build: {
      outDir: folder,
      emptyOutDir: true,
      target: 'es2022',
      rolldownOptions: {
        input: resolve(import.meta.dirname, 'store-page.ts'),
        output: { entryFileNames: 'store-page.js' },
      },
    },
  });
  writeFileSync(
    join(folder, 'index.html'),
    '<!doctype html><title>store</title><link rel="icon" href="data:," /><script type="module" src="./store-page.js"></script>',
  );
  const server = await startServer({ folder });
  const open = async (more: Parameters<typeof openPhone>[0]) => {
    const opened = await openPhone(more);
    await opened.page.goto(server.url);
    await opened.page.waitForFunction(() => 'slipfitStore' in window);
    return opened;
  };
  let phone = await open(options);
  return {
    phone,
    again: async ({ userDataDir }) => (phone = await open({ ...options, userDataDir })),
    close: async () => {
      await phone.close();
      await server.stop();
    },
  };
}
