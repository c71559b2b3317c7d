import { useState } from 'preact/hooks';
import { materials } from '../../engine/material/tables/materials.ts';
import { timeToKeep } from '../../store/clock.ts';
import { changeJob } from '../../store/jobs.ts';
import { sayStore } from '../../store/say-store.ts';
import { setPart, setSize } from '../../store/worksheets.ts';
import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { DEGREES } from '../readings/warmth-screen.tsx';
import { warmthOfMetal, warmthOfToday } from '../readings/warmth.ts';
import { NumberEntry } from './number-entry.tsx';
import { unaskedSizes, warmthWanted } from './warm-sizes.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** How warm typed sizes were read, asked once a day of a job, and then of each what it is made of. */
export function WarmSizesScreen({ data }: { readonly data: WorksheetData }) {
  const store = useStore();
  const { unit, least, most } = DEGREES[useShownUnit()];
  const [trouble, setTrouble] = useState('');
  const { job, worksheet } = data;
  const back = {
    href: hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id }),
    to: 'the worksheet',
  };
  const said = trouble !== '' && (
    <p role="alert" class="text-field-trouble">
      {trouble}
    </p>
  );
  if (!warmthOfToday(job, Date.now())) {
    const keepDegrees = async (degrees: string) => {
      const kept = await changeJob(store, job.id, { warmth: { degrees, unit, at: timeToKeep() } });
      setTrouble(kept.ok ? '' : sayStore(kept.refusal));
      return kept.ok;
    };
    return (
      <div class="pad-screen">
        <Page title="How warm are parts and tool?" subtitle="lying together for an hour" back={back}>
          {said}
          <div class="size-entry">
            <NumberEntry
              label={`Temperature, °${unit}`}
              draftKey={`job/${job.id}/warmth`}
              bounds={{ least, most, unit: `°${unit}` }}
              onNumber={keepDegrees}
            />
          </div>
        </Page>
      </div>
    );
  }
  const [first] = unaskedSizes(data);
  if (!first)
    return (
      <Page
        title="Warmth is said"
        subtitle={worksheet.title}
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
  const keepMetal = async (material: string) => {
    const size = { ...first.size, ...warmthOfMetal(job, material, Date.now()) };
    const { place } = first;
    const part = 'partId' in place ? worksheet.parts[place.partId] : undefined;
    const kept =
      'sizeName' in place
        ? await setSize(store, worksheet.id, place.sizeName, size)
        : await setPart(store, worksheet.id, place.partId, part && { ...part, size });
    setTrouble(kept.ok ? '' : sayStore(kept.refusal));
  };
  return (
    <Page title={`${first.label}: what is it made of?`} subtitle={worksheet.title} back={back}>
      {said}
      <ul>
        {materials
          .toSorted((a, b) => Number(b.id === first.material) - Number(a.id === first.material))
          .map(({ id, name }) => (
            <li key={id}>
              <Row title={name} onPress={() => keepMetal(id)} />
            </li>
          ))}
      </ul>
    </Page>
  );
}

/** The question on the answer's page, one press from being answered. */
export function WarmthKey({ data }: { readonly data: WorksheetData }) {
  const wanted = warmthWanted(data, Date.now());
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
