import { useState } from 'preact/hooks';
import { drawerPieces } from '../../store/drawer.ts';
import { featuresOf } from '../../store/features.ts';
import { readingsOfJob } from '../../store/readings.ts';
import type { Basis, Worksheet } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { addSteps } from '../../store/steps.ts';
import { measuringTools } from '../../store/tools.ts';
import { goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { useDial, useShownUnit } from '../common/use-settings.ts';
import { basisNow } from '../worksheets/new-cuts.ts';
import { namedSteps } from './step-standing.ts';
import type { Assembly } from './use-assembly.ts';

/** Steps to add: one in the fitter's own words, or those a worksheet's answer puts into an order. */
export function NewStepScreen({ assembly }: { assembly: Assembly }) {
  const store = useStore();
  const { job, steps } = assembly;
  const text = useTextDraft(`assembly/${job.id}/steps/new/text`);
  const [trouble, setTrouble] = useState('');
  const offers = useOffers(assembly);
  const here = { at: 'assembly', jobId: job.id } as const;
  const addOwn = async () => {
    if (text.text.trim() === '') return setTrouble('Say what is done in this step.');
    const made = await addSteps(store, [{ jobId: job.id, text: text.text.trim() }]);
    if (!made.ok) return setTrouble(sayStore(made.refusal));
    text.clear();
    const [step] = made.value;
    return goInstead(step ? { at: 'step', jobId: job.id, stepId: step.id } : here);
  };
  const addOffered = async ({ worksheet, offered, basis }: Offer) => {
    const made = await addSteps(
      store,
      offered.map(({ name, offer }) => ({
        ...offer,
        jobId: job.id,
        workedOut: { worksheetId: worksheet.id, offer: name, basis },
      })),
    );
    if (!made.ok) return setTrouble(sayStore(made.refusal));
    announce(`${offered.length} steps added`);
    return goInstead(here);
  };
  return (
    <Page
      title="Add steps"
      subtitle={job.name}
      back={{ href: hrefOf(here), to: 'the assembly' }}
      foot={
        <Button kind="main" onPress={() => addOwn()}>
          Add this step
        </Button>
      }
    >
      <TextField
        label="What is done"
        hint="Fit the brake bracket, say"
        text={text.text}
        onText={text.change}
      />
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
      {offers.length > 0 && (
        <section class="assembly-section" aria-label="From worksheets">
          <h2>From worksheets</h2>
          <ul>
            {offers.map((one) => {
              const { worksheet, offered } = one;
              const isIn = steps.some((step) => step.worksheetId === worksheet.id);
              return (
                <li key={worksheet.id}>
                  <Row
                    onPress={() => addOffered(one)}
                    title={`${worksheet.title}: ${offered.length} steps`}
                    detail={isIn ? 'its steps are in already; this adds them again' : offered[0]?.offer.text}
                  />
                </li>
              );
            })}
          </ul>
        </section>
      )}
    </Page>
  );
}

type Offer = {
  readonly worksheet: Worksheet;
  readonly offered: ReturnType<typeof namedSteps>;
  readonly basis: Basis;
};

function useOffers({ job, worksheets }: Assembly): readonly Offer[] {
  const unit = useShownUnit();
  const dial = useDial();
  const found = useLive(
    `steps-offered/${job.id}`,
    ['features', 'readings', 'tools', 'drawer', 'drawerCounts'],
    async (store) => {
      const [features, readings, tools, drawer] = await Promise.all([
        featuresOf(store, job.id),
        readingsOfJob(store, job.id),
        measuringTools(store),
        drawerPieces(store),
      ]);
      return { features, readings, tools, drawer };
    },
  );
  if (!found) return [];
  return worksheets
    .map((worksheet) => ({
      worksheet,
      offered: namedSteps({ ...found, job, worksheet, unit, dial }),
      basis: basisNow({ worksheet, readings: found.readings }),
    }))
    .filter(({ offered }) => offered.length > 0);
}
