import { createServer, type IncomingMessage } from 'node:http';
import type { Couch } from './couch.ts';

export type CouchServer = { readonly address: string; readonly stop: () => Promise<void> };

/**
 * The server on a port of this machine, with CORS as CouchDB has it: the listed origins only, no credentials, and the two
 * headers that a phone sends. `answerInstead` stands in its place, as a network's own page does.
 */
export async function serveCouch(
  couch: Couch,
  {
    origins,
    answerInstead,
  }: { readonly origins: () => readonly string[]; readonly answerInstead?: () => Response | undefined },
): Promise<CouchServer> {
  const server = createServer((request, response) => {
    void bodyOf(request).then(async (body) => {
      const origin = String(request.headers.origin);
      const cors: Record<string, string> = origins().includes(origin)
        ? {
            'Access-Control-Allow-Origin': origin,
            'Access-Control-Allow-Headers': 'accept, authorization, content-type',
            'Access-Control-Allow-Methods': 'GET, PUT, POST, HEAD, DELETE',
            'Access-Control-Max-Age': '7200',
          }
        : {};
      const other = answerInstead?.();
      if (other) {
        response.writeHead(other.status, { ...cors, ...Object.fromEntries(other.headers) });
        return response.end(Buffer.from(await other.arrayBuffer()));
      }
      if (request.method === 'OPTIONS') return response.writeHead(204, cors).end();
      const { status, json, bytes } = couch.answer({
        method: request.method ?? 'GET',
        url: request.url ?? '/',
        authorization: request.headers.authorization,
        body,
      });
      const type = bytes ? 'application/octet-stream' : 'application/json';
      response.writeHead(status, { ...cors, 'Content-Type': type });
      return response.end(bytes ? Buffer.from(bytes) : JSON.stringify(json));
    });
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  return {
    address: `http://127.0.0.1:${port}`,
    stop: async () => {
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
    },
  };
}

async function bodyOf(request: IncomingMessage): Promise<Uint8Array> {
  const pieces: Buffer[] = [];
  for await (const piece of request) pieces.push(Buffer.from(piece));
  return Buffer.concat(pieces);
}
