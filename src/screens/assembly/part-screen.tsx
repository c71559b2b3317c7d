import { useState } from 'preact/hooks';
import { changePart, createPart, removePart, type PartChanges } from '../../store/kept/parts.ts';
import type { Part, PartOrigin } from '../../store/base/records.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { KeptField } from '../common/kept-field.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Choice } from '../common/choice.tsx';
import { Page } from '../common/page.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { PhotoStrip } from '../photos/photo-strip.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { isMockUpIn, ORIGINS, originWords, SwapKey } from './parts-list.tsx';
import type { Assembly } from './use-assembly.ts';

type NewPartProps = {
  readonly assembly: Assembly;
  /** The size that it was asked from, and that is one of it. */
  readonly featureId?: string | undefined;
};

/** A new part: what it is called and where it came from. */
export function NewPartScreen({ assembly, featureId }: NewPartProps) {
  const store = useStore();
  const { job } = assembly;
  const name = useTextDraft(`assembly/${job.id}/parts/new/name`);
  const [origin, setOrigin] = useState<PartOrigin>('made');
  const { trouble, told, say } = useTold();
  const here =
    featureId === undefined
      ? ({ at: 'assembly', jobId: job.id } as const)
      : ({ at: 'feature', jobId: job.id, featureId, choosing: 'all' } as const);
  const add = async () => {
    if (name.text.trim() === '') return say('Say what the part is called.');
    const part = { jobId: job.id, name: name.text.trim(), origin };
    return told(createPart(store, part, featureId), () => {
      name.clear();
      goInstead(here);
    });
  };
  return (
    <Page
      title="New part"
      subtitle={job.name}
      back={{ href: hrefOf(here), to: featureId === undefined ? 'the assembly' : 'the readings' }}
      foot={
        <Button kind="main" onPress={() => add()}>
          Add the part
        </Button>
      }
    >
      <TextField label="Name" hint="Outer spacer, say" text={name.text} onText={name.change} />
      <OriginChoice chosen={origin} onChoose={setOrigin} />
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}

export function PartScreen({ assembly, partId }: { assembly: Assembly; partId: string }) {
  const part = assembly.parts.find(({ id }) => id === partId);
  return part ? <PartForm key={part.id} part={part} /> : <NotHere what="part" />;
}

function PartForm({ part }: { part: Part }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const here = { at: 'assembly', jobId: part.jobId } as const;
  const keep = (changes: PartChanges) => told(changePart(store, part.id, changes));
  const rename = async (name: string) => name !== '' && keep({ name });
  const remove = () => told(removePart(store, part.id), () => goInstead(here));
  return (
    <Page title={part.name} subtitle={originWords(part)} back={{ href: hrefOf(here), to: 'the assembly' }}>
      <KeptField label="Name" kept={part.name} onWords={rename} />
      <PhotoStrip owner={{ store: 'parts', id: part.id }} jobId={part.jobId} />
      <OriginChoice chosen={part.origin} onChoose={(origin) => void keep({ origin, swapped: undefined })} />
      {isMockUpIn(part) && (
        <p class="assembly-note">
          A mock-up only stands in for the real part. The sheet can’t be signed while it is in.
        </p>
      )}
      <div class="assembly-keys">
        {isMockUpIn(part) && <SwapKey part={part} />}
        {part.swapped && (
          <Button onPress={() => keep({ swapped: undefined })}>The mock-up is in after all</Button>
        )}
        <Button onPress={() => remove()}>Remove {part.name}</Button>
      </div>
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}

type OriginChoiceProps = { readonly chosen: PartOrigin; readonly onChoose: (origin: PartOrigin) => void };

function OriginChoice({ chosen, onChoose }: OriginChoiceProps) {
  return (
    <Choice title="Where it came from">
      {ORIGINS.map(({ origin, words }) => (
        <Button key={origin} chosen={origin === chosen} onPress={() => onChoose(origin)}>
          {words}
        </Button>
      ))}
    </Choice>
  );
}
