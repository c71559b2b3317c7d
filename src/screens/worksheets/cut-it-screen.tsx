import { cutName } from '../../engine/thread/tap-name.ts';
import { useState } from 'preact/hooks';
import type { CutOffer } from '../../engine/cut/cut.ts';
import { metalBetween } from '../../engine/cut/cut.ts';
import { type CutWay } from '../../engine/cut/cuts-of-way.ts';
import { isMore, zero } from '../../engine/length/length.ts';
import { sayGood } from '../../engine/worksheets/ring/say-ring.ts';
import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { materials } from '../../engine/material/tables/materials.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import { createCuts, cutsOf } from '../../store/cuts.ts';
import type { Cut, CutState } from '../../store/records.ts';
import { isNotBegun, replaceCuts } from '../../store/replace-cuts.ts';
import { sayStore } from '../../store/say-store.ts';
import { go, goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { unbroken } from '../common/unbroken.tsx';
import { useTextDraft } from '../common/use-draft.ts';
import { ChoiceRows } from '../cuts/choice-rows.tsx';
import { MACHINES, MACHINE_WORDS, materialWords, STATE_WORDS } from '../cuts/cut-words.ts';
import {
  isTaken,
  machineOf,
  materialOf,
  picksText,
  readPicks,
  withKnownMaterials,
  withMachine,
  withMaterial,
  withTaken,
  type CutPicks,
} from './cut-picks.ts';
import { newCuts } from './new-cuts.ts';
import { onePartPlaces, onePartWay } from './spacer-stack-cuts.ts';
import { ReadingDoubts } from './reading-doubts.tsx';
import { useWaysToCut } from './use-ways-to-cut.ts';
import type { WorksheetData } from './worksheet-data.ts';
import './cut-it-screen.css';
import { capital } from '../../engine/length/say-words.ts';

/** What goes to the cut list, all ticked. `path` is cuts, cuts/<way>, or cuts/<way>/<cut>/machine or material. */
export function CutItScreen({ data, path }: { data: WorksheetData; path: string }) {
  const ways = useWaysToCut(data);
  const draft = useTextDraft(`worksheet/${data.worksheet.id}/cuts`);
  const known = useLive(`cuts/${data.job.id}`, ['cuts'], (from) => cutsOf(from, data.job.id));
  const [, wayId = '', place = '', asked = ''] = path.split('/');
  if (!ways) return <Page title=" ">{null}</Page>;
  const onePart = onePartWay(data, onePartPlaces(wayId));
  const all = onePart ? [onePart, ...ways] : ways;
  // Never another way than the one that was pressed: it would make another part.
  const way = wayId === '' ? all[0] : all.find(({ id }) => id === wayId);
  if (!way) return <NothingToCut data={data} others={wayId === '' ? [] : ways} />;
  const ofWorksheet = (known ?? []).filter((cut) => cut.worksheetId === data.worksheet.id);
  const picks = withKnownMaterials(readPicks(draft.text), ofWorksheet);
  const offer = way.offers[Number(place)];
  if (offer && (asked === 'machine' || asked === 'material'))
    return (
      <PickScreen
        data={data}
        way={way}
        index={Number(place)}
        asked={asked}
        picks={picks}
        onPicks={(next) => draft.change(picksText(next))}
      />
    );
  return (
    <Offers
      data={data}
      ways={all}
      way={way}
      picks={picks}
      known={known && ofWorksheet}
      onPicks={(next) => draft.change(picksText(next))}
      onDone={draft.clear}
    />
  );
}

function NothingToCut({ data, others }: { data: WorksheetData; others: readonly CutWay[] }) {
  return (
    <Page title="Cut it" subtitle={data.worksheet.title} back={backTo(data)}>
      <EmptyLine>
        {others.length > 0
          ? 'As it stands this way asks for no cut any more. Go back to the answer, or take another one.'
          : 'As it stands this worksheet asks for no cut. Change what it stands on, or go back to its answer.'}
      </EmptyLine>
      {others.length > 0 && <WayKeys data={data} ways={others} />}
    </Page>
  );
}

function WayKeys({ data, ways, way }: { data: WorksheetData; ways: readonly CutWay[]; way?: CutWay }) {
  return (
    <div class="cut-it-ways" role="group" aria-label="Which way">
      {ways.map((one) => (
        <Button key={one.id} chosen={one === way} onPress={() => goInstead(fieldAt(data, `cuts/${one.id}`))}>
          {one.name}
        </Button>
      ))}
    </div>
  );
}

type OffersProps = {
  readonly data: WorksheetData;
  readonly ways: readonly CutWay[];
  readonly way: CutWay;
  readonly picks: CutPicks;
  /** The cuts of this worksheet so far, once they are read. */
  readonly known: readonly Cut[] | undefined;
  readonly onPicks: (picks: CutPicks) => void;
  readonly onDone: () => void;
};

function Offers({ data, ways, way, picks, known, onPicks, onDone }: OffersProps) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const { job, worksheet } = data;
  const onList = (known ?? []).filter(({ state }) => STILL_STANDS.has(state));
  const notBegun = onList.filter(isNotBegun);
  const cuts = newCuts(data, way, picks);
  const put = async (instead: readonly Cut[]) => {
    const made =
      instead.length > 0
        ? await replaceCuts(
            store,
            instead.map(({ id }) => id),
            cuts,
          )
        : await createCuts(store, cuts);
    if (!made.ok) return setTrouble(sayStore(made.refusal));
    onDone();
    announce(`${howMany(cuts.length)} on the cut list.`);
    return goInstead({ at: 'cuts', jobId: job.id });
  };
  return (
    <Page
      title="Cut it"
      subtitle={worksheet.title}
      back={backTo(data)}
      foot={
        <Button kind="main" disabled={cuts.length === 0 || !known} onPress={() => put([])}>
          {onList.length > 0 ? 'Put on the list as well' : 'Put on the cut list'}
        </Button>
      }
    >
      <ReadingDoubts data={data} />
      {onList.length > 0 && (
        <section class="cut-it-there">
          <p>
            {`${howMany(onList.length)} of this worksheet ${onList.length === 1 ? 'is' : 'are'} on the list already: `}
            {onList.map((cut) => `${cutName(cut)} (${STATE_WORDS[cut.state]})`).join('; ')}.
          </p>
          <div class="cut-it-keys">
            <LinkButton href={hrefOf({ at: 'cuts', jobId: job.id })}>Go to the list</LinkButton>
            {notBegun.length > 0 && (
              <Button disabled={cuts.length === 0} onPress={() => put(notBegun)}>
                {replaceWords(notBegun.length, onList.length)}
              </Button>
            )}
          </div>
        </section>
      )}
      {ways.length > 1 && <WayKeys data={data} ways={ways} way={way} />}
      {way.unsure === true && (
        <p class="cut-it-unsure">
          Not sure yet: the worksheet still has a question open. Settle it first, or leave metal on.
        </p>
      )}
      <ol class="cut-it-list">
        {way.offers.map((offer, index) => (
          // The cuts of a way have no id of their own: their place in the order of work is what they are known by.
          // oxlint-disable-next-line react/no-array-index-key
          <li key={index}>
            <OfferCard
              data={data}
              way={way}
              index={index}
              offer={offer}
              picks={picks}
              onTick={() => onPicks(withTaken(picks, { way, index }))}
            />
          </li>
        ))}
      </ol>
      {trouble !== '' && (
        <p role="alert" class="text-field-trouble">
          {trouble}
        </p>
      )}
    </Page>
  );
}

