import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { expect, test } from 'vitest';
import { isRightNode } from '../.ci/right-node.mjs';
import { whyNpmFailed } from '../.ci/why-npm-failed.mjs';

/** The first minute on a machine where something is not as it should be: one sentence, and what to do. */

// What vite and its bundler name as theirs: ^20.19.0 || >=22.12.0.
test.each([
  ['18.20.4', false],
  ['20.18.3', false],
  ['20.19.0', true],
  ['20.20.2', true],
  ['21.7.3', false],
  ['22.11.0', false],
  ['22.12.0', true],
  ['23.0.0', true],
  ['24.1.0', true],
] as const)('Node %s is right: %s', (version, right) => {
  expect(isRightNode(version)).toBe(right);
});

const anOldNode = `data:text/javascript,Object.defineProperty(process.versions,'node',{value:'18.20.4'})`;

test.each(['ready', 'start', 'audit', 'test'])('an old Node gets one sentence from %s', (script) => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', anOldNode, `.ci/${script}.mjs`],
    { encoding: 'utf8' },
  );
  expect(status).toBe(1);
  expect(stdout).toBe('');
  expect(stderr).toMatch(
    /^Slipfit needs Node 20\.19, 22\.12 or a later one, and this is Node 18\.20\.4[^\n]*\n$/,
  );
});

// As npm 11 and npm 8 wrote them when these were brought about.
const npmWrote: readonly (readonly [string, RegExp])[] = [
  [
    'npm error code EACCES\nnpm error syscall mkdir\nnpm error path /home/jo/.npm/_cacache/tmp\nnpm error errno EACCES\nnpm error Your cache folder contains root-owned files',
    /can't write its cache \(\/home\/jo\/\.npm\/_cacache\/tmp\)/,
  ],
  [
    'npm ERR! code EROFS\nnpm ERR! syscall mkdir\nnpm ERR! path /srv/cache/_cacache\nnpm ERR! errno EROFS',
    /can't write its cache/,
  ],
  [
    'npm error code ENOTDIR\nnpm error syscall mkdir\nnpm error path /srv/file/_cacache/tmp\nnpm error errno ENOTDIR\nnpm error Invalid response body while trying to fetch',
    /can't write its cache/,
  ],
  [
    'npm error code EACCES\nnpm error syscall mkdir\nnpm error path /srv/slipfit/node_modules\nnpm error errno -13',
    /can't write here \(\/srv\/slipfit\/node_modules\)/,
  ],
  ['npm error code ENOSPC\nnpm error syscall write\nnpm error errno -28', /the disk is full/],
  [
    'npm error code ENOTFOUND\nnpm error syscall getaddrinfo\nnpm error network request failed, reason: getaddrinfo ENOTFOUND nowhere.invalid',
    /needs a connection/,
  ],
  [
    "npm error FetchError: request failed\nnpm error   code: 'ECONNREFUSED',\nnpm error   errno: 'ECONNREFUSED',",
    /needs a connection/,
  ],
  ['npm ERR! code ETIMEDOUT\nnpm ERR! errno ETIMEDOUT', /needs a connection/],
  ['npm error code SELF_SIGNED_CERT_IN_CHAIN', /needs a connection/],
  ['npm error code ENOTCACHED\nnpm error request failed: cache mode is only-if-cached', /work offline/],
  ['npm error code E403\nnpm error 403 Forbidden - GET', /refused \(403\)/],
  ['npm error code EINTEGRITY\nnpm error sha512-x integrity checksum failed', /not what the lock file lists/],
  ['npm error code EUSAGE\nnpm error `npm ci` can only install packages when', /say different things/],
  ['npm error Exit handler never called!', /what npm wrote above/],
];

test.each(npmWrote)('of %j the reason is %s', (written, reason) => {
  expect(whyNpmFailed(written)).toMatch(reason);
  expect(whyNpmFailed(written)).not.toContain('\n');
});

test('a port in use is said before anything is built, with the way to choose another', async () => {
  const other = createServer().listen(0, 'localhost');
  await once(other, 'listening');
  const address = other.address();
  const port = typeof address === 'object' && address !== null ? String(address.port) : '';
  const child = spawn(process.execPath, ['.ci/start.mjs', '--port', port]);
  let [said, built] = ['', ''];
  child.stderr.on('data', (text) => (said += String(text)));
  child.stdout.on('data', (text) => (built += String(text)));
  const [code] = await once(child, 'close');
  other.close();
  expect(code).toBe(1);
  expect(said).toMatch(
    new RegExp(String.raw`^Port ${port} is in use[^\n]*npm start -- --port 5000[^\n]*\n$`),
  );
  expect(built).toBe('');
});

test.each([
  ['--port', 'home'],
  ['--port', '70000'],
  ['--port', '0'],
  ['--prot', '5000'],
])('%s %s gets one sentence', (...how) => {
  const { status, stderr } = spawnSync(process.execPath, ['.ci/start.mjs', ...how], { encoding: 'utf8' });
  expect(status).toBe(1);
  expect(stderr).toMatch(/^[^\n]*port[^\n]*\n$/);
});
