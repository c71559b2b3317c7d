import type { Share } from '../../engine/worksheets/axle-line-up/chain.ts';
import { typedEstimate, type Estimate } from '../../engine/reading/estimate.ts';
import { zero } from '../../engine/length/length.ts';
import type { LineUpAnswer, LineUpQuestion } from '../../engine/worksheets/axle-line-up/line-up.ts';
import type { LineUpCheck } from '../../engine/worksheets/axle-line-up/line-up-checks.ts';
import { sayShares } from '../../engine/worksheets/axle-line-up/say-line-up.ts';
import {
  sizeName,
  spacerLetter,
  spacerName,
} from '../../engine/worksheets/axle-line-up/say-line-up-names.ts';
import { sizeFigure } from '../../engine/reading/say-readings.ts';
import { figure, showBand, type ShownUnit } from '../../engine/length/show.ts';
import { capital } from '../../engine/length/say-words.ts';

type WhyLine = { readonly what: string; readonly how: string; readonly source?: string };

const CHECK_NAMES: Readonly<Record<LineUpCheck['kind'], string>> = {
  line: 'How far off',
  'pad-wear': 'Float beyond the pads’ wear',
  'disc-in-slot': 'Room beside the disc at either end of the float',
  'side-play': 'Side play of the bracket',
  'wheel-centre': 'Wheel centre',
  opening: 'Room left by the parts',
  float: 'Float',
  'wheel-place': 'Wheel’s place',
  'slot-middle': 'Slot’s middle off the disc’s',
};

/** Each length as its sum, with the numbers put in. */
export function axleWhy(question: LineUpQuestion, answer: LineUpAnswer, unit: ShownUnit): readonly WhyLine[] {
  const sum = (terms: readonly Share[]) => {
    const given = terms.filter(({ of }) => question.layout.usual[of] !== 'nothing' || question.sizes[of]);
    const named = (name: string) => partOrSize(question, answer, name);
    const size = (name: string) => fittedOr(answer, name) ?? sizeOf(question, name);
    return `${sayShares(given, named)} = ${sayShares(given, (name) => numberPut(size(name), unit))}`;
  };
  return [
    ...answer.spacers.map((spacer) => {
      const letter = spacerLetter(spacer.name, question.layout);
      const name = spacerName(spacer.name, question);
      return {
        what: letter === '' ? name : `${letter}, ${name.toLowerCase()}`,
        how: `${sum(spacer.terms)} = ${figure(spacer.value, unit)} ${unit}, ${showBand(spacer.band.halfWidth, unit)}; ${showBand(spacer.worstCase, unit)} at the very worst`,
      };
    }),
    ...[...answer.checks, ...answer.shared].map((check) => ({
      what: whatOf(check),
      how: `${check.direct ? `${sayShares(check.terms)} on the machine` : sum(check.terms)} = ${figure(check.value, unit)} ${unit}, ${showBand(check.band.halfWidth, unit)}`,
      source: check.limits.source,
    })),
    ...(answer.held.length > 0
      ? [
          {
            what: 'These lengths make it hold',
            how: answer.held.map((name) => HELD[name] ?? name).join('; '),
          },
        ]
      : []),
    ...(question.layout.hasSide && question.side === 'left' && question.layout.name !== 'trailer-hub'
      ? [
          {
            what: 'Brake on the left',
            how: 'The whole axle is turned over as in a mirror (offset changes its sign, the centre is taken from the hub’s other face), worked out, and turned back.',
          },
        ]
      : []),
    {
      what: 'Band',
      how: 'Every size counts by its share in the sum, at 95 %; a tool’s own error is common to all it read.',
      source: 'JCGM 100:2008',
    },
    {
      what: 'Float and room may be off',
      how: `Float ±${figure(question.limits.spacer.by, unit)}, filled room ±${figure(question.limits.opening.by, unit)} ${unit}; the parts still to be cut share what the band leaves of it, each left full to the dial’s next step. All of it holds when every one of them is off the worst way at once.`,
      source: question.limits.spacer.source,
    },
  ];
}

const HELD: Readonly<Record<string, string>> = {
  fills: 'the parts fill the room from face to face',
  'wheel centre': 'the wheel is where it is wanted',
  'disc in slot': 'the disc is in the middle of its slot, with the bracket in the middle of its float',
  'left disc in slot': 'the left disc is in the middle of its slot',
  'right disc in slot': 'the right disc is in the middle of its slot',
  'sprocket line': 'the sprocket is in line with the chain',
  'wheel face': 'the wheel’s face is where it is wanted',
};

function whatOf({ kind, name }: LineUpCheck): string {
  if (kind === 'line') return `${CHECK_NAMES.line}: ${name}`;
  return kind === 'wheel-place' ? capital(name) : CHECK_NAMES[kind];
}

function partOrSize(question: LineUpQuestion, answer: LineUpAnswer, name: string): string {
  return fittedOr(answer, name) ? spacerName(name, question).toLowerCase() : sizeName(name);
}

/** A spacer goes into a sum as it will lie on the axle. */
function fittedOr({ spacers }: LineUpAnswer, name: string): Estimate | undefined {
  const spacer = spacers.find((one) => one.name === name);
  return spacer && typedEstimate(spacer.fitted);
}

function sizeOf({ layout, sizes }: LineUpQuestion, name: string): Estimate {
  const stands = layout.usual[name];
  const instead = typeof stands === 'object' ? sizes[stands.as] : undefined;
  return sizes[name] ?? instead ?? typedEstimate(zero);
}

function numberPut(estimate: Estimate, unit: ShownUnit): string {
  const text = sizeFigure(estimate, unit);
  return text.startsWith('−') ? `(${text})` : text;
}
