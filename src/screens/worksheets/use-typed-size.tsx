import { useState } from 'preact/hooks';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import type { Length } from '../../engine/length/length.ts';
import { canMeasure, type FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { sayOutOfRange } from '../../engine/reading/say-readings.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { sizeSlip, type SlipAround } from '../../engine/reading/size-slip.ts';
import { asTyped, show } from '../../engine/length/show.ts';
import type { SizeInput } from '../../store/base/records.ts';
import { announce } from '../common/announce.ts';
import type { TypedBy } from '../common/hands-free.ts';
import { afterKey, isUnitKey, type HalfTyped } from '../common/pad-text.ts';
import { SlipQuestion, type Slip } from '../common/slip-question.tsx';
import { troubleLine, useTold } from '../common/told.tsx';
import { useSizeDraft, type SizeDraft } from '../common/use-draft.ts';
import { usePadSize } from '../common/use-settings.ts';
import { useMeasuring } from '../readings/use-measuring.ts';
import { briefToolWords, toolKept, useToolOfSize, type ToolOfSize } from './tool-of-size.tsx';
import type { WorksheetData } from './worksheet-data.ts';

export type TypedSizeAsked = {
  readonly data: WorksheetData;
  readonly label: string;
  readonly draftKey: string;
  readonly measures?: FeatureKind | undefined;
  /** What stands there now: its tool stays with it until another is chosen. */
  readonly now?: SizeInput | undefined;
  readonly signed?: boolean;
  /** What it is held against, so that a slip is asked about. */
  readonly around?: SlipAround;
  /** What fit-up checks read is offered too: the size is one that is read in place. */
  readonly direct?: boolean;
  readonly onSize: (size: SizeInput, draftKey?: string) => unknown;
  /** Where a foot switch steps on to. */
  readonly onNext?: (() => unknown) | undefined;
  /**
   * The pad stays for the next size of a list: it is emptied at once, so that nothing typed meanwhile is lost, and says what
   * was typed again where that could not be kept.
   */
  readonly onOfList?: ((size: SizeInput, isLast: boolean) => Promise<boolean>) | undefined;
};

/** A size as it is typed for a worksheet: its draft, the tool it counts with, and what stands against taking it. */
export function useTypedSize(asked: TypedSizeAsked) {
  const { data, draftKey, measures, signed = false, direct = false } = asked;
  const { measuring, known, change } = useMeasuring(measures, { jobId: data.job.id });
  const draft = useSizeDraft(draftKey, measuring?.unit ?? data.unit);
  const padSize = usePadSize();
  const { toolFor, choose } = useToolOfSize({ data, kind: measures, now: asked.now });
  const typed = readEntry(draft.half.typed, { unit: draft.half.unit, signed });
  const size = typed.ok ? typed.value.exact : undefined;
  const tool = toolFor(size);
  const taking = useTaking(asked, draft, toolFor);
  const type = (half: HalfTyped) => {
    taking.drop();
    draft.change(half);
    if (measuring && isUnitKey(half, measuring.unit)) change({ unit: half.unit });
  };
  return {
    /** Which tool a size counts with has to be known before it can be taken. */
    isReady: !measures || known,
    size,
    tool,
    isAsking: taking.message !== undefined,
    /** The job's readings that could be it. */
    fitting: data.features.filter(
      ({ kind, checkId }) => kind === measures && (direct || checkId === undefined),
    ),
    isTyped: draft.half.typed !== '',
    /** What stands on the pad is the last of its list. */
    takeLast: (by: TypedBy) => taking.commit(by, true),
    takeRead: (featureId: string) => asked.onSize({ from: 'feature', featureId }, draftKey),
    choosing: useChoosing((toolId) => {
      choose(toolId);
      taking.forgive();
    }),
    ...(signed && { sign: signOf(draft) }),
    /** What the pad is handed. */
    pad: {
      label: asked.label,
      readWith: tool && briefToolWords(tool),
      half: draft.half,
      padSize,
      onChange: type,
      commit: { text: 'Use it', onPress: (by: TypedBy) => taking.commit(by) },
      onNext: asked.onNext && (() => void asked.onNext?.()),
      message: taking.message,
    },
  };
}

type ToolFor = (size: Length | undefined) => ToolOfSize | undefined;

/** What becomes of what is typed: asked about where it looks like a slip, refused where no tool can have read it, or given. */
function useTaking(asked: TypedSizeAsked, draft: SizeDraft, toolFor: ToolFor) {
  const { trouble, say } = useTold();
  const [slip, setSlip] = useState<Slip & { readonly isLast: boolean }>();
  const keep = async (given: SizeInput, isLast: boolean) => {
    if (!asked.onOfList) return asked.onSize(given, asked.draftKey);
    const { half } = draft;
    draft.lift();
    if (!(await asked.onOfList(given, isLast))) draft.putBack(half);
    return undefined;
  };
  const take = (entry: Entry, by: TypedBy, isLast: boolean) => {
    setSlip(undefined);
    const { exact, typed, unit } = entry;
    const tool = toolFor(exact);
    const fault = whyNotRead(entry, tool, asked);
    if (fault !== undefined) return say(fault);
    if (by === 'gauge') announce(`${asked.label}: ${show(exact, unit)}, from the gauge.`);
    return keep({ from: 'typed', exact, typed, unit, ...toolKept(tool) }, isLast);
  };
  const commit = (by: TypedBy, isLast = false) => {
    const { half } = draft;
    const entry = readEntry(half.typed, { unit: half.unit, signed: asked.signed === true });
    if (!entry.ok) return say(sayEntry(entry.refusal));
    const question = asked.around && sizeSlip(entry.value, asked.around);
    return question ? setSlip({ question, typed: entry.value, by, isLast }) : take(entry.value, by, isLast);
  };
  const question = slip && <SlipQuestion slip={slip} onMeant={(entry, by) => take(entry, by, slip.isLast)} />;
  return {
    commit,
    message: question ?? troubleLine(trouble),
    drop: () => {
      say('');
      setSlip(undefined);
    },
    /** Another tool may have read it. */
    forgive: () => say(''),
  };
}

/** Why the tool it would count with can't have read it. */
function whyNotRead(
  entry: Entry,
  tool: ToolOfSize | undefined,
  { measures, data }: TypedSizeAsked,
): string | undefined {
  if (tool?.by === 'none') return `No tool in Shop reads ${asTyped(entry)}. Choose how it is known.`;
  if (measures && tool?.by === 'tool' && !canMeasure(tool.tool, measures, entry.exact))
    return sayOutOfRange(tool.tool, entry, data.unit);
  return undefined;
}

/** Whether the tools stand in place of the pad. */
function useChoosing(onTool: (toolId: string) => void) {
  const [isOpen, setOpen] = useState(false);
  return {
    isOpen,
    open: () => setOpen(true),
    close: () => setOpen(false),
    choose: (toolId: string) => {
      onTool(toolId);
      setOpen(false);
    },
  };
}

function signOf({ half, change }: SizeDraft) {
  return { isBelow: half.typed.startsWith('-'), turn: () => change(afterKey(half, '-')) };
}

export type TypedSize = ReturnType<typeof useTypedSize>;
