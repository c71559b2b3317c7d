import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import project from '../../package.json' with { type: 'json' };
import { removeTemporaryFolders, startServer } from './launch.ts';

/**
 * What a page may do, directive by directive. Written out here too, so that nobody loosens it in passing. Source: CSP
 * level 3 and Trusted Types (W3C); OWASP ASVS 5.0, 3.4.3 asks for object-src and base-uri at least.
 */
const strict: Readonly<Record<string, string>> = {
  'default-src': "'none'",
  'script-src': "'self'",
  'style-src': "'self'",
  'img-src': "'self' blob: data:",
  'connect-src': "'self'",
  'worker-src': "'self'",
  'manifest-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
  'object-src': "'none'",
  'require-trusted-types-for': "'script'",
  'trusted-types': 'slipfit-worker slipfit-home',
};

const html = readFileSync('dist/index.html', 'utf8');
let server: Awaited<ReturnType<typeof startServer>>;

beforeAll(async () => {
  server = await startServer();
});
afterAll(async () => {
  await server.stop();
  await removeTemporaryFolders();
});

test('the page carries the strict policy itself, before anything that it could load', () => {
  const found = /<meta http-equiv="Content-Security-Policy" content="([^"]*)">/.exec(html);
  expect(directives((found?.[1] ?? '').replaceAll('&#39;', "'"))).toEqual(strict);
  expect(found?.index).toBeLessThan(html.search(/<(?:script|link|style|img)\b/));
});

test.each(['', 'index.html', 'sw.js', 'manifest.webmanifest', 'not-here'])(
  'what is served as “%s” comes with the policy, and in no frame',
  async (path) => {
    const { headers } = await fetch(server.url + path);
    const policy = directives(headers.get('content-security-policy') ?? '');
    expect(policy).toEqual({ ...strict, 'frame-ancestors': "'none'" });
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
  },
);

test('the built page has no script, style or handler written into it, and every address in it is its own', () => {
  expect(html).not.toMatch(/<style|\sstyle=|\son[a-z]+=|javascript:/i);
  for (const [, attributes = '', body = ''] of html.matchAll(/<script([^>]*)>([\s\S]*?)<\/script>/g)) {
    expect(attributes).toContain('src="./');
    expect(body).toBe('');
  }
  const addresses = [...html.matchAll(/\s(?:src|href)="([^"]*)"/g)].map(([, address]) => address);
  // Beside its files only places within the page itself.
  expect(addresses.filter((address) => !/^(?:\.\/|#\/)/.test(address ?? ''))).toEqual([]);
});

test('no script that is served makes code out of text', () => {
  const scripts = [
    'sw.js',
    'home-worker.js',
    ...readdirSync('dist/assets').map((name) => join('assets', name)),
  ];
  const makers = scripts.filter((name) =>
    /\bnew Function\b|\beval\(|document\.write|importScripts\(/.test(
      readFileSync(join('dist', name), 'utf8'),
    ),
  );
  expect(makers).toEqual([]);
});

test('the licences of all that is shipped lie beside it, each once', () => {
  const { dependencies } = project;
  const licences = readFileSync('dist/licences.md', 'utf8').split(/^## /m).slice(1);
  const names = licences.map((text) => text.replace(/ - .*/s, ''));
  // What the worker is made of comes along with two of them.
  const shipped = ['slipfit', ...Object.keys(dependencies), 'workbox-core', 'workbox-strategies'];
  expect(names.toSorted()).toEqual(shipped.toSorted());
  for (const text of licences) expect(text).toMatch(/Permission (?:is hereby granted|to use, copy)/);
});

function directives(policy: string): Record<string, string> {
  return Object.fromEntries(
    policy.split('; ').map((rule) => {
      const [name = '', ...values] = rule.split(' ');
      return [name, values.join(' ')];
    }),
  );
}
