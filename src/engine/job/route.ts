import type { CheckFound } from '../reading/check.ts';
import type { WorksheetFound } from './sign-off-question.ts';

/** The stations of a job, in the order of the work. */
export const routePlaces = ['measure', 'decide', 'cut', 'get', 'prove', 'put-together', 'sheet'] as const;
export type RoutePlace = (typeof routePlaces)[number];

type Named = { readonly id: string; readonly name: string };

/** A job as the route sees it: what is there, and how each of it stands. */
export type RouteQuestion = {
  /** Sizes that were read; `doubted` holds readings that contradict each other, `ofAnother` was read on another part only. */
  readonly sizes: readonly (Named & { readonly doubted: boolean; readonly ofAnother?: boolean })[];
  readonly worksheets: readonly (Named & {
    readonly found: WorksheetFound;
    /** It asks for a cut that isn't on the list yet. */
    readonly asksForCut: boolean;
  })[];
  readonly cuts: readonly (Named & {
    readonly state: 'to-cut' | 'cutting' | 'to-size' | 'over' | 'scrapped' | 'made-again';
    /** A hole that is drilled and not measured: what is still to be drilled comes before it. */
    readonly made?: unknown;
    readonly older: boolean;
  })[];
  readonly gets: readonly { readonly what: string; readonly isThere: boolean }[];
  /** `older`: limits or reading are from before a size changed. */
  readonly checks: readonly (Named & { readonly found: CheckFound; readonly older: boolean })[];
  /** Worksheets that offer checks of which none was made. */
  readonly unchecked: readonly Named[];
  readonly steps: readonly (Named & { readonly done: boolean; readonly changed: boolean })[];
  /** What stands in the way of signing. */
  readonly blockers: number;
  /** Signed off; `changed` where the job stands otherwise since. */
  readonly signed?: { readonly changed: boolean };
  readonly rechecksDue: readonly Named[];
};

/** What is worst in a place: wrong before stale before unproved. */
export type RouteFault = 'wrong' | 'stale' | 'unproved';

export type RouteRow = {
  readonly place: RoutePlace;
  /** Nothing left to do, some of it done, or not begun. */
  readonly stands: 'done' | 'open' | 'not-begun';
  readonly count: number;
  /** How many of them still want something. */
  readonly open: number;
  readonly fault?: RouteFault;
};

/** The next act, and what it is about. */
export type RouteNext =
  | { readonly is: 'check-failed' | 'check-older' | 'check'; readonly of: Named }
  | { readonly is: 'cut-over' | 'cut-older' | 'cut'; readonly of: Named }
  | { readonly is: 'doubt'; readonly of: Named }
  | { readonly is: 'worksheet-lacks' | 'worksheet-cut' | 'worksheet-wrong' | 'new-check'; readonly of: Named }
  | { readonly is: 'get'; readonly what: string; readonly more: number }
  | { readonly is: 'step-again' | 'step'; readonly of: Named }
  | { readonly is: 'recheck'; readonly of: Named }
  | { readonly is: 'begin' | 'decide' | 'steps' | 'blockers' | 'sign' | 'sign-again' | 'nothing' };

export type Route = { readonly rows: readonly RouteRow[]; readonly next: RouteNext };

/**
 * A job as the order of the work: how each place stands, and the one next act.
 *
 * Range:   what is wrong comes before what is open, what is open in the order of the work. Cuts that were scrapped or made
 *          again count no more. A job that only needs signing says so; one that is signed asks for its re-checks.
 */
export function route(q: RouteQuestion): Route {
  const rows = [measured(q), decided(q), cutRow(q), got(q), proved(q), putTogether(q), sheet(q)];
  return { rows, next: nextOf(q) };
}

type Tally = { readonly count: number; readonly open: number; readonly fault?: RouteFault | undefined };

function row(place: RoutePlace, { count, open, fault }: Tally): RouteRow {
  const stands = count === 0 || open === count ? 'not-begun' : open === 0 ? 'done' : 'open';
  return {
    place,
    stands: fault ? 'open' : stands,
    count,
    open,
    ...(fault && { fault }),
  };
}

function measured({ sizes }: RouteQuestion): RouteRow {
  const open = sizes.filter(({ doubted, ofAnother }) => doubted || ofAnother).length;
  const fault = sizes.some(({ doubted }) => doubted) ? 'unproved' : undefined;
  return row('measure', { count: sizes.length, open, fault });
}

function decided({ worksheets }: RouteQuestion): RouteRow {
  const isOpen = ({ found, asksForCut }: RouteQuestion['worksheets'][number]) =>
    asksForCut || found === 'no-good' || found === 'too-close' || found === 'no-answer';
  return row('decide', {
    count: worksheets.length,
    open: worksheets.filter(isOpen).length,
    fault: worksheets.some(({ found }) => found === 'no-good')
      ? 'wrong'
      : worksheets.some(({ found }) => found === 'too-close')
        ? 'unproved'
        : undefined,
  });
}

