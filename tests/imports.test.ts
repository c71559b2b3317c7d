import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative, sep } from 'node:path';
import { describe, expect, test } from 'vitest';

/** Arrows point one way, screens → store → engine. These tests read the import lines and fail on one that points back. */

type Source = { readonly path: string; readonly text: string };

const root = join(import.meta.dirname, '..', 'src');
const sources: readonly Source[] = readdirSync(root, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
  .map((entry) => join(entry.parentPath, entry.name))
  .map((path) => ({ path: slashes(relative(root, path)), text: readFileSync(path, 'utf8') }));

/** What the files of a place may import: a folder of ours ending in a slash, a file of ours, or a package. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  engine: ['engine/'],
  store: ['store/', 'engine/', 'idb', 'zod/mini'],
  screens: ['screens/', 'store/', 'engine/', 'version.ts', 'preact', 'preact/hooks'],
  'sw.ts': ['workbox-precaching', 'workbox-routing'],
  'update.ts': ['kept-files.ts'],
  'kept-files.ts': [],
  'rescue.ts': ['screens/common/give-rescue.ts'],
  'home-worker.ts': ['store/home/in-worker.ts'],
  'painted.ts': ['screens/jobs/painted-list.ts'],
  'handed-files.ts': [],
  'version.ts': [],
  'old-browser.ts': [],
  'main.tsx': [
    'screens/',
    'store/',
    'engine/',
    'old-browser.ts',
    'update.ts',
    'handed-files.ts',
    'version.ts',
    'preact',
  ],
};

/** The rooms of the engine, from the ground up: a room imports itself and those that stand before it. */
const engineRooms = [
  'length',
  'material',
  'reading',
  'fit',
  'thread',
  'shim',
  'press',
  'cut',
  'ways-out',
  'job',
  'worksheets',
];

/** The rooms of the store, in the same way. */
const storeRooms = ['base', 'opening', 'kept', 'search', 'phones', 'file', 'undo', 'home', 'demo'];

/** What one kind of worksheet may take from another: a bushing and an insert are routes of hole-and-pin too,
 * and a hole in the wrong place gets a bushing. */
const kindsBeside: Readonly<Record<string, readonly string[]>> = {
  fit: ['hole-and-pin'],
  'hole-and-pin': ['bushing', 'thread-insert'],
  'misplaced-hole': ['bushing'],
};

/** One file each: what only it may import. */
const reserved: Readonly<Record<string, string>> = {
  'big.js': 'engine/length/length.ts',
  'dxf-writer': 'screens/sheet/round-part-dxf.ts',
};

describe('the sources', () => {
  test('are all in a place that has a rule', () => {
    const places = new Set(sources.map(({ path }) => placeOf(path)));
    expect([...places].filter((place) => !(place in allowed))).toEqual([]);
  });

  test.each(Object.keys(allowed))('%s imports only what lies below it', (place) => {
    const inPlace = sources.filter(({ path }) => placeOf(path) === place);
    expect(inPlace.flatMap(strayImports)).toEqual([]);
  });

  test('of the engine stand in rooms, and a room imports only what stands before it', () => {
    const inEngine = sources.filter(({ path }) => placeOf(path) === 'engine');
    expect(inEngine.flatMap(outOfOrder)).toEqual([]);
  });

  test('of the store stand in rooms, and a room imports only what stands before it', () => {
    const inStore = sources.filter(({ path }) => placeOf(path) === 'store');
    expect(inStore.flatMap(outOfOrder)).toEqual([]);
  });

  test('only engine/length/length.ts knows that a length is a big.js value', () => {
    expect(importersOf('big.js')).toEqual(['engine/length/length.ts']);
  });

  test('the database is opened in one file', () => {
    const openers = sources.filter(({ text }) => /\b(openDB|indexedDB\.open)\b/.test(code(text)));
    expect(openers.map(({ path }) => path)).toEqual(['store/opening/open-database.ts']);
  });

  test('the engine asks neither clock, chance, browser nor storage', () => {
    const inEngine = sources.filter(({ path }) => placeOf(path) === 'engine');
    expect(inEngine.flatMap(outsideWorld)).toEqual([]);
  });
});

describe('a breach of the rooms is seen', () => {
  test.each([
    { path: 'engine/a.ts', line: '', why: 'a file outside of any room' },
    {
      path: 'store/base/a.ts',
      line: `import { b } from '../kept/b.ts';`,
      why: 'what the store stands on, of what is kept',
    },
    {
      path: 'engine/length/a.ts',
      line: `import { b } from '../reading/b.ts';`,
      why: 'a room that stands later',
    },
    {
      path: 'engine/worksheets/ring/a.ts',
      line: `import { b } from '../fit/b.ts';`,
      why: 'one kind of worksheet in another',
    },
  ])('$why', ({ path, line }) => {
    expect(outOfOrder({ path, text: line })).toHaveLength(1);
  });
});

describe('a breach is seen', () => {
  test.each([
    {
      path: 'engine/a.ts',
      line: `import { logReading } from '../store/readings.ts';`,
      why: 'engine to store',
    },
    {
      path: 'engine/tables/a.ts',
      line: `import type { Row } from '../../screens/row.tsx';`,
      why: 'a type upward',
    },
    { path: 'engine/a.ts', line: `import { Big } from 'big.js';`, why: 'big.js outside of length.ts' },
    {
      path: 'store/a.ts',
      line: `export { Pad } from '../screens/common/pad.tsx';`,
      why: 'an export from above',
    },
    { path: 'store/a.ts', line: `import {\n  h,\n  render,\n} from 'preact';`, why: 'over several lines' },
    {
      path: 'screens/jobs/a.tsx',
      line: `const m = await import('../../main.tsx');`,
      why: 'loaded on demand',
    },
    { path: 'screens/a.tsx', line: `import * as z from 'zod/mini';`, why: 'zod outside of the store' },
    { path: 'sw.ts', line: `import '../src/engine/length/length.ts';`, why: 'the worker knowing the app' },
  ])('$why', ({ path, line }) => {
    expect(strayImports({ path, text: line })).toHaveLength(1);
  });

  test.each([
    'const now = Date.now();',
    'const now = new Date();',
    'const pick = Math.random();',
    'const wide = window.innerWidth;',
    'document.title = name;',
    'const id = crypto.randomUUID();',
    'const began = performance.now();',
    'setTimeout(done, 10);',
    `localStorage.setItem('a', 'b');`,
    'const open = indexedDB.open(name);',
    'const said = `at ${Date.now()}`;',
  ])('%s', (line) => {
    expect(outsideWorld({ path: 'engine/a.ts', text: line })).toHaveLength(1);
  });

  test('but words in comments and sentences are free', () => {
    const text = `// see the document.\n/* Date.now() is the caller's */\nconst said = 'A window, a document. Fetch (it).';`;
    expect(outsideWorld({ path: 'engine/a.ts', text })).toEqual([]);
  });
});

function placeOf(path: string): string {
  return path.split('/')[0] ?? path;
}

function importsOf({ path, text }: Source): string[] {
  const pattern = /(?<!['"])\b(?:from|import)\s*\(?\s*(['"])([^'"\s]+)\1/g;
  return [...withoutComments(text).matchAll(pattern)].map((match) => {
    const written = match[2] ?? '';
    return written.startsWith('.') ? slashes(normalize(join(dirname(path), written))) : written;
  });
}

function strayImports(source: Source): string[] {
  const may = allowed[placeOf(source.path)] ?? [];
  return importsOf(source)
    .filter((name) => reserved[name] !== source.path)
    .filter((name) => !may.some((one) => (one.endsWith('/') ? name.startsWith(one) : name === one)))
    .map((name) => `${source.path} imports ${name}`);
}

/** What breaks the order of the engine's rooms; between kinds of worksheet only what is listed. */
function outOfOrder(source: Source): string[] {
  const [, room = '', kind = '', file = ''] = source.path.split('/');
  const [place = ''] = source.path.split('/');
  const rooms = place === 'store' ? storeRooms : engineRooms;
  const floor = rooms.indexOf(room);
  if (floor === -1) return [`${source.path} stands in no room`];
  return importsOf(source)
    .map((name) => name.split('/'))
    .filter(([other]) => other === place)
    .filter(([, otherRoom = '', otherKind = '', otherFile = '']) => {
      if (otherRoom !== room) return rooms.indexOf(otherRoom) > floor;
      const isBetweenKinds = room === 'worksheets' && file !== '' && otherFile !== '' && otherKind !== kind;
      return isBetweenKinds && !(kindsBeside[kind] ?? []).includes(otherKind);
    })
    .map((name) => `${source.path} imports ${name.join('/')}`);
}

function importersOf(name: string): string[] {
  return sources.filter((source) => importsOf(source).includes(name)).map(({ path }) => path);
}

function outsideWorld({ path, text }: Source): string[] {
  const things = [
    /\bDate\s*[.(]/,
    /\bnew Date\b/,
    /\bMath\.random\b/,
    /\b(window|document|navigator|localStorage|sessionStorage|indexedDB|caches|performance|crypto|globalThis|self|process)\s*[.[]\w/,
    /\b(fetch|setTimeout|setInterval|requestAnimationFrame|queueMicrotask|structuredClone)\s*\(/,
  ];
  const found = things.some((thing) => thing.test(code(text)));
  return found ? [`${path} reaches for the world outside`] : [];
}

/** Without comments and plain quoted sentences; template text stays, as code may stand in it. */
function code(text: string): string {
  return withoutComments(text).replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"/g, "''");
}

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|[^:])\/\/.*$/gm, '$1');
}

function slashes(path: string): string {
  return path.split(sep).join('/');
}
