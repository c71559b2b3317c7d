import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { build, runnerImport, type Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { policyForMeta, safeHeaders } from './.ci/content-security-policy.mjs';
import project from './package.json' with { type: 'json' };
import { tests } from './tests/projects.ts';

/** What the Shop screen shows: the release and, when built from a git clone, the commit. APP_VERSION overrides both. */
function versionName(): string {
  const given = process.env['APP_VERSION'];
  if (given) return given;
  try {
    const command = ['rev-parse', '--short', 'HEAD'];
    const commit = execFileSync('git', command, {
      stdio: ['ignore', 'pipe', 'ignore'],
      cwd: import.meta.dirname,
    });
    return `${project.version} (${commit.toString().trim()})`;
  } catch {
    return project.version;
  }
}

const version = versionName();

/** In the built page only, as the list that is painted before all else: the dev server needs the inline scripts that the policy forbids. */
function writePolicyAndVersion(): Plugin {
  return {
    name: 'write-policy-and-version',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: policyForMeta },
        injectTo: 'head-prepend',
      },
      { tag: 'meta', attrs: { name: 'version', content: version }, injectTo: 'head' },
      // Asked for before the large one, and run before it.
      { tag: 'script', attrs: { src: './painted.js', defer: true }, injectTo: 'head-prepend' },
    ],
  };
}

// Any day would do: the phone moves it to its own. One that is fixed makes two builds of one source the same.
const DEMO_WRITTEN_AT = Date.UTC(2026, 0, 1);
const DEMO_FILE = 'demo.txt'; // known to every host as text

/** The demo jobs are TypeScript here and a backup file there: loaded on the one press that asks for them. */
function writeDemo(): Plugin {
  const text = async () => {
    const source = resolve(import.meta.dirname, 'src/store/demo/demo-lines.ts');
    const { module } = await runnerImport<typeof import('./src/store/demo/demo-lines.ts')>(source);
    return module.demoText(DEMO_WRITTEN_AT);
  };
  return {
    name: 'write-demo',
    async generateBundle() {
      this.emitFile({ type: 'asset', fileName: DEMO_FILE, source: await text() });
    },
    configureServer(server) {
      server.middlewares.use(`/${DEMO_FILE}`, (_, response, next) => {
        text().then((demo) => response.end(demo), next);
      });
    },
  };
}

type PrecacheEntry = { url: string; revision: string; integrity: string };

/** Every file of the output with the SHA-256 of its bytes: by that alone it is kept. Some hosts refuse to serve dot files, and one 404 stops the worker. */
function everyFile(folder: string): PrecacheEntry[] {
  return (
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
      .map((entry) => join(entry.parentPath, entry.name))
      // Shown only by the browser's own dialog that offers to install the app; read by nobody at a lathe.
      .filter((path) => !/^(?:screenshots|licences)/.test(relative(folder, path)))
      .map((path) => ({ path, sum: createHash('sha256').update(readFileSync(path)).digest() }))
      .map(({ path, sum }) => ({
        url: relative(folder, path).split(sep).join('/'),
        revision: sum.toString('hex').slice(0, 16),
        integrity: `sha256-${sum.toString('base64')}`,
      }))
      .toSorted((a, b) => (a.url < b.url ? -1 : 1))
  );
}

/** One of ours that stands on its own, in one file beside the app's. */
async function buildAlone(
  name: string,
  folder: string,
  define: Readonly<Record<string, string>>,
): Promise<void> {
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    // A library is left to say for itself whether it is tried or shipped; this one is shipped.
    define: { ...define, 'process.env.NODE_ENV': JSON.stringify('production') },
    build: {
      outDir: folder,
      emptyOutDir: false,
      target: 'es2022',
      license: { fileName: licencesOf(name) },
      // As a library: one that isn't gets the code along that fetches its parts ahead, and has none.
      lib: {
        entry: resolve(import.meta.dirname, `src/${name}.ts`),
        formats: ['iife'],
        name: 'alone',
        fileName: () => `${name}.js`,
      },
    },
  });
}

