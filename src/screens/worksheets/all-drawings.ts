import { inShopWords } from '../../engine/length/american-words.ts';
import { worksheets, type WorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import type { AnyGiven } from '../../engine/worksheets/given.ts';
import { withoutImpossible } from '../../engine/worksheets/impossible-size.ts';
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
  'spacer-stack': inShop('spacer-stack', drawSpacerStack),
  'hole-and-pin': inShop('hole-and-pin', drawHoleAndPin),
  fit: inShop('fit', drawFit),
  bushing: inShop('bushing', drawBushing),
  'misplaced-hole': inShop('misplaced-hole', drawMisplacedHole),
  'adapter-plate': inShop('adapter-plate', drawAdapterPlate),
  'thread-insert': inShop('thread-insert', drawInsert),
  'thread-cut': inShop('thread-cut', drawThreadCut),
  ring: inShop('ring', drawRing),
  taper: inShop('taper', drawTaper),
  'bearing-seat': inShop('bearing-seat', drawBearing),
  'axle-line-up': inShop('axle-line-up', drawAxle),
  'thread-engagement': inShop('thread-engagement', drawJoint),
  alignment: inShop('alignment', drawAlignment),
  'steering-geometry': inShop('steering-geometry', drawSteering),
};

/** Lettered in the words of the shop: a drawing stands beside the account and says what it says. Nothing is drawn of a size that can't be. */
function inShop(kind: WorksheetKind, draw: Draw): Draw {
  const { fields } = worksheets[kind];
  return (given, box) => {
    const { sizes, running, words, shapes } = draw(withoutImpossible(fields, given), box);
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
