import type { Entry } from '../../engine/length/entry.ts';
import { isLess, isMore, isZero, type Length } from '../../engine/length/length.ts';
import type { MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { show } from '../../engine/length/show.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import type { ToolRecord } from '../../store/base/records.ts';
import { addTool, changeTool, removeTool, toolRecords } from '../../store/kept/tools.ts';
import { go, hrefOf } from '../address.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { Button } from '../common/button.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';
import { useSizeDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { dayWords } from '../common/day-words.ts';
import { Trouble, useTold } from '../common/told.tsx';
import './shop-screen.css';
import { listed } from '../../engine/length/say-words.ts';

const FIGURES = [
  {
    name: 'mpe',
    label: 'Largest error, either way',
    ask: 'How far off may it be, either way?',
    zero: 'No tool is without error. Its paper says how far off it may be.',
  },
  {
    name: 'resolution',
    label: 'Smallest step it shows',
    ask: 'What is the smallest step it shows?',
    zero: 'A step is more than nothing.',
  },
  {
    name: 'repeatability',
    label: 'Scatter of one reading',
    ask: 'How much do its readings of one size scatter (one standard deviation)?',
    zero: 'The scatter is more than nothing: no two readings come out quite alike.',
  },
  {
    name: 'jawWidth',
    label: 'Width of the inside jaws’ flats',
    ask: 'How wide is the flat on one inside jaw?',
    zero: 'A flat is more than nothing wide.',
  },
  {
    name: 'least',
    label: 'Reads from',
    ask: 'What is the least size it reads?',
    zero: '',
  },
  {
    name: 'most',
    label: 'Reads up to',
    ask: 'What is the greatest size it reads?',
    zero: 'A tool that reads nothing is of no use here.',
  },
] as const;

type ToolFigure = (typeof FIGURES)[number];

/** One measuring tool: what it can be trusted to. Readings keep the error limit that was in force when they were taken. */
export function ToolScreen({ toolId, field }: { toolId: string; field?: string }) {
  const records = useLive('tool-records', ['tools'], toolRecords);
  const record = records?.find((one) => one.id === toolId);
  if (records && !record) return <NotHere what="tool" />;
  if (!record) return <Page title=" ">{null}</Page>;
  const asked = FIGURES.find((one) => one.name === field);
  return asked ? (
    <FigureScreen tool={record.tool} figure={asked} />
  ) : (
    <ToolForm key={record.id} record={record} />
  );
}

function ToolForm({ record }: { record: ToolRecord }) {
  const store = useStore();
  const unit = useShownUnit();
  const { tool, lastChecked } = record;
  const { trouble, told } = useTold();
  const rename = async (name: string) => name !== '' && told(changeTool(store, tool.id, { tool: { name } }));
  const copy = () => {
    const { id: _own, ...rest } = tool;
    return told(addTool(store, { ...rest, name: `${tool.name}, another` }), ({ id }) =>
      go({ at: 'tool', toolId: id }),
    );
  };
  return (
    <Page
      title={tool.name}
      subtitle={`measures ${listed(tool.measures)}`}
      back={{ href: hrefOf({ at: 'shop' }), to: 'the shop' }}
    >
      <KeptField label="Name" kept={tool.name} onWords={rename} />
      <ul>
        {FIGURES.filter(
          (one) => one.name !== 'jawWidth' || (tool.kind === 'caliper' && tool.measures.includes('bore')),
        ).map((one) => {
          const size: Length | undefined = tool[one.name];
          return (
            <li key={one.name}>
              <Row
                href={hrefOf({ at: 'tool', toolId: tool.id, field: one.name })}
                title={one.label}
                {...(size && { figure: show(size, unit) })}
                detail={one.name === 'mpe' ? tool.source : size ? undefined : 'not given'}
              />
            </li>
          );
        })}
      </ul>
      <div class="shop-part-keys">
        <Button onPress={() => told(changeTool(store, tool.id, { lastChecked: timeToKeep() }))}>
          {lastChecked === undefined ? 'Checked today' : `Checked ${dayWords(lastChecked)}; again today`}
        </Button>
        <Button onPress={() => copy()}>Another one like it</Button>
        <Button onPress={() => told(removeTool(store, tool.id), () => go({ at: 'shop' }))}>
          Remove {tool.name}
        </Button>
      </div>
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}

/** With a figure of nothing one reading would prove anything. */
function mayBeZero(tool: MeasuringTool, name: ToolFigure['name']): boolean {
  // A plug goes or doesn't: the step between two plugs is all that isn't known.
  return name === 'least' || (name === 'repeatability' && tool.kind === 'plug-gauge');
}

/** Why a figure can't be a tool's. A range runs upwards: outside it the tool is not taken for a size. */
function figureFault(tool: MeasuringTool, { name, zero }: ToolFigure, size: Length): string | undefined {
  if (isZero(size) && !mayBeZero(tool, name)) return zero;
  if (name === 'least' && tool.most && !isLess(size, tool.most))
    return 'It has to begin below the greatest size it reads.';
  if (name === 'most' && tool.least && !isMore(size, tool.least))
    return 'It has to end above the least size it reads.';
  return undefined;
}

function FigureScreen({ tool, figure }: { tool: MeasuringTool; figure: ToolFigure }) {
  const { name, label, ask } = figure;
  const store = useStore();
  const draft = useSizeDraft(`tool/${tool.id}/${name}`, useShownUnit());
  const answer = useTold();
  const here = { at: 'tool', toolId: tool.id } as const;
  const take = ({ exact }: Entry) => {
    const fault = figureFault(tool, figure, exact);
    if (fault !== undefined) return answer.say(fault);
    const changes = { tool: { [name]: exact, ...(name === 'mpe' && { source: 'your own figure' }) } };
    return answer.told(changeTool(store, tool.id, changes), () => {
      draft.clear();
      go(here);
    });
  };
  return (
    <PadScreen title={ask} subtitle={tool.name} back={{ href: hrefOf(here), to: 'the tool' }}>
      <AskedSize label={label} draft={draft} answer={answer} onSize={take} />
    </PadScreen>
  );
}