const licencesOf = (name: string) => `licences-${name}.md`;

/** Our own licence, and that of every package that is in one of these builds, once. */
function writeLicences(folder: string, alone: readonly string[]): void {
  const parts = ['licences.md', ...alone.map(licencesOf)].map((name) => join(folder, name));
  const packages = parts.flatMap((part) => readFileSync(part, 'utf8').split(/^## /m).slice(1));
  const each = new Map(packages.map((text) => [text.replace(/\n.*/s, ''), `## ${text.trim()}\n\n`]));
  const own = readFileSync(resolve(import.meta.dirname, 'LICENSE'), 'utf8');
  const text = [`# Licences\n\n## ${project.name} - ${project.version}\n\n${own}\n`, ...each.values()];
  for (const part of parts) rmSync(part);
  writeFileSync(join(folder, 'licences.md'), text.join(''));
}

/** Builds what stands beside the app: the rescue page, then the service worker, when all it has to keep is written. */
function buildServiceWorker(): Plugin {
  let folder = '';
  return {
    name: 'build-service-worker',
    apply: 'build',
    configResolved(config) {
      folder = resolve(config.root, config.build.outDir);
    },
    // Not closeBundle, which runs after a failed build too and would hide what failed.
    async writeBundle() {
      await buildAlone('painted', folder, {});
      await buildAlone('rescue', folder, {});
      await buildAlone('home-worker', folder, {});
      const page = readFileSync(resolve(import.meta.dirname, 'src/rescue.html'), 'utf8');
      writeFileSync(join(folder, 'rescue.html'), page.replace('{policy}', policyForMeta));
      const manifest = everyFile(folder);
      await buildAlone('sw', folder, { 'self.__WB_MANIFEST': JSON.stringify(manifest) });
      writeLicences(folder, ['painted', 'rescue', 'home-worker', 'sw']);
      this.info(`${manifest.length} files are kept for work without signal`);
    },
  };
}

/**
 * Four files: the first load, what the list of jobs fetches behind its first drawing, the charts, which are opened without a
 * job too, and all the rest. A file for each place packed 26 KB worse, and nearly every place of a job needs the others':
 * its route works the whole job out.
 */
const places = [
  { name: 'first', tags: ['$initial' as const] },
  {
    name: 'list',
    test: partOf(
      'screens/(photos/job-cover|shop/backup-line|jobs/lines-above|jobs/painted-list|common/undo-bar)|store/cuts',
    ),
  },
  { name: 'charts', test: partOf('screens/charts/') },
  { name: 'rest', test: partOf('(screens|store|engine)/') },
].map((place, index, all) => ({ ...place, priority: all.length - index }));

/** Slashes go either way, as on Windows. */
function partOf(folder: string): RegExp {
  return new RegExp(String.raw`[\\/]src[\\/](?:${folder.replaceAll('/', String.raw`[\\/]`)})`);
}

export default defineConfig({
  base: './', // relative, so that the build works from any folder of any host
  define: { BUILT_FROM: JSON.stringify(version) },
  plugins: [writePolicyAndVersion(), writeDemo(), buildServiceWorker()],
  build: {
    target: 'es2022',
    modulePreload: { polyfill: false },
    rolldownOptions: {
      output: { codeSplitting: { groups: places } },
      // What is fetched later is a whole place, and may well be named by a screen that comes with it.
      // The demo's file, the rescue page and the worker are built in here: most of the time is theirs, and meant to be.
      checks: { ineffectiveDynamicImport: false, pluginTimings: false },
    },
    license: { fileName: 'licences.md' },
    chunkSizeWarningLimit: 1200, // kB: all that is not needed at first is one file, on purpose
    assetsInlineLimit: 0, // files, not data: addresses, which the policy refuses for anything but pictures
  },
  preview: {
    // The data belongs to the address, port included: never slide to another port and come up empty.
    host: 'localhost',
    port: 4487,
    strictPort: true,
    headers: safeHeaders,
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: tests,
});
