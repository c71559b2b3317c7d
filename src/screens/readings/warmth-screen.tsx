import { useState } from 'preact/hooks';
import { inShopWords } from '../../engine/length/american-words.ts';
import { materialNamed, materialsFor } from '../../engine/material/tables/materials.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import { changeFeature } from '../../store/kept/features.ts';
import { changeJob } from '../../store/kept/jobs.ts';
import { worksheetsOf } from '../../store/kept/worksheets.ts';
import type { Feature, Job } from '../../store/base/records.ts';
import { Button } from '../common/button.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { useShownUnit } from '../common/use-settings.ts';
import { NumberEntry } from '../worksheets/number-entry.tsx';
import { metalOfFeature } from '../worksheets/size-metal.ts';

type WarmthScreenProps = { readonly job: Job; readonly feature: Feature; readonly back: string };

/** Asked in what the shop counts in. */
export const DEGREES = {
  in: { unit: 'F', least: -4, most: 140 },
  mm: { unit: 'C', least: -20, most: 60 },
} as const;

/** How warm part and tool lie together, asked once a day of a job, and what this part is made of, asked once. */
export function WarmthScreen({ job, feature, back }: WarmthScreenProps) {
  const store = useStore();
  const shown = useShownUnit();
  const { unit, least, most } = DEGREES[shown];
  const [asksMetal, setAsksMetal] = useState(false);
  const { trouble, told } = useTold();
  const worksheets = useLive(`worksheets/${job.id}`, ['worksheets'], (from) => worksheetsOf(from, job.id));
  // A worksheet may have asked already what the part is made of.
  const metal = feature.material ?? metalOfFeature(feature.id, worksheets ?? []);
  const material = materialNamed(metal);
  const keepMetal = (material: string) =>
    told(changeFeature(store, feature.id, { material }), () => setAsksMetal(false));
  const keepDegrees = async (degrees: string) => {
    if (feature.material === undefined && metal !== undefined && !(await keepMetal(metal))) return false;
    return told(changeJob(store, job.id, { warmth: { degrees, unit, at: timeToKeep() } }), () => {
      location.hash = back;
    });
  };
  if (!worksheets) return <Page title=" ">{null}</Page>;
  if (!material || asksMetal)
    return (
      <Page title="What is it made of?" subtitle={feature.name} back={{ href: back, to: 'the pad' }}>
        <Trouble>{trouble}</Trouble>
        <ul>
          {materialsFor(shown).map(({ id, name }) => (
            <li key={id}>
              <Row title={inShopWords(name, shown)} onPress={() => keepMetal(id)} />
            </li>
          ))}
        </ul>
      </Page>
    );
  return (
    <PadScreen
      title="How warm are part and tool?"
      subtitle={`${feature.name} · lying together for an hour`}
      back={{ href: back, to: 'the pad' }}
    >
      <Trouble>{trouble}</Trouble>
      <div class="size-entry">
        <NumberEntry
          label={`Temperature, °${unit}`}
          draftKey={`job/${job.id}/warmth`}
          bounds={{ least, most, unit: `°${unit}` }}
          onNumber={keepDegrees}
        >
          <Button label={`Made of: ${inShopWords(material.name, shown)}`} onPress={() => setAsksMetal(true)}>
            {inShopWords(material.name, shown)}
          </Button>
        </NumberEntry>
      </div>
    </PadScreen>
  );
}
