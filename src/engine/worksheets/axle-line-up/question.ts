import { sizeStep } from '../../length/metal-on.ts';
import type { Estimate } from '../../reading/estimate.ts';
import { usualToolFor } from '../../reading/usual-tool.ts';
import { usualLeastLength } from '../../fit/tables/least-part.ts';
import type { Fields } from '../fields.ts';
import {
  axleFieldsFor,
  axleSideOf,
  axleSizeNames,
  isAxleLayout,
  isAxleSize,
  onHandField,
  type AxleGiven,
  type AxleSizeName,
} from './fields.ts';
import type { LineUpQuestion, ReadAgain } from './line-up.ts';
import { axleLayouts } from './tables/axle-layouts.ts';
import { usualLineUpLimits, type LineUpLimit } from './tables/line-up-limits.ts';

/** The question an axle worksheet asks the engine, once all its layout needs is known. */
export function axleQuestion(given: AxleGiven): LineUpQuestion | undefined {
  const name = given.choice('layout');
  if (!isAxleLayout(name)) return undefined;
  const layout = axleLayouts[name];
  const sizes = knownSizes(given);
  if (layout.needs.some((need) => !sizes[need])) return undefined;
  const first = given.choice('first');
  const slides = given.choice('slides');
  return {
    layout,
    side: axleSideOf(given),
    sizes,
    onHand: Object.fromEntries(
      layout.spacers.flatMap((spacer) => {
        const known = sizeNamed(given, onHandField(spacer));
        return known ? [[spacer, isSleeve(spacer) ? known.least : known.most] as const] : [];
      }),
    ),
    places: placesRead(given, layout.spacers),
    ...(first !== undefined && { first }),
    ...((slides === 'bracket' || slides === 'caliper') && { slides }),
    limits: axleLimits(given),
    usualLeast: usualLeastLength[given.unit],
    ...cutReadWith(given),
    readAgain: readAgainOf(given, axleFieldsFor(given)),
    step: sizeStep('length', given.dialFor('length')),
  };
}

/** A size by a name that a layout has for it. */
export function sizeNamed(given: AxleGiven, name: string) {
  return isAxleSize(name) ? given.size(name) : undefined;
}

/** Of what this axle asks to be read on the machine: what was read before a part was cut as the reading had asked. */
function readAgainOf(given: AxleGiven, fields: Fields): readonly ReadAgain[] {
  return Object.keys(fields).flatMap((name) => {
    const before = isAxleSize(name) ? given.readBefore(name) : undefined;
    return before?.byItsAnswer === true ? [{ name, why: before.why }] : [];
  });
}

/** Nobody knows yet what a cut will be measured with: the shop's usual caliper, so that a closer tool only leaves more. */
function cutReadWith({ tools, unit }: AxleGiven): Pick<LineUpQuestion, 'cutReadWith'> {
  const tool = usualToolFor({ tools, kind: 'length', unit });
  return tool ? { cutReadWith: tool } : {};
}

/** How far things may be off: the fitter's own figures, else the usual ones. */
export function axleLimits(given: AxleGiven): LineUpQuestion['limits'] {
  const usual = usualLineUpLimits[given.unit];
  const own = (name: AxleSizeName, instead: LineUpLimit): LineUpLimit => {
    const by = given.exact(name);
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
function placesRead(given: AxleGiven, spacers: readonly string[]): NonNullable<LineUpQuestion['places']> {
  const fields = Object.fromEntries(spacers.map((spacer) => [onHandField(spacer), spacer] as const));
  return Object.fromEntries(
    axleSizeNames.flatMap((name) => {
      const known = given.size(name);
      return known ? [[fields[name] ?? name, { least: known.least, most: known.most }] as const] : [];
    }),
  );
}

// A length binds at its longest place, a gap at its narrowest: both are the tightest.
export function knownSizes(given: AxleGiven): Readonly<Record<string, Estimate>> {
  return Object.fromEntries(
    axleSizeNames.flatMap((name) => {
      const known = given.size(name);
      return known ? [[name, known.tightest] as const] : [];
    }),
  );
}
