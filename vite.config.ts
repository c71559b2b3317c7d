import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { build, type Plugin } from 'vite';
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

/** In the built page only: the dev server needs the inline scripts that the policy forbids. */
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
    ],
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
    define,
    build: {
      outDir: folder,
      emptyOutDir: false,
      target: 'es2022',
      license: { fileName: licencesOf(name) },
      rolldownOptions: {
        input: resolve(import.meta.dirname, `src/${name}.ts`),
        output: { format: 'iife', entryFileNames: `${name}.js` },
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
      await buildAlone('rescue', folder, {});
      const page = readFileSync(resolve(import.meta.dirname, 'src/rescue.html'), 'utf8');
      writeFileSync(join(folder, 'rescue.html'), page.replace('{policy}', policyForMeta));
      const manifest = everyFile(folder);
      await buildAlone('sw', folder, { 'self.__WB_MANIFEST': JSON.stringify(manifest) });
      writeLicences(folder, ['rescue', 'sw']);
      this.info(`${manifest.length} files are kept for work without signal`);
    },
  };
}

/**
 * One file for the first load and one for each place, in place of a file for every set of screens that share something:
 * two hundred small ones pack a quarter worse, and each is one more question to the service worker. A place takes along what
 * it needs and nobody before it has, so what is opened at the machine comes first and waits for the least.
 */
const places = [
  { name: 'first', tags: ['$initial' as const] },
  {
    name: 'list',
    test: partOf('screens/(photos/job-cover|shop/backup-line|jobs/lines-above|common/undo-bar)|store/cuts'),
  },
  { name: 'readings', test: partOf('screens/(readings|jobs)/') },
  { name: 'charts', test: partOf('screens/charts/') },
  { name: 'cuts', test: partOf('screens/(cuts|lathe)/') },
  { name: 'shop', test: partOf('screens/(shop|both)/') },
  { name: 'engine', test: partOf('engine/') },
  { name: 'worksheets', test: partOf('screens/worksheets/') },
  { name: 'assembly', test: partOf('screens/(assembly|fit-up)/') },
  { name: 'drawer', test: partOf('screens/drawer/') },
  { name: 'sheet', test: partOf('screens/(sheet|photos|money)/') },
].map((place, index, all) => ({ ...place, priority: all.length - index }));

/** Slashes go either way, as on Windows. */
function partOf(folder: string): RegExp {
  return new RegExp(String.raw`[\\/]src[\\/](?:${folder.replaceAll('/', String.raw`[\\/]`)})`);
}

export default defineConfig({
  base: './', // relative, so that the build works from any folder of any host
  define: { BUILT_FROM: JSON.stringify(version) },
  // Its usual build is for browsers that this app has no use for, and half as big again.
  resolve: { alias: { 'workbox-window': 'workbox-window/build/workbox-window.prod.mjs' } },
  plugins: [writePolicyAndVersion(), buildServiceWorker()],
  build: {
    target: 'es2022',
    modulePreload: { polyfill: false },
    rolldownOptions: {
      output: { codeSplitting: { groups: places } },
      // What is fetched later is a whole place, and may well be named by a screen that comes with it.
      checks: { ineffectiveDynamicImport: false },
    },
    license: { fileName: 'licences.md' },
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
