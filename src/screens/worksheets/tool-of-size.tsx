import { useState } from 'preact/hooks';
import type { Length } from '../../engine/length/length.ts';
import {
  canHaveRead,
  canMeasure,
  type FeatureKind,
  type MeasuringTool,
} from '../../engine/reading/measuring-tool.ts';
import { show, type ShownUnit } from '../../engine/length/show.ts';
import { usualToolFor } from '../../engine/reading/usual-tool.ts';
import type { SizeInput, TypedSize } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { Row } from '../common/row.tsx';
import { rangeWords } from '../readings/tool-choice.tsx';
import type { WorksheetData } from './worksheet-data.ts';

/** What a typed size counts as read by: a tool, said for this size or the usual one; as exact; or none of the shop's. */
export type ToolOfSize =
  | { readonly by: 'tool'; readonly tool: MeasuringTool; readonly isUsual: boolean }
  | { readonly by: 'exact' }
  | { readonly by: 'none' };

type Asked = {
  readonly data: Pick<WorksheetData, 'tools' | 'unit'>;
  readonly kind: FeatureKind | undefined;
  /** What the worksheet has there already: its tool stays with it. */
  readonly now: SizeInput | undefined;
};

/** The tool of one size, chosen for that size alone; undefined for a size that nobody measures, a limit say. */
export function useToolOfSize({ data: { tools, unit }, kind, now }: Asked) {
  const [chosen, choose] = useState<string | undefined>(chosenBefore(now));
  /** For what stands on the pad, as far as it can be read. */
  const toolFor = (size: Length | undefined): ToolOfSize | undefined => {
    if (!kind) return undefined;
    if (chosen === EXACT) return { by: 'exact' };
    const named = tools.find((tool) => tool.id === chosen && canMeasure(tool, kind));
    if (named) return { by: 'tool', tool: named, isUsual: false };
    const usual = usualToolFor({ tools, kind, size, unit });
    return usual ? { by: 'tool', tool: usual, isUsual: true } : { by: 'none' };
  };
  return { toolFor, choose };
}

// No tool has this id: those of the shop are named or random.
const EXACT = 'taken as exact';

function chosenBefore(now: SizeInput | undefined): string | undefined {
  if (now?.from !== 'typed') return undefined;
  if (!now.tool) return EXACT;
  return now.toolAssumed || !canHaveRead(now.tool, now.exact) ? undefined : now.tool.id;
}

/** What is kept of it with the size. */
export function toolKept(tool: ToolOfSize | undefined): Pick<TypedSize, 'tool' | 'toolAssumed'> {
  if (tool?.by !== 'tool') return {};
  return { tool: tool.tool, ...(tool.isUsual && { toolAssumed: true }) };
}

/** On the key beside the pad. */
export function toolOfSizeWords(tool: ToolOfSize, unit: ShownUnit): string {
  switch (tool.by) {
    case 'tool':
      return `${tool.tool.name} ±${show(tool.tool.mpe, unit)}${tool.isUsual ? ', usual' : ''}`;
    case 'exact':
      return 'taken as exact';
    case 'none':
      return 'no tool reads this';
    default:
      return tool satisfies never;
  }
}

/** The same where there is hardly room: what is assumed stands first. */
export function briefToolWords(tool: ToolOfSize): string {
  switch (tool.by) {
    case 'tool':
      return tool.isUsual ? `usual: ${tool.tool.name}` : tool.tool.name;
    case 'exact':
      return 'taken as exact';
    case 'none':
      return 'no tool reads this';
    default:
      return tool satisfies never;
  }
}

/** On a key of a few letters’ width: a caliper is a caliper, whatever it shows its figure with. */
export function toolKeyWords(tool: ToolOfSize): string {
  if (tool.by !== 'tool') return tool.by === 'none' ? 'no tool' : 'as exact';
  const short = tool.tool.name.replace(/^(?:metric )?digital (?=caliper)/, '');
  return tool.isUsual ? `usual: ${short}` : short;
}

type ChoiceProps = {
  readonly data: Pick<WorksheetData, 'tools' | 'unit'>;
  readonly kind: FeatureKind;
  readonly size: Length | undefined;
  readonly tool: ToolOfSize;
  readonly onChoose: (toolId: string) => void;
  readonly onBack: () => void;
};

/** Which tool read this size: only those that can have. */
export function ToolOfSizeChoice({ data: { tools, unit }, kind, size, tool, onChoose, onBack }: ChoiceProps) {
  const able = tools.filter((one) => canMeasure(one, kind, size));
  return (
    <div class="size-entry-tools">
      <h2>{size ? `${show(size, unit)}: read with` : 'Read with'}</h2>
      <ul>
        {able.map((one) => (
          <li key={one.id}>
            <Row
              title={one.name}
              detail={`${marksOf(one, tool)}${rangeWords(one, unit)}`}
              figure={`±${show(one.mpe, unit)}`}
              onPress={() => onChoose(one.id)}
            />
          </li>
        ))}
        <li>
          <Row
            title="Not measured: taken as exact"
            detail="a figure from a drawing or a manual"
            onPress={() => onChoose(EXACT)}
          />
        </li>
      </ul>
      <div class="size-entry-extras">
        <Button onPress={onBack}>Back to the pad</Button>
        <LinkButton href={hrefOf({ at: 'shop' })}>Tools are kept in Shop</LinkButton>
      </div>
    </div>
  );
}

function marksOf(one: MeasuringTool, tool: ToolOfSize): string {
  if (tool.by !== 'tool' || tool.tool.id !== one.id) return '';
  return tool.isUsual ? 'usual · ' : 'in use · ';
}
