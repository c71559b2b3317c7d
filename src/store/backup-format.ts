import type { StoreName } from './kept.ts';

/**
 * A backup is text in JSON Lines, UTF-8, each line ended by a line feed:
 *   first   {"format":"slipfit backup","version":2,"writtenAt":<ms>,"counts":{"jobs":<lines>, ...}}, beside them where
 *           known "phone" (the phone's mark in its stamps), "fitter" (who uses it), "job" (the one job handed over),
 *           "seen" (the latest stamp of every phone whose changes are in here: {"*":[...],"jobs/<id>":[...]})
 *   then    {"store":"jobs","record":{...}}, stores in the order below, lengths as decimal text in millimetres,
 *           pictures ("preview" of photos, "bytes" of photoBytes) as base64
 *   or      {"unreadable":"jobs","record":{...}} for a record that Slipfit itself could not read: kept, not restored
 *   last    {"lines":<lines before this one>,"checksum":"<64 hexadecimal digits>"}
 * The checksum is a chain: sum = "" at first, then for each block of 256 lines (the last may be shorter)
 * sum = SHA-256 of (sum, line feed, each line of the block followed by a line feed), written in hexadecimal.
 * Version 1 had no stores between worksheets and drawer; it is read as it ever was.
 */
export const backupFormat = { name: 'slipfit backup', version: 2, oldestRead: 1 } as const;

/** What goes into a backup. Drafts, undo and the device's own notes stay on the phone. */
export const backupStores = [
  'jobs',
  'parts',
  'features',
  'readings',
  'worksheets',
  'cuts',
  'checks',
  'steps',
  'rechecks',
  'photos',
  'photoBytes',
  'money',
  'sheets',
  'drawer',
  'drawerCounts',
  'tools',
  'settings',
] as const satisfies readonly StoreName[];

export type BackupStore = (typeof backupStores)[number];

export type BackupHeader = {
  readonly writtenAt: number;
  readonly counts: Readonly<Record<string, number>>;
};

/** Where this phone was last is of no use on another one. */
export const leftOutSettings: ReadonlySet<string> = new Set(['lastPlace']);

const LINES_IN_A_BLOCK = 256;

/** The running checksum over a backup's lines. */
export type Checksum = {
  readonly add: (line: string) => Promise<void>;
  /** The checksum in hexadecimal. Nothing is added after it. */
  readonly end: () => Promise<string>;
};

export function startChecksum(): Checksum {
  const encoder = new TextEncoder();
  let sum = '';
  let block: string[] = [];
  const close = async (): Promise<void> => {
    const text = `${[sum, ...block].join('\n')}\n`;
    block = [];
    sum = hexOf(await crypto.subtle.digest('SHA-256', encoder.encode(text)));
  };
  return {
    async add(line) {
      block.push(line);
      if (block.length === LINES_IN_A_BLOCK) await close();
    },
    async end() {
      if (block.length > 0) await close();
      return sum;
    },
  };
}

function hexOf(bytes: ArrayBuffer): string {
  return Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
