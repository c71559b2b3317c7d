import { inPoints } from '../../engine/length/decimal-text.ts';
import { useState } from 'preact/hooks';
import { cutProgress, type CutProgress } from '../../engine/cut/cut-progress.ts';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import type { Length } from '../../engine/length/length.ts';
import { canMeasure } from '../../engine/reading/measuring-tool.ts';
import { slipQuestion, type SlipQuestion } from '../../engine/reading/reading.ts';
import { sayOnCrests } from '../../engine/cut/say-threading.ts';
import { threadingOf } from '../cuts/cut-words.ts';
import { sayGrownBack, sayOver, saySpring } from '../../engine/cut/say-cuts.ts';
import { spokenProgress } from '../../engine/cut/say-cuts-spoken.ts';
import { sayOutOfRange, saySlipQuestion } from '../../engine/reading/say-readings.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { asTyped, figure, type ShownUnit } from '../../engine/length/show.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import { logPass, strikeOutPass } from '../../store/kept/cut-passes.ts';
import { countedAt20 } from '../../store/kept/read-at-20.ts';
import type { Id } from '../../store/base/records.ts';
import { sayStore } from '../../store/base/say-store.ts';
import { announce, announceAtOnce, buzz } from '../common/announce.ts';
import type { TypedBy } from '../common/hands-free.ts';
import type { HalfTyped } from '../common/pad-text.ts';
import { speak } from '../common/speech.ts';
import { useStore } from '../common/store-context.ts';
import { useSizeDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { roundedEntry } from '../cuts/entry-of-length.ts';
import { warmthOfCut } from '../readings/warmth.ts';
import { useMeasuring } from '../readings/use-measuring.ts';
import { askedSince, cutBefore, type CutBefore } from './dialled.ts';
import { spokenOf } from './said-aloud.ts';
import { kindAtTheLathe, type LatheCut } from './use-lathe-cut.ts';
import { grownSince, measuredPass } from '../cuts/measured-pass.ts';

export type MeasuredSlip = {
  readonly question: SlipQuestion;
  readonly entry: Entry;
  readonly by: TypedBy;
};
/** The measurement before, which this one contradicts: metal can't have come back. */
export type Contradiction = {
  readonly passId: Id;
  readonly before: Entry;
  readonly now: Entry;
  /** Both as they are at 20 °C. */
  readonly at20: { readonly before: Length; readonly now: Length };
};
export type MeasuredMessage = {
  readonly sentence: string;
  readonly slip?: MeasuredSlip;
  readonly against?: Contradiction;
};

type HowSaid = {
  /** The next figure is read out. */
  readonly isAloud: boolean;
  readonly onLogged?: (after: CutProgress) => void;
};

/** Where what is half typed of it stands. */
export function measuredKey(cutId: string): string {
  return `lathe/${cutId}/measured`;
}

/** What is half typed of the size just measured, what is asked about it, and what was cut before it. */
function useHalfMeasured(at: LatheCut) {
  const shown = useShownUnit();
  const { measuring, change: changeMeasuring } = useMeasuring(kindAtTheLathe(at.cut), {
    jobId: at.job.id,
  });
  const draftKey = measuredKey(at.cut.id);
  const draft = useSizeDraft(draftKey, measuring?.unit ?? shown);
  const [message, setMessage] = useState<MeasuredMessage>();
  const [said, sayCutBefore] = useState<CutBefore>();
  const change = (half: HalfTyped) => {
    setMessage(undefined);
    draft.change(half);
  };
  return { shown, draftKey, draft, change, message, setMessage, said, sayCutBefore, changeMeasuring };
}

/** The size just measured: half typed, asked about where it looks like a slip, logged, and what follows from it said. */
export function useMeasured(at: LatheCut, { isAloud, onLogged }: HowSaid) {
  const store = useStore();
  const typing = useHalfMeasured(at);
  const { shown: unit, draftKey, draft, change, message, setMessage, said, sayCutBefore } = typing;
  const keep = async (entry: Entry, by: TypedBy) => {
    const against = whyNot(at, entry, unit);
    if (against) return setMessage(against);
    const typed = draft.half;
    draft.lift();
    const pass = passOf(at, entry, { said, unit });
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
  const typed = readEntry(draft.half.typed, { unit: draft.half.unit });
  const commit = async (by: TypedBy) => {
    if (!typed.ok) return setMessage({ sentence: sayEntry(typed.refusal) });
    const slip = slipAsked(at, typed.value, by);
    return slip ? setMessage(slip) : keep(typed.value, by);
  };
  const strikeOutBefore = async ({ passId, before, now }: Contradiction) => {
    const struck = await strikeOutPass(store, at.cut.id, passId, 'measured wrong');
    const canBe = `${asTyped(before)} is struck out. ${asTyped(now)} can be logged now.`;
    setMessage({ sentence: struck.ok ? canBe : sayStore(struck.refusal) });
  };
  return {
    half: draft.half,
    unit,
    tool: at.tool,
    toolIsUsual: at.toolIsUsual,
    message,
    changeMeasuring: typing.changeMeasuring,
    change,
    commit,
    /** Logs the size that was meant in a slip, or the one that was typed after all. */
    settle: async ({ question, entry, by }: MeasuredSlip, which: 'meant' | 'typed') => {
      setMessage(undefined);
      await keep(which === 'typed' ? entry : meant(question, entry), by);
    },
    /** One of two measurements that can't both be right goes: the one before is struck out, or this one is taken again. */
    settleBetween: async (against: Contradiction, wrong: 'before' | 'now') => {
      if (wrong === 'before') return strikeOutBefore(against);
      draft.clear();
      return setMessage(undefined);
    },
    /** Whether the pass on the screen was cut before: as the typed size tells, until the fitter says so. */
    cutBefore: said ?? (typed.ok ? guessed(at, typed.value.exact) : 'shown'),
    sayCutBefore,
  };
}

/** Why a size can't be logged: its tool can't have read it, or metal would have come back. */
function whyNot(at: LatheCut, entry: Entry, unit: ShownUnit): MeasuredMessage | undefined {
  if (at.tool && !canMeasure(at.tool, kindAtTheLathe(at.cut), entry.exact))
    return { sentence: `${sayOutOfRange(at.tool, entry, unit)} Press Tool.` };
  const { blank } = at.cut;
  const threading = threadingOf(at.cut);
  const onCrests =
    threading && blank ? sayOnCrests(threading, { from: blank.exact, measured: entry.exact }, unit) : '';
  if (onCrests !== '') return { sentence: onCrests };
  const against = contradicted(at, entry);
  return against && { sentence: sayGrownBack(at.cut.of, against.at20, unit), against };
}

function slipAsked(at: LatheCut, entry: Entry, by: TypedBy): MeasuredMessage | undefined {
  const question = slipQuestion(entry.exact, sizesNear(at));
  return question && { sentence: saySlipQuestion(question, entry), slip: { question, entry, by } };
}

type Beside = { readonly said: CutBefore | undefined; readonly unit: ShownUnit };

/** The measurement as it is logged: with the tool that read it, what the dial was asked for before it, and how warm it is. */
function passOf(at: LatheCut, entry: Entry, { said, unit }: Beside): PassToLog {
  const asked = askedSince(said ?? guessed(at, entry.exact), askedAt(at));
  return {
    measured: entry,
    ...(at.tool && { tool: at.tool }),
    ...(at.toolIsUsual && { toolAssumed: true as const }),
    ...(asked && { asked: amount(asked, unit) }),
    ...warmthOfCut(at.job, at.cut, timeToKeep()),
  };
}

function contradicted({ job, cut, last, tool }: LatheCut, entry: Entry): Contradiction | undefined {
  if (!last) return undefined;
  const [passId, pass] = last;
  const now = { measured: entry, ...(tool && { tool }), ...warmthOfCut(job, cut, timeToKeep()) };
  const at20 = grownSince(cut.of, pass, now);
  return at20 && { passId, before: pass.measured, now: entry, at20 };
}

export function meant(question: SlipQuestion, typed: Entry): Entry {
  return roundedEntry(question.meant, typed.unit === 'thou' ? 'in' : typed.unit, 'nearest');
}

/** An amount that nobody typed, as an entry. */
export function amount(exact: Length, unit: ShownUnit): Entry {
  return { exact, typed: inPoints(() => figure(exact, unit)), unit };
}

type PassToLog = Parameters<typeof logPass>[2];

function progressAfter({ question, progress: _before, ...at }: LatheCut, pass: PassToLog): CutProgress {
  const { dialledSince: _measuredNow, ...rest } = question;
  return cutProgress({
    ...rest,
    dial: at.dial,
    passes: [...question.passes, measuredPass(pass, at.cut.material)],
  });
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
    measured: countedAt20(measured, warmthOfCut(at.job, at.cut, timeToKeep())).exact,
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