function replaceWords(notBegun: number, onList: number): string {
  if (notBegun < onList) return 'Replace those not begun';
  return onList === 1 ? 'Replace it' : 'Replace them';
}

const STILL_STANDS: ReadonlySet<CutState> = new Set(['to-cut', 'cutting', 'to-size', 'over']);

type OfferCardProps = {
  readonly data: WorksheetData;
  readonly way: CutWay;
  readonly index: number;
  readonly offer: CutOffer;
  readonly picks: CutPicks;
  readonly onTick: () => void;
};

function OfferCard({ data, way, index, offer, picks, onTick }: OfferCardProps) {
  const { unit } = data;
  const place = { way, index };
  const taken = isTaken(picks, place);
  const material = materialOf(picks, place);
  const at = (what: string) => hrefOf(fieldAt(data, `cuts/${way.id}/${index}/${what}`));
  return (
    <section class="cut-it-offer" data-left-out={!taken}>
      <div class="cut-it-head">
        <h2>{unbroken(offer.name)}</h2>
        <Button chosen={taken} label={`${taken ? 'Leave out' : 'Take'} ${offer.name}`} onPress={onTick}>
          <TickMark taken={taken} />
        </Button>
      </div>
      <Figure offer={offer} unit={unit} />
      <p class="cut-it-off">{offWords(offer, unit)}</p>
      <p>{sayGood(offer, unit)}</p>
      {sayStrengthOfCut(offer) !== '' && <p>{sayStrengthOfCut(offer)}</p>}
      <p class="cut-it-from">{`Limits: ${offer.limitsFrom}.`}</p>
      <div class="cut-it-keys">
        <LinkButton href={at('machine')} label={`Machine: ${MACHINE_WORDS[machineOf(picks, place)]}`}>
          {capital(MACHINE_WORDS[machineOf(picks, place)])}
        </LinkButton>
        <LinkButton href={at('material')} label={`Material: ${materialWords(material)}`}>
          {material === undefined ? 'Material?' : materialWords(material)}
        </LinkButton>
      </div>
    </section>
  );
}

