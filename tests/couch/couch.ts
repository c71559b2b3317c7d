import {
  copyOf,
  feedAfter,
  leavesOf,
  newDatabase,
  putDoc,
  seqsIn,
  winnerOf,
  type Body,
  type Database,
} from './couch-docs.ts';

/**
 * A server that speaks as much of CouchDB 3.5 as a phone asks for, in memory and with nothing but node. Its answers follow
 * the manual's API reference (docs.couchdb.org, 3.5) and what was seen of a real one: texts as sequence numbers, two shards
 * out of order, notes that take any revision, 413 for a whole batch, a name locked after five wrong passwords.
 */
export type CouchOptions = {
  readonly admin?: { readonly name: string; readonly password: string };
  /** How the shards mix in the feed; 0 to below 1. */
  readonly chance?: () => number;
  readonly now?: () => number;
  /** No document may be larger, bytes. */
  readonly largest?: number;
  /** Bodies of what is no leaf any more are gone, as after a compaction. */
  readonly isCompacted?: boolean;
};

export type Asked = {
  readonly method: string;
  /** Path and query, as sent. */
  readonly url: string;
  readonly authorization: string | undefined;
  readonly body: Uint8Array;
};

export type Said = { readonly status: number; readonly json?: unknown; readonly bytes?: Uint8Array };

export type Couch = {
  readonly answer: (asked: Asked) => Said;
  readonly databases: Map<string, Database>;
  readonly users: Map<string, string>;
  /** All databases as they are now, and the way back to it: as if the disk had been put back. */
  readonly image: () => () => void;
  readonly counted: { requests: number };
};

const LARGEST = 8_000_000;
const TRIES = 5;
const LOCKED_MS = 300_000;
const decoder = new TextDecoder();

export function startCouch(options: CouchOptions = {}): Couch {
  const admin = options.admin ?? { name: 'admin', password: 'admin' };
  const databases = new Map<string, Database>();
  const users = new Map<string, string>();
  const wrong = new Map<string, { count: number; at: number }>();
  const counted = { requests: 0 };
  const now = options.now ?? Date.now;
  const whoIs = (authorization: string | undefined): string | Said => {
    if (authorization === undefined)
      return refusal(401, 'unauthorized', 'You are not authorized to access this db.');
    const [name = '', password = ''] = Buffer.from(authorization.replace(/^Basic /, ''), 'base64')
      .toString()
      .split(/:(.*)/s);
    const tries = wrong.get(name);
    if (tries && tries.count >= TRIES && now() - tries.at < LOCKED_MS)
      return refusal(
        403,
        'forbidden',
        'Account is temporarily locked due to multiple authentication failures',
      );
    const isRight = name === admin.name ? password === admin.password : users.get(name) === password;
    if (isRight) {
      wrong.delete(name);
      return name;
    }
    wrong.set(name, { count: (tries?.count ?? 0) + 1, at: now() });
    return refusal(401, 'unauthorized', 'Name or password is incorrect.');
  };
  return {
    databases,
    users,
    counted,
    image() {
      const copies = [...databases.values()].map(copyOf);
      return () => {
        databases.clear();
        for (const copy of copies) databases.set(copy.name, copyOf(copy));
      };
    },
    answer(asked) {
      counted.requests += 1;
      const url = new URL(asked.url, 'http://couch');
      const parts = url.pathname.split('/').slice(1).map(decodeURIComponent);
      if (parts[0] === '' && parts.length === 1)
        return { status: 200, json: { couchdb: 'Welcome', version: '3.5.0' } };
      const who = whoIs(asked.authorization);
      if (typeof who !== 'string') return who;
      const isAdmin = who === admin.name;
      const request: Request = { ...asked, url, parts, who, isAdmin };
      if (parts[0] === '_users') return inUsers(users, request);
      return inDatabase({ databases, options }, request);
    },
  };
}

type Request = Omit<Asked, 'url'> & {
  readonly url: URL;
  readonly parts: readonly string[];
  readonly who: string;
  readonly isAdmin: boolean;
};

type Server = { readonly databases: Map<string, Database>; readonly options: CouchOptions };

function refusal(status: number, error: string, reason: string): Said {
  return { status, json: { error, reason } };
}

function inUsers(users: Map<string, string>, { method, parts, isAdmin, body }: Request): Said {
  if (!isAdmin) return refusal(404, 'not_found', 'missing');
  const id = parts[1] ?? '';
  const name = id.replace('org.couchdb.user:', '');
  if (method === 'GET')
    return users.has(name)
      ? { status: 200, json: { _id: id, _rev: '1-user', name, roles: [], type: 'user' } }
      : refusal(404, 'not_found', 'missing');
  if (method === 'DELETE') {
    users.delete(name);
    return { status: 200, json: { ok: true, id, rev: '2-user' } };
  }
  if (users.has(name)) return refusal(409, 'conflict', 'Document update conflict.');
  users.set(name, String(objectIn(body)['password']));
  return { status: 201, json: { ok: true, id, rev: '1-user' } };
}

