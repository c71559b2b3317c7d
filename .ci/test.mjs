import './right-node.mjs';
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { otherEngines, whatIsMissing } from '../tests/browser/hands/find-engines.mjs';
import { endLeftovers, markThisRun } from '../tests/browser/hands/leftovers.mjs';

/**
 * Runs every check and adds them up: types, lint and format, the build, the unit tests, the tests in a real browser, and
 * those in two more engines where they are or can be installed. Nothing is skipped in silence, nothing can hang, and the
 * last line says how many passed and failed.
 */

const root = join(import.meta.dirname, '..');
const reports = mkdtempSync(join(tmpdir(), 'slipfit-reports-'));
const deadline = Date.now() + 19 * 60_000; // the whole run has 20 minutes, installing included
const mark = markThisRun();
const total = { passed: 0, failed: 0 };
const failures = [];
const notTried = [];

// Also when it is told to stop: what leads a process group of its own would live on.
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
  process.once(signal, () => {
    endLeftovers(mark);
    process.exit(1);
  });

function fail(count, why) {
  total.failed += count;
  failures.push(why);
}

/**
 * Resolves to the exit code, or null when the time was up: then all that the command started is stopped too.
 * @returns {Promise<number | null>}
 */
function run(command, minutes) {
  console.log(`\n> ${command.join(' ')}`);
  const { NODE_ENV: _whatever, ...env } = process.env;
  const child = spawn(command[0], command.slice(1), {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    detached: process.platform !== 'win32',
    shell: process.platform === 'win32',
    env: { ...env, PATH: [join(root, 'node_modules', '.bin'), env.PATH].join(delimiter) },
  });
  return new Promise((done) => {
    let late = false;
    const stop = (signal) => {
      try {
        process.kill(process.platform === 'win32' ? child.pid : -child.pid, signal);
      } catch {
        // gone already
      }
    };
    const timers = [];
    const limit = Math.max(1000, Math.min(minutes * 60_000, deadline - Date.now()));
    timers.push(
      setTimeout(() => {
        late = true;
        stop('SIGTERM');
        timers.push(setTimeout(stop, 5000, 'SIGKILL'));
      }, limit),
    );
    const end = (code) => {
      timers.forEach(clearTimeout);
      stop('SIGKILL'); // a browser or worker that outlived its parent
      done(late ? null : code);
    };
    child.once('error', () => end(127));
    child.once('exit', (code) => end(code ?? 1));
  });
}

async function check(what, command, minutes = 2) {
  const code = await run(command, minutes);
  if (code === null) fail(1, `${what}: not done after ${minutes} minutes`);
  else if (code !== 0) fail(1, what);
  return code === 0;
}

async function tests(what, projects, minutes) {
  const report = join(reports, `${what}.json`);
  const code = await run(
    [
      'vitest',
      'run',
      ...projects.flatMap((name) => ['--project', name]),
      '--allowOnly=false',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
    ],
    minutes,
  );
  const { passed, failed, skipped, brokenFiles } = counted(report);
  total.passed += passed;
  if (failed > 0) fail(failed, `${what}: ${failed} failed`);
  if (brokenFiles > 0) fail(brokenFiles, `${what}: ${brokenFiles} files could not be run to their end`);
  if (skipped > 0) fail(skipped, `${what}: ${skipped} skipped, and a skipped test proves nothing`);
  if (code === null) fail(1, `${what}: not done after ${minutes} minutes`);
  else if (passed + failed === 0) fail(1, `${what}: no test ran`);
  else if (code !== 0 && failed + skipped + brokenFiles === 0)
    fail(1, `${what}: an error outside of any test`);
}

function counted(report) {
  try {
    const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(
      readFileSync(report, 'utf8'),
    );
    const broken = testResults.filter(
      ({ status, assertionResults }) =>
        status === 'failed' && !assertionResults.some((result) => result.status === 'failed'),
    );
    return {
      passed: numPassedTests,
      failed: numFailedTests,
      skipped: numPendingTests + numTodoTests,
      brokenFiles: broken.length,
    };
  } catch {
    return { passed: 0, failed: 0, skipped: 0, brokenFiles: 0 };
  }
}

const lock = readFileSync(join(root, 'package-lock.json'), 'utf8');
if (lock.includes('"resolved"')) fail(1, 'package-lock.json names a registry ("resolved")');

await check('types', ['npm', 'run', '--silent', 'types']);
await check('lint', ['npm', 'run', '--silent', 'lint']);
await check('format', ['npm', 'run', '--silent', 'format-check']);
const built = await check('build', ['npm', 'run', '--silent', 'build']);
// Most of it is waiting for the net: meanwhile the unit tests run.
const installing = run([process.execPath, 'tests/browser/hands/find-engines.mjs'], 6);
await tests('unit', ['engine', 'store', 'screens', 'apart'], 7);
await installing;
const browser = await check('a browser to test in', [process.execPath, 'tests/browser/find-browser.mjs'], 6);
const engines = otherEngines.filter((name) => {
  const missing = whatIsMissing(name);
  if (missing !== undefined) notTried.push(missing);
  return missing === undefined;
});
if (built && browser) await tests('browser', ['browser', ...engines], 16);
else fail(1, 'browser: not run, for want of a build or a browser');
endLeftovers(mark);

rmSync(reports, { recursive: true, force: true });
process.exitCode = total.failed > 0 || total.passed === 0 ? 1 : 0;
console.log('');
for (const engine of notTried) console.log(`not counted: ${engine}`);
for (const failure of failures) console.log(`failed: ${failure}`);
console.log(`${total.passed} passed, ${total.failed} failed`);
