import './right-node.mjs';
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { whyNpmFailed } from './why-npm-failed.mjs';

/** Installs what package-lock.json lists, unless exactly that is there already. */

const root = join(import.meta.dirname, '..');

function read(...path) {
  try {
    return JSON.parse(readFileSync(join(root, ...path), 'utf8'));
  } catch {
    return undefined;
  }
}

/** npm leaves its own copy of the lock among what it installed; parts for other systems are missing from it. */
function isInstalled() {
  const wanted = read('package-lock.json')?.packages;
  const there = read('node_modules', '.package-lock.json')?.packages;
  if (!wanted || !there) return false;
  return Object.entries(wanted)
    .filter(([place]) => place !== '')
    .every(([place, { version, optional }]) =>
      there[place] ? there[place].version === version : optional === true,
    );
}

if (!isInstalled()) {
  console.log('Installing what the app is built and tested with (npm ci) ...');
  const { status, stderr, error } = spawnSync('npm', ['ci', '--include=dev', '--no-fund', '--no-audit'], {
    cwd: root,
    stdio: ['inherit', 'inherit', 'pipe'],
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  process.stderr.write(stderr ?? '');
  if (status !== 0) {
    console.error(`npm ci did not finish: ${error ? 'npm was not found.' : whyNpmFailed(stderr)}`);
    process.exit(1);
  }
}
