import { useEffect, useState } from 'preact/hooks';
import type { Unit } from '../../engine/length.ts';
import { canMeasure, type FeatureKind, type MeasuringTool } from '../../engine/measuring-tool.ts';
import type { Direction, Place } from '../../engine/reading.ts';
import type { LastUsed } from '../../store/records.ts';
import { getSetting, putSetting } from '../../store/settings.ts';
import { measuringTools } from '../../store/tools.ts';
import { useLive, useStore } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';

/** How the next reading of a kind is taken: tool, unit and place, as they were the last time. */
export type Measuring = {
  readonly tool: MeasuringTool;
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

export function useMeasuring(kind: FeatureKind | undefined): {
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
  const suited = known.tools.filter((tool) => canMeasure(tool, kind));
  const last = pressed ?? known.last;
  const tool = suited.find((one) => one.id === last?.toolId) ?? suited[0];
  const measuring = tool && {
    tool,
    suited,
    unit: last?.unit ?? shownUnit,
    ...(last?.place && { place: last.place }),
    ...(last?.direction && { direction: last.direction }),
  };
  const change = (by: Change) => {
    if (!measuring) return;
    const place = by.place ?? measuring.place ?? 'none';
    const direction = by.direction ?? measuring.direction ?? 'none';
    const next: LastUsed = {
      toolId: by.toolId ?? measuring.tool.id,
      unit: by.unit ?? measuring.unit,
      ...(place !== 'none' && { place }),
      ...(direction !== 'none' && { direction }),
    };
    setPressed(next);
    void putSetting(store, `lastUsed/${kind}`, next);
  };
  return { measuring, known: true, change };
}
