import type { Share } from '../../engine/chain.ts';
import { typedEstimate, type Estimate } from '../../engine/estimate.ts';
import { zero } from '../../engine/length.ts';
import type { LineUpAnswer, LineUpQuestion } from '../../engine/line-up.ts';
import type { LineUpCheck } from '../../engine/line-up-checks.ts';
import { sayShares } from '../../engine/say-line-up.ts';
import { spacerLetter, spacerName } from '../../engine/say-line-up-names.ts';
import { sizeFigure } from '../../engine/say-readings.ts';
import { figure, showBand, type ShownUnit } from '../../engine/show.ts';

type WhyLine = { readonly what: string; readonly how: string; readonly source?: string };

const CHECK_NAMES: Readonly<Record<LineUpCheck['kind'], string>> = {
  line: 'How far off',
  'pad-wear': 'Float beyond the pads’ wear',
  'disc-in-slot': 'Room beside the disc at either end of the float',
  'side-play': 'Side play of the bracket',
  'wheel-centre': 'Wheel centre',
};

/** Each length as its sum, with the numbers put in. */
export function axleWhy(question: LineUpQuestion, answer: LineUpAnswer, unit: ShownUnit): readonly WhyLine[] {
  const sum = (terms: readonly Share[]) => {
    const given = terms.filter(({ of }) => question.layout.usual[of] !== 'nothing' || question.sizes[of]);
    return `${sayShares(given)} = ${sayShares(given, (name) => numberPut(sizeOf(question, name), unit))}`;
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
    ...answer.checks.map((check) => ({
      what: check.kind === 'line' ? `${CHECK_NAMES.line}: ${check.name}` : CHECK_NAMES[check.kind],
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
      what: 'A spacer may be off',
      how: `±${figure(question.limits.spacer.by, unit)} ${unit}; a cut has what the band leaves of it, left full to the dial’s next step`,
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

function sizeOf({ layout, sizes }: LineUpQuestion, name: string): Estimate {
  const stands = layout.usual[name];
  const instead = typeof stands === 'object' ? sizes[stands.as] : undefined;
  return sizes[name] ?? instead ?? typedEstimate(zero);
}

function numberPut(estimate: Estimate, unit: ShownUnit): string {
  const text = sizeFigure(estimate, unit);
  return text.startsWith('−') ? `(${text})` : text;
}
