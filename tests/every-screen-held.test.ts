import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { chapters } from './browser/every-screen.ts';

const folder = join(import.meta.dirname, 'browser');

test('no chapter of the screens is left out of the walks', () => {
  const files = readdirSync(folder).filter((name) => name.startsWith('screens-of-'));
  const walked = files.flatMap((name) =>
    [...readFileSync(join(folder, name), 'utf8').matchAll(/heldOnScreensOf\('([^']+)'\)/g)].map(
      ([, what]) => what,
    ),
  );
  expect(new Set(walked)).toEqual(new Set(Object.keys(chapters)));
});

test('no two screens have one name', () => {
  const names = Object.values(chapters).flatMap(({ screens }) => screens.map(({ name }) => name));
  expect(names).toEqual([...new Set(names)]);
});
