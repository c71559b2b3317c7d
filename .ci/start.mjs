import './ready.mjs';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { parseArgs } from 'node:util';

/** Builds the app and serves it on this machine, on the port that `--port` names or on the usual one. */

const USUAL_PORT = '4487';
const root = join(import.meta.dirname, '..');
const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
const { port, outDir } = wanted();

if (!(await isFree(port))) {
  const other = port === 5000 ? 5001 : 5000;
  stop(
    `Port ${port} is in use, by a Slipfit that runs already perhaps. Stop that, or choose another: npm start -- --port ${other} (records belong to the address, so another port begins without any).`,
  );
}
if ((await run('build', '--outDir', outDir, '--emptyOutDir')) === 0)
  process.exitCode = await run('preview', '--outDir', outDir, '--port', String(port));
else process.exitCode = 1;

function wanted() {
  const options = {
    port: { type: 'string', default: USUAL_PORT },
    outDir: { type: 'string', default: 'dist' },
  };
  try {
    const { values } = parseArgs({ options });
    const number = /^\d{1,5}$/.test(values.port) ? Number(values.port) : 0;
    if (number < 1 || number > 65_535)
      stop(`--port takes a number from 1 to 65535, and “${values.port}” is none.`);
    return { port: number, outDir: values.outDir };
  } catch {
    return stop(`Only the port can be chosen: npm start -- --port 5000`);
  }
}

/** Whether this port of this machine can still be listened at. */
async function isFree(number) {
  const server = createServer();
  server.listen({ port: number, host: 'localhost' });
  try {
    await once(server, 'listening');
  } catch ({ code }) {
    if (code === 'EACCES')
      stop(`Port ${number} is not for everybody on this machine: choose one above 1023.`);
    return false;
  }
  server.close();
  return true;
}

/** Resolves to the exit code; one that was stopped by a key counts as done. */
async function run(...how) {
  const child = spawn(process.execPath, [vite, ...how], { cwd: root, stdio: 'inherit' });
  // The key that ends it goes to both: this one waits for the other.
  process.once('SIGINT', () => undefined);
  process.once('SIGTERM', () => child.kill());
  const [code, signal] = await once(child, 'exit');
  return signal ? 0 : code;
}

function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}
