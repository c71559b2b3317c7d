import { useState } from 'preact/hooks';
import { materialNamed, materials } from '../../engine/material/tables/materials.ts';
import { timeToKeep } from '../../store/clock.ts';
import { changeFeature } from '../../store/features.ts';
import { changeJob } from '../../store/jobs.ts';
import type { Feature, Job } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { NumberEntry } from '../worksheets/number-entry.tsx';

type WarmthScreenProps = { readonly job: Job; readonly feature: Feature; readonly back: string };

/** Asked in what the shop counts in. */
export const DEGREES = {
  in: { unit: 'F', least: -4, most: 140 },
  mm: { unit: 'C', least: -20, most: 60 },
} as const;

/** How warm part and tool lie together, asked once a day of a job, and what this part is made of, asked once. */
export function WarmthScreen({ job, feature, back }: WarmthScreenProps) {
  const store = useStore();
  const { unit, least, most } = DEGREES[useShownUnit()];
  const [asksMetal, setAsksMetal] = useState(false);
  const [trouble, setTrouble] = useState('');
  const material = materialNamed(feature.material);
  const keepMetal = async (id: string) => {
    const kept = await changeFeature(store, feature.id, { material: id });
    setTrouble(kept.ok ? '' : sayStore(kept.refusal));
    if (kept.ok) setAsksMetal(false);
  };
  const keepDegrees = async (degrees: string) => {
    const kept = await changeJob(store, job.id, { warmth: { degrees, unit, at: timeToKeep() } });
    if (kept.ok) location.hash = back;
    else setTrouble(sayStore(kept.refusal));
    return kept.ok;
  };
  const said = trouble !== '' && (
    <p role="alert" class="text-field-trouble">
      {trouble}
    </p>
  );
  if (!material || asksMetal)
    return (
      <Page title="What is it made of?" subtitle={feature.name} back={{ href: back, to: 'the pad' }}>
        {said}
        <ul>
          {materials.map(({ id, name }) => (
            <li key={id}>
              <Row title={name} onPress={() => keepMetal(id)} />
            </li>
          ))}
        </ul>
      </Page>
    );
  return (
    <div class="pad-screen">
      <Page
        title="How warm are part and tool?"
        subtitle={`${feature.name} · lying together for an hour`}
        back={{ href: back, to: 'the pad' }}
      >
        {said}
        <div class="size-entry">
          <NumberEntry
            label={`Temperature, °${unit}`}
            draftKey={`job/${job.id}/warmth`}
            bounds={{ least, most, unit: `°${unit}` }}
            onNumber={keepDegrees}
          >
            <Button label={`Made of: ${material.name}`} onPress={() => setAsksMetal(true)}>
              {material.name}
            </Button>
          </NumberEntry>
        </div>
      </Page>
    </div>
  );
}
