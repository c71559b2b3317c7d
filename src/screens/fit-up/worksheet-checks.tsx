import { sayWanted } from '../../engine/reading/say-check.ts';
import { createCheck } from '../../store/kept/checks.ts';
import { go } from '../address.ts';
import { Row } from '../common/row.tsx';
import { useStore } from '../common/store-context.ts';
import { Trouble, useTold } from '../common/told.tsx';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { knownCheck, useFitUp, type FitUpData } from './check-data.ts';
import { checkFromOffer, checkOfOffer, offerFor } from './check-from-offer.ts';
import { CheckRow } from './fit-up-screen.tsx';
import { offersOf } from './offers.ts';
import './new-check-screen.css';

/** On a worksheet: what its answer wants proved on the machine, each one press from its check. */
export function WorksheetChecks({ data }: { readonly data: WorksheetData }) {
  const { data: fitUp } = useFitUp(data.job.id);
  return fitUp ? <Checks data={data} fitUp={fitUp} /> : null;
}

function Checks({ data, fitUp }: { readonly data: WorksheetData; readonly fitUp: FitUpData }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const { worksheet, unit, job } = data;
  const offers = offersOf(data);
  const made = fitUp.checks.filter((check) => check.worksheetId === worksheet.id);
  const open = offers.filter((offer) => checkOfOffer(offer, worksheet.id, made) === undefined);
  if (made.length === 0 && open.length === 0) return null;
  const make = (offer: (typeof offers)[number]) =>
    told(createCheck(store, checkFromOffer(offer, { ...fitUp, worksheet, unit })), ({ id }) =>
      go({ at: 'check', jobId: job.id, checkId: id }),
    );
  // In the order the worksheet has them, its own that it no longer offers behind.
  const inOrder = made.toSorted((a, b) => placeOf(a) - placeOf(b));
  function placeOf(check: (typeof made)[number]): number {
    const offer = offerFor(check, offers);
    return offer ? offers.indexOf(offer) : offers.length;
  }
  return (
    <section class="new-check not-printed">
      <h2>Check it on the machine</h2>
      <ul>
        {inOrder.map((check) => (
          <li key={check.id}>
            <CheckRow known={knownCheck(fitUp, check)} unit={unit} onWorksheet />
          </li>
        ))}
        {open.map((offer) => (
          <li key={offer.name}>
            <Row
              title={offer.name}
              detail={sayWanted({ by: offer.by, limits: offer.limits, unit })}
              onPress={() => make(offer)}
            />
          </li>
        ))}
      </ul>
      <Trouble>{trouble}</Trouble>
    </section>
  );
}
