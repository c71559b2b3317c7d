import { isNegative, isZero, negate, type Length } from './length.ts';
import { show, type ShownUnit } from './show.ts';

type Said = { readonly degrees: string; readonly unit: 'C' | 'F'; readonly material: string };

/** `95 °F`. */
export function sayDegrees({ degrees, unit }: Pick<Said, 'degrees' | 'unit'>): string {
  return `${degrees} °${unit}`;
}

/** What a reading's warmth changed: "Aluminium 6061 at 95 °F: .0008 in taken off, to 68 °F." */
export function sayWarmth(said: Said, { changed, unit }: { changed: Length; unit: ShownUnit }): string {
  const to = said.unit === 'F' ? '68 °F' : '20 °C';
  const what = `${said.material} at ${sayDegrees(said)}`;
  if (isZero(changed)) return `${what}: as the tool grows, nothing changed.`;
  return isNegative(changed)
    ? `${what}: ${show(negate(changed), unit)} taken off, to ${to}.`
    : `${what}: ${show(changed, unit)} put on, to ${to}.`;
}

/** Where nobody said how warm a size was read, and it could matter. */
export function sayUnaskedWarmth(off: Length, unit: ShownUnit): string {
  const away = unit === 'in' ? '18 °F off 68' : '10 °C off 20';
  return `How warm is it? ${away}, aluminium reads ${show(off, unit)} wrong.`;
}
