import { dialFor } from '../common/slides.ts';
import { sizeStep } from '../../engine/length/metal-on.ts';
import type { Estimate } from '../../engine/reading/estimate.ts';
import { usualToolFor } from '../../engine/reading/usual-tool.ts';
import type { LineUpQuestion } from '../../engine/worksheets/axle-line-up/line-up.ts';
import { axleLayouts } from '../../engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { usualLeastLength } from '../../engine/fit/tables/least-part.ts';
import {
  usualLineUpLimits,
  type LineUpLimit,
} from '../../engine/worksheets/axle-line-up/tables/line-up-limits.ts';
import { onHandField } from './axle-line-up-fields.ts';
import { axleSide, isAxleLayout } from './axle-line-up-plan.ts';
import { exactSize, knownSize, type WorksheetData } from './worksheet-data.ts';

/** The question an axle worksheet asks the engine, once all its layout needs is known. */
export function axleLineUpQuestion(data: WorksheetData): LineUpQuestion | undefined {
  const { choices } = data.worksheet;
  const name = choices['layout'];
  if (!isAxleLayout(name)) return undefined;
  const layout = axleLayouts[name];
  const sizes = knownSizes(data);
  if (layout.needs.some((need) => !sizes[need])) return undefined;
  const { first, slides } = choices;
  return {
    layout,
    side: axleSide(choices),
    sizes,
    onHand: Object.fromEntries(
      layout.spacers.flatMap((spacer) => {
        const known = knownSize(data, data.worksheet.sizes[onHandField(spacer)]);
        return known ? [[spacer, isSleeve(spacer) ? known.least : known.most] as const] : [];
      }),
    ),
    places: placesRead(data, layout.spacers),
    ...(first !== undefined && { first }),
    ...((slides === 'bracket' || slides === 'caliper') && { slides }),
    limits: axleLimits(data),
    usualLeast: usualLeastLength[data.unit],
    ...cutReadWith(data),
    step: sizeStep('length', dialFor('length', data.dial)),
  };
}

/** Nobody knows yet what a cut will be measured with: the shop's usual caliper, so that a closer tool only leaves more. */
function cutReadWith({ tools, unit }: WorksheetData): Pick<LineUpQuestion, 'cutReadWith'> {
  const tool = usualToolFor({ tools, kind: 'length', unit });
  return tool ? { cutReadWith: tool } : {};
}

/** How far things may be off: the fitter's own figures, else the usual ones. */
export function axleLimits(data: WorksheetData): LineUpQuestion['limits'] {
  const usual = usualLineUpLimits[data.unit];
  const own = (name: string, instead: LineUpLimit): LineUpLimit => {
    const by = exactSize(data, data.worksheet.sizes[name]);
    return by ? { by, source: 'your own limit' } : instead;
  };
  return {
    spacer: own('spacerLimit', usual.spacer),
    // A fitter who says how far parts may be off, and nothing of the room they fill, means both.
    opening: own('openingLimit', own('spacerLimit', usual.opening)),
    line: own('lineLimit', usual.line),
    wearMargin: own('wearMargin', usual.wearMargin),
    discClearance: own('discClearance', usual.discClearance),
    leastFloat: usual.leastFloat,
    discRunout: usual.discRunout,
  };
}

/** What floats on a sleeve binds at its shortest place; any other spacer takes room where it is thickest. */
function isSleeve(spacer: string): boolean {
  return spacer.toLowerCase().endsWith('sleeve');
}

/** Both ends of every size that was read at several places, parts on hand by their spacer's name. */
function placesRead(data: WorksheetData, spacers: readonly string[]): NonNullable<LineUpQuestion['places']> {
  const fields = Object.fromEntries(spacers.map((spacer) => [onHandField(spacer), spacer] as const));
  return Object.fromEntries(
    Object.entries(data.worksheet.sizes).flatMap(([name, input]) => {
      const known = knownSize(data, input);
      return known ? [[fields[name] ?? name, { least: known.least, most: known.most }] as const] : [];
    }),
  );
}

// A length binds at its longest place, a gap at its narrowest: both are the tightest.
function knownSizes(data: WorksheetData): Readonly<Record<string, Estimate>> {
  return Object.fromEntries(
    Object.entries(data.worksheet.sizes).flatMap(([name, input]) => {
      const known = knownSize(data, input);
      return known ? [[name, known.tightest] as const] : [];
    }),
  );
}
