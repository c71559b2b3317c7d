import { refuse, worked } from '../../engine/length/refusal.ts';
import { isPlainObject } from '../base/paths.ts';
import { backupStores, type BackupStore } from '../base/stores.ts';
import { backupFormat, startChecksum, type Checksum } from './backup-format.ts';
import { eachLine, type BackupText } from './backup-lines.ts';
import type { BackupRefusal, BackupResult } from './backup-refusal.ts';
import { plainJson } from './plain-json.ts';

export type OnShare = (share: number) => void;

type Line = Readonly<Record<string, unknown>>;

/** What is done with what a file holds: its first line, then each record's, whose own fields nobody has looked at yet. */
export type Inside = {
  readonly onFirst: (header: Line) => void;
  readonly onRecord: (
    value: Line,
    at: { readonly line: number; readonly length: number },
  ) => Promise<BackupResult<void>>;
};

/** How many lines the file says that each store has in it. */
export type Counts = Line;

type Passing = { checksum: Checksum; counts?: Counts; ended: boolean };

// Chosen, not published: five times ten years' readings. Their ids are all that stays in memory.
const MOST_RECORDS = 500_000;

// Chosen, not published: a worksheet of a hundred parts comes to a tenth of it.
const LONGEST_RECORD = 1_000_000;

const mayBeLong = /^\{"(?:store|unreadable)":"(?:photoBytes|sheets)",/;

/** The one way in for a file: its form, the order of its lines and its checksum, before anything it says is believed. */
export async function throughTheDoor(
  text: BackupText,
  inside: Inside,
  onShare?: OnShare,
): Promise<BackupResult<Counts>> {
  const passing: Passing = { checksum: startChecksum(), ended: false };
  const lines = await eachLine(text, (line, number) => oneLine(passing, inside, { line, number }), onShare);
  if (!lines.ok) return lines;
  if (!passing.counts) return refuse({ code: 'not-a-backup' });
  return passing.ended ? worked(passing.counts) : refuse({ code: 'cut-off', lines: lines.value });
}

/** Where the first line says otherwise than was found. */
export function countFault(
  counts: Counts,
  found: Readonly<Record<BackupStore, number>>,
): BackupRefusal | undefined {
  for (const store of backupStores) {
    const said = counts[store] ?? 0;
    if (said !== found[store])
      return { code: 'counts-differ', store, said: typeof said === 'number' ? said : 0, found: found[store] };
  }
  return undefined;
}

async function oneLine(
  passing: Passing,
  inside: Inside,
  { line, number }: { readonly line: string; readonly number: number },
): Promise<BackupResult<void>> {
  if (passing.ended)
    return line.trim() === ''
      ? worked(undefined)
      : refuse({ code: 'something-behind-the-end', line: number });
  // Before it is taken apart: a line of ten million little things would fill the memory of a phone.
  if (number > 1 && line.length > LONGEST_RECORD && !mayBeLong.test(line))
    return refuse({ code: 'line-too-long', line: number });
  const parsed = plainJson(line, number);
  // A first line that doesn't even name the format is some other file's.
  if (number === 1 && !line.includes(backupFormat.name)) return refuse({ code: 'not-a-backup' });
  if (!parsed.ok) return parsed;
  if (number === 1) return firstLine(passing, inside, { line, header: parsed.value });
  if ('checksum' in parsed.value) return lastLine(passing, parsed.value, number);
  await passing.checksum.add(line);
  if (number > MOST_RECORDS) return refuse({ code: 'too-many', most: MOST_RECORDS });
  return inside.onRecord(parsed.value, { line: number, length: line.length });
}

async function firstLine(
  passing: Passing,
  inside: Inside,
  { line, header }: { readonly line: string; readonly header: Line },
): Promise<BackupResult<void>> {
  const { format, version, counts } = header;
  if (format !== backupFormat.name || !Number.isInteger(version) || typeof version !== 'number')
    return refuse({ code: 'not-a-backup' });
  if (version > backupFormat.version) return refuse({ code: 'newer-backup', version });
  if (version < backupFormat.oldestRead || !isPlainObject(counts)) return refuse({ code: 'not-a-backup' });
  passing.counts = counts;
  inside.onFirst(header);
  passing.checksum = startChecksum({ version });
  await passing.checksum.add(line);
  return worked(undefined);
}

async function lastLine(passing: Passing, end: Line, number: number): Promise<BackupResult<void>> {
  passing.ended = true;
  const checksum = await passing.checksum.end();
  const right = end['checksum'] === checksum && end['lines'] === number - 1;
  return right ? worked(undefined) : refuse({ code: 'checksum-differs' });
}
