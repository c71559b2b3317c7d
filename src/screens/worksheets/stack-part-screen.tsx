import { useState } from 'preact/hooks';
import type { SizeInput, StackPartInput } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { setPart } from '../../store/worksheets.ts';
import { go, hrefOf } from '../address.ts';
import { bandOf } from '../../engine/reading/estimate.ts';
import { usualLeastLength } from '../../engine/fit/tables/least-part.ts';
import { sizeFigure } from '../../engine/reading/say-readings.ts';
import { sayStrength } from '../../engine/cut/say-strength.ts';
import { show } from '../../engine/length/show.ts';
import { Button } from '../common/button.tsx';
import { bandWords } from '../common/band-words.ts';
import { NotHere } from '../common/not-here.tsx';
import { Choice } from '../common/choice.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';
import { featureFor } from './measure-for.ts';
import { slipAroundPart } from './slip-around.ts';
import { SizeEntry } from './size-entry.tsx';
import { exactSize, knownSize, missingWords, type WorksheetData } from './worksheet-data.ts';
import './stack-part-screen.css';
import { capital } from '../../engine/length/say-words.ts';

const MOST_PIECES = 99;

/** One part of a stack: its name, size, how many, whether it may be cut and how short. `path` is part/<id> and what of it is asked. */
export function StackPartScreen({ data, path }: { data: WorksheetData; path: string }) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const [, partId = '', asked = ''] = path.split('/');
  const { worksheet, job } = data;
  const part = worksheet.parts[partId];
  const worksheetAt = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  if (!part) return <NotHere what="part" />;
  const keep = async (changed: StackPartInput | undefined, draftKey?: string) => {
    const kept = await setPart(store, worksheet.id, partId, changed, draftKey);
    setTrouble(kept.ok ? '' : sayStore(kept.refusal));
    return kept.ok;
  };
  const takeSize = async (name: 'size' | 'leastLength', size: SizeInput, draftKey?: string) => {
    const named =
      name === 'size' && size.from === 'feature' && /^part \d+$/.test(part.name)
        ? nameOfFeature(data, size.featureId)
        : undefined;
    const kept = await keep({ ...part, ...(named !== undefined && { name: named }), [name]: size }, draftKey);
    if (kept) go(name === 'size' ? worksheetAt : { ...worksheetAt, field: `part/${partId}` });
  };
  const measureNow = async () => {
    const made = await featureFor(store, data, { kind: 'length', name: part.name });
    if (!made.ok) return setTrouble(sayStore(made.refusal));
    const kept = await keep({ ...part, size: { from: 'feature', featureId: made.value.id } });
    if (kept) go({ at: 'feature', jobId: job.id, featureId: made.value.id, choosing: `for/${worksheet.id}` });
  };
  if (asked === 'size' || asked === 'leastLength') {
    return (
      <div class="pad-screen">
        <Page
          title={
            asked === 'size'
              ? `${capital(part.name)}: how long is it?`
              : `${capital(part.name)}: how short may it become?`
          }
          subtitle={worksheet.title}
          back={{ href: hrefOf({ ...worksheetAt, field: `part/${partId}` }), to: 'the part' }}
        >
          <SizeEntry
            data={data}
            label={`${part.name}, ${asked === 'size' ? 'length' : 'least length'}`}
            draftKey={`worksheet/${worksheet.id}/${path}`}
            now={part[asked]}
            around={slipAroundPart(data)}
            {...(asked === 'size' && { measures: 'length' as const, onMeasure: () => measureNow() })}
            onSize={(size, key) => takeSize(asked, size, key)}
          />
        </Page>
      </div>
    );
  }
  const remove = async () => {
    if (await keep(undefined)) go(worksheetAt);
  };
  return (
    <PartForm
      data={data}
      partId={partId}
      part={part}
      trouble={trouble}
      onChange={(changed) => void keep(changed)}
      onRename={async (name) => name !== '' && keep({ ...part, name })}
      onRemove={() => remove()}
    />
  );
}

type PartFormProps = {
  readonly data: WorksheetData;
  readonly partId: string;
  readonly part: StackPartInput;
  readonly trouble: string;
  readonly onChange: (part: StackPartInput) => void;
  readonly onRename: (name: string) => Promise<boolean>;
  readonly onRemove: () => unknown;
};

function PartForm({ data, partId, part, trouble, onChange, onRename, onRemove }: PartFormProps) {
  const { worksheet, job, unit } = data;
  const here = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  const known = knownSize(data, part.size);
  const least = exactSize(data, part.leastLength);
  return (
    <Page title={part.name} subtitle={worksheet.title} back={{ href: hrefOf(here), to: 'the stack' }}>
      <KeptField label="Name" kept={part.name} onWords={onRename} />
      <ul>
        <li>
          <Row
            href={hrefOf({ ...here, field: `part/${partId}/size` })}
            title="Length"
            detail={known?.words ?? missingWords(data, part.size) ?? 'not given'}
            {...(known && {
              figure: (
                <>
                  {sizeFigure(known.tightest, unit)}
                  <small class="row-detail">{bandWords(bandOf(known.tightest).halfWidth, unit)}</small>
                </>
              ),
            })}
          />
        </li>
        <li>
          <Row
            href={hrefOf({ ...here, field: `part/${partId}/leastLength` })}
            title="Least length"
            detail={
              least
                ? 'it is never faced below this'
                : `it is never faced below ${show(usualLeastLength[unit], unit)}, common practice`
            }
            {...(least && { figure: show(least, unit) })}
          />
        </li>
      </ul>
      <div class="stack-part-keys" role="group" aria-label="How many">
        <Button
          label="One fewer"
          disabled={part.count <= 1}
          onPress={() => onChange({ ...part, count: part.count - 1 })}
        >
          −
        </Button>
        <output>{part.count === 1 ? '1 piece' : `${part.count} pieces`}</output>
        <Button
          label="One more"
          disabled={part.count >= MOST_PIECES}
          onPress={() => onChange({ ...part, count: part.count + 1 })}
        >
          +
        </Button>
      </div>
      <Choice title="When the stack does not fit, this part">
        <Button chosen={!part.adjustable} onPress={() => onChange({ ...part, adjustable: false })}>
          stays as it is
        </Button>
        <Button chosen={part.adjustable} onPress={() => onChange({ ...part, adjustable: true })}>
          may be cut
        </Button>
      </Choice>
      {sayStrength(part.name) !== '' && <p class="worksheet-said">{sayStrength(part.name)}</p>}
      <div class="stack-part-keys">
        <Button onPress={() => onChange({ ...part, order: part.order - 1.5 })}>Further left</Button>
        <Button onPress={() => onChange({ ...part, order: part.order + 1.5 })}>Further right</Button>
      </div>
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
      <div class="stack-part-keys">
        <Button onPress={onRemove}>Remove {part.name}</Button>
      </div>
    </Page>
  );
}

function nameOfFeature(data: WorksheetData, featureId: string): string | undefined {
  return data.features.find((feature) => feature.id === featureId)?.name;
}
