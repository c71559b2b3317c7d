import './right-node.mjs';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

/**
 * Asks the package registry for known faults in what the app is shipped with. It needs a connection, so no check calls
 * it: `npm run audit`, by hand.
 */

// Set to work offline, npm asks nobody and answers that there are no faults.
const command = ['audit', '--omit=dev', '--json', '--offline=false'];
const { stdout, error } = spawnSync('npm', command, {
  cwd: join(import.meta.dirname, '..'),
  encoding: 'utf8',
  timeout: 120_000,
  shell: process.platform === 'win32',
});
const answer = read(stdout);

if (error || !answer?.metadata) {
  console.error(`Nothing was audited: ${why(answer)}`);
  process.exitCode = 2;
} else {
  const found = Object.entries(answer.vulnerabilities);
  for (const [name, { severity, range }] of found) console.log(`${name} ${range}: ${severity}`);
  const { prod } = answer.metadata.dependencies;
  console.log(`${prod} packages that the app is shipped with were audited, known faults: ${found.length}.`);
  process.exitCode = found.length > 0 ? 1 : 0;
}

function read(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function why(refusal) {
  const code = refusal?.statusCode;
  // A mirror has the packages and no list of their faults: 404, 405 or 501, by whose program it is.
  if (code)
    return `the registry that npm is set to answers ${code}, as a mirror does that hands out packages and keeps no list of known faults. Slipfit is none the worse for it; ask one that keeps the list: npm run audit --registry=<address>`;
  return 'the package registry could not be reached, there is no connection perhaps.';
}
