import { marked } from '../length/decimal-text.ts';
import { isNegative, isZero, negate, type Length } from '../length/length.ts';
import { inShopWords } from '../length/american-words.ts';
import { show, type ShownUnit } from '../length/show.ts';

type Said = { readonly degrees: string; readonly unit: 'C' | 'F'; readonly material: string };

/** `95 °F`. */
export function sayDegrees({ degrees, unit }: Pick<Said, 'degrees' | 'unit'>): string {
  return `${marked(degrees)} °${unit}`;
}

/** What a reading's warmth changed: "95 °F takes .0008 in off: Aluminium 6061, at 68 °F." */
export function sayWarmth(said: Said, { changed, unit }: { changed: Length; unit: ShownUnit }): string {
  const degrees = sayDegrees(said);
  const material = inShopWords(said.material, unit);
  const at = `${material}, at ${said.unit === 'F' ? '68 °F' : '20 °C'}`;
  if (isZero(changed)) return `${degrees} changes nothing: ${material} grows as the tool does.`;
  return isNegative(changed)
    ? `${degrees} takes ${show(negate(changed), unit)} off: ${at}.`
    : `${degrees} puts ${show(changed, unit)} on: ${at}.`;
}

/** The question where nobody said how warm a size was read, or of which metal, and it could matter. */
export function sayUnaskedWarmth(off: Length, asks: 'warmth' | 'metal', unit: ShownUnit): string {
  return `${asks === 'warmth' ? 'How warm?' : 'Which metal?'} ±${show(off, unit)} if ${aluminiumIn(unit)}.`;
}

/** At the lathe, where a part warm from the cut would be read too large for its limits. */
export function sayWarmFromCut(over: Length | undefined, unit: ShownUnit, isMetalKnown: boolean): string {
  if (!over) return '';
  return `Warm from the cut: let it cool, or measure ${show(over, unit)} over${isMetalKnown ? '' : ` if ${aluminiumIn(unit)}`}.`;
}

function aluminiumIn(unit: ShownUnit): string {
  return inShopWords('aluminium', unit);
}
