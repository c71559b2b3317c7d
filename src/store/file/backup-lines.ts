import { refuse, worked } from '../../engine/length/refusal.ts';
import type { BackupResult } from './backup-refusal.ts';

/** A backup to read: the whole text, a file, or pieces of text cut anywhere. */
export type BackupText = string | Blob | AsyncIterable<string>;

// Chosen, not published: 2,000 photos of 400 kB come to 1,100 MB as text, 100,000 readings to 50.
const MOST_MEGABYTES = 2000;
const BYTES_IN_A_MEGABYTE = 1_000_000;
// A photo of 8 MB as base64 is 10.7 million characters.
const LONGEST_LINE = 12_000_000;
const PIECE = 1_000_000;

/** Hands the lines over one by one; stops at the first refusal. Sizes are looked at before anything is taken apart. */
export async function eachLine(
  text: BackupText,
  onLine: (line: string, number: number) => Promise<BackupResult<void>>,
  onShare: (share: number) => void = () => undefined,
): Promise<BackupResult<number>> {
  const most = MOST_MEGABYTES * BYTES_IN_A_MEGABYTE;
  const tooBig = refuse({ code: 'too-big', mostMegabytes: MOST_MEGABYTES } as const);
  if (text instanceof Blob ? text.size > most : typeof text === 'string' && text.length > most) return tooBig;
  const whole = text instanceof Blob ? text.size : typeof text === 'string' ? text.length : most;
  let length = 0;
  let number = 0;
  // The line that is still coming in, piece by piece: a photo's line is put together once, not at every piece.
  let started: string[] = [];
  let startedLength = 0;
  try {
    for await (const piece of piecesOf(text)) {
      length += piece.length;
      if (length > most) return tooBig;
      onShare(Math.min(1, length / whole));
      const ends = piece.split('\n');
      const rest = ends.pop() ?? '';
      for (const end of ends) {
        number += 1;
        const line = startedLength === 0 ? end : [...started, end].join('');
        const done = await oneLine(line, number, onLine);
        if (!done.ok) return done;
        started = [];
        startedLength = 0;
      }
      started.push(rest);
      startedLength += rest.length;
      if (startedLength > LONGEST_LINE) return refuse({ code: 'line-too-long', line: number + 1 });
    }
  } catch (error) {
    // Only what the file itself is at fault for is called so.
    return refuse({ code: error instanceof NotText ? 'not-text' : 'file-unreadable' });
  }
  const rest = started.join('');
  if (rest === '') return worked(number);
  const last = await oneLine(rest, number + 1, onLine);
  return last.ok ? worked(number + 1) : last;
}

async function oneLine(
  line: string,
  number: number,
  onLine: (line: string, number: number) => Promise<BackupResult<void>>,
): Promise<BackupResult<void>> {
  if (line.length > LONGEST_LINE) return refuse({ code: 'line-too-long', line: number });
  // A mail program may have ended the lines its own way.
  return onLine(line.endsWith('\r') ? line.slice(0, -1) : line, number);
}

async function* piecesOf(text: BackupText): AsyncIterable<string> {
  if (typeof text === 'string') {
    // In pieces, so that a whole file isn't copied again for its lines.
    for (let at = 0; at < text.length; at += PIECE) yield text.slice(at, at + PIECE);
  } else if (text instanceof Blob) yield* piecesOfBlob(text);
  else yield* text;
}

// A stream's own async iteration is missing in Safari, so its reader is used.
async function* piecesOfBlob(blob: Blob): AsyncIterable<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const reader = blob.stream().getReader();
  try {
    for (;;) {
      // oxlint-disable-next-line no-await-in-loop
      const { done, value } = await reader.read();
      if (done) break;
      yield textIn(() => decoder.decode(value, { stream: true }));
    }
    yield textIn(() => decoder.decode());
  } finally {
    reader.releaseLock();
  }
}

class NotText extends Error {}

function textIn(decode: () => string): string {
  try {
    return decode();
  } catch {
    throw new NotText();
  }
}