function inDatabase({ databases, options }: Server, request: Request): Said {
  const { parts, method, isAdmin, who, body } = request;
  const [name = '', first = ''] = parts;
  const database = databases.get(name);
  if (parts.length === 1 && method === 'PUT') {
    if (!isAdmin) return refusal(401, 'unauthorized', 'You are not a server admin.');
    if (database)
      return refusal(412, 'file_exists', 'The database could not be created, the file already exists.');
    if (!/^[a-z][a-z0-9_$()+/-]*$/.test(name)) return refusal(400, 'illegal_database_name', name);
    databases.set(name, newDatabase(name));
    return { status: 201, json: { ok: true } };
  }
  if (!database) return refusal(404, 'not_found', 'Database does not exist.');
  if (!isAdmin && !database.members.includes(who))
    return refusal(403, 'forbidden', 'You are not allowed to access this db.');
  if (parts.length === 1 && method === 'DELETE') {
    if (!isAdmin) return refusal(401, 'unauthorized', 'You are not a server admin.');
    databases.delete(name);
    return { status: 200, json: { ok: true } };
  }
  if (parts.length === 1) return { status: 200, json: { db_name: name, doc_count: database.docs.size } };
  if (first === '_security' || first === '_revs_limit') return setUp(database, request);
  if (first === '_local') return localNote(database, request);
  if (first === '_changes') return changes(database, request, options);
  if (first === '_all_docs') return allDocs(database, request);
  if (first === '_bulk_get') return bulkGet(database, body, options);
  if (first === '_bulk_docs') return bulkDocs(database, body, options);
  if (first.startsWith('_design') && !isAdmin && method !== 'GET')
    return refusal(401, 'unauthorized', 'You are not a db or server admin.');
  return parts.length === 3 ? attachment(database, request, options) : document(database, request, options);
}

function setUp(database: Database, { parts, method, isAdmin, body }: Request): Said {
  if (method === 'GET') return { status: 200, json: { members: { names: database.members } } };
  if (!isAdmin) return refusal(401, 'unauthorized', 'You are not a db or server admin.');
  if (parts[1] === '_security') database.members = namesIn(objectIn(body));
  return { status: 200, json: { ok: true } };
}

function namesIn({ members }: Body): string[] {
  const { names }: { names?: unknown } = Object(members);
  return Array.isArray(names) ? names.map(String) : [];
}

/** As CouchDB has it: whatever revision comes along is taken. */
function localNote(database: Database, { parts, method, body }: Request): Said {
  const name = parts[2] ?? '';
  const known = database.locals.get(name);
  if (method === 'GET')
    return known
      ? { status: 200, json: { ...known.body, _id: `_local/${name}`, _rev: `0-${known.n}` } }
      : refusal(404, 'not_found', 'missing');
  const n = (known?.n ?? 0) + 1;
  const { _id, _rev, ...said } = objectIn(body);
  database.locals.set(name, { n, body: said });
  return { status: 201, json: { ok: true, id: `_local/${name}`, rev: `0-${n}` } };
}

function changes(database: Database, { url }: Request, { chance = () => 0 }: CouchOptions): Said {
  const since = seqsIn(url.searchParams.get('since') ?? '0');
  if (!since) return refusal(400, 'bad_request', 'Malformed sequence supplied in since parameter.');
  const limit = Number(url.searchParams.get('limit') ?? Number.POSITIVE_INFINITY);
  const { lines, last, pending } = feedAfter(database, { since, limit, chance });
  const results = lines.map(({ id, seq, tree }) => {
    const winner = winnerOf(tree);
    const leaves = leavesOf(tree);
    const shown =
      url.searchParams.get('style') === 'all_docs' ? leaves : leaves.filter((one) => one === winner);
    return {
      seq,
      id,
      changes: shown.map(({ rev }) => ({ rev })),
      ...(winner?.isDeleted === true && { deleted: true }),
    };
  });
  return { status: 200, json: { results, last_seq: last, pending } };
}

