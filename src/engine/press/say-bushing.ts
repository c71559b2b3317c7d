import { grouped, marked } from '../length/decimal-text.ts';
import type { BushingRefusal } from './bushing.ts';
import type { HeatLimit } from './bushing-heat.ts';
import type { BushingWarning } from './bushing-warnings.ts';
import { fahrenheitOf, type HeatWay } from './heat-fit.ts';
import { absolute, isMore, isNegative, zero } from '../length/length.ts';
import { NEWTON_PER_LBF, PSI_PER_MPA } from '../material/material.ts';
import { sayFitRefusal } from '../fit/say-fit.ts';
import { sayUnderLeast } from '../length/say-least.ts';
import { uncapital } from '../length/say-words.ts';
import { figure, show, type ShownUnit } from '../length/show.ts';

/** Why a bushing can't be worked out, and what to do. */
export function sayBushingRefusal(refusal: BushingRefusal, unit: ShownUnit): string {
  const size = (length: Parameters<typeof show>[0]) => show(length, unit);
  switch (refusal.code) {
    case 'no-reamer':
      return `No standard reamer is ${size(refusal.needs)} or larger. Bore it, and type the size you bore to.`;
    case 'reams-too-small':
      return `${size(refusal.reamTo)} does not clean the worn bore up: it takes ${size(refusal.needs)} at least. Go larger.`;
    case 'no-bushing-wall':
      return `At ${size(refusal.reamTo)} there is no room for a bushing: its own bore is ${size(refusal.inside)}. Go larger, or run a thinner pin.`;
    case 'breaks-through':
      return `Opened to ${size(refusal.reamTo)} the bore breaks through the part’s edge${isMore(refusal.by, zero) ? ` by ${size(refusal.by)}` : ''}. Ream to less, or make the part new.`;
    default:
      return sayFitRefusal(refusal, unit);
  }
}

/** A stress in the unit of the sizes first: `4,870 psi (33.6 MPa)`. */
export function sayStress(mpa: number, unit: ShownUnit): string {
  const metric = `${significant(mpa)} MPa`;
  const inch = `${inThousands(mpa * PSI_PER_MPA)} psi`;
  return unit === 'in' ? `${inch} (${metric})` : `${metric} (${inch})`;
}

/** A force in the unit of the sizes first: `1,240 lbf (5.5 kN)`. */
export function sayForce(newtons: number, unit: ShownUnit): string {
  const metric = newtons < 1000 ? `${significant(newtons)} N` : `${significant(newtons / 1000)} kN`;
  const inch = `${inThousands(newtons / NEWTON_PER_LBF)} lbf`;
  return unit === 'in' ? `${inch} (${metric})` : `${metric} (${inch})`;
}

/** A temperature in the unit of the sizes first: `248 °F (120 °C)`. */
export function sayTemperature(celsius: number, unit: ShownUnit): string {
  return inBoth(unit, celsius, fahrenheitOf(celsius));
}

function inBoth(unit: ShownUnit, celsius: number, fahrenheit: number): string {
  const metric = `${signed(celsius)} °C`;
  const inch = `${signed(fahrenheit)} °F`;
  return unit === 'in' ? `${inch} (${metric})` : `${metric} (${inch})`;
}

const BY_HAND = 'drops in by hand, in insulated gloves';

/** What would be spoilt first: `the acetal bushing`, `the part’s plating`. */
export function sayHeatLimited({ of, material }: HeatLimit): string {
  switch (of) {
    case 'hardened':
      return 'the hardened part';
    case 'plated':
      return 'the plated part';
    default:
      return `the ${uncapital(material.replace(/[,(].*/, '').trim())} ${of}`;
  }
}

const NOT_HEATED = 'a plated part is not heated';

function sayHeatBorne(most: HeatLimit, unit: ShownUnit): string {
  return `${sayHeatLimited(most)} takes ${sayTemperature(most.celsius, unit)} at most`;
}

/** At least so hot: never shown below what it takes. */
function sayAtLeastSoHot(celsius: number, unit: ShownUnit): string {
  return inBoth(unit, Math.ceil(nearly(celsius)), Math.ceil(nearly(fahrenheitOf(celsius))));
}

/** At least so cold: never shown above what it takes. */
function sayAtLeastSoCold(celsius: number, unit: ShownUnit): string {
  return inBoth(unit, Math.floor(nearly(celsius)), Math.floor(nearly(fahrenheitOf(celsius))));
}

// What floating point adds to a whole degree isn't another degree.
function nearly(degrees: number): number {
  return Number(degrees.toFixed(6));
}

/**
 * One way to drop it in, as a line: what to heat or cool, to what. A way that may not be gone never tells a temperature to
 * go to: it says that it won't do, and why.
 */
export function sayHeatWay(
  way: HeatWay,
  most: HeatLimit,
  unit: ShownUnit,
): { title: string; detail: string } {
  const hot = way.heatCelsius === undefined ? '' : sayAtLeastSoHot(way.heatCelsius, unit);
  const takes = `It takes ${hot}; ${most.plated ? NOT_HEATED : sayHeatBorne(most, unit)}`;
  switch (way.way) {
    case 'heat':
      return way.allowed
        ? { title: `Heat the part to ${hot}`, detail: BY_HAND }
        : { title: 'Heat alone won’t do', detail: takes };
    case 'cold':
      return way.allowed && way.coldCelsius !== undefined
        ? { title: `Cool the bushing to ${sayAtLeastSoCold(way.coldCelsius, unit)}`, detail: BY_HAND }
        : { title: 'Cold alone won’t do', detail: 'It has to be colder than you can make it' };
    case 'both':
      return way.allowed && way.coldCelsius !== undefined
        ? {
            title: `Bushing at ${sayTemperature(way.coldCelsius, unit)}, part at ${hot}`,
            detail: BY_HAND,
          }
        : { title: 'Both won’t do', detail: takes };
    default:
      return way.way satisfies never;
  }
}

