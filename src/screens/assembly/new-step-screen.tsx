import { drawerPieces } from '../../store/kept/drawer.ts';
import { featuresOf } from '../../store/kept/features.ts';
import { readingsOfJob } from '../../store/kept/readings.ts';
import type { Basis, Worksheet } from '../../store/base/records.ts';
import { addSteps } from '../../store/kept/steps.ts';
import { measuringTools } from '../../store/kept/tools.ts';
import { goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { useDial } from '../common/use-dial.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { basisNow } from '../worksheets/new-cuts.ts';
import { namedSteps } from './step-standing.ts';
import type { Assembly } from './use-assembly.ts';

/** Steps to add: one in the fitter's own words, or those a worksheet's answer puts into an order. */
export function NewStepScreen({ assembly }: { assembly: Assembly }) {
  const { job } = assembly;
  const { text, trouble, addOwn, addOffered } = useNewSteps(job.id);
  return (
    <Page
      title="Add steps"
      subtitle={job.name}
      back={{ href: hrefOf({ at: 'assembly', jobId: job.id }), to: 'the assembly' }}
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
      <Trouble>{trouble}</Trouble>
      <FromWorksheets assembly={assembly} onAdd={addOffered} />
    </Page>
  );
}

function useNewSteps(jobId: string) {
  const store = useStore();
  const text = useTextDraft(`assembly/${jobId}/steps/new/text`);
  const { trouble, told, say } = useTold();
  const here = { at: 'assembly', jobId } as const;
  const addOwn = async () => {
    if (text.text.trim() === '') return say('Say what is done in this step.');
    return told(addSteps(store, [{ jobId, text: text.text.trim() }]), ([step]) => {
      text.clear();
      goInstead(step ? { at: 'step', jobId, stepId: step.id } : here);
    });
  };
  const addOffered = ({ worksheet, offered, basis }: Offer) => {
    const steps = offered.map(({ name, offer }) => ({
      ...offer,
      jobId,
      workedOut: { worksheetId: worksheet.id, offer: name, basis },
    }));
    return told(addSteps(store, steps), () => {
      announce(`${offered.length} steps added`);
      goInstead(here);
    });
  };
  return { text, trouble, addOwn, addOffered };
}

type FromWorksheetsProps = {
  readonly assembly: Assembly;
  readonly onAdd: (offer: Offer) => unknown;
};

function FromWorksheets({ assembly, onAdd }: FromWorksheetsProps) {
  const offers = useOffers(assembly);
  if (offers.length === 0) return null;
  const isIn = ({ worksheet }: Offer) =>
    assembly.steps.some(({ worksheetId }) => worksheetId === worksheet.id);
  return (
    <section class="assembly-section" aria-label="From worksheets">
      <h2>From worksheets</h2>
      <ul>
        {offers.map((offer) => (
          <li key={offer.worksheet.id}>
            <Row
              onPress={() => onAdd(offer)}
              title={`${offer.worksheet.title}: ${offer.offered.length} steps`}
              detail={
                isIn(offer) ? 'its steps are in already; this adds them again' : offer.offered[0]?.offer.text
              }
            />
          </li>
        ))}
      </ul>
    </section>
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
