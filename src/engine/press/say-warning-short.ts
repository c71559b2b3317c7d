import { absolute } from '../length/length.ts';
import { figure, show, type ShownUnit } from '../length/show.ts';
import type { BushingWarning } from './bushing-warnings.ts';
import { sayBushingWarning, sayStress, sayTemperature } from './say-bushing.ts';

// Where a figure comes from stands under Why, with the whole sentence.
const SOURCES = / \([^()]*(?:common practice|from memory|your own)[^()]*\)/g;

/** What speaks against it at a glance: what, by how much, what to do. The whole sentence stands under Why. */
export function sayWarningShort(warning: BushingWarning, unit: ShownUnit): string {
  switch (warning.code) {
    case 'yields':
      return `The ${warning.what} gives way: ${stresses(warning, unit, 'past')}. Take a lighter class.`;
    case 'near-yield':
      return `The ${warning.what} nears its yield: ${stresses(warning, unit, 'of')}. The load comes on top.`;
    case 'takes-a-set':
      return `The bushing takes a set: ${stresses(warning, unit, 'past')}. It holds, but bore it to size only after pressing.`;
    case 'may-crack':
      return `The part may crack: pulled with ${sayStress(warning.hoopMpa, unit)}. It bears ${sayStress(warning.bearableMpa, unit)}. Take a lighter class, or bond it with retaining compound.`;
    case 'no-grip':
      return `It may not grip: ${figure(warning.least, unit)} of interference, ${show(warning.flattened, unit)} beds in. ${warning.turned ? 'Take a heavier class, a finer finish, or pin it.' : 'Turn the bushing to the measured bore: that leaves more.'}`;
    case 'loose-when-hot':
    case 'loose-when-cold':
      return `At ${sayTemperature(warning.celsius, unit)} it may be ${show(absolute(warning.left), unit)} loose. Take a heavier class, or pin it.`;
    case 'no-way-in':
      return 'Neither heat nor cold drops it in. Press it.';
    case 'plating-fumes':
      return 'Heated plating gives off fumes, and cadmium fumes kill. Press it, cool the bushing, or strip the plating first.';
    case 'band-too-wide':
      return 'As far as the readings know it may not hold, or be overstressed. Read bore and bushing with a finer tool before pressing.';
    case 'bore-after-pressing':
      return 'Its bore closes past the limits. Leave it under size; bore or ream it after pressing.';
    case 'thin-bushing':
    case 'thin-part':
    case 'seizes':
    case 'spoilt-when-hot':
    case 'draws-soft':
    case 'pin-read-too-coarse':
      return sayBushingWarning(warning, unit).replace(SOURCES, '');
    default:
      return warning satisfies never;
  }
}

/** The stress against the yield that it is held to. */
function stresses(
  { stressMpa, yieldMpa }: { readonly stressMpa: number; readonly yieldMpa: number },
  unit: ShownUnit,
  against: 'past' | 'of',
): string {
  return `${sayStress(stressMpa, unit)} ${against} ${sayStress(yieldMpa, unit)}`;
}
