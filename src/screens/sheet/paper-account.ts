import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { blocksOf, type Account, type WayBlock } from '../../engine/worksheets/account.ts';

/** What the sheet prints of an account. */
export type PaperAccount = {
  /** What it comes to, in its order; of several ways only the one that counts. */
  readonly blocks: Account;
  /** How many other ways there were: `1 other way, 4 ruled out`. */
  readonly others: string | undefined;
  /** Where its figures come from, in one line; none where nothing has a source. */
  readonly sources: string | undefined;
};

export type Chosen = {
  /** The ways to cut, and the names of this worksheet's cuts that are on the job's list. */
  readonly cutWays: readonly CutWay[];
  readonly cutNames: readonly string[];
  /** Ways that a worksheet of their own works out further. */
  readonly takenFurther: readonly string[];
};

/**
 * Results, without how they came about: that is behind Why, on the phone. Of several ways to the same end the one that was
 * gone, else the one that a worksheet of its own goes on with, else the first.
 */
export function paperAccount(account: Account, chosen: Chosen): PaperAccount {
  const ways = blocksOf(account, 'way');
  const printed = waysThatCount(ways, chosen);
  const others = ways.filter((way) => !printed.includes(way));
  const isChosen = printed.some((way) => isGone(way, chosen) || isTakenFurther(way, chosen));
  return {
    blocks: account.filter((block) => block.is !== 'way' || printed.includes(block)),
    // Which one it is to be has been decided: the others are no more use on paper.
    others: isChosen || others.length === 0 ? undefined : sayOthers(others),
    sources: saySources(sourcesOf(account, printed)),
  };
}

function waysThatCount(ways: readonly WayBlock[], chosen: Chosen): readonly WayBlock[] {
  const gone = ways.filter((way) => isGone(way, chosen));
  if (gone.length > 0) return gone;
  const further = ways.filter((way) => isTakenFurther(way, chosen));
  if (further.length > 0) return further;
  // Beside a leading figure there are only others.
  return ways
    .filter(({ rank }) => rank !== undefined)
    .toSorted((a, b) => (a.rank ?? 0) - (b.rank ?? 0))
    .slice(0, 1);
}

/** Its cuts are all on the list. */
function isGone({ cut, goes }: WayBlock, { cutWays, cutNames }: Chosen): boolean {
  const way = cutWays.find(({ id }) => id === goes);
  if (way) return way.offers.every(({ name }) => cutNames.includes(name));
  return cut !== undefined && cutNames.includes(cut);
}

function isTakenFurther({ goes }: WayBlock, { takenFurther }: Chosen): boolean {
  return goes !== undefined && takenFurther.includes(goes);
}

function sayOthers(others: readonly WayBlock[]): string {
  const out = others.filter(({ stands }) => stands === 'out').length;
  const open = others.length - out;
  const ways = (count: number) => `${count} other way${count === 1 ? '' : 's'}`;
  if (open === 0) return `${ways(out)}, ruled out`;
  return out === 0 ? ways(open) : `${ways(open)}, ${out} ruled out`;
}

/** Without those of ways that are not printed; what a longer one names already isn't said again. */
function sourcesOf(account: Account, printed: readonly WayBlock[]): readonly string[] {
  const kept = new Set(printed.map(({ goes }) => goes));
  const lines = blocksOf(account, 'why').flatMap(({ lines: all }) => all);
  const sources = lines
    .filter(({ way }) => way === undefined || kept.has(way))
    .flatMap(({ source }) => source ?? []);
  const once = [...new Set(sources)];
  return once.filter((one) => !once.some((other) => other !== one && other.includes(one)));
}

// About two lines of small print. Chosen, not published: what is longer is behind Why, on the phone.
const SOURCES_AT_MOST = 200;

/** The sources that a line has room for, and how many there are besides. */
function saySources(sources: readonly string[]): string | undefined {
  if (sources.length === 0) return undefined;
  const named: string[] = [];
  for (const one of sources) {
    if (named.length === 0 || [...named, one].join('; ').length <= SOURCES_AT_MOST) named.push(one);
  }
  const more = sources.length - named.length;
  return `${named.join('; ')}${more > 0 ? `; ${more} more behind Why` : ''}`;
}
