import type { CutWay } from '../../cut/cuts-of-way.ts';
import type { ShownUnit } from '../../length/show.ts';
import type { WayBlock } from '../account.ts';
import type { Route } from './hole-and-pin-routes.ts';
import { ROUTE_NAMES } from './say-routes.ts';
import { reamerName, sayDeed, sayOpening } from './say-way-deeds.ts';
import { sayWhyOut } from './say-why-out.ts';

/** What a way is called and does, in few words, and the cut whose target it shows. */
export type SaidWay = Pick<WayBlock, 'title' | 'detail' | 'cut' | 'goes'>;

type Shown = {
  readonly cuts: readonly CutWay[];
  readonly isBolt: boolean;
  readonly unit: ShownUnit;
};

/**
 * A way in the words of the page: what to drill, ream, tap or turn, each figure that of the cut itself; why not, where it is
 * ruled out.
 */
export function sayWay(route: Route, { cuts, isBolt, unit }: Shown): SaidWay {
  const title = titleOf(route, isBolt, unit);
  if (route.state === 'out') return { title, detail: sayWhyOut(route.why, unit) };
  const offers = cuts.find(({ id }) => id === route.kind)?.offers ?? [];
  const [first] = offers;
  return {
    title,
    detail: sayDeed(route, offers, unit),
    ...(first && { cut: first.name, goes: route.kind }),
  };
}

/** A bore too tight for its pin is opened for it. */
export function sayOpenBore({ id, name, offers }: CutWay, unit: ShownUnit): SaidWay {
  const [offer] = offers;
  return {
    title: name,
    detail: offer ? `${sayOpening(offer, undefined, unit)}. Then the pin that is there fits.` : '',
    ...(offer && { cut: offer.name }),
    goes: id,
  };
}

function titleOf({ kind, steps }: Route, isBolt: boolean, unit: ShownUnit): string {
  const pin = isBolt ? 'bolt' : 'pin';
  for (const step of steps) {
    if (step.do === 'new-pin') return `${shankName(step.shank, isBolt)} ${pin}`;
    if (step.do === 'ream-for-bushing')
      return `${ROUTE_NAMES[kind]}, ${reamerName(step.reamer, unit)} outside`;
  }
  return kind === 'larger-pin' ? `Larger ${pin}` : ROUTE_NAMES[kind];
}

// A pin has no thread to be called M12 by.
function shankName({ name, family }: { name: string; family: 'inch' | 'metric' }, isBolt: boolean): string {
  if (family === 'inch') return name.replace(/ in$/, '');
  return isBolt ? name : `${name.slice(1)} mm`;
}
