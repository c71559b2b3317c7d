import type { Entry } from '../../engine/length/entry.ts';
import type { ToolInForce } from '../../engine/reading/measuring-tool.ts';
import type { Act } from '../opening/act.ts';
import { lastPassOf } from './cut-state.ts';
import { dialledKey, dialledSince, dialledText, MOVED } from './dialled.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { readBy } from './pass-tool.ts';
import type { Cut, CutPass, Id, ReadWarmth } from '../base/records.ts';
import { cutRecordKind } from './cut-schema.ts';
import { readDraft } from './setting-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import { inItsState, actOnCut, plainEntry } from './cuts.ts';

export type NewPass = {
  readonly measured: Entry;
  readonly tool?: ToolInForce;
  /** It is only the usual one. */
  readonly toolAssumed?: true;
  /** What the dial was asked to take off since the pass before. */
  readonly asked?: Entry;
  readonly warmth?: ReadWarmth;
};

/**
 * Logs what was measured at the machine, with the state the cut is in by it and by its limits. It is on the disk when this comes back ok,
 * and only then may the screen say "logged". As with a reading there is no undo: a wrong one is struck out.
 */
export async function logPass(
  store: Store,
  cutId: Id,
  pass: NewPass,
  draftKey?: string,
): Promise<StoreResult<Cut>> {
  const passId = newId();
  return actOnCut(store, cutId, draftKey, (a, before) => {
    const last = Math.max(0, ...Object.values(before.passes).map(({ at }) => at));
    const kept: CutPass = {
      // Behind the pass before it, also when the phone's clock was set back in between.
      at: Math.max(a.at, last + 1),
      measured: plainEntry(pass.measured),
      ...readBy(before, pass),
      ...(pass.asked && { asked: plainEntry(pass.asked) }),
      ...(pass.warmth && { warmth: pass.warmth }),
    };
    return a.change(cutRecordKind, cutId, (cut) =>
      inItsState({ ...cut, passes: { ...cut.passes, [passId]: kept }, touchedAt: a.at }),
    );
  });
}

/**
 * Strikes a measurement out, with the reason beside it. What was dialled in before it was cut all the same, so the dial
 * is asked for that much less: in the same act, as a phone that dies between the two would send the tool in too far.
 */
export async function strikeOutPass(
  store: Store,
  cutId: Id,
  passId: Id,
  why: string,
): Promise<StoreResult<Cut>> {
  return actOnCut(store, cutId, undefined, async (a, before) => {
    const pass = before.passes[passId] ?? a.refuse({ code: 'gone', store: 'cuts' });
    if (pass.struckOut) return before;
    const struck: CutPass = { ...pass, struckOut: { why, at: a.at } };
    const after = await a.change(cutRecordKind, cutId, (cut) =>
      inItsState({
        ...cut,
        passes: { ...cut.passes, [passId]: struck },
        state: cut.state === 'scrapped' || cut.state === 'made-again' ? cut.state : 'to-cut',
        touchedAt: a.at,
      }),
    );
    await dialAgain(a, { before, after, passId });
    a.undoable(`Struck out a pass of ${before.name}`, before.jobId);
    return after;
  });
}

type Struck = { readonly before: Cut; readonly after: Cut; readonly passId: Id };

async function dialAgain(a: Act, { before, after, passId }: Struck): Promise<void> {
  if (lastPassOf(before)?.[0] !== passId) return;
  const asked = before.passes[passId]?.asked;
  const since = await dialledSince(before, async (key) => readDraft(await a.kept('drafts', key)));
  const cut = [...(asked ? [asked.exact] : []), ...since];
  const keep = (key: string, typed: string) => a.putKept('drafts', { id: key, typed, unit: 'mm' });
  keep(dialledKey(before.id, lastPassOf(after)?.[0]), dialledText(cut));
  keep(dialledKey(before.id, passId), MOVED);
}
