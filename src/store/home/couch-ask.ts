import type { HomeTrouble } from './home-state.ts';

/** How requests go to one server: as in the standard, so that a test can hand in its own. */
export type Way = {
  readonly fetch: (url: string, init: RequestInit) => Promise<Response>;
  /** The server's address, without a slash at its end. */
  readonly address: string;
  readonly user: string;
  readonly password: string;
};

/** What ended a round: why, and how long the server asks to be left alone. */
export class HomeFault extends Error {
  readonly trouble: HomeTrouble;
  readonly waitMs: number | undefined;
  constructor(trouble: HomeTrouble, waitMs?: number) {
    super(trouble.code);
    this.trouble = trouble;
    this.waitMs = waitMs;
  }
}

export type Json = Readonly<Record<string, unknown>>;

export type Asked = {
  readonly method?: 'GET' | 'PUT' | 'POST' | 'DELETE';
  readonly path: string;
  readonly body?: unknown;
  /** Bytes instead of a body in JSON. */
  readonly bytes?: ArrayBuffer;
  /** Answers that are no fault here, beside 200 and 201: 404, 409, 413. */
  readonly also?: readonly number[];
};

export type Answer = { readonly status: number; readonly json: unknown };

// Chosen, not published: weak signal takes long for a batch, and a picture longer.
const PATIENCE_MS = 60_000;
const PATIENCE_WITH_BYTES_MS = 300_000;

/**
 * One request, answered in JSON. Whatever else comes back ends the round by a `HomeFault`: nothing is believed that is no
 * answer of home's, and nothing changes by it.
 */
export async function askHome(way: Way, asked: Asked): Promise<Answer> {
  const response = await send(way, asked);
  const text = await read(response, (got) => got.text());
  const json = jsonOf(response, text);
  const fault = faultOf(response, json, text);
  const isTaken = response.status === 200 || response.status === 201 || response.status === 202;
  if (isTaken || asked.also?.includes(response.status) === true) {
    if (json !== undefined || response.status === 413) return { status: response.status, json };
    throw new HomeFault({ code: isCutOff(response, text) ? 'not-reached' : 'sign-in-page' });
  }
  throw fault;
}

/** One request for bytes; nothing where there are none. */
export async function askForBytes(way: Way, path: string): Promise<ArrayBuffer | undefined> {
  const response = await send(way, { path });
  if (response.status === 200 && !isOfAPage(response)) return read(response, (got) => got.arrayBuffer());
  const text = await read(response, (got) => got.text());
  const json = jsonOf(response, text);
  if (response.status === 404 && json !== undefined) return undefined;
  throw faultOf(response, json, text);
}

async function send(way: Way, { method = 'GET', path, body, bytes }: Asked): Promise<Response> {
  try {
    return await way.fetch(`${way.address}${path}`, {
      method,
      headers: headersOf(way, { body, bytes }),
      ...(bytes ? { body: bytes } : body !== undefined ? { body: JSON.stringify(body) } : {}),
      // No cookie of anybody's goes along, and another address in home's place is seen as what it is.
      credentials: 'omit',
      redirect: 'manual',
      cache: 'no-store',
      referrerPolicy: 'no-referrer',
      signal: AbortSignal.timeout(bytes ? PATIENCE_WITH_BYTES_MS : PATIENCE_MS),
    });
  } catch {
    throw new HomeFault({ code: 'not-reached' });
  }
}

function headersOf(
  { user, password }: Way,
  { body, bytes }: { readonly body: unknown; readonly bytes: ArrayBuffer | undefined },
) {
  const said = new TextEncoder().encode(`${user}:${password}`);
  return {
    Accept: 'application/json',
    Authorization: `Basic ${btoa(String.fromCharCode(...said))}`,
    ...(bytes ? { 'Content-Type': 'application/octet-stream' } : {}),
    ...(body !== undefined ? { 'Content-Type': 'application/json' } : {}),
  };
}

async function read<T>(response: Response, work: (response: Response) => Promise<T>): Promise<T> {
  try {
    return await work(response);
  } catch {
    throw new HomeFault({ code: 'not-reached' });
  }
}

function jsonOf(response: Response, text: string): unknown {
  if (isOfAPage(response)) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function isOfAPage({ headers }: Response): boolean {
  return /html|xml/i.test(headers.get('Content-Type') ?? '');
}

/** JSON that breaks off, as against something that never was any. */
function isCutOff(response: Response, text: string): boolean {
  return /json/i.test(response.headers.get('Content-Type') ?? '') || text === '';
}

function faultOf(response: Response, json: unknown, text: string): HomeFault {
  const { status } = response;
  const reason = reasonOf(json);
  if (status === 507 || /enospc|no space left/i.test(reason)) return new HomeFault({ code: 'home-full' });
  // A proxy in front of home answers in HTML, and means home all the same.
  if (status === 429 || (status >= 500 && status !== 511))
    return new HomeFault({ code: 'busy' }, waitOf(response));
  if (json === undefined)
    return new HomeFault({ code: isCutOff(response, text) && status === 0 ? 'not-reached' : 'sign-in-page' });
  if (status === 401) return new HomeFault({ code: 'wrong-password' });
  if (status === 403)
    return new HomeFault({ code: /locked/i.test(reason) ? 'locked-for-minutes' : 'not-allowed' });
  if (status === 404) return new HomeFault({ code: 'nothing-there' });
  return new HomeFault({ code: 'busy' });
}

function reasonOf(json: unknown): string {
  if (typeof json !== 'object' || json === null) return '';
  const error = 'error' in json ? String(json.error) : '';
  return 'reason' in json ? `${error} ${String(json.reason)}` : error;
}

const MS_IN_A_SECOND = 1000;
const MOST_WAIT_S = 3600;

/** Seconds, or a date that nobody compares with a phone's clock: then the usual wait. */
function waitOf({ headers }: Response): number | undefined {
  const seconds = Number(headers.get('Retry-After') ?? Number.NaN);
  return seconds > 0 ? Math.min(seconds, MOST_WAIT_S) * MS_IN_A_SECOND : undefined;
}
