import type { CutProgress } from './cut-progress.ts';
import { isNegative, type Length } from '../length/length.ts';
import type { DialSetting } from './dial.ts';
import { spokenAmount, spokenBare, spokenSize, wordsFor } from './say-cuts-numbers.ts';
import { dialWord, saySlide } from './say-cuts.ts';
import type { ShownUnit } from '../length/show.ts';

const CHOOSE = 'Choose on the screen which slide makes it.';
const CANNOT = "The dial can't do it: look at the screen.";

/**
 * Where the cut stands, for reading aloud beside a running lathe: `Forty-six thou left. Dial in eighteen.` Every number is
 * in words, so that no voice reads a date, a price or an abbreviation into it. The dial's figure is in the dial's own unit.
 */
export function spokenProgress(progress: CutProgress, unit: ShownUnit, dialUnit: ShownUnit = unit): string {
  const { stage, present, left, past, plan, next, proof } = progress;
  const dial = next && spokenDial(next.dial, { unit: dialUnit, named: unit !== dialUnit });
  switch (stage) {
    case 'to-measure':
      return 'Stop the spindle and measure it first.';
    case 'over':
      return past ? `Stop. ${sentence(spokenAmount(past, unit), 'past the limit')}` : 'Stop.';
    case 'to-size':
      return `${present ? `To size, ${spokenSize(present, unit)}.` : 'To size.'}${spokenProof(proof)}`;
    case 'last-pass':
      return spoken(['Last pass.', spokenLeft(left, unit), dial, 'Then stop the spindle and measure it.']);
    case 'to-cut':
    case 'cutting':
      return spoken([
        spokenLeft(left, unit),
        plan?.ok === false ? CANNOT : (dial ?? 'Stop the spindle and measure it.'),
      ]);
    default:
      return stage satisfies never;
  }
}

type DialSpoken = { readonly unit: ShownUnit; readonly named: boolean };

/**
 * `Dial in eighteen.` `Dial out one turn and eighteen, on radius.` `Feed in eighteen, compound.`: in the screen's own
 * words; the unit named where the dial has another than what was said before.
 */
export function spokenDial(setting: DialSetting, spoken: DialSpoken): string {
  if (setting.slide === 'to-choose') return CHOOSE;
  return `${capital(dialWord(setting))} ${round(setting)}${spokenFigure(setting.figure, spoken)}${spokenReads(setting)}.`;
}

/** With passes cut and not measured: how much further, and the figure that it comes to. */
export function spokenFurther(setting: DialSetting, more: Length, spoken: DialSpoken): string {
  if (setting.slide === 'to-choose') return CHOOSE;
  return `${capital(dialWord(setting))} ${spokenFigure(more, spoken)} more, to ${round(setting)}${spokenFigure(setting.figure, spoken)}${spokenReads(setting)}.`;
}

function round({ turns }: DialSetting): string {
  return turns === 0 ? '' : `${turns === 1 ? 'one turn' : `${wordsFor(turns)} turns`} and `;
}

function spokenFigure(figure: Length, { unit, named }: DialSpoken): string {
  return named ? spokenAmount(figure, unit) : spokenBare(figure, unit);
}

/** A diameter was said just before, so only a radius is told from it; of a length, which slide. */
function spokenReads({ reads, slide }: DialSetting): string {
  if (reads !== undefined) return reads === 'radius' ? ', on radius' : '';
  return slide === undefined || slide === 'to-choose' ? '' : `, ${saySlide(slide)}`;
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

function spoken(sentences: readonly (string | undefined)[]): string {
  return sentences.filter((sentence) => sentence !== undefined).join(' ');
}

function spokenLeft(left: Length | undefined, unit: ShownUnit): string | undefined {
  if (!left) return undefined;
  return isNegative(left) ? 'The target is reached.' : sentence(spokenAmount(left, unit), 'left');
}

function spokenProof(proof: CutProgress['proof']): string {
  if (!proof || proof.verdict.kind === 'good') return '';
  return ' Too close to call: measure it again.';
}

function sentence(amount: string, rest: string): string {
  return `${capital(amount)} ${rest}.`;
}
