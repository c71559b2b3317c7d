import { useState } from 'preact/hooks';
import { mostTorque, torqueUnitName, torqueUnits, type TorqueUnit } from '../../engine/thread/torque.ts';
import type { AssemblyStep, ManualTorque } from '../../store/base/records.ts';
import { changeStep } from '../../store/kept/steps.ts';
import { go, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Caution } from '../common/caution.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { NumberEntry } from '../worksheets/number-entry.tsx';

type StepProps = { readonly step: AssemblyStep };

const placeOf = (step: AssemblyStep) => ({ at: 'step', jobId: step.jobId, stepId: step.id }) as const;

/** The torque as the service manual states it, in the manual's unit. */
export function TorqueScreen({ step }: StepProps) {
  const store = useStore();
  const shown = useShownUnit();
  const { torque } = step;
  const [chosen, setUnit] = useState<TorqueUnit>();
  const { trouble, told } = useTold();
  const unit = chosen ?? torque?.unit ?? (shown === 'in' ? 'lbf-ft' : 'Nm');
  const here = placeOf(step);
  const keep = (changed: ManualTorque | undefined) =>
    told(changeStep(store, step.id, { torque: changed }), () =>
      go(changed && changed.source === '' ? { ...here, field: 'torque/source' } : here),
    );
  return (
    <PadScreen
      title="Torque in the manual?"
      subtitle={step.text}
      back={{ href: hrefOf(here), to: 'the step' }}
      aside={torque && <Button onPress={() => keep(undefined)}>Leave out</Button>}
    >
      <Trouble>{trouble}</Trouble>
      <NumberEntry
        label="Torque"
        draftKey={`step/${step.id}/torque`}
        bounds={{ least: 0.1, most: mostTorque(unit), unit: torqueUnitName(unit) }}
        onNumber={(typed) => keep({ typed, unit, source: torque?.source ?? '' })}
      >
        <div class="assembly-units" role="group" aria-label="The manual’s unit">
          {torqueUnits.map((one) => (
            <Button key={one} chosen={one === unit} onPress={() => setUnit(one)}>
              {torqueUnitName(one)}
            </Button>
          ))}
        </div>
      </NumberEntry>
    </PadScreen>
  );
}

type SourceProps = StepProps & { readonly steps: readonly AssemblyStep[] };

/** Where the torque stands: the manual and its page. Without it nobody can look it up again. */
export function TorqueSourceScreen({ step, steps }: SourceProps) {
  const store = useStore();
  const draftKey = `step/${step.id}/torque/source`;
  const draft = useTextDraft(draftKey);
  const { trouble, told, say } = useTold();
  const shown = useShownUnit();
  const here = placeOf(step);
  const torque = step.torque ?? { typed: '', unit: shown === 'in' ? 'lbf-ft' : 'Nm', source: '' };
  const take = (source: string) => {
    if (source === '') return say('Name the manual and the page, or who stated it.');
    return told(changeStep(store, step.id, { torque: { ...torque, source } }, draftKey), () => go(here));
  };
  const others = [...new Set(steps.flatMap((one) => one.torque?.source ?? []))].filter((one) => one !== '');
  return (
    <Page
      title="Where is it stated?"
      subtitle={step.text}
      back={{ href: hrefOf(here), to: 'the step' }}
      foot={
        <Button kind="main" onPress={() => take(draft.text.trim())}>
          Use it
        </Button>
      }
    >
      <TextField
        label="Manual and page"
        hint={torque.source === '' ? 'Service manual, page 7-12, say' : torque.source}
        text={draft.text}
        onText={draft.change}
      />
      <Trouble>{trouble}</Trouble>
      {others.length > 0 && (
        <section class="assembly-section" aria-label="Named on other steps">
          <h2>Named in this job</h2>
          <ul>
            {others.map((source) => (
              <li key={source}>
                <Row title={source} onPress={() => take(source)} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <Caution heading="The manual’s figure rules.">
        Slipfit states no torque of its own. Oil, anti-seize or locker on the thread changes what a torque
        does: follow what the manual says about it.
      </Caution>
    </Page>
  );
}

/** How long the thread locker's maker has it cure. */
export function CureScreen({ step }: StepProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const here = placeOf(step);
  const keep = (cureHours: string | undefined) =>
    told(changeStep(store, step.id, { cureHours }), () => go(here));
  return (
    <PadScreen
      title="How long does it cure?"
      subtitle={step.locker ?? step.text}
      back={{ href: hrefOf(here), to: 'the step' }}
      aside={step.cureHours !== undefined && <Button onPress={() => keep(undefined)}>Leave out</Button>}
    >
      <Trouble>{trouble}</Trouble>
      <NumberEntry
        label="Cure time, hours"
        draftKey={`step/${step.id}/cure`}
        bounds={{ least: 0, most: 1000, unit: 'h' }}
        onNumber={(hours) => keep(String(Math.round(Number(hours) * 100) / 100))}
      />
    </PadScreen>
  );
}
