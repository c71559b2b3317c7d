import { createHash } from 'node:crypto';

/** The documents of one database, as CouchDB 3.5 keeps them: a tree of revisions each, and a feed over two shards. */
export type Body = Readonly<Record<string, unknown>>;

type Revision = {
  readonly rev: string;
  readonly parent: string | undefined;
  readonly isDeleted: boolean;
  readonly body: Body;
  readonly bytes?: Uint8Array;
};

type DocTree = { readonly revisions: Map<string, Revision>; shard: number; seq: number };

export type Database = {
  readonly docs: Map<string, DocTree>;
  readonly locals: Map<string, { readonly n: number; readonly body: Body }>;
  /** The latest number of each shard. */
  readonly seqs: number[];
  members: readonly string[];
  readonly name: string;
};

export const SHARDS = 2;

export function newDatabase(name: string): Database {
  return {
    name,
    docs: new Map(),
    locals: new Map(),
    seqs: Array.from({ length: SHARDS }, () => 0),
    members: [],
  };
}

/** A copy that later writes don't reach: revisions never change. */
export function copyOf(database: Database): Database {
  return {
    ...database,
    docs: new Map(
      [...database.docs].map(([id, tree]) => [id, { ...tree, revisions: new Map(tree.revisions) }]),
    ),
    locals: new Map(database.locals),
    seqs: [...database.seqs],
  };
}

export function leavesOf(tree: DocTree): Revision[] {
  const parents = new Set([...tree.revisions.values()].map(({ parent }) => parent));
  return [...tree.revisions.values()].filter(({ rev }) => !parents.has(rev));
}

/** Live before deleted, the longer line, then the later text: the same on every server. */
export function winnerOf(tree: DocTree): Revision | undefined {
  return leavesOf(tree).toSorted(
    (a, b) =>
      Number(a.isDeleted) - Number(b.isDeleted) ||
      numberOf(b.rev) - numberOf(a.rev) ||
      (a.rev > b.rev ? -1 : 1),
  )[0];
}

export type Put = {
  readonly id: string;
  readonly rev: string | undefined;
  readonly body: Body;
  readonly isDeleted?: boolean;
  readonly bytes?: Uint8Array;
};

/** One edit on top of a leaf, or of nothing: its revision, or `conflict` where that is no leaf. */
export function putDoc(database: Database, put: Put): string {
  const tree = database.docs.get(put.id) ?? newTree(put.id);
  const winner = winnerOf(tree);
  const parent = put.rev ?? (winner?.isDeleted === true ? winner.rev : undefined);
  const isFree = put.rev === undefined && (!winner || winner.isDeleted);
  const isOnLeaf = put.rev !== undefined && leavesOf(tree).some(({ rev }) => rev === put.rev);
  if (!isFree && !isOnLeaf) return 'conflict';
  const isDeleted = put.isDeleted === true;
  const said = JSON.stringify([isDeleted, parent ?? '', put.body, put.bytes ? sumOf(put.bytes) : '']);
  const rev = `${parent === undefined ? 1 : numberOf(parent) + 1}-${sumOf(said)}`;
  if (tree.revisions.has(rev)) return 'conflict';
  tree.revisions.set(rev, { rev, parent, isDeleted, body: put.body, ...(put.bytes && { bytes: put.bytes }) });
  database.docs.set(put.id, tree);
  moveOn(database, tree);
  return rev;
}

/** What replication does: every revision of one goes to the other with its line, and both leaves stand there. */
export function replicate(from: Database, to: Database): void {
  for (const [id, tree] of from.docs) {
    const there = to.docs.get(id) ?? newTree(id);
    const fresh = [...tree.revisions].filter(([rev]) => !there.revisions.has(rev));
    if (fresh.length === 0) continue;
    for (const [rev, revision] of fresh) there.revisions.set(rev, revision);
    to.docs.set(id, there);
    moveOn(to, there);
  }
}

function newTree(id: string): DocTree {
  return { revisions: new Map(), shard: (sumOf(id).codePointAt(0) ?? 0) % SHARDS, seq: 0 };
}

function moveOn(database: Database, tree: DocTree): void {
  const next = (database.seqs[tree.shard] ?? 0) + 1;
  database.seqs[tree.shard] = next;
  tree.seq = next;
}

export function numberOf(rev: string): number {
  return Number.parseInt(rev, 10);
}

function sumOf(said: string | Uint8Array): string {
  return createHash('md5').update(said).digest('hex');
}

/** Where the feed stands: how far each shard, as text that nobody but the server reads. */
export function seqText(seqs: readonly number[]): string {
  const sum = seqs.reduce((all, one) => all + one, 0);
  return `${sum}-${Buffer.from(JSON.stringify(seqs)).toString('base64url')}`;
}

export function seqsIn(text: string): number[] | undefined {
  if (text === '0' || text === '') return Array.from({ length: SHARDS }, () => 0);
  const [, coded = ''] = text.split(/-(.*)/s);
  try {
    const seqs: unknown = JSON.parse(Buffer.from(coded, 'base64url').toString());
    return Array.isArray(seqs) ? seqs.map(Number) : undefined;
  } catch {
    return undefined;
  }
}

export type FeedLine = { readonly id: string; readonly seq: string; readonly tree: DocTree };

/** The feed after a place: each shard in its own order, the shards mixed as it happens. */
export function feedAfter(
  database: Database,
  { since, limit, chance }: { since: readonly number[]; limit: number; chance: () => number },
): { readonly lines: FeedLine[]; readonly last: string; readonly pending: number } {
  const at = [...since];
  const queues = at.map((from, shard) =>
    [...database.docs]
      .filter(([, tree]) => tree.shard === shard && tree.seq > from)
      .toSorted(([, a], [, b]) => a.seq - b.seq),
  );
  const lines: FeedLine[] = [];
  for (;;) {
    const open = queues.flatMap((queue, shard) => (queue.length > 0 ? [shard] : []));
    const shard = open[Math.floor(chance() * open.length)];
    const next = shard === undefined ? undefined : queues[shard]?.[0];
    if (shard === undefined || !next || lines.length >= limit) break;
    queues[shard]?.shift();
    at[shard] = next[1].seq;
    lines.push({ id: next[0], seq: seqText(at), tree: next[1] });
  }
  // A home that was put back has no later place than its own.
  const last = seqText(
    lines.length > 0 ? at : since.map((one, shard) => Math.min(one, database.seqs[shard] ?? 0)),
  );
  return { lines, last, pending: queues.reduce((sum, queue) => sum + queue.length, 0) };
}
