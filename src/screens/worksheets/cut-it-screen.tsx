import { inShopWords } from '../../engine/length/american-words.ts';
import { cutName } from '../../engine/thread/tap-name.ts';
import { type CutWay } from '../../engine/cut/cuts-of-way.ts';
import { materialsFor } from '../../engine/material/tables/materials.ts';
import { createCuts, cutsOf } from '../../store/kept/cuts.ts';
import type { Cut, CutState } from '../../store/base/records.ts';
import type { StoreResult } from '../../store/base/store-refusal.ts';
import { isNotBegun, replaceCuts } from '../../store/kept/replace-cuts.ts';
import { go, goInstead, hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { useTextDraft } from '../common/use-draft.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { ChoiceRows } from '../cuts/choice-rows.tsx';
import { MACHINES, MACHINE_WORDS, STATE_WORDS } from '../cuts/cut-words.ts';
import { keepMetalOf, metalOfPart } from '../cuts/known-metal.ts';
import {
  isMaterialSaid,
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
import { backTo, fieldAt } from './cut-it-places.ts';
import { newCuts } from './new-cuts.ts';
import { OfferCard } from './offer-card.tsx';
import { onePartPlaces, onePartWay } from './spacer-stack/one-part-way.ts';
import { ReadingDoubts } from './reading-doubts.tsx';
import { waysToCut } from './ways-to-cut.ts';
import type { WorksheetData } from './worksheet-data.ts';
import './cut-it-screen.css';

/** What goes to the cut list, all ticked. `path` is cuts, cuts/<way>, or cuts/<way>/<cut>/machine or material. */
export function CutItScreen({ data, path }: { data: WorksheetData; path: string }) {
  const ways = waysToCut(data);
  const draft = useTextDraft(`worksheet/${data.worksheet.id}/cuts`);
  const known = useLive(`cuts/${data.job.id}`, ['cuts'], (from) => cutsOf(from, data.job.id));
  const [, wayId = '', place = '', asked = ''] = path.split('/');
  const onePart = onePartWay(data, onePartPlaces(wayId));
  const all = onePart ? [onePart, ...ways] : ways;
  // Never another way than the one that was pressed: it would make another part.
  const way = wayId === '' ? all[0] : all.find(({ id }) => id === wayId);
  if (!way) return <NothingToCut data={data} others={wayId === '' ? [] : ways} />;
  const ofWorksheet = (known ?? []).filter((cut) => cut.worksheetId === data.worksheet.id);
  const said = readPicks(draft.text);
  const picks = withKnownMaterials(said, [...metalsRead(data, way, ofWorksheet), ...ofWorksheet]);
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
      said={said}
      known={known && ofWorksheet}
      onPicks={(next) => draft.change(picksText(next))}
      onDone={draft.clear}
    />
  );
}

/** What the parts of a way are made of, where it was said when their sizes were read. */
function metalsRead({ worksheet, features }: WorksheetData, way: CutWay, cuts: readonly Cut[]) {
  return way.offers.flatMap(({ part, present, material: worked }) => {
    if (worked !== undefined) return [];
    const material = metalOfPart({ worksheet, part, isThere: present !== undefined }, { features, cuts });
    return material === undefined ? [] : [{ part, material }];
  });
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
  /** What of them was tapped here. */
  readonly said: CutPicks;
  /** The cuts of this worksheet so far, once they are read. */
  readonly known: readonly Cut[] | undefined;
  readonly onPicks: (picks: CutPicks) => void;
  readonly onDone: () => void;
};

function Offers({ data, ways, way, picks, said, known, onPicks, onDone }: OffersProps) {
  const cuts = newCuts(data, way, picks);
  const { trouble, put } = usePutOnList(data, { cuts, said, onDone });
  const onList = (known ?? []).filter(({ state }) => STILL_STANDS.has(state));
  return (
    <Page
      title="Cut it"
      subtitle={data.worksheet.title}
      back={backTo(data)}
      foot={
        <Button kind="main" disabled={cuts.length === 0 || !known} onPress={() => put([])}>
          {onList.length > 0 ? 'Put on the list as well' : 'Put on the cut list'}
        </Button>
      }
    >
      <ReadingDoubts data={data} />
      {onList.length > 0 && (
        <OnListAlready jobId={data.job.id} onList={onList} canReplace={cuts.length > 0} onReplace={put} />
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
              place={{ way, index }}
              offer={offer}
              picks={picks}
              onTick={() => onPicks(withTaken(picks, { way, index }))}
            />
          </li>
        ))}
      </ol>
      <Trouble>{trouble}</Trouble>
    </Page>
  );
}

type PutOnList = Pick<OffersProps, 'said' | 'onDone'> & { readonly cuts: ReturnType<typeof newCuts> };

/** The press that puts the cuts on the list, in place of some that stand there or beside them. */
function usePutOnList({ job }: WorksheetData, { cuts, said, onDone }: PutOnList) {
  const store = useStore();
  const { trouble, told } = useTold();
  const putOn = async (instead: readonly Cut[]): Promise<StoreResult<unknown>> => {
    for (const cut of cuts) {
      // oxlint-disable-next-line no-await-in-loop -- one act after the other
      const kept = await keepMetalOf(store, cut, isMaterialSaid(said, cut));
      if (!kept.ok) return kept;
    }
    const gone = instead.map(({ id }) => id);
    return gone.length > 0 ? replaceCuts(store, gone, cuts) : createCuts(store, cuts);
  };
  const put = (instead: readonly Cut[]) =>
    told(putOn(instead), () => {
      onDone();
      announce(`${howMany(cuts.length)} on the cut list.`);
      goInstead({ at: 'cuts', jobId: job.id });
    });
  return { trouble, put };
}

type OnListProps = {
  readonly jobId: string;
  readonly onList: readonly Cut[];
  readonly canReplace: boolean;
  readonly onReplace: (instead: readonly Cut[]) => unknown;
};

/** What of this worksheet stands on the list; what was not begun can give way. */
function OnListAlready({ jobId, onList, canReplace, onReplace }: OnListProps) {
  const notBegun = onList.filter(isNotBegun);
  return (
    <section class="cut-it-there">
      <p>
        {`${howMany(onList.length)} of this worksheet ${onList.length === 1 ? 'is' : 'are'} on the list already: `}
        {onList.map((cut) => `${cutName(cut)} (${STATE_WORDS[cut.state]})`).join('; ')}.
      </p>
      <div class="cut-it-keys">
        <LinkButton href={hrefOf({ at: 'cuts', jobId })}>Go to the list</LinkButton>
        {notBegun.length > 0 && (
          <Button disabled={!canReplace} onPress={() => onReplace(notBegun)}>
            {replaceWords(notBegun.length, onList.length)}
          </Button>
        )}
      </div>
    </section>
  );
}

function replaceWords(notBegun: number, onList: number): string {
  if (notBegun < onList) return 'Replace those not begun';
  return onList === 1 ? 'Replace it' : 'Replace them';
}

const STILL_STANDS: ReadonlySet<CutState> = new Set(['to-cut', 'cutting', 'to-size', 'over']);

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
          options={materialsFor(data.unit).map(({ id, name: metal }) => ({
            id,
            words: inShopWords(metal, data.unit),
          }))}
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
