import { cutName } from '../../engine/thread/tap-name.ts';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { featureKindOf } from '../../engine/cut/cut-progress.ts';
import { isLess, isMore } from '../../engine/length/length.ts';
import { sizeSlip, type SizeSlip } from '../../engine/reading/size-slip.ts';
import { sayGrownBack } from '../../engine/cut/say-cuts.ts';
import { figure, show, showBetween, type ShownUnit } from '../../engine/length/show.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import { lastPassOf } from '../../store/kept/cut-state.ts';
import { changeCut, type CutChanges } from '../../store/kept/cuts.ts';
import { logPass } from '../../store/kept/cut-passes.ts';
import { getJob } from '../../store/kept/jobs.ts';
import type { Cut, CutPass } from '../../store/base/records.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { Button } from '../common/button.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import type { HalfTyped } from '../common/pad-text.ts';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { useTold } from '../common/told.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { useMeasuring } from '../readings/use-measuring.ts';
import { warmthOfCut } from '../readings/warmth.ts';
import { presentSize } from './cut-now.ts';
import { grownSince } from './measured-pass.ts';
import { STATE_WORDS } from './cut-words.ts';

export type CutSize = {
  readonly name: 'blank' | 'target' | 'lower' | 'upper' | 'largestTake' | 'finishTake' | 'measured';
  readonly label: string;
  readonly ask: string;
  /** May be left out again: then the usual figure counts, or none. */
  readonly canGo?: true;
};

export const CUT_SIZES: readonly CutSize[] = [
  { name: 'blank', label: 'Blank', ask: 'What does the blank measure?', canGo: true },
  { name: 'target', label: 'Target', ask: 'Cut to which size?' },
  { name: 'lower', label: 'Good from', ask: 'Good from which size?' },
  { name: 'upper', label: 'Good to', ask: 'Good to which size?' },
  {
    name: 'largestTake',
    label: 'Largest pass',
    ask: 'How much may one pass take off the size?',
    canGo: true,
  },
  {
    name: 'finishTake',
    label: 'Left for finishing',
    ask: 'How much is left for the last two passes?',
    canGo: true,
  },
  { name: 'measured', label: 'Measured', ask: 'What does it measure now?' },
];

export function cutSizeNamed(field: string | undefined): CutSize | undefined {
  return CUT_SIZES.find(({ name }) => name === field);
}

/** One figure of a cut, by pad. */
export function CutSizeScreen({ cut, size }: { cut: Cut; size: CutSize }) {
  const { name } = size;
  return name === 'measured' ? (
    <MeasuredScreen cut={cut} size={size} />
  ) : (
    <FigureScreen cut={cut} size={size} name={name} />
  );
}

type SizeProps = { readonly cut: Cut; readonly size: CutSize };

function placeOf({ jobId, id }: Cut) {
  return { at: 'cut', jobId, cutId: id } as const;
}

function labelOf({ cut, size }: SizeProps): string {
  return `${size.label}, ${cut.part === '' ? cutName(cut) : cut.part}`;
}

type FigureProps = SizeProps & { readonly name: Exclude<CutSize['name'], 'measured'> };

/** What it is cut to, from or with. */
function FigureScreen({ cut, size, name }: FigureProps) {
  const store = useStore();
  const unit = useShownUnit();
  const draftKey = `cut/${cut.id}/${name}`;
  const draft = useSizeDraft(draftKey, unit);
  const answer = useTold();
  const given = cut[name];
  const keep = (changes: CutChanges) =>
    answer.told(changeCut(store, cut.id, changes, draftKey), () => go(placeOf(cut)));
  const take = (entry: Entry) => {
    const fault = cutFault(cut, name, entry, unit);
    return fault === undefined ? keep(figureGiven(name, entry)) : answer.say(fault);
  };
  return (
    <PadScreen
      title={size.ask}
      subtitle={cutName(cut)}
      back={{ href: hrefOf(placeOf(cut)), to: 'the cut' }}
      aside={size.canGo && given && <Button onPress={() => keep({ [name]: undefined })}>Leave out</Button>}
    >
      <AskedSize
        label={labelOf({ cut, size })}
        draft={draft}
        answer={answer}
        slip={(entry) => cutSlip(cut, name, entry)}
        onSize={take}
        resting={given && { figure: figure(given.exact, unit), unit, note: 'now' }}
      />
    </PadScreen>
  );
}

function figureGiven(name: FigureProps['name'], entry: Entry): CutChanges {
  const isLimit = name === 'lower' || name === 'upper';
  return { [name]: entry, ...(isLimit && { limitsFrom: 'your own limits', assumed: undefined }) };
}

