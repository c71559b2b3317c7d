import { metalBetween, type CutOffer } from '../../engine/cut/cut.ts';
import { saySpot } from '../../engine/cut/say-spot.ts';
import { sayCompound } from '../../engine/cut/say-compound.ts';
import { saySetOver } from '../../engine/cut/say-set-over.ts';
import { sayThreading } from '../../engine/cut/say-threading.ts';
import { sayStrengthOfCut } from '../../engine/cut/say-strength.ts';
import { isMore, zero } from '../../engine/length/length.ts';
import { capital } from '../../engine/length/say-words.ts';
import { figure, show, type ShownUnit } from '../../engine/length/show.ts';
import { sayGood } from '../../engine/worksheets/ring/say-ring.ts';
import { hrefOf } from '../address.ts';
import { Button, LinkButton } from '../common/button.tsx';
import { unbroken } from '../common/unbroken.tsx';
import { MACHINE_WORDS, materialWords } from '../cuts/cut-words.ts';
import { fieldAt } from './cut-it-places.ts';
import { isTaken, machineOf, materialOf, type CutPicks, type CutPlace } from './cut-picks.ts';
import type { WorksheetData } from './worksheet-data.ts';
import './cut-it-screen.css';

type OfferCardProps = {
  readonly data: WorksheetData;
  readonly place: CutPlace;
  readonly offer: CutOffer;
  readonly picks: CutPicks;
  readonly onTick: () => void;
};

/** One cut that a worksheet offers: where to, its limits, and on which machine. */
export function OfferCard({ data, place, offer, picks, onTick }: OfferCardProps) {
  const { unit } = data;
  const taken = isTaken(picks, place);
  const material = materialOf(picks, place);
  const at = (what: string) => hrefOf(fieldAt(data, `cuts/${place.way.id}/${place.index}/${what}`));
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
      {offer.at && <p>{`At ${saySpot(offer.at, unit)} from the zero.`}</p>}
      {offer.setOver && <p>{saySetOver(offer.setOver, unit).join(' ')}</p>}
      {offer.compoundDegrees !== undefined && <p>{sayCompound(offer.compoundDegrees, unit).join(' ')}</p>}
      {offer.threading && <p>{sayThreading(offer.threading, offer.present, unit).join(' ')}</p>}
      <p class="cut-it-from">{`Limits: ${offer.limitsFrom}.`}</p>
      <div class="cut-it-keys">
        <LinkButton href={at('machine')} label={`Machine: ${MACHINE_WORDS[machineOf(picks, place)]}`}>
          {capital(MACHINE_WORDS[machineOf(picks, place)])}
        </LinkButton>
        <LinkButton href={at('material')} label={`Material: ${materialWords(material, unit)}`}>
          {material === undefined ? 'Material?' : materialWords(material, unit)}
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