/** Where to cut to; a drill and a tap by their names. */
function Figure({ offer: { target, drill, thread }, unit }: { offer: CutOffer; unit: ShownUnit }) {
  const name = drill ?? thread?.replace('x', ' × ');
  return (
    <p class="cut-it-figure" data-long={(name ?? '').length > 7}>
      {name ?? (
        <>
          {figure(target, unit)} <span>{unit}</span>
        </>
      )}
    </p>
  );
}

function TickMark({ taken }: { taken: boolean }) {
  return (
    <svg viewBox="0 0 24 24" width="30" height="30" aria-hidden="true" class="cut-it-tick">
      {taken ? (
        <path d="M4 12.5l5.5 5.5L20 6.5" fill="none" stroke="currentColor" stroke-width="3.4" />
      ) : (
        <rect x="4" y="4" width="16" height="16" fill="none" stroke="currentColor" stroke-width="2.4" />
      )}
    </svg>
  );
}

function offWords({ of, present, target, drill, thread }: CutOffer, unit: ShownUnit): string {
  const off = present && metalBetween(of, present, target);
  const words = [
    drill === undefined && thread === undefined ? '' : `hole ${show(target, unit)}`,
    off && isMore(off, zero) ? `${figure(off, unit)} off ${show(present, unit)}` : '',
  ].filter((word) => word !== '');
  return words.length > 0 ? words.join(' · ') : 'blank not measured yet';
}

type PickScreenProps = {
  readonly data: WorksheetData;
  readonly way: CutWay;
  readonly index: number;
  readonly asked: 'machine' | 'material';
  readonly picks: CutPicks;
  readonly onPicks: (picks: CutPicks) => void;
};

function PickScreen({ data, way, index, asked, picks, onPicks }: PickScreenProps) {
  const place = { way, index };
  const offers = fieldAt(data, `cuts/${way.id}`);
  const name = way.offers[index]?.name ?? '';
  const pick = (next: CutPicks) => {
    onPicks(next);
    go(offers);
  };
  return (
    <Page
      title={asked === 'machine' ? 'On which machine?' : 'What is it made of?'}
      subtitle={name}
      back={{ href: hrefOf(offers), to: 'the cuts' }}
    >
      {asked === 'machine' ? (
        <ChoiceRows
          options={MACHINES.map((id) => ({ id, words: MACHINE_WORDS[id] }))}
          chosen={machineOf(picks, place)}
          onChoose={(id) => pick(withMachine(picks, place, id))}
        />
      ) : (
        <ChoiceRows
          options={materials.map(({ id, name: words }) => ({ id, words }))}
          chosen={materialOf(picks, place)}
          onChoose={(id) => pick(withMaterial(picks, place, id))}
        />
      )}
    </Page>
  );
}

function howMany(count: number): string {
  return count === 1 ? '1 cut' : `${count} cuts`;
}

function fieldAt({ job, worksheet }: WorksheetData, field: string) {
  return { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field } as const;
}

function backTo({ job, worksheet }: WorksheetData) {
  return { href: hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id }), to: 'the worksheet' };
}
