import { randomUUID } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';

/**
 * Browsers, drivers and screens lead process groups of their own, so that one signal kills each whole; what a test run
 * that was stopped leaves of them is found by a mark that all of them inherit.
 */

const MARK = 'SLIPFIT_TEST_RUN';

/** @returns {string} the mark of this run, from here on in the environment of whatever it starts */
export function markThisRun() {
  return (process.env[MARK] ??= randomUUID());
}

/** Ends every process that was begun under a mark and leads, or is in, another process group than this one. Linux only: elsewhere nothing is found. */
export function endLeftovers(mark) {
  const own = groupOf('self');
  for (const name of inProc()) {
    if (groupOf(name) === own || !startedUnder(name, mark)) continue;
    try {
      process.kill(Number(name), 'SIGKILL');
    } catch {
      // gone already
    }
  }
}

function inProc() {
  try {
    return readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  } catch {
    return [];
  }
}

function startedUnder(name, mark) {
  try {
    return readFileSync(`/proc/${name}/environ`, 'utf8').split('\0').includes(`${MARK}=${mark}`);
  } catch {
    return false;
  }
}

/** The third figure behind the name, which may hold brackets and spaces itself. */
function groupOf(name) {
  try {
    return /.*\) \S \d+ (\d+)/.exec(readFileSync(`/proc/${name}/stat`, 'utf8'))?.[1];
  } catch {
    return undefined;
  }
}