function allDocs(database: Database, { url, method, body }: Request): Said {
  const keys = method === 'POST' ? objectIn(body)['keys'] : undefined;
  const start = JSON.parse(url.searchParams.get('startkey') ?? '""');
  const end = JSON.parse(url.searchParams.get('endkey') ?? '"\uffff"');
  const ids = Array.isArray(keys)
    ? keys.map(String)
    : [...database.docs.keys()].filter((id) => id >= start && id <= end).toSorted();
  const withDocs = url.searchParams.get('include_docs') === 'true';
  const rows = ids.flatMap((id): unknown[] => {
    const tree = database.docs.get(id);
    const winner = tree && winnerOf(tree);
    if (!tree || !winner) return [{ key: id, error: 'not_found' }];
    const { rev, isDeleted } = winner;
    if (isDeleted)
      return keys ? [{ id, key: id, value: { rev, deleted: true }, ...(withDocs && { doc: null }) }] : [];
    const others = leavesOf(tree).filter((leaf) => leaf !== winner && !leaf.isDeleted);
    const conflicts = url.searchParams.get('conflicts') === 'true' && others.length > 0;
    const doc = { ...shownAs(id, winner), ...(conflicts && { _conflicts: others.map((one) => one.rev) }) };
    return [{ id, key: id, value: { rev }, ...(withDocs && { doc }) }];
  });
  return { status: 200, json: { total_rows: database.docs.size, rows } };
}

function shownAs(
  id: string,
  { rev, body, isDeleted, bytes }: { rev: string; body: Body; isDeleted: boolean; bytes?: Uint8Array },
): Body {
  return {
    ...body,
    _id: id,
    _rev: rev,
    ...(isDeleted && { _deleted: true }),
    ...(bytes && { _attachments: { b: { stub: true, length: bytes.length } } }),
  };
}

function bulkGet(database: Database, body: Uint8Array, { isCompacted = false }: CouchOptions): Said {
  const { docs } = objectIn(body);
  const results = (Array.isArray(docs) ? docs : []).map(({ id, rev }: { id: string; rev: string }) => {
    const tree = database.docs.get(id);
    const found = tree?.revisions.get(rev);
    const isKept = found && (!isCompacted || (tree && leavesOf(tree).includes(found)));
    const missing = { error: { id, rev, error: 'not_found', reason: 'missing' } };
    return { id, docs: [isKept && found ? { ok: shownAs(id, found) } : missing] };
  });
  return { status: 200, json: { results } };
}

function bulkDocs(database: Database, body: Uint8Array, { largest = LARGEST }: CouchOptions): Said {
  const { docs } = objectIn(body);
  const all: Body[] = Array.isArray(docs) ? docs : [];
  if (all.some((doc) => JSON.stringify(doc).length > largest))
    return refusal(413, 'document_too_large', String(all[0]?.['_id']));
  const results = all.map((doc) => {
    const { _id, _rev, _deleted, ...said } = doc;
    const id = String(_id);
    const rev = putDoc(database, {
      id,
      rev: typeof _rev === 'string' ? _rev : undefined,
      body: said,
      isDeleted: _deleted === true,
    });
    return rev === 'conflict'
      ? { id, error: 'conflict', reason: 'Document update conflict.' }
      : { ok: true, id, rev };
  });
  return { status: 201, json: results };
}

function document(database: Database, { parts, method, body }: Request, options: CouchOptions): Said {
  const id = parts[1] ?? '';
  if (method === 'PUT') {
    if (body.length > (options.largest ?? LARGEST)) return refusal(413, 'document_too_large', id);
    const { _id, _rev, ...said } = objectIn(body);
    const rev = putDoc(database, { id, rev: typeof _rev === 'string' ? _rev : undefined, body: said });
    if (rev === 'conflict') return refusal(409, 'conflict', 'Document update conflict.');
    return { status: 201, json: { ok: true, id, rev } };
  }
  const tree = database.docs.get(id);
  const winner = tree && winnerOf(tree);
  if (!winner || winner.isDeleted) return refusal(404, 'not_found', winner ? 'deleted' : 'missing');
  return { status: 200, json: shownAs(id, winner) };
}

function attachment(database: Database, { parts, method, body }: Request, options: CouchOptions): Said {
  const id = parts[1] ?? '';
  if (method === 'PUT') {
    if (body.length > (options.largest ?? LARGEST)) return refusal(413, 'attachment_too_large', id);
    const rev = putDoc(database, { id, rev: undefined, body: {}, bytes: body });
    return rev === 'conflict'
      ? refusal(409, 'conflict', 'Document update conflict.')
      : { status: 201, json: { ok: true, id, rev } };
  }
  const tree = database.docs.get(id);
  const bytes = tree && winnerOf(tree)?.bytes;
  return bytes ? { status: 200, bytes } : refusal(404, 'not_found', 'Document is missing attachment');
}

function objectIn(body: Uint8Array): Body {
  const value: unknown = JSON.parse(decoder.decode(body));
  return typeof value === 'object' && value !== null ? { ...value } : {};
}
