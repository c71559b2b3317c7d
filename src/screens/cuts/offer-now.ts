import { cutName } from '../../engine/thread/tap-name.ts';
import type { CutOffer } from '../../engine/cut/cut.ts';
import { toText } from '../../engine/length/length.ts';
import type { Cut } from '../../store/base/records.ts';

/**
 * What a worksheet asks for now in place of a cut: by its name, else by what is cut on which part. Where that comes to
 * more than one set of figures, nobody but the fitter knows which he meant.
 */
export function offerNow(
  cut: Pick<Cut, 'name' | 'part' | 'operation' | 'of'>,
  offers: readonly CutOffer[],
): CutOffer | 'several' | undefined {
  const named = offers.filter((offer) => cutName(offer) === cutName(cut));
  const fitting = named.length > 0 ? named : offers.filter((offer) => isSameCut(offer, cut));
  return new Set(fitting.map(figuresText)).size > 1 ? 'several' : fitting[0];
}

/** A name that tells the drill, the reamer or the thread follows them; one the fitter gave stays. */
export function nameNow(cut: Pick<Cut, 'name'>, offer: Pick<CutOffer, 'name'>): string {
  return isMadeOf(firstWords(offer.name), cutName(cut)) ? offer.name : cut.name;
}

// "Hole, drilled" of "Hole, drilled 8.4 mm".
function firstWords(name: string): string {
  return name.split(' ').slice(0, 2).join(' ');
}

function isMadeOf(words: string, name: string): boolean {
  return name === words || name.startsWith(`${words} `);
}

function isSameCut(
  offer: Pick<Cut, 'part' | 'operation' | 'of'>,
  cut: Pick<Cut, 'part' | 'operation' | 'of'>,
): boolean {
  return offer.part === cut.part && offer.operation === cut.operation && offer.of === cut.of;
}

function figuresText(offer: CutOffer): string {
  const { target, lower, upper, drill, thread, setOver, at, compoundDegrees, threading } = offer;
  const off = setOver ? toText(setOver.by) : (compoundDegrees?.toFixed(5) ?? '');
  const place = at ? `${toText(at.x)} ${toText(at.y)}` : '';
  return [
    toText(target),
    toText(lower),
    toText(upper),
    drill ?? '',
    thread ?? '',
    off,
    place,
    sayWire(threading),
  ].join(' ');
}

function sayWire(threading: CutOffer['threading']): string {
  return threading ? `${toText(threading.wire)} ${threading.infeed} ${threading.hand}` : '';
}
