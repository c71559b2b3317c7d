import type { AssemblyStep } from '../../store/base/records.ts';
import { changeStep, removeStep } from '../../store/kept/steps.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { OlderMark } from '../older/older-mark.tsx';
import { basisNow } from '../worksheets/new-cuts.ts';
import { useWorksheetData } from '../worksheets/use-worksheet-data.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { areWordsOlder, wordedNow } from './step-standing.ts';

type StepOlderProps = {
  readonly step: AssemblyStep;
  readonly worksheetId: string;
  /** The mark stands above it already. */
  readonly isMarked?: boolean;
};

/** Said where a step names a size that is another one by now, with the one press that brings the new words. */
export function StepOlder({ step, worksheetId, isMarked = false }: StepOlderProps) {
  const { data } = useWorksheetData(step.jobId, worksheetId);
  if (!data) return null;
  const { features, readings, worksheet } = data;
  if (!areWordsOlder(step, { worksheets: [worksheet], features, readings }, data)) return null;
  return <Older step={step} data={data} isMarked={isMarked} />;
}

type OlderProps = {
  readonly step: AssemblyStep;
  readonly data: WorksheetData;
  readonly isMarked: boolean;
};

function Older({ step, data, isMarked }: OlderProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const now = wordedNow(step, data);
  const { workedOut } = step;
  const take = () =>
    now &&
    workedOut &&
    told(
      changeStep(store, step.id, {
        text: now.text,
        orientation: now.orientation,
        workedOut: { ...workedOut, basis: basisNow(data) },
      }),
      () => announce('The new words are taken over.'),
    );
  return (
    <div class="step-card-older">
      {!isMarked && <OlderMark />}
      <p>{now ? `Now: ${now.text}.` : 'The worksheet has no such step any more.'}</p>
      {now ? (
        <Button onPress={take}>Use the new words</Button>
      ) : (
        <Button onPress={() => told(removeStep(store, step.id), () => announce('The step is removed.'))}>
          Remove the step
        </Button>
      )}
      <Trouble bare>{trouble}</Trouble>
    </div>
  );
}
