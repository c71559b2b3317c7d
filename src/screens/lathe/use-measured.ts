import { useState } from 'preact/hooks';
import { cutProgress, type CutProgress } from '../../engine/cut/cut-progress.ts';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { grownBack } from '../../engine/cut/grown-back.ts';
import type { Length } from '../../engine/length/length.ts';
import { canMeasure } from '../../engine/reading/measuring-tool.ts';
import { slipQuestion, type SlipQuestion } from '../../engine/reading/reading.ts';
import { sayGrownBack, sayOver, saySpring } from '../../engine/cut/say-cuts.ts';
import { spokenProgress } from '../../engine/cut/say-cuts-spoken.ts';
import { sayOutOfRange, saySlipQuestion } from '../../engine/reading/say-readings.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { asTyped, figure, type ShownUnit } from '../../engine/length/show.ts';
import { logPass, strikeOutPass } from '../../store/cuts.ts';
import { countedAt20 } from '../../store/read-at-20.ts';
import type { Id } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { announce, announceAtOnce, buzz } from '../common/announce.ts';
import type { TypedBy } from '../common/hands-free.ts';
import { speak } from '../common/speech.ts';
import { useStore } from '../common/store-context.ts';
import { useSizeDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { roundedEntry } from '../cuts/entry-of-length.ts';
import { warmthOfCut } from '../readings/warmth.ts';
import { useMeasuring } from '../readings/use-measuring.ts';
import { askedSince, cutBefore, type CutBefore } from './dialled.ts';
import { spokenOf } from './said-aloud.ts';
import { kindAtTheLathe, measuredPass, type LatheCut } from './use-lathe-cut.ts';

export type MeasuredSlip = {
  readonly question: SlipQuestion;
  readonly entry: Entry;
  readonly by: TypedBy;
};
/** The measurement before, which this one contradicts: metal can't have come back. */
export type Contradiction = { readonly passId: Id; readonly before: Entry; readonly now: Entry };
export type MeasuredMessage = {
  readonly sentence: string;
  readonly slip?: MeasuredSlip;
  readonly against?: Contradiction;
};

type Around = {
  /** The next figure is read out. */
  readonly isAloud: boolean;
  readonly onLogged?: (after: CutProgress) => void;
};

/** Where what is half typed of it stands. */
export function measuredKey(cutId: string): string {
  return `lathe/${cutId}/measured`;
}

/** The size just measured: half typed, asked about where it looks like a slip, logged, and what follows from it said. */
export function useMeasured(at: LatheCut, { isAloud, onLogged }: Around) {
  const store = useStore();
  const unit = useShownUnit();
  const { measuring, change: changeMeasuring } = useMeasuring(kindAtTheLathe(at.cut), {
    jobId: at.job.id,
  });
  const draftKey = measuredKey(at.cut.id);
  const draft = useSizeDraft(draftKey, measuring?.unit ?? unit);
  const [message, setMessage] = useState<MeasuredMessage>();
  const [said, sayCutBefore] = useState<CutBefore>();

  const keep = async (entry: Entry, by: TypedBy) => {
    if (at.tool && !canMeasure(at.tool, kindAtTheLathe(at.cut), entry.exact))
      return setMessage({ sentence: `${sayOutOfRange(at.tool, entry, unit)} Press Tool.` });
    const against = contradicted(at, entry);
    if (against) {
      const sizes = { before: against.before.exact, now: entry.exact };
      return setMessage({ sentence: sayGrownBack(at.cut.of, sizes, unit), against });
    }
    const typed = draft.half;
    draft.lift();
    const asked = askedSince(said ?? guessed(at, entry.exact), askedAt(at));
    const pass = {
      measured: entry,
      ...(at.tool && { tool: at.tool }),
      ...(asked && { asked: amount(asked, unit) }),
      ...warmthOfCut(at.job, at.cut, Date.now()),
    };
    const after = progressAfter(at, pass);
    const logged = await logPass(store, at.cut.id, pass, draftKey);
    if (!logged.ok) {
      draft.putBack(typed);
      return setMessage({ sentence: `${asTyped(entry)} was not logged. ${sayStore(logged.refusal)}` });
    }
    setMessage(undefined);
    sayCutBefore(undefined);
    tell({ at, after, entry, by, unit, isAloud });
    return onLogged?.(after);
  };
  const commit = async (by: TypedBy) => {
    const entry = readEntry(draft.half.typed, { unit: draft.half.unit });
    if (!entry.ok) return setMessage({ sentence: sayEntry(entry.refusal) });
    const question = slipQuestion(entry.value.exact, sizesNear(at));
    if (!question) return keep(entry.value, by);
    const sentence = saySlipQuestion(question, entry.value);
    return setMessage({ sentence, slip: { question, entry: entry.value, by } });
  };
  const typed = readEntry(draft.half.typed, { unit: draft.half.unit });
  return {
    half: draft.half,
    unit,
    tool: at.tool,
    toolIsUsual: at.toolIsUsual,
    message,
    changeMeasuring,
    setMessage,
    change: (half: typeof draft.half) => {
      setMessage(undefined);
      draft.change(half);
    },
    commit,
    /** Logs the size that was meant in a slip, or the one that was typed after all. */
    settle: async ({ question, entry, by }: MeasuredSlip, which: 'meant' | 'typed') => {
      setMessage(undefined);
      await keep(which === 'typed' ? entry : meant(question, entry), by);
    },
    /** One of two measurements that can't both be right goes: the one before is struck out, or this one is taken again. */
    settleBetween: async ({ passId, before, now }: Contradiction, wrong: 'before' | 'now') => {
      if (wrong === 'now') {
        draft.clear();
        return setMessage(undefined);
      }
      const struck = await strikeOutPass(store, at.cut.id, passId, 'measured wrong');
      return setMessage({
        sentence: struck.ok
          ? `${asTyped(before)} is struck out. ${asTyped(now)} can be logged now.`
          : sayStore(struck.refusal),
      });
    },
    /** Whether the pass on the screen was cut before: as the typed size tells, until the fitter says so. */
    cutBefore: said ?? (typed.ok ? guessed(at, typed.value.exact) : 'shown'),
    sayCutBefore,
  };
}

function contradicted({ cut, last, tool }: LatheCut, entry: Entry): Contradiction | undefined {
  if (!last) return undefined;
  const [passId, pass] = last;
  const before = { measured: pass.measured.exact, ...(pass.tool && { tool: pass.tool }) };
  const now = { measured: entry.exact, ...(tool && { tool }) };
  return grownBack({ of: cut.of, before, now }) && { passId, before: pass.measured, now: entry };
}

export function meant(question: SlipQuestion, typed: Entry): Entry {
  return roundedEntry(question.meant, typed.unit === 'thou' ? 'in' : typed.unit, 'nearest');
}

/** An amount that nobody typed, as an entry. */
export function amount(exact: Length, unit: ShownUnit): Entry {
  return { exact, typed: figure(exact, unit), unit };
}

type PassToLog = Parameters<typeof logPass>[2];

function progressAfter({ question, progress: _before, ...at }: LatheCut, pass: PassToLog): CutProgress {
  const { dialledSince: _measuredNow, ...rest } = question;
  return cutProgress({ ...rest, dial: at.dial, passes: [...question.passes, measuredPass(pass)] });
}

function askedAt({ dialled, progress }: LatheCut) {
  return { dialled, ...(progress.next && { shown: progress.next.asked }) };
}

function guessed(at: LatheCut, measured: Length): CutBefore {
  const { present } = at.progress;
  if (!present) return 'dialled';
  return cutBefore({
    of: at.cut.of,
    before: present,
    measured: countedAt20(measured, warmthOfCut(at.job, at.cut, Date.now())).exact,
    ...askedAt(at),
  });
}

function sizesNear({ cut, progress }: LatheCut): readonly Length[] {
  const blank = cut.blank ? [cut.blank.exact] : [];
  return [cut.target.exact, ...blank, ...(progress.present ? [progress.present] : [])];
}

type Telling = {
  readonly at: LatheCut;
  readonly after: CutProgress;
  readonly entry: Entry;
  readonly by: TypedBy;
  readonly unit: ShownUnit;
  readonly isAloud: boolean;
};

function tell({ at, after, entry, by, unit, isAloud }: Telling): void {
  const said = spokenOf(at, spokenProgress(after, unit, at.dialUnit));
  if (isAloud) speak(said);
  if (after.stage === 'over') {
    buzz();
    return announceAtOnce(sayOver(at.question, after, unit));
  }
  const gauge = by === 'gauge' ? ', from the gauge' : '';
  const spring = after.spring.kind === 'learnt' ? ` ${saySpring(after.spring, unit)}` : '';
  return announce(`Logged ${asTyped(entry)}${gauge}. ${said}${spring}`);
}
