import { useEffect, useState } from 'preact/hooks';
import type { CutOffer } from '../../engine/cut/cut.ts';
import type { Length } from '../../engine/length/length.ts';
import { figure } from '../../engine/length/show.ts';
import { changeCut, removeCut } from '../../store/kept/cuts.ts';
import type { Cut, Id } from '../../store/base/records.ts';
import { hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import { jobOfFigures, useCutOlder } from '../older/job-ground.ts';
import { OlderMark } from '../older/older-mark.tsx';
import { basisNow, figuresOf } from '../worksheets/new-cuts.ts';
import { waysToCut } from '../worksheets/ways-to-cut.ts';
import { useWorksheetData } from '../worksheets/use-worksheet-data.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { nameNow, offerNow } from './offer-now.ts';
import './cut-form.css';

/** Said where a cut's figures are older than their sizes, with the one press that brings the new ones. */
export function OlderBasis({ cut, atTheLathe = false }: { cut: Cut; atTheLathe?: boolean }) {
  const older = useCutOlder(cut);
  const { workedOutIn, worksheetId = workedOutIn?.worksheetId } = cut;
  if (older !== true || worksheetId === undefined) return null;
  return <Older cut={cut} jobId={jobOfFigures(cut)} worksheetId={worksheetId} atTheLathe={atTheLathe} />;
}

type OlderProps = {
  readonly cut: Cut;
  readonly jobId: Id;
  readonly worksheetId: Id;
  /** There the mark and its key are all there is room for. */
  readonly atTheLathe: boolean;
};

function Older({ cut, jobId, worksheetId, atTheLathe }: OlderProps) {
  const { data, missing } = useWorksheetData(jobId, worksheetId);
  return (
    <section class="cut-form-older">
      <OlderMark />
      {missing && <p>The worksheet it came from was removed.</p>}
      {!missing && !atTheLathe && (
        <p>A size behind it has changed. The figures stay until you take the new ones.</p>
      )}
      {!missing && (
        <div class="cut-form-keys">
          {data && <TakeOver cut={cut} data={data} />}
          {!atTheLathe && (
            <LinkButton href={hrefOf({ at: 'worksheet', jobId, worksheetId })}>See the worksheet</LinkButton>
          )}
        </div>
      )}
    </section>
  );
}

/** What was read over one wire says nothing over another. */
function isOverOtherWires({ threading, passes }: Cut, offer: CutOffer): boolean {
  const wire = threading?.wire.exact;
  const now = offer.threading?.wire;
  return Object.keys(passes).length > 0 && wire !== undefined && now !== undefined && !isSameShown(wire, now);
}

// The wire of a cut is kept as it is shown.
function isSameShown(a: Length, b: Length): boolean {
  return figure(a, 'mm') === figure(b, 'mm');
}

function TakeOver({ cut, data }: { cut: Cut; data: WorksheetData }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const offers = waysToCut(data).flatMap((way) => way.offers);
  if (!offers) return null;
  const offer = offerNow(cut, offers);
  if (offer === 'several')
    return <p>The worksheet asks for several such cuts now: put the right one on the list from there.</p>;
  if (offer && isOverOtherWires(cut, offer))
    return <p>Its passes were read over other wires: take it off, and put it on the list anew.</p>;
  if (!offer) return <NotAskedFor cut={cut} data={data} />;
  const take = () => {
    const { blank, ...figures } = figuresOf(offer, data);
    const isBegun = Object.keys(cut.passes).length > 0;
    const changes = {
      ...figures,
      assumed: figures.assumed,
      setOver: figures.setOver,
      setOverWithin: figures.setOverWithin,
      stands: figures.stands,
      compoundDegrees: figures.compoundDegrees,
      threading: figures.threading,
      ...(blank && !isBegun && { blank }),
      name: nameNow(cut, offer),
      drill: offer.drill,
      thread: offer.thread,
      basis: basisNow(data),
    };
    return told(changeCut(store, cut.id, changes), () => announce('The new figures are taken over.'));
  };
  return (
    <>
      <Button onPress={() => take()}>Use the new figures</Button>
      <Trouble bare>{trouble}</Trouble>
    </>
  );
}

/** What the worksheet is right without: one that was made stands as it is, one that was not is taken off the list. */
function NotAskedFor({ cut, data }: { cut: Cut; data: WorksheetData }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const isGood = useIsGood(data);
  const isRight = cut.state === 'to-size' && isGood;
  const isNotCut = cut.state === 'to-cut';
  return (
    <>
      <p>The worksheet asks for no such cut any more.</p>
      {isRight && (
        <Button
          onPress={() =>
            told(changeCut(store, cut.id, { basis: basisNow(data) }), () =>
              announce('It stands as it was cut.'),
            )
          }
        >
          It is right as cut
        </Button>
      )}
      {isNotCut && (
        <Button onPress={() => told(removeCut(store, cut.id), () => announce('Taken off the list.'))}>
          Take it off the list
        </Button>
      )}
      <Trouble bare>{trouble}</Trouble>
    </>
  );
}

/** Whether its worksheet is good as it stands. The lathe doesn't wait for what judges every kind: no until it is there. */
function useIsGood(data: WorksheetData): boolean {
  const [judged, setJudged] = useState<{ readonly data: WorksheetData; readonly isGood: boolean }>();
  useEffect(() => {
    let wanted = true;
    import('../worksheets/worksheet-verdict.ts').then(
      ({ worksheetVerdict }) =>
        wanted && setJudged({ data, isGood: worksheetVerdict(data).found === 'good' }),
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [data]);
  return judged?.data === data && judged.isGood;
}
