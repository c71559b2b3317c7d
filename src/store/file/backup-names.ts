import type { BackupStore } from '../base/stores.ts';
import type { NamedRecord } from './backup-refusal.ts';
import { stagedBundles } from './backup-staged.ts';
import type { Store } from '../opening/open-store.ts';
import { isPlainObject } from '../base/paths.ts';
import { shownWords } from '../base/plain-words.ts';
import { isSettingKey } from '../kept/setting-schema.ts';
import { SETTING_NAMES } from '../base/setting-names.ts';

type Unnamed = {
  readonly store: BackupStore;
  readonly record: Readonly<Record<string, unknown>>;
  readonly number: number;
  readonly line: number;
};

/**
 * A record as the fitter would find it: the 14th reading of the left bore, the job called Outfit 7. It looks through the
 * file as far as it was read aside, which only a refusal has to wait for.
 */
export async function namedRecord(
  file: Store,
  { store, record, number, line }: Unnamed,
): Promise<NamedRecord> {
  const of = store === 'readings' ? await ownerOf(file, record, line) : undefined;
  if (of) return { store, line, number: of.before + 1, of: of.name };
  const name = store === 'settings' ? settingName(record) : wordsOf(record);
  return {
    store,
    line,
    number,
    ...(name === undefined ? {} : { name: shortened(name) }),
  };
}

async function ownerOf(
  file: Store,
  { featureId }: Readonly<Record<string, unknown>>,
  line: number,
): Promise<{ name: string; before: number } | undefined> {
  const name = typeof featureId === 'string' ? await nameOfFeature(file, featureId) : undefined;
  if (name === undefined) return undefined;
  let before = 0;
  for await (const entries of stagedBundles(file, 'readings'))
    before += entries.filter((one) => one.line < line && one.record['featureId'] === featureId).length;
  return { name: shortened(name), before };
}

async function nameOfFeature(file: Store, id: string): Promise<string | undefined> {
  for await (const entries of stagedBundles(file, 'features')) {
    const name = entries.find(({ record }) => record.id === id)?.record['name'];
    if (typeof name === 'string') return name;
  }
  return undefined;
}

function settingName({ id }: Readonly<Record<string, unknown>>): string | undefined {
  return typeof id === 'string' && isSettingKey(id) ? SETTING_NAMES[id] : undefined;
}

/** What a record is called on its screen: by name, title, its own words, or the tool it is about. */
function wordsOf(record: Readonly<Record<string, unknown>>): string | undefined {
  const { tool } = record;
  const words = [
    ...['name', 'title', 'text', 'what', 'note'].map((field) => record[field]),
    isPlainObject(tool) ? tool['name'] : undefined,
  ];
  return words.find((word): word is string => typeof word === 'string' && word !== '');
}

/** A name out of a file, for a sentence. */
export function shortened(name: string): string {
  const plain = name.replace(/\p{Cc}+/gu, ' ');
  return shownWords(plain.length > 60 ? `${plain.slice(0, 59)}…` : plain);
}
