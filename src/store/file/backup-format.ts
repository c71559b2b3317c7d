import { sha256 } from '../base/sha-256.ts';

/**
 * A backup is text in JSON Lines, UTF-8, each line ended by a line feed:
 *   first   {"format":"slipfit backup","version":3,"writtenAt":<ms>,"counts":{"jobs":<lines>, ...}}, beside them where
 *           known "phone" (the phone's mark in its stamps), "fitter" (who uses it), "job" (the one job handed over),
 *           "seen" (the latest stamp of every phone whose changes are in here: {"*":[...],"jobs/<id>":[...]})
 *   then    {"store":"jobs","record":{...}}, stores in the order below, lengths as decimal text in millimetres,
 *           pictures ("preview" of photos, "bytes" of photoBytes) as base64
 *   or      {"unreadable":"jobs","record":{...}} for a record that Slipfit itself could not read, or had no way to look at
 *           (`rescue.ts`): read where it is put in, and put in as it is where it can't be
 *   last    {"lines":<lines before this one>,"checksum":"<64 hexadecimal digits>"}
 * The checksum is a chain: sum = "" at first, then for each block of lines
 * sum = SHA-256 of (sum, line feed, each line of the block followed by a line feed), written in hexadecimal.
 * A block ends with its 256th line, or before that with the line by which it has 1,000,000 bytes or more, line feeds
 * counted; the last may be shorter.
 * Versions 1 and 2 ended a block at 256 lines only, however long, and version 1 had no stores between worksheets and
 * drawer; both are read as they ever were.
 */
export const backupFormat = { name: 'slipfit backup', version: 3, oldestRead: 1 } as const;

const LINES_IN_A_BLOCK = 256;
// A block stays in memory until its sum is taken: of 256 large photos that would be hundreds of megabytes.
const BYTES_IN_A_BLOCK = 1_000_000;
const FIRST_VERSION_BY_BYTES = 3;

/** The running checksum over a backup's lines. */
export type Checksum = {
  readonly add: (line: string) => Promise<void>;
  /** The checksum in hexadecimal. Nothing is added after it. */
  readonly end: () => Promise<string>;
};

type ChecksumOptions = {
  /** How long a block may be hangs on it. */
  readonly version?: number;
  /** Nothing but the page's own code is waited for, so that it can be taken inside a transaction. Slower. */
  readonly byItself?: boolean;
};

/** The sum of a file. */
export function startChecksum({
  version = backupFormat.version,
  byItself = false,
}: ChecksumOptions = {}): Checksum {
  const digest = byItself ? sha256 : quickestSha256;
  const mostBytes = version < FIRST_VERSION_BY_BYTES ? Infinity : BYTES_IN_A_BLOCK;
  const encoder = new TextEncoder();
  let sum = '';
  let block: Uint8Array[] = [];
  let bytes = 0;
  const close = async (): Promise<void> => {
    const whole = joined([encoder.encode(`${sum}\n`), ...block]);
    block = [];
    bytes = 0;
    sum = hexOf(await digest(whole));
  };
  return {
    async add(line) {
      const encoded = encoder.encode(`${line}\n`);
      block.push(encoded);
      bytes += encoded.length;
      if (block.length === LINES_IN_A_BLOCK || bytes >= mostBytes) await close();
    },
    async end() {
      if (block.length > 0) await close();
      return sum;
    },
  };
}

/** The browser's own sum. The types promise one; a page that came over plain http has none. */
async function quickestSha256(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  const { subtle }: { readonly subtle?: SubtleCrypto } = crypto;
  return subtle ? new Uint8Array(await subtle.digest('SHA-256', bytes)) : sha256(bytes);
}

function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

function hexOf(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
