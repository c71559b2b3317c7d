import { inShopWords } from '../../engine/length/american-words.ts';
import type { WorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import type { AnyGiven } from '../../engine/worksheets/given.ts';
import type { Drawn, DrawingBox, DrawnSize } from './frame/drawn.ts';
import { drawBearing } from './bearing-seat/bearing-drawing.tsx';
import { drawSpacerStack } from './spacer-stack/stack-drawing.tsx';
import { drawHoleAndPin } from './hole-and-pin/hole-drawing.tsx';
import { drawFit } from './fit/fit-drawing.tsx';
import { drawAdapterPlate } from './adapter-plate/plate-drawing.tsx';
import { drawAxle } from './axle-line-up/axle-drawing.tsx';
import { drawBushing } from './bushing/bushing-drawing.tsx';
import { drawMisplacedHole } from './misplaced-hole/misplaced-hole-drawing.tsx';
import { drawAlignment } from './alignment/alignment-drawing.tsx';
import { drawTaper } from './taper/taper-drawing.tsx';
import { drawRing } from './ring/ring-drawing.tsx';
import { drawSteering } from './steering-geometry/steering-drawing.tsx';
import { drawJoint } from './thread-engagement/joint-drawing.tsx';
import { drawThreadCut } from './thread-cut/thread-cut-drawing.tsx';
import { drawInsert } from './thread-insert/insert-drawing.tsx';

export type Draw = (given: AnyGiven, box: DrawingBox) => Drawn;

/** The drawing of each kind. A new kind is one line here and one in the engine's registry. */
export const drawings: Readonly<Record<WorksheetKind, Draw>> = {
  'spacer-stack': inShop(drawSpacerStack),
  'hole-and-pin': inShop(drawHoleAndPin),
  fit: inShop(drawFit),
  bushing: inShop(drawBushing),
  'misplaced-hole': inShop(drawMisplacedHole),
  'adapter-plate': inShop(drawAdapterPlate),
  'thread-insert': inShop(drawInsert),
  'thread-cut': inShop(drawThreadCut),
  ring: inShop(drawRing),
  taper: inShop(drawTaper),
  'bearing-seat': inShop(drawBearing),
  'axle-line-up': inShop(drawAxle),
  'thread-engagement': inShop(drawJoint),
  alignment: inShop(drawAlignment),
  'steering-geometry': inShop(drawSteering),
};

/** Lettered in the words of the shop: a drawing stands beside the account and says what it says. */
function inShop(draw: Draw): Draw {
  return (given, box) => {
    const { sizes, running, words, shapes } = draw(given, box);
    const said = (text: string) => inShopWords(text, given.unit);
    return {
      shapes,
      words: said(words),
      sizes: sizes.map((size) => inWordsOf(size, said)),
      ...(running && { running: { ...running, text: said(running.text) } }),
    };
  };
}

// A part of a stack has the name that the fitter gave it.
function inWordsOf(size: DrawnSize, said: (text: string) => string): DrawnSize {
  if (size.field.startsWith('part/')) return size;
  return { ...size, name: said(size.name), said: size.said && said(size.said) };
}
