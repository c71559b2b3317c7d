import { useEffect, useState } from 'preact/hooks';
import { decimalMark } from '../../engine/length/decimal-mark.ts';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { isZero, type Length } from '../../engine/length/length.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { asTyped, show, type ShownUnit } from '../../engine/length/show.ts';
import { canMeasure, type MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { goesInSteps, slipQuestion, type SlipQuestion } from '../../engine/reading/reading.ts';
import { sayOutOfRange, saySlipQuestion } from '../../engine/reading/say-readings.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import type { Feature, Job, ReadingRecord } from '../../store/base/records.ts';
import { sayStore } from '../../store/base/say-store.ts';
import { logReading, numberOf } from '../../store/kept/readings.ts';
import { announce } from '../common/announce.ts';
import type { TypedBy } from '../common/hands-free.ts';
import { isUnitKey, type HalfTyped } from '../common/pad-text.ts';
import { useStore } from '../common/store-context.ts';
import { useSizeDraft, type SizeDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { roundedEntry } from '../cuts/entry-of-length.ts';
import { hasDirections, hasPlaces } from './feature-kinds.ts';
import { stepFault } from './step-key.tsx';
import type { useMeasuring } from './use-measuring.ts';
import { warmthToKeep } from './warmth.ts';
import { isZeroChecked } from './zero-checks.ts';

type Measuring = NonNullable<ReturnType<typeof useMeasuring>['measuring']>;

export type ReadingAsked = {
  readonly job: Job;
  readonly feature: Feature;
  readonly readings: readonly ReadingRecord[];
  readonly measuring: Measuring | undefined;
  readonly onMeasuring: ReturnType<typeof useMeasuring>['change'];
};

export type ReadingSlip = {
  readonly question: SlipQuestion;
  readonly entry: Entry;
  readonly by: TypedBy;
};
export type ReadingMessage = { readonly sentence: string; readonly slip?: ReadingSlip };

/** The reading that is being taken: half typed, asked about where it looks like a slip, and logged. */
export function useReading(asked: ReadingAsked) {
  const { job, feature, readings, measuring, onMeasuring } = asked;
  const store = useStore();
  const unit = useShownUnit();
  const draftKey = `feature/${feature.id}`;
  const draft = useSizeDraft(draftKey, measuring?.unit ?? unit);
  const [message, setMessage] = useState<ReadingMessage>();
  const onItsWay = useOnItsWay(readings);
  const step = useStep(measuring, draft);
  const counted = readings.filter((reading) => !reading.struckOut);
  const typed = readEntry(draft.half.typed, { unit: draft.half.unit });
  const keep = async (entry: Entry, by: TypedBy, stops?: Entry) => {
    if (!measuring) return setMessage({ sentence: NO_TOOL });
    const fault = outOfRange(measuring.tool, feature, { entry, stops, unit });
    if (fault !== undefined) return setMessage({ sentence: fault });
    // Emptied at once, so that a gauge can type the next one; the stored draft goes in the transaction that logs it.
    const { half } = draft;
    draft.lift();
    setMessage(undefined);
    step.set(undefined);
    const reading = { ...readingOf({ job, feature, measuring }, entry, stops), draftKey };
    const logged = await onItsWay.until(logReading(store, reading), by);
    if (logged.ok) {
      const number = await numberOf(store, logged.value); // a gauge is quicker than the list behind this pad
      return announce(sayLogged(feature, { entry, stops, by, number }));
    }
    draft.putBack(half);
    if (stops) step.set(entry);
    return setMessage({ sentence: `${asTyped(entry)} was not logged. ${sayStore(logged.refusal)}` });
  };
  const commit = (by: TypedBy) => {
    if (!typed.ok) return setMessage({ sentence: sayEntry(typed.refusal) });
    const entry = typed.value;
    if (step.goes) {
      const fault = stepFault(feature.kind, step.goes, entry);
      return fault === undefined ? void keep(step.goes, by, entry) : setMessage({ sentence: fault });
    }
    const slip = slipAsked(counted, entry, by);
    return slip ? setMessage(slip) : void keep(entry, by);
  };
  return {
    half: draft.half,
    typed: typed.ok && draft.half.typed !== '' ? typed.value : undefined,
    counted,
    /** Whether the last of them is what the pad was last told: not while another one is on its way to the disk. */
    isLastShown: !onItsWay.isOne,
    fromGauge: onItsWay.fromGauge,
    message,
    step,
    change: (half: HalfTyped) => {
      setMessage(undefined);
      draft.change(half);
      if (isUnitKey(half, measuring?.unit)) onMeasuring({ unit: half.unit });
    },
    commit,
    /** Logs what was meant in a slip, or what was typed after all. */
    settle: ({ question, entry, by }: ReadingSlip, which: 'meant' | 'typed') =>
      keep(which === 'typed' ? entry : meantEntry(question, entry), by),
  };
}

/** What was given to be logged and is not in the list yet. */
function useOnItsWay(readings: readonly ReadingRecord[]) {
  const [given, setGiven] = useState(0);
  const [newest, setNewest] = useState<string>();
  const [fromGauge, setFromGauge] = useState<string>();
  const until = async (logging: ReturnType<typeof logReading>, by: TypedBy) => {
    setGiven((count) => count + 1);
    const logged = await logging;
    if (logged.ok) setNewest(logged.value.id);
    if (logged.ok && by === 'gauge') setFromGauge(logged.value.id);
    setGiven((count) => count - 1);
    return logged;
  };
  const isListed = newest === undefined || readings.some(({ id }) => id === newest);
  useEffect(() => {
    // Once it was seen it may go again, by an undo.
    if (isListed) setNewest(undefined);
  }, [isListed]);
  return { isOne: given > 0 || !isListed, fromGauge, until };
}

/** With leaves and plugs: the one that goes, while the one that doesn't is typed. */
function useStep(measuring: Measuring | undefined, draft: SizeDraft) {
  const [goes, set] = useState<Entry>();
  const isInSteps = measuring !== undefined && goesInSteps(measuring.tool);
  return {
    isInSteps,
    goes: isInSteps ? goes : undefined,
    set,
    /** Takes what is typed as the one that goes. */
    next: (entry: Entry) => {
      set(entry);
      draft.change({ ...draft.half, typed: '' });
    },
    back: () => {
      if (goes) draft.change({ typed: goes.typed, unit: goes.unit });
      set(undefined);
    },
  };
}

const NO_TOOL = 'No tool in Shop measures this. Put one back there first; what is typed stays here.';

type Tried = { readonly entry: Entry; readonly stops: Entry | undefined; readonly unit: ShownUnit };

/** Why the tool can't have read it. */
function outOfRange(
  tool: MeasuringTool,
  { kind }: Feature,
  { entry, stops, unit }: Tried,
): string | undefined {
  if (canMeasure(tool, kind, triedSize(tool, entry, stops))) return undefined;
  return `${sayOutOfRange(tool, entry, unit)} Press Tool.`;
}

/** What the tool's range is asked for: where no leaf goes, the one that was tried. */
function triedSize(tool: MeasuringTool, { exact }: Entry, stops: Entry | undefined): Length {
  if (!goesInSteps(tool) || !isZero(exact)) return exact;
  return stops?.exact ?? tool.least ?? exact;
}

function slipAsked(counted: readonly ReadingRecord[], entry: Entry, by: TypedBy): ReadingMessage | undefined {
  const before = counted.map(({ exact }) => exact);
  const question = slipQuestion(entry.exact, before);
  return question && { sentence: saySlipQuestion(question, entry), slip: { question, entry, by } };
}

type TakenWith = Pick<ReadingAsked, 'job' | 'feature'> & { readonly measuring: Measuring };

/** The reading as it is logged: its tool, its place, and how warm it is. */
function readingOf({ job, feature, measuring }: TakenWith, entry: Entry, stops: Entry | undefined) {
  const { tool, place, direction } = measuring;
  return {
    featureId: feature.id,
    jobId: job.id,
    entry,
    tool,
    ...(stops && { stops }),
    ...(hasPlaces(feature.kind) && place && { place }),
    ...(hasDirections(feature.kind) && direction && { direction }),
    ...warmthToKeep(job, feature, timeToKeep()),
    zeroChecked: isZeroChecked(tool.id, Date.now()),
  };
}

type Logged = Pick<Tried, 'entry' | 'stops'> & { readonly by: TypedBy; readonly number: number | undefined };

function sayLogged({ name }: Feature, { entry, stops, by, number }: Logged): string {
  const size = `${spoken(entry)}${stops ? ` goes, ${spoken(stops)} doesn’t` : ''}`;
  const which = number === undefined ? ` of ${name}` : `, reading ${number} of ${name}`;
  return `Logged ${size}${which}${by === 'gauge' ? ', from the gauge' : ''}.`;
}

/** As typed, but for a comma where every screen says a size with a point. */
function spoken(entry: Entry): string {
  return entry.typed.includes(',') && decimalMark() === '.' ? show(entry.exact, entry.unit) : asTyped(entry);
}

/** What the size would be without the slip, written out, since it was not typed so. */
export function meantEntry(question: SlipQuestion, typed: Entry): Entry {
  return roundedEntry(question.meant, typed.unit === 'thou' ? 'in' : typed.unit, 'nearest');
}
