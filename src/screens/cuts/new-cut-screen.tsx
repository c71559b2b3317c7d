import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { readEntry, type Entry } from '../../engine/length/entry.ts';
import { isLess, isMore } from '../../engine/length/length.ts';
import { asTyped } from '../../engine/length/show.ts';
import { createCuts } from '../../store/kept/cuts.ts';
import { getDraft } from '../../store/kept/drafts.ts';
import { go, goInstead, hrefOf } from '../address.ts';
import type { HalfTyped } from '../common/pad-text.ts';
import { AskedSize } from '../common/asked-size.tsx';
import { Button } from '../common/button.tsx';
import { PadScreen } from '../common/pad-screen.tsx';
import { Page } from '../common/page.tsx';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { TextField } from '../common/text-field.tsx';
import { useSizeDraft, useTextDraft } from '../common/use-draft.ts';
import { useShownUnit } from '../common/use-settings.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { ChoiceRows } from './choice-rows.tsx';
import { OPERATIONS, usualMachine } from './cut-words.ts';
import './cut-form.css';

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
  const draft = useSizeDraft(draftKey(jobId, size.name), useShownUnit());
  const answer = useTold();
  const next = SIZES[SIZES.indexOf(size) + 1]?.name;
  const onward = newCutAt(jobId, next === undefined ? operation.id : `${operation.id}/${next}`);
  return (
    <PadScreen
      title={size.ask}
      subtitle={operation.words}
      back={{ href: hrefOf(newCutAt(jobId, operation.id)), to: 'the cut' }}
    >
      <AskedSize label={size.label} draft={draft} answer={answer} onSize={() => goInstead(onward)} />
    </PadScreen>
  );
}

function NewCutForm({ jobId, operation }: { jobId: string; operation: Chosen }) {
  const { name, part, drafts, trouble, put } = useNewCut(jobId, operation);
  const words = { name: name.text.trim(), part: part.text.trim() };
  const strength = sayStrengthOfCut({ ...operation, ...words });
  return (
    <Page
      title="A cut of your own"
      subtitle={operation.words}
      back={{ href: hrefOf(newCutAt(jobId)), to: 'what is to be done' }}
      foot={
        <Button kind="main" onPress={put}>
          Put on the cut list
        </Button>
      }
    >
      <TextField label="Name" hint={operation.words} text={name.text} onText={name.change} />
      <TextField label="Part" hint="spacer" text={part.text} onText={part.change} />
      <ul>
        {SIZES.map((size) => (
          <li key={size.name}>
            <Row
              href={hrefOf(newCutAt(jobId, `${operation.id}/${size.name}`))}
              title={size.label}
              {...sizeGiven(drafts[size.name].half)}
            />
          </li>
        ))}
      </ul>
      {strength !== '' && <p class="cut-form-strength">{strength}</p>}
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}

function sizeGiven(half: HalfTyped): { readonly figure: string } | { readonly detail: string } {
  const entry = entryOf(half);
  if (entry) return { figure: asTyped(entry) };
  return { detail: half.typed === '' ? 'not given' : 'not finished' };
}

/** What is typed of a new cut, and the press that puts it on the list. */
function useNewCut(jobId: string, operation: Chosen) {
  const store = useStore();
  const unit = useShownUnit();
  const name = useTextDraft(draftKey(jobId, 'name'));
  const part = useTextDraft(draftKey(jobId, 'part'));
  const drafts = {
    target: useSizeDraft(draftKey(jobId, 'target'), unit),
    lower: useSizeDraft(draftKey(jobId, 'lower'), unit),
    upper: useSizeDraft(draftKey(jobId, 'upper'), unit),
  };
  const { trouble, told, say } = useTold();
  const put = async () => {
    // What was typed, not what has come back to the screen of it by now.
    const [target, lower, upper] = await Promise.all(
      SIZES.map(async ({ name: size }) => entryOf(await getDraft(store, draftKey(jobId, size)))),
    );
    const sizes = wholeSizes({ target, lower, upper });
    if (typeof sizes === 'string') return say(sizes);
    const words = { name: name.text.trim(), part: part.text.trim() };
    return told(createCuts(store, [ownCut(jobId, operation, { ...words, ...sizes })]), ([made]) => {
      for (const draft of [name, part, ...Object.values(drafts)]) draft.clear();
      if (made) goInstead({ at: 'cut', jobId, cutId: made.id });
    });
  };
  return { name, part, drafts, trouble, put };
}

function ownCut(jobId: string, chosen: Chosen, given: Sizes & { name: string; part: string }) {
  const { operation, of, words } = chosen;
  const cut = { operation, of, part: given.part || 'part' };
  return {
    jobId,
    ...given,
    ...cut,
    name: given.name || words,
    limitsFrom: 'your own limits',
    cuttingTool: 'hss',
    machine: usualMachine(cut),
  } as const;
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
