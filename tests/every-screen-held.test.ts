import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { chapters } from './browser/every-screen.ts';

test.each([
  ['the walks', 'browser', /heldOnScreensOf\('([^']+)'\)/g],
  ['the walks in the other engines', 'browser/engines', /heldInEachEngine\('([^']+)'\)/g],
])('no chapter of the screens is left out of %s', (_what, place, calls) => {
  const folder = join(import.meta.dirname, place);
  const files = readdirSync(folder).filter((name) => name.startsWith('screens-of-'));
  const walked = files.flatMap((name) =>
    [...readFileSync(join(folder, name), 'utf8').matchAll(calls)].map(([, what]) => what),
  );
  expect(new Set(walked)).toEqual(new Set(Object.keys(chapters)));
});

test('no two screens have one name', () => {
  const names = Object.values(chapters).flatMap(({ screens }) => screens.map(({ name }) => name));
  expect(names).toEqual([...new Set(names)]);
});
