import { otherTorques, sayTorque } from '../../engine/thread/torque.ts';
import type { AssemblyStep } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { timeWords } from '../common/day-words.ts';
import { OlderMark } from '../older/older-mark.tsx';
import { StepOlder } from './step-older.tsx';
import { StepDrawing } from './step-drawing.tsx';
import { againWords, lockerWords } from './step-words.ts';
import './step-card.css';

type StepCardProps = {
  readonly step: AssemblyStep;
  readonly number: number;
  /** The first step that isn't done: its key is the one to press. */
  readonly isNext: boolean;
  readonly partNames: readonly string[];
  readonly now: number;
  /** It was done, or is worded, by sizes that are others by now. */
  readonly older: boolean;
  readonly onDone: () => void;
  readonly onUndone: () => void;
};

/** One step of the assembly with all that belongs to it, and one big key that says it is done. */
export function StepCard({ step, number, isNext, partNames, now, older, onDone, onUndone }: StepCardProps) {
  const { jobId, id } = step;
  const again = againWords(step);
  const isMarked = older && again !== undefined;
  return (
    <li class="step-card" data-done={step.done !== undefined}>
      <a class="step-card-what" href={hrefOf({ at: 'step', jobId, stepId: id })}>
        <span class="step-card-number">{number}</span>
        <span class="step-card-words">
          <strong>{step.text}</strong>
          {isMarked && <OlderMark />}
          <StepFacts step={step} partNames={partNames} now={now} />
        </span>
        <span class="row-arrow" aria-hidden="true" />
      </a>
      {older && step.workedOut && (
        <StepOlder step={step} worksheetId={step.workedOut.worksheetId} isMarked={isMarked} />
      )}
      {step.worksheetId !== undefined && <StepDrawing jobId={jobId} worksheetId={step.worksheetId} />}
      {step.done ? (
        <div class="step-card-is-done">
          <DoneMark isDone />
          <p>
            {`Done by ${step.done.by}`}
            <small>{timeWords(step.done.at)}</small>
          </p>
          <Button kind="quiet" label={`Step ${number} is not done after all`} onPress={onUndone}>
            Not done
          </Button>
        </div>
      ) : (
        <div class="step-card-key">
          {again !== undefined && <p class="step-card-again">{again}</p>}
          <Button kind={isNext ? 'main' : 'plain'} label={`Step ${number} is done`} onPress={onDone}>
            <DoneMark isDone={false} />
            Done
          </Button>
        </div>
      )}
    </li>
  );
}

function StepFacts({
  step,
  partNames,
  now,
}: {
  step: AssemblyStep;
  partNames: readonly string[];
  now: number;
}) {
  const locker = lockerWords(step, now);
  const { torque } = step;
  return (
    <>
      {partNames.length > 0 && <small>{partNames.join(', ')}</small>}
      {step.orientation !== undefined && <small>{`Which way: ${step.orientation}`}</small>}
      {step.grease !== undefined && <small>{`Grease: ${step.grease}`}</small>}
      {locker !== undefined && <small>{`Thread locker: ${locker}`}</small>}
      {torque && torque.typed === '' && <small>Torque: the manual’s figure is not typed yet</small>}
      {torque && torque.typed !== '' && (
        <>
          <span class="step-card-torque">{sayTorque(torque)}</span>
          <small>{otherTorques(torque).join(' · ')}</small>
          <small>{torque.source === '' ? 'source not given yet' : torque.source}</small>
        </>
      )}
      {step.cotterPin === true && <small>Cotter pin: a new one, both legs bent</small>}
    </>
  );
}

/** A ring to be filled, a ring with a dot: the same marks as a verdict's. */
function DoneMark({ isDone }: { isDone: boolean }) {
  return (
    <svg class="step-card-mark" viewBox="0 0 32 32" width="28" height="28" aria-hidden="true">
      <circle cx="16" cy="16" r="12" fill="none" stroke="currentColor" stroke-width="3.4" />
      {isDone && <circle cx="16" cy="16" r="5.6" fill="currentColor" />}
    </svg>
  );
}
