import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, resolve } from 'node:path';
import { safeHeaders } from '../../.ci/content-security-policy.mjs';

/** A plain web server for a built app that can really be switched off, as signal is in a shop. */

const kinds = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
};

/**
 * @typedef {object} ServerOptions
 * @property {string} [folder] what is served
 * @property {string} [under] the path it is served at, '/shop/' say
 * @property {number} [port] any free one unless told
 * @property {boolean} [plain] sends no header of ours, as many hosts do: then only the page's own <meta> policy holds
 */

/**
 * @typedef {object} Server
 * @property {string} url where the app is, always the same one, with the slash at its end
 * @property {string[]} asked the path of every request so far
 * @property {() => Promise<void>} stop closes the port and every connection: from now on nothing answers
 * @property {() => Promise<void>} start opens the same port again after a stop
 * @property {(folder: string) => void} serve another build at the same address, as a release does
 * @property {(lies?: (path: string) => string | undefined) => void} lie says for each path below the app's whether a page
 *   comes in place of the file, as from a network that wants to be paid first: with status 200. Without a function it is honest again
 * @property {(isHeld?: (path: string) => boolean) => void} hold says for each path below the app's whether it is never answered,
 *   its line held open; whoever waits is cut off when it is called anew
 */

/**
 * @param {ServerOptions} [options]
 * @returns {Promise<Server>}
 */
export async function startServer({ folder = 'dist', under = '/', port = 0, plain = false } = {}) {
  let root = resolve(folder);
  /** @type {string[]} */
  const asked = [];
  const headers = plain ? {} : safeHeaders;
  /** @type {(path: string) => string | undefined} */
  let lieOf = () => undefined;
  /** @type {(path: string) => boolean} */
  let isHeld = () => false;
  /** @type {import('node:net').Socket[]} */
  const waiting = [];
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    asked.push(path);
    if (isHeld(path.slice(under.length))) {
      waiting.push(request.socket);
      return;
    }
    const page = lieOf(path.slice(under.length));
    if (page !== undefined) {
      // Fresh for an hour, as careless networks have it.
      response.writeHead(200, { 'Content-Type': 'text/html', 'Cache-Control': 'max-age=3600' }).end(page);
      return;
    }
    answer(response, headers, path.startsWith(under) ? fileAt(root, path.slice(under.length)) : undefined);
  });
  // Node's own five seconds close a resting connection under a request that comes just then.
  server.keepAliveTimeout = 600_000;
  const listen = (wanted) =>
    new Promise((done, failed) => {
      server.once('error', failed);
      server.listen(wanted, '127.0.0.1', () => done(undefined));
    });
  await listen(port);
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the server has no port');

  return {
    url: `http://127.0.0.1:${address.port}${under}`,
    asked,
    serve: (other) => {
      root = resolve(other);
    },
    lie: (lies = () => undefined) => {
      lieOf = lies;
    },
    hold: (held = () => false) => {
      isHeld = held;
      for (const socket of waiting.splice(0)) socket.destroy();
    },
    start: () => listen(address.port),
    stop: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

/** @returns {string | undefined} the file for a path below the app's address; never one outside the folder */
function fileAt(root, path) {
  const wanted = normalize(join(root, decodeURIComponent(path) || 'index.html'));
  if (!wanted.startsWith(root)) return undefined;
  return statSync(wanted, { throwIfNoEntry: false })?.isFile() ? wanted : undefined;
}

function answer(response, headers, file) {
  if (!file) {
    response.writeHead(404, headers).end('not here');
    return;
  }
  const kind = kinds[extname(file)] ?? 'application/octet-stream';
  response.writeHead(200, { ...headers, 'Content-Type': kind, 'Cache-Control': 'no-cache' });
  createReadStream(file).pipe(response);
}
