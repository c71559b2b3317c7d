import { useState } from 'preact/hooks';
import { changeCut } from '../../store/cuts.ts';
import { featuresOf } from '../../store/features.ts';
import { readingsOfJob } from '../../store/readings.ts';
import { getWorksheet } from '../../store/worksheets.ts';
import type { Cut, Id } from '../../store/records.ts';
import { sayStore } from '../../store/say-store.ts';
import { hrefOf } from '../address.ts';
import { announce } from '../common/announce.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { basisNow, figuresOf } from '../worksheets/new-cuts.ts';
import { useWaysToCut } from '../worksheets/use-ways-to-cut.ts';
import { useWorksheetData } from '../worksheets/use-worksheet-data.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { isCutOlder } from './cut-older.ts';
import { nameNow, offerNow } from './offer-now.ts';
import './cut-form.css';

/** Said where a cut's figures were worked out from readings that no longer stand, with the way to the new ones. */
export function OlderBasis({ cut }: { cut: Cut }) {
  const { basis, worksheetId } = cut;
  if (!basis || worksheetId === undefined) return null;
  return <Older cut={cut} worksheetId={worksheetId} />;
}

function Older({ cut, worksheetId }: { cut: Cut; worksheetId: Id }) {
  const state = useLive(
    `basis/${cut.id}/${cut.state}/${cut.basis?.readings.join(' ') ?? ''}/${cut.basis?.worksheet ?? ''}`,
    ['worksheets', 'features', 'readings', 'cuts'],
    async (store) => {
      const [worksheet, features, readings] = await Promise.all([
        getWorksheet(store, worksheetId),
        featuresOf(store, cut.jobId),
        readingsOfJob(store, cut.jobId),
      ]);
      return {
        older: isCutOlder(cut, { worksheet, features, readings }),
        gone: worksheet === undefined,
      };
    },
  );
  if (state?.older !== true) return null;
  return (
    <section class="cut-form-older">
      <p>
        <strong>Worked out from older readings.</strong>{' '}
        {state.gone
          ? 'The worksheet it came from was removed.'
          : 'A reading or the worksheet has changed since; its figures stay as they were until you take the new ones.'}
      </p>
      {!state.gone && <NewFigures cut={cut} worksheetId={worksheetId} />}
    </section>
  );
}

function NewFigures({ cut, worksheetId }: { cut: Cut; worksheetId: Id }) {
  const { data } = useWorksheetData(cut.jobId, worksheetId);
  return (
    <div class="cut-form-keys">
      <LinkButton href={hrefOf({ at: 'worksheet', jobId: cut.jobId, worksheetId })}>
        See the worksheet
      </LinkButton>
      {data && <TakeOver cut={cut} data={data} />}
    </div>
  );
}

function TakeOver({ cut, data }: { cut: Cut; data: WorksheetData }) {
  const store = useStore();
  const [trouble, setTrouble] = useState('');
  const offers = useWaysToCut(data)?.flatMap((way) => way.offers);
  if (!offers) return null;
  const offer = offerNow(cut, offers);
  if (offer === 'several')
    return <p>The worksheet asks for several such cuts now: put the right one on the list from there.</p>;
  if (!offer) return <p>The worksheet asks for no such cut any more.</p>;
  const take = async () => {
    const { blank, ...figures } = figuresOf(offer, data);
    const isBegun = Object.keys(cut.passes).length > 0;
    const changed = await changeCut(store, cut.id, {
      ...figures,
      ...(blank && !isBegun && { blank }),
      name: nameNow(cut, offer),
      drill: offer.drill,
      thread: offer.thread,
      basis: basisNow(data),
    });
    if (changed.ok) announce('The new figures are taken over.');
    else setTrouble(sayStore(changed.refusal));
  };
  return (
    <>
      <Button onPress={() => take()}>Use the new figures</Button>
      {trouble !== '' && <p role="alert">{trouble}</p>}
    </>
  );
}
