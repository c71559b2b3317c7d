import { counted } from './say-get.ts';

/** What a job may lack, in the order in which it is looked for. */
export const needKinds = [
  'tap',
  'drill',
  'reamer',
  'insert',
  'bolt',
  'part',
  'stock',
  'locker',
  'grease',
  'cotter-pin',
  'own',
] as const;
export type NeedKind = (typeof needKinds)[number];

/** One thing that is needed for one purpose. */
export type Need = {
  readonly kind: NeedKind;
  /** As it is asked for over a counter: "STI tap 7/16-20 UNF", "303 bar, 1 1/2 long". */
  readonly what: string;
  readonly count: number;
  /** Where it is needed: a worksheet's title, a cut's part, a step. */
  readonly purpose: string;
};

/**
 * The same as a worksheet asks for it, without its purpose. `part`: what it is made into, as its cuts name it; once one of
 * them has begun it is there.
 */
export type GetOffer = Omit<Need, 'purpose'> & { readonly part?: string | undefined };

/** One line of the list: what is the same for several purposes is got once, with the pieces counted together. */
export type GetItem = {
  /** What its tick is kept by: another size is another thing, and isn't there because the first one was. */
  readonly key: string;
  readonly kind: NeedKind;
  readonly what: string;
  readonly count: number;
  readonly purposes: readonly string[];
};

// What is used up by the drop or stays whole: one does for all.
const ONE_FOR_ALL: ReadonlySet<NeedKind> = new Set(['tap', 'drill', 'reamer', 'locker', 'grease']);

/**
 * What has to be bought or found for a job, each thing once.
 *
 * Units:   pieces.
 * Range:   a tool or a bottle is needed once however often it is used; pieces add up. In the order of `needKinds`, else as
 *          they came.
 */
export function getList(needs: readonly Need[]): readonly GetItem[] {
  const items = new Map<string, GetItem>();
  for (const { kind, what, count, purpose } of needs) {
    const key = `${kind}/${what}`;
    const before = items.get(key);
    const pieces = ONE_FOR_ALL.has(kind) ? 1 : (before?.count ?? 0) + count;
    const purposes = [...new Set([...(before?.purposes ?? []), purpose])].filter((one) => one !== '');
    items.set(key, { key: keyOf(kind, what, pieces), kind, what, count: pieces, purposes });
  }
  return [...items.values()].toSorted((a, b) => needKinds.indexOf(a.kind) - needKinds.indexOf(b.kind));
}

/** More pieces than were ticked are to be got again. */
function keyOf(kind: NeedKind, what: string, count: number): string {
  const key = `${kind}/${counted(count, what)}`;
  if (key.length <= MOST_OF_A_KEY) return key;
  // Both ends of it: sizes stand at either.
  const half = MOST_OF_A_KEY / 2;
  return `${key.slice(0, half - 1)}…${key.slice(-half)}`;
}

// As long as the name of an entry in a record may be.
const MOST_OF_A_KEY = 100;
