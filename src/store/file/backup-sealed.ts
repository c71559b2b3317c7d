import { startChecksum } from './backup-format.ts';

/** The lines of a file, each with its line feed, and behind them the one that seals it. */
export async function* withChecksum(lines: AsyncIterable<string> | Iterable<string>): AsyncGenerator<string> {
  const checksum = startChecksum();
  let count = 0;
  for await (const line of lines) {
    count += 1;
    await checksum.add(line);
    yield `${line}\n`;
  }
  yield `${JSON.stringify({ lines: count, checksum: await checksum.end() })}\n`;
}
