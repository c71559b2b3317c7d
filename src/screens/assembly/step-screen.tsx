import { otherTorques, sayTorque } from '../../engine/thread/torque.ts';
import type { AssemblyStep } from '../../store/base/records.ts';
import { changeStep, markDone, moveStep, removeStep, type StepChanges } from '../../store/kept/steps.ts';
import { go, goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { KeptField } from '../common/kept-field.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { PhotoStrip } from '../photos/photo-strip.tsx';
import { timeWords } from '../common/day-words.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { StepDrawing } from './step-drawing.tsx';
import { StepDrawingChoice, StepPartsChoice } from './step-choices.tsx';
import { StepOlder } from './step-older.tsx';
import { againWords } from './step-words.ts';
import { CureScreen, TorqueScreen, TorqueSourceScreen } from './torque-screen.tsx';
import { useAssembly, type Assembly } from './use-assembly.ts';
import './assembly-screen.css';

type StepScreenProps = { readonly jobId: string; readonly stepId: string; readonly field?: string };

/** One step: what is done, which way round, with what grease, locker and torque. */
export function StepScreen({ jobId, stepId, field }: StepScreenProps) {
  const { assembly, missing } = useAssembly(jobId);
  const step = assembly?.steps.find(({ id }) => id === stepId);
  if (missing || (assembly && !step)) return <NotHere what="step" />;
  if (!assembly || !step) return <Page title=" ">{null}</Page>;
  switch (field) {
    case 'torque':
      return <TorqueScreen step={step} />;
    case 'torque/source':
      return <TorqueSourceScreen step={step} steps={assembly.steps} />;
    case 'cure':
      return <CureScreen step={step} />;
    case 'drawing':
      return <StepDrawingChoice assembly={assembly} step={step} />;
    case 'parts':
      return <StepPartsChoice assembly={assembly} step={step} />;
    default:
      return <StepForm key={step.id} assembly={assembly} step={step} />;
  }
}

type Words = 'text' | 'orientation' | 'grease' | 'locker';

const WORDS: readonly { readonly name: Words; readonly label: string; readonly hint: string }[] = [
  { name: 'text', label: 'What is done', hint: 'Fit the brake bracket, say' },
  { name: 'orientation', label: 'Which way round', hint: 'chamfer to the hub, say' },
  { name: 'grease', label: 'Grease', hint: 'none' },
  { name: 'locker', label: 'Thread locker', hint: 'none' },
];

function StepForm({ assembly, step }: { assembly: Assembly; step: AssemblyStep }) {
  const { trouble, keep, done, move, remove } = useStep(assembly, step);
  const number = assembly.steps.indexOf(step) + 1;
  return (
    <Page
      title={`Step ${number} of ${assembly.steps.length}`}
      subtitle={step.done ? `done by ${step.done.by}, ${timeWords(step.done.at)}` : assembly.job.name}
      back={{ href: hrefOf({ at: 'assembly', jobId: step.jobId }), to: 'the assembly' }}
      {...(!step.done && {
        foot: (
          <Button kind="main" onPress={done}>
            Step done
          </Button>
        ),
      })}
    >
      <AgainNote step={step} />
      {assembly.older.has(step.id) && step.workedOut && (
        <StepOlder step={step} worksheetId={step.workedOut.worksheetId} />
      )}
      <StepWords step={step} onKeep={keep} />
      <StepRows step={step} assembly={assembly} />
      <PhotoStrip owner={{ store: 'steps', id: step.id }} jobId={step.jobId} />
      {step.worksheetId !== undefined && <StepDrawing jobId={step.jobId} worksheetId={step.worksheetId} />}
      <div class="assembly-keys">
        <Button
          chosen={step.cotterPin === true}
          onPress={() => keep({ cotterPin: step.cotterPin === true ? undefined : true })}
        >
          {step.cotterPin === true ? 'Cotter pin: yes' : 'Cotter pin: none'}
        </Button>
      </div>
      <PlaceKeys number={number} of={assembly.steps.length} onMove={move} />
      <Trouble>{trouble}</Trouble>
      <div class="assembly-keys">
        <Button onPress={remove}>Remove this step</Button>
      </div>
    </Page>
  );
}

/** What is done with a step; each is one act with its undo. */
function useStep({ steps, fitter }: Assembly, step: AssemblyStep) {
  const store = useStore();
  const { trouble, told } = useTold();
  const here = { at: 'assembly', jobId: step.jobId } as const;
  const number = steps.indexOf(step) + 1;
  const keep = (changes: StepChanges) =>
    told(changeStep(store, step.id, changes), (changed) => {
      const again = step.done ? againWords(changed) : undefined;
      if (again !== undefined) announce(again);
    });
  const done = () =>
    fitter === undefined
      ? go({ ...here, field: `fitter/step/${step.id}` })
      : void told(markDone(store, step.id, fitter), () => {
          announce(`Step ${number} done by ${fitter}`);
          go(here);
        });
  const move = (to: 'up' | 'down') =>
    void told(moveStep(store, step.id, to), () => announce(`Step ${number} moved ${to}`));
  const remove = () => told(removeStep(store, step.id), () => goInstead(here));
  return { trouble, keep, done, move, remove };
}

type StepWordsProps = {
  readonly step: AssemblyStep;
  readonly onKeep: (changes: StepChanges) => Promise<boolean>;
};

function StepWords({ step, onKeep }: StepWordsProps) {
  const write = (name: Words) => async (text: string) => {
    // A step without words says nothing: the last ones stay until there are others.
    if (name === 'text') return text !== '' && onKeep({ text });
    return onKeep({ [name]: text === '' ? undefined : text });
  };
  return (
    <>
      {WORDS.map(({ name, label, hint }) => (
        <KeptField key={name} label={label} hint={hint} kept={step[name] ?? ''} onWords={write(name)} />
      ))}
    </>
  );
}

type PlaceKeysProps = {
  readonly number: number;
  readonly of: number;
  readonly onMove: (to: 'up' | 'down') => void;
};

function PlaceKeys({ number, of, onMove }: PlaceKeysProps) {
  return (
    <div class="assembly-keys" role="group" aria-label="Its place">
      <Button disabled={number === 1} onPress={() => onMove('up')}>
        Earlier
      </Button>
      <Button disabled={number === of} onPress={() => onMove('down')}>
        Later
      </Button>
    </div>
  );
}

/** What a change does to a step that is done, before it is made and after. */
function AgainNote({ step }: { step: AssemblyStep }) {
  const again = againWords(step);
  if (again !== undefined) return <p class="assembly-note assembly-again">{again}</p>;
  if (!step.done) return null;
  return <p class="assembly-note">It is done as it stands here. Change it, and it has to be done again.</p>;
}

function StepRows({ step, assembly }: { step: AssemblyStep; assembly: Assembly }) {
  const at = (field: string) => hrefOf({ at: 'step', jobId: step.jobId, stepId: step.id, field });
  const { torque, locker, cureHours } = step;
  const drawing = assembly.worksheets.find(({ id }) => id === step.worksheetId);
  const parts = assembly.parts.filter(({ id }) => step.partIds.includes(id));
  return (
    <ul>
      {locker !== undefined && (
        <li>
          <Row
            href={at('cure')}
            title="Cure time"
            {...(cureHours === undefined
              ? { detail: 'the locker’s maker states it' }
              : { figure: `${cureHours} h` })}
          />
        </li>
      )}
      <li>
        <Row
          href={at('torque')}
          title="Torque"
          {...(torque && torque.typed !== ''
            ? { figure: sayTorque(torque), detail: otherTorques(torque).join(' · ') }
            : { detail: torque ? 'the manual’s figure is not typed yet' : 'none' })}
        />
      </li>
      {torque && (
        <li>
          <Row
            href={at('torque/source')}
            title="Where that torque is stated"
            detail={torque.source === '' ? 'source not given yet' : torque.source}
          />
        </li>
      )}
      <li>
        <Row href={at('drawing')} title="Drawing" detail={drawing?.title ?? 'none'} />
      </li>
      <li>
        <Row
          href={at('parts')}
          title="Parts"
          detail={parts.length === 0 ? 'none named' : parts.map(({ name }) => name).join(', ')}
        />
      </li>
    </ul>
  );
}
