import { useState } from 'preact/hooks';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { isLess, isMore } from '../../engine/length/length.ts';
import { sayEntry } from '../../engine/length/say.ts';
import { asTyped } from '../../engine/length/show.ts';
import { createCuts } from '../../store/cuts.ts';
import { getDraft } from '../../store/drafts.ts';
import { sayStore } from '../../store/say-store.ts';
import { go, goInstead, hrefOf } from '../address.ts';
import type { HalfTyped } from '../common/pad-text.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { SizePad } from '../common/size-pad.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useSizeDraft, useTextDraft } from '../common/use-draft.ts';
import { usePadSize, useShownUnit } from '../common/use-settings.ts';
import { ChoiceRows } from './choice-rows.tsx';
import { OPERATIONS, usualMachine } from './cut-words.ts';

const SIZES = [
  { name: 'target', label: 'Target', ask: 'Cut to which size?' },
  { name: 'lower', label: 'Good from', ask: 'Good from which size?' },
  { name: 'upper', label: 'Good to', ask: 'Good to which size?' },
] as const;
type SizeName = (typeof SIZES)[number]['name'];
type Chosen = (typeof OPERATIONS)[number];

/** A cut of one's own: what is done, its name, target and limits. `path` is the operation, and behind it what is asked. */
export function NewCutScreen({ jobId, path = '' }: { jobId: string; path?: string }) {
  const [id = '', asked = ''] = path.split('/');
  const operation = OPERATIONS.find((one) => one.id === id);
  if (!operation) return <OperationScreen jobId={jobId} />;
  const size = SIZES.find(({ name }) => name === asked);
  return size ? (
    <SizeScreen key={size.name} jobId={jobId} operation={operation} size={size} />
  ) : (
    <NewCutForm jobId={jobId} operation={operation} />
  );
}

function newCutAt(jobId: string, field?: string) {
  return { at: 'cut', jobId, cutId: 'new', ...(field !== undefined && { field }) } as const;
}

function OperationScreen({ jobId }: { jobId: string }) {
  return (
    <Page title="What is to be done?" back={{ href: hrefOf({ at: 'cuts', jobId }), to: 'the cuts' }}>
      <ChoiceRows options={OPERATIONS} onChoose={(id) => go(newCutAt(jobId, `${id}/target`))} />
    </Page>
  );
}

function draftKey(jobId: string, what: string): string {
  return `job/${jobId}/new-cut/${what}`;
}

type SizeScreenProps = {
  readonly jobId: string;
  readonly operation: Chosen;
  readonly size: (typeof SIZES)[number];
};

/** One of its figures; it stays a draft until the cut goes on the list. */
function SizeScreen({ jobId, operation, size }: SizeScreenProps) {
  const unit = useShownUnit();
  const padSize = usePadSize();
  const draft = useSizeDraft(draftKey(jobId, size.name), unit);
  const [trouble, setTrouble] = useState<string>();
  const commit = () => {
    const entry = readEntry(draft.half.typed, { unit: draft.half.unit });
    if (!entry.ok) return setTrouble(sayEntry(entry.refusal));
    const next = SIZES[SIZES.indexOf(size) + 1]?.name;
    return goInstead(newCutAt(jobId, next === undefined ? operation.id : `${operation.id}/${next}`));
  };
  return (
    <div class="pad-screen">
      <Page
        title={size.ask}
        subtitle={operation.words}
        back={{ href: hrefOf(newCutAt(jobId, operation.id)), to: 'the cut' }}
      >
        <div class="size-entry">
          <SizePad
            label={size.label}
            half={draft.half}
            padSize={padSize}
            onChange={(half) => {
              setTrouble(undefined);
              draft.change(half);
            }}
            commit={{ text: 'Use it', onPress: commit }}
            {...(trouble !== undefined && { message: <p role="alert">{trouble}</p> })}
          />
        </div>
      </Page>
    </div>
  );
}

function NewCutForm({ jobId, operation }: { jobId: string; operation: Chosen }) {
  const store = useStore();
  const unit = useShownUnit();
  const name = useTextDraft(draftKey(jobId, 'name'));
  const part = useTextDraft(draftKey(jobId, 'part'));
  const target = useSizeDraft(draftKey(jobId, 'target'), unit);
  const lower = useSizeDraft(draftKey(jobId, 'lower'), unit);
  const upper = useSizeDraft(draftKey(jobId, 'upper'), unit);
  const [trouble, setTrouble] = useState('');
  const drafts = { target, lower, upper };
  const sizes = { target: entryOf(target.half), lower: entryOf(lower.half), upper: entryOf(upper.half) };
  const put = async () => {
    // What was typed, not what has come back to the screen of it by now.
    const [aim, from, to] = await Promise.all(
      SIZES.map(async ({ name: size }) => entryOf(await getDraft(store, draftKey(jobId, size)))),
    );
    const known = wholeSizes({ target: aim, lower: from, upper: to });
    if (typeof known === 'string') return setTrouble(known);
    const called = part.text.trim() || 'part';
    const cut = { operation: operation.operation, of: operation.of, part: called };
    const made = await createCuts(store, [
      {
        jobId,
        name: name.text.trim() || operation.words,
        ...cut,
        ...known,
        limitsFrom: 'your own limits',
        cuttingTool: 'hss',
        machine: usualMachine(cut),
      },
    ]);
    const [first] = made.ok ? made.value : [];
    if (!made.ok) return setTrouble(sayStore(made.refusal));
    for (const draft of [name, part, target, lower, upper]) draft.clear();
    return first && goInstead({ at: 'cut', jobId, cutId: first.id });
  };
  return (
    <Page
      title="A cut of your own"
      subtitle={operation.words}
      back={{ href: hrefOf(newCutAt(jobId)), to: 'what is to be done' }}
      foot={
        <Button kind="main" onPress={() => put()}>
          Put on the cut list
        </Button>
      }
    >
      <TextField label="Name" hint={operation.words} text={name.text} onText={name.change} />
      <TextField label="Part" hint="spacer" text={part.text} onText={part.change} />
      <ul>
        {SIZES.map((size) => {
          const entry = sizes[size.name];
          return (
            <li key={size.name}>
              <Row
                href={hrefOf(newCutAt(jobId, `${operation.id}/${size.name}`))}
                title={size.label}
                {...(entry
                  ? { figure: asTyped(entry) }
                  : { detail: drafts[size.name].half.typed === '' ? 'not given' : 'not finished' })}
              />
            </li>
          );
        })}
      </ul>
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
    </Page>
  );
}

function entryOf(half: HalfTyped | undefined): Entry | undefined {
  const entry = half && readEntry(half.typed, { unit: half.unit });
  return entry?.ok === true ? entry.value : undefined;
}

type Sizes = Readonly<Record<SizeName, Entry>>;

/** All three, or what is wrong with them in a sentence. */
export function wholeSizes({
  target,
  lower,
  upper,
}: Readonly<Record<SizeName, Entry | undefined>>): Sizes | string {
  if (!target) return 'Say which size to cut to.';
  if (!lower || !upper)
    return 'Say from which size to which it is good: a cut without limits can’t be judged.';
  if (isLess(target.exact, lower.exact) || isMore(target.exact, upper.exact))
    return `The target of ${asTyped(target)} has to lie between its limits of ${asTyped(lower)} and ${asTyped(upper)}.`;
  return { target, lower, upper };
}