/** What it measures now: a pass of its own, with the tool that read it and how warm it is. */
function MeasuredScreen({ cut, size }: SizeProps) {
  const store = useStore();
  const unit = useShownUnit();
  const draftKey = `cut/${cut.id}/measured`;
  const draft = useSizeDraft(draftKey, unit);
  const answer = useTold();
  const { isKnown, job, tool, isUsual } = useReadOf(cut, draft.half);
  const last = presentSize(cut);
  const take = (measured: Entry) => {
    const warmth = job && warmthOfCut(job, cut, timeToKeep());
    const pass = {
      measured,
      ...(tool && { tool }),
      ...(isUsual && { toolAssumed: true as const }),
      ...warmth,
    };
    const fault = cutFault(cut, 'measured', measured, unit) ?? grownFault(cut, pass, unit);
    if (fault !== undefined) return answer.say(fault);
    return answer.told(logPass(store, cut.id, pass, draftKey), ({ state }) => {
      announce(`Logged. ${cutName(cut)} is ${STATE_WORDS[state]}.`);
      go(placeOf(cut));
    });
  };
  // Which tool a size counts with has to be known before it can be logged.
  if (!isKnown) return <Page title=" ">{null}</Page>;
  return (
    <PadScreen
      title={size.ask}
      subtitle={tool ? `${cutName(cut)} · ${tool.name}${isUsual ? ', usual' : ''}` : cutName(cut)}
      back={{ href: hrefOf(placeOf(cut)), to: 'the cut' }}
    >
      <AskedSize
        label={labelOf({ cut, size })}
        draft={draft}
        answer={answer}
        slip={(entry) => cutSlip(cut, 'measured', entry)}
        onSize={take}
        commit="Log it"
        resting={last && { figure: figure(last.exact, unit), unit, note: 'last' }}
      />
    </PadScreen>
  );
}

/** The tool that reads what is half typed, and the job, which says how warm part and tool are: it counts as at the machine. */
function useReadOf(cut: Cut, { typed, unit }: HalfTyped) {
  const job = useLive(`job/${cut.jobId}`, ['jobs'], (from) => getJob(from, cut.jobId));
  const entry = readEntry(typed, { unit });
  const { measuring, known } = useMeasuring(featureKindOf(cut.of), {
    jobId: cut.jobId,
    size: entry.ok ? entry.value.exact : cut.target.exact,
  });
  return {
    isKnown: known && job !== undefined,
    job,
    tool: measuring?.tool,
    isUsual: measuring?.isUsual === true,
  };
}

/** Metal never comes back: one of two such measurements is wrong. */
function grownFault(cut: Cut, pass: Omit<CutPass, 'at'>, unit: ShownUnit): string | undefined {
  const last = lastPassOf(cut)?.[1];
  const sizes = last && grownSince(cut.of, last, pass);
  return sizes && `${sayGrownBack(cut.of, sizes, unit)} Measure again, or strike the one before out.`;
}

/** What a figure of a cut is held against: the cut's other sizes, all of which are about as large. */
export function cutSlip(
  cut: Pick<Cut, 'target' | 'lower' | 'upper' | 'blank'>,
  name: CutSize['name'],
  typed: Entry,
): SizeSlip | undefined {
  // A pass is no size of the part.
  if (name === 'largestTake' || name === 'finishTake') return undefined;
  const others = (['target', 'lower', 'upper', 'blank'] as const).filter((one) => one !== name);
  return sizeSlip(typed, { near: others.flatMap((one) => cut[one]?.exact ?? []) });
}

/** Why a size can't stand beside the cut's others: the target lies inside its limits. */
export function cutFault(
  cut: Pick<Cut, 'target' | 'lower' | 'upper'>,
  name: CutSize['name'],
  { exact }: Entry,
  unit: ShownUnit,
): string | undefined {
  const { target, lower, upper } = cut;
  if (name === 'target' && (isLess(exact, lower.exact) || isMore(exact, upper.exact)))
    return `The limits are ${showBetween(lower.exact, upper.exact, unit)} ${unit}. Change them first, or cut to a size between them.`;
  if (name === 'lower' && isMore(exact, target.exact))
    return `The target is ${show(target.exact, unit)}: it can’t be good only from ${show(exact, unit)}. Change the target first.`;
  if (name === 'upper' && isLess(exact, target.exact))
    return `The target is ${show(target.exact, unit)}: it can’t be good only to ${show(exact, unit)}. Change the target first.`;
  return undefined;
}
