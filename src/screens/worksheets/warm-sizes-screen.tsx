import { inShopWords } from '../../engine/length/american-words.ts';
import { materialsFor } from '../../engine/material/tables/materials.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import type { Worksheet } from '../../store/base/records.ts';
import type { StoreResult } from '../../store/base/store-refusal.ts';
import { cutsOf } from '../../store/kept/cuts.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { changeJob } from '../../store/kept/jobs.ts';
import { setPart, setSize } from '../../store/kept/worksheets.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { useShownUnit } from '../common/use-settings.ts';
import { DEGREES } from '../readings/warmth-screen.tsx';
import { warmthOfMetal, warmthOfToday } from '../readings/warmth.ts';
import { NumberEntry } from './number-entry.tsx';
import { unaskedSizes, warmthWanted, type UnaskedSize } from './warm-sizes.ts';
import type { WorksheetData } from './worksheet-data.ts';

type WarmProps = { readonly data: WorksheetData };

/** How warm typed sizes were read, asked once a day of a job, and then of each what it is made of. */
export function WarmSizesScreen({ data }: WarmProps) {
  const cuts = useLive(`cuts/${data.job.id}`, ['cuts'], (store) => cutsOf(store, data.job.id));
  if (!cuts) return <Page title=" ">{null}</Page>;
  const all = unaskedSizes(data, cuts);
  const [first] = all;
  if (!warmthOfToday(data.job, timeToKeep())) return <DegreesScreen data={data} all={all} />;
  return first ? <MetalScreen data={data} unasked={first} /> : <SaidScreen data={data} />;
}

function backTo({ job, worksheet }: WorksheetData) {
  return {
    href: hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id }),
    to: 'the worksheet',
  };
}

type DegreesProps = WarmProps & { readonly all: readonly UnaskedSize[] };

function DegreesScreen({ data, all }: DegreesProps) {
  const store = useStore();
  const { unit, least, most } = DEGREES[useShownUnit()];
  const { trouble, told } = useTold();
  const { job } = data;
  const keep = (degrees: string) =>
    told(changeJob(store, job.id, { warmth: { degrees, unit, at: timeToKeep() } }), async (warm) => {
      // Where the metal was said before, at a cut of it say, it isn't asked again.
      for (const one of all) {
        if (one.material === undefined) continue;
        // oxlint-disable-next-line no-await-in-loop -- one act after the other
        if (!(await told(keepWarm(store, { ...data, job: warm }, one, one.material)))) return;
      }
    });
  return (
    <PadScreen title="How warm are parts and tool?" subtitle="lying together for an hour" back={backTo(data)}>
      <Trouble>{trouble}</Trouble>
      <div class="size-entry">
        <NumberEntry
          label={`Temperature, °${unit}`}
          draftKey={`job/${job.id}/warmth`}
          bounds={{ least, most, unit: `°${unit}` }}
          onNumber={keep}
        />
      </div>
    </PadScreen>
  );
}

/** A size with how warm it was read today, and of which metal. */
function keepWarm(
  store: Store,
  { job, worksheet }: WorksheetData,
  { size: before, place }: UnaskedSize,
  material: string,
): Promise<StoreResult<Worksheet>> {
  const size = { ...before, ...warmthOfMetal(job, material, timeToKeep()) };
  if ('sizeName' in place) return setSize(store, worksheet.id, place.sizeName, size);
  const part = worksheet.parts[place.partId];
  return setPart(store, worksheet.id, place.partId, part && { ...part, size });
}

type MetalProps = WarmProps & { readonly unasked: UnaskedSize };

function MetalScreen({ data, unasked }: MetalProps) {
  const store = useStore();
  const { trouble, told } = useTold();
  const shown = useShownUnit();
  const { worksheet } = data;
  const keep = (material: string) => told(keepWarm(store, data, unasked, material));
  return (
    <Page title={`${unasked.label}: what is it made of?`} subtitle={worksheet.title} back={backTo(data)}>
      <Trouble>{trouble}</Trouble>
      <ul>
        {materialsFor(shown)
          .toSorted((a, b) => Number(b.id === unasked.material) - Number(a.id === unasked.material))
          .map(({ id, name }) => (
            <li key={id}>
              <Row title={inShopWords(name, shown)} onPress={() => keep(id)} />
            </li>
          ))}
      </ul>
    </Page>
  );
}

function SaidScreen({ data }: WarmProps) {
  const back = backTo(data);
  return (
    <Page
      title="Warmth is said"
      subtitle={data.worksheet.title}
      back={back}
      foot={
        <LinkButton kind="main" href={back.href}>
          Back to the worksheet
        </LinkButton>
      }
    >
      <p class="worksheet-said">These sizes count as they are at 20 °C, 68 °F.</p>
    </Page>
  );
}

/** The question on the answer's page, one press from being answered. */
export function WarmthKey({ data }: { readonly data: WorksheetData }) {
  const wanted = warmthWanted(data, timeToKeep());
  if (!wanted) return null;
  const jobId = data.job.id;
  const worksheetId = data.worksheet.id;
  const { featureId } = wanted;
  const href =
    featureId === undefined
      ? hrefOf({ at: 'worksheet', jobId, worksheetId, field: 'warm' })
      : hrefOf({ at: 'feature', jobId, featureId, choosing: `for/${worksheetId}/warm` });
  return (
    <p class="worksheet-assumed worksheet-said">
      <LinkButton href={href}>{wanted.said}</LinkButton>
    </p>
  );
}
