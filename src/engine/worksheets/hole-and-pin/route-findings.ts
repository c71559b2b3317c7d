import type { RouteContext, RouteReason } from './hole-and-pin-routes.ts';

/** What one check found: it rules the route out, waits for an answer, or speaks for it. A caution is told in any case. */
export type Finding = { readonly weighs: 'out' | 'ask' | 'for' | 'caution'; readonly reason: RouteReason };

export const out = (reason: RouteReason): Finding => ({ weighs: 'out', reason });
export const ask = (reason: RouteReason): Finding => ({ weighs: 'ask', reason });
export const speaksFor = (reason: RouteReason): Finding => ({ weighs: 'for', reason });
export const caution = (reason: RouteReason): Finding => ({ weighs: 'caution', reason });

/** A hole in the wrong place stays there, whatever is done about its size. */
export function placeStays({ question: { offBy } }: RouteContext): Finding | undefined {
  return offBy && out({ code: 'place-stays', by: offBy });
}

/**
 * Why a route takes no metal at all: it would leave the hole in the wrong place, the joint fits, or its bore is too tight
 * and only has to be opened for the pin.
 */
export function noCureNeeded(context: RouteContext): Finding | undefined {
  const { verdict } = context;
  const stays = placeStays(context);
  if (stays) return stays;
  if (verdict.kind === 'good') return out({ code: 'not-needed' });
  const isTight = verdict.kind === 'no-good' && verdict.way === 'under';
  return isTight ? out({ code: 'not-for-a-tight-bore', by: verdict.by }) : undefined;
}

/** One reason against outweighs all for; an answer still wanted comes before what speaks for the route. */
export function judged(findings: readonly Finding[]): {
  readonly state: 'in' | 'out' | 'ask';
  readonly why: readonly RouteReason[];
} {
  const reasons = (...weights: readonly Finding['weighs'][]): readonly RouteReason[] =>
    weights.flatMap((weight) =>
      findings.filter(({ weighs }) => weighs === weight).map(({ reason }) => reason),
    );
  const against = reasons('out');
  if (against.length > 0) return { state: 'out', why: reasons('out', 'caution') };
  return { state: reasons('ask').length > 0 ? 'ask' : 'in', why: reasons('ask', 'for', 'caution') };
}
