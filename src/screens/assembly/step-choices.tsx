import type { AssemblyStep } from '../../store/base/records.ts';
import { changeStep } from '../../store/kept/steps.ts';
import { go, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Choice } from '../common/choice.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { originWords } from './parts-list.tsx';
import { drawsSteps } from './step-drawing.tsx';
import type { Assembly } from './use-assembly.ts';

type ChoiceProps = { readonly assembly: Assembly; readonly step: AssemblyStep };

/** Which worksheet's drawing shows how this step goes together. */
export function StepDrawingChoice({ assembly, step }: ChoiceProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const here = { at: 'step', jobId: step.jobId, stepId: step.id } as const;
  const drawn = assembly.worksheets.filter(({ kind }) => drawsSteps(kind));
  const choose = (worksheetId: string | undefined) =>
    told(changeStep(store, step.id, { worksheetId }), () => go(here));
  return (
    <Page
      title="Which drawing shows it?"
      subtitle={step.text}
      back={{ href: hrefOf(here), to: 'the step' }}
      aside={step.worksheetId !== undefined && <Button onPress={() => choose(undefined)}>Leave out</Button>}
    >
      {drawn.length === 0 && (
        <EmptyLine>
          A stack, an axle, a bushing or an insert worked out on a worksheet is drawn here.
        </EmptyLine>
      )}
      <ul>
        {drawn.map(({ id, title }) => (
          <li key={id}>
            <Row title={title} onPress={() => choose(id)} />
          </li>
        ))}
      </ul>
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}

/** Which of the job's parts go on in this step. */
export function StepPartsChoice({ assembly, step }: ChoiceProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const here = { at: 'step', jobId: step.jobId, stepId: step.id } as const;
  const toggle = (id: string) => {
    const partIds = step.partIds.includes(id)
      ? step.partIds.filter((one) => one !== id)
      : [...step.partIds, id];
    return told(changeStep(store, step.id, { partIds }));
  };
  return (
    <Page title="Which parts go on?" subtitle={step.text} back={{ href: hrefOf(here), to: 'the step' }}>
      {assembly.parts.length === 0 && <EmptyLine>The job’s parts are added on its assembly.</EmptyLine>}
      <Choice title="Parts">
        {assembly.parts.map((part) => (
          <Button key={part.id} chosen={step.partIds.includes(part.id)} onPress={() => toggle(part.id)}>
            {`${part.name}, ${originWords(part)}`}
          </Button>
        ))}
      </Choice>
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}
