import type { Couch } from './couch.ts';

type Fetch = (url: string, init: RequestInit) => Promise<Response>;

/** As if the server were reached over the network; `address` is whatever the client was told. */
export function fetchFrom(couch: Couch, address: string): Fetch {
  return async (url, init) => {
    const headers = new Headers(init.headers);
    const { status, json, bytes } = couch.answer({
      method: init.method ?? 'GET',
      url: url.slice(address.length),
      authorization: headers.get('Authorization') ?? undefined,
      body: new Uint8Array(await new Response(init.body ?? null).arrayBuffer()),
    });
    if (bytes)
      return new Response(bytes.slice(), { status, headers: { 'Content-Type': 'application/octet-stream' } });
    return new Response(JSON.stringify(json), { status, headers: { 'Content-Type': 'application/json' } });
  };
}
