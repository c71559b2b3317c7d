import { useState } from 'preact/hooks';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { isZero } from '../../engine/length/length.ts';
import { canMeasure, type FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { sayOutOfRange } from '../../engine/reading/say-readings.ts';
import { asTyped, type ShownUnit } from '../../engine/length/show.ts';
import type { SizeInput, TypedSize } from '../../store/base/records.ts';
import { measuringTools } from '../../store/kept/tools.ts';
import { Button } from '../common/button.tsx';
import type { HalfTyped } from '../common/pad-text.ts';
import { useLive } from '../common/store-context.ts';
import { ToolOfSizeChoice, toolKept, toolOfSizeWords, useToolOfSize } from '../worksheets/tool-of-size.tsx';

type Asked = {
  /** Only what lies in a stack is judged by its band: of a tap's size nobody asks what read it. */
  readonly isThickness: boolean;
  readonly half: HalfTyped;
  readonly unit: ShownUnit;
  /** What stands there now. */
  readonly now?: SizeInput | undefined;
};

const KIND: FeatureKind = 'length';

/**
 * What a shim's or washer's thickness was read with: the usual caliper until another is chosen. It stays with the piece, and
 * goes into the stack with it.
 */
export function useThicknessTool({ isThickness, half, unit, now }: Asked) {
  const tools = useLive('tools', ['tools'], measuringTools);
  const [isChoosing, setChoosing] = useState(false);
  const entry = readEntry(half.typed, { unit: half.unit });
  const size = entry.ok ? entry.value.exact : undefined;
  const data = { tools: tools ?? [], unit };
  const { toolFor, choose } = useToolOfSize({ data, kind: isThickness ? KIND : undefined, now });
  const shown = toolFor(size);
  const key = tools && shown && (
    <div class="size-entry-extras">
      <Button label={`Read with: ${toolOfSizeWords(shown, unit)}`} onPress={() => setChoosing(true)}>
        {toolOfSizeWords(shown, unit)}
      </Button>
    </div>
  );
  const choice = shown && isChoosing && (
    <ToolOfSizeChoice
      data={data}
      kind={KIND}
      size={size}
      tool={shown}
      onBack={() => setChoosing(false)}
      onChoose={(toolId) => {
        choose(toolId);
        setChoosing(false);
      }}
    />
  );
  return {
    key,
    // Which tool it counts with has to be known before it can be taken.
    instead: isThickness && !tools ? <div aria-busy="true" /> : choice,
    /** Why this size can't be a piece's, or can't be taken as read with that tool. */
    fault: (given: Entry): string | undefined => {
      if (isZero(given.exact)) return 'A size is more than nothing.';
      const tool = toolFor(given.exact);
      if (tool?.by === 'none') return `No tool in Shop reads ${asTyped(given)}. Choose how it is known.`;
      if (tool?.by === 'tool' && !canMeasure(tool.tool, KIND, given.exact))
        return sayOutOfRange(tool.tool, given, unit);
      return undefined;
    },
    sizeOf: (given: Entry): TypedSize => ({ from: 'typed', ...given, ...toolKept(toolFor(given.exact)) }),
  };
}
