import { cutName } from '../../engine/thread/tap-name.ts';
import { useState } from 'preact/hooks';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { featureKindOf } from '../../engine/cut/cut-progress.ts';
import { grownBack } from '../../engine/cut/grown-back.ts';
import { isLess, isMore } from '../../engine/length/length.ts';
import type { MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { sayGrownBack } from '../../engine/cut/say-cuts.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { figure, show, showBetween, type ShownUnit } from '../../engine/length/show.ts';
import { passesOf } from '../../store/cut-state.ts';
import { changeCut, logPass } from '../../store/cuts.ts';
import type { Cut } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import type { StoreResult } from '../../store/store-refusal.ts';
import type { Store } from '../../store/open-store.ts';
import { go, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { useStore } from '../common/store-context.ts';
import { useSizeDraft } from '../common/use-draft.ts';
import { usePadSize, useShownUnit } from '../common/use-settings.ts';
import { useMeasuring } from '../readings/use-measuring.ts';
import { presentSize } from './cut-now.ts';
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
  const store = useStore();
  const unit = useShownUnit();
  const padSize = usePadSize();
  const { name, label, ask, canGo } = size;
  const draftKey = `cut/${cut.id}/${name}`;
  const draft = useSizeDraft(draftKey, unit);
  const [trouble, setTrouble] = useState<string>();
  const here = { at: 'cut', jobId: cut.jobId, cutId: cut.id } as const;
  const kind = featureKindOf(cut.of);
  const typed = readEntry(draft.half.typed, { unit: draft.half.unit });
  const measures = typed.ok ? typed.value.exact : cut.target.exact;
  const { measuring, known } = useMeasuring(kind, { jobId: cut.jobId, size: measures });
  const tool = name === 'measured' ? measuring?.tool : undefined;
  const onward = (done: StoreResult<Cut>) => {
    if (!done.ok) return setTrouble(sayStore(done.refusal));
    if (name === 'measured') announce(`Logged. ${cutName(cut)} is ${STATE_WORDS[done.value.state]}.`);
    return go(here);
  };
  const commit = async () => {
    const entry = readEntry(draft.half.typed, { unit: draft.half.unit });
    if (!entry.ok) return setTrouble(sayEntry(entry.refusal));
    const fault =
      cutFault(cut, name, entry.value, unit) ??
      (name === 'measured' ? grownFault(cut, { now: entry.value, tool }, unit) : undefined);
    if (fault !== undefined) return setTrouble(fault);
    if (name === 'measured')
      return onward(await logPass(store, cut.id, { measured: entry.value, ...(tool && { tool }) }, draftKey));
    return onward(await kept(store, cut, name, entry.value, draftKey));
  };
  const leaveOut = async () => onward(await changeCut(store, cut.id, { [name]: undefined }, draftKey));
  const given = name === 'measured' ? presentSize(cut) : cut[name];
  // Which tool a size counts with has to be known before it can be logged.
  if (name === 'measured' && !known) return <Page title=" ">{null}</Page>;
  return (
    <div class="pad-screen">
      <Page
        title={ask}
        subtitle={
          tool ? `${cutName(cut)} · ${tool.name}${measuring?.isUsual ? ', usual' : ''}` : cutName(cut)
        }
        back={{ href: hrefOf(here), to: 'the cut' }}
        aside={canGo && given && <Button onPress={() => leaveOut()}>Leave out</Button>}
      >
        <div class="size-entry">
          <SizePad
            label={`${label}, ${cut.part === '' ? cutName(cut) : cut.part}`}
            half={draft.half}
            padSize={padSize}
            {...(given && {
              resting: {
                figure: figure(given.exact, unit),
                unit,
                note: name === 'measured' ? 'last' : 'now',
              },
            })}
            onChange={(half) => {
              setTrouble(undefined);
              draft.change(half);
            }}
            commit={{ text: name === 'measured' ? 'Log it' : 'Use it', onPress: () => commit() }}
            {...(trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
          />
        </div>
      </Page>
    </div>
  );
}

async function kept(
  store: Store,
  cut: Cut,
  name: Exclude<CutSize['name'], 'measured'>,
  entry: Entry,
  draftKey: string,
): Promise<StoreResult<Cut>> {
  const ownLimits = (name === 'lower' || name === 'upper') && {
    limitsFrom: 'your own limits',
    assumed: undefined,
  };
  return changeCut(store, cut.id, { [name]: entry, ...ownLimits }, draftKey);
}

type Now = { readonly now: Entry; readonly tool: MeasuringTool | undefined };

/** Metal never comes back: one of two such measurements is wrong. */
function grownFault(cut: Cut, { now, tool }: Now, unit: ShownUnit): string | undefined {
  const last = passesOf(cut).findLast(([, pass]) => !pass.struckOut)?.[1];
  if (!last) return undefined;
  const before = { measured: last.measured.exact, ...(last.tool && { tool: last.tool }) };
  const measured = { measured: now.exact, ...(tool && { tool }) };
  if (!grownBack({ of: cut.of, before, now: measured })) return undefined;
  const sizes = { before: last.measured.exact, now: now.exact };
  return `${sayGrownBack(cut.of, sizes, unit)} Measure again, or strike the one before out.`;
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
