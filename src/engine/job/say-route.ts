import type { RouteFault, RouteNext, RoutePlace, RouteRow } from './route.ts';
import { sayStillToGet } from './say-get.ts';

export const PLACE_NAMES: Readonly<Record<RoutePlace, string>> = {
  measure: 'Measure',
  decide: 'Decide',
  cut: 'Cut',
  get: 'Get',
  prove: 'Prove',
  'put-together': 'Put together',
  sheet: 'Sheet',
};

const FAULT_WORDS: Readonly<Record<RoutePlace, Partial<Record<RouteFault, string>>>> = {
  measure: { unproved: 'readings contradict each other' },
  decide: { wrong: 'no good', unproved: 'too close to call' },
  cut: { wrong: 'past its limit', stale: 'older than its sizes' },
  get: {},
  prove: { wrong: 'failed', stale: 'read before a size changed', unproved: 'too close to call' },
  'put-together': { stale: 'to be done again' },
  sheet: { stale: 'changed since it was signed' },
};

/** What is wrong in a place, in two or three words. */
export function sayRouteFault({ place, fault }: Pick<RouteRow, 'place' | 'fault'>): string | undefined {
  return fault && FAULT_WORDS[place][fault];
}

/** What a screen reader hears of a row's mark: `2 of 3 open`. */
export function sayRouteMark({ place, stands, count, open }: RouteRow): string {
  if (place === 'get' && count > 0) return sayStillToGet(open);
  switch (stands) {
    case 'done':
      return 'done';
    case 'open':
      return count === 0 ? 'open' : `${open} of ${count} open`;
    case 'not-begun':
      return count === 0 ? 'not begun' : `${count} open`;
    default:
      return stands satisfies never;
  }
}

/** The next act in words: what, what more is to be known of it, and the words of its key. */
export type SaidNext = { readonly what: string; readonly more: string; readonly key: string };

type OfOne = Extract<RouteNext, { readonly of: unknown }>['is'];
type OfTheJob = Exclude<RouteNext['is'], OfOne | 'get'>;

const OF_ONE: Readonly<Record<OfOne, (name: string) => SaidNext>> = {
  'check-failed': (name) => ({
    what: `${name} failed`,
    more: 'Mend what it shows, then check again.',
    key: 'To the check',
  }),
  'check-older': (name) => ({
    what: `Check ${lower(name)} again`,
    more: 'A size changed since.',
    key: 'To the check',
  }),
  check: (name) => ({ what: `Prove ${lower(name)}`, more: '', key: 'Check it' }),
  'cut-over': (name) => ({
    what: `${name}: past its limit`,
    more: 'Its page has the ways out.',
    key: 'To the cut',
  }),
  'cut-older': (what) => ({ what, more: 'Its sizes changed: take the new figures.', key: 'To the cut' }),
  cut: (what) => ({ what, more: '', key: 'To the machine' }),
  doubt: (name) => ({
    what: `${name}: two readings disagree`,
    more: 'Strike out the wrong one.',
    key: 'To the readings',
  }),
  'worksheet-lacks': (what) => ({ what, more: 'It needs a size still.', key: 'Give it' }),
  'worksheet-cut': (what) => ({ what, more: 'It asks for a cut.', key: 'To its cut' }),
  'worksheet-wrong': (what) => ({ what, more: 'It isn’t good yet.', key: 'To its answer' }),
  'new-check': (name) => ({
    what: `Prove ${lower(name)}`,
    more: 'Put its check on the list.',
    key: 'New check',
  }),
  'step-again': (what) => ({ what, more: 'Sizes changed: do it again.', key: 'To the steps' }),
  step: (what) => ({ what, more: '', key: 'Put together' }),
  recheck: (name) => ({ what: `Look again: ${lower(name)}`, more: 'It is due.', key: 'To the re-check' }),
};

const OF_THE_JOB: Readonly<Record<OfTheJob, SaidNext>> = {
  begin: { what: 'Measure the first size', more: 'or decide a joint at once', key: 'New size' },
  decide: { what: 'Decide what gives', more: 'Choose the question.', key: 'Decide' },
  steps: { what: 'Put it in order', more: 'The steps of the assembly.', key: 'Put together' },
  blockers: { what: 'See what stops the signing', more: '', key: 'Sign-off' },
  sign: { what: 'Sign it off', more: '', key: 'Sign-off' },
  'sign-again': { what: 'Sign it again', more: 'It changed since it was signed.', key: 'Sign-off' },
  nothing: { what: 'Nothing open', more: 'Signed, and no re-check is due.', key: 'Sheet' },
};

/** What is done next; a name in the middle of a sentence loses its capital. */
export function sayNext(next: RouteNext): SaidNext {
  if ('of' in next) return OF_ONE[next.is](next.of.name);
  if (next.is !== 'get') return OF_THE_JOB[next.is];
  const more = next.more === 0 ? '' : `and ${next.more} more`;
  return { what: `Get ${next.what}`, more, key: 'To the list' };
}

/** A name in the middle of a sentence; one that is a word of capitals or a figure stays. */
function lower(name: string): string {
  return /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}
