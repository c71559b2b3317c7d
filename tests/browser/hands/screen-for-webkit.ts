import { spawn } from 'node:child_process';
import { endLeftovers, markThisRun } from './leftovers.mjs';

/** Begun once for a whole run: one screen that is nowhere, for all windows of WebKit. Ended with the run, and all else of it. */

export default async function screenForWebKit(): Promise<() => void> {
  const isOwnRun = process.env['SLIPFIT_TEST_RUN'] === undefined;
  const mark = markThisRun();
  const xvfb = ['Xvfb', '-displayfd', '3', '-screen', '0', '1400x1400x24', '-nolisten', 'tcp'];
  const screen = spawn('setpriv', ['--pdeathsig', 'KILL', ...xvfb], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  const number = await new Promise<string>((done, failed) => {
    screen.once('error', failed).once('exit', () => failed(new Error('Xvfb did not start')));
    screen.stdio[3]?.once('data', (text) => done(String(text).trim()));
  });
  process.env['DISPLAY'] = `:${number}`;
  return () => {
    screen.kill();
    if (isOwnRun) endLeftovers(mark);
  };
}
