import { readFileSync, writeFileSync } from 'node:fs';
import { buildApp, removeTemporaryFolders } from '../browser/launch.ts';
import { bigBackup, bigStore } from './big-store.ts';
import { shippedBytes } from './bytes.ts';
import { coldStart } from './cold-start.ts';
import { engineSums } from './engine-sums.ts';
import { isMet, tableOf, type Part } from './figures.ts';
import { presses } from './presses.ts';
import { search } from './search.ts';

const parts: Readonly<Record<string, (folder: string) => Promise<Part> | Part>> = {
  bytes: shippedBytes,
  start: coldStart,
  presses,
  opening: bigStore,
  search,
  backup: () => bigBackup(),
  engine: engineSums,
};

/**
 * Measures the built app and prints a table, each figure beside its aim. Not a test: a figure depends on the machine.
 *   npm run bench                           all of it, about ten minutes
 *   npm run bench -- start presses          these parts only
 *   npm run bench -- --json run.json        keeps the run
 *   npm run bench -- --beside run.json      prints an earlier run beside this one
 */
export async function bench(given: readonly string[]): Promise<void> {
  const json = valueOf(given, '--json');
  const beside = valueOf(given, '--beside');
  const named = given.filter((word) => word in parts);
  const folder = await buildApp('bench');
  const measured: Part[] = [];
  for (const [name, measure] of Object.entries(parts)) {
    if (named.length > 0 && !named.includes(name)) continue;
    console.info(`… ${name}`);
    measured.push(await measure(folder));
  }
  await removeTemporaryFolders();
  const before: readonly Part[] | undefined =
    beside === undefined ? undefined : JSON.parse(readFileSync(beside, 'utf8'));
  console.info(`\n${tableOf(measured, before)}\n`);
  const missed = measured.flatMap(({ figures }) => figures.filter((figure) => !isMet(figure)));
  for (const { name } of missed) console.info(`aim missed: ${name}`);
  if (json !== undefined) writeFileSync(json, JSON.stringify(measured, null, 1));
}

function valueOf(given: readonly string[], flag: string): string | undefined {
  const at = given.indexOf(flag);
  return at < 0 ? undefined : given[at + 1];
}