function counting({ cuts }: RouteQuestion) {
  return cuts.filter(({ state }) => state !== 'scrapped' && state !== 'made-again');
}

function cutRow(q: RouteQuestion): RouteRow {
  const cuts = counting(q);
  return row('cut', {
    count: cuts.length,
    open: cuts.filter(({ state, older }) => state !== 'to-size' || older).length,
    fault: cuts.some(({ state }) => state === 'over')
      ? 'wrong'
      : cuts.some(({ older }) => older)
        ? 'stale'
        : undefined,
  });
}

function got({ gets }: RouteQuestion): RouteRow {
  return row('get', { count: gets.length, open: gets.filter(({ isThere }) => !isThere).length });
}

function proved({ checks, unchecked }: RouteQuestion): RouteRow {
  return row('prove', {
    count: checks.length + unchecked.length,
    open: checks.filter(({ found, older }) => found !== 'good' || older).length + unchecked.length,
    fault: checks.some(({ found, older }) => found === 'no-good' && !older)
      ? 'wrong'
      : checks.some(({ older }) => older)
        ? 'stale'
        : checks.some(({ found }) => found === 'too-close')
          ? 'unproved'
          : undefined,
  });
}

function putTogether({ steps }: RouteQuestion): RouteRow {
  return row('put-together', {
    count: steps.length,
    open: steps.filter(({ done, changed }) => !done || changed).length,
    fault: steps.some(({ changed }) => changed) ? 'stale' : undefined,
  });
}

function sheet({ signed }: RouteQuestion): RouteRow {
  if (!signed) return { place: 'sheet', stands: 'not-begun', count: 0, open: 0 };
  return signed.changed
    ? { place: 'sheet', stands: 'open', count: 0, open: 1, fault: 'stale' }
    : { place: 'sheet', stands: 'done', count: 0, open: 0 };
}

/** What is wrong first, then what is open in the order of the work. */
function nextOf(q: RouteQuestion): RouteNext {
  return wrongNext(q) ?? workNext(q) ?? endNext(q);
}

function wrongNext(q: RouteQuestion): RouteNext | undefined {
  const failed = q.checks.find(({ found, older }) => found === 'no-good' && !older);
  if (failed) return { is: 'check-failed', of: failed };
  const over = counting(q).find(({ state }) => state === 'over');
  if (over) return { is: 'cut-over', of: over };
  const older = counting(q).find((cut) => cut.older);
  if (older) return { is: 'cut-older', of: older };
  const doubted = q.sizes.find((size) => size.doubted);
  if (doubted) return { is: 'doubt', of: doubted };
  const again = q.steps.find(({ changed }) => changed);
  return again && { is: 'step-again', of: again };
}

function workNext(q: RouteQuestion): RouteNext | undefined {
  const { worksheets, checks, gets } = q;
  if (worksheets.length === 0) {
    if (q.cuts.length + checks.length + q.steps.length === 0)
      return { is: q.sizes.length === 0 ? 'begin' : 'decide' };
  }
  const cuts = counting(q);
  const next =
    cuts.find(({ state, made }) => state === 'cutting' && !made) ??
    cuts.find(({ state }) => state === 'to-cut') ??
    cuts.find(({ state }) => state === 'cutting');
  if (next) return { is: 'cut', of: next };
  const lacks = worksheets.find(({ found }) => found === 'no-answer');
  if (lacks) return { is: 'worksheet-lacks', of: lacks };
  const asks = worksheets.find(({ asksForCut }) => asksForCut);
  if (asks) return { is: 'worksheet-cut', of: asks };
  const wrong = worksheets.find(({ found }) => found === 'no-good' || found === 'too-close');
  if (wrong) return { is: 'worksheet-wrong', of: wrong };
  const [missing, ...more] = gets.filter(({ isThere }) => !isThere);
  if (missing) return { is: 'get', what: missing.what, more: more.length };
  return proveNext(q);
}

function proveNext({ checks, unchecked, steps }: RouteQuestion): RouteNext | undefined {
  const stale = checks.find(({ older }) => older);
  if (stale) return { is: 'check-older', of: stale };
  const open = checks.find(({ found }) => found !== 'good');
  if (open) return { is: 'check', of: open };
  const [without] = unchecked;
  if (without) return { is: 'new-check', of: without };
  const step = steps.find(({ done }) => !done);
  return step && { is: 'step', of: step };
}

function endNext({ signed, steps, blockers, rechecksDue }: RouteQuestion): RouteNext {
  const [due] = rechecksDue;
  if (signed && !signed.changed) return due ? { is: 'recheck', of: due } : { is: 'nothing' };
  if (steps.length === 0 && !signed) return { is: 'steps' };
  if (blockers > 0) return { is: 'blockers' };
  return { is: signed ? 'sign-again' : 'sign' };
}
