import { useEffect, useState } from 'preact/hooks';
import type { Length, Unit } from '../../engine/length/length.ts';
import { canMeasure, type FeatureKind, type MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import type { Direction, Place } from '../../engine/reading/reading.ts';
import { usualToolFor } from '../../engine/reading/usual-tool.ts';
import type { Id, LastUsed } from '../../store/base/records.ts';
import { getSetting, putSetting } from '../../store/kept/settings.ts';
import { measuringTools } from '../../store/kept/tools.ts';
import { useLive, useStore } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';

/** How the next reading of a kind is taken: tool, unit and place, as they were the last time. */
export type Measuring = {
  readonly tool: MeasuringTool;
  /** Nobody chose it in this job: it is the shop's usual one. */
  readonly isUsual: boolean;
  readonly suited: readonly MeasuringTool[];
  readonly unit: Unit;
  readonly place?: Place;
  readonly direction?: Direction;
};

type Change = {
  readonly toolId?: string;
  readonly unit?: Unit;
  readonly place?: Place | 'none';
  readonly direction?: Direction | 'none';
};

type MeasuredIn = {
  readonly jobId: Id;
  /** About how large it is, where that is known: a tool is used only inside its range. */
  readonly size?: Length | undefined;
};

export function useMeasuring(
  kind: FeatureKind | undefined,
  { jobId, size }: MeasuredIn,
): {
  measuring: Measuring | undefined;
  /** The tools are read: without `measuring`, none in the shop can take this. */
  known: boolean;
  change: (by: Change) => void;
} {
  const store = useStore();
  const shownUnit = useShownUnit();
  const known = useLive(`measuring/${kind ?? ''}`, ['settings', 'tools'], async (from) => ({
    tools: await measuringTools(from),
    last: kind && (await getSetting(from, `lastUsed/${kind}`)),
  }));
  // What was just pressed shows at once; the store's answer follows.
  const [pressed, setPressed] = useState<LastUsed>();
  useEffect(() => setPressed(undefined), [kind]);
  if (!known || !kind) return { measuring: undefined, known: false, change: () => undefined };
  const suited = known.tools.filter((tool) => canMeasure(tool, kind, size));
  const last = pressed ?? known.last;
  const chosen = toolChosenIn(suited, { last, jobId });
  const tool = chosen ?? usualToolFor({ tools: suited, kind, unit: shownUnit });
  const measuring = tool && {
    tool,
    isUsual: chosen === undefined,
    suited,
    unit: last?.unit ?? shownUnit,
    ...(last?.place && { place: last.place }),
    ...(last?.direction && { direction: last.direction }),
  };
  const change = (by: Change) => {
    if (!measuring) return;
    const place = by.place ?? measuring.place ?? 'none';
    const direction = by.direction ?? measuring.direction ?? 'none';
    const choice =
      by.toolId === undefined
        ? {
            toolId: last?.toolId ?? measuring.tool.id,
            ...(last?.jobId !== undefined && { jobId: last.jobId }),
          }
        : { toolId: by.toolId, jobId };
    const next: LastUsed = {
      ...choice,
      unit: by.unit ?? measuring.unit,
      ...(place !== 'none' && { place }),
      ...(direction !== 'none' && { direction }),
    };
    setPressed(next);
    void putSetting(store, `lastUsed/${kind}`, next);
  };
  return { measuring, known: true, change };
}

type Chosen = { readonly last: LastUsed | undefined; readonly jobId: Id };

/** The tool that was chosen in this job, where it is among those that suit: nothing is carried over from another one. */
export function toolChosenIn(
  suited: readonly MeasuringTool[],
  { last, jobId }: Chosen,
): MeasuringTool | undefined {
  return last?.jobId === jobId ? suited.find(({ id }) => id === last.toolId) : undefined;
}