/** What speaks against it, as a sentence with what to do. */
export function sayBushingWarning(warning: BushingWarning, unit: ShownUnit): string {
  const size = (length: Parameters<typeof show>[0]) => show(length, unit);
  switch (warning.code) {
    case 'thin-bushing':
      return `The bushing’s wall is ${sayUnderLeast(warning.wall, warning, unit)}. Ream larger, or run a thinner pin.`;
    case 'thin-part':
      return `${sayUnderLeast(warning.wall, warning, unit, ' is left round the hole')}. Ream to less, or build the part up first.`;
    case 'yields':
      return `The ${warning.what} gives way: ${sayStress(warning.stressMpa, unit)} where ${warning.material} yields at ${sayStress(warning.yieldMpa, unit)}${fromMemory(warning.own)}. Take a lighter class.`;
    case 'near-yield':
      return `The ${warning.what} is near its yield: ${sayStress(warning.stressMpa, unit)} of ${sayStress(warning.yieldMpa, unit)}${fromMemory(warning.own)}, and the load comes on top.`;
    case 'takes-a-set':
      return `The bushing takes a set: ${sayStress(warning.stressMpa, unit)} where ${warning.material} yields at ${sayStress(warning.yieldMpa, unit)}${fromMemory(warning.own)}. It holds, but bore it to size only after pressing.`;
    case 'may-crack':
      return `The part may crack: the bore is pulled with ${sayStress(warning.hoopMpa, unit)}, and brittle metal bears ${sayStress(warning.bearableMpa, unit)} with safety (a third of its tensile strength, common practice). Take a lighter class, or bond it with retaining compound.`;
    case 'no-grip':
      return `It may not grip: of ${figure(warning.least, unit)} least interference the surfaces bed in by ${size(warning.flattened)}. ${warning.turned ? 'Take a heavier class, a finer finish, or pin it.' : 'Turn the bushing to the measured bore: that leaves more.'}`;
    case 'loose-when-hot':
      return `At ${sayTemperature(warning.celsius, unit)} it is loose by ${size(absolute(warning.left))} in the worst case: the part grows more than the bushing. Take a heavier class, or pin it.`;
    case 'loose-when-cold':
      return `At ${sayTemperature(warning.celsius, unit)} it is loose by ${size(absolute(warning.left))} in the worst case: the bushing shrinks more than the part. Take a heavier class, or pin it.`;
    case 'seizes':
      return `At ${sayTemperature(warning.celsius, unit)} it seizes on the pin: the least clearance is gone by ${size(absolute(warning.left))}. Take a freer class inside.`;
    case 'no-way-in':
      return `Neither heat nor cold drops it in: ${warning.most.plated ? NOT_HEATED : sayHeatBorne(warning.most, unit)}. Press it.`;
    case 'spoilt-when-hot':
      return `At ${sayTemperature(warning.celsius, unit)} in use it is spoilt: ${sayHeatBorne(warning.most, unit)}. Take another metal.`;
    case 'plating-fumes':
      return 'Plating gives off fumes when heated, and cadmium fumes kill. Press it, cool the bushing, or strip the plating first.';
    case 'draws-soft':
      return `A hardened part is drawn soft above ${sayTemperature(warning.mostCelsius, unit)}. Use an oven and a thermometer, never a torch.`;
    case 'band-too-wide':
      return 'At the far ends of what the readings leave open it may not hold, or be overstressed. Read bore and bushing with a finer tool before pressing.';
    case 'pin-read-too-coarse':
      return 'The pin’s readings can’t prove the limits of the bushing’s bore. Read the pin with a finer tool.';
    case 'bore-after-pressing':
      return 'Its bore closes by more than the limits allow for: leave it under size, and bore or ream it after pressing.';
    default:
      return warning satisfies never;
  }
}

/** What it holds along its axis at the least. */
export function sayHold(newtons: number, unit: ShownUnit): string {
  return newtons > 0
    ? `holds ${sayForce(newtons, unit)} at least, along the axis`
    : 'no hold can be counted on';
}

/** Interference in words; below zero it is called what it is. */
export function sayInterference(
  least: Parameters<typeof show>[0],
  greatest: typeof least,
  unit: ShownUnit,
): string {
  return isNegative(least)
    ? `${figure(absolute(least), unit)} loose to ${show(greatest, unit)} tight`
    : `${figure(least, unit)} to ${show(greatest, unit)}`;
}

function fromMemory(own: boolean): string {
  return own ? '' : ' (from memory)';
}

/** Three significant digits: a press fit is never known closer. */
function significant(value: number): string {
  return marked(Number(value.toPrecision(3)));
}

function inThousands(value: number): string {
  return grouped(Number(value.toPrecision(3)));
}

function signed(degrees: number): string {
  const whole = Math.round(degrees);
  return whole < 0 ? `−${-whole}` : String(whole);
}
